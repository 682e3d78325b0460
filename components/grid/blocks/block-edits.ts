import { enterCells } from '../../../src/dough/edits/fetched/many-cells.js'
import { removeLines } from '../../../src/dough/edits/fetched/row-edits.js'
import type { Edit } from '../../base/events.js'
import type { Extent } from '../moving/extent.js'
import type { Column, LineRow } from '../table/table.js'

/** Whether every cell of the rows is in the block, so that the rows themselves are meant. */
export const coversRows = (extent: Extent, columns: readonly Column[]): boolean =>
  columns.every(c => c === 'actions' || extent.columns.includes(c))

/** Clears what was typed in a block, or removes the lines it covers whole; undefined when there is nothing typed. */
export function clearBlock(formula: string, extent: Extent, columns: readonly Column[], label: string): Edit {
  const lines = extent.rows.filter(row => row.kind === 'line')
  const ats = lines.map(row => ({ formula, stage: row.stage, line: row.line.id }))
  if (coversRows(extent, columns)) return workbook => (ats.length ? removeLines(workbook, ats) : undefined)
  const typed = lines.map(row => ({
    stage: row.stage,
    line: row.line.id,
    cells: extent.columns.flatMap(column =>
      column !== 'batch' && column !== 'actions' && holds(row, column)
        ? [{ column, text: '', kept: '' }]
        : [],
    ),
  }))
  return workbook =>
    enterCells(
      workbook,
      formula,
      typed.filter(({ cells }) => cells.length),
      '.',
      label,
    )
}

/** Whether a cell holds something typed. */
function holds(row: LineRow, column: Column): boolean {
  if (column === 'ingredient') return row.line.ingredient !== ''
  if (column === 'note') return row.line.note !== ''
  return row.figures.typedIn === column
}
