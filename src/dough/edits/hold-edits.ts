import { type Formula, finalDoughOf, type Hold } from '../document/formula.js'
import type { Larder } from '../document/larder.js'
import type { ReadingName } from '../document/reading-names.js'
import { holdWords } from '../document/words.js'
import type { Change, Transaction, Workbook } from '../document/workbook.js'
import { type LinePlan, outlineOf } from '../outline/outline.js'
import { formulaIn, type LineAt, lineIn, named } from './edit-places.js'
import { labels, refuse } from './words.js'

/** Puts the formula's holds; none is no field at all. */
function putHolds(formula: Formula, holds: readonly Hold[]): Change[] {
  return [{ of: 'fields', formula: formula.id, value: { holds } }]
}

/**
 * Keeps a reading at `value` (fraction of 1, or grams) while a line of the final dough gives. Another hold
 * of the reading, or one for which the line gave, is let go. `wholeDough` holds the line's own share.
 */
export function holdReading(
  workbook: Workbook,
  at: LineAt,
  reading: Hold['reading'],
  value: number,
): Transaction {
  const formula = formulaIn(workbook, at.formula)
  const line = lineIn(workbook, at)
  if (at.stage !== finalDoughOf(formula).id) refuse({ code: 'giverNotInFinalDough' })
  if (!Number.isFinite(value) || value < 0) refuse({ code: 'holdBelowZero' })
  const hold: Hold = { reading, value, line: at.line }
  const others = (formula.holds ?? []).filter(
    h => h.line !== at.line && (reading === 'wholeDough' || h.reading !== reading),
  )
  return {
    label: labels.hold(holdWords(hold, named(line), 'at')),
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

/** The line that would naturally give for a reading: water for hydration, salt for salt, levain for what it ferments. */
export function naturalGiver(formula: Formula, larder: Larder, reading: ReadingName): LineAt | undefined {
  const { final } = outlineOf(formula, larder)
  const kinds: Partial<Record<ReadingName, (line: LinePlan) => boolean>> = {
    trueHydration: l => l.countsAs?.kind === 'water',
    listedHydration: l => l.countsAs?.kind === 'water',
    moistureHydration: l => l.countsAs?.kind === 'water',
    totalWater: l => l.countsAs?.kind === 'water',
    salt: l => l.countsAs?.kind === 'salt',
    prefermentedFlour: l => l.source?.ferments === true || l.countsAs?.kind === 'starter',
    levainOnFlour: l => l.source?.ferments === true || l.countsAs?.kind === 'starter',
    totalFlour: l => l.countsAs?.kind === 'flour',
    doughWeight: l => l.countsAs?.kind === 'flour',
    egg: l => l.ingredient?.kind === 'egg',
    milk: l => l.ingredient?.kind === 'dairy',
    sugar: l => l.ingredient?.kind === 'sugar',
    fat: l => l.ingredient?.kind === 'fat',
  }
  const fits = final.lines.filter(kinds[reading]!)
  const line = fits.find(l => !l.gives || l.gives.reading === reading) ?? fits[0]
  return line && { formula: formula.id, stage: final.stage.id, line: line.line.id }
}
