import '../../components/method/tb-method'
import '../../components/water/tb-temperatures'
import { emulateMedia, setViewport } from '@web/test-runner-commands'
import type { TbFeeding } from '../../components/feeding/tb-feeding'
import type { TbMethod } from '../../components/method/tb-method'
import rye from '../../examples/two-build-rye.csv'
import type { Day } from '../../src/dough/document/day'
import type { Formula } from '../../src/dough/document/formula'
import { openSheet } from '../../src/dough/sheet/sheet'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { bread } from '../day/notation'
import { press, type } from '../keys'
import { itOnce } from '../once'
import { sizes } from './dialogs'
import { Around, dressPage, english, passesAxe, textOf } from './mount'
import { formulasOf, PlannedSaturday } from './saturday'

/** A levain that is ripe after 9 h at 24 °C, thinned 7.8 times. */
const mill = (name = 'Mill wheat', water = 680) =>
  bread(
    name,
    `Levain:
       Ripe starter 100 g
       Bread flour 340 g
       Water 340 g
       hands Mix: 10 min
       wait Ripen: 8–10 h, at 24 °C
     Final dough:
       Bread flour 1000 g
       Water ${water} g
       Levain 300 g
       hands Mix: 10 min
       wait Bulk: 3–5 h, at 24 °C
       bake Bake: 45 min`,
  )

