import {
  type AmountGuess,
  amountText,
  type BareUnit,
  type Figure,
  figureOf,
} from '../../dough/amounts/figures.js'
import { gramsPerMeasure } from '../../dough/amounts/measures.js'
import { type Measure, millilitres, weightUnits } from '../../dough/amounts/units.js'
import { numberText } from '../../dough/amounts/written-numbers.js'
import type { Ingredient, Larder } from '../../dough/document/larder.js'
import { guessCountsAs } from '../../dough/larder/counts-as-guess.js'
import { ingredientNamed } from './larder-names.js'
import type { RowQuantity } from './portions.js'
import type { Comparison, LineReason } from './reasons.js'

/** One amount of a line: as Tarebook writes it, and what there is to say about how it was read. */
export interface AmountRead {
  readonly text: string // '' where it has to be asked for
  readonly reasons: readonly LineReason[]
  readonly note: string // what the amount loses: the range, the handful
  readonly rank: number // of two for one line the higher is taken
  readonly value: number
  readonly unit: string // '' for none
}

const isIn = <T extends object>(table: T, unit: string): unit is keyof T & string =>
  Object.hasOwn(table, unit)

/** Of two measures of one thing the finer is taken: metric weights, other weights, metric volumes, spoons and cups, counts. */
function rankOf(unit: string): number {
  if (unit === 'g' || unit === 'kg') return 6
  if (isIn(weightUnits, unit)) return 5
  if (unit === 'ml' || unit === 'l') return 4
  if (isIn(millilitres, unit)) return 3
  return unit === 'each' ? 2 : unit === '%' ? 1 : 0
}

/** In a note beside the weights of a batch a measure must not be taken for what that one needs. */
export const asWritten = (measures: string): string => `${measures} as written`

/** Kinds of the larder that are counted as well as weighed. */
const inPieces = new Set(['egg', 'nut', 'dried fruit', 'vegetable'])
const mostPieces = 24 // of something nobody knows

/** What a bare number is: of what is counted, that many; of flour, water and salt, grams. */
const bareUnitOf =
  (name: string, known: Ingredient | undefined): BareUnit =>
  value => {
    const kind = known?.countsAs.kind ?? guessCountsAs(name) ?? 'other'
    const weighed = known ? !known.each && !inPieces.has(known.kind) : kind !== 'other' || value > mostPieces
    return weighed ? 'g' : 'each'
  }

const fats = /butter|margarine|shortening|beurre/i

/** Only butter comes in sticks of a known weight: cinnamon does too. */
const withPieces = (quantity: RowQuantity, name: string): RowQuantity => {
  const [{ number, unit }] = quantity.terms
  return unit?.kind === 'unit' && unit.unit === 'stick' && !fats.test(name)
    ? { ...quantity, terms: [{ number, unit: { kind: 'each', word: 'stick' } }] }
    : quantity
}

/** What is to be said of a guess, if it is to be said of this amount. */
function reasonOf(
  guess: AmountGuess,
  typed: string,
  figure: Figure,
  quantity: RowQuantity,
  sure: boolean,
): LineReason[] {
  const unit = quantity.terms[0].unit
  switch (guess.code) {
    case 'two readings':
      return [{ code: 'two readings', typed, read: figure.text }]
    case 'range':
      return [{ code: 'range', typed, read: guess.read }]
    case 'times':
      return [{ code: 'times', typed, times: guess.times, one: guess.one }]
    case 'converted':
      return [{ code: 'converted', read: guess.read }]
    case 'letter':
      return sure ? [] : [{ code: 'letter', unit: unit?.kind === 'unit' ? unit.unit : '' }]
    case 'unknown measure':
      return []
    default:
      return [
        {
          code: guess.code,
          unit: unit?.kind === 'unit' ? unit.unit : '',
          number: guess.number,
          read: guess.read,
        },
      ]
  }
}

/** A quantity as Tarebook writes it. `typed` is its text in the recipe, `name` the ingredient's. */
export function amountOf(written: RowQuantity, typed: string, name: string, larder: Larder): AmountRead {
  const { share, about } = written
  const none = { text: '', value: 0, unit: '', rank: 0 }
  if (share !== undefined)
    return {
      ...none,
      reasons: [],
      note: [about.join(' '), share === 1 ? '' : typed].filter(Boolean).join(' '),
    }
  const known = ingredientNamed(larder, name)
  const quantity = withPieces(written, name)
  const figure = figureOf(quantity, bareUnitOf(name, known))
  if (figure.unit === '') return { ...none, reasons: [{ code: 'unknown measure', typed }], note: typed }
  const reasons = figure.guesses.flatMap(guess =>
    reasonOf(guess, typed, figure, quantity, known !== undefined),
  )
  const isBare = quantity.terms[0].unit === undefined
  if (isBare && figure.unit === 'g') reasons.unshift({ code: 'no unit', read: figure.text })
  return {
    text: figure.text,
    reasons,
    note: quantity.upTo ? asWritten(typed) : about.join(' '),
    rank: isBare ? rankOf('each') : rankOf(figure.unit),
    value: figure.value,
    unit: figure.unit,
  }
}

/** So many times an amount. */
export const multiplied = (amount: AmountRead, times: number): AmountRead => ({
  ...amount,
  value: amount.value * times,
  text: amountText(numberText(amount.value * times), amount.unit),
})

/** What an amount weighs by the larder, in grams. */
function gramsOf(
  { unit, value }: AmountRead,
  name: string,
  larder: Larder,
): { grams: number; by?: string } | undefined {
  if (isIn(weightUnits, unit)) return { grams: value * weightUnits[unit] }
  const own = ingredientNamed(larder, name)
  const likely = own ?? (guessCountsAs(name) === 'flour' ? larder.find('All-purpose flour') : undefined)
  if (!likely || unit === '' || unit === '%') return undefined
  const one = gramsPerMeasure(likely, unit as Measure)
  return one === undefined ? undefined : { grams: one * value, by: likely.name }
}

/** What two measures of one thing may differ by and still say the same, in per cent. */
const agreement = 1

/** How an amount given besides the one that is taken compares with it. */
export function compared(
  taken: AmountRead,
  other: AmountRead,
  typed: string,
  name: string,
  larder: Larder,
): Comparison {
  const plain = { code: 'also given' as const, typed, taken: taken.text, agrees: false }
  if (taken.unit === '' || other.unit === '' || other.unit === '%') return plain
  const volumes = isIn(millilitres, taken.unit) && isIn(millilitres, other.unit)
  const sizes = volumes
    ? [taken, other].map(({ value, unit }) => ({
        grams: value * millilitres[unit as keyof typeof millilitres],
        by: undefined,
      }))
    : [taken, other].map(amount => gramsOf(amount, name, larder))
  const [here, there] = sizes
  if (!here || !there || !(here.grams > 0)) return { ...plain, unknown: true }
  const more = (there.grams / here.grams - 1) * 100
  const weighs = there.by === undefined ? {} : { grams: there.grams, by: there.by }
  return { ...plain, ...weighs, more, agrees: Math.abs(more) <= agreement }
}
