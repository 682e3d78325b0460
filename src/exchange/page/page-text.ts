import type { ToldText } from '../steps/told-row.js'
import { isHtml, readPage } from './page-rows.js'
import { isRecipeData, recipeInData } from './recipe-data.js'
import { recipeRows } from './recipe-rows.js'

/**
 * A page, a part of one, or the data of a recipe, as a text to be read: where a page says in data what its recipe is, that is
 * taken rather than its words. Undefined where a text is none of these.
 */
export function pageText(text: string): ToldText | undefined {
  const data = isRecipeData(text) ? recipeInData([text]) : undefined
  if (data) return recipeRows(data)
  if (/^\s*\{/.test(text.slice(0, 2000)) || !isHtml(text)) return undefined
  const page = readPage(text)
  const recipe = recipeInData(page.data)
  return recipe ? recipeRows(recipe) : { text: page.text, told: new Map() }
}
