import type { Batch } from '../document/batch.js'
import { type Formula, hasBatch } from '../document/formula.js'
import { cellOf } from '../outline/names.js'
import type { Outline } from '../outline/outline.js'
import type { Build } from './builds.js'
import type { CellWriter, Owner } from './cell-writer.js'
import type { LineCells } from './line-cells.js'
import type { StageCells } from './stage-cells.js'
import { cellProblem } from './words.js'

export type AllOf = Batch & { readonly make: 'all of' }

/** What writes the cells that few formulas have: of holds, of a dough that is scaled, and of a batch that uses all of something. */
export interface RareCells {
  readonly holds: (out: CellWriter, outline: Outline, stages: StageCells, lines: LineCells) => void
  readonly scale: (out: CellWriter, outline: Outline) => void
  readonly allOf: (out: CellWriter, outline: Outline, builds: readonly Build[], batch: AllOf) => void
}

let writers: RareCells | undefined

/** Gives the writers to all who ask from then on: a page fetches them when idle, or when a formula wants them. */
export const useRareCells = (given: RareCells): void => {
  writers = given
}

/** Whether there are writers yet. Until then nobody is to open a sheet of a formula that wants them. */
export const areRareCellsThere = (): boolean => writers !== undefined

export const wantsRareCells = (formula: Pick<Formula, 'holds' | 'batch' | 'stages'>): boolean =>
  Boolean(formula.holds?.length) || hasBatch(formula) // which is weighed

/** The weights of the lines that give, and the base where they move it. */
export function writeHolds(out: CellWriter, outline: Outline, stages: StageCells, lines: LineCells): void {
  const { final, giving } = outline
  if (!giving.length) return
  if (writers) return writers.holds(out, outline, stages, lines)
  const fail = (owner: Owner, cell: string, words: string) =>
    out.belonging(owner, () => out.fail(cell, words, cellProblem(notFetched)))
  for (const line of giving) fail({ of: 'line', id: line.line.id }, cellOf.weight(line), line.line.ingredient)
  if (stages.isMoved(final)) fail({ of: 'stage', id: final.stage.id }, cellOf.base(final), final.stage.name)
}

/** The weights of a dough that is held at one while every line gives in proportion. */
export const writeScale = (out: CellWriter, outline: Outline): void => {
  if (outline.doughWeight !== undefined) writers?.scale(out, outline)
}

/** How many times the final dough is made to use all of something. */
export function writeAllOf(out: CellWriter, outline: Outline, builds: readonly Build[], batch: AllOf): void {
  if (writers) return writers.allOf(out, outline, builds, batch)
  const { final } = outline
  out.fail(cellOf.times(final), final.stage.name, cellProblem(notFetched))
}

const notFetched = { code: 'rareNotFetched' } as const
