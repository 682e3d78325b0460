import { type Larder, larderOf } from '../../dough/document/larder.js'
import { usualLarder } from '../../dough/larder/usual-larder.js'
import { columnOf } from '../csv/columns.js'
import { isAmountUse, numberIn } from './cell-quantity.js'
import { guessDecimal } from './decimal-signs.js'
import { ColumnGuesser, isBrokenNumber } from './guess-columns.js'
import { type Sorted, Sorter } from './sort.js'
import { isBlankRow, split } from './split.js'
import { hasStageColumns } from './stage-columns.js'
import { headsWithTotal } from './sums.js'
import { isIngredient, remembering } from './table-draft.js'
import {
  type ColumnUse,
  type ForeignRow,
  type ForeignTable,
  type Guess,
  isStopped,
  type Limits,
  type Mapping,
  type StageMarks,
  usualLimits,
  type Watch,
} from './types.js'
import { folded, headingName, headingUse, isRemark, isStageName, titleName } from './words.js'

// what the columns hold, and how stages are told, shows in the first of many rows
const sampleRows = 600
const sortedRows = 5000

/**
 * Takes a table apart and guesses how it is to be read, each guess with its reason. Whatever is too large or
 * no text at all is `refused` with a sentence. Never throws.
 */
export function guessTable(
  text: string,
  given: Larder = larderOf(usualLarder),
  watch: Watch = {},
  limits: Limits = usualLimits,
): ForeignTable {
  const taken = split(text, limits)
  if ('refused' in taken) return noTable(text, taken.refused)
  const { rows, delimiter, width } = taken
  const larder = remembering(given)
  if (isStopped(watch, 0, rows.length)) return { ...noTable(text), stopped: true }
  const guesses: Guess[] = [{ about: 'delimiter', ask: !taken.sure && width > 1, why: taken.why }]
  const heading = findHeadings(rows)
  const headings = heading < 0 ? [] : rows[heading]!.cells
  const above = rows.slice(0, Math.max(heading, 0)).filter(row => !isBlankRow(row))
  const body = rows.slice(heading + 1)
  const sample = body.slice(0, sampleRows).filter(row => !isBlankRow(row) && !row.broken)
  const ownUses =
    heading >= 0 && above.every(row => /^sep=/.test(row.cells[0] ?? '')) ? ownColumns(headings) : undefined
  const isOwn =
    ownUses !== undefined && !(delimiter === ',' && isBrokenNumber(sample, ownUses.indexOf('amount')))
  const uses = isOwn ? ownUses : columnsOf(headings, sample, delimiter, larder, guesses)
  guesses.splice(1, 0, {
    about: 'headings',
    ask: heading < 0 && rows.length > 0,
    why:
      heading < 0
        ? 'No row looks like headings; the columns were guessed from what they hold.'
        : `Row ${heading + 1} holds the headings.`,
  })
  const { decimal, guess } = decimalOf(body, uses)
  guesses.push(guess)
  const columns: Mapping = {
    columns: uses,
    headingRows: heading + 1,
    decimal,
    stages: 'none',
    formulaName: '',
  }
  // as if the columns of stages were several of one dough
  const together = uses.map(use => (use === 'of a stage' ? 'amount' : use))
  const sorter = new Sorter({ ...columns, columns: together }, headings, delimiter)
  const sorted = body.slice(0, sortedRows).map(row => sorter.sort(row))
  if (isStopped(watch, rows.length, rows.length)) return { ...noTable(text), stopped: true }
  const title = titleOf(above, sorted, uses, larder)
  if (title)
    guesses.push({ about: 'formula', ask: false, why: `Row ${title.row} names the bread: ${title.name}.` })
  const headingRows = Math.max(heading + 1, title?.row ?? 0)
  const stages = guessStages(sorted.slice(headingRows - (heading + 1)), uses, larder)
  guesses.push(stages.guess)
  const mapping = { ...columns, headingRows, stages: stages.stages, formulaName: title?.name ?? '' }
  const own = isOwn && isPlain(headings, sorted, larder)
  return { text, rows, delimiter, width, headings, mapping, guesses, own, stopped: false }
}

