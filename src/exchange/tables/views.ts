import { headingName, isStageName } from '../values/labels.js'
import type { Row, View } from './row-features.js'
import { isAmountUse } from './table-cells.js'
import type { ColumnUse, Mapping } from './types.js'
import { headingUse } from './vocabulary.js'

/** `Levain`, `Levain (kg)`, `Levain %`, `Levain: g` over a column: its stage, and what its numbers are. */
export function stageOver(heading: string): { stage: string; use: ColumnUse } | undefined {
  const { name, remark } = headingName(heading)
  const [, stage = name, unit = remark] =
    /^([^:]+):\s+(\S.*)$/.exec(heading.trim()) ??
    /^(.*\S)\s+(%|g|kg|oz|lbs?)$/i.exec(remark === '' ? name : '') ??
    []
  const use = unit === '' ? 'amount' : headingUse(unit)
  return use !== undefined && use !== 'other percent' ? { stage, use } : undefined
}

const isShared = (use: ColumnUse): boolean => use !== 'of a stage' && use !== 'stage' && !isAmountUse(use)

/** The parts that a table is read by, one after the other; most have but one. */
export function viewsOf({ columns }: Mapping, headings: readonly string[]): View[] {
  const starts = [...columns.keys()].filter(at => columns[at] === 'ingredient')
  if (columns.includes('of a stage')) {
    const byStage = new Map<string, ColumnUse[]>()
    for (const [at, column] of columns.entries()) {
      if (column !== 'of a stage') continue
      const { stage, use } = stageOver(headings[at] ?? '') ?? { stage: '', use: 'amount' }
      const name = stage || `Stage ${at + 1}`
      const uses = byStage.get(name) ?? columns.map(other => (isShared(other) ? other : 'leave out'))
      uses[at] = isAmountUse(use) && use !== 'amount' ? use : columns.includes('unit') ? 'amount' : 'grams'
      byStage.set(name, uses)
    }
    return [...byStage].map(([stage, uses]) => ({ stage, uses, part: 'stage' }))
  }
  if (starts.length < 2) return [{ uses: columns, part: 'all' }]
  return starts.map((start, nth): View => {
    const end = starts[nth + 1] ?? columns.length
    const uses = columns.map((use, at) => (at < starts[0]! || (at >= start && at < end) ? use : 'leave out'))
    const stage = stageOver(headings[start] ?? '')?.stage ?? ''
    return { uses, part: 'table', ...(isStageName(stage) ? { stage } : {}) }
  })
}

/**
 * The rows of a table, each as every view reads it, in the order of the views. In the column of a stage stand only the rows
 * that give it an amount; a row that gives none to any stage comes once.
 */
export function stacked(rows: readonly (readonly Row[])[], views: readonly View[]): Row[] {
  const isGiven = rows.map(each => each.some(({ amounts }) => amounts.length > 0))
  let bread = ''
  const breads = rows.map(([row]) => (bread = row!.formula || bread))
  return joined(
    views.flatMap(({ part }, nth) => {
      const read = rows.map(each => each[nth]!)
      const isLast = nth === views.length - 1
      if (part === 'stage')
        return read
          .map((row, at) => (row.formula === breads[at] ? row : { ...row, formula: breads[at]! }))
          .filter(({ amounts }, at) => amounts.length > 0 || (isLast && !isGiven[at]))
      // a table that stands beside another begins anew
      return nth > 0 && read[0] ? [{ ...read[0], is: 'blank', amounts: [] } satisfies Row, ...read] : read
    }),
  )
}

/** Where amounts stand in the rows below their names, each is one line. */
function joined(rows: Row[]): Row[] {
  const isPair = (at: number) =>
    rows[at]?.is === 'name' && rows[at]!.name !== '' && rows[at + 1]?.is === 'amounts'
  const pairs = rows.filter((_, at) => isPair(at)).length
  if (pairs < 2 || rows.filter(({ is }) => is === 'line').length > pairs) return rows
  return rows.map((row, at): Row => {
    if (isPair(at)) return { ...row, is: 'joined' }
    const { row: number, cells, amounts } = row
    return isPair(at - 1) ? { ...rows[at - 1]!, is: 'line', row: number, cells, amounts } : row
  })
}
