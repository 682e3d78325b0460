import { type Formula, nameKey } from '../../dough/document/formula.js'
import type { Ingredient } from '../../dough/document/larder.js'
import type { Workbook } from '../../dough/document/workbook.js'

/** What is bought where and for how much is the baker's own business: others are not told. */
const asOthersSee = ({
  price: _price,
  supplier: _supplier,
  stock: _stock,
  ...ingredient
}: Ingredient): Ingredient => ingredient

/**
 * A workbook of some formulas alone, with those of the baker's own ingredients that they or their kept states name, without
 * their prices, suppliers and stock.
 */
export function partOfWorkbook({ name, larder }: Workbook, formulas: readonly Formula[]): Workbook {
  const named = new Set(
    formulas
      .flatMap(formula => [formula, ...(formula.states ?? []).map(state => state.formula)])
      .flatMap(({ stages }) => stages.flatMap(({ lines }) => lines.map(line => nameKey(line.ingredient)))),
  )
  const isNamed = (known: string) => named.has(nameKey(known))
  const own = larder.filter(({ name, otherNames }) => [name, ...otherNames].some(isNamed))
  return { name, formulas, larder: own.map(asOthersSee) }
}
