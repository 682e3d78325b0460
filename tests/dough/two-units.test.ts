import assert from 'node:assert/strict'
import { test } from 'node:test'
import { type FormulaSheet, openFormula } from '../../src/dough/formula-sheet.js'
import { formulaOf } from './notation.js'
import { plainLarder } from './plain-larder.js'

const near = (actual: number | undefined, expected: number) =>
  assert.ok(
    Math.abs((actual ?? Number.NaN) - expected) <= 1e-9 * Math.max(1, expected),
    `${actual} is ${expected}`,
  )

interface Case {
  readonly title: string
  readonly lines: string
  readonly flour?: number // the flour weight set
  readonly weights: readonly number[] // of the lines, in their order, grams
  readonly said: string
  readonly others: readonly string[]
}

// Each by hand from F = Σa ÷ (1 − Σb); where Σb is 1 or more, F is the flour weight.
const cases: readonly Case[] = [
  {
    title: 'a flour in grams among percentages that leave room fixes the base',
    lines: 'flour = 80%; rye = 250 g; water = 70%; salt = 2%',
    weights: [1000, 250, 875, 25],
    said: 'rye in Final dough is 250 g, and the other flours are in percentages: it is the 20 % that they leave, so 100 % is 1,250 g.',
    others: ['20%'],
  },
  {
    title: 'a flour in grams on top of 100 % leaves the base as it was',
    lines: 'flour = 100%; rye = 200 g; water = 70%; salt = 2%',
    weights: [1000, 200, 700, 20],
    said: 'rye in Final dough is 200 g, and the other flours are in percentages: 20 % on top, so the flours add to 120 % of 1,000 g.',
    others: ['20%'],
  },
  {
    title: 'a percentage that was typed as grams can be either',
    lines: 'flour = 100%; rye = 30 g; water = 70%; salt = 2%',
    flour: 500,
    weights: [500, 30, 350, 10],
    said: 'rye in Final dough is 30 g, and the other flours are in percentages: 6 % on top, so the flours add to 106 % of 500 g.',
    others: ['30%', '6%'],
  },
  {
    title: 'a percentage among grams is of all flour',
    lines: 'flour = 800 g; rye = 20%; water = 700 g; salt = 20 g',
    weights: [800, 200, 700, 20],
    said: 'rye in Final dough is 20 %, and the other flours are in grams: it is 200 g, since 100 % is 1,000 g with it.',
    others: ['20 g', '200 g'],
  },
  {
    title: 'a whole percentage among grams is of the flour weight',
    lines: 'flour = 800 g; rye = 100%; water = 700 g; salt = 20 g',
    weights: [800, 1000, 700, 20],
    said: 'rye in Final dough is 100 %, and the other flours are in grams: 1,000 g on top, so the flours add to 180 % of 1,000 g.',
    others: ['100 g', '1000 g'],
  },
]

const dough = (lines: string, flourWeight = 1000): FormulaSheet =>
  openFormula(formulaOf(`Final dough:\n${lines.replaceAll('; ', '\n')}`, { flourWeight }), plainLarder)

const mixed = (sheet: FormulaSheet) => sheet.problems.filter(p => p.code === 'baseInOtherUnit')

for (const { title, lines, flour, weights, said, others } of cases)
  test(title, () => {
    const sheet = dough(lines, flour)
    const of = sheet.formula.stages[0]!.lines
    for (const [i, weight] of weights.entries()) near(sheet.line(of[i]!.id).weight, weight)
    for (const name of ['trueHydration', 'salt', 'doughWeight'] as const)
      assert.notEqual(sheet.reading(name), undefined)
    assert.deepEqual(
      mixed(sheet).map(p => p.message),
      [said],
    )
    assert.deepEqual((mixed(sheet)[0] as unknown as { others: string[] }).others, others)
    assert.equal(
      sheet.problems.some(p => p.severity === 'error'),
      false,
    )
    assert.equal(
      sheet.problems.some(p => p.code === 'baseNotWhole'),
      false,
    )
  })

test('what may have been meant is said no more once it is typed', () => {
  const sheet = dough('flour = 100%; rye = 30 g; water = 70%')
  sheet.enter('Final dough', 'rye', 'weight', '30%')
  assert.deepEqual(mixed(sheet), [])
  near(sheet.weight('Final dough', 'rye'), 300)
})

test('typed one after the other, amounts come to the same as in a formula opened anew', () => {
  const sheet = dough('flour = 80%; rye = 20%; water = 70%; salt = 2%')
  for (const [ingredient, text] of [
    ['rye', '200 g'],
    ['flour', '100%'],
    ['rye', '150 g'],
    ['flour', '60%'],
    ['flour', '1200 g'],
    ['rye', '100%'],
    ['rye', '25%'],
  ] as const) {
    sheet.enter('Final dough', ingredient, 'weight', text)
    const anew = openFormula(sheet.formula, plainLarder)
    for (const { id } of sheet.formula.stages[0]!.lines)
      assert.equal(sheet.line(id).weight, anew.line(id).weight, `${ingredient} ${text}`)
    assert.notEqual(sheet.reading('trueHydration'), undefined)
  }
})

test('in an earlier stage flours in grams on top of 100 % are what that is of', () => {
  const levain = openFormula(
    formulaOf(`
      Levain:
        starter = 20 g
        flour = 100%
        rye = 30 g
        water = 60%
      Final dough:
        flour = 1000 g
        water = 700 g
        Levain = all of it`),
    plainLarder,
  )
  near(levain.weight('Levain', 'flour'), 30)
  near(levain.weight('Levain', 'water'), 18)
  near(levain.weight('Final dough', 'Levain'), 20 + 30 + 30 + 18)
  near(levain.reading('trueHydration'), (700 + 18 + 10) / (1000 + 60 + 10))
  assert.match(levain.working(`stage ${levain.formula.stages[0]!.id} base`).figures, /^30 g = 30 g$/)
})
