import assert from 'node:assert/strict'
import { test } from 'node:test'
import { alarmsOf, ringing } from '../../src/day/bench/alarms.js'
import { bakesIn } from '../../src/day/bench/bake-data.js'
import { happenedAt } from '../../src/day/bench/bench-day.js'
import {
  finishBench,
  noteDone,
  noteNotDone,
  putOff,
  setTimer,
  tickAgain,
  tickOff,
} from '../../src/day/bench/bench-edits.js'
import { whatDoesNotFit, whatIsLate, whatMoved } from '../../src/day/bench/rescheduled.js'
import { type BenchNow, beginningOf, thenOf } from '../../src/day/bench/todos.js'
import { todoName } from '../../src/day/bench/words.js'
import { Lived, list, start, worked } from './lived.js'
import { near } from './near.js'
import { bread, saturday } from './notation.js'
import { workedWheat } from './worked-bread.js'

const names = ({ todos }: BenchNow) => todos.map(todo => todoName(todo))

test('a bench has what hands do, by the clock, and nothing is kept before something is done', () => {
  const lived = new Lived([workedWheat()], saturday([[workedWheat(), 6]]))
  const formula = lived.workbook.formulas[0]!
  lived.workbook = { ...lived.workbook, days: [saturday([[formula, 6]])] }
  lived.now = 1600
  assert.deepEqual(names(lived.shown), [
    'Mix',
    'Mix',
    'Salt',
    'Bulk, first fold',
    'Bulk, second fold',
    'Divide and shape',
    'Bake: into the oven',
    'Bake: out of the oven',
  ])
  assert.equal(todoName(lived.shown.current!), 'Mix')
  near(lived.shown.current!.due - start, 1695)
  assert.deepEqual(bakesIn(lived.workbook), [])
  assert.equal(thenOf(lived.sheet, lived.shown.current!)!.step.does, 'Ripen')
})

test('a levain mixed a quarter of an hour late shortens every wait by the same part of its leeway', () => {
  const lived = worked()
  lived.now = 1720
  lived.done('Mix')
  // 15 min less among 120 + 30 + 60 + 180 min of leeway; the folds stay 30 min apart.
  const part = 15 / 390
  near(lived.due('Mix'), 1720 + 540 - 120 * part)
  near(lived.due('Salt'), 1720 + 540 + 10 + 45 - 150 * part)
  near(lived.due('Divide and shape'), 1720 + 540 + 10 + 45 + 5 + 240 - 210 * part)
  near(lived.due('Bake: into the oven'), 3375)
  const [bake] = bakesIn(lived.workbook)
  assert.equal(bake!.formula.name, 'Mill wheat')
  assert.equal(bake!.moments.find(({ at }) => at)!.planned, '2026-12-04T04:15:00Z') // as the day has it
  assert.equal(bake!.moments.filter(({ at }) => at).length, 2)
})

test('a whole day: steps early, late and unsaid, each wait that is over as it was, and at the end all is done', () => {
  const lived = worked()
  lived.now = 1700
  lived.done('Mix')
  lived.now = 2250
  lived.apply(tickOff(lived.workbook, lived.where, lived.todo('Mix'), list(lived, 'Mix').lines[0]!))
  assert.equal(lived.todo('Mix').begun, start + 2250)
  lived.now = 2265
  lived.done('Mix') // five minutes longer than it takes
  lived.now = 2300
  lived.done('Salt') // rested 30 minutes
  assert.equal(bakesIn(lived.workbook)[0]!.moments.filter(({ at }) => at).length, 6)
  lived.now = 2340 // the first fold was made and not said
  lived.done('Bulk, second fold')
  assert.ok(!names(lived.shown).includes('nothing'))
  assert.equal(lived.shown.todos.filter(({ done, noted }) => done !== undefined && !noted).length, 1)
  assert.equal(todoName(lived.shown.current!), 'Divide and shape')
  // Bulk began at 2300; divide and retard share what is left until 3375: 240 + 20 + 810 = 1070 of 1075, 60 : 180.
  near(lived.due('Divide and shape'), 2300 + 240 + (5 * 60) / 240)
  lived.now = 2600
  lived.done('Divide and shape')
  lived.now = 3380
  lived.done('Bake: into the oven')
  assert.equal(lived.shown.underWay[0]!.event.step.does, 'Bake')
  near(lived.due('Bake: out of the oven'), 3425)
  lived.now = 3420
  lived.done('Bake: out of the oven')
  assert.equal(lived.shown.current, undefined)
  lived.apply(finishBench(lived.workbook, lived.where))
  const [bake] = bakesIn(lived.workbook)
  assert.equal(bake!.finished, '2026-12-05T09:00:00Z')
})

