import type { Formula } from '../../../src/dough/document/formula.js'
import type { FigureSheet } from '../../../src/dough/sheet/figures.js'
import type { CellName } from '../../../src/dough/workings/working.js'
import type { Edit } from '../../base/events.js'
import type { Column, LineRow } from '../table/table.js'

/** One entry of a row's menu. */
export interface Action {
  readonly label: string
  readonly run: () => void
  readonly keys?: string // that do the same
  readonly checked?: boolean // one of several ways, and whether it is this one
  readonly apart?: true // a rule before it
}

/** What the actions ask of the grid. */
export interface Actor {
  readonly sheet: FigureSheet
  readonly formula: Formula
  readonly hasClipboard: boolean
  readonly columns: readonly Column[] // that are shown
  /** Makes the edit and goes to the row; says why if it cannot be. */
  act(edit: Edit, goTo?: string): boolean
  addLine(row: LineRow, by: 0 | 1): void
  startEditing(row: string, column: Column): void
  define(ingredient: string): void
  ask(cell: CellName): void
  offer(label: string, actions: readonly Action[]): void
  copy(): void
  paste(): void
}
