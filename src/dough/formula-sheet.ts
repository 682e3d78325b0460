import './amounts/spoken-at-once.js'
import './cells/rare-cells-at-once.js'
import type { Batch, Scale } from './document/batch.js'
import { type Formula, type Problem, sameName } from './document/formula.js'
import type { Larder } from './document/larder.js'
import type { AmountColumn, ReadingName } from './document/reading-names.js'
import { applyChanges, emptyWorkbook, type Transaction, type Workbook } from './document/workbook.js'
import {
  addLine,
  addStage,
  enterAmount,
  finalDoughAt,
  holdReading,
  newLine,
  newStage,
  releaseHold,
} from './edits/edits.js'
import { setBatch } from './edits/fetched/batch-edits.js'
import { refuseFetched } from './edits/fetched/fetched-words.js'
import { cellOf } from './outline/names.js'
import type { LinePlan, Outline } from './outline/outline.js'
import { remarksOn } from './remarks/remarks.js'
import type { FigureSheet } from './sheet/figures.js'
import { WorkedSheet } from './sheet/sheet.js'
import { numberIn } from './sheet/worked-out.js'
import type { CellName, Working } from './workings/working.js'
import { cellNamed, workingOf } from './workings/workings.js'

/** The same for programs: by the names of stages and ingredients, to be changed, and with workings. */
export interface FormulaSheet extends FigureSheet {
  /** What is noticed, errors first. */
  readonly problems: readonly Problem[]
  /** Grams as written of an ingredient in a stage, by their names; two lines of one ingredient: their sum. */
  weight(stage: string, ingredient: string): number | undefined
  /** Grams of it in the batch, unrounded. */
  batchWeight(stage: string, ingredient: string): number | undefined
  /** Says how much to make. Throws Refusal. */
  make(batch: Batch): void
  /** Types `text` into a column of an ingredient's line; the line (and stage) are made when there are none. Throws Refusal. */
  enter(stage: string, ingredient: string, column: AmountColumn, text: string): void
  /**
   * Keeps a reading at `value` (fraction of 1, or grams) while the line gives; a dough weight for which no line is named,
   * while every line gives in proportion. Throws Refusal.
   */
  hold(reading: ReadingName, value: number, gives?: { stage: string; ingredient: string }): void
  release(reading: ReadingName): void
  /** How a number came about. Throws RangeError for a cell that is not in the formula. */
  working(cell: CellName): Working
  /** The cell of an ingredient's figure, to ask its working; undefined when there is no such line. */
  cell(stage: string, ingredient: string, column: AmountColumn | 'batch'): CellName | undefined
}

/** A formula with its figures, to be read and changed by names. The larder is the usual one unless another is given. */
export const openFormula = (formula: Formula, larder?: Larder, scale?: Scale): FormulaSheet =>
  new NamedSheet(formula, larder, scale)

class NamedSheet extends WorkedSheet implements FormulaSheet {
  get #outline(): Outline {
    return this.workedOut.outline
  }

  get problems(): readonly Problem[] {
    return remarksOn(this.workedOut)
  }

  weight(stage: string, ingredient: string): number | undefined {
    return this.#total(stage, ingredient, cellOf.weight)
  }

  #total(stage: string, ingredient: string, cell: (line: LinePlan) => string): number | undefined {
    const lines = this.#outline.stageNamed(stage)?.lines.filter(l => sameName(l.line.ingredient, ingredient))
    if (!lines?.length) return undefined
    let sum = 0
    for (const line of lines) {
      const weight = numberIn(this.workedOut, cell(line))
      if (weight === undefined) return undefined
      sum += weight
    }
    return sum
  }

  batchWeight(stage: string, ingredient: string): number | undefined {
    return this.#total(stage, ingredient, cellOf.batch)
  }

  make(batch: Batch): void {
    this.#edit(w => setBatch(w, this.formula.id, batch))
  }

  enter(stage: string, ingredient: string, column: AmountColumn, text: string): void {
    const { id } = this.formula
    if (!this.#outline.stageNamed(stage)) this.#edit(w => addStage(w, id, newStage(stage)))
    const there = () => this.#outline.stageNamed(stage)!
    const lineThere = () => there().lines.find(l => sameName(l.line.ingredient, ingredient))
    if (!lineThere())
      this.#edit(() => addLine({ formula: id, stage: there().stage.id }, newLine({ ingredient })))
    this.#edit(w =>
      enterAmount(w, { formula: id, stage: there().stage.id, line: lineThere()!.line.id }, column, text),
    )
  }

  hold(reading: ReadingName, value: number, gives?: { stage: string; ingredient: string }): void {
    const formula = this.formula.id
    if (!gives)
      return this.#edit(w => holdReading(w, { ...finalDoughAt(this.formula), line: '' }, reading, value))
    const { stage, ingredient } = gives
    const line = this.#outline.stageNamed(stage)?.lines.find(l => sameName(l.line.ingredient, ingredient))
    if (!line) refuseFetched({ code: 'noSuchGiver', ingredient, stage })
    this.#edit(w =>
      holdReading(w, { formula, stage: line.stage.stage.id, line: line.line.id }, reading, value),
    )
  }

  release(reading: ReadingName): void {
    this.#edit(w => releaseHold(w, this.formula.id, h => h.reading === reading))
  }

  #edit(edit: (workbook: Workbook) => Transaction | undefined): void {
    const workbook = { ...emptyWorkbook, formulas: [this.formula] }
    const transaction = edit(workbook)
    if (transaction) this.update(applyChanges(workbook, transaction.changes).workbook.formulas[0]!)
  }

  working(cell: CellName): Working {
    return workingOf(this.workedOut, cell)
  }

  cell(stage: string, ingredient: string, column: AmountColumn | 'batch'): CellName | undefined {
    return cellNamed(this.#outline, stage, ingredient, column)
  }
}
