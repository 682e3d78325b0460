import { readAmount } from '../../dough/amounts/amounts.js'
import { type AmountGuess, amountText, figureOf } from '../../dough/amounts/figures.js'
import { quantityAt, wholeAmount } from '../../dough/amounts/quantities.js'
import { tokensOf, withPlainDigits } from '../../dough/amounts/text-tokens.js'
import { type Measure, weightUnits } from '../../dough/amounts/units.js'
import { readDigits } from '../../dough/amounts/written-numbers.js'
import { tidy } from '../../dough/document/words.js'
import { type DecimalMark, plainAmount } from '../values/decimals.js'
import type { ColumnUse, ForeignRow } from './types.js'
import type { NoAmount, Reason } from './words.js'

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

export const isAmountUse = (use: string | undefined): use is AmountUse =>
  use !== undefined && Object.hasOwn(unitOfUse, use satisfies string as ColumnUse)

/** What a cell of an amount column says. */
export type CellRead =
  | { readonly is: 'nothing' }
  | { readonly is: 'words'; readonly why: NoAmount }
  | Quantity

export interface Quantity {
  readonly is: 'quantity'
  readonly text: string // as a line keeps it
  readonly grams?: number // of a weight
  readonly percent?: number // of a percentage, as a fraction of 1
  readonly measure?: { readonly count: number; readonly unit: Measure } // a spoon, a cup, an egg
  readonly step: number // what the last printed digit is worth, and of a range its width: grams, or a fraction of 1
  readonly bare: boolean // without a unit of its own
  readonly doubt?: { readonly typed: string; readonly read: string } // a number that can be read in two ways
  readonly remark?: string // text to keep in the note: a range, an “about”
}

const nothing = /^(?:[-–—.…/]+|n\/?a|nil|none|keine?|aucune?)?$/i
const footnotes = /(?<=\S)[*†‡§]+(?=\s|$)/g

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
  if (/\/\s*0+(?![.,\d])/.test(typed)) return words('byNothing')
  const whole = wholeAmount(typed, mark)
  if (!whole) return calculated(typed, use, mark)
  const { about, terms } = whole.quantity
  const { text, value, unit, grams, spread, step, guesses } = figureOf(whole.quantity, () => unitOfUse[use])
  if (unit === '' || guesses.some(({ code }) => rash.includes(code))) return words('noAmount')
  if (value > 1e12) return words('noNumber')
  const isSaid = about.length === 0 && guesses.every(({ code }) => certain.includes(code))
  const doubt = guesses.find(guess => guess.code === 'two readings')
  const each = unit === '%' ? 0.01 : unit in weightUnits ? weightUnits[unit as keyof typeof weightUnits] : 1
  const amount =
    unit === '%'
      ? { percent: tidy(value / 100) }
      : grams === undefined
        ? { measure: { count: value, unit: unit as Measure } }
        : { grams: tidy(grams) }
  return {
    is: 'quantity',
    text,
    ...amount,
    step: Math.max(step, spread) * each,
    bare: terms.every(term => term.unit === undefined),
    ...(doubt ? { doubt: { typed: cell.trim(), read: doubt.read } } : {}),
    ...(isSaid ? {} : { remark: cell.trim() }),
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
  return understood && 'expression' in understood
    ? { is: 'quantity', text: amount, step: 0, bare }
    : words('noAmount')
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
  const cells = { small: [] as string[], others: [] as string[] }
  for (const row of body) {
    if (row.broken) continue
    uses.forEach((use, at) => {
      const cell = row.cells[at]
      if (cell === undefined || (!isAmountUse(use) && use !== 'of a stage')) return
      const isSmall = use === 'kilograms' || use === 'pounds' || /\d\s*(?:kg|lbs?)\.?\s*$/i.test(cell)
      cells[isSmall ? 'small' : 'others'].push(cell)
    })
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
  const sign = number.includes(',') ? ',' : '.'
  if (others.doubtful.length === 0) return answer(sign, true, { code: 'smallDecimals', number })
  return answer(sign === ',' ? '.' : ',', true, { code: 'thousandsOrDecimals', number })
}
