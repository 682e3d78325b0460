import Papa from 'papaparse'
import { readAmount } from '../../dough/amounts/amounts.js'
import '../../dough/amounts/spoken-at-once.js'
import { tidy } from '../../dough/document/words.js'
import { readDigits } from '../../dough/lexicon/digits.js'
import { type Quantity as Given, measuresIn, quantityAt } from '../../dough/lexicon/quantities.js'
import { tokensOf, withPlainDigits } from '../../dough/lexicon/text-tokens.js'
import { sizeIn } from '../../dough/lexicon/units.js'
import { type AmountGuess, amountText, type Figure, figureOf } from '../../dough/lexicon/written-figures.js'
import { withOneEnding } from '../csv/csv-table.js'
import { type DecimalMark, plainAmount } from '../values/decimals.js'
import { isDoubtfulPart, printedTokens } from '../values/printed-tokens.js'
import { plainCell } from '../values/safe-cell.js'
import type { ColumnUse, ForeignRow, Limits } from './types.js'
import type { NoAmount, Reason } from './words.js'

/** Nothing separates columns. */
const none = ''
/** Stands for columns held apart by gaps of two and more blanks. */
export const gaps = '  '

/** How many of the lines hold this delimiter as one. A comma between digits may be a decimal comma. */
const holds = (line: string, delimiter: string): boolean => {
  if (delimiter === gaps) return /\S(?: {2,}|\u00a0{2,})\S/.test(line)
  return delimiter === ',' ? /(?:[^\d,]|^),|,(?:\D|$)/.test(line) : line.includes(delimiter)
}

