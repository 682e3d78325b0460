import { type Formula, nameKey } from '../../src/dough/document/formula.js'

/** The orders there are; `added` is that of the workbook. */
export const orders = ['added', 'name', 'opened', 'changed'] as const
export type Order = (typeof orders)[number]

/** When something was last done to formulas, by their ids: milliseconds since 1970, as far as that is known. */
export type Times = Readonly<Record<string, unknown>>

/** Formulas that stand beneath one heading. */
export interface Section {
  readonly group: string // '' for those in none
  readonly formulas: readonly Formula[]
}

const at = (times: Times, { id }: Formula): number => {
  const time = Object.hasOwn(times, id) ? times[id] : 0
  return typeof time === 'number' ? time : 0
}

const namesIn = (language: string) => new Intl.Collator(language, { numeric: true })

/** The formulas in an order; those of which no time is known come last, as they were added. */
export function ordered(
  formulas: readonly Formula[],
  order: Order,
  times: Times,
  language: string,
): readonly Formula[] {
  if (order === 'added') return formulas
  if (order === 'name') {
    const names = namesIn(language)
    return [...formulas].sort((a, b) => names.compare(a.name, b.name))
  }
  return [...formulas].sort((a, b) => at(times, b) - at(times, a))
}

/**
 * The shelf as it is arranged: those in no group first, then the groups by their names, as they were first written; within
 * each in the order that was chosen.
 */
export function arranged(
  formulas: readonly Formula[],
  order: Order,
  times: Times,
  language: string,
): readonly Section[] {
  const names = namesIn(language)
  const groups = new Map<string, { group: string; formulas: Formula[] }>([['', { group: '', formulas: [] }]])
  for (const formula of formulas) {
    const { group = '' } = formula
    const key = nameKey(group)
    const there = groups.get(key) ?? { group, formulas: [] }
    there.formulas.push(formula)
    groups.set(key, there)
  }
  return [...groups.values()]
    .filter(section => section.formulas.length > 0)
    .sort((a, b) => names.compare(a.group, b.group))
    .map(section => ({ ...section, formulas: ordered(section.formulas, order, times, language) }))
}
