import Papa from 'papaparse'
import { withOneEnding } from '../csv/csv-table.js'
import { plainCell } from '../values/safe-cell.js'
import type { ForeignRow, Limits } from './types.js'
import type { Reason } from './words.js'

interface Delimiter {
  readonly delimiter: string
  readonly reason: Reason
  readonly isSure: boolean
}

export interface Split extends Delimiter {
  readonly rows: readonly ForeignRow[]
  readonly width: number
}

/** Nothing separates columns. */
const none = ''
/** Stands for columns held apart by gaps of two and more blanks. */
export const gaps = '  '

/** How many of the lines hold this delimiter as one. A comma between digits may be a decimal comma. */
const holds = (line: string, delimiter: string): boolean => {
  if (delimiter === gaps) return /\S(?: {2,}|\u00a0{2,})\S/.test(line)
  return delimiter === ',' ? /(?:[^\d,]|^),|,(?:\D|$)/.test(line) : line.includes(delimiter)
}

function guessDelimiter(text: string): Delimiter {
  const lines = text.slice(0, 60_000).split(/\r\n?|\n/)
  const sample = lines.filter(line => line.trim() !== '').slice(0, 300)
  const shares = ['\t', ';', '|', gaps, ','].map(delimiter => ({
    delimiter,
    lines: sample.filter(line => holds(line, delimiter)).length,
  }))
  const most = shares.reduce((best, share) => (share.lines > best.lines ? share : best))
  // a comma here and there is part of a text
  if (most.lines === 0 || (most.delimiter === ',' && most.lines * 2 < sample.length))
    return { delimiter: none, reason: { code: 'noDelimiter' }, isSure: false }
  // a tab is never part of a text, a comma often is: half of the lines are enough for the rarer signs
  const strong = shares.find(share =>
    share.delimiter === gaps
      ? share.lines * 2 > sample.length && share.lines >= most.lines
      : share.lines * 2 >= sample.length,
  )
  const found = strong ?? most
  return {
    delimiter: found.delimiter,
    reason: { code: 'delimiter', ...found, of: sample.length },
    isSure: strong !== undefined && found.delimiter !== gaps,
  }
}

/** `---`, `| --- | :--- |`, `=====`: a drawn line. */
const isRule = (text: string): boolean => /^[\s|:+=_.–—-]*$/.test(text) && /[-=_–—]{3}/.test(text)

/** Gaps and upright strokes have no quotation marks; a row is a line. */
function splitPlainly(line: string, delimiter: string): string[] {
  if (line.trim() === '') return ['']
  if (delimiter === gaps) return line.trim().split(/[ \u00a0]{2,}/)
  if (delimiter === none || isRule(line)) return [line]
  const inner = line.replace(/^\s*\|/, '').replace(/\|\s*$/, '')
  return inner.split('|').map(cell => cell.trim())
}

/** A text as rows of cells, or why it is refused. Never throws. */
export function split(given: string, limits: Limits): Split | { readonly refused: Reason } {
  if (given.length > limits.characters)
    return {
      refused: { code: 'tableTooLong', count: given.length, most: limits.characters },
    }
  if (given.includes('\0')) return { refused: { code: 'tableNotText' } }
  const { text, newline } = withOneEnding(given.replace(/^\ufeff/, ''))
  const named = /^"?sep=([,;\t|])"?(?:[\r\n]|$)/.exec(text)?.[1] // Excel's way to name the delimiter
  const guessed = named
    ? { delimiter: named, reason: { code: 'namedDelimiter' } as const, isSure: true }
    : guessDelimiter(text)
  const { delimiter } = guessed
  const isPlain = delimiter === gaps || delimiter === '|' || delimiter === none
  const { data, errors } = isPlain
    ? { data: text.split(/\r\n?|\n/).map(line => splitPlainly(line, delimiter)), errors: [] }
    : Papa.parse<string[]>(text, { delimiter, newline })
  while (data.length > 0 && data.at(-1)!.length <= 1 && (data.at(-1)![0] ?? '') === '') data.pop() // the end of the last line
  if (data.length > limits.rows)
    return { refused: { code: 'tooManyRows', count: data.length, most: limits.rows } }
  const width = data.reduce((most, cells) => Math.max(most, cells.length), 0)
  if (width > limits.columns)
    return { refused: { code: 'tooManyColumns', count: width, most: limits.columns } }
  const broken = new Map<number, Reason>()
  for (const { type, code, row = -1 } of errors)
    if (type === 'Quotes')
      broken.set(row, { code: code === 'MissingQuotes' ? 'openQuotes' : 'strayQuotes', row: row + 1 })
  const rows = data.map((cells, at): ForeignRow => {
    const row = at + 1
    const characters = cells.find(cell => cell.length > limits.cell)?.length
    const why =
      broken.get(at) ??
      (characters ? { code: 'longCell' as const, row, count: characters, most: limits.cell } : undefined)
    if (why) return { row, cells: cells.map(cell => cell.slice(0, 60)), broken: why }
    return { row, cells: cells.map(tidied) }
  })
  return { rows, ...guessed, width }
}

/** A cell without the signs that make it bold, or harmless to an office program. */
function tidied(cell: string): string {
  const bare = /^\s*(\*\*|__)(?=\S)(.*\S)\1\s*$/.exec(cell)?.[2] ?? cell
  return bare.includes("'") ? plainCell(bare) : bare
}

/** Nothing, or only a drawn line. */
export const isBlankRow = ({ cells, broken }: ForeignRow): boolean =>
  broken === undefined && cells.every(isBlankCell)

const isBlankCell = (cell: string): boolean => {
  if (cell === '') return true
  if (/[\p{L}\d]/u.test(cell)) return false
  return cell.trim() === '' || isRule(cell) || /^[-=_:]+$/.test(cell.trim())
}
