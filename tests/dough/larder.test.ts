import assert from 'node:assert/strict'
import { test } from 'node:test'
import { gramsPerMeasure } from '../../src/dough/amounts/measures.js'
import { nameKey } from '../../src/dough/document/formula.js'
import { type Ingredient, larderOf } from '../../src/dough/document/larder.js'
import { larderWith, usualLarder } from '../../src/dough/larder/usual-larder.js'
import type { Measure } from '../../src/dough/lexicon/units.js'

const larder = larderOf(usualLarder)
const find = (name: string): Ingredient => {
  const found = larder.find(name)
  assert.ok(found, `${name} is in the larder`)
  return found
}
const close = (a: number | undefined, b: number, what: string) =>
  assert.ok(a !== undefined && Math.abs(a - b) < 1e-9 * Math.max(1, Math.abs(b)), `${what}: ${a}, not ${b}`)

test('the larder knows at least 115 ingredients', () => {
  assert.ok(usualLarder.length >= 115, `${usualLarder.length}`)
})

test('no name belongs to two ingredients, and no id', () => {
  const seen = new Map<string, string>()
  for (const { name, otherNames } of usualLarder)
    for (const one of [name, ...otherNames]) {
      assert.ok(one.trim() === one && one !== '', `${name}: “${one}”`)
      assert.equal(seen.get(nameKey(one)), undefined, `${one} is ${name} and another`)
      seen.set(nameKey(one), name)
    }
  assert.equal(new Set(usualLarder.map(i => i.id)).size, usualLarder.length)
})

test('what a gram brings is never more than a gram', () => {
  for (const i of usualLarder) {
    const shares = [i.moisture, i.fat, i.sugar, i.protein, i.salt]
    for (const share of shares) assert.ok(share >= 0 && share <= 1, i.name)
    // the salt of a food is part of its ash; the source rounds each share by itself
    assert.ok(shares.reduce((a, b) => a + b) <= 1.01, i.name)
  }
})

test('measures are positive, and density agrees with the cup it comes from', () => {
  for (const i of usualLarder) {
    for (const weight of [i.density, i.tsp, i.tbsp, i.cup, i.each])
      assert.ok(weight === undefined || weight > 0)
    if (i.cup && i.density) assert.ok(Math.abs(i.cup / 236.588 - i.density) < 1e-4, i.name)
  }
})

test('flour counts as flour and brings no moisture; grain, seeds, bran and starch are not flour', () => {
  for (const i of usualLarder) {
    const counted = i.countsAs.kind
    if (['flour', 'water', 'salt', 'starter'].includes(i.kind)) assert.equal(counted, i.kind, i.name)
    else assert.equal(counted, 'other', i.name)
    if (counted === 'flour') assert.equal(i.moisture, 0, i.name)
  }
  for (const name of ['Cornmeal', 'Semolina', 'Rice flour', 'Soy flour', 'Lupin flour', 'Potato flour'])
    assert.equal(find(name).countsAs.kind, 'flour', name)
  for (const name of ['Rye grain', 'Rolled oats', 'Flaxseed', 'Wheat bran', 'Corn starch', 'Malt flour'])
    assert.equal(find(name).countsAs.kind, 'other', name)
})

test('only salt and food salted in the making bring salt', () => {
  const salty = usualLarder.filter(i => i.salt > 0).map(i => [i.name, i.salt])
  assert.deepEqual(salty, [
    ['Salted butter', 0.01607],
    ['Margarine', 0.01877],
    ['Salt', 1],
    ['Sea salt', 1],
    ['Coarse salt', 1],
    ['Cheddar', 0.01552],
    ['Parmesan', 0.0344],
    ['Black olives', 0.01837],
    ['Green olives', 0.0389],
  ])
})

