import type { ShapeSaid } from './words.js'

/** Why there is so much to weigh. */
export const totalWords = {
  shapes: (shapes: readonly ShapeSaid[]): string =>
    shapes
      .map(({ count, weight, name, baked }) => {
        const piece = `${count} × ${weight}${baked ? ` (${baked} baked)` : ''}`
        return name ? `${piece}, ${name}` : piece
      })
      .join(shapes.some(({ name }) => name) ? '; ' : ' + '),
  baked: (shapes: string): string => `${shapes} baked`,
  fromFlour: (weight: string): string => `from ${weight} of flour`,
  allOf: (weight: string, ingredient: string): string => `all of ${weight} of ${ingredient}`,
  times: (factor: string): string => `${factor} times as written`,
  /** What goes before, and what the steps of the scale add to it. */
  withSteps: (why: string, weight: string): string => `${why}, and ${weight} that the scale’s steps add`,
} as const
