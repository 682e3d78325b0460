import type { ReadingName } from '../../src/dough/document/reading-names.js'

/** How a reading is called on the screen, and what it means in one breath. */
export interface ReadingWords {
  readonly name: string
  readonly means: string
}

export const readingWords: Readonly<Record<ReadingName, ReadingWords>> = {
  trueHydration: {
    name: 'True hydration',
    means: 'All water over all flour, what starters carry included',
  },
  listedHydration: {
    name: 'Listed hydration',
    means: 'The final dough’s water lines over its flour lines',
  },
  moistureHydration: {
    name: 'Moisture hydration',
    means: 'The water in every ingredient but flour, over all flour',
  },
  hydrationWithoutSoakers: {
    name: 'Without soakers',
    means: 'All water but that of soakers, over all flour',
  },
  salt: { name: 'Salt', means: 'All salt over all flour' },
  prefermentedFlour: { name: 'Prefermented flour', means: 'Flour that fermented before the mix' },
  levainOnFlour: {
    name: 'Levain on flour',
    means: 'Fermenting stages and starters over the final dough’s flour lines',
  },
  totalFlour: { name: 'Total flour', means: 'All flour, what starters carry included' },
  totalWater: { name: 'Total water', means: 'All water, what starters carry included' },
  doughWeight: { name: 'Dough weight', means: 'Everything in the final dough' },
  fat: { name: 'Fat', means: 'Fat in every ingredient, over all flour' },
  sugar: { name: 'Sugar', means: 'Sugar in every ingredient, over all flour' },
  egg: { name: 'Egg', means: 'Egg over all flour' },
  milk: { name: 'Milk', means: 'Milk over all flour' },
}

/** The name within a sentence: `true hydration`. */
export const readingInSentence = (name: ReadingName): string => readingWords[name].name.toLowerCase()

/** Where something that is fetched when it is wanted is not there. */
export const partNotFetched =
  'This part of Tarebook could not be fetched. Connect to the network and try again.'
