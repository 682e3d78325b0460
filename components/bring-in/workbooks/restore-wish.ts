import type { Day } from '../../../src/dough/document/day.js'
import type { Formula } from '../../../src/dough/document/formula.js'
import type { Ingredient } from '../../../src/dough/document/larder.js'
import type { Incoming, OnDifference, RestoreChoice, RestorePlan } from '../../../src/exchange/index.js'
import type { Lost } from './words.js'

/** What is to become of a workbook file: merged, with a decision for what differs, or in place of all that is here. */
export interface RestoreWish {
  readonly way: 'merge' | 'replace'
  readonly each: ReadonlyMap<string, OnDifference> // by the incoming id, where it was decided
}

export const merging: RestoreWish = { way: 'merge', each: new Map() }

/** What becomes of something that differs: formulas and days stand beside each other, the larder stays, until it is said otherwise. */
export const decisionOf = (
  wanted: RestoreWish,
  { incoming }: Incoming<Formula | Ingredient | Day>,
): OnDifference => wanted.each.get(incoming.id) ?? ('countsAs' in incoming ? 'keep' : 'beside')

/** The choice for the edit: what is decided of each thing that differs. */
export function restoreChoice(plan: RestorePlan, wanted: RestoreWish): RestoreChoice {
  if (wanted.way === 'replace') return { way: 'replace' }
  const differ = [...plan.formulas, ...plan.ingredients, ...plan.days].filter(item => item.is === 'different')
  const each = new Map<string, OnDifference>(differ.map(item => [item.incoming.id, decisionOf(wanted, item)]))
  return { way: 'merge', differing: 'keep', each }
}

/** How many things of the file would be added or taken over by merging. */
export const mergedCount = (plan: RestorePlan, wanted: RestoreWish): number =>
  plan.later.length +
  plan.cleared.length +
  [...plan.formulas, ...plan.ingredients, ...plan.days].filter(
    item => item.is === 'new' || (item.is === 'different' && decisionOf(wanted, item) !== 'keep'),
  ).length

/** What would be lost of this workbook, were all of it replaced. */
export const lostBy = ({ missing, formulas, ingredients, days, bakes }: RestorePlan): Lost => ({
  formulas: missing.formulas.length,
  ingredients: missing.ingredients.length,
  days: missing.days.length,
  bakes: missing.bakes.length,
  changed: [...formulas, ...ingredients, ...days, ...bakes].filter(item => item.is === 'different').length,
})
