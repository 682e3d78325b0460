import assert from 'node:assert/strict'
import { describe, test } from 'node:test'
import { finalDoughOf } from '../../src/dough/document/formula.js'
import type { ReadingName } from '../../src/dough/document/reading-names.js'
import { applyChanges, emptyWorkbook } from '../../src/dough/document/workbook.js'
import { enterAmount, holdReading } from '../../src/dough/edits/edits.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { near } from '../assert.js'
import { formulaOf, lineOf } from './notation.js'
import { plainLarder } from './plain-larder.js'

const levain = `
  Levain:
    starter = 40 g
    flour = 100 g
    water = 80 g`

const dough = (lines: string, before = levain) => `${before}
  Final dough:
    ${lines.split('; ').join('\n    ')}`

type Held = readonly [reading: ReadingName, value: number, gives: string]

interface Case {
  readonly title: string
  readonly formula: string
  readonly holds: readonly Held[]
  readonly shares?: Readonly<Record<string, string>> // typed into the whole-dough column of the final dough
  readonly weights: Readonly<Record<string, number>> // grams in the final dough, by ingredient
  readonly readings?: Partial<Record<ReadingName, number>>
}

// Each fraction is the answer of equations written down by hand and solved in exact rational arithmetic.
const cases: readonly Case[] = [
  {
    title: 'four holds at once: hydration, salt, prefermented flour and the weight of the dough',
    formula: dough('flour = 820 g; spelt = 180 g; water = 690 g; salt = 21 g; levain = 210 g'),
    holds: [
      ['trueHydration', 0.76, 'water'],
      ['salt', 0.021, 'salt'],
      ['prefermentedFlour', 0.2, 'levain'],
      ['doughWeight', 3000, 'flour'],
    ],
    weights: {
      water: 1780000 / 1781,
      salt: 63000 / 1781,
      levain: 1100000 / 1781,
      flour: 2079420 / 1781,
      spelt: 180,
    },
    readings: { trueHydration: 0.76, salt: 0.021, prefermentedFlour: 0.2, doughWeight: 3000 },
  },
  {
    title: 'prefermented flour with a levain of two builds',
    formula: dough(
      'flour = 1000 g; water = 650 g; salt = 20 g; second = 300 g',
      `
      First:
        starter = 20 g
        rye = 50 g
        water = 50 g
      Second:
        first = 40%
        flour = 100%
        water = 60%`,
    ),
    holds: [['prefermentedFlour', 0.3, 'second']],
    weights: { second: 5000 / 7 },
    readings: { trueHydration: 131 / 200, prefermentedFlour: 0.3 },
  },
  {
    title: 'moisture hydration by milk, egg and butter beside it',
    formula: dough('flour = 1000 g; water = 200 g; egg = 2 each; butter = 12%; milk = 100 g; levain = 210 g'),
    holds: [['moistureHydration', 0.65, 'milk']],
    weights: { milk: 3313220 / 8813, butter: 120 },
    readings: { moistureHydration: 0.65 },
  },
  {
    title: 'the weight of the dough by one flour, percentages following',
    formula: dough('flour = 100%; spelt = 20%; water = 68%; salt = 2%; levain = 210 g'),
    holds: [['doughWeight', 2000, 'flour']],
    weights: { flour: 14320 / 17, water: 716, levain: 210 },
    readings: { doughWeight: 2000 },
  },
  {
    title: 'hydration, with another line that speaks of the one that gives',
    formula: dough('flour = 800 g; oil = 0.1*water; water = 1 g; salt = 2%; levain = 200 g'),
    holds: [['trueHydration', 0.7, 'water']],
    weights: { water: 6000 / 11, oil: 600 / 11 },
    readings: { doughWeight: 1616 },
  },
  {
    title: 'hydration, with water held back as a part of the water that gives',
    formula: dough('flour = 1000 g; water = 600 g; back = water/10; levain = 200 g').replace(
      'back =',
      'second water =',
    ),
    holds: [['trueHydration', 0.8, 'water']],
    weights: { water: 87600 / 121, 'second water': 8760 / 121 },
  },
  {
    title: 'levain on flour, the flours being percentages of 1000 g',
    formula: dough('flour = 90%; spelt = 10%; water = 65%; levain = 1 g'),
    holds: [['levainOnFlour', 0.25, 'levain']],
    weights: { levain: 250, flour: 900 },
  },
  {
    title: 'all flour by one of the flours',
    formula: dough('flour = 900 g; spelt = 100 g; water = 650 g; levain = 200 g'),
    holds: [['totalFlour', 1500, 'spelt']],
    weights: { spelt: 5400 / 11, flour: 900 },
    readings: { totalFlour: 1500 },
  },
  {
    title: 'listed hydration, with water held back',
    formula: dough('flour = 1000 g; water = 600 g; second water = 50 g; levain = 200 g'),
    holds: [['listedHydration', 0.66, 'water']],
    weights: { water: 610 },
    readings: { listedHydration: 0.66 },
  },
  {
    title: 'a formula written entirely by whole-dough percentages',
    formula: dough(
      'flour =; spelt =; water =; salt =; levain =',
      `
      Levain:
        starter = 10%
        flour = 100%
        water = 60%`,
    ),
    holds: [['prefermentedFlour', 0.18, 'levain']],
    shares: { flour: '80', spelt: '20', water: '78', salt: '2 %' },
    weights: { flour: 620, spelt: 200, water: 4740 / 7, salt: 20, levain: 2040 / 7 },
    readings: { totalFlour: 1000, trueHydration: 138 / 175, salt: 0.02, prefermentedFlour: 0.18 },
  },
  {
    title: 'one flour as a share of all flour, the other in grams',
    formula: dough('flour = 1000 g; spelt =; water = 700 g; levain = 200 g'),
    holds: [],
    shares: { spelt: '25' },
    weights: { spelt: 12200 / 33 },
  },
]

