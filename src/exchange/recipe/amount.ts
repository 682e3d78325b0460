import { amountText, type BareUnit, figureOf } from '../../dough/amounts/figures.js'
import { gramsPerMeasure } from '../../dough/amounts/measures.js'
import { type Measure, millilitres, weightUnits } from '../../dough/amounts/units.js'
import { numberText } from '../../dough/amounts/written-numbers.js'
import type { Ingredient, Larder } from '../../dough/document/larder.js'
import { guessCountsAs } from '../../dough/larder/counts-as-guess.js'
import { ingredientNamed } from './names.js'
import type { RowQuantity } from './portions.js'
import type { Comparison, LineReason } from './reasons.js'

/** An amount of an ingredient, as it is written in a row. */
export interface Taken {
  readonly quantity: RowQuantity
  readonly typed: string
  readonly ofEach: boolean // of each of those that are counted
  readonly isBefore: boolean // a parenthesis follows: `2 (400 g) tins`
}

/** What the amounts of one ingredient come to. */
export interface Settled {
  readonly amount: string // as Tarebook writes it; '' where it has to be asked for
  readonly share?: number | 'rest' // of an earlier stage
  readonly guesses: readonly LineReason[]
  readonly said: readonly LineReason[] // what needs no confirming
  readonly notes: readonly string[] // what the amount loses: the range, the handful, another measure
}

/** One of them by itself. */
interface Read extends Taken {
  readonly text: string
  readonly reasons: readonly LineReason[]
  readonly note: string
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
const asWritten = (measures: string): string => `${measures} as written`

/** Kinds of the larder that are counted as well as weighed. */
const inPieces = new Set(['egg', 'nut', 'dried fruit', 'vegetable'])
const mostPieces = 24 // of something nobody knows

/** What a bare number is: of what is counted, that many; of flour, water and salt, grams. */
const bareUnitOf =
  (name: string, known: Ingredient | undefined): BareUnit =>
  value => {
    const kind = known?.countsAs.kind ?? guessCountsAs(name) ?? 'other'
    const isWeighed = known
      ? !known.each && !inPieces.has(known.kind)
      : kind !== 'other' || value > mostPieces
    return isWeighed ? 'g' : 'each'
  }

const fats = /butter|margarine|shortening|beurre/i

/** An amount as Tarebook writes it, of an ingredient of this name. */
function readOf(taken: Taken, name: string, larder: Larder): Read {
  const { quantity, typed } = taken
  const { share, about, terms, upTo } = quantity
  const [{ number, unit }] = terms
  const none = {
    ...taken,
    text: '',
    value: 0,
    unit: '',
    rank: 0,
    reasons: [],
    note: share === 1 ? '' : typed,
  }
  if (share !== undefined) return none
  const known = ingredientNamed(larder, name)
  // only butter comes in sticks of a known weight: cinnamon does too
  const isStick = unit?.kind === 'unit' && unit.unit === 'stick' && !fats.test(name)
  const counted = isStick ? { ...quantity, terms: [{ number, unit: undefined }] as const } : quantity
  const figure = figureOf(counted, isStick ? () => 'each' : bareUnitOf(name, known))
  if (figure.unit === '') return { ...none, reasons: [{ code: 'nobodyKnows', typed }] }
  const of = unit?.kind === 'unit' ? unit.unit : ''
  const reasons = figure.guesses
    .filter(({ code }) => code !== 'letter' || !known)
    .map((guess): LineReason => ({ ...guess, typed, number: number.value, unit: of, read: figure.text }))
  if (!unit && figure.unit === 'g') reasons.unshift({ code: 'noUnit', read: figure.text })
  return {
    ...taken,
    ...{ text: figure.text, value: figure.value, unit: figure.unit, reasons },
    note: upTo ? asWritten(typed) : about.join(' '),
    rank: rankOf(unit ? figure.unit : 'each'),
  }
}

/** What an amount weighs by the larder, in grams. */
function gramsOf(
  { unit, value }: Read,
  name: string,
  larder: Larder,
): { grams: number; by?: string } | undefined {
  if (isIn(weightUnits, unit)) return { grams: value * weightUnits[unit] }
  const own = ingredientNamed(larder, name)
  const likely = own ?? (guessCountsAs(name) === 'flour' ? larder.find('All-purpose flour') : undefined)
  const one = likely && gramsPerMeasure(likely, unit as Measure)
  return one === undefined ? undefined : { grams: one * value, by: likely!.name }
}

/** What two measures of one thing may differ by and still say the same, in per cent. */
const agreement = 1

/** How an amount given besides the one that is taken compares with it. */
function compared(taken: Read, other: Read, name: string, larder: Larder): Comparison {
  const plain = { code: 'alsoGiven' as const, typed: other.typed, taken: taken.text, agrees: false }
  if (taken.unit === '' || taken.unit === '%') return plain
  const isVolume = isIn(millilitres, taken.unit) && isIn(millilitres, other.unit)
  const sizeOf = (read: Read) =>
    isVolume
      ? { grams: read.value * millilitres[read.unit as keyof typeof millilitres], by: undefined }
      : gramsOf(read, name, larder)
  const [here, there] = [sizeOf(taken), sizeOf(other)]
  if (!here || !there || !(here.grams > 0)) return { ...plain, unknown: true }
  const more = (there.grams / here.grams - 1) * 100
  const weighs = there.by === undefined ? {} : { grams: there.grams, by: there.by }
  return { ...plain, ...weighs, more, agrees: Math.abs(more) <= agreement }
}

/** The amount of highest rank, with what there is to say about the others. */
export function settle(all: readonly Taken[], name: string, larder: Larder): Settled {
  const reads = all.map(taken => readOf(taken, name, larder))
  const best = reads.toSorted((a, b) => b.rank - a.rank)[0]
  if (!best) return { amount: '', guesses: [], said: [], notes: [] }
  const { text, value, unit, quantity } = best
  const share = quantity.share === undefined ? {} : { share: quantity.share }
  const count = reads.find(r => r !== best && r.rank <= 2 && !r.quantity.upTo)
  const pieces = count?.quantity.terms[0].number.value ?? 1
  const isBare = count !== undefined && count.quantity.terms[0].unit === undefined
  const notes = [best.note]
  if (count && pieces !== 1 && (best.ofEach || (isBare && count.isBefore))) {
    const amount = amountText(numberText(value * pieces), unit)
    const ofEach: LineReason = { code: 'ofEach', count: count.typed, one: best.typed, read: amount }
    return { amount, guesses: [...best.reasons, ofEach], said: [], notes: [...notes, count.typed] }
  }
  const others = reads.filter(
    r => r !== best && !(r === count && isBare && pieces === 1) && r.quantity.share !== 1,
  )
  const measures = others.filter(r => r.unit !== '' && r.unit !== '%')
  const comparisons = measures.map(other => compared(best, other, name, larder))
  const together = others
    .filter(r => r.unit === '' && pieces !== 1)
    .map(({ typed }): LineReason => ({ code: 'ofAllTogether', count: typed, one: best.typed }))
  notes.push(...others.filter(r => !measures.includes(r)).map(r => r.typed))
  if (measures.length > 0) notes.push(asWritten(measures.map(r => r.typed).join(', ')))
  return {
    ...{ amount: text, ...share, notes },
    guesses: [...best.reasons, ...together, ...comparisons.filter(c => !c.agrees)],
    said: comparisons.filter(c => c.agrees),
  }
}
