import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Day } from '../../src/dough/document/day.js'
import { isClock, isDate, isLocalTime, isZone, problemOfDay } from '../../src/dough/document/day-checks.js'
import { applyChanges, type Transaction, type Workbook } from '../../src/dough/document/workbook.js'
import { Refusal } from '../../src/dough/edits/edits.js'
import {
  addBread,
  addDay,
  changeBread,
  changeDay,
  copyDay,
  holdMoment,
  newDay,
  newOven,
  releaseMoment,
  removeBread,
  removeDay,
  renameDay,
  setLeeway,
  setMix,
} from '../../src/dough/edits/fetched/day-edits.js'
import { removeFormula } from '../../src/dough/edits/fetched/shelf-edits.js'
import { bread } from '../day/notation.js'

const rye = bread('Rye', 'Final dough:\n Rye flour 500 g\n hands Mix: 10 min\n bake Bake: 1 h')
const six = { make: 'pieces', pieces: [{ count: 6, weight: 900 }] } as const
const shelf: Workbook = { name: 'Mill', formulas: [rye], larder: [] }
const saturday = newDay({ name: 'Saturday oven', date: '2026-12-05', zone: 'Europe/Paris', ready: '8:00' })

/** The workbook after an edit, once it is seen that its inverse brings back the very same as before. */
function after(workbook: Workbook, edit: Transaction | undefined): Workbook {
  assert.ok(edit, 'something changes')
  const done = applyChanges(workbook, edit.changes)
  assert.deepEqual(applyChanges(done.workbook, done.inverse).workbook, workbook)
  return done.workbook
}
const only = ({ days = [] }: Workbook): Day => {
  assert.equal(days.length, 1)
  return days[0]!
}
const planned = after(shelf, addDay(saturday))
const baked = after(planned, addBread(planned, saturday.id, { formula: rye.id, batch: six }))
const at = { day: saturday.id, bread: only(baked).breads[0]!.id }
const moment = `${at.bread} ${rye.stages[0]!.id} ${rye.stages[0]!.method![1]!.id}`
const held = after(baked, holdMoment(baked, saturday.id, moment, '2026-12-05T06:30', 'Bake'))
const mixed = after(held, setMix(held, at, rye.stages[0]!.id, { wanted: 28, water: 35 }))

test('a day is added and removed, and a workbook without days has no list of them', () => {
  assert.deepEqual(planned.days, [saturday])
  const { cleared: _cleared, ...removed } = after(planned, removeDay(planned, saturday.id))
  assert.deepEqual(removed, shelf)
  assert.equal(addDay({ ...saturday, name: ' Sunday ' }).label, 'Plan Sunday')
})

test('days are kept in order when one of them is taken away and brought back', () => {
  let workbook: Workbook = shelf
  for (const name of ['a', 'b', 'c']) workbook = after(workbook, addDay({ ...saturday, id: name, name }))
  const done = applyChanges(workbook, removeDay(workbook, 'b').changes)
  assert.deepEqual(
    done.workbook.days!.map(d => d.id),
    ['a', 'c'],
  )
  assert.deepEqual(
    applyChanges(done.workbook, done.inverse).workbook.days!.map(d => d.id),
    ['a', 'b', 'c'],
  )
})

test('a day is renamed, and its fields said otherwise or no longer', () => {
  const renamed = renameDay(planned, saturday.id, ' Market ')
  assert.equal(renamed!.label, 'Rename Saturday oven to Market')
  assert.equal(only(after(planned, renamed)).name, 'Market')
  assert.equal(renameDay(planned, saturday.id, 'Saturday oven'), undefined)
  const begun = after(
    planned,
    changeDay(planned, saturday.id, { ready: undefined, begin: '7:00', kitchen: 19 }),
  )
  assert.deepEqual(
    only(begun),
    (({ ready: _, ...day }) => ({ ...day, begin: '7:00', kitchen: 19 }))(saturday),
  )
  assert.equal(changeDay(planned, saturday.id, { kitchen: 22, ready: '8:00', tap: undefined }), undefined)
})

