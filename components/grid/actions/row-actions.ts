import type { Formula } from '../../../src/dough/document/formula.js'
import type { FigureSheet } from '../../../src/dough/sheet/figures.js'
import type { CellName } from '../../../src/dough/workings/working.js'
import type { Edit } from '../../base/events.js'
import type { Column, LineRow, Row } from '../table/table.js'
import { lineActions } from './line-actions.js'
import { questionAt } from './questions.js'
import { stageActions } from './stage-actions.js'

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

/** The menu of a row, opened at one of its cells. */
export function actionsFor(row: Row, column: Column, actor: Actor): readonly Action[] {
  const asked = asking(row, column, actor)
  if (row.kind === 'line') return lineActions(row, actor, asked)
  return row.kind === 'stage' ? stageActions(row, actor, asked) : []
}

/** What is asked of the number at hand; where there is none, of the row's weight. */
function asking(row: Row, column: Column, actor: Actor): readonly Action[] {
  const question = questionAt(row, column, actor.columns.includes('batch'))
  if (!question || (row.kind !== 'stage' && !/\d/.test(question.figure))) return []
  const what = row.kind === 'stage' ? `the weight of ${question.figure}` : question.figure
  const label = `How is ${what} worked out?`
  return [{ label, keys: 'Alt+Enter', run: () => actor.ask(question.cell), apart: true }]
}
