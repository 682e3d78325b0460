import assert from 'node:assert/strict'
import { describe, test } from 'node:test'
import type { Batch, KeepBack } from '../../src/dough/document/batch.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { near } from '../assert.js'
import { formulaOf, withStages, workedCheck } from './notation.js'
import { plainLarder } from './plain-larder.js'

interface Case {
  readonly title: string
  readonly formula?: string
  readonly stages?: Readonly<Record<string, { readonly keepBack?: KeepBack; readonly loss?: number }>>
  readonly batch: Batch
  readonly weights: readonly (readonly [stage: string, ingredient: string, grams: number])[]
}

const loaf = workedCheck
  .replaceAll('bread flour', 'flour')
  .replace('wholemeal spelt', 'spelt')
  .replace('ripe starter', 'starter')

// Each fraction was worked out apart from this project, with exact rational arithmetic.
const cases: readonly Case[] = [
  {
    title: 'three shapes at once, 3 % lost',
    batch: {
      make: 'pieces',
      pieces: [
        { count: 4, weight: 900 },
        { count: 12, weight: 85 },
        { count: 2, weight: 1200 },
      ],
      loss: 0.03,
    },
    weights: [['Final dough', 'water', 484380000 / 186337]],
  },
  {
    title: 'keep-back through two builds, with a loss',
    formula: `
      First:
        starter = 20 g
        rye = 50 g
        water = 50 g
      Second:
        first = 60 g
        flour = 100 g
        water = 60 g
      Final dough:
        flour = 1000 g
        water = 600 g
        salt = 20 g
        second = 200 g`,
    stages: { First: { keepBack: 30 }, Second: { keepBack: 40, loss: 0.05 } },
    batch: { make: 'dough', grams: 3640 },
    weights: [
      ['Second', 'first', 26280 / 209],
      ['First', 'starter', 5425 / 209],
      ['Final dough', 'second', 400],
    ],
  },
  {
    title: 'baked weight, as much levain kept back as its seed',
    stages: { Levain: { keepBack: 'seed' } },
    batch: { make: 'baked pieces', pieces: [{ count: 2, weight: 1000 }], bakeLoss: 0.12, loss: 0.02 },
    weights: [
      ['Levain', 'starter', 25000000 / 443751],
      ['Final dough', 'levain', (210 * 1250000) / 1035419],
    ],
  },
  {
    title: 'flour weight, prefermented flour included',
    batch: { make: 'flour', grams: 5000 },
    weights: [['Final dough', 'levain', 577500 / 613]],
  },
  {
    title: 'all of 310 g of ripe levain',
    batch: { make: 'all of', ingredient: 'Levain', grams: 310 },
    weights: [
      ['Final dough', 'levain', 310],
      ['Final dough', 'water', 7130 / 7],
      ['Levain', 'flour', (310 * 100) / 220],
    ],
  },
  {
    title: 'all of 2 kg of a flour that is also in a levain that is kept back',
    stages: { Levain: { keepBack: 50 } },
    batch: { make: 'all of', ingredient: 'flour', grams: 2000 },
    weights: [
      ['Final dough', 'flour', (820 * 2175) / 1007],
      ['Levain', 'flour', 230500 / 1007],
    ],
  },
  {
    title: 'a poolish that two stages take, made twice with some kept back',
    formula: `
      Poolish:
        flour = 100%
        water = 100%
      Sponge:
        poolish = 150 g
        flour = 200 g
        water = 100 g
      Final dough:
        flour = 1000 g
        water = 600 g
        salt = 20 g
        poolish = 300 g
        sponge = 400 g`,
    stages: { Poolish: { keepBack: 20 } },
    batch: { make: 'factor', factor: 2 },
    weights: [
      ['Poolish', 'flour', 1330 / 3],
      ['Sponge', 'flour', (800 * 200) / 450],
      ['Final dough', 'sponge', 800],
    ],
  },
  {
    title: 'as written, what is left over included',
    batch: { make: 'as written' },
    weights: [
      ['Levain', 'flour', 100],
      ['Final dough', 'water', 690],
    ],
  },
]

describe('A batch weighs what exact fractions say', () => {
  for (const { title, formula = loaf, stages = {}, batch, weights } of cases) {
    test(title, () => {
      const sheet = openFormula(
        withStages(formulaOf(formula), s => ({ ...s, ...stages[s.name] })),
        plainLarder,
      )
      sheet.make(batch)
      for (const [stage, ingredient, grams] of weights)
        near(sheet.batchWeight(stage, ingredient), grams, 1e-9, `${ingredient} in ${stage}`)
    })
  }
})

test('a batch of a dough with a hold scales what the hold makes of it', () => {
  const sheet = openFormula(formulaOf(loaf), plainLarder)
  sheet.hold('trueHydration', 0.75, { stage: 'Final dough', ingredient: 'water' })
  sheet.make({ make: 'factor', factor: 3 })
  near(sheet.batchWeight('Final dough', 'water'), 24435 / 11)
  near(sheet.reading('trueHydration'), 0.75)
})

const refused: readonly (readonly [batch: Batch, why: RegExp])[] = [
  [
    { make: 'pieces', pieces: [{ count: 0, weight: 900 }] },
    /Pieces are a number above 0 times a weight above 0/,
  ],
  [{ make: 'pieces', pieces: [] }, /Pieces are/],
  [{ make: 'dough', grams: -5 }, /a number of grams above 0/],
  [{ make: 'all of', ingredient: ' ', grams: 310 }, /Say of which ingredient all is to be made/],
  [{ make: 'factor', factor: Number.NaN }, /A factor is a number above 0/],
  [{ make: 'dough', grams: 500, loss: 1 }, /A loss is a percentage/],
]
for (const [batch, why] of refused) {
  test(`a batch that cannot be is refused: ${JSON.stringify(batch)}`, () => {
    assert.throws(() => openFormula(formulaOf(loaf), plainLarder).make(batch), why)
  })
}

test('all of an ingredient that is not there has no batch and says so', () => {
  const sheet = openFormula(formulaOf(loaf), plainLarder)
  sheet.make({ make: 'all of', ingredient: 'honey', grams: 100 })
  assert.equal(sheet.batchWeight('Final dough', 'water'), undefined)
  assert.ok(sheet.problems.some(p => /There is no honey in the formula/.test(p.message)))
})
