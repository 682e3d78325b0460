import { type Formula, finalDoughOf, type Hold } from '../document/formula.js'
import type { Larder } from '../document/larder.js'
import type { ReadingName } from '../document/reading-names.js'
import { holdWords } from '../document/words.js'
import type { Change, Transaction, Workbook } from '../document/workbook.js'
import { type LinePlan, outlineOf } from '../outline/outline.js'
import { formulaIn, type LineAt, lineIn, named, Refusal } from './edit-places.js'

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
  if (at.stage !== finalDoughOf(formula).id) throw new Refusal('Only a line of the final dough can give.')
  if (!Number.isFinite(value) || value < 0)
    throw new Refusal('A reading is held at a number that is not below 0.')
  const hold: Hold = { reading, value, line: at.line }
  const others = (formula.holds ?? []).filter(
    h => h.line !== at.line && (reading === 'wholeDough' || h.reading !== reading),
  )
  return {
    label: `Hold ${holdWords(hold, named(line), 'at')}`,
    changes: putHolds(formula, [...others, hold]),
  }
}

/** Lets a hold go; the line that gave has again what was typed for it. */
export function releaseHold(
  workbook: Workbook,
  id: string,
  which: (hold: Hold) => boolean,
): Transaction | undefined {
  const formula = formulaIn(workbook, id)
  const released = formula.holds?.filter(which) ?? []
  if (!released.length) return undefined
  const words = released.map(h => holdWords(h, ingredientOf(formula, h.line))).join(', ')
  return {
    label: `Release ${words}`,
    changes: putHolds(
      formula,
      formula.holds!.filter(h => !which(h)),
    ),
  }
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
