import type { Day } from '../../src/dough/document/day.js'
import type { Workbook } from '../../src/dough/document/workbook.js'

/** What each bread of a day is called, by its id; where a formula is baked twice on it, with a number. */
export function breadNames(
  { breads }: Day,
  { formulas }: Pick<Workbook, 'formulas'>,
): (bread: string) => string {
  const names = new Map(formulas.map(({ id, name }) => [id, name]))
  const of = new Map(
    breads.map(({ id, formula }) => {
      const same = breads.filter(b => b.formula === formula)
      const name = names.get(formula) ?? ''
      return [id, same.length > 1 ? `${name} (${same.findIndex(b => b.id === id) + 1})` : name]
    }),
  )
  return bread => of.get(bread) ?? ''
}
