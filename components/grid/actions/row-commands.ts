import { type Formula, sameName } from '../../../src/dough/document/formula.js'
import { addLine, addStage, moveLine, moveStage, newLine, newStage } from '../../../src/dough/edits/edits.js'
import type { FigureSheet } from '../../../src/dough/sheet/figures.js'
import type { CellName } from '../../../src/dough/workings/working.js'
import { type Edit, wish } from '../../base/events.js'
import type { Blocks } from '../blocks/blocks.js'
import type { EditingContext } from '../editing/session.js'
import type { TouchKeys } from '../editing/touch-keys.js'
import { type Column, type LineRow, type Row, type Spot, stageKey } from '../table/table.js'
import type { RowMenu } from './menu.js'
import { newStageName } from './words.js'

/** What is done beyond moving and typing. */
export interface Further {
  readonly blocks: Blocks
  readonly menu: RowMenu
  readonly touchKeys: TouchKeys
  sayReleases(before: Formula, typedIn: string): void
  openMenu(row: Row, by: HTMLElement): void
}

export interface ActionsContext extends EditingContext {
  readonly rowCommands: RowCommands
  readonly further: Further | undefined // once it is fetched
  /** At once where it is fetched: what was selected when it was asked is to be taken along. */
  withFurther(act: (further: Further) => void): void
}

/** What is done to lines and stages whole, and what is asked of them. */
export class RowCommands {
  #context: ActionsContext

  constructor(context: ActionsContext) {
    this.#context = context
  }

  get sheet(): FigureSheet {
    return this.#context.grid.sheet
  }

  get formula(): Formula {
    return this.sheet.formula
  }

  /** Makes the edit and goes to the row; says why if it cannot be. */
  edit(edit: Edit, goTo?: string): boolean {
    return this.#context.dispatcher.editHere(edit, goTo)
  }

  /** Moves the line or the stage. */
  shift(row: Row, by: -1 | 1): void {
    const formula = this.formula.id
    if (row.kind === 'stage') this.edit(wb => moveStage(wb, { formula, stage: row.stage.id }, by), row.key)
    if (row.kind === 'line')
      this.edit(wb => moveLine(wb, { formula, stage: row.stage, line: row.key }, by), row.key)
  }

  addLine(row: LineRow, by: 0 | 1): void {
    const stage = this.formula.stages.find(s => s.id === row.stage)
    const index = stage?.lines.findIndex(l => l.id === row.key) ?? -1
    if (index >= 0) this.#addLineAt(row.stage, index + by)
  }

  /** Adds a line below any row: in the row for another ingredient it is that row that is opened. */
  addBelow(row: Row): void {
    if (row.kind === 'line') this.addLine(row, 1)
    else if (row.kind === 'stage') this.#addLineAt(row.stage.id, 0)
    else this.#context.session.start({ row: row.key, column: 'ingredient' }, 'end')
  }

  #addLineAt(stage: string, index: number): void {
    const line = newLine()
    const spot: Spot = { row: line.id, column: 'ingredient' }
    const { dispatcher, session } = this.#context
    if (dispatcher.edit(() => addLine({ formula: this.formula.id, stage }, line, index), spot)) return
    session.start(spot, 'all')
  }

  /** Adds a stage, before the final dough or at `index`, and lets the baker name it. */
  addStage(index?: number): void {
    const taken = (name: string) => this.formula.stages.some(s => sameName(s.name, name))
    let n = 1
    while (taken(newStageName(n))) n += 1
    const stage = newStage(newStageName(n))
    this.edit(wb => addStage(wb, this.formula.id, stage, index))
    this.startEditing(stageKey(stage.id), 'ingredient')
  }

  startEditing(row: string, column: Column): void {
    this.#context.session.start({ row, column }, 'all')
  }

  /** Shows how the number of a cell is worked out. */
  ask(cell: CellName): void {
    wish(this.#context.grid, { want: 'working', cell })
  }

  /** Leaves the grid for the steps of a stage. */
  toMethod(stage: string): void {
    this.#context.grid.dispatchEvent(new CustomEvent('tb-method', { detail: stage }))
  }
}
