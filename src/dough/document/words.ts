import type { Dimension } from '../../engine/index.js'
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
  hydrationWithoutSoakers: 'hydration without soakers',
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
  if (hold.reading === 'wholeDough') return `${ingredient} ${at} ${heldValue(hold)} of all flour`
  return `${readingWords[hold.reading]} ${at} ${heldValue(hold)}`
}

/** The value that a reading is held at, in a sentence. */
export const heldValue = ({ reading, value }: Hold): string =>
  isWeightReading(reading) ? grams(value) : per100(value)

/** A number to fifteen digits, so that 0.1 + 0.2 reads 0.3. */
export const tidy = (value: number): number => Number(value.toPrecision(15))

/** A value as a sentence says it: a weight, a plain number, or yes and no. */
export function measured(value: number | undefined, dimension: Dimension): string {
  if (value === undefined) return '–'
  if (dimension === 'truth') return value ? 'yes' : 'no'
  return dimension === 'weight' ? grams(value) : plainNumber(value)
}

// Notes are read again: these are the same in every language.
const notConfirmed = 'Not confirmed: '
const byNoLine = 'added, as no line took it'
const mark = new RegExp(`(?:\\. )?${notConfirmed}(?:read from “[^”]*”|${byNoLine})`)
const longest = 120 // signs of what is quoted in a note

/** The note of a line that was guessed, and by nobody confirmed, with what it was read from; '' for what no row says. */
export function unconfirmedNote(note: string, source: string): string {
  const text = source.trim().replace(/\s+/g, ' ').replace(/[“”]/g, '"')
  const quoted = text.length > longest ? `${text.slice(0, longest)}…` : text
  const said = `${notConfirmed}${quoted ? `read from “${quoted}”` : byNoLine}`
  return note ? `${note.replace(/[.;]$/, '')}. ${said}` : said
}

/** Whether the note of a line says that nobody has confirmed it. */
export const isUnconfirmed = (note: string): boolean => note.includes(notConfirmed) && mark.test(note)

/** The note of a line that is confirmed, with all else that it says. */
export const confirmedNote = (note: string): string =>
  isUnconfirmed(note) ? note.replace(mark, '').replace(/^[\s.;]+/, '') : note
