import { test } from 'node:test'
import { openFormula } from '../../src/dough/sheet.js'
import { near } from '../assert.js'
import { formulaOf, workedCheck } from './notation.js'

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
