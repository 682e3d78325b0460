import { finalDoughOf, type Hold, isInProportion, type Line } from '../../src/dough/document/formula.js'
import type { ReadingName } from '../../src/dough/document/reading-names.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'

/** A hold with the line that gives for it; undefined where every line does. */
export interface Kept {
  readonly hold: Hold
  readonly line: Line | undefined
}

/** The hold of a reading, while the line that gives for it is in the final dough. */
export function heldAt(sheet: FigureSheet, reading: ReadingName): Kept | undefined {
  const hold = sheet.formula.holds?.find(h => h.reading === reading)
  const line = hold && finalDoughOf(sheet.formula).lines.find(l => l.id === hold.line)
  return hold && (line || isInProportion(hold)) ? { hold, line } : undefined
}

/** Whether there is a line of the final dough that could give. */
export const canGive = (sheet: FigureSheet): boolean =>
  finalDoughOf(sheet.formula).lines.some(line => line.ingredient)
