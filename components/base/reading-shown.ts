import type { ReadingName } from '../../src/dough/document/reading-names.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import {
  gramDigits,
  type NumberStyle,
  percentDigits,
  showDecimals,
  showGrams,
  showPercent,
} from './numbers.js'
import { showNumber } from './typed-numbers.js'

/** How a reading is called on the screen, and what it is counted in. */
export interface ReadingWords {
  readonly name: string
  readonly unit: '%' | 'g'
  readonly means: string // in one breath, for the tally's title
}

export const readingWords: Readonly<Record<ReadingName, ReadingWords>> = {
  trueHydration: {
    name: 'True hydration',
    unit: '%',
    means: 'All water over all flour, what starters carry included',
  },
  listedHydration: {
    name: 'Listed hydration',
    unit: '%',
    means: 'The final dough’s water lines over its flour lines',
  },
  moistureHydration: {
    name: 'Moisture hydration',
    unit: '%',
    means: 'The water in every ingredient but flour, over all flour',
  },
  salt: { name: 'Salt', unit: '%', means: 'All salt over all flour' },
  prefermentedFlour: { name: 'Prefermented flour', unit: '%', means: 'Flour that fermented before the mix' },
  levainOnFlour: {
    name: 'Levain on flour',
    unit: '%',
    means: 'Fermenting stages and starters over the final dough’s flour lines',
  },
  totalFlour: { name: 'Total flour', unit: 'g', means: 'All flour, what starters carry included' },
  totalWater: { name: 'Total water', unit: 'g', means: 'All water, what starters carry included' },
  doughWeight: { name: 'Dough weight', unit: 'g', means: 'Everything in the final dough' },
  fat: { name: 'Fat', unit: '%', means: 'Fat in every ingredient, over all flour' },
  sugar: { name: 'Sugar', unit: '%', means: 'Sugar in every ingredient, over all flour' },
  egg: { name: 'Egg', unit: '%', means: 'Egg over all flour' },
  milk: { name: 'Milk', unit: '%', means: 'Milk over all flour' },
}

/** A reading as the screen shows it, without its unit: `70.5`, `1,921`. */
export const showReading = (name: ReadingName, value: number, style: NumberStyle): string =>
  readingWords[name].unit === '%' ? showPercent(value, style) : showGrams(value, style)

/** The name within a sentence: `true hydration`. */
export const readingInSentence = (name: ReadingName): string => readingWords[name].name.toLowerCase()

/** A value as the baker would type it, rounded as the screen shows it: `70.5`, `1921`. */
export function readingToType(name: ReadingName, value: number, style: NumberStyle): string {
  const isPercent = readingWords[name].unit === '%'
  const digits = isPercent ? percentDigits(value) : gramDigits(value)
  return showNumber(Number((isPercent ? value * 100 : value).toFixed(digits)), style)
}

/** A value that a reading is held at, as it was typed: `75`, `2082.5`. */
export const heldToType = (name: ReadingName, value: number, style: NumberStyle): string =>
  showNumber(readingWords[name].unit === '%' ? value * 100 : value, style)

/** The reading of the batch as it is weighed, where a batch is made and that is not what is written. */
export function showWeighed(sheet: FigureSheet, name: ReadingName, style: NumberStyle): string | undefined {
  const { make } = sheet.formula.batch ?? { make: 'as written' }
  const [written, weighed] = [
    sheet.reading(name),
    make === 'as written' ? undefined : sheet.weighedReading(name),
  ]
  if (written === undefined || weighed === undefined) return undefined
  const shown = showReading(name, weighed, style)
  return shown === showReading(name, written, style) ? undefined : shown
}

/** `58–85 %`: a usual range in words. */
export function showRange([from, to]: readonly [number, number], style: NumberStyle): string {
  const plain = (x: number) => showDecimals(x * 100, style, 1, 0)
  return `${plain(from)}–${plain(to)}\u00a0%`
}
