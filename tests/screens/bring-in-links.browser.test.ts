import '../../components/bring-in/tb-bring-in'
import type { TbBringIn } from '../../components/bring-in/tb-bring-in'
import { linkOf, writeFormulas } from '../../src/exchange/index'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { press } from '../keys'
import { millWheat } from './breads'
import { holdsUp, Opened } from './dialogs'
import { dressPage, textOf } from './mount'

const sent = millWheat({
  note: 'Ask for the spelt.',
  batch: { make: 'pieces', pieces: [{ count: 6, weight: 900 }], loss: 0.02 },
  jottings: [{ id: 'j', name: 'per_loaf', text: 'dough_weight / 6' }],
})

describe('A formula that came with a link', () => {
  let opened: Opened<TbBringIn>
  let link: string

  async function show(detail: { link?: string; text?: string }, shelf = [millWheat()]): Promise<void> {
    opened = new Opened(document.createElement('tb-bring-in'), { formulas: shelf })
    opened.dialog.show(detail)
    await opened.whenOpen()
    await waitUntil(() => opened.root.querySelector('#understood, .refusal'), 'it is read')
  }
  const fragment = () => link.slice(link.indexOf('#'))
  const shelf = () => opened.around.history.workbook.formulas

  before(async () => {
    dressPage()
    const made = await linkOf(sent, 'https://example.org/tarebook/')
    ok(typeof made === 'string')
    link = made
  })
  afterEach(() => opened.remove())

  it('shows first what is weighed for its batch, and what that comes to', async () => {
    await show({ link: fragment() })
    match(textOf(opened.find('.make')), /^Make 6 pieces of 900 g; 2 % lost/)
    // 40 g of the starter and 690 g of the water, times 2.868404 · 210 ÷ 220 and 2.868404
    const weighed = textOf(opened.find('.to-weigh table'))
    match(weighed, /Ripe starter 110 g/)
    match(weighed, /Water 1,979 g/)
    match(textOf(opened.find('.readings')), /True hydration *70\.5 %.*Salt *1\.88 %.*Dough weight *5,510 g/)
  })

  it('is shown to be read, with all it holds, and nothing is added', async () => {
    await show({ link: fragment() })
    equal(textOf(opened.find('h2')), 'A formula came with the link')
    await opened.click('summary', 'The lines as read')
    match(textOf(opened.find('details table')), /Ripe starter 40 g/)
    const facts = textOf(opened.find('.facts'))
    match(facts, /Make *6 × 900 g, 2 % lost on the way/)
    match(facts, /Jotting *per_loaf = dough_weight \/ 6/)
    match(facts, /Note *Ask for the spelt\./)
    equal(shelf().length, 1)
  })

  it('is added to the workbook on request, beside what is there', async () => {
    await show({ link: fragment() })
    await opened.click('footer .main', 'Add to my workbook')
    await opened.whenClosed()
    deepEqual(
      shelf().map(f => f.name),
      ['Mill wheat', 'Mill wheat 2'],
    )
    deepEqual(opened.around.wishes, [{ want: 'open', formula: shelf()[1]!.id }])
    const again = { ...shelf()[1]!, name: 'Mill wheat' }
    equal(writeFormulas([again]), writeFormulas([sent]))
  })

  it('is said to be on the shelf already where it is the same', async () => {
    await show({ link: fragment() }, [sent])
    match(textOf(opened.find('.here')), /^On the shelf already/)
    ok(opened.find<HTMLButtonElement>('footer .main', 'Nothing to add').disabled)
  })

  it('is left by Escape, with nothing touched', async () => {
    await show({ link: fragment() })
    await press('Escape')
    await opened.whenClosed()
    equal(shelf().length, 1)
  })

  it('is read from a pasted link as well', async () => {
    await show({ text: `  ${link}\n` })
    match(textOf(opened.find('#understood')), /from the pasted link/)
  })

  it('says in a sentence that a link is damaged', async () => {
    await show({ link: fragment().slice(0, -20) })
    match(textOf(opened.find('.refusal')), /damaged or not whole/)
    equal(shelf().length, 1)
  })

  it('holds up on a laptop and a phone', async () => {
    await show({ link: fragment() })
    await holdsUp(opened)
  })
})
