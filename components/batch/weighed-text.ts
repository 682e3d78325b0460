import { type NumberStyle, showDecimals } from '../base/numbers.js'

/** A weight as the scale shows it, whose step says the digits: 1,234 · 12.5 · 3. Grams, without the unit. */
export const showWeighed = (grams: number, style: NumberStyle): string =>
  showDecimals(Number(grams.toFixed(4)), style, 4, 0)
