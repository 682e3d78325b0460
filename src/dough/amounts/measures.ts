import type { Ingredient } from '../document/larder.js'

export type Measure = 'ml' | 'l' | 'tsp' | 'tbsp' | 'cup' | 'fl oz' | 'each'

/** Millilitres in the US measures (NIST Handbook 44, Appendix C, rounded as usual in print). */
const millilitres = { ml: 1, l: 1000, tsp: 4.929, tbsp: 14.787, cup: 236.588, 'fl oz': 29.5735 } as const

const scaled = (weight: number | undefined, factor: number): number | undefined =>
  weight === undefined ? undefined : weight * factor

/**
 * Grams of an ingredient in one US measure, or undefined when nothing is known to reckon it from.
 * A spoon or cup that was weighed goes before density; of the rest the nearest weighed measure is taken
 * (3 teaspoons a tablespoon, 16 tablespoons a cup) before density, since packed, heaped and levelled
 * measures differ more than volumes do.
 */
export function gramsPerMeasure(ingredient: Ingredient, measure: Measure): number | undefined {
  const { density, tsp, tbsp, cup, each } = ingredient
  switch (measure) {
    case 'each':
      return each
    case 'tsp':
      return tsp ?? scaled(tbsp, 1 / 3) ?? scaled(cup, 1 / 48) ?? scaled(density, millilitres.tsp)
    case 'tbsp':
      return tbsp ?? scaled(tsp, 3) ?? scaled(cup, 1 / 16) ?? scaled(density, millilitres.tbsp)
    case 'cup':
      return cup ?? scaled(density, millilitres.cup) ?? scaled(tbsp, 16) ?? scaled(tsp, 48)
    default: {
      const perMl =
        density ??
        scaled(cup, 1 / millilitres.cup) ??
        scaled(tbsp, 1 / millilitres.tbsp) ??
        scaled(tsp, 1 / millilitres.tsp)
      return scaled(perMl, millilitres[measure])
    }
  }
}
