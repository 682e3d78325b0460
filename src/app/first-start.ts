import examples from 'examples:formulas'
import { copyOf, type Formula } from '../dough/document/formula.js'

/** What a new workbook begins with: the formulas of one oven day, to be changed and learned from. */
export function firstStart(): { readonly workbook: string; readonly formulas: readonly Formula[] } {
  return {
    workbook: 'Saturday oven, Brackwater Mill',
    formulas: examples.map(formula => copyOf(formula, formula.name)),
  }
}
