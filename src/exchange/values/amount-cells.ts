import { readAmount } from '../../dough/amounts/amounts.js'
import '../../dough/amounts/spoken-at-once.js'
import { tidy } from '../../dough/document/words.js'
import { readDigits } from '../../dough/lexicon/digits.js'
import { type Quantity as Given, measuresIn, quantityAt } from '../../dough/lexicon/quantities.js'
import { tokensOf, withPlainDigits } from '../../dough/lexicon/text-tokens.js'
import { sizeIn, type Unit } from '../../dough/lexicon/units.js'
import { type AmountGuess, amountText, type Figure, figureOf } from '../../dough/lexicon/written-figures.js'
import { type DecimalMark, plainAmount } from './decimals.js'
import { kitchen } from './kitchen-words.js'
import { isDoubtfulPart, printedTokens } from './printed-tokens.js'

/** Why a text is no amount. */
export type NoAmount = 'tooLong' | 'notEdible' | 'negative' | 'calculation' | 'unknownUnit' | 'noAmount'

/** What a cell says of an amount. */
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
    readonly code: 'doubtfulSign' | 'wholeAndPart'
    readonly typed: string
    readonly read: string
  } // a number that can be read in two ways
  readonly remark?: string // text to keep in the note: a range, an “about”, words behind it
  readonly also?: readonly Quantity[] // the same in other measures
}

const nothing = /^(?:[-–—.…/]+|n\/?a|nil|none|keine?|aucune?)?$/i
export const footnotes = /(?<=\S)[*†‡§]+(?=\s|$)/g

/** What says of a bare number that so many are meant. */
const pieces = new Set([
  ...kitchen.sizes,
  'ea',
  'medium-sized',
  'gros',
  'grosse',
  'grosses',
  'moyen',
  'moyens',
  'petit',
  'petits',
])
const mostPieces = 500

/** Guesses that go without saying, and those that a table is not read by. */
const certain: readonly AmountGuess['code'][] = ['two readings', 'converted']
const rash: readonly AmountGuess['code'][] = ['estimate', 'stick', 'letter']

const words = (why: NoAmount): CellRead => ({ is: 'words', why })

/** What a cell says, a number alone in the unit `bare`; `mark` is the decimal mark where a number alone does not tell. */
export function readCell(cell: string, bare: Unit | '%', mark: DecimalMark): CellRead {
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
  // `1 large`, `8 ea`
  const isCount = isBare && rest.length > 0 && rest.every(t => pieces.has(t.key))
  if (measures && isCount && Number(measures.quantities[0].terms[0].number.value) <= mostPieces)
    return quantityOf(
      measures.quantities[0],
      cell,
      rest.every(t => t.key === 'ea'),
      'each',
    )
  if (!measures || !isTold) return calculated(typed, bare, mark)
  const isAll = rest.length === 0 && measures.quantities.length === 1
  const [first, ...others] = measures.quantities.map(one => quantityOf(one, cell, isAll, bare))
  const also = others.filter(one => one.is === 'quantity')
  return first!.is === 'quantity' && also.length > 0 ? { ...first!, also } : first!
}

function quantityOf(given: Given, cell: string, isAll: boolean, bareUnit: Unit | '%'): CellRead {
  const { about, terms } = given
  const { text, value, unit, grams, spread, step, guesses } = figureOf(given, () => bareUnit)
  if (unit === '') return words('unknownUnit')
  if (value > 1e12 || guesses.some(({ code }) => rash.includes(code))) return words('noAmount')
  const isSaid = isAll && about.length === 0 && guesses.every(({ code }) => certain.includes(code))
  const other = guesses.find(guess => guess.code === 'two readings')
  const doubt = isDoubtfulPart(cell, unit)
    ? ({ code: 'wholeAndPart', typed: cell, read: text } as const)
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
function calculated(typed: string, bare: Unit | '%', mark: DecimalMark): CellRead {
  const [first, ...tokens] = tokensOf(typed)
  const read = first && quantityAt([first, ...tokens], 0)
  if (read && 'isWhen' in read) return words('notEdible')
  if (!/\d/.test(typed)) return words('noAmount')
  const plain = plainAmount(typed, mark)
  const amount = plain.bare ? amountText(plain.text.replace(/ g$/, ''), bare) : plain.text
  const understood = readAmount(amount)
  if (understood && 'expression' in understood)
    return { ...{ is: 'quantity', text: amount, value: 0, unit: '' }, step: 0, bare: plain.bare }
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