describe('A build fed for a time', () => {
  let shown: HTMLElement & { updateComplete: Promise<boolean> }
  let around: Around
  let feeding: TbFeeding

  const root = () => feeding.shadowRoot!
  const said = () => textOf(root().querySelector('section')).replaceAll(' ', ' ')
  const field = (label: RegExp) =>
    [...root().querySelectorAll('input')].find(input => label.test(input.ariaLabel!))!
  const formulas = () => around.history.workbook.formulas
  const amounts = (stage = 0, formula = 0) => formulas()[formula]!.stages[stage]!.lines.map(l => l.amount)
  async function enter(label: RegExp, text: string) {
    field(label).focus()
    await press('Control+a')
    await (text ? type(text) : press('Delete'))
    await press('Enter')
    await feeding.updateComplete
  }
  async function feedIt() {
    root().querySelector<HTMLElement>('button.main')!.focus()
    await press('Enter')
    await shown.updateComplete
    await feeding.updateComplete
  }

  /** The method of a formula, the feeding of one of its builds open. */
  async function beside(formula: Formula, build = 0) {
    around = new Around({ formulas: [formula] })
    const method: TbMethod = document.createElement('tb-method')
    shown = method
    const sheet = openSheet(formula)
    Object.assign(method, { sheet, numbers: english })
    around.onEdit = workbook => {
      sheet.update(workbook.formulas[0]!)
      method.version += 1
    }
    around.history.subscribe(({ workbook }) => around.onEdit(workbook))
    around.hold(method)
    await method.updateComplete
    const fold = method.shadowRoot!.querySelectorAll('tb-fold')[build]!
    fold.shadowRoot!.querySelector('button')!.focus()
    await press('Enter')
    feeding = await waitUntil(
      () => fold.shadowRoot!.querySelector<TbFeeding>('tb-feeding:defined') ?? undefined,
      'the feeding is fetched',
    )
    await feeding.updateComplete
  }

  /** A day, the feeding of one of its builds open. */
  async function onDay(of: Formula[], more: Partial<Day> = {}, build = 0) {
    const saturday = new PlannedSaturday(of, more)
    around = saturday.around
    const place = saturday.show(document.createElement('tb-temperatures'))
    shown = place
    await place.updateComplete
    const feedings = place.shadowRoot!.querySelector('tb-day-feedings')!
    await feedings.updateComplete
    feedings.shadowRoot!.querySelectorAll<HTMLElement>('h3 button')[build]!.focus()
    await press('Enter')
    await feedings.updateComplete
    feeding = feedings.shadowRoot!.querySelector('tb-feeding')!
    await feeding.updateComplete
    return saturday
  }

  before(dressPage)
  afterEach(async () => {
    shown.remove()
    await setViewport({ width: 1440, height: 900 })
    await emulateMedia({ colorScheme: 'light' })
  })

  it('beside the method: fed at 19:30, ripe at 7:30 in a kitchen of 20 °C is 17.4 % seed', async () => {
    await beside(mill())
    match(said(), /Say when it is fed and when it has to be ripe/)
    await enter(/^Fed at/, '19:30')
    await enter(/^ripe at/, '7.30')
    await enter(/^Where it stands/, '20')
    match(said(), /17\.4 % seed for 12 h at 20 °C/)
    match(said(), /As it is now, with 12\.8 % seed, it would take 14 h 36\./)
    match(said(), /Ripe starter 100 g 136 g/)
    match(said(), /Ripen: 8–10 h, at 24 °C becomes 6 h 35–8 h 10, at 24 °C/)
    // (680 + 150) ÷ (1000 + 150)
    match(said(), /True hydration stays 72\.2 %/)
    // 12 h, 8 and 10 of 9 h, and out by a tenth of 12 h − 7 h 24
    match(said(), /Ripe between 5:42 and 9:18: grown to about twice its height/)
    equal(amounts().join(), '100 g,340 g,340 g', 'nothing is done before it is asked for')
  })

  it('it is made as one edit, shown as made, and undone', async () => {
    await beside(mill())
    await enter(/^Fed at/, '19:30')
    await enter(/^ripe at/, '7:30')
    await enter(/^Where it stands/, '68 F')
    await feedIt()
    deepEqual(amounts(), ['136 g', '322 g', '322 g'])
    match(said(), /It is already fed for that: ripe after 11 h 58\. /)
    equal(root().querySelector('button.main'), null)
    around.history.undo()
    await shown.updateComplete
    await feeding.updateComplete
    deepEqual(amounts(), ['100 g', '340 g', '340 g'])
    match(said(), /17\.4 % seed for 12 h/)
  })

  it('what cannot be is said: too little time, no time of the clock, too warm', async () => {
    await beside(mill())
    await enter(/^Fed at/, 'evening')
    match(said(), /Write a time on the clock, such as 19:30\./)
    await enter(/^Fed at/, '7:00')
    await enter(/^ripe at/, '7:30')
    // As much seed as it is fed: 1.110 × (5.8 × ln 2 − 1.9) × y(22) ÷ y(24) = 1.905 h
    match(said(), /Even with as much seed as can go in it takes 1 h 54/)
    await enter(/^ripe at/, '17:30')
    await enter(/^Where it stands/, '37')
    match(said(), /At 37 °C the yeasts of a levain do not grow/)
  })

  it('the working has the figures it was worked out with', async () => {
    await beside(mill())
    await enter(/^Fed at/, '19:30')
    await enter(/^ripe at/, '7:30')
    await enter(/^Where it stands/, '20')
    root().querySelector('summary')!.focus()
    await press('Enter')
    match(said(), /Now D = 7\.8\. Its step says 8–10 h, at 24 °C: that makes f = 1\.11,/)
    match(said(), /12 h at 20 °C want D = 5\.733: the seed is 17\.4 %/)
  })

  it('through two builds: each has its time, and which seed it wants', async () => {
    await beside(formulasOf(rye)[0]!, 1)
    root().querySelector('select')!.focus()
    await press('ArrowDown')
    await feeding.updateComplete
    await enter(/^First build fed at/, '14:00')
    await enter(/^ripe at/, '6:00')
    // 16 h, as they ripen now at 28 °C: 5 and 10 h, a third and two thirds
    equal(field(/^Second build fed at/).value, '19:20')
    match(said(), /\d+(\.\d+)? % seed in First build for 5 h 20/)
    match(said(), /\d+(\.\d+)? % seed in Second build for 10 h 40/)
    await enter(/^Second build fed at/, '20:00')
    match(said(), /in First build for 6 h .*in Second build for 10 h at/)
    const before = [amounts(0), amounts(1)].join()
    await feedIt()
    ok([amounts(0), amounts(1)].join() !== before)
    around.history.undo()
    equal([amounts(0), amounts(1)].join(), before)
  })

  it('on a day its times follow from the plan; those typed are held with the edit, and all of it is one step', async () => {
    const saturday = await onDay([mill()], { kitchen: 20, ready: '14:00' })
    const fed = field(/^Fed at, .*follows/).value
    match(fed, /^\d+:\d\d$/)
    equal(field(/^Where it stands/), undefined, 'the day says it')
    match(said(), /where it stands at 20 °C/)
    await enter(/^Fed at/, '20:00')
    equal(getComputedStyle(field(/^Fed at/)).fontWeight, '680')
    await feedIt()
    deepEqual(
      saturday.day.holds.map(hold => hold.at),
      ['2026-12-04T20:00'],
    )
    match(amounts()[0]!, /^\d+(\.\d+)? g$/)
    ok(amounts()[0] !== '100 g')
    around.history.undo()
    equal(saturday.day.holds.length, 0)
    equal(amounts()[0], '100 g')
  })

  it('a build that two breads share is fed in both', async () => {
    const saturday = await onDay([mill(), mill('Country', 720)], {
      together: ['levain'],
      kitchen: 20,
      ready: '14:00',
    })
    match(said(), /Also in Country, which shares it/)
    equal(root().host.getRootNode() instanceof ShadowRoot, true)
    await feedIt()
    equal(amounts(0, 0).join(), amounts(0, 1).join())
    ok(amounts()[0] !== '100 g')
    equal(
      saturday.workbook.formulas[0]!.stages[0]!.method![1]!.text,
      saturday.workbook.formulas[1]!.stages[0]!.method![1]!.text,
    )
  })

  for (const { width, height } of sizes)
    itOnce(`holds up at ${width} × ${height}, light and dark, by axe`, async () => {
      await setViewport({ width, height })
      await onDay([mill(), ...formulasOf(rye)], { kitchen: 20, ready: '16:00' })
      await enter(/^Fed at/, '18:00')
      root().querySelector('details')!.open = true
      for (const colorScheme of ['light', 'dark'] as const) {
        await emulateMedia({ colorScheme })
        await passesAxe(shown)
      }
      ok(document.documentElement.scrollWidth <= width, 'nothing sticks out to the side')
    })
})
