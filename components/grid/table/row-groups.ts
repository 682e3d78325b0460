import type { Row, RowGroup } from './table.js'

const most = 100 // rows of a group
const usual = 50 // where a longer one is parted

/**
 * The rows of a stage in groups of at most a hundred. A group begins at the row where one began before, so that a row
 * that comes or goes moves no other into another group; one that is as before is the same object.
 */
export function groupsOf(rows: readonly Row[], before: ReadonlyMap<string, RowGroup>): RowGroup[] {
  const groups: RowGroup[] = []
  let from = 0
  for (let to = 1; to <= rows.length; to++) {
    const next = rows[to]
    if (next && !before.has(next.key)) continue
    const count = to - from
    const parts = count > most ? Math.ceil(count / usual) : 1
    for (let part = 0; part < parts; part++) {
      const [begin, end] = [part, part + 1].map(p => from + Math.round((count * p) / parts)) as [
        number,
        number,
      ]
      groups.push(asBefore(rows.slice(begin, end), before))
    }
    from = to
  }
  return groups
}

function asBefore(rows: readonly Row[], before: ReadonlyMap<string, RowGroup>): RowGroup {
  const { key } = rows[0]!
  const old = before.get(key)
  return old?.rows.length === rows.length && old.rows.every((row, i) => row === rows[i]) ? old : { key, rows }
}
