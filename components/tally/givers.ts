import { finalDoughOf, type Line } from '../../src/dough/document/formula.js'
import type { FigureSheet, LineFigures } from '../../src/dough/sheet/figures.js'

/** A line that could give, and what it gives for already. */
export interface Giver {
  readonly line: Line
  readonly gives: LineFigures['gives']
}

/** The lines of the final dough that could give. */
export const giversOf = (sheet: FigureSheet): readonly Giver[] =>
  finalDoughOf(sheet.formula)
    .lines.filter(line => line.ingredient)
    .map(line => ({ line, gives: sheet.line(line.id).gives }))
