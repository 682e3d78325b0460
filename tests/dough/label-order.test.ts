import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Batch } from '../../src/dough/document/batch.js'
import type { Meaning } from '../../src/dough/document/formula.js'
import type { Ingredient } from '../../src/dough/document/larder.js'
import { labelOf } from '../../src/dough/label/label.js'
import type { ListName } from '../../src/dough/larder/allergen-lists.js'
import { larderWith, usualLarder } from '../../src/dough/larder/usual-larder.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { formulaOf, workedCheck } from './notation.js'

interface Case {
  readonly of: string
  readonly text: string
  readonly batch?: Batch
  readonly meanings?: readonly Meaning[]
  readonly own?: readonly Ingredient[]
}

const baked = (bakeLoss: number): Batch => ({ make: 'as written', bakeLoss })
const usual = (name: string): Ingredient => usualLarder.find(one => one.name === name)!

function labelFor({ text, batch, meanings = [], own = [] }: Case, way: ListName) {
  const formula = formulaOf(text, { meanings })
  return labelOf(openSheet(batch ? { ...formula, batch } : formula, larderWith(own)), way)
}

/** The list as it reads, what is set apart between stars. */
const listOf = (label: ReturnType<typeof labelOf>): string =>
  label.ingredients
    .map(runs => runs.map(({ text, isAllergen }) => (isAllergen ? `*${text}*` : text)).join(''))
    .join(', ')

