import { type Formula, finalDoughOf, hasBatch } from '../document/formula.js'
import type { FigureSheet } from '../sheet/figures.js'

const leastTold = 0.005 // of the dough

/** Whether the baker wrote anything beside its amounts: on a line, a step or the formula itself. */
export function hasNotes({ note, stages }: Formula): boolean {
  const beside = stages.flatMap(({ lines, method = [] }) => [...lines, ...method])
  return [note, ...beside.map(({ note }) => note)].some(text => text.trim() !== '')
}

/** Grams of dough for which a formula and its notes are written, where its batch makes another amount; undefined where it does not. */
export function ownSizeOf(sheet: FigureSheet): number | undefined {
  const { formula } = sheet
  if (!hasBatch(formula)) return undefined
  const written = sheet.reading('doughWeight')
  const { build } = sheet.stage(finalDoughOf(formula).id)
  if (!written || build === undefined) return undefined
  return Math.abs(build / written - 1) > leastTold ? written : undefined
}