test('what has not begun does not begin before now, and a wait that is longer than it may be is as long as it is', () => {
  const lived = worked()
  lived.now = 1705
  lived.done('Mix')
  lived.now = 2350 // the levain may have 600 minutes, and has 645
  near(lived.due('Mix'), 2350)
  near(lived.due('Bake: into the oven'), 3375)
})

test('where the time cannot be kept the bread is later, in a sentence with what could give', () => {
  const lived = worked()
  lived.now = 1705
  lived.done('Mix')
  lived.now = 2500
  // From mixing on at least 10 + 30 + 5 + 210 + 20 + 720 + 45 = 1040 minutes: 3540 is two hours late.
  const { sheet } = lived
  const late = whatIsLate(sheet, start + lived.now)
  assert.equal(late.length, 1)
  assert.match(late[0]!, /^Mill wheat can no longer be ready at 9:00: it is at 11:00, 2 h later\./)
  assert.match(late[0]!, /Rest, bulk and retard are as short as they may be/)
})

test('one sentence says what moved when something is put off', () => {
  const lived = worked()
  lived.now = 1705
  lived.done('Mix')
  const before = lived.shown.todos
  lived.apply(putOff(lived.workbook, lived.where, lived.todo('Mix'), 'Mix', start + 2265))
  near(lived.due('Mix'), 2265)
  assert.match(
    whatMoved(before, lived.shown.todos, lived.sheet),
    /^Mix is at 13:45 now, 20 min later; 4 more move, by at most \d+ min\.$/,
  )
  assert.equal(whatMoved(lived.shown.todos, lived.shown.todos, lived.sheet), '')
})

test('what was done is not done again when it is taken back, and the times follow', () => {
  const lived = worked()
  lived.now = 1690
  const before = lived.shown.todos.map(({ due }) => due)
  lived.done('Mix')
  const todo = lived.shown.todos.find(({ done }) => done !== undefined)!
  lived.apply(noteNotDone(lived.workbook, lived.where, todo, 'Mix'))
  assert.deepEqual(
    lived.shown.todos.map(({ due }) => Math.round(due)),
    before.map(Math.round),
  )
})

test('the night stays closed while nobody is at the bench, and is open to who has just done something', () => {
  const night = { asleep: [{ from: '22:30', until: '6:00' }] }
  const lived = worked(night)
  lived.now = 1440 + 200 // 3:20, asleep
  near(lived.due('Mix'), 1800)
  lived.now = 1440 + 340 // 5:40, up early
  lived.done('Mix')
  assert.equal(lived.shown.todos.find(({ done }) => done !== undefined)!.done, start + 1780)
})

test('the weighing list has what the scale says, the bowl as it fills in the order of the ticks, and what is held back', () => {
  const formula = bread(
    'Mill wheat',
    `Final dough:
       Bread flour 1000 g
       Water 650 g
       Water 50 g
       Salt 20 g
       hands Mix: 10 min
       wait Rest: 30 min
       hands Salt: 5 min, adds Salt, Water (2)
       bake Bake: 45 min`,
  )
  const lived = new Lived([{ ...formula, batch: { make: 'factor', factor: 0.5005 } }], undefined)
  lived.now = 600
  const lines = list(lived, 'Mix').lines
  assert.deepEqual(
    lines.map(({ ingredient, wanted, bowl }) => [ingredient, wanted, bowl]),
    [
      ['Bread flour', 501, 501],
      ['Water', 325, 826],
    ],
  )
  assert.deepEqual(lines[1]!.heldBack && { ...lines[1]!.heldBack }, {
    ingredient: 'Water',
    grams: 25,
    at: 'Salt',
  })
  lived.apply(tickOff(lived.workbook, lived.where, lived.todo('Mix'), lines[1]!, 330))
  assert.deepEqual(
    list(lived, 'Mix').lines.map(({ bowl }) => bowl),
    [831, 330],
  )
  lived.apply(tickAgain(lived.workbook, lived.where, lived.todo('Mix'), list(lived, 'Mix').lines[1]!))
  assert.equal(list(lived, 'Mix').lines[0]!.bowl, 501)
})

