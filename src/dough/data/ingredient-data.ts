import { newId } from '../document/formula.js'
import type { Ingredient } from '../document/larder.js'
import { type Field, number, readFields, type Tell, text, texts } from './fields.js'
import { countsAs } from './formula-data.js'

const share: Field = { read: number(0), usual: () => 0 } // gram a gram
const weight: Field = { read: number(0, { above: true }) } // grams
const part: Field = { read: number(0), must: true }
const maybe: Field = { read: number(0) }

/**
 * An ingredient of a larder in data of which nothing is known, field by field; undefined where it is none. Without
 * allergens, or where a list of them is damaged, they are not known; nothing is put in their place.
 */
export function readIngredientData(value: unknown, tell: Tell): Ingredient | undefined {
  const entries: Field = { read: texts, must: true }
  return readFields(
    value,
    {
      id: {
        read: id => (typeof id === 'string' && id !== '' && id.length <= 200 ? id : newId()),
        usual: newId,
      },
      name: { read: text, must: true },
      otherNames: { read: texts, usual: () => [] },
      kind: { read: text, usual: () => 'other' },
      countsAs,
      moisture: share,
      fat: share,
      sugar: share,
      protein: share,
      salt: share,
      density: weight,
      tsp: weight,
      tbsp: weight,
      cup: weight,
      each: weight,
      pack: weight,
      price: { read: number(0) },
      supplier: { read: text },
      stock: { read: number(0) },
      allergens: { read: lists => readFields(lists, { us: entries, eu: entries, canada: entries }, tell) },
      noneListed: { read: said => (said === true ? said : undefined) },
      madeOf: { read: text },
      composition: {
        read: value =>
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
            tell,
          ),
      },
      note: { read: text, usual: () => '' },
    },
    tell,
  ) as Ingredient | undefined
}
