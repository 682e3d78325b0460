import { typedGrams, typedNumber, typedPart } from '../../src/dough/amounts/typed.js'
import type { NumberStyle } from '../base/numbers.js'

/**
 * The number a baker typed into a field of numbers, or undefined when it is none. A single sign before
 * exactly three digits could be either; the baker's own decimal sign decides.
 */
export const readNumber = (typed: string, { decimal }: NumberStyle): number | undefined =>
  typedNumber(typed, decimal)

/** The grams a baker typed: `900`, `1.2 kg`, `8 oz`, `1 lb 4 oz`; undefined when it is no weight. */
export const readWeight = (typed: string, { decimal }: NumberStyle): number | undefined =>
  typedGrams(typed, decimal)

/** The part of a whole a baker typed as per cent, fraction of 1: `2`, `2.5 %`; nothing typed is none of it. */
export const readPart = (typed: string, { decimal }: NumberStyle): number | undefined =>
  typedPart(typed, decimal)