// The order is that of weights added by hand, each stage by the part of it that is taken (exact fractions), and of water less the loss
// times the weight of the dough. Above each stand these weights.
const cases: readonly (Case & Readonly<Record<ListName, string>>)[] = [
  {
    // Levain 220 g, of which 210 are taken: bread flour 820 + 120 · 210/220 = 934.5; water 690 + 100 · 210/220 = 785.5, less
    // 0.13 · 1921 = 535.7; spelt 180; salt 21
    of: 'a wheat with its levain',
    text: workedCheck,
    batch: baked(0.13),
    eu: 'Bread flour (*wheat*), Water, Wholemeal spelt (*wheat*), Salt',
    us: 'Bread flour, Water, Wholemeal spelt, Salt',
    canada: 'Bread flour, Water, Wholemeal spelt, Salt',
  },
  {
    // Water 620, less 0.1 · 1538 = 466.2; bread flour 600; rye 300. In Canada what went into the bowl counts
    of: 'a wet dough, whose water is first in the bowl and second in the bread',
    text: 'Final dough:\n Water = 620 g\n Bread flour = 600 g\n Medium rye flour = 300 g\n Salt = 18 g',
    batch: baked(0.1),
    eu: 'Bread flour (*wheat*), Water, Medium *rye* flour, Salt',
    us: 'Bread flour, Water, Medium rye flour, Salt',
    canada: 'Water, Bread flour, Medium rye flour, Salt',
  },
  {
    // 500, 250 and 250 as mixed, 60 and 60 as mixed, 10, 8
    of: 'a brioche without water, equal weights as they are mixed',
    text: 'Final dough:\n Bread flour = 500 g\n Eggs = 250 g\n Butter = 250 g\n Milk = 60 g\n Sugar = 60 g\n Salt = 10 g\n Dry yeast = 8 g',
    batch: baked(0.09),
    eu: 'Bread flour (*wheat*), *Eggs*, Butter (*milk*), *Milk*, Sugar, Salt, Dry yeast',
    us: 'Bread flour, Eggs, Butter, Milk, Sugar, Salt, Dry yeast',
    canada: 'Bread flour, Eggs, Butter, Milk, Sugars (sugar), Salt, Dry yeast',
  },
  {
    // In Europe water 60 less 0.12 · 980 = 117.6: none is left. In the United States all the water that the larder knows gives it off: 60,
    // of milk 200 · 0.8813, of eggs 80 · 0.7615, of butter 80 · 0.1794, together 311.53; of the 60 stay 60 · (1 − 117.6 / 311.53) = 37.35
    of: 'buns with a little water in their levain, and more in their milk',
    text: 'Final dough:\n Bread flour = 500 g\n Milk = 200 g\n Eggs = 80 g\n Butter = 80 g\n Water = 60 g\n Sugar = 50 g\n Salt = 10 g',
    batch: baked(0.12),
    eu: 'Bread flour (*wheat*), *Milk*, *Eggs*, Butter (*milk*), Sugar, Salt',
    us: 'Bread flour, Milk, Eggs, Butter, Sugar, Water, Salt',
    canada: 'Bread flour, Milk, Eggs, Butter, Water, Sugars (sugar), Salt',
  },
  {
    // Water 200, less 0.2 · 1270 = 254: none is left
    of: 'a crispbread of which baking drives off all the water',
    text: 'Final dough:\n Dark rye flour = 1000 g\n Water = 200 g\n Olive oil = 50 g\n Salt = 20 g',
    batch: baked(0.2),
    eu: 'Dark *rye* flour, Olive oil, Salt',
    us: 'Dark rye flour, Olive oil, Salt',
    canada: 'Dark rye flour, Water, Olive oil, Salt',
  },
  {
    // Water 450 + 150 = 600, less 0.12 · 1568 = 411.84; the dough takes all of the soaker. In the bowl water and bread flour are 600 each, water first mixed
    of: 'a dough with a soaker',
    text: 'Soaker:\n Sunflower seeds = 100 g\n Flaxseed = 50 g\n Water = 150 g\nFinal dough:\n Bread flour = 600 g\n Whole wheat flour = 200 g\n Water = 450 g\n Salt = 18 g\n Soaker = 300 g',
    batch: baked(0.12),
    eu: 'Bread flour (*wheat*), Water, Whole *wheat* flour, Sunflower seeds, Flaxseed, Salt',
    us: 'Bread flour, Water, Whole wheat flour, Sunflower seeds, Flaxseed, Salt',
    canada: 'Bread flour, Water, Whole wheat flour, Sunflower seeds, Flaxseed, Salt',
  },
  {
    // First build 60 + 60, all taken; second 260 + 260, of which 500/520: rye 300 + 250 = 550; water 350 + 250 = 600, less 0.1 · 1465 = 453.5; bread flour 300; salt 15
    of: 'a rye of two builds',
    text: 'First build:\n Rye starter = 20 g\n Dark rye flour = 50 g\n Water = 50 g\nSecond build:\n First build = 120 g\n Dark rye flour = 200 g\n Water = 200 g\nFinal dough:\n Dark rye flour = 300 g\n Bread flour = 300 g\n Water = 350 g\n Salt = 15 g\n Second build = 500 g',
    batch: baked(0.1),
    eu: 'Dark *rye* flour, Water, Bread flour (*wheat*), Salt',
    us: 'Dark rye flour, Water, Bread flour, Salt',
    canada: 'Water, Dark rye flour, Bread flour, Salt',
  },
  {
    // 500, 120, 100; water 300, less 0.1 · 1030 = 197
    of: 'a dough with bought ingredients that have ingredients of their own',
    text: 'Final dough:\n Bread flour = 500 g\n Water = 300 g\n Dark chocolate = 120 g\n Margarine = 100 g\n Salt = 10 g',
    batch: baked(0.1),
    own: [
      { ...usual('Dark chocolate'), madeOf: 'cocoa mass, sugar, emulsifier: soya lecithin' },
      { ...usual('Margarine'), madeOf: 'vegetable oils, water, salt' },
    ],
    eu: 'Bread flour (*wheat*), Water, Dark chocolate (cocoa mass, sugar, emulsifier: *soya* lecithin), Margarine (vegetable oils, water, salt), Salt',
    us: 'Bread flour, Water, Dark chocolate (cocoa mass, sugar, emulsifier: soya lecithin), Margarine (vegetable oils, water, salt), Salt',
    canada:
      'Bread flour, Water, Dark chocolate (cocoa mass, sugar, emulsifier: soya lecithin), Margarine (vegetable oils, water, salt), Salt',
  },
  {
    // Starter 200 g at 125 %: flour 200 ÷ 2.25 = 88.9, water 111.1. Flour 1088.9; water 761.1, less 0.15 · 1870 = 480.6; salt 20
    of: 'percentages, and a liquid starter by them',
    text: 'Final dough:\n Bread flour = 100%\n Water = 65%\n Salt = 2%\n Liquid starter = 20%',
    batch: baked(0.15),
    eu: 'Bread flour (*wheat*), Water, Salt',
    us: 'Bread flour, Water, Salt',
    canada: 'Bread flour, Water, Salt',
  },
  {
    // 6 × 900 g: all as in the first, times 2.868404 and to whole grams; 13 % of each piece is lost
    of: 'pieces of a batch, with some of the levain kept back',
    text: workedCheck,
    batch: { make: 'pieces', pieces: [{ count: 6, weight: 900 }], loss: 0.02, bakeLoss: 0.13 },
    eu: 'Bread flour (*wheat*), Water, Wholemeal spelt (*wheat*), Salt',
    us: 'Bread flour, Water, Wholemeal spelt, Salt',
    canada: 'Bread flour, Water, Wholemeal spelt, Salt',
  },
  {
    // Butter 70; honey 45, brown sugar 40, molasses 15: together 100; walnuts 65; water 330, less 0.1 · 1075 = 222.5
    of: 'several sugars, which stand together in Canada',
    text: 'Final dough:\n Bread flour = 500 g\n Water = 330 g\n Butter = 70 g\n Walnuts = 65 g\n Honey = 45 g\n Brown sugar = 40 g\n Molasses = 15 g\n Salt = 10 g',
    batch: baked(0.1),
    eu: 'Bread flour (*wheat*), Water, Butter (*milk*), *Walnuts*, Honey, Brown sugar, Molasses, Salt',
    us: 'Bread flour, Water, Butter, Walnuts, Honey, Brown sugar, Molasses, Salt',
    canada: 'Bread flour, Water, Sugars (honey, brown sugar, molasses), Butter, Walnuts, Salt',
  },
]

