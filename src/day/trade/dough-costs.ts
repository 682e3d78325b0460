import type { Batch, Pieces } from '../../dough/document/batch.js'
import type { Larder } from '../../dough/document/larder.js'
import type { DayMade } from './builds-made.js'
import { added, type Cost, costOf, noCost } from './cost.js'

/** So many pieces of one shape, and what one of them costs. */
export interface PieceCost extends Pieces {
  readonly dough: number // grams a piece before it is baked
  readonly baked: number | undefined // after it; undefined: no bake loss is said
  readonly cost: number
}

/** What one bread of a day costs. Grams; costs in the workbook's currency, without what `cost` says is missing. */
export interface DoughCost {
  readonly of: string // id of the bread
  readonly cost: Cost
  readonly dough: number | undefined // mixed, as weighed; undefined: not known
  readonly perKiloOfDough: number | undefined
  readonly baked: number | undefined // baked, all told; undefined: no bake loss is said
  readonly perKiloOfBread: number | undefined
  readonly pieces: readonly PieceCost[] // none: the batch is no number of pieces
}

/** What is lost in baking, a fraction of 1; undefined where it is not said. */
const bakeLossOf = ({ bakeLoss }: Batch): number | undefined => (bakeLoss ? bakeLoss : undefined)

/** What a piece weighs before and after baking; grams. */
export function weightsOfPiece(
  batch: Batch,
  weight: number,
): { readonly dough: number; readonly baked: number | undefined } {
  const loss = bakeLossOf(batch)
  if (batch.make === 'baked pieces') return { dough: weight / (1 - (loss ?? 0)), baked: weight }
  return { dough: weight, baked: loss === undefined ? undefined : weight * (1 - loss) }
}

const piecesOf = (batch: Batch): readonly Pieces[] =>
  batch.make === 'pieces' || batch.make === 'baked pieces' ? batch.pieces : []

/**
 * What each bread of a day costs: all that goes into its builds, what is kept back of them included; of a build that is made for
 * several breads each has its part. What is lost on the way is spread over the pieces.
 */
export function doughCosts({ day, formulas, builds }: DayMade, larder: Larder): DoughCost[] {
  return day.breads.flatMap(({ id, formula, batch }): DoughCost[] => {
    if (!formulas.some(one => one.id === formula)) return []
    let cost = noCost
    let dough: number | undefined
    for (const { breads, parts, lines, isFinal, total } of builds) {
      const at = breads.indexOf(id)
      if (at < 0) continue
      if (isFinal) dough = total
      for (const { ingredient, isStage, isStarter, grams } of lines) {
        if (isStage || ingredient.trim() === '') continue
        const own = grams === undefined ? undefined : grams * parts[at]!
        cost = added(cost, costOf(ingredient, own, larder.find(ingredient), isStarter))
      }
    }
    const shapes = piecesOf(batch).map(shape => ({ ...shape, ...weightsOfPiece(batch, shape.weight) }))
    const shaped = shapes.reduce((sum, { count, dough }) => sum + count * dough, 0)
    const baked = bakedOf(batch, dough, shapes)
    return [
      {
        of: id,
        cost,
        dough,
        perKiloOfDough: dough ? (cost.amount / dough) * 1000 : undefined,
        baked,
        perKiloOfBread: baked ? (cost.amount / baked) * 1000 : undefined,
        pieces: shapes.map(shape => ({ ...shape, cost: (cost.amount * shape.dough) / shaped })),
      },
    ]
  })
}

/** Grams of baked bread; undefined where no bake loss is said. */
function bakedOf(
  batch: Batch,
  dough: number | undefined,
  shapes: readonly { readonly count: number; readonly baked: number | undefined }[],
): number | undefined {
  if (shapes.length > 0)
    return shapes.some(({ baked }) => baked === undefined)
      ? undefined
      : shapes.reduce((sum, { count, baked }) => sum + count * baked!, 0)
  const loss = bakeLossOf(batch)
  if (loss === undefined || dough === undefined) return undefined
  return dough * (1 - (batch.loss ?? 0)) * (1 - loss)
}
