import { type Sentences, wording } from '../../engine/index.js'

const degrees = (celsius: number): string => `${Number(celsius.toFixed(1))} °C`

/** Something to be said of a mixing beside its numbers. */
export type MixingDiagnostic =
  | {
      readonly code: 'waterTooWarmForLevain' | 'waterAboveBoiling' | 'iceIsNotEnough'
      readonly celsius: number
    }
  | { readonly code: 'milkColderThanFridge'; readonly celsius: number; readonly fridge: number }
  | { readonly code: 'levainTooWarm'; readonly ingredient: string; readonly celsius: number }

export const mixingSentences: Sentences<MixingDiagnostic> = {
  waterTooWarmForLevain: ({ celsius }) =>
    `Water of ${degrees(celsius)} harms the levain that it meets: keep it to 45 °C. Warm the flour, or mix it with the water before the levain goes in.`,
  waterAboveBoiling: ({ celsius }) =>
    `Water cannot be ${degrees(celsius)}. Warm the flour and what else goes in, or want a cooler dough.`,
  iceIsNotEnough: ({ celsius }) =>
    `All of the water as ice is not enough: it would have to be ${degrees(celsius)}. Chill the flour, or want a warmer dough.`,
  milkColderThanFridge: ({ celsius, fridge }) =>
    `The milk would have to be ${degrees(celsius)}, and the fridge has ${degrees(fridge)}. Chill the flour, or want a warmer dough.`,
  levainTooWarm: ({ ingredient, celsius }) =>
    `${ingredient} has ${degrees(celsius)}. From about 35 °C up the yeasts of a levain no longer grow: let it cool before it is mixed in.`,
}

/** A remark on a mixing with its sentence. */
export const mixingRemark = wording(mixingSentences)
export type MixingRemark = ReturnType<typeof mixingRemark>
