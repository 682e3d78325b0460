import { test } from 'node:test'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { equal, near } from '../assert.js'
import { formulaOf, withStages, workedCheck } from './notation.js'

// Levain of 220 g: flour 120, water 100; 210 g of it carry 120·210/220 = 114.5454… flour, 95.4545… water.
test('a mill loaf in grams has the readings worked out by hand', () => {
  const sheet = openFormula(formulaOf(workedCheck))
  const flour = 1000 + (120 * 210) / 220
  near(sheet.reading('listedHydration')!, 69 / 100)
  near(sheet.reading('trueHydration')!, (690 * 220 + 100 * 210) / (1000 * 220 + 120 * 210))
  near(sheet.reading('salt')!, (21 * 220) / (1000 * 220 + 120 * 210))
  near(sheet.reading('prefermentedFlour')!, (120 * 210) / (1000 * 220 + 120 * 210))
  near(sheet.reading('levainOnFlour')!, 21 / 100)
  near(sheet.reading('totalFlour')!, flour)
  near(sheet.reading('totalWater')!, 690 + (100 * 210) / 220)
  near(sheet.reading('doughWeight')!, 1921)
})

test('the same loaf with true hydration, salt and prefermented flour held at once', () => {
  const sheet = openFormula(formulaOf(workedCheck))
  sheet.hold('trueHydration', 0.75, { stage: 'Final dough', ingredient: 'water' })
  sheet.hold('salt', 0.02, { stage: 'Final dough', ingredient: 'salt' })
  sheet.hold('prefermentedFlour', 0.15, { stage: 'Final dough', ingredient: 'levain' })
  // Levain flour is 6/11 of it: x·6/11 = 0.15 (1000 + x·6/11), so all flour is 1000 ÷ 0.85.
  const flour = 1000 / 0.85
  const levain = (0.15 * flour * 11) / 6
  near(sheet.weight('Final dough', 'levain'), levain)
  near(sheet.weight('Final dough', 'water'), 0.75 * flour - (levain * 5) / 11)
  near(sheet.weight('Final dough', 'salt'), 0.02 * flour)
  near(sheet.reading('doughWeight'), 35400 / 17)
})

test('six pieces of 900 g with 2 % lost, and 50 g of levain kept back', () => {
  const formula = withStages(formulaOf(workedCheck), s => (s.name === 'Levain' ? { ...s, keepBack: 50 } : s))
  const sheet = openFormula(formula)
  sheet.make({ make: 'pieces', pieces: [{ count: 6, weight: 900 }], loss: 0.02 })
  const k = 5400 / 0.98 / 1921
  near(k, 2.868404, 1e-6)
  const levain = 210 * k
  near(sheet.batchWeight('Final dough', 'levain'), levain)
  near(sheet.batchWeight('Final dough', 'bread flour'), 820 * k)
  near(sheet.batchWeight('Levain', 'ripe starter'), ((levain + 50) * 40) / 220)
  near(sheet.batchWeight('Levain', 'bread flour'), ((levain + 50) * 100) / 220)
  near(sheet.batchWeight('Levain', 'water'), ((levain + 50) * 80) / 220)
  near(sheet.batchWeight('Levain', 'water'), 237.224, 1e-5)
})

test('the dough bar has no rest where every gram is flour, water or salt', () => {
  const sheet = openFormula(formulaOf(workedCheck))
  sheet.hold('trueHydration', 0.75, { stage: 'Final dough', ingredient: 'water' })
  const { flour, flourCarried, water, waterCarried, salt, other } = sheet.parts!
  near(flour, 1000 + 1260 / 11)
  near(flourCarried, 1260 / 11)
  near(water, 0.75 * (1000 + 1260 / 11))
  near(waterCarried, 1050 / 11)
  near(salt, 21)
  equal(other, 0)
})
