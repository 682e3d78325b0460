import {
  amountAsKept,
  type Dimensions,
  plainPercent,
  readAmount,
} from '../../../src/dough/amounts/amounts.js'
import '../../../src/dough/amounts/spoken-at-once.js'
import '../../../src/dough/cells/rare-cells-at-once.js'
import { dimensionsOf, planJottings } from '../../../src/dough/amounts/jottings.js'
import { typedNumber } from '../../../src/dough/amounts/typed.js'
import type { Formula, Line } from '../../../src/dough/document/formula.js'
import { newLine } from '../../../src/dough/edits/edits.js'
import type { CellTyped, LineTyped } from '../../../src/dough/edits/fetched/many-cells.js'
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
import type { PasteCount } from './words.js'

/** What is to be typed, line after line: worked out bit by bit, with the number of rows done so far between the bits. */
export type PastePlan = Generator<number, readonly LineTyped[]>

const rowsAtATime = 20

/**
 * Puts a block with its top left at a cell: over the lines of that stage, and past its last line into new ones.
 * Counts into `count`.
 */
export function* planBlock(
  formula: Formula,
  table: Table,
  columns: readonly Column[],
  start: { readonly row: LineRow | AddRow; readonly column: Column },
  pasted: Pasted,
  count: PasteCount,
): PastePlan {
  const stage = stageOf(start.row)
  const lines = linesFrom(table, start.row)
  const places = placesOf(pasted, columns.slice(columns.indexOf(start.column)))
  const reader = new TextReader(formula, pasted.decimal, count)
  const typed: LineTyped[] = []
  for (const [i, cells] of pasted.rows.entries()) {
    if (i % rowsAtATime === 0) yield i
    if (cells.every(c => c.text === '')) continue
    const existing = lines[i]
    const amount = amountBrought(cells, places, start.row, existing?.figures.typedIn)
    const entered: CellTyped[] = []
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
      entered.push(...reader.read(text, column))
    }
    typed.push(
      existing ? { stage, line: existing.line.id, cells: entered } : begin(stage, newLine(), entered),
    )
  }
  return typed
}

const begin = (stage: string, begun: Line, cells: readonly CellTyped[]): LineTyped => ({
  stage,
  line: begun.id,
  begun,
  cells,
})

/** The lines of a row's stage, from that row on. */
function linesFrom(table: Table, row: LineRow | AddRow): readonly LineRow[] {
  const stage = stageOf(row)
  const lines = table.rows.filter((r): r is LineRow => r.kind === 'line' && r.stage === stage)
  return row.kind === 'line' ? lines.slice(lines.indexOf(row)) : []
}

/** How many lines a formula has when a block is pasted at a row. */
export const linesAfter = (formula: Formula, table: Table, row: LineRow | AddRow, { rows }: Pasted): number =>
  formula.stages.reduce((sum, { lines }) => sum + lines.length, 0) +
  Math.max(0, rows.length - linesFrom(table, row).length)

/** Reads texts for cells, and counts what is understood. */
class TextReader {
  readonly #jottings: Dimensions

  constructor(
    formula: Formula,
    readonly decimal: '.' | ',',
    readonly count: PasteCount,
  ) {
    this.#jottings = dimensionsOf(planJottings(formula.jottings ?? []))
  }

  /** What is to be typed into a cell; nothing where nothing can be. */
  read(text: string, column: Column): CellTyped[] {
    if (column === 'batch' || column === 'actions') return []
    if (!isAmount(column)) {
      this.count.pasted += 1
      return [{ column, text }]
    }
    const { decimal } = this
    const brought = ungrouped(text, decimal)
    const kept = column === 'wholeDough' ? '' : amountAsKept(brought, column, decimal, this.#jottings)
    const understood =
      column === 'wholeDough'
        ? brought === '' || plainPercent(brought, decimal) !== undefined
        : isAmountRead(kept)
    this.count[understood ? 'pasted' : 'notUnderstood'] += 1
    return [{ column, text: brought, kept }]
  }
}

function isAmountRead(kept: string): boolean {
  const amount = readAmount(kept)
  return !amount || !('problem' in amount)
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
export function* planFill(formula: Formula, extent: Extent, pasted: Pasted, count: PasteCount): PastePlan {
  const [text, columns] = [pasted.rows[0]?.[0]?.text ?? '', extent.columns]
  const reader = new TextReader(formula, pasted.decimal, count)
  const typed: LineTyped[] = []
  for (const [i, row] of extent.rows.entries()) {
    if (i % rowsAtATime === 0) yield i
    if (row.kind !== 'line') continue
    const amount = columns.find(c => isAmount(c) && (c !== 'wholeDough' || row.isFinal)) // a line has one
    const cells = columns.filter(c => !isAmount(c) || c === amount).flatMap(c => reader.read(text, c))
    typed.push({ stage: row.stage, line: row.line.id, cells })
  }
  return typed
}