// grams in 100 g as printed in the source: moisture, fat, sugar, protein
const composition: readonly (readonly [string, number, number, number, number])[] = [
  ['Bread flour', 0, 1.66, 0.31, 11.98],
  ['All-purpose flour', 0, 0.98, 0.27, 10.33],
  ['Whole wheat flour', 0, 2.5, 0.41, 13.21],
  ['Dark rye flour', 0, 2.22, 2.31, 15.91],
  ['Wholemeal spelt', 0, 2.43, 6.82, 14.57],
  ['Semolina', 0, 1.05, 0, 12.68],
  ['Whole milk', 88.13, 3.25, 5.05, 3.15],
  ['Butter', 17.94, 81.11, 0.06, 0.85],
  ['Egg', 76.15, 9.51, 0.37, 12.56],
  ['Egg yolk', 52.31, 26.54, 0.56, 15.86],
  ['Honey', 17.1, 0, 82.12, 0.3],
  ['Sugar', 0.02, 0, 99.8, 0],
  ['Olive oil', 0, 100, 0, 0],
  ['Fresh yeast', 69, 1.9, 0, 8.4],
  ['Sesame seeds', 4.69, 49.67, 0.3, 17.73],
  ['Raisins', 15.43, 0.46, 59.19, 3.07],
  ['Ricotta', 71.7, 12.98, 0.27, 11.26],
  ['Water', 100, 0, 0, 0],
  ['Salt', 0, 0, 0, 0],
]

for (const [name, moisture, fat, sugar, protein] of composition)
  test(`${name} is composed as the source prints it`, () => {
    const i = find(name)
    close(i.moisture, moisture / 100, 'moisture')
    close(i.fat, fat / 100, 'fat')
    close(i.sugar, sugar / 100, 'sugar')
    close(i.protein, protein / 100, 'protein')
  })

test('a starter is flour and water by its hydration, with the allergens of the flour it is fed', () => {
  for (const [name, hydration, grain] of [
    ['Ripe starter', 1, 'wheat'],
    ['Stiff starter', 0.5, 'wheat'],
    ['Liquid starter', 1.25, 'wheat'],
    ['Rye starter', 1, 'rye'],
  ] as const) {
    const i = find(name)
    assert.deepEqual(i.countsAs, { kind: 'starter', hydration })
    close(i.moisture, hydration / (1 + hydration), name)
    assert.deepEqual(i.allergens?.eu, [`cereals containing gluten (${grain})`])
  }
  assert.equal(larder.find('Levain'), undefined, 'a levain is a stage, built by the baker')
})

test('bakers find an ingredient by the names they use', () => {
  for (const [typed, name] of [
    ['strong white flour', 'Bread flour'],
    ['Plain flour', 'All-purpose flour'],
    ['WHOLEMEAL FLOUR', 'Whole wheat flour'],
    ['Wholemeal rye', 'Dark rye flour'],
    ['milk', 'Whole milk'],
    ['Sourdough  starter', 'Ripe starter'],
    ['cornflour', 'Corn starch'],
    ['Corn flour', 'Corn flour'],
    ['Jaune d’œuf', 'Egg yolk'],
    ['farine complète', 'Whole wheat flour'],
    ['boiling water', 'Water'],
    ['Mehl', 'All-purpose flour'],
    ['Weizenmehl 550', 'All-purpose flour'],
    ['T55', 'All-purpose flour'],
    ['T65', 'Bread flour'],
    ['T45', 'All-purpose flour'],
    ['T80', 'High-extraction flour'],
    ['T110', 'High-extraction flour'],
    ['T150', 'Whole wheat flour'],
    ['T130', 'Medium rye flour'],
    ['Type 405', 'All-purpose flour'],
    ['Type 1050', 'High-extraction flour'],
    ['emmer', 'Emmer flour'],
    ['Petit épeautre', 'Einkorn flour'],
    ['white spelt', 'White spelt flour'],
    ['Khorasan', 'Khorasan flour'],
    ['durum', 'Durum flour'],
    ['Vollkornmehl', 'Whole wheat flour'],
    ['Roggenmehl 997', 'Light rye flour'],
    ['Roggenmehl Type 1150', 'Medium rye flour'],
    ['Roggenvollkornmehl', 'Dark rye flour'],
    ['Dinkelvollkornmehl', 'Wholemeal spelt'],
    ['Wasser', 'Water'],
    ['Salz', 'Salt'],
    ['Hefe', 'Fresh yeast'],
    ['Trockenhefe', 'Instant yeast'],
    ['Milch', 'Whole milk'],
    ['Butter', 'Butter'],
    ['Ei', 'Egg'],
    ['Eier', 'Egg'],
    ['Zucker', 'Sugar'],
    ['Honig', 'Honey'],
    ['Olivenöl', 'Olive oil'],
  ] as const)
    assert.equal(find(typed).name, name, typed)
})