for (const one of cases)
  for (const way of ['eu', 'us', 'canada'] as const)
    test(`the list of ${one.of}, as it is written in ${way}`, () => {
      assert.equal(listOf(labelFor(one, way)), one[way])
    })

const codesOf = (one: Case, way: ListName = 'eu') => labelFor(one, way).notes.map(({ code }) => code)

test('what contains stands by itself in North America, each allergen once, and nowhere in Europe', () => {
  const nuts = cases.at(-1)!
  assert.deepEqual(labelFor(nuts, 'us').contains, ['Wheat', 'Milk', 'Walnut'])
  assert.deepEqual(labelFor(nuts, 'canada').contains, ['Wheat', 'Milk', 'Walnuts'])
  assert.deepEqual(labelFor(nuts, 'eu').contains, [])
  assert.deepEqual(labelFor(cases[6]!, 'us').contains, ['Wheat']) // rye is on no list there
  assert.deepEqual(labelFor(cases[6]!, 'canada').contains, ['Rye', 'Wheat'])
})

test('a loss in baking that nobody said is told, and water stands with all of it', () => {
  const wet = { of: '', text: cases[1]!.text }
  const label = labelFor(wet, 'eu')
  assert.equal(listOf(label), 'Water, Bread flour (*wheat*), Medium *rye* flour, Salt')
  assert.deepEqual(codesOf(wet), ['labelBakeLossUnsaid'])
  assert.equal(label.nutrition, undefined)
  assert.deepEqual(label.pieces, [])
})

test('water that is all driven off is told', () => {
  assert.deepEqual(codesOf(cases[4]!), ['labelWaterGone'])
})

test('where milk and egg give off water too, nobody is told to look at the loss again', () => {
  assert.deepEqual(codesOf(cases[3]!, 'eu'), ['labelWaterNotCounted'])
  assert.deepEqual(codesOf(cases[3]!, 'us'), [])
  const burnt = { ...cases[3]!, batch: baked(0.4) } // 392 of 311.53
  assert.deepEqual(codesOf(burnt, 'eu'), ['labelWaterGone'])
  assert.deepEqual(codesOf(burnt, 'us'), ['labelWaterGone'])
})

test('pieces weigh what they weigh when they are baked', () => {
  assert.deepEqual(
    labelFor(cases[9]!, 'eu').pieces.map(grams => Math.round(grams * 1000) / 1000),
    [783],
  ) // 900 · 0.87
  const rolls: Batch = {
    make: 'baked pieces',
    pieces: [
      { count: 2, weight: 800 },
      { count: 12, weight: 85 },
    ],
    bakeLoss: 0.12,
  }
  assert.deepEqual(labelFor({ of: '', text: workedCheck, batch: rolls }, 'eu').pieces, [800, 85])
})

test('the flour of a starter is that of its stage, and it is told', () => {
  const { notes } = labelFor(cases[0]!, 'eu')
  assert.deepEqual(
    notes.map(({ message }) => message),
    ['The flour in ripe starter is counted as bread flour, as if it were fed with that.'],
  )
})

test('a starter of another cereal than all flours of its formula is flour of that cereal', () => {
  const rye = {
    of: '',
    text: 'Final dough:\n Bread flour = 500 g\n Water = 300 g\n Rye starter = 200 g',
    batch: baked(0.1),
  }
  assert.equal(listOf(labelFor(rye, 'eu')), 'Bread flour (*wheat*), Water, *Rye* flour')
})

test('what is not known, not said or to be read on a label is told', () => {
  const odd = {
    of: '',
    text: 'Final dough:\n Bread flour = 500 g\n Water = 300 g\n Mahleb = 5 g\n Sultanas = 60 g\n Margarine = 40 g\n Caraway =',
    batch: baked(0.1),
  }
  const label = labelFor(odd, 'eu')
  assert.equal(
    listOf(label),
    'Bread flour (*wheat*), Water, Sultanas (*sulphites*), Margarine (*milk*, *soybeans*), Mahleb',
  )
  assert.deepEqual(codesOf(odd), [
    'labelLinesUnsaid',
    'labelAllergensUnknown',
    'labelMadeOfUnsaid',
    'labelToCheck',
    'labelToCheck',
    'labelNutritionLacks',
  ])
})

test('an amount that is not understood leaves no order, and says so', () => {
  const broken = { of: '', text: 'Final dough:\n Bread flour = 500 g\n Water = some', batch: baked(0.1) }
  assert.deepEqual(labelFor(broken, 'eu').ingredients, [])
  assert.deepEqual(codesOf(broken), ['labelWeightUnknown'])
})

test('no word of a label claims anything', () => {
  for (const one of cases)
    for (const way of ['eu', 'us', 'canada'] as const)
      assert.doesNotMatch(
        JSON.stringify(labelFor(one, way)),
        /\bfree\b|source of|\bhigh\b|\brich\b|\blow\b|\bsafe\b/i,
      )
})
