import { tidy } from '../../dough/document/words.js'
import { type WeightUnit, weightUnits } from '../../dough/lexicon/units.js'

const unit = Object.keys(weightUnits).join('|')
/** A plain number, as amounts hold it once their decimal marks are points. */
export const number = String.raw`(?:\d+(?:\.\d+)?|\.\d+)(?:e[+-]?\d+)?`
/** A weight with its unit, or grams without one: two groups. */
export const weight = String.raw`(${number})\s*(${unit})?`

/** Grams of the two groups of `weight`. */
export const gramsOf = (digits: string | undefined, unit: string | undefined): number =>
  Number(digits) * weightUnits[(unit?.toLowerCase() ?? 'g') as WeightUnit]

/** `1234.5 g`, to fifteen digits. */
export const gramsText = (grams: number): string => `${tidy(grams)} g`

/** The grams of `50 g`, `1.2 kg` or `50`; undefined for anything else. */
export function readGrams(text: string): number | undefined {
  const [, digits, unit] = new RegExp(`^\\s*${weight}\\s*$`, 'i').exec(text) ?? []
  return digits === undefined ? undefined : gramsOf(digits, unit)
}

/** `2.5%` for 0.025, to fifteen digits. */
export const percentText = (fraction: number): string => `${tidy(fraction * 100)}%`

/** The fraction of 1 of `2.5%`; undefined for anything else, a bare number included: it could be either. */
export function readPercent(text: string): number | undefined {
  const digits = new RegExp(`^\\s*(${number})\\s*%\\s*$`, 'i').exec(text)?.[1]
  if (digits === undefined) return undefined
  const [plain, power = '0'] = digits.toLowerCase().split('e')
  return Number(`${plain}e${Number(power) - 2}`) // 1.88% is 0.0188 to the last digit
}

/** The sum of all; undefined where one is not known. */
export function sumOf(values: readonly (number | undefined)[]): number | undefined {
  let sum = 0
  for (const value of values) {
    if (value === undefined) return undefined
    sum += value
  }
  return sum
}

/** Whether a difference is no more than this, as far as binary fractions tell. */
export const isWithin = (difference: number, most: number): boolean =>
  Math.abs(difference) <= most * (1 + 1e-9) + 1e-9

const units = {
  g: 'g|gr|grams?|grammes?|gramm',
  kg: 'kg|kilos?|kilograms?|kilogrammes?|kilogramm',
  oz: 'oz|ounces?|onces?',
  lb: 'lbs?|pounds?',
} as const
/** A weight that a text says its bare numbers are of. */
export type SaidUnit = keyof typeof units
const anyUnit = Object.values(units).join('|')
const unitWords = Object.entries(units).map(
  ([unit, words]) => [unit as SaidUnit, new RegExp(`^(?:${words})$`, 'i')] as const,
)

/** The weight a word is, if it is one. */
export const unitWord = (word: string): SaidUnit | undefined =>
  unitWords.find(([, words]) => words.test(word))?.[0]

/** `all in grams`, `weights are grams`, `tout en g`. */
const inWords = new RegExp(
  `(?<!\\p{L})(?:all|everything|weights?|amounts?|quantities|measures|tout|toutes|poids|quantités)(?: (?:weights?|amounts?|quantities|is|are|est|sont))?(?: (?:in|en))? (${anyUnit})(?![\\p{L}’'])`,
  'iu',
)
/** `Ingredients (g)`, `Mill white (in kg)`. */
const inBrackets = new RegExp(`\\((?:in |en |all |all in |tout en )?(${anyUnit})\\)\\s*:?\\s*$`, 'iu')

/** The unit that a row of text says bare numbers have. */
export const unitSaid = (text: string): SaidUnit | undefined =>
  unitWord((inWords.exec(text) ?? inBrackets.exec(text))?.[1] ?? '')
