import assert from 'node:assert/strict'
import { test } from 'node:test'
import '../../src/dough/cells/rare-cells-at-once.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { formulaOf, lineOf } from './notation.js'

/** A levain, and a dough that takes it and has so many seeds besides. */
const bread = (lines: number): Formula =>
  formulaOf(`
    Levain:
      ripe starter = 20%
      bread flour = 100%
      water = 80%
    Final dough:
      bread flour = 80%
      wholemeal spelt = 20%
      water = 70%
      salt = 2%
      levain = 20%
      ${Array.from({ length: lines - 8 }, (_, i) => `spice ${i} = ${1 + (i % 5)}%`).join('\n')}`)

/** What an update to another amount of an ingredient of the final dough costs. */
function costOf(lines: number, ingredient: string, amount: string, of = bread(lines)) {
  const sheet = openSheet(of)
  const { id } = lineOf(of, 'Final dough', ingredient)
  const stages = of.stages.map(stage => ({
    ...stage,
    lines: stage.lines.map(line => (line.id === id ? { ...line, amount } : line)),
  }))
  const before = sheet.workedOut.graph.evaluations
  const { lines: touched } = sheet.update({ ...of, stages })
  const { planned, defined } = sheet.workedOut.lastUpdate()
  return { planned, defined, workedOut: sheet.workedOut.graph.evaluations - before, touched: touched.size }
}

for (const [ingredient, amount] of [
  ['spice 3', '4.5%'],
  ['salt', '2.2%'],
  ['water', '71%'],
  ['spice 3', '0.5% + 2 g + 1%'],
  ['water', '30 * salt'],
] as const)
  test(`${ingredient} typed as ${amount} plans and works out as many cells among 30 lines as among 5,000`, () => {
    const [few, some, many] = [30, 500, 5000].map(lines => costOf(lines, ingredient, amount))
    assert.deepEqual(some, few)
    assert.deepEqual(many, few)
    if (/^[\d.]+%$/.test(amount)) assert.ok(few!.planned <= 12 && few!.defined <= 12, JSON.stringify(few))
  })

test('a levain moves every share of all flour, and still plans as many cells among 30 lines as among 5,000', () => {
  const [few, many] = [30, 5000].map(lines => costOf(lines, 'levain', '21%'))
  assert.deepEqual([many!.planned, many!.defined], [few!.planned, few!.defined])
  assert.equal(many!.touched, 5000)
})

test('a batch plans how often the stages are made, however many lines they have', () => {
  const cost = (lines: number) => {
    const formula = bread(lines)
    const sheet = openSheet(formula)
    sheet.update({ ...formula, batch: { make: 'pieces', pieces: [{ count: 6, weight: 900 }] } })
    return sheet.workedOut.lastUpdate()
  }
  assert.deepEqual(cost(500), cost(30))
  assert.deepEqual(cost(30), { planned: 3, defined: 3 }) // times of both stages, and what is needed of the levain
})

test('the flour weight plans one cell', () => {
  const formula = bread(30)
  const sheet = openSheet(formula)
  sheet.update({ ...formula, flourWeight: 1200 })
  assert.deepEqual(sheet.workedOut.lastUpdate(), { planned: 1, defined: 1 })
})

test('a hold at another value plans as many cells among 30 lines as among 5,000', () => {
  const cost = (lines: number) => {
    const formula = bread(lines)
    const hold = { reading: 'trueHydration', line: lineOf(formula, 'Final dough', 'water').id } as const
    const sheet = openSheet({ ...formula, holds: [{ ...hold, value: 0.7 }] })
    const { lines: touched } = sheet.update({ ...sheet.formula, holds: [{ ...hold, value: 0.72 }] })
    assert.deepEqual([...touched], [hold.line])
    return sheet.workedOut.lastUpdate()
  }
  assert.deepEqual(cost(5000), cost(30))
  assert.ok(cost(30).planned <= 12)
})
