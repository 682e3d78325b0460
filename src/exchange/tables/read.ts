import { nameKey } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { larderWith } from '../../dough/larder/usual-larder.js'
import { type Column, columnOf } from '../csv/columns.js'
import { readFormulas } from '../csv/read-formulas.js'
import { tooManyLines, withoutTooLarge } from '../data/too-long.js'
import { signsOf } from '../values/amount-cells.js'
import { labelOf, titleName } from '../values/labels.js'
import { Builder } from './build.js'
import { LineMaker, Told } from './draft.js'
import { finish } from './finish.js'
import { type Names, namesIn, type Row, RowSorter, textOf } from './row-features.js'
import { RowKinds } from './row-kinds.js'
import { isAmountUse, isBlankRow } from './table-cells.js'
import {
  type ColumnUse,
  type ForeignRow,
  type ForeignTable,
  isStopped,
  type Mapping,
  type RowRead,
  type TableRead,
  type TotalCheck,
  type Watch,
} from './types.js'
import { stacked, viewsOf } from './views.js'
import { type Reason, tableReason } from './words.js'

/** Nothing was read, for this reason. */
function nothing(reason: Reason, rows: readonly RowRead[] = [], stopped = false): TableRead {
  const told = new Told()
  told.say(reason)
  return { formulas: [], rows, problems: told.problems, totals: [], stopped }
}

/**
 * A table as the mapping says. `rows` tells of every row of the table what became of it, once and in order;
 * a row that is not understood is not in the formulas and has an error among the problems. Where it is
 * stopped, `rows` ends there and there are no formulas. Never throws.
 */
export function readTable(
  table: ForeignTable,
  mapping: Mapping,
  larder: Larder = larderWith([]),
  watch: Watch = {},
): TableRead {
  if (table.refused !== undefined) return nothing({ code: 'tableRefused', why: table.refused })
  if (table.stopped) return nothing({ code: 'stoppedBeforeTheEnd' }, [], true)
  if (table.own && JSON.stringify(mapping) === JSON.stringify(table.mapping)) return readOwn(table, larder)
  const { columns } = mapping
  const hasNames = columns.includes('ingredient')
  const hasAmounts = columns.some(use => isAmountUse(use) || use === 'of a stage')
  if (table.rows.length === 0) return nothing({ code: 'tableEmpty' })
  if (!hasNames || !hasAmounts) {
    const why: Reason =
      table.delimiter === '' && columns.length < 2
        ? { code: 'notATable' }
        : { code: 'columnsNotSaid', hasNames, hasNeither: !hasNames && !hasAmounts }
    return nothing(why, table.rows.map(unread))
  }
  const names = namesIn(larder)
  const top = table.rows.slice(0, mapping.headingRows).map(row => topRow(row, mapping))
  const below = table.rows.slice(top.length)
  const views = viewsOf(mapping, table.headings)
  const sorter = new RowSorter(mapping, table.headings, table.delimiter)
  const stopped = () => nothing({ code: 'stoppedBeforeTheEnd' }, top, true)
  const each: Row[][] = []
  const of = table.rows.length + below.length * views.length
  for (const [at, row] of below.entries()) {
    if (isStopped(watch, top.length + at, of)) return stopped()
    each.push(views.map(view => sorter.sort(row, view)))
  }
  const isByView = views.some(({ stage }) => stage !== undefined)
  const rows = stacked(each, views)
  const signs = signsOf(rows.flatMap(({ amounts }) => amounts.map(({ cell }) => cell)))
  const isMarkSure = signs[mapping.decimal] > 0 && signs[mapping.decimal === ',' ? '.' : ','] === 0
  const told = new Told()
  for (const { row, broken } of table.rows.slice(0, top.length)) if (broken) told.say({ ...broken, row })
  const lines = new LineMaker(names, told, isMarkSure)
  const marks = isByView ? 'column' : mapping.stages
  const label = [table.headings[columns.indexOf('ingredient')] ?? '', aloneOnTop(top)]
    .map(labelOf)
    .find(l => l.isStage)
  const over = label && marks !== 'column' && !columns.includes('formula') ? label : undefined
  const kinds = new RowKinds(rows, marks, names, over)
  const builder = new Builder({ ...mapping, stages: marks }, lines, told, over?.name)
  for (const [at, row] of rows.entries()) {
    if (isStopped(watch, table.rows.length + at, of)) return stopped()
    builder.add(row, kinds.of(at))
  }
  builder.finish()
  isStopped(watch, of, of)
  return together(builder, rows, top, names)
}

/** A row that is not understood. */
const lost = ({ row, cells }: Pick<ForeignRow, 'row' | 'cells'>, why: Reason): RowRead => ({
  ...{ row, became: 'not understood', text: textOf({ cells }) },
  why: [tableReason(why)],
})

function unread(foreign: ForeignRow): RowRead {
  const { row } = foreign
  if (isBlankRow(foreign)) return { row, became: 'blank' }
  return lost(foreign, { code: 'rowOfUnsaidColumns' })
}

/** What stands alone in the last row above the headings. */
const aloneOnTop = (top: readonly RowRead[]): string =>
  top.findLast(({ became }) => became !== 'blank' && became !== 'headings')?.text ?? ''

