import assert from 'node:assert/strict'
import { test } from 'node:test'
import { happenedAt } from '../../src/day/bench/bench-day.js'
import { putOff, tickOff } from '../../src/day/bench/bench-edits.js'
import { cutShort, waitsBefore } from '../../src/day/bench/cut-short.js'
import { movedBy } from '../../src/day/bench/rescheduled.js'
import { todoName } from '../../src/day/bench/words.js'
import { type Lived, list, start, worked } from './lived.js'
import { near } from './near.js'

const happened = (lived: Lived) => happenedAt(lived.bench, start + lived.now)
const short = (lived: Lived, name: string) =>
  cutShort(lived.sheet, lived.shown, happened(lived), lived.todo(name), start + lived.now)

test('a dough that takes a levain far from ripe would end its wait, and so would all that comes after', () => {
  const lived = worked()
  lived.now = 1705
  lived.done('Mix')
  lived.now = 1805 // ripe after 8 h at the earliest
  for (const name of ['Mix', 'Salt', 'Divide and shape']) {
    const [wait, more] = short(lived, name)
    assert.equal(wait?.event.step.does, 'Ripen', name)
    assert.equal(more, undefined)
  }
  near(short(lived, 'Mix')[0]!.since - start, 1705)
  lived.now = 1705 + 8 * 60 - 4
  assert.deepEqual(short(lived, 'Mix'), [])
})

test('nothing is ended by what the wait is not before, nor by what has begun', () => {
  const lived = worked()
  lived.now = 1600
  assert.deepEqual(short(lived, 'Mix'), [])
  lived.now = 1705
  lived.done('Mix')
  lived.now = 2300
  const [line] = list(lived, 'Mix').lines
  lived.apply(tickOff(lived.workbook, lived.where, lived.todo('Mix'), line!))
  assert.deepEqual(short(lived, 'Mix'), [])
  // By what to see its end is asked for before and after the first tick: the page does not jump.
  assert.deepEqual(
    waitsBefore(lived.sheet, happened(lived), lived.todo('Mix')).map(({ step }) => step.does),
    ['Ripen'],
  )
})

test('each thing to do that moves has by how much', () => {
  const lived = worked()
  lived.now = 1705
  lived.done('Mix')
  const before = lived.shown.todos
  const was = lived.due('Mix')
  lived.apply(putOff(lived.workbook, lived.where, lived.todo('Mix'), 'Mix', start + 2265))
  const moved = movedBy(before, lived.shown.todos)
  const mix = lived.todo('Mix')
  near(moved.get(mix.key)!, 2265 - was)
  assert.equal(moved.size, 5) // and four more, as the sentence says
  assert.ok(!lived.shown.todos.some(todo => todo.done !== undefined && moved.has(todo.key)), todoName(mix))
})

test('salt that goes into a dough is weighed on the dough, and the first of a stage into an empty bowl', () => {
  const lived = worked()
  lived.now = 2300
  assert.deepEqual(
    ['Mix', 'Salt'].map(name => list(lived, name).isOnDough),
    [false, true],
  )
})

test('water is as warm at the bench as the heat balance of the day has it', () => {
  const lived = worked({ kitchen: 18 })
  lived.now = 1600
  const water = list(lived, 'Mix').lines.find(({ ingredient }) => ingredient === 'Water')!
  assert.ok(water.water!.celsius > 24, `a cold kitchen wants warm water: ${water.water!.celsius}`)
  assert.deepEqual(
    list(lived, 'Mix')
      .lines.filter(line => line.water)
      .map(({ ingredient }) => ingredient),
    ['Water'],
  )
})
