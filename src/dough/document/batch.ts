/** So many pieces of a weight, grams: of dough, or of baked bread where the batch says so. */
export interface Pieces {
  readonly count: number
  readonly weight: number
  readonly name?: string // of the shape: `round tin`
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

/** Grams of mixed dough for the pieces: Σ count × weight, through bake loss where they are weighed baked, and process loss. */
export function doughForPieces(batch: Extract<Batch, { pieces: readonly Pieces[] }>): number {
  const pieces = batch.pieces.reduce((sum, p) => sum + p.count * p.weight, 0)
  const shaped = batch.make === 'baked pieces' ? pieces / (1 - (batch.bakeLoss ?? 0)) : pieces
  return shaped / (1 - (batch.loss ?? 0))
}