function delimiterOf(text: string): { delimiter: string; reason: Reason; isSure: boolean } {
  const named = /^"?sep=([,;\t|])"?(?:[\r\n]|$)/.exec(text)?.[1] // Excel's way to name the delimiter
  if (named) return { delimiter: named, reason: { code: 'namedDelimiter' }, isSure: true }
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

/** Whether anything in a text separates columns. */
export const hasColumns = (text: string): boolean => delimiterOf(text).delimiter !== none

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
      const at = columns.findIndex(
        (column, nth) => nth >= placed.length && from < column.to && to > column.from,
      )
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

/** A text as rows of cells, or why it is refused. Never throws. */
export function split(given: string, limits: Limits) {
  const tooLarge = (what: 'characters' | 'rows' | 'columns', count: number) => {
    const most = limits[what]
    return count > most ? { refused: { code: 'tooLarge', what, count, most } as const } : undefined
  }
  const tooLong = tooLarge('characters', given.length)
  if (tooLong) return tooLong
  if (given.includes('\0')) return { refused: { code: 'tableNotText' } as const }
  const { text, newline } = withOneEnding(given.replace(/^\ufeff/, ''))
  const guessed = delimiterOf(text)
  const { delimiter } = guessed
  const lines = text.split(/\r\n?|\n/)
  const plain =
    delimiter === gaps
      ? splitAtGaps(lines)
      : delimiter === '|'
        ? splitAtStrokes(lines)
        : delimiter === none && lines.map(line => [line.trim() === '' ? '' : line])
  const { data, errors } = plain
    ? { data: plain, errors: [] }
    : Papa.parse<string[]>(text, { delimiter, newline })
  while (data.length > 0 && data.at(-1)!.length <= 1 && (data.at(-1)![0] ?? '') === '') data.pop() // the end of the last line
  const width = data.reduce((most, cells) => Math.max(most, cells.length), 0)
  const refused = tooLarge('rows', data.length) ?? tooLarge('columns', width)
  if (refused) return refused
  const broken = new Map<number, Reason>()
  for (const { type, code, row = -1 } of errors)
    if (type === 'Quotes') broken.set(row, { code: 'quotes', isOpen: code === 'MissingQuotes', row: row + 1 })
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

/** A cell without blanks around it and but one within, and without the signs that make it bold, or harmless to an office program. */
function tidied(cell: string): string {
  const said = /^\s|[^\S ]| {2}|\s$/.test(cell) ? cell.replace(/\s+/g, ' ').trim() : cell
  const bare = /^(\*\*|__)(?=\S)(.*\S)\1$/.exec(said)?.[2] ?? said
  return bare.includes("'") ? plainCell(bare) : bare
}

/** Nothing, or only a drawn line. */
export const isBlankRow = ({ cells, broken }: ForeignRow): boolean =>
  broken === undefined && cells.every(isBlankCell)

const isBlankCell = (cell: string): boolean => {
  if (cell === '') return true
  if (/[\p{L}\d]/u.test(cell)) return false
  return isRule(cell) || /^[-=_:]+$/.test(cell)
}

const unitOfUse = {
  amount: 'g',
  percent: '%',
  grams: 'g',
  kilograms: 'kg',
  ounces: 'oz',
  pounds: 'lb',
} as const

/** The columns that hold amounts. */
export type AmountUse = keyof typeof unitOfUse
export const amountUses = Object.keys(unitOfUse) as AmountUse[]

export const isAmountUse = (use: string | undefined): use is AmountUse =>
  use !== undefined && Object.hasOwn(unitOfUse, use satisfies string as ColumnUse)

/** What a cell of an amount column says. */
export type CellRead =
  | { readonly is: 'nothing' }
  | { readonly is: 'words'; readonly why: NoAmount }
  | Quantity

export interface Quantity extends Pick<Figure, 'text' | 'value' | 'unit' | 'grams'> {
  readonly is: 'quantity'
  readonly percent?: number // of a percentage, as a fraction of 1
  readonly step: number // what the last printed digit is worth, and of a range its width: grams, or a fraction of 1
  readonly bare: boolean // without a unit of its own
  readonly doubt?: {
    readonly code: 'doubtfulSign' | 'doubtfulPart'
    readonly typed: string
    readonly read: string
  } // a number that can be read in two ways
  readonly remark?: string // text to keep in the note: a range, an “about”, words behind it
  readonly also?: readonly Quantity[] // the same in other measures
}

const nothing = /^(?:[-–—.…/]+|n\/?a|nil|none|keine?|aucune?)?$/i
export const footnotes = /(?<=\S)[*†‡§]+(?=\s|$)/g

/** Guesses that go without saying, and those that a table is not read by. */
const certain: readonly AmountGuess['code'][] = ['two readings', 'converted']
const rash: readonly AmountGuess['code'][] = ['estimate', 'stick', 'letter']

const words = (why: NoAmount): CellRead => ({ is: 'words', why })

/** What a cell of an amount column says; `mark` is the decimal mark where a number alone does not tell. */
export function readCell(cell: string, use: AmountUse, mark: DecimalMark): CellRead {
  const typed = cell.replace(footnotes, '').trim()
  if (nothing.test(typed)) return { is: 'nothing' }
  if (typed.length > 80) return words('tooLong')
  if (/^[-−(]\s*\d/.test(typed)) return words('negative')
  if (/^[=#]/.test(typed)) return words('calculation')
  if (/\/\s*0+(?![.,\d])|\d\s+\/\s+\d/.test(typed)) return words('noAmount') // divided by nothing, or one of two
  const tokens = printedTokens(typed)
  const measures = measuresIn(tokens, mark)
  const rest = tokens.slice(measures?.to)
  const isBare = measures?.quantities[0].terms[0].unit === undefined
  const isTold =
    rest.length === 0 ||
    (!isBare && !/^[-+*×^/]$/.test(rest[0]!.text) && rest.every(t => t.kind !== 'number'))
  if (!measures || !isTold) return calculated(typed, use, mark)
  const isAll = rest.length === 0 && measures.quantities.length === 1
  const [first, ...others] = measures.quantities.map(one => quantityOf(one, cell, isAll, use))
  const also = others.filter(one => one.is === 'quantity')
  return first!.is === 'quantity' && also.length > 0 ? { ...first!, also } : first!
}

function quantityOf(given: Given, cell: string, isAll: boolean, use: AmountUse): CellRead {
  const { about, terms } = given
  const { text, value, unit, grams, spread, step, guesses } = figureOf(given, () => unitOfUse[use])
  if (unit === '') return words('unknownUnit')
  if (value > 1e12 || guesses.some(({ code }) => rash.includes(code))) return words('noAmount')
  const isSaid = isAll && about.length === 0 && guesses.every(({ code }) => certain.includes(code))
  const other = guesses.find(guess => guess.code === 'two readings')
  const doubt = isDoubtfulPart(cell, unit)
    ? ({ code: 'doubtfulPart', typed: cell, read: text } as const)
    : other && ({ code: 'doubtfulSign', typed: cell, read: other.read } as const)
  const each = unit === '%' ? 0.01 : grams === undefined ? 1 : sizeIn(unit)!
  return {
    ...{ is: 'quantity', text, value, unit },
    ...(grams === undefined ? {} : { grams: tidy(grams) }),
    ...(unit === '%' ? { percent: tidy(value / 100) } : {}),
    step: Math.max(step, spread) * each,
    bare: terms.every(term => term.unit === undefined),
    ...(doubt ? { doubt } : {}),
    ...(isSaid ? {} : { remark: cell }),
  }
}

/** What is no plain amount: a time or a temperature, an expression that Tarebook would take as typed, or words. */
function calculated(typed: string, use: AmountUse, mark: DecimalMark): CellRead {
  const [first, ...tokens] = tokensOf(typed)
  const read = first && quantityAt([first, ...tokens], 0)
  if (read && 'isWhen' in read) return words('notEdible')
  if (!/\d/.test(typed)) return words('noAmount')
  const { text, bare } = plainAmount(typed, mark)
  const amount = bare ? amountText(text.replace(/ g$/, ''), unitOfUse[use]) : text
  const understood = readAmount(amount)
  if (understood && 'expression' in understood)
    return { ...{ is: 'quantity', text: amount, value: 0, unit: '' }, step: 0, bare }
  const number = numberIn(typed)
  return words(number !== undefined && readDigits(number) ? 'unknownUnit' : 'noAmount')
}

/** Is it a name, so that nothing else of it need be looked at? */
export const isName = (cell: string): boolean => /^\p{L}\P{N}*$/u.test(cell) && !nothing.test(cell)

const numberCell = /^((?:[.,]?\d+)(?:[.,]\d+)*(?:e\d+)?)\s*(?:%|\p{L}{1,12}\.?)?$/iu
const thousandsGap = /(?<=\d)[ '’\u00a0\u2009\u202f](?=\d{3})/g
/** The number of a cell that holds one and perhaps a unit. */
export const numberIn = (cell: string): string | undefined =>
  cell.length < 40 ? numberCell.exec(withPlainDigits(cell).trim().replace(thousandsGap, ''))?.[1] : undefined

/** How many of these cells hold a number that can only have this decimal mark, and those that could have either. */
export function signsOf(cells: Iterable<string>) {
  const signs = { '.': 0, ',': 0, doubtful: [] as string[] }
  for (const cell of cells) {
    const number = /[.,]/.test(cell) ? numberIn(cell) : undefined
    const read = number === undefined ? undefined : readDigits(number)
    if (read?.mark) signs[read.mark]++
    if (read?.other) signs.doubtful.push(number!)
  }
  return signs
}

/**
 * The decimal mark of a table. What its numbers show decides; where all of them can be read in two ways, a
 * mark before three digits stands between thousands, but for columns of kilograms and pounds.
 */
export function decimalOf(body: readonly ForeignRow[], uses: readonly ColumnUse[]) {
  const cells: Record<'small' | 'others', string[]> = { small: [], others: [] }
  for (const row of body)
    for (const [at, use] of row.broken ? [] : uses.entries()) {
      const cell = row.cells[at]
      if (cell === undefined || (!isAmountUse(use) && use !== 'of a stage')) continue
      const isSmall = use === 'kilograms' || use === 'pounds' || /\d\s*(?:kg|lbs?)\.?\s*$/i.test(cell)
      cells[isSmall ? 'small' : 'others'].push(cell)
    }
  const [small, others] = [signsOf(cells.small), signsOf(cells.others)]
  const [points, commas] = [small['.'] + others['.'], small[','] + others[',']]
  const answer = (decimal: '.' | ',', ask: boolean, reason: Reason) => ({
    decimal,
    guess: { about: 'decimal', ask, reason } as const,
  })
  const [shown, few] = [Math.max(points, commas), Math.min(points, commas)]
  if (points !== commas) {
    const sign = commas > points ? ',' : '.'
    return answer(sign, few > 0, { code: 'decimalSign', sign, shown, of: shown + few })
  }
  if (few > 0) return answer('.', true, { code: 'noSureSign' })
  const number = others.doubtful[0] ?? small.doubtful[0]
  if (number === undefined) return answer('.', false, { code: 'noDecimalSign' })
  const isSmall = others.doubtful.length === 0
  const sign = number.includes(',') === isSmall ? ',' : '.'
  return answer(sign, true, { code: 'doubtfulDecimals', number, isSmall })
}
