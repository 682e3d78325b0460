import { type Split, splitLines } from '../outline/linear-parts.js'
import type { LinePlan, Outline, StagePlan } from '../outline/outline.js'
import { writeBatch } from './batch-cells.js'
import { CellWriter, type Definition } from './cell-writer.js'
import { writeHolds } from './hold-cells.js'
import { writeJottings } from './jotting-cells.js'
import { LineCells } from './line-cells.js'
import { writeReadings } from './reading-cells.js'
import { StageCells } from './stage-cells.js'

/** The cells of a formula by name. */
export interface CellPlan {
  readonly cells: ReadonlyMap<string, Definition>
  readonly splits: ReadonlyMap<LinePlan, Split>
  isFree(stage: StagePlan): boolean // its base is not set by its own lines
}

/** The cells that work a formula out. */
export function planCells(outline: Outline): CellPlan {
  const out = new CellWriter()
  const splits = splitLines(outline)
  const lines = new LineCells(out, outline, splits)
  const stages = new StageCells(out, outline, splits, lines)
  for (const stage of outline.stages) stages.write(stage)
  writeHolds(out, outline, stages, lines)
  writeReadings(out, outline)
  writeBatch(out, outline)
  writeJottings(out, outline)
  return { cells: out.cells, splits, isFree: stages.isFree }
}
