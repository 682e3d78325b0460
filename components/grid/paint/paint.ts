import { guard } from 'lit/directives/guard.js'
import type { FigureSheet } from '../../../src/dough/sheet/figures.js'
import { columnNames, type Editing, rowName } from '../editing/editor.js'
import type { Walk } from '../moving/selection.js'
import { cellColumn } from '../moving/steps.js'
import type { Row } from '../table/table.js'
import { type RowState, rowTemplate, selectedColumns, type View } from './row-template.js'

/** What the rows are painted of. */
export interface Painted {
  readonly sheet: FigureSheet
  readonly walk: Walk
  readonly editing: Editing | undefined
  readonly lit: ReadonlySet<string> // ids of lines
  readonly view: Omit<View, 'label'>
}

/** Paints rows; one that looks as before is left alone. */
export function painter({ sheet, walk, editing, lit, view }: Painted): (row: Row) => unknown {
  const { columns, readOnly } = view
  const all: View = { ...view, label: (row, column) => `${rowName(row, sheet)}, ${columnNames[column]}` }
  const selection = walk.block && walk.extent
  const rows = new Set(selection?.rows)
  const span = selection ? selectedColumns(selection.columns, columns) : ([-1, -1] as const)
  return row => {
    const [from, to] = rows.has(row) ? span : [-1, -1]
    const at: RowState = {
      active: row.key === walk.active.row ? cellColumn(row, walk.active.column, columns) : undefined,
      from,
      to,
      editing: editing?.row === row.key ? editing : undefined,
      lit: lit.has(row.key),
    }
    return guard([row, at.active, from, to, at.editing, at.lit, columns, readOnly], () =>
      rowTemplate(row, at, all),
    )
  }
}
