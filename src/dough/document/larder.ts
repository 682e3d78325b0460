import { type CountsAs, nameKey } from './formula.js'

/** The public allergen lists a larder ingredient is mapped to: information, never a clearance. */
export interface Allergens {
  readonly us: readonly string[] // the nine major allergens of US law
  readonly eu: readonly string[] // the fourteen of EU Annex II
  readonly canada: readonly string[] // Canada's priority allergens and gluten sources
}

/** Whether no list has an entry. */
export const isUnlisted = ({ us, eu, canada }: Allergens): boolean =>
  us.length + eu.length + canada.length === 0

/** What a gram of an ingredient holds, gram a gram, as its supplier prints it. */
export interface Composition {
  readonly fat: number
  readonly saturates?: number // left out: not known
  readonly carbohydrate: number // fibre is not in it
  readonly sugars?: number // left out: not known
  readonly fibre: number
  readonly protein: number
  readonly salt: number // sodium × 2.5
}

/** One ingredient known: what a gram of it brings and what household measures of it weigh. */
export interface Ingredient {
  readonly id: string
  readonly name: string
  readonly otherNames: readonly string[]
  readonly kind: string // flour, water, salt, starter, yeast, dairy, egg, fat, sugar, seed, nut, …
  readonly countsAs: CountsAs
  readonly moisture: number // gram of water a gram, but 0 for flour: trade convention leaves its own moisture out
  readonly fat: number // gram a gram; likewise below
  readonly sugar: number
  readonly protein: number
  readonly salt: number // salt that counts as salt in the dough: salt itself 1, salted butter 0.016
  readonly density?: number // grams a millilitre
  readonly tsp?: number // grams a US teaspoon, where measured; otherwise from density
  readonly tbsp?: number
  readonly cup?: number // grams a US cup
  readonly each?: number // grams apiece, shelled
  readonly pack?: number // grams in a pack, as it is bought
  readonly price?: number // of such a pack, in the workbook's currency; 0: it costs nothing
  readonly supplier?: string // whose it is, as typed
  readonly stock?: number // grams there are; left out: nobody counts them
  readonly allergens?: Allergens // left out: nobody has said, so they are not known; all lists empty: none of them
  readonly noneListed?: true // the baker said so of an own ingredient whose lists are all empty
  readonly madeOf?: string // of a bought one that has ingredients of its own: these, as its label says them
  readonly composition?: Composition // as its supplier prints it; left out: that of the usual one, if there is any
  readonly note: string // doubt or source a baker should know
}

/** The ingredients known, found by any of their names. */
export interface Larder {
  readonly ingredients: readonly Ingredient[]
  find(name: string): Ingredient | undefined
}

const known = new WeakMap<readonly Ingredient[], Larder>()

/** A larder of these ingredients; of two with one name the later wins, so a baker's own come last. */
export function larderOf(ingredients: readonly Ingredient[]): Larder {
  const made = known.get(ingredients) ?? newLarder(ingredients)
  known.set(ingredients, made)
  return made
}

function newLarder(ingredients: readonly Ingredient[]): Larder {
  const byName = new Map<string, Ingredient>()
  const byId = new Map<string, Ingredient>()
  for (const ingredient of ingredients) byId.set(ingredient.id, ingredient)
  const all = [...byId.values()]
  for (const i of all) for (const name of i.otherNames) byName.set(nameKey(name), i)
  for (const i of all) byName.set(nameKey(i.name), i)
  return { ingredients: all, find: name => byName.get(nameKey(name)) }
}
