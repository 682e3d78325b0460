import { type Line, nameKey, type Stage } from '../../../src/dough/document/formula.js'
import type { FigureSheet, LineFigures, StageFigures } from '../../../src/dough/sheet/figures.js'
import type { Touched } from '../../../src/dough/sheet/touched.js'
import type { NumberStyle } from '../../base/numbers.js'
import { buildWords, type WeighedShown, weighedLine, weighedStage } from '../../batch/weighed-shown.js'
import { type LineRow, rowAt, type StageRow, type SumRow, stageKey, sumKey, type Table } from './table.js'

/** What is shown of a line: figures, and what is weighed of it while there is a batch. */
export interface LineRead {
  readonly line: Line
  readonly figures: LineFigures
  readonly weighed: WeighedShown | undefined
  readonly old: LineRow | undefined // as it was shown before
}

/** What is shown of a stage; the words and the sum of what is weighed, while there is a batch. */
export interface StageRead {
  readonly figures: StageFigures
  readonly built: readonly string[]
  readonly sum: WeighedShown | undefined
}

/** Reads a sheet: what is touched from it, everything else from the rows as they were shown before. */
export class SheetReader {
  #sheet: FigureSheet
  #style: NumberStyle
  #batch: boolean
  #before: Table
  #touched: Touched
  #stages: ReadonlySet<string> // ids of those that may be weighed otherwise

  constructor(sheet: FigureSheet, style: NumberStyle, batch: boolean, before: Table, touched: Touched) {
    this.#sheet = sheet
    this.#style = style
    this.#batch = batch
    this.#before = before
    this.#touched = touched
    this.#stages = batch ? this.#weighedAnew() : touched.stages
  }

  line(line: Line): LineRead {
    const row = rowAt(this.#before, line.id)
    const old = row?.kind === 'line' ? row : undefined
    const isAsBefore = old?.line === line && !this.#touched.all && !this.#touched.lines.has(line.id)
    const figures = isAsBefore ? old.figures : this.#sheet.line(line.id)
    if (!this.#batch) return { line, figures, weighed: undefined, old }
    const weighed = (isAsBefore && old.batch) || weighedLine(this.#sheet, line.id, this.#style)
    return { line, figures, weighed, old }
  }

  stage(stage: Stage): StageRead {
    const row = rowAt(this.#before, stageKey(stage.id))
    const sumRow = rowAt(this.#before, sumKey(stage.id))
    const old = row?.kind === 'stage' && sumRow?.kind === 'sum' ? asRead(row, sumRow) : undefined
    const isKnown = old && (old.sum !== undefined) === this.#batch
    if (isKnown && !this.#touched.all && !this.#stages.has(stage.id)) return old
    const figures = this.#sheet.stage(stage.id)
    if (!this.#batch) return { figures, built: [], sum: undefined }
    const built = buildWords(this.#sheet, stage, this.#style)
    return { figures, built, sum: weighedStage(this.#sheet, stage, this.#style) }
  }

  /** Those touched, those of touched lines, and those of which such a line takes. */
  #weighedAnew(): ReadonlySet<string> {
    const { formula } = this.#sheet
    const { lines, stages } = this.#touched
    const anew = new Set(stages)
    const taken = new Set<string>()
    for (const stage of formula.stages)
      for (const line of stage.lines) {
        if (!lines.has(line.id)) continue
        anew.add(stage.id)
        taken.add(nameKey(line.ingredient))
      }
    for (const stage of formula.stages) if (taken.has(nameKey(stage.name))) anew.add(stage.id)
    return anew
  }
}

const asRead = ({ built }: StageRow, { figures, batch }: SumRow): StageRead => ({
  figures,
  built,
  sum: batch,
})
