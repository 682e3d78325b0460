import type { ReadingName } from '../src/dough/figures.js'
import { type NumberStyle, showGrams, showPercent } from './numbers.js'

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

/** `58–85 %`: a usual range in words. */
export function showRange([from, to]: readonly [number, number], style: NumberStyle): string {
  const plain = new Intl.NumberFormat(style.language, { maximumFractionDigits: 1 })
  return `${plain.format(from * 100)}–${plain.format(to * 100)}\u00a0%`
}
