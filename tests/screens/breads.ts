import type { Formula } from '../../src/dough/document/formula'
import { formulaOf } from '../dough/notation'

/** The worked check: 70.473 % true, salt 1.8842 %, 10.277 % prefermented. */
export const millWheat = (fields: Partial<Formula> = {}): Formula => ({
  ...formulaOf(`
    Levain:
      Ripe starter = 40 g
      Bread flour = 100 g
      Water = 80 g
    Final dough:
      Bread flour = 820 g
      Wholemeal spelt = 180 g
      Water = 690 g
      Salt = 21 g
      Levain = 210 g
  `),
  name: 'Mill wheat',
  ...fields,
})

export const straightDough = (text: string, name: string): Formula => ({
  ...formulaOf(`Final dough:\n${text}`),
  name,
})
