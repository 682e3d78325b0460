import type { Formula, Line, Stage, Step } from '../../../src/dough/document/formula.js'
import type { FigureSheet, LineFigures, StageFigures } from '../../../src/dough/sheet/figures.js'
import type { NumberStyle } from '../../base/numbers.js'
import type { WeighedShown } from '../../batch/weighed-shown.js'

/** The grid's columns, from the left. The actions column holds each row's button. */
export const allColumns = [
  'ingredient',
  'percent',
  'weight',
  'wholeDough',
  'batch',
  'note',
  'actions',
] as const
export type Column = (typeof allColumns)[number]

/** How wide the grid is: cramped and narrow put the note beneath the ingredient. */
export type Width = 'wide' | 'cramped' | 'narrow'

/** The columns that are shown. On a narrow screen the batch's weights stand over those as written. */
export function columnsFor(width: Width, readOnly: boolean, batch: boolean): readonly Column[] {
  const left: Readonly<Record<Width, readonly Column[]>> = {
    wide: batch ? [] : ['batch'],
    cramped: batch ? ['note'] : ['note', 'batch'],
    narrow: ['note', 'wholeDough', batch ? 'weight' : 'batch'],
  }
  return allColumns.filter(c => !left[width].includes(c) && !(readOnly && c === 'actions'))
}

/** The column in whose cell another is edited that is not shown. */
export function homeOf(column: Column, columns: readonly Column[]): Column {
  if (columns.includes(column)) return column
  if (column === 'weight' && columns.includes('batch')) return 'batch'
  if (column === 'batch') return 'weight'
  return column === 'wholeDough' ? 'percent' : 'ingredient'
}

/** The columns an amount is typed in. */
export type AmountColumn = 'percent' | 'weight' | 'wholeDough'
export const isAmount = (column: Column): column is AmountColumn =>
  column === 'percent' || column === 'weight' || column === 'wholeDough'
export const isNumber = (column: Column): column is AmountColumn | 'batch' =>
  isAmount(column) || column === 'batch'

/** What the app gives the grid. */
export interface Given {
  readonly sheet: FigureSheet
  readonly numbers: NumberStyle
  readonly readOnly: boolean
  readonly names: readonly string[]
  readonly formulas?: readonly Formula[] | undefined // of the workbook
}

/** One cell: a row by its key, never by its position, and a column. */
export interface Spot {
  readonly row: string
  readonly column: Column
}

/** A figure as a cell shows it. */
export interface Shown {
  readonly text: string // '–' where there is none
  readonly is: 'typed' | 'computed' | 'missing' | 'raw' | 'stale' // raw: typed, and not understood; stale: the last good one
  readonly typed: string // the expression behind the figure, '' where the figure is all there is
}

export interface StageRow {
  readonly kind: 'stage'
  readonly key: string
  readonly stage: Stage
  readonly figures: StageFigures
  readonly built: readonly string[] // what is made of it in the batch, in words; none where nothing is
  readonly words: string
  readonly problem: string | undefined // a sentence, where it arose here
}
/** A line that cannot be worked out until another one is. */
export interface Cause {
  readonly key: string // the row where the problem is told
  readonly stage: string // id
  readonly name: string
  readonly place: string // with its stage
}
export const causeName = (cause: Cause, stage: string): string =>
  cause.stage === stage ? cause.name : cause.place
export interface LineRow {
  readonly kind: 'line'
  readonly key: string // the line's id
  readonly stage: string // id
  readonly line: Line
  readonly figures: LineFigures
  readonly percent: Shown
  readonly weight: Shown
  readonly wholeDough: Shown
  readonly batch: WeighedShown | undefined // while there is a batch
  readonly gives: string // `true hydration held at 75 %`; '' when it does not
  readonly isOpen: boolean // something may be done at once about it: unknown, without an amount, in another unit, guessed
  readonly isFinal: boolean // a line of the final dough
  readonly flourless: boolean // its stage has no flour, so that a line is the base
  readonly problem: string | undefined // a sentence, where it arose here
  readonly waitsFor: Cause | undefined // where it arose elsewhere
}
export interface AddRow {
  readonly kind: 'add'
  readonly key: string
  readonly stage: string // id
  readonly stageName: string
  readonly isFinal: boolean
}
export interface SumRow {
  readonly kind: 'sum'
  readonly key: string
  readonly stage: string // id
  readonly stageName: string
  readonly figures: StageFigures
  readonly percent: string
  readonly weight: string
  readonly batch: WeighedShown | undefined
  readonly method: readonly Step[] | undefined // of the stage, beneath its sum
}
export type Row = StageRow | LineRow | AddRow | SumRow

export const stageKey = (stage: string): string => `stage ${stage}`
export const addKey = (stage: string): string => `add ${stage}`
export const sumKey = (stage: string): string => `sum ${stage}`
export const stageOf = (row: Row): string => (row.kind === 'stage' ? row.stage.id : row.stage)

/** Rows that are laid out and painted together: those of a stage, or of a part of a long one. */
export interface RowGroup {
  readonly key: string // of its first row
  readonly rows: readonly Row[]
}

/** The rows of a formula in their order, and where each is. */
export interface Table {
  readonly rows: readonly Row[]
  readonly groups: readonly RowGroup[]
  readonly index: ReadonlyMap<string, number>
  readonly batch: boolean // more or other is made than is written
  readonly heavy: boolean // a stage weighs 10 kg or more, so that grams have five digits
}

export const emptyTable: Table = { rows: [], groups: [], index: new Map(), batch: false, heavy: false }

export const rowAt = (table: Table, key: string): Row | undefined => {
  const index = table.index.get(key)
  return index === undefined ? undefined : table.rows[index]
}

export function groupOf(table: Table, key: string): RowGroup | undefined {
  let left = table.index.get(key) ?? Number.POSITIVE_INFINITY
  for (const group of table.groups) {
    if (left < group.rows.length) return group
    left -= group.rows.length
  }
  return undefined
}

/** The column of the cell that is really there: a stage's row has its name and its actions. */
export function cellColumn(row: Row | undefined, column: Column, columns: readonly Column[]): Column {
  if (row?.kind === 'stage') return column === 'actions' ? 'actions' : 'ingredient'
  return homeOf(column, columns)
}

/** Whether a cell can be typed in. */
export function takesTyping(row: Row, column: Column): boolean {
  if (row.kind === 'stage') return column !== 'actions'
  if (row.kind === 'sum') return false
  if (column === 'wholeDough') return row.isFinal // elsewhere it follows from all the stages
  return column === 'ingredient' || column === 'note' || isAmount(column)
}
