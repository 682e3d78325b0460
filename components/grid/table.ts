import type { FormulaSheet, LineFigures, StageFigures } from '../../src/dough/figures.js'
import type { Line, Stage } from '../../src/dough/formula.js'
import { type NumberStyle, showGrams, showPercent } from '../numbers.js'

/** The grid's columns, from the left. The actions column holds each row's button. */
export const allColumns = ['ingredient', 'percent', 'weight', 'wholeDough', 'note', 'actions'] as const
export type Column = (typeof allColumns)[number]
/** What a narrow screen shows; the note then stands beneath the ingredient. */
const narrowColumns: readonly Column[] = ['ingredient', 'percent', 'weight', 'actions']

export function columnsFor(narrow: boolean, readOnly: boolean): readonly Column[] {
  const columns: readonly Column[] = narrow ? narrowColumns : allColumns
  return readOnly ? columns.filter(c => c !== 'actions') : columns
}

/** What the app gives the grid. */
export interface Given {
  readonly sheet: FormulaSheet
  readonly numbers: NumberStyle
  readonly readOnly: boolean
  readonly names: readonly string[]
}

/** One cell: a row by its key, never by its position, and a column. */
export interface Spot {
  readonly row: string
  readonly column: Column
}

/** A figure as a cell shows it. */
export interface Shown {
  readonly text: string // '–' where there is none
  readonly is: 'typed' | 'computed' | 'missing' | 'raw' // raw: typed, and not understood
  readonly typed: string // the expression behind the figure, '' where the figure is all there is
}

export interface StageRow {
  readonly kind: 'stage'
  readonly key: string
  readonly stage: Stage
  readonly figures: StageFigures
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
  readonly wholeDough: string
  readonly flourless: boolean // its stage has no flour, so that a line is the base
  readonly problem: string | undefined // a sentence, where it arose here
  readonly waitsFor: Cause | undefined // where it arose elsewhere
}
export interface AddRow {
  readonly kind: 'add'
  readonly key: string
  readonly stage: string // id
  readonly stageName: string
}
export interface SumRow {
  readonly kind: 'sum'
  readonly key: string
  readonly stage: string // id
  readonly stageName: string
  readonly figures: StageFigures
  readonly percent: string
  readonly weight: string
}
export type Row = StageRow | LineRow | AddRow | SumRow

export const stageKey = (stage: string): string => `stage ${stage}`
export const addKey = (stage: string): string => `add ${stage}`
export const sumKey = (stage: string): string => `sum ${stage}`
export const stageOf = (row: Row): string => (row.kind === 'stage' ? row.stage.id : row.stage)

/** The rows of a formula in their order, and where each is. */
export interface Table {
  readonly rows: readonly Row[]
  readonly groups: readonly { readonly stage: Stage; readonly rows: readonly Row[] }[]
  readonly index: ReadonlyMap<string, number>
}

export const emptyTable: Table = { rows: [], groups: [], index: new Map() }

export const rowAt = (table: Table, key: string): Row | undefined => {
  const index = table.index.get(key)
  return index === undefined ? undefined : table.rows[index]
}

/**
 * The rows of the sheet as it stands. A row that would look the same as in `before` is the same object, so
 * that a template can tell by identity that there is nothing to paint.
 */
export function tableOf(sheet: FormulaSheet, style: NumberStyle, readOnly: boolean, before: Table): Table {
  const causes = causesIn(sheet)
  const groups = sheet.formula.stages.map(stage => {
    const figures = sheet.stage(stage.id)
    const lines = stage.lines.map(line => ({ line, figures: sheet.line(line.id) }))
    const flourless = !lines.some(l => l.figures.is === 'flour')
    const of = { stage: stage.id, flourless, style, causes }
    const rows: Row[] = [
      stageRow(stage, figures, of, rowAt(before, stageKey(stage.id))),
      ...lines.map(l => lineRow(l.line, l.figures, of, rowAt(before, l.line.id))),
      ...(readOnly ? [] : [addRow(stage, rowAt(before, addKey(stage.id)))]),
      sumRow(stage, figures, style, rowAt(before, sumKey(stage.id))),
    ]
    return { stage, rows }
  })
  const rows = groups.flatMap(g => g.rows)
  return { rows, groups, index: new Map(rows.map((row, i) => [row.key, i])) }
}

/** What the rows of a stage have in common. */
interface Of {
  readonly stage: string // id
  readonly flourless: boolean
  readonly style: NumberStyle
  readonly causes: ReadonlyMap<string, Cause>
}

