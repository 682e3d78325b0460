import '../../components/lanes/tb-day-lanes'
import { emulateMedia, sendMouse, setViewport } from '@web/test-runner-commands'
import type { TbDayLanes } from '../../components/lanes/tb-day-lanes'
import { openDay } from '../../src/day/plan/open-day'
import { emptyWorkbook } from '../../src/dough/document/workbook'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { press } from '../keys'
import { breads, saturdayOven } from './days'
import { dressPage, english, passesAxeInBoth, textOf } from './mount'

describe('A day drawn in lanes', () => {
  let drawn: TbDayLanes
  const chosen: string[] = []
  const formulas = breads()
  const opened = () => openDay(saturdayOven(formulas), formulas)

  async function show(more: Partial<TbDayLanes> = {}) {
    chosen.length = 0
    drawn = document.createElement('tb-day-lanes')
    const workbook = { ...emptyWorkbook, formulas }
    Object.assign(drawn, { opened: opened(), workbook, numbers: english, now: 0, ...more })
    drawn.addEventListener('tb-moment', ({ detail }) => chosen.push(detail))
    document.body.append(drawn)
    await waitUntil(() => drawn.shadowRoot?.querySelector('svg[role=img]'), 'the day is drawn')
  }
  const find = <E extends Element>(selector: string) => drawn.shadowRoot!.querySelector<E>(selector)!
  const all = (selector: string) => [...drawn.shadowRoot!.querySelectorAll(selector)]
  const said = () => find('[role=slider]').getAttribute('aria-valuetext')!

  before(dressPage)
  beforeEach(() => setViewport({ width: 1440, height: 900 }))
  afterEach(async () => {
    await emulateMedia({ colorScheme: 'light' })
    drawn.remove()
  })

  it('is a picture that says what it shows, with a lane for each bread and the oven', async () => {
    await show()
    match(
      find('svg').getAttribute('aria-label')!,
      /^The day drawn from Thursday, December 3 \d+:\d\d to Saturday, December 5 15:00, with a lane each for Mill wheat, Two-build rye, Seeded spelt tin and Stone oven\. Asleep 22:30–6:00\. The list has the same steps by the clock\.$/,
    )
    deepEqual(all('.name').map(textOf), ['Mill wheat', 'Two-build rye', 'Seeded spelt tin', 'Stone oven'])
    equal(
      all('rect.heating').length,
      3,
      'two in the lane, the rye baked long before the others; one in the legend',
    )
    equal(all('.date').length, 3)
  })

  it('marks the present only where it lies in the day', async () => {
    await show({ now: Date.parse('2026-12-04T13:20Z') / 60_000 })
    equal(textOf(find('text.now')), 'now')
    drawn.now = Date.parse('2026-12-06T13:20Z') / 60_000
    await drawn.updateComplete
    equal(find('.now'), null)
  })

  it('marks what is held', async () => {
    const sheet = opened()
    await show({ opened: sheet })
    equal(all('path.held').length, 0)
    const { name, local } = sheet.moments[3]!
    sheet.hold(name, local.slice(11))
    drawn.requestUpdate()
    await drawn.updateComplete
    equal(all('.drawing path.held').length, 1)
    match(textOf(find('.legend')), /held at its time/)
  })

  it('tells the moment of a step that is pressed', async () => {
    await show()
    const bake = all('rect.bake[data-moment]')[0]!
    const { left, top, width, height } = bake.getBoundingClientRect()
    await sendMouse({ type: 'click', position: [Math.round(left + width / 2), Math.round(top + height / 2)] })
    deepEqual(chosen, [bake.getAttribute('data-moment')!])
  })

  it('goes from step to step by keys, reads each out, and tells the one chosen', async () => {
    await show()
    await press('Tab')
    equal(drawn.shadowRoot!.activeElement, find('[role=slider]'))
    const first = said()
    match(first, /^\d+:\d\d–\d+:\d\d, 5 min\. Two-build rye: Mix$/)
    await press('ArrowRight')
    match(said(), /Two-build rye: Ripen$/)
    await press('ArrowLeft')
    equal(said(), first)
    await press('ArrowUp')
    match(said(), /Mill wheat: /)
    await press('End')
    const { moments } = drawn.opened!
    await press('Enter')
    ok(moments.some(m => m.name === chosen[0]))
    equal(
      find('[role=slider]').getAttribute('aria-valuenow'),
      find('[role=slider]').getAttribute('aria-valuemax'),
    )
    await press('Tab')
    ok(drawn.shadowRoot!.activeElement === null, 'one stop of the Tab key')
  })

  it('shows the moment that the list is at', async () => {
    const sheet = opened()
    const bake = sheet.plan!.events.find(e => e.kind === 'bake')!
    await show({ opened: sheet, chosen: bake.begins })
    match(said(), /: Bake/)
    ok(find('.cursor.chosen'))
  })

  it('scrolls within itself on a phone, begins at the present, and the keys bring a step into sight', async () => {
    await setViewport({ width: 390, height: 844 })
    await show({ now: Date.parse('2026-12-04T20:00Z') / 60_000 })
    const scroll = find<HTMLElement>('.scroll')
    await waitUntil(() => scroll.scrollLeft > 0, 'it is scrolled to the present')
    ok(document.documentElement.scrollWidth <= 390, 'the page does not scroll')
    const { left, right } = find('path.now').getBoundingClientRect()
    ok(left > 0 && right < 390, 'the present is in sight')
    find<HTMLElement>('[role=slider]').focus()
    await press('Home')
    await waitUntil(() => find('.cursor').getBoundingClientRect().left >= 0, 'the first step is in sight')
    for (const name of all('.name')) ok(name.getBoundingClientRect().left >= 0, 'names stay')
  })

  it('is nothing where there is no plan', async () => {
    await show()
    drawn.opened = openDay(saturdayOven(formulas, { begin: '14:00' }), formulas)
    await drawn.updateComplete
    equal(textOf(drawn.shadowRoot!.firstElementChild), '')
  })

  it('holds up at three sizes, light and dark', async () => {
    await show({ now: Date.parse('2026-12-04T13:20Z') / 60_000 })
    for (const width of [1440, 768, 390]) {
      await setViewport({ width, height: 844 })
      await passesAxeInBoth(drawn)
      ok(document.documentElement.scrollWidth <= width, `nothing sticks out, ${width} px wide`)
    }
  })
})
