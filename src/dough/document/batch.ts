/** So many pieces of a weight, grams: of dough, or of baked bread where the batch says so. */
export interface Pieces {
  readonly count: number
  readonly weight: number
}

/** The amount to make. Losses are fractions of 1. */
export type Batch = { readonly loss?: number; readonly bakeLoss?: number } & (
  | { readonly make: 'as written' }
  | { readonly make: 'pieces' | 'baked pieces'; readonly pieces: readonly Pieces[] } // several shapes at once
  | { readonly make: 'dough' | 'flour'; readonly grams: number } // in the bowl; all flour, prefermented included
  | { readonly make: 'all of'; readonly ingredient: string; readonly grams: number }
  | { readonly make: 'factor'; readonly factor: number }
)

/** What is made of a stage beyond what is taken from it: grams, or as much as the seed that went into it. */
export type KeepBack = number | 'seed'

/** How a scale weighs: in steps of so many grams, in finer ones below a weight. */
export interface Scale {
  readonly step: number
  readonly fineStep: number
  readonly fineBelow: number
}

export const usualScale: Scale = { step: 1, fineStep: 0.1, fineBelow: 10 }

/** Why there is no such scale, in a sentence; undefined when there can be. Below 0 g is never: no fine step. */
export function scaleProblem({ step, fineStep, fineBelow }: Scale): string | undefined {
  const isStep = (grams: number) => grams > 0 && Number.isFinite(grams)
  if (!isStep(step) || !isStep(fineStep)) return 'The steps of a scale are numbers of grams above 0.'
  if (!(fineBelow >= 0 && Number.isFinite(fineBelow)))
    return 'The fine step is for weights below a number of grams, or below 0 for none.'
  return undefined
}

/** Why a batch cannot be made, in a sentence; undefined when it can. */
export function batchProblem(batch: Batch): string | undefined {
  const isLoss = (loss: number | undefined) => loss === undefined || (loss >= 0 && loss < 1)
  if (!isLoss(batch.loss) || !isLoss(batch.bakeLoss)) return 'A loss is a percentage from 0 to below 100.'
  const above = (value: number) => value > 0 && Number.isFinite(value)
  switch (batch.make) {
    case 'as written':
      return undefined
    case 'pieces':
    case 'baked pieces':
      return batch.pieces.length && batch.pieces.every(p => above(p.count) && above(p.weight))
        ? undefined
        : 'Pieces are a number above 0 times a weight above 0.'
    case 'factor':
      return above(batch.factor) ? undefined : 'A factor is a number above 0.'
    default:
      if (batch.make === 'all of' && batch.ingredient.trim() === '')
        return 'Say of which ingredient all is to be made.'
      return above(batch.grams) ? undefined : 'The weight to make is a number of grams above 0.'
  }
}

/** Grams of mixed dough for the pieces: Σ count × weight, through bake loss where they are weighed baked, and process loss. */
export function doughForPieces(batch: Extract<Batch, { pieces: readonly Pieces[] }>): number {
  const pieces = batch.pieces.reduce((sum, p) => sum + p.count * p.weight, 0)
  const shaped = batch.make === 'baked pieces' ? pieces / (1 - (batch.bakeLoss ?? 0)) : pieces
  return shaped / (1 - (batch.loss ?? 0))
}
