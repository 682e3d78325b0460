import { kitchen } from '../values/kitchen-words.js'
import type { Row } from './recipe-row.js'

/** `all in grams`, `weights are grams`, `tout en g`. */
const inWords =
  /(?<!\p{L})(?:all|everything|weights?|amounts?|quantities|measures|tout|toutes|poids|quantités)(?: (?:weights?|amounts?|quantities|is|are|est|sont))?(?: (?:in|en))? (?:g|gr|grams?|grammes)(?![\p{L}’'])/iu
/** `Ingredients (g)`, `Zutaten (in g)`. */
const inBrackets = /\((?:in |en |all |all in |tout en )?(?:g|gr|grams?|grammes|gramm)\)\s*:?\s*$/iu
const grams = new Set(['g', 'gr', 'gram', 'grams', 'gramme', 'grammes'])
const others = new Set(['oz', 'lb', 'lbs', 'ounces', 'cups', 'cup', 'ml', 'volume', 'us'])
const mostOfHead = 12 // tokens of a row of column heads

/** `Ingredient  Grams  %`: the heads of columns, of which one is of grams and none of another measure. */
const isHead = ({ words, tokens, quantities }: Row): boolean =>
  words.length > 1 &&
  tokens.length <= mostOfHead &&
  quantities.length === 0 &&
  tokens.every(t => t.kind !== 'number') &&
  words.every(t => kitchen.columnHeads.has(t.key)) &&
  words.some(t => grams.has(t.key)) &&
  !words.some(t => others.has(t.key))

/** Does a text say of its bare numbers that they are grams? */
export const saysGrams = (rows: readonly Row[]): boolean =>
  rows.some(row => inWords.test(row.text) || inBrackets.test(row.text) || isHead(row))
