import type { Problem } from '../../dough/document/formula.js'
import { type Larder, larderOf } from '../../dough/document/larder.js'
import { usualLarder } from '../../dough/larder/usual-larder.js'
import { readFormulas } from '../csv/read-formulas.js'
import { isAmountUse } from './cell-quantity.js'
import { signsOf } from './decimal-signs.js'
import { finish } from './finish.js'
import { LineMaker } from './lines.js'
import { RowReader } from './read-rows.js'
import { type Sorted, Sorter, textOf } from './sort.js'
import { isBlankRow } from './split.js'
import { also, laidOut, onePerRow } from './stage-columns.js'
import { remembering, Told } from './table-draft.js'
import {
  type ForeignTable,
  isStopped,
  type Mapping,
  type RowRead,
  type TableRead,
  type TotalCheck,
  type Watch,
} from './types.js'
import { titleName } from './words.js'

const refused = (message: string, rows: readonly RowRead[] = []): TableRead => ({
  formulas: [],
  rows,
  problems: [{ where: {}, severity: 'error', code: 'tableRefused', message }],
  totals: [],
  stopped: false,
})

const sameMapping = (a: Mapping, b: Mapping): boolean => JSON.stringify(a) === JSON.stringify(b)

/**
 * A table as the mapping says. `rows` tells of every row of the table what became of it, once and in order;
 * a row that is not understood is not in the formulas and has an error among the problems. Where it is
 * stopped, `rows` ends there and there are no formulas. Never throws.
 */
export function readTable(
  table: ForeignTable,
  mapping: Mapping,
  larder: Larder = larderOf(usualLarder),
  watch: Watch = {},
): TableRead {
  if (table.refused !== undefined) return refused(table.refused)
  if (table.stopped) return { ...refused('Reading was stopped.'), stopped: true }
  if (table.own && sameMapping(mapping, table.mapping)) return readOwn(table, larder)
  const told = new Told()
  const known = remembering(larder)
  const uses = mapping.columns
  const missing = [
    ...(uses.includes('ingredient') ? [] : ['the ingredients']),
    ...(uses.some(use => isAmountUse(use) || use === 'of a stage') ? [] : ['their amounts']),
  ]
  if (missing.length > 0 || table.rows.length === 0)
    return refused(
      table.rows.length === 0
        ? 'There is nothing to read: the table is empty.'
        : table.delimiter === '' && uses.length < 2
          ? 'Nothing separates names from amounts in this text, so it is no table. If it is a recipe in words, bring it in as that.'
          : `Nothing can be read before it is said which column holds ${missing.join(' and which ')}.`,
      table.rows.map(row =>
        isBlankRow(row)
          ? { row: row.row, became: 'blank' }
          : {
              row: row.row,
              became: 'not understood',
              text: row.cells.join(' | '),
              why: 'It is not said which columns hold the ingredients and their amounts.',
            },
      ),
    )
  const { rows } = table
  const top = rows.slice(0, mapping.headingRows).map(row => topRow(row, mapping))
  const below = rows.slice(top.length)
  const laid = laidOut(below, table.headings, mapping) ?? { rows: below, mapping, headings: table.headings }
  const sorter = new Sorter(laid.mapping, laid.headings, table.delimiter)
  const sorted: Sorted[] = []
  const total = top.length + laid.rows.length
  const of = total * 2
  for (const row of laid.rows) {
    if (isStopped(watch, top.length + sorted.length, of)) return stoppedAt(top)
    sorted.push(sorter.sort(row))
  }
  const signs = signsOf(sorted.flatMap(({ amounts }) => amounts.map(({ cell }) => cell)))
  const isSure = signs[mapping.decimal] > 0 && signs[mapping.decimal === ',' ? '.' : ','] === 0
  const lines = new LineMaker(laid.mapping, known, told, sorted, isSure)
  const reader = new RowReader(
    sorted,
    laid.mapping,
    known,
    lines,
    told,
    table.headings[uses.indexOf('ingredient')] ?? '',
  )
  for (let at = 0; at < sorted.length; at++) {
    if (isStopped(watch, total + at, of)) return stoppedAt(top)
    reader.row(at)
  }
  lines.finish()
  reader.finish()
  return together(reader, sorted, top, known, told, watch, of)
}

