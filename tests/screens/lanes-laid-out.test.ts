import assert from 'node:assert/strict'
import { test } from 'node:test'
import { Geometry } from '../../components/lanes/lane-geometry'
import { datesOf, hourMarks, laneDay } from '../../components/lanes/lane-layout'
import { openDay } from '../../src/day/plan/open-day'
import type { Day } from '../../src/dough/document/day'
import { bread, saturday } from '../day/notation'
import { breads, saturdayOven } from './days'

const at = (utc: string) => Date.parse(`${utc}Z`) / 60_000

const overnight = () =>
  bread(
    'Mill wheat',
    `Final dough:
       Flour 1000 g
       hands Mix: 10 min
       wait Bulk: =3 h, 2 × 5 min every 30 min
       hands Shape: 20 min
       wait Retard: =10 h
       bake Bake: 50 min`,
  )
const lanesOf = (day: Day, formula = overnight()) => {
  const breads = day.breads.map(b => ({ ...b, formula: formula.id }))
  const { plan } = openDay({ ...day, breads }, [formula])
  return { plan: plan!, lanes: laneDay(plan!) }
}
const day = (more: Partial<Day> = {}) => saturday([[overnight(), 6]], more)

test('a day has a lane for each bread and each oven that bakes, from a full hour to a full hour', () => {
  // 9:00 less 50 min, 10 h, 20 min, 3 h and 10 min is 18:40; the oven heats from 7:25
  const { lanes } = lanesOf(day())
  assert.deepEqual(
    lanes.lanes.map(({ of, rows, parts }) => [of, rows, parts.map(p => p.shows).join(' ')]),
    [
      ['bread', 1, 'hands wait hands hands hands wait bake'],
      ['oven', 1, 'heating bake'],
    ],
  )
  assert.deepEqual([lanes.from, lanes.until], [at('2026-12-04T18:00'), at('2026-12-05T09:00')])
  const [heating] = lanes.lanes[1]!.parts
  assert.deepEqual([heating!.from, heating!.until], [at('2026-12-05T07:25'), at('2026-12-05T08:10')])
})

test('what happens beside each other in one bread has rows of its own', () => {
  const formulas = breads()
  const { plan } = openDay(saturdayOven(formulas), formulas)
  const { lanes } = laneDay(plan!)
  assert.deepEqual(
    lanes.map(lane => lane.rows),
    [2, 2, 2, 1],
  )
  for (const { parts } of lanes) {
    for (const row of [0, 1]) {
      const here = parts.filter(p => p.row === row && p.event?.time === undefined)
      for (const [i, part] of here.entries())
        assert.ok(i === 0 || part.from >= here[i - 1]!.until - 0.01, 'nothing covers another in its row')
    }
  }
  const moments = new Set(lanes.flatMap(lane => lane.parts.map(p => p.moment)))
  for (const { begins } of plan!.events) assert.ok(moments.has(begins), `${begins} is drawn`)
})

test('nights are cut to what is drawn', () => {
  const { lanes } = lanesOf(
    day({
      asleep: [
        { from: '22:30', until: '6:00' },
        { from: '13:00', until: '18:20' },
      ],
    }),
  )
  assert.deepEqual(lanes.nights, [
    [at('2026-12-04T18:00'), at('2026-12-04T18:20')],
    [at('2026-12-04T22:30'), at('2026-12-05T06:00')],
  ])
})

test('the hours are those of the zone, and midnight begins another date', () => {
  const { lanes } = lanesOf(day({ zone: 'Asia/Kathmandu' })) // +5:45
  const marks = hourMarks(lanes, 'Asia/Kathmandu', 3)
  assert.deepEqual(
    marks.map(m => [m.hour, m.instant - at('2026-12-04T18:15')]),
    [
      [18, -6 * 60],
      [21, -3 * 60],
      [0, 0],
      [3, 3 * 60],
      [6, 6 * 60],
      [9, 9 * 60],
    ],
  )
  assert.deepEqual(
    datesOf(lanes, 'Asia/Kathmandu').map(d => [d.date, d.until - d.from]),
    [
      ['2026-12-04', 6 * 60],
      ['2026-12-05', 9 * 60],
    ],
  )
})

