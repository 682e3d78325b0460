import type { Day } from '../../../src/dough/document/day.js'
import type { Formula } from '../../../src/dough/document/formula.js'
import type { Ingredient } from '../../../src/dough/document/larder.js'
import type { Incoming, OnDifference } from '../../../src/exchange/index.js'

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