/** Where problems arose, by the sentence that a line which only suffers from them carries: the place, then the problem. */
function causesIn(sheet: FormulaSheet): Map<string, Cause> {
  const causes = new Map<string, Cause>()
  for (const stage of sheet.formula.stages)
    for (const line of stage.lines) {
      const { problem } = sheet.line(line.id)
      if (!problem) continue
      const name = line.ingredient || 'a line'
      const place = `${name} in ${stage.name}`
      causes.set(`${place}: ${problem}`, { key: line.id, stage: stage.id, name, place })
    }
  return causes
}

/** Equal field by field; figures are flat. */
function same<T extends object>(a: T, b: T): boolean {
  const keys = Object.keys(a) as (keyof T)[]
  return keys.every(key => Object.is(a[key], b[key]))
}

function stageRow(stage: Stage, figures: StageFigures, of: Of, old: Row | undefined): StageRow {
  const cause = of.causes.get(figures.problem ?? '')
  const row: StageRow = {
    kind: 'stage',
    key: stageKey(stage.id),
    stage,
    figures,
    words: stageWords(figures, of.style, cause && causeName(cause, stage.id)),
    problem: cause ? undefined : figures.problem,
  }
  const isSame =
    old?.kind === 'stage' &&
    old.stage.name === stage.name &&
    old.stage.ferments === stage.ferments &&
    old.words === row.words &&
    old.problem === row.problem
  return isSame ? old : row
}

/** `ferments, 220 g as written, 210 g taken` */
function stageWords(figures: StageFigures, style: NumberStyle, waitsFor: string | undefined): string {
  const grams = (weight: number) => `${showGrams(weight, style)} g`
  const words: string[] = []
  if (!figures.isFinal) words.push(figures.ferments ? 'ferments' : 'does not ferment')
  if (figures.weight !== undefined) words.push(`${grams(figures.weight)} as written`)
  if (waitsFor) words.push(`waits for ${waitsFor}`)
  if (figures.taken !== undefined)
    words.push(figures.taken === 0 ? 'not taken yet' : `${grams(figures.taken)} taken`)
  return words.join(', ')
}

function lineRow(line: Line, figures: LineFigures, of: Of, old: Row | undefined): LineRow {
  const waitsFor = of.causes.get(figures.problem ?? '')
  if (
    old?.kind === 'line' &&
    old.line === line &&
    old.stage === of.stage &&
    old.flourless === of.flourless &&
    old.waitsFor?.key === waitsFor?.key &&
    same(old.figures, figures)
  )
    return old
  const { percent, weight, wholeDough } = figures
  const none = line.amount === '' && !weight // weighs nothing, but only because nothing has been said
  const percentText = none || percent === undefined ? undefined : showPercent(percent, of.style)
  const weightText = none || weight === undefined ? undefined : showGrams(weight, of.style)
  return {
    kind: 'line',
    key: line.id,
    stage: of.stage,
    line,
    figures,
    percent: shown(percentText, 'percent', figures, of.style),
    weight: shown(weightText, 'weight', figures, of.style),
    wholeDough: none || wholeDough === undefined ? '' : showPercent(wholeDough, of.style),
    flourless: of.flourless,
    problem: waitsFor ? undefined : figures.problem,
    waitsFor,
  }
}

/** What a baker typed, with the decimal mark of their language; where that is the comma, `;` parts arguments. */
export const asTheyWrite = (typed: string, style: NumberStyle): string =>
  style.decimal === ',' ? typed.replace(/,/g, ';').replace(/\.(?=\d)/g, ',') : typed

function shown(
  figure: string | undefined,
  column: 'percent' | 'weight',
  figures: LineFigures,
  style: NumberStyle,
): Shown {
  const text = figure ?? '–'
  if (figures.typedIn !== column) return { text, is: figure ? 'computed' : 'missing', typed: '' }
  const typed = asTheyWrite(figures.typed, style)
  if (figures.plain) return { text: typed, is: 'typed', typed: '' }
  return figure ? { text, is: 'computed', typed } : { text: typed, is: 'raw', typed: '' }
}

function addRow(stage: Stage, old: Row | undefined): AddRow {
  if (old?.kind === 'add' && old.stageName === stage.name) return old
  return { kind: 'add', key: addKey(stage.id), stage: stage.id, stageName: stage.name }
}

function sumRow(stage: Stage, figures: StageFigures, style: NumberStyle, old: Row | undefined): SumRow {
  if (old?.kind === 'sum' && old.stageName === stage.name && same(old.figures, figures)) return old
  return {
    kind: 'sum',
    key: sumKey(stage.id),
    stage: stage.id,
    stageName: stage.name,
    figures,
    percent: figures.percent === undefined ? '–' : showPercent(figures.percent, style),
    weight: figures.weight === undefined ? '–' : showGrams(figures.weight, style),
  }
}
