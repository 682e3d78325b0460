import assert from 'node:assert/strict'
import { describe, test } from 'node:test'
import type { ReadingName } from '../../src/dough/document/reading-names.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { near } from '../assert.js'
import { formulaOf } from './notation.js'
import { plainLarder as larder } from './plain-larder.js'

interface Case {
  readonly title: string
  readonly flourWeight?: number
  readonly formula: string
  readonly readings: Partial<Record<ReadingName, readonly [number, number]>> // numerator, denominator
  readonly weights?: readonly (readonly [
    stage: string,
    ingredient: string,
    numerator: number,
    denominator: number,
  ])[]
}

// Each fraction was worked out apart from this project, with exact rational arithmetic.
const cases: readonly Case[] = [
  {
    title: 'builds three deep, each with some left over',
    formula: `
      First build:
        starter = 10 g
        flour = 25 g
        water = 20 g
      Second build:
        first build = 50 g
        flour = 80 g
        water = 60 g
      Third build:
        second build = 180 g
        flour = 200 g
        water = 150 g
      Final dough:
        flour = 900 g
        water = 640 g
        salt = 22 g
        third build = 500 g`,
    readings: {
      trueHydration: [473789, 656065],
      salt: [121847, 6560650],
      prefermentedFlour: [31520, 131213],
      doughWeight: [2062, 1],
      totalFlour: [13121300, 11077],
      totalWater: [9475780, 11077],
      listedHydration: [640, 900],
      levainOnFlour: [500, 900],
    },
  },
  {
    title: 'a poolish in percentages that two stages take makes just what both take',
    formula: `
      Poolish:
        flour = 100%
        water = 100%
        yeast = 0.2%
      Sponge:
        poolish = 150 g
        flour = 200 g
        water = 100 g
      Final dough:
        flour = 1000 g
        water = 600 g
        salt = 20 g
        poolish = 30%
        sponge = 400 g`,
    readings: {
      trueHydration: [3137, 4831],
      salt: [693, 48310],
      prefermentedFlour: [1366, 4831],
      doughWeight: [2320, 1],
      totalFlour: [966200, 693],
      totalWater: [627400, 693],
      levainOnFlour: [7, 10],
    },
    weights: [
      ['Poolish', 'flour', 225000, 1001],
      ['Poolish', 'yeast', 450, 1001],
    ],
  },
  {
    title: 'percentages only, from the flour weight',
    flourWeight: 750,
    formula: `
      Levain:
        starter = 25%
        flour = 100%
        water = 90%
      Final dough:
        flour = 90%
        rye = 10%
        water = 68%
        salt = 2%
        levain = 22%`,
    readings: {
      trueHydration: [675, 959],
      salt: [86, 4795],
      prefermentedFlour: [99, 959],
      doughWeight: [1440, 1],
      totalFlour: [71925, 86],
      totalWater: [50625, 86],
      listedHydration: [68, 100],
      levainOnFlour: [22, 100],
    },
    weights: [
      ['Levain', 'flour', 3300, 43],
      ['Levain', 'starter', 825, 43],
      ['Final dough', 'rye', 75, 1],
    ],
  },
  {
    title: 'grams only',
    formula: `
      Final dough:
        flour = 800 g
        salt = 16 g
        water = 560 g`,
    readings: { trueHydration: [7, 10], salt: [2, 100], doughWeight: [1376, 1], prefermentedFlour: [0, 1] },
  },
  {
    title: 'flours by percentage, by weight and both: the base makes them add up',
    formula: `
      Final dough:
        flour = 72.5%
        spelt = 18% + 19 g
        rye = 50 g
        water = 70% + 20 g
        salt = 2%
        oil = 2*salt - 0.5% * 4 + 2%`,
    readings: {
      trueHydration: [251, 345],
      salt: [1, 50],
      totalFlour: [13800, 19],
      totalWater: [10040, 19],
      fat: [1, 25],
    },
    weights: [
      ['Final dough', 'spelt', 2845, 19],
      ['Final dough', 'oil', 552, 19],
    ],
  },
  {
    title: 'a soaker without flour is measured against its first line',
    formula: `
      Soaker:
        seeds = 100%
        linseed = 50%
        water = 120%
        salt = 1%
      Final dough:
        flour = 1 kg
        water = 650 g
        salt = 19 g
        soaker = 300 g`,
    readings: {
      trueHydration: [4243, 5420],
      salt: [5449, 271000],
      prefermentedFlour: [0, 1],
      doughWeight: [1969, 1],
      totalFlour: [1000, 1],
      listedHydration: [65, 100],
      levainOnFlour: [0, 1],
    },
    weights: [
      ['Soaker', 'seeds', 30000, 271],
      ['Soaker', 'linseed', 15000, 271],
    ],
  },
  {
    title: 'starters at 60 % and 125 % in one levain, and one in the dough itself',
    formula: `
      Levain:
        firm starter = 30 g
        loose starter = 45 g
        flour = 120 g
        water = 90 g
      Final dough:
        flour = 1000 g
        water = 700 g
        salt = 20 g
        levain = 240 g
        firm starter = 35 g`,
    readings: {
      trueHydration: [24911, 35129],
      salt: [608, 35129],
      prefermentedFlour: [4729, 35129],
      doughWeight: [1995, 1],
      totalFlour: [175645, 152],
      totalWater: [124555, 152],
      levainOnFlour: [275, 1000],
    },
  },
  {
    title: 'spoons, cups and counted things',
    formula: `
      Final dough:
        flour = 1000 g
        water = 3 cup
        salt = 2 1/2 tsp
        oil = 2 tbsp
        egg = 2 each`,
    readings: {
      trueHydration: [711, 1000],
      salt: [3, 200],
      doughWeight: [1853, 1],
      fat: [27 + 9.51, 1000],
      egg: [1, 10],
    },
  },
  {
    title: 'an unknown ingredient counts by its weight alone',
    formula: `
      Final dough:
        flour = 800 g
        water = 70%
        salt = 2%
        moon dust = 15%`,
    readings: { trueHydration: [7, 10], salt: [1, 50], doughWeight: [1496, 1] },
  },
  {
    title: 'amounts that speak of other lines and of another stage',
    formula: `
      Levain:
        starter = 40 g
        flour = 100 g
        water = 80 g
      Final dough:
        flour = 100%
        water = 720 g - levain.water - salt/4
        salt = 2%
        oil = min(2*salt, 50 g)
        levain = levain.weight - 10 g`,
    readings: {
      trueHydration: [1607, 2452],
      salt: [11, 613],
      prefermentedFlour: [63, 613],
      doughWeight: [1905, 1],
      totalFlour: [12260, 11],
    },
    weights: [['Final dough', 'water', 635, 1]],
  },
  {
    title: 'milk, egg and butter bring moisture, not water',
    formula: `
      Levain:
        starter = 20 g
        flour = 100 g
        water = 50 g
      Final dough:
        flour = 1000 g
        water = 150 g
        milk = 300 g
        egg = 2 each
        butter = 12%
        sugar = 10%
        salt = 18 g
        levain = 2*levain.weight`,
    readings: {
      trueHydration: [27, 122],
      moistureHydration: [158017, 305000],
      egg: [5, 61],
      milk: [15, 61],
      fat: [7287, 76250],
      sugar: [3606, 38125],
      salt: [9, 610],
      prefermentedFlour: [11, 61],
    },
  },
]

