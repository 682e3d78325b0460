import { plainCell } from '../values/safe-cell.js'
import { cellsBetween, namedDelimiter } from './csv-table.js'

/** Nothing separates columns. */
const none = ''
/** Stands for columns held apart by gaps of two and more blanks. */
export const gaps = '  '

/** How many of the lines hold this delimiter as one. A comma between digits may be a decimal comma. */
const holds = (line: string, delimiter: string): boolean => {
  if (delimiter === gaps) return /\S(?: {2,}|\u00a0{2,})\S/.test(line)
  return delimiter === ',' ? /(?:[^\d,]|^),|,(?:\D|$)/.test(line) : line.includes(delimiter)
}

/** What separates the columns of a text, and why it is thought so. */
function delimiterIn(text: string) {
  const named = namedDelimiter(text)
  if (named) return { delimiter: named, reason: { code: 'namedDelimiter' }, isSure: true } as const
  const lines = text.slice(0, 60_000).split(/\r\n?|\n/)
  const sample = lines.filter(line => line.trim() !== '').slice(0, 300)
  const shares = ['\t', ';', '|', gaps, ','].map(delimiter => ({
    delimiter,
    lines: sample.filter(line => holds(line, delimiter)).length,
  }))
  const most = shares.reduce((best, share) => (share.lines > best.lines ? share : best))
  // a comma here and there is part of a text
  if (most.lines === 0 || (most.delimiter === ',' && most.lines * 2 < sample.length))
    return { delimiter: none, reason: { code: 'noDelimiter' }, isSure: false } as const
  // a tab is never part of a text, a comma often is: half of the lines are enough for the rarer signs
  const strong = shares.find(share =>
    share.delimiter === gaps
      ? share.lines * 2 > sample.length && share.lines >= most.lines
      : share.lines * 2 >= sample.length,
  )
  const found = strong ?? most
  return {
    delimiter: found.delimiter,
    reason: { code: 'delimiter', ...found, of: sample.length } as const,
    isSure: strong !== undefined && found.delimiter !== gaps,
  }
}

/** Whether anything in a text separates columns. */
export const hasColumns = (text: string): boolean => delimiterIn(text).delimiter !== none

/** `---`, `| --- | :--- |`, `=====`: a drawn line. */
const isRule = (text: string): boolean => /^[\s|:+=_.–—-]*$/.test(text) && /[-=_–—]{3}/.test(text)

const nameAndAmount =
  /^(\p{L}.{0,80}?) (\d{1,6}(?:[.,/]\d{1,4})?(?: \d\/\d)? ?(?:%|k?g|[cd]?l|ml|oz|lbs?|tsp|tbsp|cups?)\.?)$/iu

/** The cells of rows that blanks hold apart, each in the first column over whose places it stands. */
function splitAtGaps(lines: readonly string[]): string[][] {
  const rows = lines.map(line => {
    const cells = Array.from(line.matchAll(/\S+(?:[ \u00a0]\S+)*/g), ({ 0: text, index: from }) => {
      return { text, from, to: from + text.length }
    })
    const [first, ...others] = cells
    // `Strong flour 350 g  500 g`: one gap of them may be narrower
    const [, name, amount] = first && others.length > 0 ? (nameAndAmount.exec(first.text) ?? []) : []
    if (!first || !name || !amount) return cells
    const at = first.to - amount.length
    return [{ text: name, from: first.from, to: at - 1 }, { text: amount, from: at, to: first.to }, ...others]
  })
  const width = rows.reduce((most, cells) => Math.max(most, cells.length), 0)
  const whole = rows.filter(cells => cells.length === width)
  const columns = Array.from({ length: width }, (_, at) => ({
    from: whole.reduce((least, cells) => Math.min(least, cells[at]!.from), Infinity),
    to: whole.reduce((most, cells) => Math.max(most, cells[at]!.to), 0),
  }))
  return rows.map(cells => {
    const placed: string[] = []
    for (const { text, from, to } of cells) {
      const over = columns.findIndex(
        (column, nth) => nth >= placed.length && from < column.to && to > column.from,
      )
      // a number that stands between two columns is of the nearer
      const apart = columns.map(column => Math.max(column.from - to, from - column.to))
      const at =
        over >= 0 || !/^\d/.test(text)
          ? over
          : apart.indexOf(Math.min(...apart.slice(placed.length)), placed.length)
      if (at < 0) return cells.map(cell => cell.text)
      while (placed.length < at) placed.push('')
      placed.push(text)
    }
    return placed.length > 0 ? placed : ['']
  })
}

/** Upright strokes have no quotation marks; a row is a line. */
function splitAtStrokes(lines: readonly string[]): string[][] {
  const isFramed =
    lines.filter(line => /^\s*\|/.test(line)).length * 2 > lines.filter(line => line.trim()).length
  return lines.map(line => {
    if (line.trim() === '') return ['']
    if (isRule(line)) return [line]
    return (isFramed ? line.replace(/^\s*\|/, '').replace(/\|\s*$/, '') : line).split('|')
  })
}

/** The rows of cells of a text from anywhere, without those behind its last line: `broken` as of `cellsBetween`. */
export function cellsOf(whole: string) {
  const text = whole.replace(/^\ufeff/, '')
  const guessed = delimiterIn(text)
  const { delimiter } = guessed
  const lines = () => text.split(/\r\n?|\n/)
  const broken = new Map<number, boolean>()
  const cut =
    delimiter === gaps
      ? { data: splitAtGaps(lines()), broken }
      : delimiter === '|'
        ? { data: splitAtStrokes(lines()), broken }
        : delimiter === none
          ? { data: lines().map(line => [line.trim() === '' ? '' : line]), broken }
          : cellsBetween(text, () => delimiter)
  const end = cut.data.findLastIndex(cells => cells.length > 1 || (cells[0] ?? '') !== '')
  return { ...guessed, broken: cut.broken, data: cut.data.slice(0, end + 1) }
}

/** A cell without blanks around it and but one within, and without the signs that make it bold, or harmless to an office program. */
export function tidied(cell: string): string {
  const said = /^\s|[^\S ]| {2}|\s$/.test(cell) ? cell.replace(/\s+/g, ' ').trim() : cell
  const bare = /^(\*\*|__)(?=\S)(.*\S)\1$/.exec(said)?.[2] ?? said
  return bare.includes("'") ? plainCell(bare) : bare
}

/** Nothing, or only a drawn line. */
export const isBlankCell = (cell: string): boolean => {
  if (cell === '') return true
  if (/[\p{L}\d]/u.test(cell)) return false
  return isRule(cell) || /^[-=_:]+$/.test(cell)
}
