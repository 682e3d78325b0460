import type { Measure } from './measures.js'

/** Grams in a weight unit. The pound is 453.59237 g exactly (international avoirdupois). */
export const weightUnits = { g: 1, kg: 1000, oz: 28.349523125, lb: 453.59237 } as const

export type WeightUnit = keyof typeof weightUnits

const spellings: Readonly<Record<WeightUnit | Measure, string>> = {
  g: 'g gr gram grams gramme grammes',
  kg: 'kg kilo kilos kilogram kilograms',
  oz: 'oz ounce ounces',
  lb: 'lb lbs pound pounds',
  ml: 'ml millilitre millilitres milliliter milliliters',
  l: 'l litre litres liter liters',
  tsp: 'tsp teaspoon teaspoons',
  tbsp: 'tbsp tablespoon tablespoons',
  'fl oz': 'floz',
  cup: 'cup cups',
  each: 'each',
}

/** Every accepted spelling of a unit → the unit. */
export const unitWords: ReadonlyMap<string, string> = new Map([
  ...Object.entries(spellings).flatMap(([unit, words]) => words.split(' ').map(w => [w, unit] as const)),
  ['fl oz', 'fl oz'],
  ['fl. oz', 'fl oz'],
])
