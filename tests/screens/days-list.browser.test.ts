import { emulateMedia, setViewport } from '@web/test-runner-commands'
import { equal, match, ok, waitUntil } from '../assert'
import { saturday } from '../day/notation'
import { press, type } from '../keys'
import { itOnce } from '../once'
import { asleep, DaysOpened, wheat } from './days-desk'
import { dressPage, passesAxe, textOf } from './mount'

describe('The days', () => {
  let open: DaysOpened

  function show(isOpen = true) {
    const formula = wheat()
    const day = saturday([[formula, 6]], { asleep, holds: [] })
    const later = { ...day, id: 'later', name: 'Sunday oven', date: '2026-12-06' }
    open = new DaysOpened({ formulas: [formula], days: [day, later] }, isOpen ? day : undefined)
  }
  const names = () =>
    open.all('tb-day-list').flatMap(list => [...list.shadowRoot!.querySelectorAll('a')].map(textOf))
  const days = () => open.around.history.workbook.days ?? []

  async function choose(menu: string, item: RegExp): Promise<void> {
    ;(await open.find('button#opener', menu)).focus()
    await press('Enter')
    const shown = () => open.all('[role=menuitem]', item).find(entry => entry.checkVisibility())
    ;(await waitUntil(shown, `the menu has ${item}`)).focus()
    await press('Enter')
  }

  before(async () => {
    dressPage()
    await setViewport({ width: 1440, height: 900 })
  })
  afterEach(async () => {
    open.remove()
    await setViewport({ width: 1440, height: 900 })
    await emulateMedia({ colorScheme: 'light' })
  })

  it('stand with the latest first, the open one marked, and are gone to by their address', async () => {
    show()
    await open.find('a[aria-current=page]', 'Saturday oven')
    equal(names().join(' | '), 'Sunday ovenSunday, December 6 | Saturday ovenSaturday, December 5')
    ;(await open.find('a', 'Sunday oven')).focus()
    await press('Enter')
    await open.find('a[aria-current=page]', 'Sunday oven')
    equal(location.hash, '#days/later')
    equal(document.title, 'Sunday oven · Tarebook')
    history.back()
    await open.find('a[aria-current=page]', 'Saturday oven')
  })

  it('begin at the top, however far down the page was that they are come to from', async () => {
    const before = document.createElement('div')
    before.style.height = '3000px'
    document.body.append(before)
    scrollTo(0, 900)
    equal(scrollY, 900)
    location.hash = 'days'
    show(false)
    await open.days.updateComplete
    equal(scrollY, 0)
    before.remove()
  })

  it('are begun empty, with a time to be ready and nothing baked', async () => {
    show()
    await choose('New day', /^Empty/)
    await waitUntil(() => days().length === 3, 'there is one more')
    const { id, breads, ready, zone, name } = days()[2]!
    equal(location.hash, `#days/${id}`)
    equal(breads.length, 0)
    equal(ready, '9:00')
    ok(zone.length > 2)
    match(name, /^\w+day oven$/)
    match(textOf(await open.find('.clock')), /Add a bread, and its steps stand here/)
    await open.find('tb-menu#add')
  })

  it('are begun like an earlier one, planned again, renamed, and deleted with a way back', async () => {
    show()
    await choose('New day', /^Like Saturday oven/)
    await waitUntil(() => days().length === 3, 'there is one more')
    equal(days()[2]!.breads.length, 1)
    await choose('Actions for Sunday oven', /^Plan again/)
    await waitUntil(() => days().length === 4, 'and one more')
    equal(days()[3]!.date, '2026-12-13')
    equal(location.hash, `#days/${days()[3]!.id}`)
    location.hash = 'days/day'
    await open.find('a[aria-current=page]', 'Saturday oven')
    await choose('Actions for Saturday oven', /^Rename/)
    await waitUntil(() => open.focused?.ariaLabel === 'Name of the day', 'its name has the focus')
    await type('First oven')
    await press('Enter')
    await open.find('a[aria-current=page]', 'First oven')
    await choose('Actions for First oven', /^Delete/)
    await waitUntil(() => !names().some(name => /First oven/.test(name)), 'it is gone')
    ;(await open.find('button', /^Undo$/)).focus()
    await press('Enter')
    equal(open.around.wishes.at(-1)?.want, 'undo')
  })

  it('say what a day is where none is planned', async () => {
    open = new DaysOpened({}, undefined)
    match(
      textOf(await open.find('main')),
      /No day is planned yet\..*Any time can be typed; the rest follows\./,
    )
    ;(await open.find('button#new', 'New day')).focus()
    await press('Enter')
    await waitUntil(() => days().length === 1, 'it is there, without a menu of one entry')
    equal(location.hash, `#days/${days()[0]!.id}`)
  })

  it('come on a phone one or the other, and a day with its list before its fields', async () => {
    await setViewport({ width: 390, height: 844 })
    show(false)
    await open.find('a', 'Saturday oven')
    equal(open.all('tb-day').length, 0)
    ;(await open.find('a', 'Saturday oven')).focus()
    await press('Enter')
    await waitUntil(() => open.all('tb-day-list').length === 0, 'the day alone')
    const facts = open.days.shadowRoot!.querySelector('tb-day')!.shadowRoot!.querySelector('#facts')!
    equal(getComputedStyle(facts).display, 'none')
    match(
      textOf(await open.find('.said')),
      /^Ready by 9:00 on Saturday, December 5: 6 Mill wheat\. Kitchen 24 °C\. Asleep 22:30–6:00\./,
    )
    ok(document.documentElement.scrollWidth <= 390, 'nothing sticks out')
    ;(await open.find('button', /^Change$/)).focus()
    await press('Enter')
    await waitUntil(() => getComputedStyle(facts).display === 'block', 'its fields are there')
    ok(document.documentElement.scrollWidth <= 390, 'nor do its fields')
    ;(await open.find('.all')).focus()
    await press('Enter')
    await waitUntil(() => open.all('tb-day-list').length === 1, 'back at the list')
  })

  for (const [width, height] of [
    [1440, 900],
    [768, 1024],
    [390, 844],
  ] as const)
    itOnce(`hold up before axe at ${width} px, light and dark`, async () => {
      await setViewport({ width, height })
      show()
      await open.find('button.how')
      open.all('button.how')[2]!.click()
      await open.find('tb-time-working section, section')
      for (const colorScheme of ['light', 'dark'] as const) {
        await emulateMedia({ colorScheme })
        await passesAxe(open.days)
      }
    })
})
