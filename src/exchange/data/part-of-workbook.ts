import { type Formula, nameKey } from '../../dough/document/formula.js'
import type { Workbook } from '../../dough/document/workbook.js'

/** A workbook of some formulas alone, with those of the baker's own ingredients that they or their kept states name. */
export function partOfWorkbook({ name, larder }: Workbook, formulas: readonly Formula[]): Workbook {
  const named = new Set(
    formulas
      .flatMap(formula => [formula, ...(formula.states ?? []).map(state => state.formula)])
      .flatMap(({ stages }) => stages.flatMap(({ lines }) => lines.map(line => nameKey(line.ingredient)))),
  )
  const isNamed = (known: string) => named.has(nameKey(known))
  return { name, formulas, larder: larder.filter(own => [own.name, ...own.otherNames].some(isNamed)) }
}
