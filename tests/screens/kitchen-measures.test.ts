import assert from 'node:assert/strict'
import { test } from 'node:test'
import { isMadeHere, kitchenSaid } from '../../components/trade/trade-figures.js'
import { needsOf } from '../../src/day/trade/needs.js'
import { usualFractions } from '../../src/dough/about/household.js'
import { larderWith, usualLarder } from '../../src/dough/larder/usual-larder.js'

const style = {
  numbers: { language: 'en', decimal: '.' },
  measures: { system: 'us', fractions: usualFractions },
  currency: 'USD',
} as const

/** What is needed of one ingredient. */
function needOf(ingredient: string, grams: number, larder = larderWith([])) {
  const isStarter = larder.find(ingredient)?.countsAs.kind === 'starter'
  const line = { key: 'l', ingredient, isStage: false, isStarter, grams, step: 1, note: '' }
  const build = { key: 'b', name: 'Dough', breads: [], parts: [], isFinal: true, lines: [line], total: grams }
  return needsOf({ builds: [build] }, larder).all[0]!
}

for (const [ingredient, grams, said] of [
  ['Egg', 325, '7 pieces, 6.5 used'], // 50 g apiece
  ['Egg', 444, '9 pieces'], // 8.88: an egg is never so exact
  ['Egg', 452, '9 pieces'], // 9.04
  ['Egg', 20, '1 piece, 0.4 used'],
  ['Caraway seeds', 13, '2 tbsp'],
  ['Butter', 400, '1 3/4 cups'],
  ['All-purpose flour', 500, '4 cups'],
  ['All-purpose flour', 625, ''], // 5 cups
  ['Whole milk', 1021, ''], // more than a kilogram
  ['Bread flour', 8868, ''],
  ['Ripe starter', 286, ''],
  ['Nobody knows what', 20, ''],
] as const)
  test(`in a kitchen ${grams} g of ${ingredient} are ${said || 'weighed'}`, () => {
    assert.equal(kitchenSaid(needOf(ingredient, grams), style), said)
  })

test('water and the own starter are made here, unless a pack of them has a price', () => {
  const water = { ...usualLarder.find(({ name }) => name === 'Water')!, pack: 5000, price: 2 }
  assert.ok(isMadeHere(needOf('Water', 500)))
  assert.ok(isMadeHere(needOf('Ripe starter', 50)))
  assert.ok(!isMadeHere(needOf('Water', 500, larderWith([water]))))
  assert.ok(!isMadeHere(needOf('Bread flour', 500)))
})
