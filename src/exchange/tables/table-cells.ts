import { readAmount } from '../../dough/amounts/amounts.js'
import '../../dough/amounts/spoken-at-once.js'
import { tidy } from '../../dough/document/words.js'
import { readDigits } from '../../dough/lexicon/digits.js'
import { type Quantity as Given, measuresIn, quantityAt } from '../../dough/lexicon/quantities.js'
import { tokensOf, withPlainDigits } from '../../dough/lexicon/text-tokens.js'
import { sizeIn } from '../../dough/lexicon/units.js'
import { type AmountGuess, amountText, type Figure, figureOf } from '../../dough/lexicon/written-figures.js'
import { cellsOf, isRule } from '../csv/any-cells.js'
import { type DecimalMark, plainAmount } from '../values/decimals.js'
import { isDoubtfulPart, printedTokens } from '../values/printed-tokens.js'
import { plainCell } from '../values/safe-cell.js'
import type { ColumnUse, ForeignRow, Limits } from './types.js'
import type { NoAmount, Reason } from './words.js'

/** A text as rows of cells, or why it is refused. Never throws. */
export function split(given: string, limits: Limits) {
  const tooLarge = (what: 'characters' | 'rows' | 'columns', count: number) => {
    const most = limits[what]
    return count > most ? { refused: { code: 'tooLarge', what, count, most } as const } : undefined
  }
  const tooLong = tooLarge('characters', given.length)
  if (tooLong) return tooLong
  if (given.includes('\0')) return { refused: { code: 'tableNotText' } as const }
  const { data, broken, ...guessed } = cellsOf(given)
  const width = data.reduce((most, cells) => Math.max(most, cells.length), 0)
  const refused = tooLarge('rows', data.length) ?? tooLarge('columns', width)
  if (refused) return refused
  const rows = data.map((cells, at): ForeignRow => {
    const row = at + 1
    const isOpen = broken.get(at)
    const count = cells.find(cell => cell.length > limits.cell)?.length
    const why: Reason | undefined =
      isOpen !== undefined
        ? { code: 'quotes', isOpen, row }
        : count === undefined
          ? undefined
          : { code: 'longCell', row, count, most: limits.cell }
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
