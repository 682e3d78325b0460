import { type Formula, finalDoughOf, type Hold, isInProportion } from '../document/formula.js'
import { holdWords } from '../document/words.js'
import type { Change, Transaction, Workbook } from '../document/workbook.js'
import { formulaIn, type LineAt, lineIn, named } from './edit-places.js'
import { labels, refuse } from './words.js'

/** Puts the formula's holds; none is no field at all. */
function putHolds(formula: Formula, holds: readonly Hold[]): Change[] {
  return [{ of: 'fields', formula: formula.id, value: { holds } }]
}

/**
 * Keeps a reading at `value` (fraction of 1, or grams) while a line of the final dough gives. Another hold
 * of the reading, or one for which the line gave, is let go. `wholeDough` holds the line's own share. Without a line, '',
 * every line gives for the dough's weight in proportion.
 */
export function holdReading(
  workbook: Workbook,
  at: LineAt,
  reading: Hold['reading'],
  value: number,
): Transaction {
  const formula = formulaIn(workbook, at.formula)
  const hold: Hold = { reading, value, line: at.line }
  const name = isInProportion(hold) ? '' : named(lineIn(workbook, at))
  if (at.stage !== finalDoughOf(formula).id) refuse({ code: 'giverNotInFinalDough' })
  if (!Number.isFinite(value) || value < 0) refuse({ code: 'holdBelowZero' })
  const others = (formula.holds ?? []).filter(
    h => h.line !== at.line && (reading === 'wholeDough' || h.reading !== reading),
  )
  return {
    label: labels.hold(holdWords(hold, name, 'at')),
    changes: putHolds(formula, [...others, hold]),
  }
}

/** Holds let go, in words, with what that changes; undefined where there are none. */
export function released(
  formula: Formula,
  which: (hold: Hold) => boolean,
): { readonly words: string; readonly changes: readonly Change[] } | undefined {
  const gone = formula.holds?.filter(which) ?? []
  if (!gone.length) return undefined
  const words = gone.map(h => holdWords(h, ingredientOf(formula, h.line))).join(', ')
  const left = formula.holds!.filter(h => !which(h))
  return { words, changes: putHolds(formula, left) }
}

/** Lets a hold go; the line that gave has again what was typed for it. */
export function releaseHold(
  workbook: Workbook,
  id: string,
  which: (hold: Hold) => boolean,
): Transaction | undefined {
  const gone = released(formulaIn(workbook, id), which)
  return gone && { label: labels.release(gone.words), changes: gone.changes }
}

const ingredientOf = (formula: Formula, line: string): string =>
  formula.stages.flatMap(s => s.lines).find(l => l.id === line)?.ingredient || 'a line'
