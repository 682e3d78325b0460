import { amountAsKept, plainPercent, readAmount } from '../../../src/dough/amounts/amounts.js'
import '../../../src/dough/amounts/spoken-at-once.js'
import { typedNumber } from '../../../src/dough/amounts/typed.js'
import { addLine, newLine } from '../../../src/dough/edits/edits.js'
import type { Edit } from '../../base/events.js'
import { enterIn, inTurn } from '../editing/cell-edits.js'
import type { Extent } from '../moving/extent.js'
import {
  type AddRow,
  type AmountColumn,
  type Column,
  isAmount,
  type LineRow,
  stageOf,
  type Table,
} from '../table/table.js'
import type { Pasted, PastedCell } from './forms.js'
import { editLabels, type PasteCount } from './words.js'

/**
 * Puts a block with its top left at a cell: over the lines of that stage, and past its last line into new ones.
 * The edit counts into `count`.
 */
export function pasteBlock(
  formula: string,
  table: Table,
  columns: readonly Column[],
  start: { readonly row: LineRow | AddRow; readonly column: Column },
  pasted: Pasted,
  count: PasteCount,
): Edit {
  const stage = stageOf(start.row)
  const lines = table.rows.filter(row => row.kind === 'line' && row.stage === stage) as readonly LineRow[]
  const first = start.row.kind === 'line' ? lines.indexOf(start.row) : lines.length
  const places = placesOf(pasted, columns.slice(columns.indexOf(start.column)))
  const edits: Edit[] = []
  for (const [i, cells] of pasted.rows.entries()) {
    if (cells.every(c => c.text === '')) continue
    const existing = lines[first + i]
    const line = existing ? existing.line : newLine()
    if (!existing) edits.push(() => addLine({ formula, stage }, line))
    const amount = amountBrought(cells, places, start.row, existing?.figures.typedIn)
    for (const [j, { text }] of cells.entries()) {
      const column = places[j]
      if (!column) {
        if (text !== '') count.leftOut += 1
        continue
      }
      if (column === 'batch' || (text === '' && !existing)) continue
      if (isAmount(column) && column !== amount) {
        if (text !== '' && (column !== 'wholeDough' || start.row.isFinal)) count.pasted += 1
        continue
      }
      count.pasted += 1
      const brought = isAmount(column) ? ungrouped(text, pasted.decimal) : text
      if (!understood(brought, column, pasted.decimal)) count.notUnderstood += 1
      edits.push(enterIn(formula, stage, line.id, column, brought, pasted.decimal))
    }
  }
  count.pasted -= count.notUnderstood
  return workbook => inTurn(workbook, editLabels.paste, edits, sentence => count.refusals.push(sentence))
}

/** The columns a pasted block goes to: those it was copied from, when it begins in the same one. */
function placesOf({ columns }: Pasted, shown: readonly Column[]): readonly Column[] {
  if (columns?.length && columns[0] === shown[0]) return columns
  return shown.filter(c => c !== 'actions' && !(columns && c === 'batch'))
}

/** A figure that is pasted comes from a program: marks that group its thousands are none of its decimals. Any other text stays as it is. */
function ungrouped(text: string, decimal: '.' | ','): string {
  const value = /[.,]\d{3}(?!\d)/.test(text) ? typedNumber(text, decimal) : undefined
  return value === undefined ? text : String(value).replace('.', decimal)
}

function understood(text: string, column: Column, decimal: '.' | ','): boolean {
  if (column === 'wholeDough') return text === '' || plainPercent(text, decimal) !== undefined
  if (!isAmount(column)) return true
  const amount = readAmount(amountAsKept(text, column, decimal))
  return !amount || !('problem' in amount)
}

/**
 * A line has one amount. Where a pasted row brings it in several columns, this is the one that counts: what
 * was typed where it was copied goes before what only followed, and then what the line has typed.
 */
function amountBrought(
  cells: readonly PastedCell[],
  places: readonly Column[],
  row: { readonly isFinal: boolean },
  typedIn: AmountColumn | undefined,
): AmountColumn | undefined {
  const brought = places.flatMap((column, i) => {
    const cell = cells[i]
    return cell && isAmount(column) && (column !== 'wholeDough' || row.isFinal) ? [{ column, ...cell }] : []
  })
  const filled = brought.filter(b => b.text !== '')
  const typed = filled.filter(b => !b.computed)
  const open = [typed, filled, brought].find(some => some.length) ?? []
  return (open.find(b => b.column === typedIn) ?? open[0])?.column
}

/** Puts one text into every cell of a block. */
export function fillBlock(formula: string, extent: Extent, pasted: Pasted, count: PasteCount): Edit {
  const [text, columns] = [pasted.rows[0]?.[0]?.text ?? '', extent.columns]
  const edits: Edit[] = []
  for (const row of extent.rows) {
    if (row.kind !== 'line') continue
    const amount = columns.find(c => isAmount(c) && (c !== 'wholeDough' || row.isFinal)) // a line has one
    for (const column of columns) {
      if (column === 'batch' || column === 'actions' || (isAmount(column) && column !== amount)) continue
      const brought = isAmount(column) ? ungrouped(text, pasted.decimal) : text
      count[understood(brought, column, pasted.decimal) ? 'pasted' : 'notUnderstood'] += 1
      edits.push(enterIn(formula, row.stage, row.line.id, column, brought, pasted.decimal))
    }
  }
  return workbook => inTurn(workbook, editLabels.paste, edits, sentence => count.refusals.push(sentence))
}