test('a formula by itself is weighed and timed from now on, also where it has no method', () => {
  const formula = bread(
    'Plain',
    `Levain:
       Starter 20 g
       Bread flour 50 g
       Water 50 g
     Final dough:
       Bread flour 500 g
       Water 300 g
       Levain 120 g`,
  )
  const lived = new Lived([formula], undefined)
  lived.now = 600
  assert.deepEqual(names(lived.shown), ['Weigh and mix', 'Weigh and mix'])
  assert.equal(lived.shown.current!.event.stageName, 'Levain')
  near(lived.shown.current!.due - start, 600)
  lived.done('Weigh and mix')
  lived.now = 640
  assert.equal(lived.shown.current!.event.stageName, 'Final dough')
  assert.equal(list(lived, 'Weigh and mix').total, 920)
})

test('a formula that is changed afterwards leaves the bake as it stood', () => {
  const lived = worked()
  lived.now = 1705
  lived.done('Mix')
  const [formula] = lived.workbook.formulas
  const stages = formula!.stages.map(s => ({
    ...s,
    lines: s.lines.map(l => (l.ingredient === 'Water' ? { ...l, amount: '1 g' } : l)),
  }))
  lived.workbook = { ...lived.workbook, formulas: [{ ...formula!, stages }] }
  lived.now = 2300
  const water = list(lived, 'Mix').lines.find(({ ingredient }) => ingredient === 'Water')!
  near(water.wanted!, (690 * 5400) / 1921, 1e-3)
})

test('timers are moments: they ring once when they are over, and what is due rings too', () => {
  const lived = worked()
  lived.now = 1600
  lived.apply(setTimer(lived.workbook, lived.where, 'Kettle', 5))
  const alarms = alarmsOf(lived.bench, lived.shown)
  assert.deepEqual(
    alarms.slice(0, 2).map(({ at, timer }) => [Math.round(at - start), timer]),
    [
      [1605, 'Kettle'],
      [1695, undefined],
    ],
  )
  assert.equal(ringing(alarms, start + 1600, start + 1604).length, 0)
  assert.equal(ringing(alarms, start + 1604, start + 1606).length, 1)
  assert.equal(ringing(alarms, start + 1606, start + 1700).length, 1)
})

test('a levain mixed half a day too early is planned all the same, and what falls into the night and is early is said', () => {
  const lived = worked({ asleep: [{ from: '22:30', until: '6:00' }] })
  lived.now = 900 // 15:00: ripe from 23:00 until 1:00 at the latest
  lived.done('Mix')
  const due = lived.due('Mix')
  assert.ok(due >= 910 + 470 && due <= 900 + 600, String(due))
  const said = whatDoesNotFit(lived.sheet, start + lived.now)
  assert.match(said.join(' '), /steps? falls? into the hours of sleep/)
  assert.match(said.join(' '), /Mill wheat is done at \d+:\d\d on Fri, [\dh ]+ before its time/)
})

for (const [what, proof] of [
  ['two breads in loads are lived through to their end, each thing done when it is due', '60–150 min'],
  ['a day whose loads cannot wait for each other is lived through all the same', '60–100 min'],
] as const)
  test(what, () => {
    const rye = bread(
      'Rye',
      `Final dough:
       Rye flour 900 g
       Water 700 g
       Salt 18 g
       hands Mix: 10 min
       wait Bulk: 2–3 h
       hands Shape: 20 min
       wait Proof: ${proof}
       bake Bake: 50 min, 4 at once
       wait Cool: 30 min`,
    )
    const both = [workedWheat(), rye]
    const lived = new Lived(
      both,
      saturday([
        [both[0]!, 4],
        [both[1]!, 8],
      ]),
    )
    lived.now = 1500
    const done: string[] = []
    for (let todo = lived.shown.current; todo; todo = lived.shown.current) {
      lived.now = Math.max(lived.now, todo.due - start + 3) // three minutes late, every time
      const name = todoName(todo)
      done.push(name)
      const from = beginningOf(todo, start + lived.now, happenedAt(lived.bench, start + lived.now))
      lived.apply(noteDone(lived.workbook, lived.where, todo, { name, at: start + lived.now, from }))
      assert.ok(lived.sheet.plan, `there are times after ${name}`)
      assert.ok(done.length < 40, done.join(', '))
    }
    for (const name of ['Bake, load 1: into the oven', 'Bake, load 2: out of the oven', 'Salt', 'Shape'])
      assert.ok(done.includes(name), `${name} among ${done.join(', ')}`)
    assert.equal(new Set(done).size, done.length - 2) // each once, but for mixing, which is done three times
  })
