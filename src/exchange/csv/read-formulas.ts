import type { Larder } from '../../dough/document/larder.js'
import { larderWith } from '../../dough/larder/usual-larder.js'
import type { Worded } from '../../engine/index.js'
import { type Column, columnOf } from './columns.js'
import { readTable, type TableRow } from './csv-table.js'
import { isBlank, type Row } from './row.js'
import { type FormulasRead, Reader } from './row-reader.js'
import { csvProblem } from './words.js'

const nothing = (why: Worded): FormulasRead => ({
  formulas: [],
  problems: [{ ...why, where: {}, severity: 'error' }],
})

function missingColumns(columns: ReadonlyMap<Column, number>, headings: TableRow): Worded | undefined {
  const missing: string[] = columns.has('ingredient') ? [] : ['ingredient']
  if (!['amount', 'grams', 'percent'].some(c => columns.has(c as Column))) missing.push('amount')
  if (missing.length === 0) return undefined
  const names = headings.cells.filter(cell => !isBlank(cell)).slice(0, 8)
  return csvProblem({ code: 'columnsMissing', columns: missing, headings: names })
}

/**
 * Formulas from CSV: one heading row, one row a line or a setting. `problems` tells of whatever was not
 * taken as it stands, with the row as a spreadsheet counts it (headings are row 1, blank rows count, a
 * cell of several lines is one row). A row with an `error` is not in the formulas, all others are;
 * blank rows mean nothing. Never throws.
 *
 * - Commas, semicolons or tabs; decimal points or commas, whichever the file's numbers show, or the
 *   comma when semicolons separate and no number shows it. `1,000 g` that nothing decides is a thousand, with a warning.
 * - An amount without a unit is grams. Amounts are kept as typed, with plain numbers, understood or not.
 * - Formulas of one name are one formula, and their rows may be mixed; so are stages of one name within
 *   one. Stages come in the order of first appearance and the last is the final dough. A row that names
 *   only a stage announces it. An empty formula or stage is that of the row above.
 * - `counts as` becomes a meaning of the formula where `larder` says otherwise or does not know the name.
 * - Settings of a stage: `ferments`, `base` (an ingredient of the stage: the line before it, else after),
 *   `keep-back` (a weight, or `seed`), `loss`, `build` (its name in the workbook). Of the formula: `flour weight`, `note`, `make`, `loss`, `bake
 *   loss`, and `hold` with a reading, for which the ingredient names the line of the final dough that gives. Those
 *   that are not understood, not possible or not known are kept, with a problem that says so.
 */
export function readFormulas(csv: string, larder: Larder = larderWith([])): FormulasRead {
  if (isBlank(csv)) return nothing(csvProblem({ code: 'csvEmpty' }))
  const table = readTable(csv, cell => columnOf(cell) !== undefined)
  const [headings, ...body] = table.rows
  const columns = new Map<Column, number>()
  const notRead: { heading: string; number: number }[] = []
  headings?.cells.forEach((heading, at) => {
    const column = columnOf(heading)
    if (column && !columns.has(column)) columns.set(column, at)
    else if (body.some(({ cells }) => !isBlank(cells[at] ?? '')))
      notRead.push({ heading: isBlank(heading) ? '' : heading, number: at + 1 })
  })
  const missing = headings && missingColumns(columns, headings)
  if (!headings || missing) {
    if (csv.includes('\0') || csv.includes('\ufffd')) return nothing(csvProblem({ code: 'csvNotText' }))
    return nothing(missing ?? table.problems[0] ?? csvProblem({ code: 'csvWithoutHeadings' }))
  }
  const reader = new Reader(columns, larder)
  reader.problems.push(...table.problems)
  if (notRead.length > 0) reader.say('warning', { code: 'columnsNotRead', columns: notRead })
  if (body.length === 0 && table.problems.length === 0) reader.say('warning', { code: 'csvWithoutRows' })
  const rows: Row[] = []
  for (const { row: number, cells } of body) {
    const cell = (column: Column): string => cells[columns.get(column) ?? -1] ?? ''
    const row: Row = {
      number,
      formula: cell('formula'),
      stage: cell('stage'),
      ingredient: cell('ingredient'),
      amount: cell('amount'),
      note: cell('note'),
      'counts as': cell('counts as'),
      setting: cell('setting'),
      grams: cell('grams'),
      percent: cell('percent'),
      'whole dough percent': cell('whole dough percent'),
      'batch grams': cell('batch grams'),
    }
    if (cells.slice(headings.cells.length).some(extra => !isBlank(extra)))
      reader.say('error', {
        code: 'tooManyCells',
        row: number,
        cells: cells.length,
        headings: headings.cells.length,
      })
    else rows.push(row)
  }
  reader.chooseMark(rows, table.delimiter)
  for (const row of rows) reader.row(row)
  return reader.finish()
}
