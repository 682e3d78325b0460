import { type Column, cellColumn, type Row, type Spot, type Table } from '../table/table.js'

/** A block of cells: a corner that stays and a corner that moves. */
export interface Block {
  readonly anchor: Spot
  readonly head: Spot
}

/** The rows and columns of a block, in order. */
export interface Extent {
  readonly rows: readonly Row[]
  readonly columns: readonly Column[]
}

/** The rows and columns a block covers; the one cell at `active` where there is none. */
export function extentOf(
  table: Table,
  columns: readonly Column[],
  active: Spot,
  block: Block | undefined,
): Extent {
  const { anchor, head } = block ?? { anchor: active, head: active }
  const rowOf = (spot: Spot) => table.index.get(spot.row) ?? 0
  const columnOf = (spot: Spot) =>
    Math.max(
      0,
      columns.indexOf(block ? spot.column : cellColumn(table.rows[rowOf(spot)], spot.column, columns)),
    )
  const [top, bottom] = [rowOf(anchor), rowOf(head)].sort((a, b) => a - b) as [number, number]
  const [left, right] = [columnOf(anchor), columnOf(head)].sort((a, b) => a - b) as [number, number]
  return { rows: table.rows.slice(top, bottom + 1), columns: columns.slice(left, right + 1) }
}
