import type { EachMakes } from '../../src/dough/about/class-batch.js'

/** Of the bar above the pages. */
export const handoutBarWords = {
  heading: 'Class',
  people: 'People',
  peopleFor: 'How many people',
  notPeople: (typed: string): string =>
    `“${typed}” is not a number of people. Write a whole number from 1 to 999.`,
  makes: 'Each makes',
  shareOfDay: 'a share of what the day makes',
  state: (bread: string): string => bread,
  asItIs: 'as it is now',
} as const

export const makesWords: Readonly<Record<EachMakes, string>> = {
  piece: 'one piece, where it is in pieces',
  batch: 'the whole batch',
  share: 'a share of the batch',
}

/** Of the pages themselves. */
export const handoutWords = {
  name: 'Handout',
  people: (count: number): string => (count === 1 ? 'For one person' : `For ${count} people`),
  breads: 'Breads',
  bread: 'Bread',
  all: (count: number): string => (count === 1 ? 'In all' : `All ${count}`),
  each: 'Each',
  inGrams: (who: string): string => `${who}, g`,
  ingredient: 'Ingredient',
  measure: 'Each, without a scale',
  percent: '%',
  sum: 'Total',
  dough: (batch: string, weight: string): string => `${batch}, ${weight} of dough`,
  onlyDough: (weight: string): string => `${weight} of dough`,
  ofThem: (name: string, state: string): string => `${name}: ${state}`,
  again: (name: string): string => `${name}, continued`,
  readings: 'Readings',
  method: 'Method',
  keepInMind: 'To keep in mind',
  weighIt: 'weigh it',
  inBreads: (names: readonly string[]): string => ` (${names.join(', ')})`,
} as const
