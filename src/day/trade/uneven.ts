import type { Day } from '../../dough/document/day.js'
import { type Formula, finalDoughOf } from '../../dough/document/formula.js'
import { ovenOf, piecesOf } from '../course/course.js'
import { readStep } from '../method/step-text.js'
import type { DoughCost } from './dough-costs.js'

/** What does not come out even. */
export type Uneven =
  | {
      readonly code: 'loadNotFull'
      readonly name: string
      readonly last: number
      readonly atOnce: number
      readonly isOnly: boolean
    }
  | { readonly code: 'pieceNotWhole'; readonly name: string; readonly count: number }
  | {
      readonly code: 'doughLeftOver'
      readonly name: string
      readonly dough: number // grams
      readonly pieces: number // that it makes
      readonly weight: number // grams of one
      readonly left: number // grams
    }

/** What of a day does not fill a load of the oven, a piece or a tin. */
export function unevenOn(
  day: Day,
  formulas: readonly Formula[],
  costs: readonly Pick<DoughCost, 'of' | 'dough'>[],
): Uneven[] {
  return day.breads.flatMap((bread): Uneven[] => {
    const formula = formulas.find(({ id }) => id === bread.formula)
    if (!formula) return []
    const { name } = formula
    const pieces = piecesOf(bread)
    if (pieces === undefined) {
      const own = formula.batch
      const shape = own && 'pieces' in own && own.pieces.length === 1 ? own.pieces[0] : undefined
      const dough = costs.find(({ of }) => of === bread.id)?.dough
      if (!shape || dough === undefined || own?.make !== 'pieces') return []
      const shaped = dough * (1 - (bread.batch.loss ?? own.loss ?? 0))
      const count = Math.floor(Number((shaped / shape.weight).toPrecision(9)))
      const left = shaped - count * shape.weight
      return left < 0.02 * shape.weight
        ? []
        : [{ code: 'doughLeftOver', name, dough, pieces: count, weight: shape.weight, left }]
    }
    const broken =
      'pieces' in bread.batch ? bread.batch.pieces.find(({ count }) => !Number.isInteger(count)) : undefined
    if (broken) return [{ code: 'pieceNotWhole', name, count: broken.count }]
    const bake = finalDoughOf(formula).method?.find(({ kind }) => kind === 'bake')
    const atOnce = bake && (readStep(bake.text).atOnce ?? ovenOf(day, bread).atOnce)
    const last = atOnce ? pieces % atOnce : 0
    return last > 0 && atOnce ? [{ code: 'loadNotFull', name, last, atOnce, isOnly: pieces < atOnce }] : []
  })
}
