import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Bake } from '../../src/day/bench/bake.js'
import { bakesIn, readBakeData } from '../../src/day/bench/bake-data.js'
import { formulaAsBaked, keepAsBaked } from '../../src/day/bench/bake-formula.js'
import { bakeRecord, beside } from '../../src/day/bench/bake-record.js'
import { changeBake, removeBake, writeDown } from '../../src/day/bench/bench-edits.js'
import { joinedBakes } from '../../src/day/bench/joined-bakes.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { applyChanges, type Unread, type Workbook } from '../../src/dough/document/workbook.js'
import { larderWith } from '../../src/dough/larder/usual-larder.js'
import { workedWheat } from './worked-bread.js'

const larder = larderWith([])
const formula: Formula = { ...workedWheat(), batch: { make: 'factor', factor: 2 } }
const [levain, dough] = formula.stages as [Formula['stages'][0], Formula['stages'][0]]
const step = (stage: Formula['stages'][0], does: string) =>
  `b1 ${stage.id} ${stage.method!.find(one => one.does === does)!.id}`
const line = (stage: Formula['stages'][0], name: string) =>
  stage.lines.find(({ ingredient }) => ingredient === name)!.id
const at = (minutes: number) => new Date(Date.parse('2026-12-04T00:00Z') + minutes * 60_000).toISOString()

const bake: Bake = {
  id: 'one',
  at: at(0),
  name: 'Mill wheat',
  formula,
  bread: 'b1',
  zone: 'UTC',
  moments: [
    { moment: step(levain, 'Mix'), planned: at(0), at: at(5) },
    { moment: step(levain, 'Ripen'), at: at(15) },
    { moment: step(dough, 'Mix'), at: at(555) },
    { moment: step(dough, 'Rest'), at: at(570) },
    { moment: step(dough, 'Salt'), at: at(610) },
    { moment: step(dough, 'Bulk'), at: at(615) },
    { moment: step(dough, 'Divide and shape'), at: at(865) },
  ],
  weighed: [{ moment: step(dough, 'Mix'), line: line(dough, 'Water'), wanted: 1380, grams: 1404 }],
  figures: [{ moment: step(dough, 'Mix'), what: 'dough', value: 25 }],
  timers: [],
  note: '',
  verdict: '',
}
const workbook: Workbook = { name: '', formulas: [formula], larder: [], bakes: [bake as unknown as Unread] }

test('a bake has what each step took, a levain until it is taken, and what went in beside what was wanted', () => {
  const { steps, weights, figures } = bakeRecord(bake, larder)
  assert.deepEqual(
    steps.map(({ stage, name, took }) => [stage, name, took]),
    [
      ['Levain', 'Mix', 10],
      ['Levain', 'Ripen', 540],
      ['Final dough', 'Mix', 15],
      ['Final dough', 'Rest', 40],
      ['Final dough', 'Salt', 5],
      ['Final dough', 'Bulk', 250],
      ['Final dough', 'Divide and shape', undefined],
      ['Final dough', 'Retard', undefined],
      ['Final dough', 'Bake', undefined],
    ],
  )
  const water = weights.find(({ id }) => id === line(dough, 'Water'))!
  assert.deepEqual([water.wanted, water.grams], [1380, 1404])
  const salt = weights.find(({ id }) => id === line(dough, 'Salt'))!
  assert.deepEqual([salt.wanted, salt.grams], [42, undefined])
  assert.deepEqual(
    figures.map(({ what, at, stage, value }) => [what, at, stage, value]),
    [['dough', 'Mix', 'Final dough', 25]],
  )
})

test('it is a formula again: what went in in grams, and the time that each step took in place of the written one', () => {
  const baked = formulaAsBaked(bake, bakeRecord(bake, larder))
  assert.equal(baked.batch, undefined)
  const of = (stage: number, name: string) =>
    baked.stages[stage]!.lines.find(({ ingredient }) => ingredient === name)!.amount
  assert.deepEqual([of(1, 'Water'), of(1, 'Salt'), of(1, 'Levain')], ['1404 g', '42 g', '420 g'])
  const text = (name: string) => baked.stages[1]!.method!.find(({ does }) => does === name)!.text
  assert.deepEqual(
    [text('Mix'), text('Rest'), text('Bulk'), text('Retard')],
    ['15 min', '40 min', '4 h 10, 2 × 5 min every 30 min', '12–15 h'],
  )
})

test('it is kept as a state of the formula on the shelf, or on the shelf itself where that is gone', () => {
  const record = bakeRecord(bake, larder)
  const kept = applyChanges(workbook, keepAsBaked(workbook, bake, record, 'as baked').changes).workbook
  assert.deepEqual(
    kept.formulas[0]!.states!.map(({ name, keptAt }) => [name, keptAt]),
    [['as baked', bake.at]],
  )
  assert.equal(kept.formulas[0]!.stages, formula.stages)
  const bare = { ...workbook, formulas: [] }
  const back = applyChanges(bare, keepAsBaked(bare, bake, record, 'as baked').changes).workbook
  assert.equal(back.formulas[0]!.name, 'Mill wheat')
})

test('two bakes are set beside each other step by step, by what the steps are called', () => {
  const other = bakeRecord({ ...bake, moments: bake.moments.slice(2) }, larder)
  const rows = beside(bakeRecord(bake, larder).steps, other.steps)
  assert.deepEqual(
    rows.slice(0, 3).map(([left, right]) => [left?.took, right?.took]),
    [
      [10, undefined],
      [540, undefined],
      [15, 15],
    ],
  )
})

test('a bake is written down afterwards, said more of, and deleted', () => {
  const bare: Workbook = { name: '', formulas: [formula], larder: [] }
  const made = applyChanges(bare, writeDown(bare, formula.id, 0, 'UTC')!.changes).workbook
  const [one] = bakesIn(made)
  assert.equal(one!.finished, '1970-01-01T00:00:00Z')
  const said = applyChanges(
    made,
    changeBake(made, one!.id, { verdict: 'open', tastes: { open: 5 } })!.changes,
  )
  assert.equal(bakesIn(said.workbook)[0]!.tastes!.open, 5)
  const gone = applyChanges(said.workbook, removeBake(said.workbook, one!.id)!.changes).workbook
  assert.equal('bakes' in gone, false)
})

test('the weight of a bowl is read field by field, and of two places what was noted in either is there', () => {
  const told: unknown[] = []
  const read = readBakeData({ ...bake, bowls: [{ moment: 'm', grams: 812 }, { moment: 'n' }] }, one =>
    told.push(one),
  )
  assert.deepEqual(read!.bowls, [{ moment: 'm', grams: 812 }])
  assert.equal(told.length, 1)
  const joined = joinedBakes(bake, read!)
  assert.deepEqual(joined.bowls, [{ moment: 'm', grams: 812 }])
  assert.equal('bowls' in joinedBakes(bake, bake), false)
})
