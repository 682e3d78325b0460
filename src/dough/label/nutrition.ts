import type { Composition } from '../document/larder.js'
import { compositionOf, doubtfulSugars } from '../larder/composition.js'
import type { LabelPart } from './label-parts.js'

/** What 100 g of bread hold, in grams, unrounded. */
export interface Nutrition {
  readonly fat: number
  readonly saturates: number | undefined // undefined: not known of all
  readonly carbohydrate: number // fibre is not in it
  readonly sugars: number | undefined // undefined: not known of all
  readonly fibre: number
  readonly protein: number
  readonly salt: number // sodium × 2.5
  readonly sugarsUnknown: readonly string[] // ingredients
  readonly sugarsDoubtful: readonly string[]
  readonly fromTable: readonly string[]
  readonly fromLarder: readonly string[]
}

const nothing: Composition = {
  fat: 0,
  saturates: 0,
  carbohydrate: 0,
  sugars: 0,
  fibre: 0,
  protein: 0,
  salt: 0,
}

function compositionIn({ ingredient, isWater, isSalt }: LabelPart) {
  const known = compositionOf(ingredient)
  if (known) return known
  // Water and salt are what they are, whoever sells them.
  if (isWater) return { composition: nothing, from: 'table' as const }
  return isSalt ? { composition: { ...nothing, salt: 1 }, from: 'table' as const } : undefined
}

/** Of fat none is saturated where there is none. */
const saturatesIn = ({ fat, saturates }: Composition): number | undefined => (fat === 0 ? 0 : saturates)

/**
 * What 100 g of bread hold, from what is recorded of each ingredient: all of it but water stays in the bread. `loss` is the part of the dough
 * that baking drives off. Where something is not recorded, its names.
 */
export function nutritionOf(
  parts: readonly LabelPart[],
  loss: number,
): Nutrition | { readonly lacking: readonly string[] } {
  const known = parts.map(part => ({ part, known: compositionIn(part) }))
  const lacking = known.filter(one => !one.known).map(({ part }) => part.name)
  if (lacking.length) return { lacking }
  const all = known.map(({ part, known }) => ({ part, ...known! }))
  const names = (which: (one: (typeof all)[number]) => boolean) =>
    all.filter(which).map(({ part }) => part.name)
  const sum = (of: (composition: Composition) => number | undefined): number | undefined =>
    all.reduce<number | undefined>((total, { part, composition }) => {
      const held = of(composition)
      return total === undefined || held === undefined ? undefined : total + part.share * held
    }, 0)
  const per100 = (of: (composition: Composition) => number | undefined): number | undefined => {
    const total = sum(of)
    return total === undefined ? undefined : (100 * total) / (1 - loss)
  }
  return {
    fat: per100(c => c.fat)!,
    saturates: per100(saturatesIn),
    carbohydrate: per100(c => c.carbohydrate)!,
    sugars: per100(c => c.sugars),
    fibre: per100(c => c.fibre)!,
    protein: per100(c => c.protein)!,
    salt: per100(c => c.salt)!,
    sugarsUnknown: names(({ composition }) => composition.sugars === undefined),
    sugarsDoubtful: names(
      ({ part, from }) => from === 'table' && doubtfulSugars.has(part.ingredient?.id ?? ''),
    ),
    fromTable: names(({ from, part }) => from === 'table' && !part.isWater),
    fromLarder: names(({ from }) => from === 'larder'),
  }
}

/**
 * Energy in 100 g by the factors of Annex XIV of Regulation (EU) 1169/2011: carbohydrate and protein 17 kJ and 4 kcal a gram, fat 37 and 9,
 * fibre 8 and 2.
 */
export function energyInEurope({ fat, carbohydrate, fibre, protein }: Nutrition): {
  kJ: number
  kcal: number
} {
  return {
    kJ: 17 * (carbohydrate + protein) + 37 * fat + 8 * fibre,
    kcal: 4 * (carbohydrate + protein) + 9 * fat + 2 * fibre,
  }
}

/** Calories in 100 g by the general factors 4, 4 and 9 of protein, total carbohydrate and fat: 21 CFR 101.9(c)(1)(i)(B). */
export const caloriesInAmerica = ({ fat, carbohydrate, fibre, protein }: Nutrition): number =>
  4 * protein + 4 * (carbohydrate + fibre) + 9 * fat

/** Milligrams of sodium in so many grams of salt. */
export const sodiumIn = (salt: number): number => (salt / 2.5) * 1000
