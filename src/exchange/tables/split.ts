import Papa from 'papaparse'
import { brokenRow, withOneEnding } from '../csv/csv-table.js'
import { plainCell } from '../values/safe-cell.js'
import type { ForeignRow, Limits } from './types.js'

export interface Split {
  readonly rows: readonly ForeignRow[]
  readonly delimiter: string
  readonly why: string // of the delimiter
  readonly sure: boolean
  readonly width: number
}

/** Nothing separates columns. */
export const none = ''
/** Stands for columns held apart by gaps of two and more blanks. */
export const gaps = '  '

const names: Readonly<Record<string, string>> = {
  '\t': 'Tabs',
  ';': 'Semicolons',
  '|': 'Upright strokes',
  ',': 'Commas',
  [gaps]: 'Gaps of two and more blanks',
}

const gap = /\S(?: {2,}|\u00a0{2,})\S/

/** How many of the lines hold this delimiter as one. A comma between digits may be a decimal comma. */
const holds = (line: string, delimiter: string): boolean => {
  if (delimiter === gaps) return gap.test(line)
  return delimiter === ',' ? /(?:[^\d,]|^),|,(?:\D|$)/.test(line) : line.includes(delimiter)
}

function guessDelimiter(text: string): { delimiter: string; why: string; sure: boolean } {
  const sample: string[] = []
  for (const line of text.slice(0, 60_000).split(/\r\n?|\n/)) {
    if (line.trim() !== '') sample.push(line)
    if (sample.length === 300) break
  }
  const shares = ['\t', ';', '|', gaps, ','].map(delimiter => ({
    delimiter,
    lines: sample.filter(line => holds(line, delimiter)).length,
  }))
  const most = shares.reduce((best, share) => (share.lines > best.lines ? share : best))
  // a comma here and there is part of a text
  if (most.lines === 0 || (most.delimiter === ',' && most.lines * 2 < sample.length))
    return { delimiter: none, why: 'Nothing separates columns: each row is one cell.', sure: false }
  // a tab is never part of a text, a comma often is: half of the lines are enough for the rarer signs
  const strong = shares.find(({ delimiter, lines }) =>
    delimiter === gaps ? lines * 2 > sample.length && lines >= most.lines : lines * 2 >= sample.length,
  )
  const { delimiter, lines } = strong ?? most
  const why = `${names[delimiter]} separate the columns: ${lines} of ${sample.length === 300 ? 'the first 300' : sample.length} rows hold them.`
  return { delimiter, why, sure: lines > 0 && delimiter !== gaps && strong !== undefined }
}

/** `---`, `| --- | :--- |`, `=====`: a drawn line. */
const isRule = (text: string): boolean => /^[\s|:+=_.–—-]*$/.test(text) && /[-=_–—]{3}/.test(text)

/** Gaps and upright strokes have no quotation marks; a row is a line. */
function splitPlainly(text: string, delimiter: string): string[][] {
  return text.split(/\r\n?|\n/).map(line => {
    if (line.trim() === '') return ['']
    if (delimiter === none) return [line]
    if (delimiter === gaps) return line.trim().split(/[ \u00a0]{2,}/)
    if (isRule(line)) return [line]
    return line
      .replace(/^\s*\|/, '')
      .replace(/\|\s*$/, '')
      .split('|')
      .map(cell => cell.trim())
  })
}

/** A text as rows of cells, or why it is refused. Never throws. */
export function split(given: string, limits: Limits): Split | { readonly refused: string } {
  const count = (n: number) => n.toLocaleString('en-GB')
  if (given.length > limits.characters)
    return {
      refused: `This table has ${count(given.length)} characters; ${count(limits.characters)} are the most that is read at once. Bring it in by parts.`,
    }
  if (given.includes('\0'))
    return {
      refused:
        'This is not a text file: it holds null bytes. Save the table as CSV in UTF-8, and bring that in.',
    }
  const { text, newline } = withOneEnding(given.replace(/^\ufeff/, ''))
  const named = /^"?sep=([,;\t|])"?(?:[\r\n]|$)/.exec(text)?.[1] // Excel's way to name the delimiter
  const guessed = named
    ? { delimiter: named, why: 'The first row names what separates the columns.', sure: true }
    : guessDelimiter(text)
  const { delimiter } = guessed
  const broken = new Map<number, string>()
  let data: string[][]
  if (delimiter === gaps || delimiter === '|' || delimiter === none) data = splitPlainly(text, delimiter)
  else {
    const parsed = Papa.parse<string[]>(text, { delimiter, newline })
    data = parsed.data
    for (const { type, code, row } of parsed.errors)
      if (type === 'Quotes' && row !== undefined)
        broken.set(row, brokenRow(row + 1, code === 'MissingQuotes').message)
  }
  while (data.length > 0 && data.at(-1)!.length <= 1 && (data.at(-1)![0] ?? '') === '') data.pop() // the end of the last line
  if (data.length > limits.rows)
    return {
      refused: `This table has ${count(data.length)} rows; ${count(limits.rows)} are the most that is read at once. Bring it in by parts.`,
    }
  const width = data.reduce((most, cells) => Math.max(most, cells.length), 0)
  if (width > limits.columns)
    return {
      refused: `This table has ${count(width)} columns; ${count(limits.columns)} are the most that is read. Take the few that hold the formula, and bring those in.`,
    }
  const rows = data.map((cells, at): ForeignRow => {
    const row = at + 1
    const long = cells.find(cell => cell.length > limits.cell)
    const why =
      broken.get(at) ??
      (long &&
        `Row ${row} has a cell of ${count(long.length)} characters; ${count(limits.cell)} are the most.`)
    if (why) return { row, cells: cells.map(cell => cell.slice(0, 60)), broken: why }
    return { row, cells: cells.map(cell => (cell.includes("'") ? plainCell(cell) : cell)) }
  })
  return { rows, ...guessed, width }
}

/** Nothing, or only a drawn line. */
export const isBlankRow = ({ cells, broken }: ForeignRow): boolean =>
  broken === undefined && cells.every(isBlankCell)

const isBlankCell = (cell: string): boolean => {
  if (cell === '') return true
  if (/[\p{L}\d]/u.test(cell)) return false
  return cell.trim() === '' || isRule(cell) || /^[-=_:]+$/.test(cell.trim())
}
