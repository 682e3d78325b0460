/**
 * Grams in what is weighed. The pound is 453.59237 g exactly (international avoirdupois), the metric pound (livre,
 * Pfund) 500 g. A pinch is an estimate: cooks' tables print a quarter of a gram to a sixteenth of a teaspoon of fine
 * salt (0.35 g); a knife's tip of powder is printed as 0.1 to 0.5 g.
 */
export const weightUnits = {
  g: 1,
  kg: 1000,
  oz: 28.349523125,
  lb: 453.59237,
  mg: 0.001,
  'metric lb': 500,
  pinch: 0.3,
  'knife tip': 0.3,
} as const

export type WeightUnit = keyof typeof weightUnits

/** Millilitres in the US measures (NIST Handbook 44, Appendix C, rounded as usual in print). */
export const millilitres = {
  ml: 1,
  l: 1000,
  tsp: 4.929,
  tbsp: 14.787,
  cup: 236.588,
  'fl oz': 29.5735,
} as const

/** Measures that are so many of another: an ingredient's own cup goes into its pint. Pints to gallons are those of the US. */
export const multiples = {
  cl: { of: 'ml', times: 10 },
  dl: { of: 'ml', times: 100 },
  dessertspoon: { of: 'tsp', times: 2 },
  pint: { of: 'cup', times: 2 },
  quart: { of: 'cup', times: 4 },
  gallon: { of: 'cup', times: 16 },
} as const

/** What an ingredient is measured or counted in. */
export type Measure = keyof typeof millilitres | keyof typeof multiples | 'each' | 'stick'

/** What an amount can be in, besides per cent. */
export type Unit = WeightUnit | Measure

const sizes: Readonly<Record<string, number>> = {
  ...weightUnits,
  ...millilitres,
  stick: 4 * weightUnits.oz,
  ...Object.fromEntries(
    Object.entries(multiples).map(([unit, { of, times }]) => [unit, millilitres[of] * times]),
  ),
}
/** Grams in one of a weight, or millilitres in one of a volume; undefined for what is counted and for per cents. */
export const sizeIn = (unit: string): number | undefined =>
  Object.hasOwn(sizes, unit) ? sizes[unit] : undefined