test('a name of another language that leaves open what is meant is not known', () => {
  for (const name of ['Sauerteig', 'Anstellgut', 'Levain', 'Öl', 'Huile', 'Farine', 'Levure'])
    assert.equal(larder.find(name), undefined, name)
})

test('allergens are the three lists’ own words', () => {
  const lists = (name: string) => find(name).allergens!
  assert.deepEqual(lists('Bread flour'), {
    us: ['wheat'],
    eu: ['cereals containing gluten (wheat)'],
    canada: ['wheat', 'gluten source (wheat)'],
  })
  assert.deepEqual(lists('Dark rye flour').us, [])
  assert.deepEqual(lists('Triticale flour').canada, ['wheat and triticale', 'gluten source (triticale)'])
  assert.deepEqual(lists('Pine nuts'), {
    us: ['tree nuts (pine nut)'],
    eu: [],
    canada: ['tree nuts (pine nuts)'],
  })
  assert.deepEqual(lists('Margarine').eu, ['check label: milk, soybeans'])
  assert.deepEqual(lists('Lupin flour'), { us: [], eu: ['lupin'], canada: [] })
  assert.deepEqual(lists('Walnuts').eu, ['nuts (walnut)'])
  assert.deepEqual(lists('Sultanas').canada, ['sulphites if >=10 ppm'])
  assert.deepEqual(lists('Water'), { us: [], eu: [], canada: [] })
})

const weights: readonly (readonly [string, Measure, number])[] = [
  ['Salt', 'tsp', 6],
  ['Sea salt', 'tsp', 5],
  ['Coarse salt', 'tsp', 4],
  ['Coarse salt', 'tbsp', 12],
  ['Instant yeast', 'tsp', 3.15],
  ['Dry yeast', 'tsp', 4],
  ['Butter', 'tbsp', 14.2],
  ['Butter', 'tsp', 14.2 / 3], // from the tablespoon
  ['Bread flour', 'cup', 137],
  ['Bread flour', 'tbsp', 137 / 16], // from the cup
  ['Bread flour', 'tsp', 137 / 48],
  ['Honey', 'cup', 339],
  ['Honey', 'tbsp', 21],
  ['Water', 'ml', 1],
  ['Water', 'l', 1000],
  ['Water', 'cup', 236.588],
  ['Water', 'tbsp', 14.787],
  ['Water', 'fl oz', 29.5735],
  ['Whole milk', 'ml', 1.0313],
  ['Egg', 'each', 50],
  ['Egg yolk', 'each', 17],
  ['Egg white', 'each', 33],
  ['Garlic', 'each', 3],
  ['Sea salt', 'ml', 5 / 4.929], // from the spoon
]

for (const [name, measure, grams] of weights)
  test(`one ${measure} of ${name.toLowerCase()} weighs ${+grams.toFixed(3)} g`, () => {
    close(gramsPerMeasure(find(name), measure), grams, name)
  })

test('what nobody has weighed has no weight by measure', () => {
  assert.equal(gramsPerMeasure(find('Fresh yeast'), 'tsp'), undefined)
  assert.equal(gramsPerMeasure(find('Bread flour'), 'each'), undefined)
  assert.equal(gramsPerMeasure(find('Ripe starter'), 'cup'), undefined)
})

test('a baker’s own ingredient takes the place of the usual one', () => {
  const mine = { ...find('Salt'), tsp: 5.5 }
  const own = larderWith([mine])
  assert.equal(own.find('Table salt')?.tsp, 5.5)
  assert.equal(own.ingredients.length, usualLarder.length)
})
