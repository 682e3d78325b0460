import { html, nothing } from 'lit'
import { guard } from 'lit/directives/guard.js'
import { repeat } from 'lit/directives/repeat.js'
import type { EditingContext } from '../editing/session.js'
import { groupId } from '../table/elements.js'
import { cellColumn, groupOf, type Row, type RowGroup } from '../table/table.js'
import type { Filling } from './filling.js'
import { roomOf } from './group-room.js'
import { type RowState, rowTemplate, selectedColumns, type View } from './row-template.js'

/**
 * Paints groups of rows; a group in which all looks as before is left alone, and so is such a row of another group.
 * `lit`: ids of the lines that a working speaks of.
 */
export function painter(
  context: EditingContext,
  lit: ReadonlySet<string>,
  filling: Filling,
): (group: RowGroup) => unknown {
  const { grid, table, columns, selection, session } = context
  const { readOnly } = grid
  const view: View = { columns, readOnly, style: grid.numbers }
  const editing = session.state
  const selected = selection.block && selection.extent
  const rows = new Set(selected?.rows)
  const span = selected ? selectedColumns(selected.columns, columns) : ([-1, -1] as const)

  const stateOf = (row: Row): RowState => {
    const [from, to] = rows.has(row) ? span : [-1, -1]
    return {
      active:
        row.key === selection.active.row ? cellColumn(row, selection.active.column, columns) : undefined,
      from,
      to,
      editing: editing?.row === row.key ? editing : undefined,
      lit: lit.has(row.key),
    }
  }
  const paintRow = (row: Row) => {
    const at = stateOf(row)
    return guard([row, at.active, at.from, at.to, at.editing, at.lit, columns, readOnly], () =>
      rowTemplate(row, at, view),
    )
  }

  const open = new Set<RowGroup>() // where something is going on
  for (const key of [selection.active.row, ...(editing ? [editing.row] : []), ...lit]) {
    const group = groupOf(table, key)
    if (group) open.add(group)
  }
  filling.begin(table.groups, open)
  const marks = (group: RowGroup) =>
    open.has(group) || rows.size > 0
      ? group.rows.flatMap(row => {
          const { active, from, to, editing, lit } = stateOf(row)
          return active || editing || lit || from >= 0 ? [row.key, active, from, to, editing, lit] : []
        })
      : []

  return group => {
    const waits = filling.waits(group)
    const at = waits ? 'waiting' : open.has(group) ? 'open' : ''
    return guard([group, at, columns, readOnly, ...marks(group)], () => {
      const { key, rows } = group
      return html`<tbody role="rowgroup" id=${groupId(key)} class=${at} style=${roomOf(group)}>
        ${waits ? nothing : repeat(rows, row => row.key, paintRow)}
      </tbody>`
    })
  }
}
