import '../../components/help/tb-help'
import type { TbHelp } from '../../components/help/tb-help'
import { equal, match, ok, waitUntil } from '../assert'
import { press } from '../keys'
import { holdsUp, Opened } from './dialogs'
import { dressPage, textOf } from './mount'

describe('The help', () => {
  let opened: Opened<TbHelp>

  async function show(
    detail: Parameters<TbHelp['show']>[0] = {},
    numbers?: { language: string; decimal: ',' },
  ) {
    opened = new Opened(document.createElement('tb-help'), {}, numbers)
    opened.dialog.show(detail)
    await opened.whenOpen()
  }
  const words = () => textOf(opened.find('.text'))

  before(dressPage)
  afterEach(() => opened.remove())

  it('explains true hydration by the worked check', async () => {
    await show()
    match(words(), /Listed hydration 690 ÷ 1000 69\.0 %/)
    match(words(), /True hydration \(690 \+ 95\.5\) ÷ \( ?1000 \+ 114\.5\) 70\.5 %/)
    match(words(), /Salt 21 ÷ \(1000 \+ 114\.5\) 1\.88 %/)
  })

  it('keeps the page behind it where it is', async () => {
    document.body.style.minHeight = '300vh'
    await show()
    equal(getComputedStyle(document.documentElement).overflow, 'hidden')
    await press('Escape')
    await waitUntil(
      () => getComputedStyle(document.documentElement).overflow === 'visible',
      'the page moves again',
    )
    document.body.style.minHeight = ''
  })

  it('writes numbers as the baker does', async () => {
    await show({}, { language: 'de', decimal: ',' })
    match(words(), /70,5 %/)
    match(words(), /min\(5%; 40 g\)/)
  })

  it('leads to the licences of what is built in', async () => {
    await show()
    const link = opened.find<HTMLAnchorElement>('.text a')
    equal(link.getAttribute('href'), 'licences.txt')
    const answer = await fetch('/site/licences.txt')
    match(await answer.text(), /^Tarebook\n[\s\S]*\nlit-html [\d.]+ \(BSD-3-Clause\)\n/)
  })

  it('says how the keyboard leaves the sheet, where data is kept and what to beware of', async () => {
    await show()
    match(words(), /Escape, then Tab, leaves the grid/)
    match(words(), /Safari removes it after 7 days/)
    match(words(), /Do not taste raw flour/)
    match(words(), /2 hours between 4 and 60 °C/)
    ok(!/gluten-free|allergen-free|\bsafe\b/i.test(words()), 'it clears nothing')
  })

  it('names the ways to make a formula, to hand it on and to keep a copy', async () => {
    await show()
    const ways = [...opened.root.querySelectorAll('#ways + dl dt')].map(textOf)
    for (const way of ['Batch', 'Print a card', 'Link', 'Workbook file', 'Bring in'])
      ok(ways.includes(way), way)
    match(words(), /Keep a copy\. Send out the workbook file now and then/)
  })

  it('goes to a section with the keyboard', async () => {
    await show()
    opened.find('nav button', 'Cautions').focus()
    await press('Enter')
    equal(opened.root.activeElement?.id, 'cautions')
    const body = opened.find('.body')
    await waitUntil(() => body.scrollTop > 0, 'it has scrolled there')
  })

  it('opens at a section when asked to', async () => {
    await show({ section: 'keys' })
    await waitUntil(() => opened.root.activeElement?.id === 'keys', 'the section has the focus')
    await press('Escape')
    await opened.whenClosed()
  })

  it('holds up on a laptop and a phone', async () => {
    await show()
    await holdsUp(opened)
  })
})