for (const [name, date, hours, missing] of [
  ['forward', '2026-03-29', [18, 19, 20, 21, 22, 23, 0, 1, 3, 4, 5, 6, 7, 8, 9], 2],
  ['back', '2026-10-25', [19, 20, 21, 22, 23, 0, 1, 2, 2, 3, 4, 5, 6, 7, 8, 9], undefined],
] as const)
  test(`where clocks go ${name} lengths stay true and the hours are those the clock shows`, () => {
    // 14 h 20 min before 9:00 it is 17:40 where an hour is left out, 19:40 where one comes twice
    const { lanes } = lanesOf(day({ zone: 'Europe/Paris', date }))
    const shown = hourMarks(lanes, 'Europe/Paris', 1).map(m => m.hour)
    assert.deepEqual(shown, name === 'forward' ? [17, ...hours] : hours)
    assert.ok(missing === undefined || !shown.includes(missing))
    assert.equal(lanes.until - lanes.from, 15 * 60)
  })

test('the end of a year is the end of a date like others', () => {
  const { lanes } = lanesOf(day({ date: '2027-01-01', zone: 'America/New_York' }))
  assert.deepEqual(
    datesOf(lanes, 'America/New_York').map(d => d.date),
    ['2026-12-31', '2027-01-01'],
  )
})

test('as wide as there is room, and never with an hour too narrow to read', () => {
  const { lanes } = lanesOf(day())
  const wide = new Geometry(lanes, 900)
  assert.equal(wide.width, 900)
  assert.equal(wide.x(at('2026-12-05T00:00')), 360) // 6 of 15 hours
  assert.equal(wide.hours, 1)
  const narrow = new Geometry(lanes, 200)
  assert.equal(narrow.width, 15 * 14)
  assert.equal(narrow.hours, 3)
})

test('a place near a narrow step means it, inside a wait far from one the wait, and far from all nothing', () => {
  const { lanes } = lanesOf(day())
  const drawn = new Geometry(lanes, 900) // a minute is one pixel
  const does = (x: number, y: number) => {
    const { part } = drawn.nearest(x, y) ?? {}
    return part && `${part.event?.step.does ?? 'load'}${part.event?.time ?? ''}`
  }
  const y = drawn.parts[0]!.y + 5
  // mixing 18:40–18:50, folds 19:20–19:25 and 19:55–20:00, shaping 21:50–22:10
  assert.equal(does(45, y), 'Mix')
  assert.equal(does(88, y), 'Bulk1')
  assert.equal(does(118, y), 'Bulk2')
  assert.equal(does(170, y), 'Bulk')
  assert.equal(does(240, y), 'Shape')
  assert.equal(does(600, y), 'Retard')
  assert.equal(does(200, drawn.height + 60), undefined)
})

test('keys go by the clock and to what is nearest in the next lane', () => {
  const { lanes } = lanesOf(day())
  const drawn = new Geometry(lanes, 900)
  const name = (step = drawn.steps[0]!) => step.part.event?.step.does ?? 'load'
  assert.deepEqual(
    drawn.steps.map(step => name(step)),
    ['Mix', 'Bulk', 'Bulk', 'Bulk', 'Shape', 'Retard', 'Bake', 'load'],
  )
  const [first, second] = drawn.steps
  assert.equal(drawn.after(first!, 'ArrowRight'), second)
  assert.equal(drawn.after(second!, 'ArrowLeft'), first)
  assert.equal(drawn.after(first!, 'ArrowLeft'), undefined)
  assert.equal(drawn.after(first!, 'End'), drawn.steps.at(-1))
  assert.equal(name(drawn.after(first!, 'ArrowDown')), 'load')
  assert.equal(name(drawn.after(drawn.steps.at(-1)!, 'ArrowUp')), 'Bake')
  assert.equal(drawn.after(first!, 'Tab'), undefined)
})

test('what is made for several has a lane of its own, above those of its breads', () => {
  const of = (name: string) =>
    bread(
      name,
      `Levain:
         Ripe starter 40 g
         Flour 80 g
         hands Mix: 10 min
         wait Ripen: 8–10 h
       Final dough:
         Flour 900 g
         Levain 120 g
         hands Mix: 10 min
         bake Bake: 40 min`,
    )
  const formulas = [of('Mill wheat'), of('Light rye')]
  const both = saturday(
    formulas.map(f => [f, 6] as const),
    { together: ['levain'] },
  )
  const { lanes } = laneDay(openDay(both, formulas).plan!)
  assert.deepEqual(
    lanes.map(({ of, breads, name, parts }) => [of, breads.join(' '), name, parts.length]),
    [
      ['together', 'b1 b2', 'Levain', 2],
      ['bread', 'b1', '', 2],
      ['bread', 'b2', '', 2],
      ['oven', '', 'Oven', 3],
    ],
  )
})
