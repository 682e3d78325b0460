import type { Day } from '../document/day.js'
import type { Formula, KeptState } from '../document/formula.js'
import type { Ingredient } from '../document/larder.js'
import { readDayData } from './day-data.js'
import { type Field, isFields, number, readFields, type Tell, text } from './fields.js'
import { readFormulaData, readStateData } from './formula-data.js'
import { readIngredientData } from './ingredient-data.js'

/** Something that was deleted, as it can be brought back. */
export type ClearedThing = {
  readonly id: string // of its own
  readonly at: string // ISO 8601, UTC: when it was deleted
  readonly index?: number // where it stood in its list
} & (
  | { readonly of: 'formula'; readonly thing: Formula }
  | { readonly of: 'ingredient'; readonly thing: Ingredient } // of the baker's own
  | { readonly of: 'day'; readonly thing: Day }
  | {
      readonly of: 'state'
      readonly thing: KeptState
      readonly formula: string // id of the one it was kept of
      readonly called: string // its name then
    }
)

const readers = {
  formula: readFormulaData,
  ingredient: readIngredientData,
  day: readDayData,
  state: readStateData,
} as const

const must: Field = { read: text, must: true }

/** What was deleted, in data of which nothing is known; undefined where nothing can be made of it. */
export function readClearedData(value: unknown, tell: Tell): ClearedThing | undefined {
  if (!isFields(value) || typeof value.of !== 'string' || !Object.hasOwn(readers, value.of)) return undefined
  const read = readers[value.of as ClearedThing['of']]
  return readFields(
    value,
    {
      id: must,
      at: must,
      thing: { read: thing => read(thing, tell), must: true },
      index: { read: number(0) },
      ...(value.of === 'state' && { formula: must, called: must }),
    },
    tell,
  ) as ClearedThing | undefined
}
