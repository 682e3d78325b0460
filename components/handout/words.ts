import type { EachMakes } from '../../src/dough/about/class-batch.js'

/** Of the bar above the pages. */
export const handoutBarWords = {
  heading: 'Class',
  people: 'People',
  peopleFor: 'How many people',
  notPeople: (typed: string): string =>
    `“${typed}” is not a number of people. Write a whole number from 1 to 999.`,
  makes: 'Each makes',
  sharedAmong: (made: number, people: number): string =>
    `The day makes for ${made}. For ${people === 1 ? 'one person' : `${people} people`} the same dough is shared out.`,
  makeFor: (people: number): string => `Make for ${people} instead`,
  madeFor: (people: number): string => `The day makes for ${people} now.`,
  shareOfDay: 'a share of what the day makes',
  state: (bread: string): string => bread,
  asItIs: 'as it is now',
} as const

export const makesWords: Readonly<Record<EachMakes | 'pieces' | 'pieceOrBatch', string>> = {
  piece: 'one piece',
  pieces: 'one piece of each bread',
  pieceOrBatch: 'one piece, or else the whole batch',
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
  fromDough: (batch: string, weight: string): string => `${batch} from ${weight} of dough`,
  onlyDough: (weight: string): string => `${weight} of dough`,
  ofThem: (name: string, state: string): string => `${name}: ${state}`,
  again: (name: string): string => `${name}, continued`,
  readings: 'Readings',
  method: 'Method',
  before: 'Before you bake: safety and allergens',
  asWeighed: (count: number, steps: string): string =>
    `${count === 1 ? 'As weighed' : `All ${count}, as weighed`} in steps of ${steps}:`,
  sizes: (count: number, each: string, all: string): string =>
    count === 1 ? each : `Each: ${each} · All ${count}: ${all}`,
  allergens: 'Allergens',
  ofList: (list: string): string => `, of ${list}:`,
  inIngredients: (ingredients: readonly string[]): string => ` in ${ingredients.join(', ')}`,
  noneKnown: 'none that is known of its ingredients',
  noClearance:
    'No more than this is known of the ingredients, and it does not say that a bread suits anybody with an allergy. A starter carries the flour it is fed with, and flour dust settles everywhere. What the packets say and local food law decide.',
  weighIt: 'weigh it',
  inBreads: (names: readonly string[]): string => ` (${names.join(', ')})`,
} as const
