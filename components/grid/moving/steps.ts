import { type Column, cellColumn, rowAt, type Spot, type Table, takesTyping } from '../table/table.js'
import type { Direction } from './key-map.js'

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

/** Whether a stage's amounts are all typed in grams, so that another line's will be as well. */
const isInGrams = (table: Table, stage: string): boolean => {
  const typed = table.rows.flatMap(r =>
    r.kind === 'line' && r.stage === stage ? (r.figures.typedIn ?? []) : [],
  )
  return typed.length > 0 && typed.every(column => column === 'weight')
}

/** Where the amount of a line is typed that has a name and no amount yet; undefined where the next cell is that place. */
export function amountOfNewLine(
  table: Table,
  columns: readonly Column[],
  { row: key, column }: Spot,
): Spot | undefined {
  const row = rowAt(table, key)
  if (row?.kind !== 'line' || column !== 'ingredient' || row.line.amount || !columns.includes('weight'))
    return undefined
  return isInGrams(table, row.stage) ? { row: key, column: 'weight' } : undefined
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
