import type { Formula, Problem } from '../../dough/document/formula.js'
import { largest } from '../../dough/document/largest.js'
import type { Worded } from '../../engine/index.js'
import type { DecimalMark } from '../values/decimals.js'
import type { Reason } from './words.js'

/**
 * What a column of a table can be read as. A number alone takes the column's unit; in `amount`, that of the
 * `unit` column, or else grams.
 */
export const columnUses = [
  'ingredient', // of several, each begins a table of its own beside the one before
  'amount',
  'unit',
  'percent',
  'grams',
  'kilograms',
  'ounces',
  'pounds',
  'of a stage', // amounts of the stage that its heading names
  'stage',
  'formula',
  'note',
  'leave out',
] as const
export type ColumnUse = (typeof columnUses)[number]

/**
 * How a table tells its stages: in a column of their own, by blank lines between them, by rows that name
 * them and hold no amount, by columns of amounts for each, or not at all.
 */
export const stageMarks = ['column', 'headings', 'blocks', 'columns', 'none'] as const
export type StageMarks = (typeof stageMarks)[number]

/** How a table is to be read; guessed, then the baker's to correct. */
export interface Mapping {
  readonly columns: readonly ColumnUse[] // by position; those past the end are left out
  readonly headingRows: number // rows at the top that are not lines: titles, blank ones, and last the headings
  readonly decimal: DecimalMark
  readonly stages: StageMarks
  readonly formulaName: string // of lines for which the table names none; '' when it names none at all
}

/** A guess with its reason; `tableReason` makes a sentence for the baker of it. */
export interface Guess {
  readonly about: 'delimiter' | 'decimal' | 'headings' | 'column' | 'batch' | 'stages' | 'formula'
  readonly column?: number // 0-based, when about a column
  readonly ask: boolean // the table does not settle it: the baker should look
  readonly reason: Reason
}

/** One row of a table as it stands: 1-based, blank ones counted, a cell of several lines is one row. */
export interface ForeignRow {
  readonly row: number
  readonly cells: readonly string[]
  readonly broken?: Reason // why it could not be taken apart
}

/** A table from anywhere, taken apart and guessed at. */
export interface ForeignTable {
  readonly text: string
  readonly rows: readonly ForeignRow[]
  readonly delimiter: string // ',' ';' tab '|'; two blanks stand for gaps of two and more; '' where nothing separates columns
  readonly width: number // cells of its widest row
  readonly headings: readonly string[] // cells of the heading row, each with the stage above it; none where it has none
  readonly mapping: Mapping // as guessed
  readonly guesses: readonly Guess[]
  readonly batches: readonly number[] // columns that hold the same for batches of several sizes, the first read as the mapping says
  readonly own: boolean // a formula file as Tarebook writes it: read as such while the mapping stays as guessed
  readonly refused?: string // why it is not read at all, in a sentence
  readonly stopped: boolean
}

/** What became of one row of the table. */
export interface RowRead {
  readonly row: number
  readonly became:
    | 'line'
    | 'setting' // only in a file that Tarebook wrote
    | 'stage'
    | 'formula'
    | 'total'
    | 'note'
    | 'blank'
    | 'headings'
    | 'not understood'
  readonly formula?: string | undefined // names; those of a line, and of what is named
  readonly stage?: string | undefined
  readonly ingredient?: string | undefined
  readonly amount?: string | undefined // as the line keeps it: decimal point, with its unit
  readonly text?: string | undefined // of a note, a total, or what was not understood
  readonly why?: readonly Worded[] // it was not understood, or was taken as it was
}

/** A total that the table prints, beside what its lines add to. */
export interface TotalCheck {
  readonly row: number
  readonly verdict: 'agrees' | 'rounding' | 'differs' | 'not compared'
  readonly sentence: string
}

export interface TableRead {
  readonly formulas: Formula[]
  readonly rows: readonly RowRead[] // one for every row of the table, in its order; fewer when it was stopped
  readonly problems: Problem[]
  readonly totals: readonly TotalCheck[]
  readonly stopped: boolean
}

/** For reading off the main thread: told of progress every few thousand rows, and asked whether to go on. */
export interface Watch {
  progress?(done: number, of: number): void
  stopped?(): boolean
}

/** More than this is refused with a sentence; a row with a longer cell is not understood. */
export const usualLimits = {
  characters: largest.characters as number,
  rows: 100_000,
  columns: 250,
  cell: 2000,
} // characters of a cell
export type Limits = Readonly<typeof usualLimits>

const every = 2000

/** True when the work is to stop here. Says how far it is, every few thousand rows. */
export function isStopped(watch: Watch, done: number, of: number): boolean {
  if (done % every !== 0 && done !== of) return false
  watch.progress?.(done, of)
  return watch.stopped?.() === true
}
