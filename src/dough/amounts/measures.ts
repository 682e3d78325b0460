import type { Ingredient } from '../document/larder.js'
import { type Measure, millilitres, multiples, weightUnits } from '../lexicon/units.js'
import type { Figure } from '../lexicon/written-figures.js'

const scaled = (weight: number | undefined, factor: number): number | undefined =>
  weight === undefined ? undefined : weight * factor

/**
 * Grams of an ingredient in one measure, or undefined when nothing is known to reckon it from.
 * A spoon or cup that was weighed goes before density; of the rest the nearest weighed measure is taken
 * (3 teaspoons a tablespoon, 16 tablespoons a cup) before density, since packed, heaped and levelled
 * measures differ more than volumes do. A stick of a fat is 4 oz, as butter is sold in the US; other sticks are counted.
 */
export function gramsPerMeasure(ingredient: Ingredient, measure: Measure): number | undefined {
  const { density, tsp, tbsp, cup, each } = ingredient
  switch (measure) {
    case 'each':
      return each
    case 'stick':
      return ingredient.kind === 'fat' ? 4 * weightUnits.oz : each
    case 'tsp':
      return tsp ?? scaled(tbsp, 1 / 3) ?? scaled(cup, 1 / 48) ?? scaled(density, millilitres.tsp)
    case 'tbsp':
      return tbsp ?? scaled(tsp, 3) ?? scaled(cup, 1 / 16) ?? scaled(density, millilitres.tbsp)
    case 'cup':
      return cup ?? scaled(density, millilitres.cup) ?? scaled(tbsp, 16) ?? scaled(tsp, 48)
    case 'ml':
    case 'l':
    case 'fl oz': {
      const perMl =
        density ??
        scaled(cup, 1 / millilitres.cup) ??
        scaled(tbsp, 1 / millilitres.tbsp) ??
        scaled(tsp, 1 / millilitres.tsp)
      return scaled(perMl, millilitres[measure])
    }
    default: {
      const { of, times } = multiples[measure]
      return scaled(gramsPerMeasure(ingredient, of), times)
    }
  }
}

/** Grams of an amount: a weight's own, or those of a measure where the ingredient has it; undefined of shares. */
export function gramsIn(
  { grams, unit, value }: Pick<Figure, 'grams' | 'unit' | 'value'>,
  ingredient: Ingredient | undefined,
): number | undefined {
  if (grams !== undefined || unit === '' || unit === '%' || !ingredient) return grams
  const one = gramsPerMeasure(ingredient, unit as Measure)
  return one === undefined ? undefined : one * value
}
