import '../../components/water/tb-temperatures'
import { emulateMedia, setViewport } from '@web/test-runner-commands'
import type { TbTemperatures } from '../../components/water/tb-temperatures'
import type { TbWaits } from '../../components/water/tb-waits'
import type { TbWater } from '../../components/water/tb-water'
import flatbread from '../../examples/held-back-flatbread.csv'
import wheat from '../../examples/mill-wheat.csv'
import buns from '../../examples/morning-buns.csv'
import rye from '../../examples/two-build-rye.csv'
import type { Day } from '../../src/dough/document/day'
import { deepEqual, equal, match, ok } from '../assert'
import { bread } from '../day/notation'
import { press, type } from '../keys'
import { itOnce } from '../once'
import { sizes } from './dialogs'
import { dressPage, english, passesAxeInBoth, textOf } from './mount'
import { formulasOf, PlannedSaturday } from './saturday'

/** 900 g of flour and 200 g of levain at 100 %, 650 g of water, 18 g of salt. */
const worked = () =>
  bread(
    'Mill wheat',
    `Levain:
       Ripe starter 20 g
       Bread flour 90 g
       Water 90 g
       hands Mix: 10 min
       wait Ripen: 9 h, at 24 °C
     Final dough:
       Bread flour 900 g
       Water 650 g
       Salt 18 g
       Levain 200 g
       hands Mix: 10 min
       wait Bulk: 4 h, at 25 °C
       bake Bake: 45 min`,
  )

