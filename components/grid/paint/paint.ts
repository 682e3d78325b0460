import { guard } from 'lit/directives/guard.js'
import type { EditingContext } from '../editing/session.js'
import { cellColumn, type Row } from '../table/table.js'
import { type RowState, rowTemplate, selectedColumns, type View } from './row-template.js'

/** Paints rows; one that looks as before is left alone. `lit`: ids of the lines that a working speaks of. */
export function painter(context: EditingContext, lit: ReadonlySet<string>): (row: Row) => unknown {
  const { grid, columns, selection, session } = context
  const { readOnly } = grid
  const view: View = { columns, readOnly, style: grid.numbers }
  const editing = session.state
  const selected = selection.block && selection.extent
  const rows = new Set(selected?.rows)
  const span = selected ? selectedColumns(selected.columns, columns) : ([-1, -1] as const)
  return row => {
    const [from, to] = rows.has(row) ? span : [-1, -1]
    const at: RowState = {
      active:
        row.key === selection.active.row ? cellColumn(row, selection.active.column, columns) : undefined,
      from,
      to,
      editing: editing?.row === row.key ? editing : undefined,
      lit: lit.has(row.key),
    }
    return guard([row, at.active, from, to, at.editing, at.lit, columns, readOnly], () =>
      rowTemplate(row, at, view),
    )
  }
}
