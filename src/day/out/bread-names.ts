import type { Day } from '../../dough/document/day.js'
import type { Formula } from '../../dough/document/formula.js'

/** Gives a bread of a day its name, by its id. */
export type NameOf = (bread: string) => string

/** What the breads of a day are called; where a formula is baked twice on it, with a number. */
export function breadNames({ breads }: Day, formulas: readonly Formula[]): NameOf {
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