test('breads are put on a day, changed and taken off with what was held and said of them', () => {
  assert.deepEqual(only(baked).breads, [{ id: at.bread, formula: rye.id, batch: six }])
  assert.equal(
    addBread(planned, saturday.id, { formula: rye.id, batch: six }).label,
    'Bake Rye on Saturday oven',
  )
  const late = after(baked, changeBread(baked, at, { ready: '9:00', batch: { make: 'as written' } }))
  assert.deepEqual(only(late).breads, [
    { id: at.bread, formula: rye.id, batch: { make: 'as written' }, ready: '9:00' },
  ])
  assert.deepEqual(after(late, changeBread(late, at, { ready: undefined, batch: six })), baked)
  assert.equal(changeBread(baked, at, { batch: six }), undefined)
  assert.deepEqual(after(mixed, removeBread(mixed, at)), planned)
})

test('a second bread goes where it is said to, and keeps its holds when the first goes', () => {
  const two = after(mixed, addBread(mixed, saturday.id, { formula: rye.id, batch: six }, 0))
  const [first] = only(two).breads
  assert.equal(only(two).breads[1]!.id, at.bread)
  const one = after(two, removeBread(two, { day: saturday.id, bread: first!.id }))
  assert.deepEqual(one, mixed)
})

test('a moment is held, held elsewhere and released', () => {
  assert.deepEqual(only(held).holds, [{ moment, at: '2026-12-05T06:30' }])
  assert.equal(holdMoment(held, saturday.id, moment, '2026-12-05T06:30'), undefined)
  const other = holdMoment(held, saturday.id, moment, '2026-12-05T07:05', 'Bake')
  assert.equal(other!.label, 'Hold Bake at 7:05')
  assert.deepEqual(only(after(held, other)).holds, [{ moment, at: '2026-12-05T07:05' }])
  assert.deepEqual(after(held, releaseMoment(held, saturday.id, moment)), baked)
  assert.equal(releaseMoment(baked, saturday.id, moment), undefined)
})

test('temperatures of a mixing are said, said otherwise, and follow again', () => {
  const stage = rye.stages[0]!.id
  assert.deepEqual(only(mixed).mixes, [{ bread: at.bread, stage, wanted: 28, water: 35 }])
  assert.equal(setMix(held, at, stage, { wanted: 28 })!.label, 'Temperatures of Final dough')
  const following = after(mixed, setMix(mixed, at, stage, { water: undefined, rise: 3 }))
  assert.deepEqual(only(following).mixes, [{ bread: at.bread, stage, wanted: 28, rise: 3 }])
  const none = after(following, setMix(following, at, stage, { wanted: undefined, rise: undefined }))
  assert.deepEqual(none, held)
  assert.equal(setMix(mixed, at, stage, { wanted: 28 }), undefined)
})

test('a day like an earlier one has its breads, holds as far from it, wishes but no measurements', () => {
  const measured = after(mixed, setMix(mixed, at, rye.stages[0]!.id, { room: 17 }))
  const copied = after(measured, copyDay(measured, saturday.id, '2027-01-02'))
  const [first, second] = copied.days!
  assert.equal(first, measured.days![0])
  assert.notEqual(second!.id, first!.id)
  assert.deepEqual(second, {
    ...first!,
    id: second!.id,
    date: '2027-01-02',
    holds: [{ moment, at: '2027-01-02T06:30' }],
    mixes: [{ bread: at.bread, stage: rye.stages[0]!.id, wanted: 28 }],
  })
  const eve = after(held, holdMoment(held, saturday.id, moment, '2026-12-04T23:10'))
  // 27 days on: from the 4th of December to the 31st
  assert.equal(after(eve, copyDay(eve, saturday.id, '2027-01-01')).days![1]!.holds[0]!.at, '2026-12-31T23:10')
})

test('the leeway is set, and taken back to the usual', () => {
  const loose = after(shelf, setLeeway(0.25))
  assert.equal(loose.leeway, 0.25)
  assert.equal(after(loose, setLeeway(0)).leeway, 0)
  assert.deepEqual(after(loose, setLeeway(undefined)), shelf)
})

