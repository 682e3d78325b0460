import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import { test } from 'node:test'
import {
  type HouseholdOptions,
  householdOf,
  type MeasureSystem,
  usualFractions,
} from '../../src/dough/about/household.js'
import { gramsPerMeasure } from '../../src/dough/amounts/measures.js'
import { finalDoughOf } from '../../src/dough/document/formula.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { usualLarder } from '../../src/dough/larder/usual-larder.js'
import { readFormulas } from '../../src/exchange/index.js'
import { randomOf } from '../random.js'
import { formulaOf, workedCheck } from './notation.js'

const us: HouseholdOptions = { system: 'us', fractions: usualFractions }

/** The words for so much of an ingredient. */
function wordsFor(ingredient: string, grams: number, options = us): string | undefined {
  const formula = formulaOf(`Final dough:\n Bread flour = 1 kg\n ${ingredient} = ${grams} g`)
  return householdOf(openFormula(formula), options).lines[1]!.words
}

for (const [ingredient, grams, system, words] of [
  ['All-purpose flour', 125, 'us', '1 cup'],
  ['All-purpose flour', 406.25, 'us', '3 1/4 cups'],
  ['All-purpose flour', 160, 'us', '1 1/4 cups + 1 tsp'],
  ['Water', 250, 'metric', '1 cup'],
  ['Water', 690, 'metric', '2 3/4 cups'],
  ['Water', 690, 'us', '2 3/4 cups + 3 tbsp'],
  ['Water', 284.131, 'imperial', '1 cup'],
  ['Whole milk', 235.7, 'us', '1 cup'],
  ['Salt', 6, 'us', '1 tsp'],
  ['Salt', 21, 'us', '1 tbsp + 1/2 tsp'],
  ['Instant yeast', 1, 'us', '1/3 tsp'],
  ['Honey', 21, 'us', '1 tbsp'],
  ['Caraway seeds', 13, 'us', '2 tbsp'], // a tablespoon weighs 6.7 g, a teaspoon 2.1 g
  ['Caraway seeds', 6.2, 'us', '1 tbsp'], // a little less than a tablespoon, and 3 teaspoons
  ['Caraway seeds', 26.6, 'us', '1/4 cup'], // 4 tablespoons
  ['Caraway seeds', 26.6, 'metric', '4 tbsp'], // a cup of 250 ml is no whole number of tablespoons
  ['Egg', 104, 'us', '2 each'],
  ['Instant yeast', 0.1, 'us', undefined],
  ['Ripe starter', 100, 'us', undefined],
  ['Ground cardamom', 3, 'us', undefined],
] as const)
  test(`${grams} g of ${ingredient} is ${words ?? 'to be weighed'} (${system})`, () => {
    assert.equal(wordsFor(ingredient, grams, { system, fractions: usualFractions }), words)
  })

test('only the fractions that a kitchen has are used', () => {
  assert.equal(wordsFor('Water', 158, { system: 'us', fractions: usualFractions }), '2/3 cup')
  assert.equal(wordsFor('Water', 158, { system: 'us', fractions: [0.5] }), '1/2 cup + 3 tbsp')
  assert.equal(wordsFor('Water', 158, { system: 'us', fractions: [] }), '10 tbsp + 2 tsp')
})

test('a line without words says why, and its weight counts as weighed', () => {
  const formula = formulaOf(`
    Final dough:
      Bread flour = 1000 g
      Ground cardamom = 3 g
      Ripe starter = 200 g
      Water =
  `)
  assert.deepEqual(
    householdOf(openFormula(formula), us).lines.map(l => l.problem?.message),
    [
      undefined,
      'What a cup of Ground cardamom weighs is not known: weigh it.',
      'What a cup of Ripe starter weighs is not known: weigh it.',
      'There is nothing to measure.',
    ],
  )
})

test('what the measures do to hydration and salt is read from the dough they give', () => {
  const { lines, trueHydration, salt } = householdOf(openFormula(formulaOf(workedCheck)), us)
  assert.deepEqual(
    lines.map(l => l.words),
    [
      undefined,
      '2/3 cup + 1 tbsp',
      '1/3 cup',
      '6 cups',
      '1 1/2 cups',
      '2 3/4 cups + 3 tbsp',
      '1 tbsp + 1/2 tsp',
      undefined,
    ],
  )
  // levain 40 g starter, 99.896 g flour, 78.863 g water; of it 210 g; then 822 and 180 g flour, 694.978 g water, 21 g salt
  const levain = { flour: 20 + (137 * 2) / 3 + 137 / 16, water: 20 + 236.588 / 3 }
  const share = 210 / (levain.flour + levain.water)
  const flour = 822 + 180 + share * levain.flour
  const water = 2.75 * 236.588 + 3 * 14.787 + share * levain.water
  assert.ok(Math.abs(trueHydration.measured! - water / flour) < 1e-9)
  assert.ok(Math.abs(trueHydration.weighed! - 0.7047308) < 1e-6)
  assert.ok(Math.abs(salt.measured! - 21 / flour) < 1e-9)
})

test('the batch is what is measured', () => {
  const formula = formulaOf('Final dough:\n Bread flour = 137 g\n Water = 100 g')
  const sheet = openFormula({ ...formula, batch: { make: 'factor', factor: 3 } })
  assert.equal(householdOf(sheet, us).lines[0]!.words, '3 cups')
})

test('measuring is never off by more than half the smallest step used (seed 71)', () => {
  const random = randomOf(71)
  const systems: readonly MeasureSystem[] = ['us', 'metric', 'imperial']
  const measurable = usualLarder.filter(i => gramsPerMeasure(i, 'cup') !== undefined)
  for (let i = 0; i < 130; i++) {
    const [a, b] = [random.pick(measurable), random.pick(measurable)]
    const grams = () => Number((10 ** (random.next() * 5 - 1)).toPrecision(6))
    const formula = formulaOf(`Final dough:\n ${a.name} = ${grams()} g\n ${b.name} = ${grams()} g`)
    const fractions = random.pick([usualFractions, [0.5], [1 / 8, 1 / 4, 1 / 2, 3 / 4], []])
    for (const line of householdOf(openFormula(formula), { system: random.pick(systems), fractions }).lines) {
      if (line.words === undefined) continue
      const { measured, step, grams, error, words } = line
      assert.ok(
        Math.abs(measured! - grams!) <= step! / 2 + 1e-9 * grams!,
        `round ${i}: ${grams} g is ${words}`,
      )
      assert.ok(Math.abs(error! - (measured! / grams! - 1)) < 1e-12)
      assert.match(words, /^[\d/ ]+ (?:cups?|tbsp|tsp|each)(?: \+ [\d/ ]+ (?:tbsp|tsp))?$/)
    }
  }
})

test('every example can be said in cups and spoons', () => {
  for (const file of readdirSync('examples').filter(f => f.endsWith('.csv'))) {
    const sheet = openFormula(readFormulas(readFileSync(`examples/${file}`, 'utf8')).formulas[0]!)
    const { lines, trueHydration } = householdOf(sheet, us)
    assert.ok(lines.length >= finalDoughOf(sheet.formula).lines.length)
    assert.ok(Math.abs(trueHydration.measured! - trueHydration.weighed!) < 0.05, file)
  }
})
