import { setViewport } from '@web/test-runner-commands'
import type { Day } from '../../src/dough/document/day'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { bread, saturday } from '../day/notation'
import { press, type } from '../keys'
import { itCase } from '../once'
import { asleep, DaysOpened, wheat } from './days-desk'
import { dressPage, textOf } from './mount'

const rolls = () =>
  bread(
    'Rolls',
    `Levain:
       Ripe starter 20 g
       Bread flour 50 g
       Water 40 g
       hands Mix: 10 min
       wait Ripen: 8–10 h
     Final dough:
       Flour 1000 g
       Water 600 g
       Levain 110 g
       hands Mix: 10 min
       wait Rise: 2–3 h, at 24 °C
       bake Bake: 15 min`,
  )

/** Fields of a day by their label, what is typed, and what is then kept. */
const typed: readonly (readonly [
  label: string | RegExp,
  text: string,
  kept: (day: Day) => unknown,
  is: unknown,
])[] = [
  ['Time it is to be ready', '8.30', day => day.ready, '8:30'],
  ['Time it is to be ready', '1015', day => day.ready, '10:15'],
  ['Time it is to be ready', '7:45 pm', day => day.ready, '19:45'],
  ['Date of the day', '2027-01-02', day => day.date, '2027-01-02'],
  ['Date of the day', 'Jan 3 2027', day => day.date, '2027-01-03'],
  ['Temperature of the kitchen', '20.5', day => day.kitchen, 20.5],
  ['Temperature of the kitchen', '68 °F', day => day.kitchen, 20],
  ['Temperature of the proofer', '28', day => day.proofer, 28],
  ['Asleep until', '5:30', day => day.asleep, [{ from: '22:30', until: '5:30' }]],
  ['Number of bakers', '2', day => day.bakers, 2],
  ['Name of the oven', 'Deck', day => day.ovens[0]!.name, 'Deck'],
  [/^Pieces that Oven holds/, '6', day => day.ovens[0]!.atOnce, 6],
  [/^Minutes Oven takes from one load/, '1 h 30', day => day.ovens[0]!.between, 90],
  [
    /^Pieces of Mill wheat/,
    '12',
    day => day.breads[0]!.batch,
    { make: 'pieces', pieces: [{ count: 12, weight: 900 }] },
  ],
  [
    /^Weight of a piece/,
    '1.2 kg',
    day => day.breads[0]!.batch,
    { make: 'pieces', pieces: [{ count: 6, weight: 1200 }] },
  ],
]

/** The same, what is not understood, and the beginning of what is said of it. */
const notRead: readonly (readonly [label: string | RegExp, text: string, why: string])[] = [
  ['Time it is to be ready', 'noon', 'Write a time on the clock, like 9:00 or 18:30.'],
  ['Date of the day', 'soon', 'Write a date, like'],
  ['Date of the day', '31 February', 'Write a date, like'],
  ['Temperature of the kitchen', 'warm', 'Write a temperature, like 21 or 70 °F.'],
  ['Temperature of the fridge', '400', 'Write a temperature, like 21 or 70 °F.'],
  ['Asleep from', '25:00', 'Write a time on the clock'],
  ['Number of bakers', '0', 'Write how many bakers there are, 1 or more.'],
  [/^Pieces that Oven holds/, 'all', 'Write how many pieces it holds'],
  [/^Minutes Oven takes to heat/, 'long', 'Write minutes, like 15, or 1 h 30.'],
  [/^Pieces of Mill wheat/, 'some', 'Write how many pieces, like 6.'],
  [/^Weight of a piece/, '-3', 'Write a weight above 0, like 900 or 1.2 kg.'],
  [/^How much shorter or longer a wait/, '120', 'Write a percentage from 0 to below 100.'],
]

