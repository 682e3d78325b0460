import { amountAsKept, plainPercent, readAmount } from '../../src/dough/amounts.js'
import {
  addLine,
  enterAmount,
  enterIngredient,
  enterNote,
  newLine,
  Refusal,
  removeLines,
  renameStage,
  together,
} from '../../src/dough/edits.js'
import { applyChanges, type Transaction, type Workbook } from '../../src/dough/workbook.js'
import type { Edit } from '../events.js'
import { readNumber } from '../typed-numbers.js'
import type { Extent } from './moving.js'
import {
  type AddRow,
  type AmountColumn,
  type Column,
  isAmount,
  type LineRow,
  type Row,
  stageOf,
  type Table,
} from './table.js'

/** A text for a cell as it was typed elsewhere; computed: only what followed there from another cell. */
export interface PastedCell {
  readonly text: string
  readonly computed: boolean
}
export interface Pasted {
  readonly rows: readonly (readonly PastedCell[])[]
  readonly decimal: '.' | ','
  readonly columns?: readonly Column[] // they were copied from, where that is known
}

/** Edits made one upon the other, as one transaction; what a cell refuses is told and left as it was. */
function inTurn(
  workbook: Workbook,
  label: string,
  edits: readonly Edit[],
  refused?: (sentence: string) => void,
): Transaction | undefined {
  const parts: Transaction[] = []
  let now = workbook
  for (const edit of edits) {
    try {
      const part = edit(now)
      if (!part) continue
      now = applyChanges(now, part.changes).workbook
      parts.push(part)
    } catch (error) {
      if (!(error instanceof Refusal && refused)) throw error
      refused(error.message)
    }
  }
  if (parts.length === 0) return undefined
  return together(parts.length === 1 ? parts[0]!.label : label, parts)
}

/** A number without the signs that group its thousands: `1,000` is `1000`. Any other text stays as it is. */
function ungrouped(text: string, decimal: '.' | ','): string {
  const value = readNumber(text, { language: '', decimal })
  return value === undefined || Number(text.replace(decimal, '.')) === value
    ? text
    : String(value).replace('.', decimal)
}

/** Types `text` into a column of a line. */
function enterIn(
  formula: string,
  stage: string,
  line: string,
  column: Column,
  text: string,
  decimal: '.' | ',',
): Edit {
  const at = { formula, stage, line }
  return workbook => {
    if (column === 'ingredient') return enterIngredient(workbook, at, text)
    if (column === 'note') return enterNote(workbook, at, text)
    if (isAmount(column)) return enterAmount(workbook, at, column, ungrouped(text, decimal), decimal)
    return undefined
  }
}

/** Types `text` into a cell; in the row for another ingredient it begins the line `begun`. */
export function enterInCell(
  formula: string,
  row: Row,
  column: Column,
  text: string,
  decimal: '.' | ',',
  begun: string,
): Edit {
  return workbook => {
    if (row.kind === 'stage') return renameStage(workbook, { formula, stage: row.stage.id }, text)
    if (row.kind === 'line') return enterIn(formula, row.stage, row.line.id, column, text, decimal)(workbook)
    const at = { formula, stage: row.stage }
    const line = { ...newLine(), id: begun }
    const parts = [() => addLine(at, line), enterIn(formula, row.stage, begun, column, text, decimal)]
    const made = inTurn(workbook, '', parts)
    return made && { ...made, label: column === 'ingredient' ? `Add ${text.trim()}` : 'Add a line' }
  }
}

/** Whether every cell of the rows is in the block, so that the rows themselves are meant. */
export const coversRows = (extent: Extent, columns: readonly Column[]): boolean =>
  columns.every(c => c === 'actions' || extent.columns.includes(c))

/** Clears what was typed in a block, or removes the lines it covers whole; undefined when there is nothing typed. */
export function clearBlock(formula: string, extent: Extent, columns: readonly Column[], label: string): Edit {
  const lines = extent.rows.filter(row => row.kind === 'line')
  const ats = lines.map(row => ({ formula, stage: row.stage, line: row.line.id }))
  if (coversRows(extent, columns)) return workbook => (ats.length ? removeLines(workbook, ats) : undefined)
  const edits = lines.flatMap(row =>
    extent.columns.flatMap(column =>
      holds(row, column) ? [enterIn(formula, row.stage, row.line.id, column, '', '.')] : [],
    ),
  )
  return workbook => inTurn(workbook, label, edits)
}

/** Whether a cell holds something typed. */
function holds(row: LineRow, column: Column): boolean {
  if (column === 'ingredient') return row.line.ingredient !== ''
  if (column === 'note') return row.line.note !== ''
  return row.figures.typedIn === column
}

/** What became of a paste. */
export interface PasteCount {
  pasted: number
  notUnderstood: number
  leftOut: number
  readonly refusals: string[]
}

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
    const meant = meantOf(cells, places, start.row, existing?.figures.typedIn)
    for (const [j, { text }] of cells.entries()) {
      const column = places[j]
      if (!column) {
        if (text !== '') count.leftOut += 1
        continue
      }
      if (column === 'batch' || (text === '' && !existing)) continue
      if (isAmount(column) && column !== meant) {
        if (text !== '' && (column !== 'wholeDough' || start.row.isFinal)) count.pasted += 1
        continue
      }
      count.pasted += 1
      if (!understood(text, column, pasted.decimal)) count.notUnderstood += 1
      edits.push(enterIn(formula, stage, line.id, column, text, pasted.decimal))
    }
  }
  count.pasted -= count.notUnderstood
  return workbook => inTurn(workbook, 'Paste', edits, sentence => count.refusals.push(sentence))
}

/** The columns a pasted block goes to: those it was copied from, when it begins in the same one. */
function placesOf({ columns }: Pasted, shown: readonly Column[]): readonly Column[] {
  if (columns?.length && columns[0] === shown[0]) return columns
  return shown.filter(c => c !== 'actions' && !(columns && c === 'batch'))
}

function understood(text: string, column: Column, decimal: '.' | ','): boolean {
  if (column === 'wholeDough') return text === '' || plainPercent(text, decimal) !== undefined
  if (!isAmount(column)) return true
  const amount = readAmount(amountAsKept(ungrouped(text, decimal), column, decimal))
  return !amount || !('problem' in amount)
}

/**
 * A line has one amount. Where a pasted row brings it in several columns, this is the one that is meant: what
 * was typed where it was copied goes before what only followed, and then what the line has typed.
 */
function meantOf(
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
      count[understood(text, column, pasted.decimal) ? 'pasted' : 'notUnderstood'] += 1
      edits.push(enterIn(formula, row.stage, row.line.id, column, text, pasted.decimal))
    }
  }
  return workbook => inTurn(workbook, 'Paste', edits, sentence => count.refusals.push(sentence))
}