test('a formula may go while a day bakes it: the day keeps its entry', () => {
  const gone = after(baked, removeFormula(baked, rye.id))
  assert.deepEqual(gone.days, baked.days)
  assert.equal(removeBread(gone, at).label, 'Take a bread off Saturday oven')
  assert.throws(() => addBread(gone, saturday.id, { formula: rye.id, batch: six }), Refusal)
})

for (const [what, edit, code] of [
  ['a name', () => renameDay(planned, saturday.id, ' '), 'dayWithoutName'],
  ['a date', () => changeDay(planned, saturday.id, { date: '2026-02-30' }), 'dayDateUnknown'],
  ['a date to copy to', () => copyDay(planned, saturday.id, 'soon'), 'dayDateUnknown'],
  ['a zone', () => changeDay(planned, saturday.id, { zone: 'Mill/Brackwater' }), 'dayZoneUnknown'],
  ['a time to be ready', () => changeDay(planned, saturday.id, { ready: '25:00' }), 'dayClockUnknown'],
  [
    'a night',
    () => changeDay(planned, saturday.id, { asleep: [{ from: '22', until: '6:00' }] }),
    'dayClockUnknown',
  ],
  ['a time to hold', () => holdMoment(baked, saturday.id, moment, '6:30'), 'dayLocalUnknown'],
  ['an oven', () => changeDay(planned, saturday.id, { ovens: [] }), 'dayWithoutOven'],
  [
    'an oven that heats at once',
    () => changeDay(planned, saturday.id, { ovens: [newOven('x', { heating: -1 })] }),
    'ovenTimeNegative',
  ],
  [
    'an oven that holds something',
    () => changeDay(planned, saturday.id, { ovens: [newOven('x', { atOnce: 0 })] }),
    'ovenHoldsNothing',
  ],
  ['a baker', () => changeDay(planned, saturday.id, { bakers: 0 }), 'dayWithoutBaker'],
  ['a kitchen', () => changeDay(planned, saturday.id, { kitchen: Number.NaN }), 'temperatureOutOfRange'],
  ['a dough that is no ember', () => setMix(baked, at, 'x', { wanted: 300 }), 'temperatureOutOfRange'],
  ['a mixing that warms', () => setMix(baked, at, 'x', { rise: -3 }), 'riseOutOfRange'],
  ['a batch', () => changeBread(baked, at, { batch: { make: 'dough', grams: 0 } }), 'batchNotAboveZero'],
  ['a leeway of less than all', () => setLeeway(1), 'leewayOutOfRange'],
  ['a day that is there', () => removeDay(shelf, saturday.id), 'dayGone'],
  ['a bread that is there', () => removeBread(planned, at), 'breadGone'],
] as const)
  test(`a day needs ${what}: else nothing is changed, and it is said why`, () => {
    assert.throws(edit, (error: unknown) => {
      assert.ok(error instanceof Refusal)
      assert.equal(error.problem.code, code)
      assert.match(error.message, /^[A-Z].*\.$/)
      return true
    })
  })

test('dates, clock times and zones are told from what is none', () => {
  assert.deepEqual(['2026-12-05', '2028-02-29'].map(isDate), [true, true])
  assert.deepEqual(
    ['2027-02-29', '2026-13-01', '5.12.2026', '', '2026-12-05T00:00'].map(isDate),
    Array(5).fill(false),
  )
  assert.deepEqual(['8:00', '08:00', '23:59', '0:00'].map(isClock), Array(4).fill(true))
  assert.deepEqual(['24:00', '8', '8:60', '8.30', ''].map(isClock), Array(5).fill(false))
  assert.deepEqual(['2026-12-05T06:30', '2026-12-05T6:30', '2026-12-05 06:30'].map(isLocalTime), [
    true,
    false,
    false,
  ])
  assert.deepEqual(['UTC', 'Europe/Paris', '', 'Nowhere'].map(isZone), [true, true, false, false])
  assert.equal(problemOfDay(saturday), undefined)
})