describe('What a day is', () => {
  let open: DaysOpened

  function show(more: Partial<Day> = {}, formulas = [wheat()]) {
    const day = saturday(
      formulas.map(formula => [formula, 6]),
      { asleep, ...more },
    )
    open = new DaysOpened({ formulas: [...formulas, rolls()], days: [day] }, day)
  }

  before(async () => {
    dressPage()
    await setViewport({ width: 1280, height: 900 })
  })
  afterEach(() => open.remove())

  for (const [at, [label, text, kept, is]] of typed.entries())
    itCase(at)(`takes ${text} for ${label}`, async () => {
      show()
      await open.enter(label, text)
      deepEqual(kept(open.day), is)
    })

  for (const [at, [label, text, why]] of notRead.entries())
    itCase(at)(`keeps ${text} for ${label} in its field and says why it is not taken`, async () => {
      show()
      const before = open.day
      await open.enter(label, text)
      const field = await open.find<HTMLInputElement>('input', label)
      equal(field.value, text)
      equal(field.getAttribute('aria-invalid'), 'true')
      ok(textOf(await open.find('.fault', why)).startsWith(why))
      equal(open.day, before)
      await open.enter('Time it is to be ready', '11:00') // another edit leaves it standing
      equal(field.value, label === 'Time it is to be ready' ? '11:00' : text)
    })

  it('is planned forward from when one begins, and back again, each with the time said last', async () => {
    show()
    const from = await open.find<HTMLSelectElement>('select', 'Planned from')
    from.focus()
    await press('B')
    await press('Tab')
    await waitUntil(() => open.day.begin === '7:00' && open.day.ready === undefined, 'it begins at 7:00')
    match(open.rows[0]!, /^7:00 Mix/)
    await open.enter('Time it begins', '8:00')
    from.focus()
    await press('R')
    await press('Tab')
    await waitUntil(
      () => open.day.ready === '9:00' && open.day.begin === undefined,
      'it is ready at 9:00 as before',
    )
  })

  it('proposes what a piece weighs by the formula, or else as on the latest day that baked it', async () => {
    const batch = (weight: number) => ({ make: 'pieces', pieces: [{ count: 8, weight }] }) as const
    const asWritten = { make: 'as written' } as const
    const [own, other, never] = [
      { ...rolls(), name: 'Own', batch: batch(70) },
      rolls(),
      { ...rolls(), name: 'Never' },
    ]
    const on = (date: string, weight: number) => {
      const day = {
        ...saturday([
          [own, 1],
          [other, 1],
        ]),
        id: date,
        date,
      }
      return { ...day, breads: day.breads.map(b => ({ ...b, batch: batch(weight) })) }
    }
    const day = saturday([
      [own, 1],
      [other, 1],
      [never, 1],
    ])
    const now = { ...day, breads: day.breads.map(b => ({ ...b, batch: asWritten })) }
    open = new DaysOpened(
      { formulas: [own, other, never], days: [now, on('2026-11-21', 90), on('2026-11-14', 80)] },
      now,
    )
    const hint = async (name: string) =>
      (await open.find<HTMLInputElement>('input', `Weight of a piece of ${name}`)).placeholder
    equal([await hint('Own'), await hint('Rolls'), await hint('Never')].join(), '70,90,')
    await open.enter('Pieces of Rolls', '40')
    deepEqual(open.day.breads[1]!.batch, { make: 'pieces', pieces: [{ count: 40, weight: 90 }] })
    await open.enter('Pieces of Never', '40')
    await open.find('.hint', 'Say what a piece weighs as well.')
  })

  it('takes a bread, how much of it piece by piece, its own time, and lets it go', async () => {
    show({ asleep: [] })
    ;(await open.find('tb-menu#add')).focus()
    await press('Enter')
    ;(await open.find('[role=menuitem]', 'Rolls')).focus()
    await press('Enter')
    await open.find('li', 'Rolls on this day')
    await open.enter('Pieces of Rolls', '40')
    deepEqual(open.day.breads[1]!.batch, { make: 'as written' })
    await open.enter('Weight of a piece of Rolls', '60')
    deepEqual(open.day.breads[1]!.batch, { make: 'pieces', pieces: [{ count: 40, weight: 60 }] })
    await open.find('.total', '2,400 g of dough')
    await open.enter('Time Rolls is to be ready', '8:00')
    equal(open.day.breads[1]!.ready, '8:00')
    await waitUntil(() => open.rows.some(row => /^7:45 Bake Rolls/.test(row)), 'the rolls are baked at 7:45')
    await open.enter('Time Rolls is to be ready', '')
    equal(open.day.breads[1]!.ready, undefined)
    ;(await open.find('button', 'Actions for Rolls')).focus()
    await press('Enter')
    const takeOff = () =>
      open.all('[role=menuitem]', 'Take off this day').find(entry => entry.checkVisibility())
    ;(await waitUntil(takeOff, 'it can be taken off')).focus()
    await press('Enter')
    await waitUntil(() => open.day.breads.length === 1, 'it is off')
    equal(open.all('li', 'Rolls on this day').length, 0)
  })

  it('says how much in any way a formula does', async () => {
    show()
    ;(await open.find('button', 'Actions for Mill wheat')).focus()
    await press('Enter', 'Enter')
    const way = await open.find<HTMLSelectElement>('select#make')
    way.focus()
    await type('an')
    await press('Tab')
    await open.enter('Weight of dough, grams', '5 kg')
    deepEqual(open.day.breads[0]!.batch, { make: 'dough', grams: 5000 })
    equal(open.around.history.workbook.formulas[0]!.batch, undefined)
    match(textOf(await open.find('.made')), /Make 5,000 g of dough/)
  })

  it('offers to make once what two breads share, and not what is another in each', async () => {
    const [one, two] = [wheat(), { ...wheat(), name: 'Second wheat' }]
    show({}, [one, two])
    const box = await open.find<HTMLInputElement>('input[type=checkbox]')
    match(textOf(box.closest('label')), /Make Levain once for Mill wheat and Second wheat/)
    box.focus()
    await press(' ')
    await waitUntil(() => open.day.together.join() === 'levain', 'it is made once')
    await waitUntil(() => open.rows.filter(row => /Ripen/.test(row)).length === 1, 'it ripens once')
    open.remove()
    const other = {
      ...one,
      id: 'other',
      stages: one.stages.map((s, i) =>
        i ? s : { ...s, lines: s.lines.map(l => (l.ingredient === 'Water' ? { ...l, amount: '81 g' } : l)) },
      ),
    }
    show({}, [wheat(), other])
    await open.find('li', 'Mill wheat on this day')
    equal(open.all('input[type=checkbox]').length, 0)
  })

  it('takes another oven, which a bread may be baked in', async () => {
    show()
    ;(await open.find('button', 'Add an oven')).focus()
    await press('Enter')
    await waitUntil(() => open.day.ovens.length === 2, 'there are two')
    const oven = await open.find<HTMLSelectElement>('select', 'Oven for Mill wheat')
    oven.focus()
    await press('ArrowDown', 'Tab')
    await waitUntil(() => open.day.breads[0]!.oven === open.day.ovens[1]!.id, 'it is baked in the second')
    ;(await open.find('button', 'Leave out Oven 2')).focus()
    await press('Enter')
    await waitUntil(() => open.day.ovens.length === 1, 'there is one')
  })

  it('moves waits of one time by what the workbook says', async () => {
    show()
    await open.enter(/^How much shorter or longer a wait/, '20')
    equal(open.around.history.workbook.leeway, 0.2)
    await open.enter(/^How much shorter or longer a wait/, '15')
    equal(open.around.history.workbook.leeway, undefined)
  })
})
