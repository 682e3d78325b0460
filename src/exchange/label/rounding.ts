/** Figures of a nutrition table as public rules round them. Each takes what 100 g hold, in the unit it gives. */

/** To the nearest multiple of a step, a half upwards; what doubles leave over of a figure does not turn it. */
const nearest = (value: number, step: number): number => Math.round(value / step + 1e-9) * step

const said = (value: number, decimals: number): string => value.toFixed(decimals)

/**
 * In the European Union: section 6 of the Commission's guidance of December 2012 on tolerances for nutrient values declared on a label.
 * Grams but for energy.
 */
export const european = {
  energy: (value: number): string => said(nearest(value, 1), 0),
  /** Fat, carbohydrate, sugars, protein, fibre. */
  nutrient: (grams: number): string => stepped(grams, 0.5),
  saturates: (grams: number): string => stepped(grams, 0.1),
  salt: (grams: number): string => {
    if (grams <= 0) return '0 g'
    if (grams <= 0.0125) return '<0.01 g'
    const hundredths = nearest(grams, 0.01)
    return hundredths >= 1 ? `${said(nearest(grams, 0.1), 1)} g` : `${said(hundredths, 2)} g`
  },
} as const

function stepped(grams: number, negligible: number): string {
  if (grams <= 0) return '0 g'
  if (grams <= negligible) return `<${negligible} g`
  const tenths = nearest(grams, 0.1)
  return tenths >= 10 ? `${said(nearest(grams, 1), 0)} g` : `${said(tenths, 1)} g`
}

/** In the United States: 21 CFR 101.9(c)(1), (2), (4), (6) and (7). */
export const american = {
  calories: (value: number): string => {
    if (value < 5) return '0'
    return said(value <= 50 ? nearest(value, 5) : nearest(value, 10), 0)
  },
  /** Total and saturated fat. */
  fat: (grams: number): string => {
    if (grams < 0.5) return '0 g'
    return grams < 5 ? `${nearest(grams, 0.5)} g` : `${said(nearest(grams, 1), 0)} g`
  },
  sodium: (milligrams: number): string => {
    if (milligrams < 5) return '0 mg'
    return `${said(nearest(milligrams, milligrams <= 140 ? 5 : 10), 0)} mg`
  },
  /** Total carbohydrate, dietary fiber, total sugars, protein. */
  nutrient: (grams: number): string => {
    if (grams < 0.5) return '0 g'
    return grams < 1 ? 'less than 1 g' : `${said(nearest(grams, 1), 0)} g`
  },
} as const

/** Plainly, with a decimal: where the rules for rounding are those of a serving of another size. */
export const plainly = {
  calories: (value: number): string => said(value, 0),
  grams: (grams: number): string => `${said(grams, 1)} g`,
  milligrams: (milligrams: number): string => `${said(milligrams, 0)} mg`,
} as const
