import type { OnDifference, RestoreChoice, RestorePlan } from '../../../src/exchange/index.js'
import { counted } from '../plan/bring-in-plan.js'
import { decisionOf, type RestoreWish } from './restore-wish.js'

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
  [...plan.formulas, ...plan.ingredients, ...plan.days].filter(
    item => item.is === 'new' || (item.is === 'different' && decisionOf(wanted, item) !== 'keep'),
  ).length

/** What is asked before all is replaced, the first and the second time. */
export function restoreQuestion(plan: RestorePlan, time: 1 | 2): string {
  if (time === 2) return 'Really replace everything in this workbook? One undo brings it back.'
  const { missing, formulas, ingredients, days } = plan
  const gone = missing.formulas.length
  const changed = [...formulas, ...ingredients, ...days].filter(item => item.is === 'different').length
  const parts = [
    ...(gone > 0 ? [`${counted(gone, 'formula')} of yours would be gone`] : []),
    ...(missing.ingredients.length > 0
      ? [`${counted(missing.ingredients.length, 'ingredient')} of your larder would be gone`]
      : []),
    ...(missing.days.length > 0 ? [`${counted(missing.days.length, 'day')} of yours would be gone`] : []),
    ...(changed > 0 ? [`${counted(changed, 'thing')} of yours would be as in the file`] : []),
  ]
  return parts.length > 0
    ? `${parts.join(', ')}. Replace all of it by the file?`
    : 'Nothing of yours would be lost. Replace all of it by the file?'
}
