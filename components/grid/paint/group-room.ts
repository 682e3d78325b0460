import type { Row, RowGroup } from '../table/table.js'

/** Lines of text in a row's cells beyond the first, as far as they can be told without laying it out. */
function moreLines(row: Row): number {
  if (row.kind === 'stage') return 1 // its room above
  if (row.kind !== 'line') return 0
  const { figures, percent, weight } = row
  const typed = percent.typed || weight.typed ? 1 : 0
  const said = figures.is === 'unknown' ? 2 : figures.gives || row.waitsFor ? 1 : 0
  return Math.max(typed, said) + (row.problem ? 1 : 0) + (row.isOpen && figures.is !== 'unknown' ? 1 : 0)
}

/** The room a group is given before it is laid out for the first time: its rows, and lines of text besides. */
export const roomOf = ({ rows }: RowGroup): string =>
  `--rows: ${rows.length}; --more: ${rows.reduce((sum, row) => sum + moreLines(row), 0)}`