const stoppedAt = (rows: readonly RowRead[]): TableRead => ({
  formulas: [],
  rows,
  problems: [
    {
      where: {},
      severity: 'warning',
      code: 'tableStopped',
      message: 'Reading was stopped before the end; nothing was added.',
    },
  ],
  totals: [],
  stopped: true,
})

/** A row at the top: the title, blank, or headings. */
function topRow(row: ForeignTable['rows'][number], mapping: Mapping): RowRead {
  const said = row.cells.filter(cell => cell.trim() !== '')
  if (row.broken) return { row: row.row, became: 'not understood', text: said.join(' | '), why: row.broken }
  if (isBlankRow(row)) return { row: row.row, became: 'blank' }
  if (row.row === mapping.headingRows && said.length > 1)
    return { row: row.row, became: 'headings', text: said.join(' | ') }
  const name = titleName(said[0]!)
  if (said.length === 1 && name === mapping.formulaName)
    return { row: row.row, became: 'formula', formula: name }
  return {
    row: row.row,
    became: said.length > 1 || row.row === mapping.headingRows ? 'headings' : 'note',
    text: said.join(' | '),
  }
}

function together(
  reader: RowReader,
  sorted: readonly Sorted[],
  top: readonly RowRead[],
  larder: Larder,
  told: Told,
  watch: Watch,
  of: number,
): TableRead {
  const byRow = new Map<number, RowRead>()
  const formulas: TableRead['formulas'] = []
  const totals: TotalCheck[] = []
  const notes = top.flatMap(({ became, text }) => (became === 'note' && text ? [text] : []))
  for (const row of top) if (row.became === 'not understood') told.say('error', row.row, row.why ?? '')
  for (const foreign of reader.formulas) {
    if (foreign.lines.length === 0) {
      told.say(
        'warning',
        undefined,
        `Nothing was found of ${foreign.name} that is a line, so it was left out.`,
      )
      continue
    }
    if (formulas.length === 0) foreign.notes.unshift(...notes)
    const finished = finish(foreign, larder, told)
    formulas.push(finished.formula)
    totals.push(...finished.totals)
    for (const read of finished.reads) {
      const before = byRow.get(read.row)
      byRow.set(read.row, before ? also(before, read) : read)
    }
  }
  if (formulas.length === 0 && told.problems.length === 0)
    told.say('error', undefined, 'No line was found in this table: no row has an ingredient and an amount.')
  const rows = sorted.map(
    (row, at): RowRead =>
      reader.reads[at] ?? byRow.get(row.row) ?? { row: row.row, became: 'note', text: textOf(row) },
  )
  isStopped(watch, of, of)
  return {
    formulas,
    rows: [...top, ...onePerRow(rows)],
    problems: told.problems.sort((a, b) => rowOf(a) - rowOf(b)),
    totals: totals.sort((a, b) => a.row - b.row),
    stopped: false,
  }
}

const rowOf = ({ where }: Problem): number => where.row ?? 0

/** A formula file of Tarebook's own goes to the reader of those, as it is. */
function readOwn(table: ForeignTable, larder: Larder): TableRead {
  const { formulas, problems } = readFormulas(table.text, larder)
  const wrong = new Map(
    problems.flatMap(p => (p.severity === 'error' && p.where.row ? [[p.where.row, p.message]] : [])),
  )
  const uses = table.mapping.columns
  const setting = table.headings.findIndex(heading => heading.trim().toLowerCase() === 'setting')
  let [formula, stage] = ['', '']
  const rows = table.rows.map((foreign): RowRead => {
    const { row, cells } = foreign
    const cell = (use: Mapping['columns'][number]) => cells[uses.indexOf(use)] ?? ''
    const text = cells.filter(said => said.trim() !== '').join(' | ')
    if (isBlankRow(foreign)) return { row, became: 'blank' }
    if (row <= table.mapping.headingRows) return { row, became: 'headings', text }
    const why = wrong.get(row)
    if (why !== undefined || foreign.broken)
      return { row, became: 'not understood', text, why: why ?? foreign.broken! }
    if (cell('formula').trim() && cell('formula') !== formula) [formula, stage] = [cell('formula'), '']
    stage = cell('stage').trim() ? cell('stage') : stage
    if ((cells[setting] ?? '').trim() !== '') return { row, became: 'setting', text }
    if (cell('ingredient').trim() === '') return { row, became: 'stage', stage }
    return { row, became: 'line', formula, stage, ingredient: cell('ingredient'), amount: cell('amount') }
  })
  return { formulas, rows, problems, totals: [], stopped: false }
}
