import { nameKey } from '../../dough/document/formula.js'
import type { LinePlan, StagePlan } from '../../dough/outline/outline.js'
import { specificHeat } from '../temperature/water.js'

/** What weights are read from: grams of a line by its id, undefined where not known. */
export type GramsOf = (line: string) => number | undefined

const { water, flour, salt, egg, oil } = specificHeat

/**
 * The specific heat of what a line adds, kJ/(kg·K), by what it counts as: flour, water and salt their own, a starter that
 * of its flour and water, a stage that of all in it, eggs theirs. Of anything else its moisture counts as water, its fat
 * as oil and the rest as flour does: 3.9 for milk (measured 3.85), 2.3 for butter.
 */
export function heatOf(line: LinePlan, gramsOf: GramsOf): number {
  if (line.source) return heatOfStage(line.source, gramsOf)
  const { countsAs, ingredient } = line
  switch (countsAs?.kind) {
    case 'water':
      return water
    case 'salt':
      return salt
    case 'starter':
      return (flour + countsAs.hydration * water) / (1 + countsAs.hydration)
    case 'other': {
      if (!ingredient) return flour
      if (ingredient.kind === 'egg') return egg
      const { moisture, fat } = ingredient
      return moisture * water + fat * oil + Math.max(0, 1 - moisture - fat) * flour
    }
    default:
      return flour
  }
}

const open = new Set<StagePlan>() // a stage that is made of itself has no heat of its own

function heatOfStage(stage: StagePlan, gramsOf: GramsOf): number {
  if (open.has(stage)) return water
  open.add(stage)
  let [held, weight] = [0, 0]
  for (const line of stage.lines) {
    const grams = gramsOf(line.line.id) ?? 0
    held += grams * heatOf(line, gramsOf)
    weight += grams
  }
  open.delete(stage)
  return weight > 0 ? held / weight : (flour + water) / 2
}

const boiling = /\bboil(?:ing|ed)\b|\bbouillant|\bkochend/i

/** Whether it is water that is poured on boiling: how warm it has to be is no question. */
export const isBoiling = ({ line, countsAs }: LinePlan): boolean =>
  countsAs?.kind === 'water' && boiling.test(line.ingredient)

/** Whether it is milk to be poured: a dough without water is brought to its temperature by that. */
export const isMilk = ({ ingredient }: LinePlan): boolean =>
  ingredient?.kind === 'dairy' && ingredient.moisture >= 0.8

/** Whether it is usually kept cold: milk, eggs, fresh cheese. */
export const isKeptCold = ({ ingredient }: LinePlan): boolean =>
  ingredient !== undefined &&
  (ingredient.kind === 'dairy' || ingredient.kind === 'egg' || nameKey(ingredient.name).includes('butter'))
