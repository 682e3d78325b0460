import { kitchen } from '../values/kitchen-words.js'
import { type SaidUnit, unitSaid, unitWord } from '../values/written-weights.js'
import type { Row } from './recipe-row.js'

const others = new Set(['cups', 'cup', 'ml', 'volume', 'us'])
const mostOfHead = 12 // tokens of a row of column heads

/** `Ingredient  Grams  %`: of the heads of columns one is of a weight, and none of another measure. */
function unitOfHead({ words, tokens, quantities }: Row): SaidUnit | undefined {
  if (words.length < 2 || tokens.length > mostOfHead || quantities.length > 0) return undefined
  const units = words.map(t => unitWord(t.key)).filter(unit => unit !== undefined)
  const isHead =
    tokens.every(t => t.kind !== 'number') &&
    words.every(t => kitchen.columnHeads.has(t.key) || unitWord(t.key) !== undefined) &&
    !words.some(t => others.has(t.key))
  return isHead && units.length === 1 ? units[0] : undefined
}

/** The unit that a text says its bare numbers have. */
export function bareUnitIn(rows: readonly Row[]): SaidUnit | undefined {
  for (const row of rows) {
    const unit = unitSaid(row.text) ?? unitOfHead(row)
    if (unit) return unit
  }
  return undefined
}
