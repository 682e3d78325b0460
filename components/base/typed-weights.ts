import { type WeightUnit, weightUnits } from '../../src/dough/amounts/units.js'
import type { NumberStyle } from './numbers.js'
import { readNumber } from './typed-numbers.js'

/** The grams a baker typed: `900`, `1.2 kg`, `8 oz`; undefined when it is no weight. */
export function readWeight(typed: string, style: NumberStyle): number | undefined {
  const [, number = '', unit = 'g'] = /^(.*?)\s*(kg|g|oz|lb)?$/i.exec(typed.trim()) ?? []
  const value = readNumber(number, style)
  return value === undefined ? undefined : value * weightUnits[unit.toLowerCase() as WeightUnit]
}

/** The part of a whole a baker typed as per cent, fraction of 1: `2`, `2.5 %`; nothing typed is none of it. */
export function readPart(typed: string, style: NumberStyle): number | undefined {
  const text = typed.trim().replace(/\s*%$/, '')
  const value = text === '' ? 0 : readNumber(text, style)
  return value === undefined ? undefined : value / 100
}
