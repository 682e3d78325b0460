import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Ingredient } from '../../src/dough/document/larder.js'
import { labelOf } from '../../src/dough/label/label.js'
import {
  caloriesInAmerica,
  energyInEurope,
  type Nutrition,
  sodiumIn,
} from '../../src/dough/label/nutrition.js'
import { larderWith, usualLarder } from '../../src/dough/larder/usual-larder.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { formulaOf, workedCheck } from './notation.js'

function nutritionOf(text: string, bakeLoss: number, own: readonly Ingredient[] = []) {
  const formula = { ...formulaOf(text), batch: { make: 'as written' as const, bakeLoss } }
  return labelOf(openSheet(formula, larderWith(own)), 'eu')
}

const white = 'Final dough:\n Bread flour = 1000 g\n Water = 680 g\n Salt = 20 g\n Dry yeast = 7 g'
const brioche =
  'Final dough:\n Bread flour = 500 g\n Egg = 250 g\n Butter = 250 g\n Whole milk = 60 g\n Sugar = 60 g\n Salt = 10 g\n Dry yeast = 8 g'

// Worked out with exact fractions from the rows of the published table (NDB 20129, 20140, 14411, 2047, 18375, 1123, 1145, 1077, 19335): each
// weight over the dough's, times what 100 g hold, over 1 less the loss; carbohydrate less fibre; sodium · 2.5 is salt.
for (const [bread, text, loss, expected] of [
  [
    'a wheat with its levain',
    workedCheck,
    0.13,
    {
      fat: 1.189961,
      carbohydrate: 45.622714,
      sugars: 0.907878,
      fibre: 2.494456,
      protein: 8.268236,
      salt: 1.227164,
      kJ: 980.130331,
      kcal: 231.262355,
      calories: 236.251267,
      sodium: 490.865575,
    },
  ],
  [
    'a white bread with yeast',
    white,
    0.12,
    {
      fat: 1.140538,
      carbohydrate: 46.752836,
      sugars: 0.206369,
      fibre: 1.723052,
      protein: 8.163631,
      salt: 1.298525,
      kJ: 989.564247,
      kcal: 233.376811,
      calories: 236.822915,
      sodium: 519.41005,
    },
  ],
  [
    'a brioche',
    brioche,
    0.09,
    {
      fat: 22.925201,
      carbohydrate: 40.229977,
      sugars: 6.328338,
      fibre: 1.366577,
      protein: 9.516426,
      salt: 1.037771,
      kJ: 1704.853918,
      kcal: 408.045578,
      calories: 410.778733,
      sodium: 415.108442,
    },
  ],
] as const)
  test(`100 g of ${bread} hold what the published table comes to`, () => {
    const nutrition = nutritionOf(text, loss).nutrition as Nutrition
    const found = {
      ...nutrition,
      ...energyInEurope(nutrition),
      calories: caloriesInAmerica(nutrition),
      sodium: sodiumIn(nutrition.salt),
    }
    for (const [name, value] of Object.entries(expected))
      assert.ok(
        Math.abs(found[name as keyof typeof expected]! - value) < 1e-6 * Math.max(1, value),
        `${name}: ${found[name as keyof typeof expected]}, not ${value}`,
      )
  })

test('saturates are not told of fats of which the table has none', () => {
  assert.equal(nutritionOf(white, 0.12).nutrition?.saturates, undefined)
})

const lacksIn = (text: string, own: readonly Ingredient[] = []): readonly string[] => {
  const note = nutritionOf(text, 0.1, own).notes.find(({ code }) => code === 'labelNutritionLacks')
  return note && 'ingredients' in note ? note.ingredients : []
}

test('what is recorded of no ingredient leaves no figures, and is named', () => {
  const text =
    'Final dough:\n Emmer flour = 500 g\n Durum flour = 100 g\n Water = 300 g\n Mahleb = 3 g\n Salt = 9 g'
  assert.deepEqual(lacksIn(text), ['Emmer flour', 'Durum flour', 'Mahleb'])
  assert.equal(nutritionOf(text, 0.1).nutrition, undefined)
})

test('sugars that are not recorded of one ingredient are left out, and the rest is told', () => {
  const { nutrition } = nutritionOf('Final dough:\n Semolina = 500 g\n Water = 300 g\n Salt = 9 g', 0.1)
  assert.equal(nutrition?.sugars, undefined)
  assert.deepEqual(nutrition?.sugarsUnknown, ['Semolina'])
  // 500/809 · 12.68 ÷ 0.9
  assert.ok(Math.abs(nutrition!.protein - 8.707595) < 1e-6)
})

const emmer = usualLarder.find(({ name }) => name === 'Emmer flour')!
const printed = {
  fat: 0.02,
  saturates: 0.004,
  carbohydrate: 0.65,
  sugars: 0.01,
  fibre: 0.1,
  protein: 0.13,
  salt: 0,
}

test('what a supplier prints is typed into the larder and counts', () => {
  const own = [{ ...emmer, composition: printed }]
  const { nutrition } = nutritionOf(
    'Final dough:\n Emmer flour = 600 g\n Water = 390 g\n Salt = 10 g',
    0.2,
    own,
  )
  // 0.6 · 65 ÷ 0.8, and so on; salt 0.01 · 96.895 ÷ 0.8 and that of the water, 0.39 · 0.01 ÷ 0.8
  for (const [name, value] of Object.entries({
    fat: 1.5,
    saturates: 0.3,
    carbohydrate: 48.75,
    sugars: 0.75,
    fibre: 7.5,
    protein: 9.75,
    salt: 1.2160625,
  }))
    assert.ok(Math.abs(nutrition![name as 'fat'] - value) < 1e-9, `${name}: ${nutrition![name as 'fat']}`)
  assert.deepEqual(nutrition?.fromLarder, ['Emmer flour'])
})

test('an own ingredient in place of a usual one keeps its figures unless it says otherwise', () => {
  const flour = usualLarder.find(({ name }) => name === 'Bread flour')!
  const text = 'Final dough:\n Bread flour = 500 g\n Water = 300 g'
  assert.deepEqual(lacksIn(text, [{ ...flour, cup: 120 }]), [])
  assert.deepEqual(lacksIn(text, [{ ...flour, fat: 0.05 }]), ['Bread flour'])
})

test('a composition that does not say all of it is as if nobody had said any', () => {
  const { fibre: _fibre, ...less } = printed
  const text = 'Final dough:\n Emmer flour = 600 g\n Water = 390 g'
  for (const damaged of [less, { ...printed, fat: -1 }, 'flour', [1]])
    assert.deepEqual(lacksIn(text, [{ ...emmer, composition: damaged as never, madeOf: 7 as never }]), [
      'Emmer flour',
    ])
})
