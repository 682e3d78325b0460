import type { Ingredient } from '../../document/larder.js'
import type { Transaction, Workbook } from '../../document/workbook.js'
import { clearingAway } from '../clear-away.js'
import { fetchedLabels } from './fetched-words.js'

/**
 * Puts an ingredient of the baker's own in the larder, or in the place of the one with its id. `currency`: that of all prices
 * from now on, where another was chosen or none was said before.
 */
export function defineIngredient(ingredient: Ingredient, currency?: string): Transaction {
  const put = { of: 'ingredient', id: ingredient.id, value: ingredient } as const
  return {
    label: fetchedLabels.defineIngredient(ingredient.name),
    changes: currency === undefined ? [put] : [put, { of: 'workbook', value: { currency } }],
  }
}

/** Takes the baker's own ingredient, or change to a usual one, out of the larder: it is cleared away. */
export function forgetIngredient(workbook: Workbook, id: string): Transaction {
  const name = workbook.larder.find(i => i.id === id)?.name
  const label = fetchedLabels.forgetIngredient(name)
  return clearingAway(workbook, { label, changes: [{ of: 'ingredient', id }] })
}
