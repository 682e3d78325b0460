import { type Dimension, type Sentences, wording } from '../../engine/index.js'
import type { Batch } from './batch.js'
import type { Hold } from './formula.js'
import type { ReadingName } from './reading-names.js'

let numbersIn = 'en-GB'
const formats = new Map<number, Intl.NumberFormat>()

/** Sets the language whose decimal and thousands signs sentences use, for the whole program; at start-up. */
export function sayNumbersIn(language: string): void {
  numbersIn = language
  formats.clear()
}

function said(value: number, digits: number): string {
  let format = formats.get(digits)
  if (!format) {
    format = new Intl.NumberFormat(numbersIn, { maximumFractionDigits: digits })
    formats.set(digits, format)
  }
  return format.format(value)
}

/** A weight in a sentence: at most one decimal from 10 g on, two below. */
export const grams = (weight: number): string => `${said(weight, Math.abs(weight) >= 9.995 ? 1 : 2)} g`

/** A fraction of 1 in a sentence: `97 %`, `1.88 %`. */
export const per100 = (fraction: number): string =>
  `${said(fraction * 100, Math.abs(fraction) >= 0.09995 ? 1 : 2)} %`

/** A plain number in a sentence, four significant digits at least. */
export const plainNumber = (value: number): string =>
  said(value, Math.abs(value) >= 100 ? 1 : Math.abs(value) >= 1 ? 4 : 6)

/** Readings in a sentence. */
export const readingWords: Readonly<Record<ReadingName, string>> = {
  trueHydration: 'true hydration',
  listedHydration: 'listed hydration',
  moistureHydration: 'moisture hydration',
  salt: 'salt',
  prefermentedFlour: 'prefermented flour',
  levainOnFlour: 'levain on flour',
  totalFlour: 'total flour',
  totalWater: 'total water',
  doughWeight: 'dough weight',
  fat: 'fat',
  sugar: 'sugar',
  egg: 'egg',
  milk: 'milk',
}

/** Readings that are weights in grams; all others are fractions of 1. */
export const isWeightReading = (reading: string): boolean =>
  reading === 'totalFlour' || reading === 'totalWater' || reading === 'doughWeight'

/** `true hydration held at 75 %`, `water held at 78 % of all flour`. */
export function holdWords(hold: Hold, ingredient: string, at = 'held at'): string {
  if (hold.reading === 'wholeDough') return `${ingredient} ${at} ${per100(hold.value)} of all flour`
  const value = isWeightReading(hold.reading) ? grams(hold.value) : per100(hold.value)
  return `${readingWords[hold.reading]} ${at} ${value}`
}

/** A number to fifteen digits, so that 0.1 + 0.2 reads 0.3. */
export const tidy = (value: number): number => Number(value.toPrecision(15))

/** A batch in a few words: `6 × 900 g`, `5,400 g of dough`, `all of 310 g levain`. `weigh` says a weight, rounded unless otherwise said. */
export function batchWords(batch: Batch, weigh = grams): string {
  switch (batch.make) {
    case 'as written':
      return 'as written'
    case 'pieces':
    case 'baked pieces': {
      const pieces = batch.pieces.map(p => `${p.count} × ${weigh(p.weight)}`).join(' + ')
      return batch.make === 'baked pieces' ? `${pieces} baked` : pieces
    }
    case 'dough':
      return `${weigh(batch.grams)} of dough`
    case 'flour':
      return `from ${weigh(batch.grams)} of flour`
    case 'all of':
      return `all of ${weigh(batch.grams)} ${batch.ingredient}`
    case 'factor':
      return `${tidy(batch.factor)} times as written`
  }
}

/** A value as a sentence says it: a weight, a plain number, or yes and no. */
export function measured(value: number | undefined, dimension: Dimension): string {
  if (value === undefined) return '–'
  if (dimension === 'truth') return value ? 'yes' : 'no'
  return dimension === 'weight' ? grams(value) : plainNumber(value)
}

/** What a batch, a scale or a stage cannot be. */
export interface DocumentDiagnostic {
  readonly code:
    | 'scaleStepNotAboveZero'
    | 'fineBelowNegative'
    | 'lossOutOfRange'
    | 'piecesNotAboveZero'
    | 'factorNotAboveZero'
    | 'allOfNothing'
    | 'batchNotAboveZero'
}

export const documentSentences: Sentences<DocumentDiagnostic> = {
  scaleStepNotAboveZero: 'The steps of a scale are numbers of grams above 0.',
  fineBelowNegative: 'The fine step is for weights below a number of grams, or below 0 for none.',
  lossOutOfRange: 'A loss is a percentage from 0 to below 100.',
  piecesNotAboveZero: 'Pieces are a number above 0 times a weight above 0.',
  factorNotAboveZero: 'A factor is a number above 0.',
  allOfNothing: 'Say of which ingredient all is to be made.',
  batchNotAboveZero: 'The weight to make is a number of grams above 0.',
}

/** A diagnostic of a document's parts with its sentence. */
export const documentProblem = wording(documentSentences)
