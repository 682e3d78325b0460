import { type Field, number, readFields, text } from '../data/fields.js'
import type { Ingredient } from '../document/larder.js'

const part: Field = { read: number(0), must: true }
const maybe: Field = { read: number(0) }
const ignore = () => {}

/** What is in a gram, in data of which nothing is known; undefined where it does not say all that a label wants. */
const composition = (value: unknown) =>
  readFields(
    value,
    {
      fat: part,
      saturates: maybe,
      carbohydrate: part,
      sugars: maybe,
      fibre: part,
      protein: part,
      salt: part,
    },
    ignore,
  )

const known = new WeakMap<Ingredient, Ingredient>()

/**
 * An ingredient with what its own label says, as far as that can be used. A page that edits formulas takes these two fields in unread: they
 * are read here, where they are wanted.
 */
export function withOwnLabel(ingredient: Ingredient): Ingredient {
  if (!ingredient.madeOf && !ingredient.composition) return ingredient
  const before = known.get(ingredient)
  if (before) return before
  const read = readFields(ingredient, { madeOf: { read: text }, composition: { read: composition } }, ignore)
  const made = read as unknown as Ingredient
  known.set(ingredient, made)
  return made
}
