import { test } from 'node:test'
import { openFormula } from '../../src/dough/sheet.js'
import { near } from '../assert.js'
import { formulaOf, workedCheck } from './notation.js'

test('true hydration, salt and prefermented flour are held at once', () => {
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
  near(sheet.reading('doughWeight'), 2082.352941176471)
})