const noTable = (text: string, refused?: string): ForeignTable => ({
  text,
  rows: [],
  delimiter: ',',
  width: 0,
  headings: [],
  mapping: { columns: [], headingRows: 0, decimal: '.', stages: 'none', formulaName: '' },
  guesses: [],
  own: false,
  ...(refused === undefined ? {} : { refused }),
  stopped: false,
})

/** The row that names the columns, among the first that say anything; -1 where there is none. */
function findHeadings(rows: readonly ForeignRow[]): number {
  let seen = 0
  for (let at = 0; at < rows.length && seen < 15; at++) {
    const row = rows[at]!
    if (isBlankRow(row) || row.broken) continue
    seen++
    const cells = row.cells.map(cell => cell.trim()).filter(cell => cell !== '')
    if (cells.length < 2 || cells.some(cell => numberIn(cell) !== undefined && !/^%$/.test(cell))) continue
    const uses = cells.map(headingUse).filter(use => use !== undefined)
    const only = uses[0]
    if (
      uses.length > 1 ||
      only === 'ingredient' ||
      only === 'amount' ||
      only === 'percent' ||
      only === 'grams' ||
      // an empty corner over the ingredients
      (row.cells[0]?.trim() === '' && cells.every(cell => isStageName(headingName(cell).name)))
    )
      return at
  }
  return -1
}

/** As many columns as the headings; or else as the widest row has, or between commas, of which one may be decimal, most rows. */
function columnsWidth(headings: readonly string[], sample: readonly ForeignRow[], delimiter: string): number {
  if (headings.length > 0) return headings.length
  const counts = new Map<number, number>()
  for (const { cells } of sample) {
    const width = cells.findLastIndex(cell => cell.trim() !== '') + 1
    counts.set(width, (counts.get(width) ?? 0) + 1)
  }
  const widths = [...counts.keys()].sort((a, b) => b - a)
  if (delimiter !== ',') return widths[0] ?? 0
  return widths.reduce(
    (best, width) => (counts.get(width)! > counts.get(best)! ? width : best),
    widths[0] ?? 0,
  )
}

function columnsOf(
  headings: readonly string[],
  sample: readonly ForeignRow[],
  delimiter: string,
  larder: Larder,
  guesses: Guess[],
): ColumnUse[] {
  const width = columnsWidth(headings, sample, delimiter)
  const guesser = new ColumnGuesser(headings, sample, width, delimiter, larder)
  guesses.push(...guesser.guesses)
  return guesser.uses
}

/** The columns of Tarebook's own files; undefined where a heading is none of them. */
function ownColumns(headings: readonly string[]): ColumnUse[] | undefined {
  const columns = headings.map(columnOf)
  if (!columns.includes('ingredient') || !columns.includes('amount')) return undefined
  if (columns.some((column, at) => column === undefined && headings[at]!.trim() !== '')) return undefined
  const used: readonly string[] = ['formula', 'stage', 'ingredient', 'amount', 'note']
  return columns.map(column => (used.includes(column ?? '') ? (column as ColumnUse) : 'leave out'))
}

/** Is it a file that Tarebook could have written, without totals and headings between its rows? */
function isPlain(headings: readonly string[], sorted: readonly Sorted[], larder: Larder): boolean {
  const columns = headings.map(columnOf)
  if (
    columns.some(
      column => column === 'setting' || column === 'counts as' || column === 'formula' || column === 'stage',
    )
  )
    return true
  const last = sorted.findLastIndex(({ is }) => is !== 'blank')
  return sorted.every(
    ({ is, name }, at) =>
      is === 'line' ||
      (is === 'blank' && at > last) ||
      (is === 'name' && !isStageName(name) && isIngredient(name, larder)),
  )
}

function decimalOf(body: readonly ForeignRow[], uses: readonly ColumnUse[]): ReturnType<typeof guessDecimal> {
  const small: string[] = []
  const others: string[] = []
  for (const { cells, broken } of body) {
    if (broken) continue
    uses.forEach((use, at) => {
      const cell = cells[at]
      if (cell === undefined || (!isAmountUse(use) && use !== 'of a stage')) return
      if (use === 'kilograms' || use === 'pounds' || /\d\s*(?:kg|lbs?)\.?\s*$/i.test(cell)) small.push(cell)
      else others.push(cell)
    })
  }
  return guessDecimal(small, others)
}