describe('Readings equal exact fractions', () => {
  for (const { title, formula, readings, weights = [], flourWeight } of cases) {
    test(title, () => {
      const sheet = openFormula(formulaOf(formula, flourWeight ? { flourWeight } : {}), larder)
      for (const [name, [over, under]] of Object.entries(readings) as [ReadingName, [number, number]][])
        near(sheet.reading(name), over / under, 1e-9, name)
      for (const [stage, ingredient, over, under] of weights)
        near(sheet.weight(stage, ingredient), over / under, 1e-9, `${ingredient} in ${stage}`)
    })
  }
})

test('amounts that speak of each other in a circle have no figure and say so; all else is worked out', () => {
  const sheet = openFormula(
    formulaOf(`
      Final dough:
        flour = 1000 g
        water = 20*salt
        salt = water/20
        oil = 3%`),
    larder,
  )
  assert.equal(sheet.weight('Final dough', 'water'), undefined)
  assert.equal(sheet.reading('trueHydration'), undefined)
  near(sheet.weight('Final dough', 'oil'), 30)
  near(sheet.reading('totalFlour'), 1000)
  const said = sheet.problems
    .filter(p => p.severity === 'error')
    .map(p => p.message)
    .join('\n')
  assert.match(
    said,
    /water in Final dough is worked out from salt in Final dough is worked out from water in Final dough/,
  )
})

test('stages that take each other have no make-up and say the path; the rest is worked out', () => {
  const sheet = openFormula(
    formulaOf(`
      Levain:
        flour = 100 g
        sour = 50 g
      Sour:
        levain = 30 g
        rye = 100 g
      Final dough:
        flour = 500 g
        water = 300 g
        levain = 100 g`),
    larder,
  )
  assert.equal(sheet.reading('trueHydration'), undefined)
  assert.equal(sheet.reading('totalFlour'), undefined)
  assert.match(sheet.readingProblem('totalFlour')!.message, /a stage cannot be made of itself/)
  near(sheet.reading('listedHydration'), 0.6)
  near(sheet.reading('doughWeight'), 900)
  assert.match(
    sheet.problems[0]!.message,
    /Levain takes Sour, which takes Levain: a stage cannot be made of itself/,
  )
})