describe('Holds are met, as exact fractions say', () => {
  for (const { title, formula, holds, shares = {}, weights, readings = {} } of cases) {
    test(title, () => {
      const larder = {
        ...plainLarder,
        find: (name: string) => plainLarder.find(name === 'second water' ? 'water' : name),
      }
      const written = formulaOf(formula)
      const sheet = openFormula(written, larder)
      for (const [ingredient, share] of Object.entries(shares))
        sheet.enter('Final dough', ingredient, 'wholeDough', share)
      for (const [reading, value, ingredient] of holds)
        sheet.hold(reading, value, { stage: 'Final dough', ingredient })
      assert.deepEqual(
        sheet.problems.filter(p => p.severity === 'error'),
        [],
      )
      for (const [ingredient, weight] of Object.entries(weights))
        near(sheet.weight('Final dough', ingredient), weight, 1e-9, ingredient)
      for (const [name, value] of Object.entries(readings))
        near(sheet.reading(name as ReadingName), value, 1e-9, name)
      // What was typed is as it was typed.
      assert.deepEqual(sheet.formula.stages, written.stages)
    })
  }
})

const refused: readonly (readonly [
  title: string,
  formula: string,
  holds: readonly Held[],
  sentence: RegExp,
])[] = [
  [
    'a contradictory pair',
    dough('flour = 1000 g; water = 700 g; salt = 20 g; levain = 200 g'),
    [
      ['totalWater', 800, 'water'],
      ['trueHydration', 0.6, 'salt'],
    ],
    // 800 ÷ (1000 + 200·120/220), whatever the salt weighs
    /True hydration cannot be 60 %: at least 72\.2 % while water stays\./,
  ],
  [
    'a negative outcome',
    dough('flour = 1000 g; water = 700 g; levain = 400 g'),
    [['trueHydration', 0.05, 'water']],
    // the levain's own: 400·100/220 ÷ (1000 + 400·120/220)
    /True hydration cannot be 5 %: at least 15 % while flour and levain stay\./,
  ],
  [
    'a line that makes no difference',
    dough('flour = 1000 g; water = 700 g; salt = 20 g'),
    [['trueHydration', 0.7, 'salt']],
    /the weight of salt is left open|No weight of salt gives true hydration/,
  ],
]
for (const [title, formula, holds, sentence] of refused) {
  test(`said in words, the last good weights kept, all else worked out: ${title}`, () => {
    const sheet = openFormula(formulaOf(formula), plainLarder)
    const water = finalDoughOf(sheet.formula).lines.find(l => l.ingredient === 'water')!
    sheet.hold('trueHydration', 0.75, { stage: 'Final dough', ingredient: 'water' })
    sheet.release('trueHydration')
    let good = sheet.line(water.id).weight
    for (const [reading, value, ingredient] of holds) {
      sheet.hold(reading, value, { stage: 'Final dough', ingredient })
      if (!sheet.line(water.id).isStale) good = sheet.line(water.id).weight
    }
    const said = sheet.problems.filter(p => p.severity === 'error').map(p => p.message)
    assert.match(said.join('\n'), sentence)
    assert.equal(said.length, 1)
    near(sheet.weight('Final dough', 'flour'), 1000)
    if (holds.some(([, , gives]) => gives === 'water')) {
      assert.equal(sheet.line(water.id).isStale, true)
      near(sheet.line(water.id).weight, good!)
    }
  })
}