/** A row at the top: the title, blank, or headings. */
function topRow(foreign: ForeignRow, mapping: Mapping): RowRead {
  const { row, broken } = foreign
  const said = foreign.cells.filter(Boolean)
  const text = said.join(' | ')
  if (broken) return lost(foreign, broken)
  if (isBlankRow(foreign)) return { row, became: 'blank' }
  if (said.length > 1) return { row, became: 'headings', text }
  const name = titleName(said[0]!)
  if (name === mapping.formulaName) return { row, became: 'formula', formula: name }
  return { row, became: row === mapping.headingRows ? 'headings' : 'note', text }
}

function together(builder: Builder, rows: readonly Row[], top: readonly RowRead[], names: Names): TableRead {
  const { told } = builder
  const byRow = new Map<number, RowRead>()
  const formulas: TableRead['formulas'] = []
  const totals: TotalCheck[] = []
  for (const draft of builder.formulas) {
    if (draft.count === 0) {
      told.say({ code: 'formulaWithoutLines', name: draft.name })
      continue
    }
    if (draft.isTooLong) {
      told.problems.push({ ...tooManyLines(draft.name, draft.count), where: {}, severity: 'error' })
      continue
    }
    if (formulas.length === 0)
      draft.notes.unshift(...top.flatMap(({ became, text }) => (became === 'note' && text ? [text] : [])))
    const finished = finish(draft, names, told)
    formulas.push(finished.formula)
    totals.push(...finished.totals)
    for (const read of finished.reads) {
      const before = byRow.get(read.row)
      byRow.set(read.row, before ? also(before, read) : read)
    }
  }
  if (formulas.length === 0 && told.problems.length === 0) told.say({ code: 'noLine' })
  rows.forEach((row, at) => {
    const before = byRow.get(row.row)
    if (before && before.became !== 'blank') return
    const read = builder.reads[at] ?? lost(row, { code: 'lineOfTooMany' })
    if (!before || read.became !== 'blank') byRow.set(row.row, read)
  })
  return {
    formulas,
    rows: [...top, ...[...byRow.values()].sort((a, b) => a.row - b.row)],
    problems: told.problems.sort((a, b) => (a.where.row ?? 0) - (b.where.row ?? 0)),
    totals: totals.sort((a, b) => a.row - b.row),
    stopped: false,
  }
}

/** What became of a row in one stage, with what became of it in another. */
const also = ({ why = [], ...read }: RowRead, { amount = '', stage = '' }: RowRead): RowRead => ({
  ...read,
  why: [...why, tableReason({ code: 'alsoIn', amount, hasAmount: amount !== '', stage })],
})

/** Is it a file that Tarebook could have written, without totals and headings between its rows? */
export function isOwn(
  headings: readonly string[],
  uses: readonly ColumnUse[],
  sorted: readonly Row[],
  names: Names,
): boolean {
  const columns = headings.map(columnOf)
  if (!uses.includes('ingredient') || !uses.includes('amount')) return false
  if (columns.some((column, at) => column === undefined && headings[at] !== '')) return false
  if (columns.some(column => column === 'setting' || column === 'counts as')) return true
  const isWritten = ({ is, label, name, amounts }: Row) =>
    (is === 'line' && amounts.every(({ cell, read }) => read.is !== 'quantity' || cell === read.text)) ||
    (is === 'name' && !label.isStage && names.isIngredient(name))
  const taken = new Set(sorted.map(({ name }) => nameKey(name)))
  const stages = sorted.flatMap(({ stage }) => (stage === '' ? [] : nameKey(stage)))
  return sorted.every(isWritten) && stages.every(stage => stage === stages.at(-1) || taken.has(stage))
}

/** A formula file of Tarebook's own goes to the reader of those, as it is. */
function readOwn(table: ForeignTable, larder: Larder): TableRead {
  const read = readFormulas(table.text, larder)
  const { formulas, problems } = withoutTooLarge(read)
  const isMade = (name: string) =>
    formulas.length === read.formulas.length || formulas.some(formula => formula.name === name)
  const wrong = new Map(problems.flatMap(p => (p.severity === 'error' ? [[p.where.row, p]] : [])))
  const columns = table.headings.map(columnOf)
  const rows = table.rows.map((foreign): RowRead => {
    const { row, cells } = foreign
    const cell = (column: Column) => cells[columns.indexOf(column)] ?? ''
    const text = textOf(foreign)
    if (isBlankRow(foreign)) return { row, became: 'blank' }
    if (row <= table.mapping.headingRows) return { row, became: 'headings', text }
    const why = wrong.get(row)
    if (why) return { row, became: 'not understood', text, why: [why] }
    if (cell('setting') !== '') return { row, became: 'setting', text }
    const [stage, ingredient] = [cell('stage'), cell('ingredient')]
    if (ingredient === '') return { row, became: 'stage', stage }
    if (!isMade(cell('formula'))) return lost(foreign, { code: 'lineOfTooMany' })
    return { row, became: 'line', formula: cell('formula'), stage, ingredient, amount: cell('amount') }
  })
  return { formulas: [...formulas], rows, problems: [...problems], totals: [], stopped: false }
}
