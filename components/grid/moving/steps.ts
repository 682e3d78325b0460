import { type Column, homeOf, isAmount, type Row, type Spot, type Table } from '../table/table.js'
import type { Direction } from './key-map.js'

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

/** The column of the cell that is really there: a stage's row has its name and its actions. */
export function cellColumn(row: Row | undefined, column: Column, columns: readonly Column[]): Column {
  if (row?.kind === 'stage') return column === 'actions' ? 'actions' : 'ingredient'
  return homeOf(column, columns)
}

const clamp = (n: number, length: number): number => Math.max(0, Math.min(n, length - 1))

/** Where a step from `from` leads. At an edge it leads nowhere; `page` is the rows of a screenful. */
export function step(
  table: Table,
  columns: readonly Column[],
  from: Spot,
  to: Direction,
  page: number,
): Spot {
  const at = table.index.get(from.row) ?? 0
  const row = table.rows[at]
  const here = columns.indexOf(cellColumn(row, from.column, columns))
  const first = columns[0]!
  const last = columns[columns.length - 1]!
  const down = (by: number): Spot => ({
    row: table.rows[clamp(at + by, table.rows.length)]?.key ?? from.row,
    column: from.column,
  })
  switch (to) {
    case 'left':
      return {
        row: from.row,
        column: row?.kind === 'stage' ? first : columns[clamp(here - 1, columns.length)]!,
      }
    case 'right':
      return {
        row: from.row,
        column: row?.kind === 'stage' ? last : columns[clamp(here + 1, columns.length)]!,
      }
    case 'up':
      return down(-1)
    case 'down':
      return down(1)
    case 'pageUp':
      return down(-page)
    case 'pageDown':
      return down(page)
    case 'rowStart':
      return { row: from.row, column: first }
    case 'rowEnd':
      return { row: from.row, column: last }
    case 'start':
      return { row: table.rows[0]?.key ?? from.row, column: first }
    case 'end':
      return { row: table.rows[table.rows.length - 1]?.key ?? from.row, column: last }
  }
}

/** Whether a cell can be typed in. */
export function takesTyping(row: Row, column: Column): boolean {
  if (row.kind === 'stage') return column !== 'actions'
  if (row.kind === 'sum') return false
  if (column === 'wholeDough') return row.isFinal // elsewhere it follows from all the stages
  return column === 'ingredient' || column === 'note' || isAmount(column)
}

/** The next cell that can be typed in, to the right or the left and on through the rows; undefined past the last. */
export function nextToType(
  table: Table,
  columns: readonly Column[],
  from: Spot,
  by: -1 | 1,
): Spot | undefined {
  let at = table.index.get(from.row) ?? 0
  let column = columns.indexOf(cellColumn(table.rows[at], from.column, columns))
  for (;;) {
    column += by
    if (column < 0 || column >= columns.length) {
      at += by
      column = by > 0 ? 0 : columns.length - 1
    }
    const row = table.rows[at]
    if (!row) return undefined
    const there = columns[column]!
    const isCell = cellColumn(row, there, columns) === there
    if (isCell && takesTyping(row, there)) return { row: row.key, column: there }
  }
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
