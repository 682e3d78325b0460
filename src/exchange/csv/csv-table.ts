import Papa from 'papaparse'
import type { Problem } from '../../dough/document/formula.js'
import { plainCell, safeCell } from '../values/safe-cell.js'
import { csvProblem } from './words.js'

export interface TableRow {
  readonly row: number // 1-based, as a spreadsheet counts: headings and blank rows too; a cell of several lines is one row
  readonly cells: readonly string[]
}

export interface Table {
  readonly rows: readonly TableRow[] // none of them blank
  readonly delimiter: string
  readonly problems: readonly Problem[] // each with the row that is therefore not among `rows`
}

const quote = '"'

/** Where lines end outside quoted cells: offsets, with the ending's own characters. */
function lineEnds(text: string): { at: number; end: string }[] {
  const ends: { at: number; end: string }[] = []
  let quoted = false
  let closedAt = -1
  for (const { 0: found, index } of text.matchAll(/"|\r\n?|\n/g)) {
    if (found !== quote) {
      if (!quoted) ends.push({ at: index, end: found })
    } else if (quoted) {
      quoted = false
      closedAt = index
    } else quoted = index === 0 || /[,;\t\r\n]/.test(text[index - 1]!) || closedAt === index - 1
  }
  return ends
}

/** papaparse reads one kind of line ending; a file put together from several gets one. */
export function withOneEnding(text: string): { text: string; newline: '\r\n' | '\n' | '\r' } {
  const ends = lineEnds(text)
  const kinds = new Set(ends.map(({ end }) => end))
  if (kinds.size <= 1) return { text, newline: (ends[0]?.end ?? '\r\n') as '\r\n' | '\n' | '\r' }
  let one = ''
  let from = 0
  for (const { at, end } of ends) {
    one += `${text.slice(from, at)}\n`
    from = at + end.length
  }
  return { text: one + text.slice(from), newline: '\n' }
}

const cellsOf = (line: string, delimiter: string): string[] =>
  Papa.parse<string[]>(line, { delimiter, newline: '\n' }).data[0] ?? []

/** Comma, semicolon or tab: whichever finds the most headings in the first line that is not blank. */
function delimiterOf(line: string, isHeading: (cell: string) => boolean): string {
  let best = { delimiter: ',', headings: -1, cells: 0 }
  for (const delimiter of [',', ';', '\t']) {
    const cells = cellsOf(line, delimiter)
    const headings = cells.filter(isHeading).length
    if (headings > best.headings || (headings === best.headings && cells.length > best.cells))
      best = { delimiter, headings, cells: cells.length }
  }
  return best.delimiter
}

/** The sign that a first row names as the delimiter, in Excel's way. */
export const namedDelimiter = (text: string): string | undefined =>
  /^"?sep=([,;\t|])"?(?:[\r\n]|$)/.exec(text)?.[1]

/** Rows of cells between a sign, and of which rows the quotation marks are out of place: true of what never closes. */
export function cellsBetween(whole: string, delimiterIn: (text: string, newline: string) => string) {
  const { text, newline } = withOneEnding(whole.replace(/^\ufeff/, ''))
  const delimiter = delimiterIn(text, newline)
  const { data, errors } = Papa.parse<string[]>(text, { delimiter, newline })
  const broken = new Map<number, boolean>()
  for (const { type, code, row } of errors)
    if (type === 'Quotes' && row !== undefined) broken.set(row, code === 'MissingQuotes')
  return { data, broken, delimiter }
}

/** A row whose quotation marks are out of place. */
export const brokenRow = (row: number, unclosed: boolean): Problem => ({
  where: { row },
  severity: 'error',
  ...csvProblem({ code: unclosed ? 'quoteNeverClosed' : 'quoteOutOfPlace', row }),
})

/** Text as RFC 4180 or its semicolon and tab relatives into rows of cells. Never throws. */
export function readTable(csv: string, isHeading: (cell: string) => boolean): Table {
  const named = namedDelimiter(csv.replace(/^\ufeff/, ''))
  const firstLine = (text: string, newline: string) =>
    text.split(newline, 100).find(line => line.trim() !== '' && !/^"?sep=/.test(line)) ?? ''
  const { data, broken, delimiter } = cellsBetween(
    csv,
    (text, newline) => named ?? delimiterOf(firstLine(text, newline), isHeading),
  )
  const problems = [...broken].map(([row, unclosed]) => brokenRow(row + 1, unclosed))
  const rows = data
    .map((cells, index) => ({ row: index + 1, cells: cells.map(plainCell) }))
    .filter(({ row, cells }) => !broken.has(row - 1) && cells.some(cell => cell.trim() !== ''))
  return { rows: named ? rows.slice(1) : rows, delimiter, problems }
}

/** Rows of texts as RFC 4180: commas, or another sign, CRLF after every row, no cell that starts a formula (see `safe-cell`). */
export function writeTable(rows: readonly (readonly string[])[], delimiter = ','): string {
  return `${Papa.unparse(
    rows.map(cells => cells.map(safeCell)),
    { newline: '\r\n', delimiter },
  )}\r\n`
}
