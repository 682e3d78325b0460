import assert from 'node:assert/strict'
import { test } from 'node:test'
import { besides, differenceOf, type Pair } from '../../src/dough/about/beside.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { near } from '../assert.js'
import { formulaOf, workedCheck } from './notation.js'

const beside = (left: string, right: string) =>
  besides(openFormula(formulaOf(left)), openFormula(formulaOf(right)))
const said = ({ left, right }: Pair) => [left, right]
const linesOf = (left: string, right: string, stage = 'Final dough') =>
  beside(left, right)
    .stages.find(s => s.name === stage)!
    .lines.map(l => `${l.ingredient}${l.only ? ` only ${l.only}` : ''}`)

test('lines are matched by ingredient and stage, in the order of the left one, with what only the right has last', () => {
  assert.deepEqual(
    linesOf(
      'Final dough:\n flour = 1000 g\n water = 700 g\n salt = 20 g',
      'Final dough:\n salt = 21 g\n oil = 30 g\n flour = 1000 g',
    ),
    ['flour', 'water only left', 'salt', 'oil only right'],
  )
})

test('an ingredient is the same by any of its names, and two lines of one stand in their order', () => {
  const { stages } = beside(
    'Final dough:\n Ripe starter = 10 g\n water = 600 g\n water = 50 g',
    'Final dough:\n water = 610 g\n Sourdough starter = 20 g\n Water = 55 g\n water = 5 g',
  )
  assert.deepEqual(
    stages[0]!.lines.map(l => [l.ingredient, l.only, ...said(l.weight)]),
    [
      ['Ripe starter', undefined, 10, 20],
      ['water', undefined, 600, 610],
      ['water', undefined, 50, 55],
      ['water', 'right', undefined, 5],
    ],
  )
})

test('final doughs stand with each other and last, whatever they are called; other stages go by name', () => {
  const { stages } = beside(
    'Levain:\n flour = 100 g\nDough:\n flour = 900 g\n levain = 100 g',
    'Dough:\n rye flour = 50 g\nPoolish:\n flour = 1 g\nFinal:\n flour = 1000 g\n dough = 50 g',
  )
  assert.deepEqual(
    stages.map(s => [s.name, s.only]),
    [
      ['Levain', 'left'],
      ['Dough', 'right'],
      ['Poolish', 'right'],
      ['Dough', undefined],
    ],
  )
  assert.deepEqual(
    stages[3]!.lines.map(l => l.ingredient),
    ['flour', 'levain', 'dough'],
  )
})

test('readings and percentages stand with their differences', () => {
  const { readings, stages } = beside(workedCheck, workedCheck.replace('water = 690 g', 'water = 740 g'))
  const hydration = readings.find(r => r.name === 'trueHydration')!
  near(differenceOf(hydration), (50 * 11) / 12260, 1e-9)
  assert.equal(differenceOf(readings.find(r => r.name === 'salt')!), undefined, 'the same')
  const water = stages.at(-1)!.lines.find(l => l.ingredient === 'water')!
  assert.deepEqual(said(water.percent), [0.69, 0.74])
  near(differenceOf(water.weight), 50, 1e-12)
})

test('a reading that neither has is left out, one that only one has has no difference', () => {
  const { readings } = beside(
    'Final dough:\n bread flour = 100 g\n egg = 50 g',
    'Final dough:\n bread flour = 100 g',
  )
  assert.equal(
    readings.some(r => r.name === 'milk'),
    false,
  )
  const egg = readings.find(r => r.name === 'egg')!
  assert.deepEqual(said(egg), [0.5, 0])
  assert.equal(differenceOf({ left: 1, right: undefined }), undefined)
})

test('what differs by the last digit of a double is the same', () => {
  assert.equal(differenceOf({ left: 0.1 + 0.2, right: 0.3 }), undefined)
  assert.equal(differenceOf({ left: 0, right: 0 }), undefined)
  near(differenceOf({ left: 1, right: 1 + 1e-9 }), 1e-9, 1e-6)
})

test('a formula beside itself has no difference at all', () => {
  const { readings, stages } = beside(workedCheck, workedCheck)
  const pairs = [...readings, ...stages.flatMap(s => s.lines.flatMap(l => [l.weight, l.percent]))]
  assert.ok(pairs.length > 20)
  for (const pair of pairs) assert.equal(differenceOf(pair), undefined)
  assert.ok(stages.every(s => !s.only && s.lines.every(l => !l.only)))
})

test('lines without anything on them are passed over, an amount not understood has no figure', () => {
  const formula = formulaOf('Final dough:\n flour = 100 g\n oil = what')
  const blank = { ...formula.stages[0]!.lines[0]!, id: 'blank', ingredient: '', amount: '' }
  const left = {
    ...formula,
    stages: [{ ...formula.stages[0]!, lines: [...formula.stages[0]!.lines, blank] }],
  }
  const { stages } = besides(
    openFormula(left),
    openFormula(formulaOf('Final dough:\n flour = 100 g\n oil = 1 g')),
  )
  assert.deepEqual(
    stages[0]!.lines.map(l => [l.ingredient, ...said(l.weight)]),
    [
      ['flour', 100, 100],
      ['oil', undefined, 1],
    ],
  )
})