/** The name of the bread: the first row over the headings, or a row on top that names nothing else. */
function titleOf(
  above: readonly ForeignRow[],
  sorted: readonly Sorted[],
  uses: readonly ColumnUse[],
  larder: Larder,
): { row: number; name: string } | undefined {
  for (const { row, cells } of above) {
    const said = cells.filter(cell => cell.trim() !== '')
    if (said.length === 1 && !isRemark(said[0]!) && !/^sep=/.test(said[0]!))
      return { row, name: titleName(said[0]!) }
  }
  if (above.length > 0 || uses.includes('formula') || uses.includes('stage')) return undefined
  const said = sorted.filter(({ is }) => is !== 'blank' && is !== 'headings')
  const [first, second] = said
  if (first?.is !== 'name' || first.name === '' || isRemark(first.name)) return undefined
  const name = titleName(first.name)
  if (isStageName(name) || isIngredient(name, larder)) return undefined
  // two names in a row, or the only heading there is
  const others = said
    .slice(1)
    .some(({ is, name: other }, at) => is === 'name' && said[at + 2]?.is === 'line' && !isRemark(other))
  const isOfBread = second?.is === 'name' || (!others && second?.is === 'line')
  return isOfBread ? { row: first.row, name } : undefined
}

/** How the table tells its stages. */
function guessStages(
  sorted: readonly Sorted[],
  uses: readonly ColumnUse[],
  larder: Larder,
): { stages: StageMarks; guess: Guess } {
  const answer = (stages: StageMarks, why: string, ask = false) => ({
    stages,
    guess: { about: 'stages', ask, why } as const,
  })
  if (hasStageColumns({ columns: uses }))
    return answer(
      'columns',
      'Headings name stages: each such column was taken as the amounts of its stage.',
      true,
    )
  if (uses.includes('stage')) return answer('column', 'A column names the stage of each line.')
  const said = sorted.filter(({ is }) => is !== 'blank')
  const heads = said.filter(({ is, name }, at) => {
    if (is !== 'name' || name === '' || said[at + 1]?.is !== 'line') return false
    return isStageName(headingName(name).name) || (!isIngredient(name, larder) && !isRemark(name))
  })
  sorted.forEach((row, at) => {
    const before = sorted[at - 1]?.is ?? 'blank'
    if (before !== 'line' && before !== 'name' && headsWithTotal(sorted, at)) heads.push(row)
  })
  if (heads.length > 0) {
    const sure = heads.every(({ name }) => isStageName(headingName(name).name))
    const names = [...new Set(heads.map(({ name }) => headingName(name).name))]
    return answer(
      'headings',
      `Rows of their own head the stages: ${names.slice(0, 4).join(', ')}${names.length > 4 ? ', …' : ''}.`,
      !sure,
    )
  }
  const blocks = blockSizes(sorted)
  if (blocks.filter(size => size > 1).length > 1)
    return answer(
      'blocks',
      `Blank rows part the table into ${blocks.length} blocks; each was taken as a stage.`,
      true,
    )
  return answer('none', 'Nothing parts the table into stages: all lines are one dough.')
}

/** How many lines each block between blank rows has; blocks of totals and notes alone are none. */
function blockSizes(sorted: readonly Sorted[]): number[] {
  const sizes: number[] = []
  let size = 0
  for (const { is } of sorted) {
    if (is === 'line') size++
    else if (is === 'blank' && size > 0) {
      sizes.push(size)
      size = 0
    }
  }
  return size > 0 ? [...sizes, size] : sizes
}

/** What tables with the same headings have in common, so that a mapping once corrected can be found again. */
export function headingsKey(table: ForeignTable): string {
  const names = table.headings.map(folded)
  return names.length > 0
    ? JSON.stringify(names)
    : JSON.stringify(['', table.mapping.columns.length, table.delimiter])
}
