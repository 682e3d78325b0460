import flatbread from '../../examples/held-back-flatbread.csv'
import wheat from '../../examples/mill-wheat.csv'
import buns from '../../examples/morning-buns.csv'
import baguette from '../../examples/poolish-baguette.csv'
import spelt from '../../examples/seeded-spelt-tin.csv'
import rye from '../../examples/two-build-rye.csv'
import type { Formula } from '../dough/formula.js'
import { readFormulas } from '../exchange/index.js'

/** What a new workbook begins with: the formulas of one oven day, to be changed and learned from. */
export function firstStart(): { readonly workbook: string; readonly formulas: readonly Formula[] } {
  const files = [wheat, rye, baguette, flatbread, buns, spelt]
  return {
    workbook: 'Saturday oven, Brackwater Mill',
    formulas: files.flatMap(file => readFormulas(file).formulas),
  }
}
