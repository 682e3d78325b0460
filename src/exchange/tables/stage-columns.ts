import { isAmountUse, readCell } from './cell-quantity.js'
import type { ColumnUse, ForeignRow, Mapping, RowRead } from './types.js'
import { headingName, isStageName } from './words.js'

interface StageColumn {
  readonly at: number
  readonly stage: string
  readonly unit: string // of its numbers that have none
}

const unitInHeading = /^(?:g|kg|oz|lb|%)$/i

function stageColumn(heading: string, at: number): StageColumn {
  const { name, remark } = headingName(heading)
  const unit = unitInHeading.test(remark) ? remark.toLowerCase() : 'g'
  return { at, stage: name || `Stage ${at + 1}`, unit }
}

/** The columns whose headings name different stages, `Levain | Final dough (g)`, where there are several. */
export function stageColumnsIn(headings: readonly string[], isOfNumbers: (at: number) => boolean): number[] {
  const names = new Set<string>()
  const columns = [...headings.keys()].filter(at => {
    const { name, remark } = headingName(headings[at]!)
    if (!isStageName(name) || (remark !== '' && !unitInHeading.test(remark)) || !isOfNumbers(at)) return false
    names.add(name.toLowerCase())
    return true
  })
  return columns.length > 1 && names.size === columns.length ? columns : []
}

/** Whether each stage has a column of its own. */
export const hasStageColumns = ({ columns }: Pick<Mapping, 'columns'>): boolean =>
  columns.includes('of a stage')

/** Rows of a table laid out anew, and how they are to be read. */
export interface LaidOut {
  readonly rows: readonly ForeignRow[]
  readonly mapping: Mapping
  readonly headings: readonly string[]
}

const isOther = (use: ColumnUse): boolean =>
  use !== 'of a stage' && use !== 'leave out' && use !== 'stage' && !isAmountUse(use)

/**
 * A table with a column for each stage as one with a stage and an amount in each row: stage after stage, of each the rows
 * with a number in its column. A row comes as often as it has numbers, and once where it has none; what is 0 is none.
 */
export function laidOut(
  rows: readonly ForeignRow[],
  headings: readonly string[],
  mapping: Mapping,
): LaidOut | undefined {
  if (!hasStageColumns(mapping)) return undefined
  const { columns, decimal } = mapping
  const stages = columns.flatMap((use, at) =>
    use === 'of a stage' ? [stageColumn(headings[at] ?? '', at)] : [],
  )
  const others = [...columns.keys()].filter(at => isOther(columns[at]!))
  const formula = columns.indexOf('formula')
  const saysUnit = columns.includes('unit')
  const isThere = (cell: string): boolean => {
    const read = readCell(cell, 'amount', decimal)
    return read.is !== 'nothing' && !(read.is === 'quantity' && (read.grams ?? read.percent) === 0)
  }
  let bread = ''
  const filled = rows.map(({ row, cells, broken }) => {
    bread = (cells[formula] ?? '').trim() || bread
    const own = others.map(at => (at === formula ? bread : (cells[at] ?? '')))
    const amounts = stages.map(({ at }) => cells[at] ?? '')
    return { row, cells, broken, own, amounts, isNone: !amounts.some(isThere) }
  })
  const laid = stages.flatMap(({ stage, unit }, nth) =>
    filled.flatMap(({ row, cells, broken, own, amounts, isNone }): ForeignRow[] => {
      const isLast = nth === stages.length - 1
      if (broken !== undefined) return isLast ? [{ row, cells, broken }] : []
      if (isNone) return isLast ? [{ row, cells: own }] : []
      if (!isThere(amounts[nth]!)) return []
      return [{ row, cells: [...own, stage, amounts[nth]!, ...(saysUnit ? [] : [unit])] }]
    }),
  )
  const added = ['stage', 'amount', ...(saysUnit ? [] : (['unit'] as const))] as const
  return {
    rows: laid,
    mapping: { ...mapping, columns: [...others.map(at => columns[at]!), ...added], stages: 'column' },
    headings: [...others.map(at => headings[at] ?? ''), ...added],
  }
}

/** What became of a row in one stage, with what became of it in another. */
export const also = (read: RowRead, { amount, stage }: RowRead): RowRead => ({
  ...read,
  why: [read.why, `Also ${amount || 'without an amount'} in ${stage}.`].filter(Boolean).join(' '),
})

/** Of each row once what became of it, in their order: the line, where it became one. */
export function onePerRow(reads: readonly RowRead[]): RowRead[] {
  const byRow = new Map<number, RowRead>()
  for (const read of reads) {
    const before = byRow.get(read.row)
    if (!before || (before.became !== 'line' && read.became === 'line')) byRow.set(read.row, read)
  }
  return [...byRow.values()].sort((a, b) => a.row - b.row)
}