describe('The water of a day', () => {
  let saturday: PlannedSaturday
  let place: TbTemperatures

  async function show(formulas = [worked()], more: Partial<Day> = {}, props: object = {}) {
    saturday = new PlannedSaturday(formulas, more)
    const day = {
      ...saturday.day,
      breads: saturday.day.breads.map(b => ({ ...b, batch: { make: 'as written' as const } })),
    }
    saturday.around.history.apply({ label: '', changes: [{ of: 'day', id: day.id, value: day }] })
    place = saturday.show(document.createElement('tb-temperatures'), props)
    await settled()
  }
  const water = () => place.shadowRoot!.querySelector<TbWater>('tb-water')!
  const waits = () => place.shadowRoot!.querySelector<TbWaits>('tb-waits')!
  const settled = async () => {
    await place.updateComplete
    await water().updateComplete
    await waits().updateComplete
  }
  const root = () => water().shadowRoot!
  const headings = () => [...root().querySelectorAll<HTMLElement>('h3 button')]
  const open = () => root().querySelector<HTMLElement>('.entry:has([aria-expanded=true])')!
  const row = (what: string) =>
    [...root().querySelectorAll<HTMLElement>('.entry li')].find(li => textOf(li).startsWith(what))!
  const field = (what: string) => row(what).querySelector('input')!
  const ways = () => textOf(root().querySelector('.ways')).replaceAll(' ', ' ')
  const isTyped = (what: string) => getComputedStyle(field(what)).fontWeight === '680'

  async function enter(what: string, text: string) {
    field(what).focus()
    await type(text)
    await press('Enter')
    await settled()
  }
  /** Opens the mixing of a stage alone. */
  async function openOnly(stage: string) {
    for (const button of headings()) {
      const isIt = textOf(button).startsWith(stage)
      if ((button.ariaExpanded === 'true') === isIt) continue
      button.focus()
      await press('Enter')
      await settled()
    }
  }

  before(dressPage)
  afterEach(async () => {
    place.remove()
    await setViewport({ width: 1440, height: 900 })
    await emulateMedia({ colorScheme: 'light' })
  })

  it('is shown for each mixing by both ways, and every number typed is followed', async () => {
    await show([worked()], { kitchen: 21 })
    deepEqual(
      headings().map(h => textOf(h).replaceAll(' ', ' ')),
      ['Levain of Mill wheat 24.2 °C', 'Final dough of Mill wheat 26.5 °C'],
    )
    await openOnly('Final dough')
    await enter('Levain', '24')
    // The worked check: 25.8 °C; by factors 4 × 25 − 21 − 21 − 24 − 4.
    equal(ways(), '25.8 °C for the water, by heat balance 30 °C by factors, to compare')
    await enter('Rise', '5')
    equal(ways(), '18.5 °C for the water, by heat balance 14 °C by factors, to compare')
    deepEqual(['Levain', 'Rise', 'Bread flour', 'Room'].map(isTyped), [true, true, false, false])
    match(field('Levain').ariaLabel!, /^Levain in Final dough of Mill wheat, °C, typed$/)
    match(field('Room').ariaLabel!, /follows$/)
  })

  it('a number that is emptied or released follows again, undo takes the last back, and the focus stays', async () => {
    await show([worked()], { kitchen: 21 })
    await openOnly('Final dough')
    await enter('Room', '17')
    equal(field('Bread flour').value, '17')
    await enter('Bread flour', '19')
    equal(field('Bread flour').value, '19')
    equal(field('Salt').value, '17')
    await enter('Bread flour', '')
    equal(field('Bread flour').value, '19', 'nothing typed over a selection changes nothing')
    field('Bread flour').focus()
    await press('Control+a', 'Delete', 'Enter')
    await settled()
    equal(field('Bread flour').value, '17')
    row('Room').querySelector<HTMLElement>('.release')!.focus()
    await press('Enter')
    await settled()
    equal(field('Room').value, '21')
    equal(root().activeElement, field('Room') as Element)
    equal(saturday.day.mixes, undefined)
    saturday.around.history.undo()
    equal(saturday.day.mixes![0]!.room, 17)
  })

  it('degrees Fahrenheit are read, and what is none is said beneath and kept as typed', async () => {
    await show()
    await openOnly('Final dough')
    await enter('Dough wanted', '77 F')
    equal(field('Dough wanted').value, '25')
    ok(!isTyped('Dough wanted') || saturday.day.mixes![0]!.wanted === 25)
    await enter('Room', 'warm')
    match(textOf(row('Room')), /Write a temperature, such as 24 or 75 °F\./)
    equal(field('Room').value, 'warm')
    await press('Escape')
    await settled()
    equal(field('Room').value, '24')
    await enter('Room', '400')
    match(textOf(row('Room')), /A temperature is a number of °C from −50 to 100\./)
  })

  it('where the tap is too warm ice takes the place of some of the water, less from the freezer', async () => {
    await show([worked()], { kitchen: 30 })
    await openOnly('Final dough')
    for (const [what, text] of [
      ['Levain', '28'],
      ['Dough wanted', '24'],
      ['Rise', '3'],
      ['Tap', '20'],
    ] as const)
      await enter(what, text)
    equal(ways().split(' for the water')[0], '14.1 °C')
    const ice = () => textOf(root().querySelector('.ice')).replaceAll(' ', ' ')
    equal(ice(), 'From a tap of 20 °C: 38.7 g of it as ice, 611 g of water.')
    equal(saturday.day.tap, 20)
    const day = { ...saturday.day, freezer: -18 }
    saturday.around.history.apply({ label: '', changes: [{ of: 'day', id: day.id, value: day }] })
    Object.assign(place, { day })
    await settled()
    // 650 × 4.185 × 5.95 ÷ (18 × 1.958 + 334 + 4.185 × 20), in Python
    match(ice(), /35\.7 g of it as ice from a freezer of -18 °C, 614 g of water/)
  })

  it('measured water tells what the dough will have', async () => {
    await show([worked()], { kitchen: 21 })
    await openOnly('Final dough')
    await enter('Levain', '24')
    await enter('Water, measured', '30')
    // 650 g of water at 30: (1620 × 21 + 598.5 × 24 + 15.12 × 21 + 2720.25 × 30) ÷ 4953.87 + 1
    equal(textOf(root().querySelector('.dough')).replaceAll(' ', ' '), 'The dough will have 27.3 °C')
  })

  it('the working shows both ways with their figures', async () => {
    await show([worked()], { kitchen: 21 })
    await openOnly('Final dough')
    await enter('Levain', '24')
    open().querySelector('summary')!.focus()
    await press('Enter')
    const said = textOf(open().querySelector('details')).replaceAll(' ', ' ')
    match(
      said,
      /By factors: 4 × 25 °C − room 21 °C − flour 21 °C − levain 24 °C − friction 4 °C \(4 × 1 °C\) = 30 °C/,
    )
    // 900 × 1.8 × (24 − 21) = 4.9 kJ; the levain, at 24, nothing
    match(said, /Bread flour 900 g 1\.8 21 °C 4\.9/)
    match(said, /Levain 200 g 2\.99 24 °C 0\.0/)
  })

  it('water that harms a levain, and a levain that is too warm, are said', async () => {
    await show([worked()], { kitchen: 2 })
    await openOnly('Final dough')
    await enter('Dough wanted', '28')
    match(textOf(open().querySelector('.remark')), /harms the levain that it meets: keep it to 45 °C/)
    await enter('Levain', '38')
    match(textOf([...open().querySelectorAll('.remark')].at(-1)!), /Levain has 38 °C\. From about 35 °C up/)
  })

  it('waits are ranges with what to look for, and say from what they were scaled', async () => {
    await show([worked()], { kitchen: 20, ready: '9:00' })
    const listed = () =>
      [...waits().shadowRoot!.querySelectorAll('li')].map(li => textOf(li).replaceAll(' ', ' '))
    const [ripen, bulk] = listed()
    // y(24) ÷ y(20) = 1.6226; 9 h ± 15 %, 459 and 621 min, so many times as long and out by 33.6 min
    match(
      ripen!,
      /^Ripen: Levain of Mill wheat Look for: grown to about twice its height, .*domed; it smells/,
    )
    match(ripen!, /11 h 51–17 h 21, so between \d+:\d\d and \d+:\d\d; planned until \d+:\d\d\./)
    match(ripen!, /Written 9 h for 24 °C; at 20 °C it takes 1\.62 times as long, give or take 34 min\./)
    match(bulk!, /a dent made with a finger/, 'the only wait before baking is the proof')
  })

  it('a day of the mill’s examples: milk where there is no water, soakers left out, cautions of the buns', async () => {
    await show(formulasOf(wheat, rye, buns, flatbread), { ready: '12:00', kitchen: 22 })
    const said = headings().map(h =>
      textOf(h)
        .replaceAll(' ', ' ')
        .replace(/[\d.]+ °C$/, '…'),
    )
    deepEqual(said, [
      'Levain of Mill wheat …',
      'Final dough of Mill wheat …',
      'First build of Two-build rye …',
      'Second build of Two-build rye …',
      'Final dough of Two-build rye …',
      'Sweet levain of Morning buns …',
      'Final dough of Morning buns milk …',
      'Biga of Held-back flatbread …',
      'Final dough of Held-back flatbread …',
    ])
    match(
      textOf(waits().shadowRoot!.querySelector('.caution')),
      /^Morning buns As it is planned, what is in Final dough stands/,
    )
  })

  it('to be read only, nothing can be typed', async () => {
    await show([worked()], { mixes: [] }, { readOnly: true })
    ok([...root().querySelectorAll('input')].every(input => input.readOnly))
    equal(root().querySelectorAll('.release').length, 0)
  })

  for (const { width, height } of sizes)
    itOnce(`holds up at ${width} × ${height}, light and dark, by axe`, async () => {
      await setViewport({ width, height })
      await show(formulasOf(wheat, rye, buns), { ready: '12:00', kitchen: 26 }, { numbers: english })
      await enter('Room', '30')
      root().querySelector('details')!.open = true
      await passesAxeInBoth(place)
      ok(document.documentElement.scrollWidth <= width, 'nothing sticks out to the side')
    })
})