test('one flour as a share of the whole and the rest in per cent, which no dough has: said, not a dough of nothing', () => {
  const sheet = openFormula(
    formulaOf(dough('flour = 75%; spelt =; water = 70%; salt = 2%; levain = 20%')),
    plainLarder,
  )
  sheet.enter('Final dough', 'spelt', 'wholeDough', '18')
  const said = sheet.problems.filter(p => p.severity === 'error').map(p => p.message)
  assert.equal(said.length, 1)
  assert.match(said[0]!, /With spelt held at 18 % of all flour only an empty dough would fit/)
  assert.equal(sheet.weight('Final dough', 'water'), undefined)
})

test('a line that gives without an answer shows what it weighed before it gave', () => {
  const sheet = openFormula(formulaOf(dough('flour = 1000 g; water = 700 g; levain = 400 g')), plainLarder)
  sheet.hold('trueHydration', 0.05, { stage: 'Final dough', ingredient: 'water' })
  const water = finalDoughOf(sheet.formula).lines.find(l => l.ingredient === 'water')!
  assert.deepEqual([sheet.line(water.id).isStale, sheet.line(water.id).weight], [true, 700])
})

test('holds that are nearly one and the same are noticed, not worked out', () => {
  // Two liquids that bring nearly the same water for the same flour cannot be told apart by two hydrations.
  const sheet = openFormula(formulaOf(dough('flour = 1000 g; water = 350 g; milk = 350 g')), plainLarder)
  sheet.hold('trueHydration', 0.7, { stage: 'Final dough', ingredient: 'water' })
  sheet.hold('totalWater', 700 * (1 + 1e-13), { stage: 'Final dough', ingredient: 'milk' })
  assert.equal(sheet.weight('Final dough', 'water'), undefined)
  assert.equal(sheet.problems.filter(p => p.severity === 'error').length, 1)
})

test('an amount in a circle with the line that gives is said, with the path', () => {
  const sheet = openFormula(
    formulaOf(
      dough(
        'flour = 1000 g; water = 700 g - levain.water; salt = 2%; levain = 20%',
        `
      Levain:
        starter = 10%
        flour = 100%
        water = 60%`,
      ),
    ),
    plainLarder,
  )
  sheet.hold('prefermentedFlour', 0.2, { stage: 'Final dough', ingredient: 'levain' })
  near(sheet.reading('prefermentedFlour'), 0.2) // water follows the levain, and flour does not follow water
  sheet.hold('trueHydration', 0.7, { stage: 'Final dough', ingredient: 'levain' })
  const said = sheet.problems.filter(p => p.severity === 'error').map(p => p.message)
  assert.match(
    said[0]!,
    /levain in Final dough is worked out from .*water in Levain.*: they wait for each other/,
  )
  assert.match(said[0]!, /Release the hold \(true hydration held at 70 %\)/)
  near(sheet.weight('Final dough', 'salt'), 20)
})

test('an amount typed into a line that gives lets the hold go, and undo brings it back', () => {
  const formula = formulaOf(dough('flour = 1000 g; water = 700 g; levain = 200 g'))
  const at = {
    formula: formula.id,
    stage: finalDoughOf(formula).id,
    line: lineOf(formula, 'Final dough', 'water').id,
  }
  const shelf = { ...emptyWorkbook, formulas: [formula] }
  const held = applyChanges(shelf, holdReading(shelf, at, 'trueHydration', 0.75).changes)
  const typing = enterAmount(held.workbook, at, 'weight', '690')
  assert.match(typing.label, /^Set water to 690 g; release true hydration held at 75 %$/)
  const typed = applyChanges(held.workbook, typing.changes)
  assert.deepEqual(typed.workbook.formulas[0]!.holds, [])
  assert.deepEqual(applyChanges(typed.workbook, typed.inverse).workbook, held.workbook)
  assert.deepEqual(applyChanges(held.workbook, held.inverse).workbook, shelf)
})

test('a reading is held by one line, and a line gives for one reading', () => {
  const sheet = openFormula(
    formulaOf(dough('flour = 1000 g; water = 700 g; salt = 20 g; levain = 200 g')),
    plainLarder,
  )
  sheet.hold('trueHydration', 0.75, { stage: 'Final dough', ingredient: 'water' })
  sheet.hold('trueHydration', 0.72, { stage: 'Final dough', ingredient: 'levain' })
  assert.deepEqual(
    sheet.formula.holds!.map(h => [h.reading, h.value]),
    [['trueHydration', 0.72]],
  )
  sheet.hold('totalWater', 800, { stage: 'Final dough', ingredient: 'levain' })
  assert.deepEqual(
    sheet.formula.holds!.map(h => h.reading),
    ['totalWater'],
  )
})
