import { type Formula, nameKey, sameName } from '../../dough/document/formula.js'
import type { DaySheet } from '../plan/open-day.js'

/** What a day needs of one ingredient. */
export interface TotalToWeigh {
  readonly ingredient: string
  readonly grams: number | undefined // what is weighed, added up; undefined: not known of all of it
}

/** What all breads of a planned day need of each ingredient; what one stage takes of another is in that one's own. */
export function totalsToWeigh(opened: DaySheet, formulas: readonly Formula[]): TotalToWeigh[] {
  const stagesOf = (bread: string) => {
    const id = opened.day.breads.find(b => b.id === bread)?.formula
    return formulas.find(f => f.id === id)?.stages ?? []
  }
  const totals = new Map<string, TotalToWeigh>()
  const seen = new Set<string>() // a wait of several loads begins once for all of them
  for (const { begins, breads } of opened.plan?.events.filter(e => e.time === undefined) ?? []) {
    if (seen.has(begins)) continue
    seen.add(begins)
    const stages = breads.flatMap(stagesOf)
    for (const { ingredient, weighed } of opened.weighList(begins)) {
      if (stages.some(stage => sameName(stage.name, ingredient))) continue
      const known = totals.get(nameKey(ingredient)) ?? { ingredient, grams: 0 }
      const sum = known.grams === undefined || weighed === undefined ? undefined : known.grams + weighed
      totals.set(nameKey(ingredient), { ...known, grams: sum })
    }
  }
  return [...totals.values()].sort((a, b) => (b.grams ?? 0) - (a.grams ?? 0))
}
