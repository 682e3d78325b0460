import assert from 'node:assert/strict'
import { test } from 'node:test'
import { bakesIn } from '../../src/day/bench/bake-data.js'
import { bakedWith, bakeRecord } from '../../src/day/bench/bake-record.js'
import { noteBowl, tickOff } from '../../src/day/bench/bench-edits.js'
import { todoName } from '../../src/day/bench/words.js'
import { larderWith } from '../../src/dough/larder/usual-larder.js'
import { Lived, list, worked } from './lived.js'
import { near } from './near.js'
import { bread, saturday } from './notation.js'

test('a stage made for two breads is done once, and is in the bakes of both', () => {
  const make = (name: string) =>
    bread(
      name,
      `Levain:
         Starter 20 g
         Bread flour 50 g
         Water 50 g
         hands Feed: 10 min
         wait Ripen: 8–10 h
       Final dough:
         Bread flour 500 g
         Water 300 g
         Levain 120 g
         hands Mix: 10 min
         wait Bulk: 3–5 h
         bake Bake: 40 min`,
    )
  const both = [make('Mill wheat'), make('Tin loaf')]
  const day = saturday([
    [both[0]!, 2],
    [both[1]!, 2],
  ])
  const lived = new Lived(both, { ...day, together: ['levain'] })
  lived.now = 1500
  assert.equal(lived.shown.todos.filter(todo => todoName(todo) === 'Feed').length, 1)
  lived.done('Feed')
  const bakes = bakesIn(lived.workbook)
  assert.equal(bakes.length, 2)
  for (const { moments } of bakes) assert.equal(moments.filter(({ at }) => at).length, 2)

  // Each has the levain's times, until it is taken.
  lived.now = 2040
  lived.done('Mix')
  const now = bakesIn(lived.workbook)
  const records = now.map(bake => bakeRecord(bake, larderWith([]), undefined, bakedWith(bake, now)))
  for (const { steps } of records)
    assert.deepEqual(
      steps.slice(0, 2).map(({ name, at, planned }) => [name, at === undefined, planned === undefined]),
      [
        ['Feed', false, false],
        ['Ripen', false, false],
      ],
    )
  assert.deepEqual(
    records.map(({ steps }) => Math.round(steps[1]!.took ?? 0)),
    [540 - 10, 0],
  )
})

test('what was weighed for two breads is each one’s own part in their bakes', () => {
  const make = (name: string) =>
    bread(
      name,
      `Levain:
         Starter 20 g
         Bread flour 50 g
         Water 50 g
         hands Feed: 10 min
         wait Ripen: 8–10 h
       Final dough:
         Bread flour 500 g
         Water 300 g
         Levain 120 g
         hands Mix: 10 min
         bake Bake: 40 min`,
    )
  const both = [make('Mill wheat'), make('Tin loaf')]
  const day = saturday([
    [both[0]!, 2],
    [both[1]!, 4],
  ])
  // Of doughs of 1800 g and 3600 g in 920 g: 20 g of starter become 39.13 g and 78.26 g, together 117 g.
  const lived = new Lived(both, { ...day, together: ['levain'] })
  lived.now = 1500
  const [starter] = list(lived, 'Feed').lines
  lived.apply(tickOff(lived.workbook, lived.where, lived.todo('Feed'), starter!, 234))
  const bakes = bakesIn(lived.workbook)
  const went = bakes.map(bake => {
    const { weights } = bakeRecord(bake, larderWith([]), undefined, bakedWith(bake, bakes))
    return Math.round(weights.find(({ ingredient }) => ingredient === 'Starter')!.grams!)
  })
  assert.deepEqual(went, [78, 156])
})

test('a bowl that is not tared is in what the scale says, until it is', () => {
  const lived = worked()
  lived.now = 1700
  const before = list(lived, 'Mix')
  lived.apply(noteBowl(lived.workbook, lived.where, lived.todo('Mix'), 812))
  const with812 = list(lived, 'Mix')
  assert.equal(with812.tare, 812)
  near(with812.total!, before.total! + 812)
  near(with812.lines[0]!.bowl!, before.lines[0]!.bowl! + 812)
  lived.apply(noteBowl(lived.workbook, lived.where, lived.todo('Mix'), undefined))
  assert.deepEqual(list(lived, 'Mix').total, before.total)
})
