/** The baker's own way of writing numbers, from the browser's language. */
export interface NumberStyle {
  readonly language: string
  readonly decimal: '.' | ','
}

/** English where the language is none that has a name: WebKitGTK calls it `C` where the system was told of none, Chromium `en-US@posix`. */
export function numberStyleOf(named: string): NumberStyle {
  let language = named || 'en'
  try {
    new Intl.NumberFormat(language)
  } catch {
    language = 'en'
  }
  const part = new Intl.NumberFormat(language).formatToParts(1.5).find(p => p.type === 'decimal')
  return { language, decimal: part?.value === ',' ? ',' : '.' }
}

const formats = new Map<string, Intl.NumberFormat>() // to make one costs more than all it does

/** A number with so many decimals; with no more than `digits` and no needless noughts where `least` is less. */
export function showDecimals(
  value: number,
  { language }: NumberStyle,
  digits: number,
  least = digits,
): string {
  const key = `${language} ${least} ${digits}`
  let known = formats.get(key)
  if (!known) {
    known = new Intl.NumberFormat(language, { minimumFractionDigits: least, maximumFractionDigits: digits })
    formats.set(key, known)
  }
  return known.format(value)
}

/** Decimals that a weight is shown with, grams: more the lighter it is. */
export const gramDigits = (grams: number): number => {
  const size = Math.abs(grams)
  return size === 0 || size >= 99.95 ? 0 : size >= 9.995 ? 1 : 2
}

/** Decimals that a fraction of 1 is shown with as per cent: two under 10 %. */
export const percentDigits = (fraction: number): number => (Math.abs(fraction) >= 0.09995 ? 1 : 2)

/** A weight for the screen: 1,921 · 210 · 21.0 · 3.15. Grams, without the unit. */
export const showGrams = (grams: number, style: NumberStyle): string =>
  showDecimals(grams, style, gramDigits(grams))

/** A fraction of 1 as per cent for the screen: 70.5 · 1.88. Without the sign. */
export const showPercent = (fraction: number, style: NumberStyle): string =>
  showDecimals(fraction * 100, style, percentDigits(fraction))

/**
 * What a baker typed, with the decimal mark of their language; where that is the comma, `;` parts arguments, and a
 * point stands where a number can be read in two ways.
 */
export function asTheyWrite(typed: string, style: NumberStyle): string {
  if (style.decimal === '.') return typed
  const isCall = typed.includes('(')
  return typed.replace(/[.,]/g, (mark, at: number) => {
    if (mark === '.') return /\d/.test(typed[at + 1] ?? '') ? ',' : '.'
    const inNumber = /\d/.test(typed[at - 1] ?? '') && /^\u200b?\d/.test(typed.slice(at + 1, at + 3))
    return inNumber && !isCall ? '.' : ';'
  })
}

/** A number as the baker would type it: their decimal sign, no grouping, no digits that are only noise. */
export function showNumber(value: number, { language }: NumberStyle): string {
  let known = formats.get(language)
  if (!known) {
    // Latin digits always: what is shown in a field has to be read back from it.
    const options = { maximumSignificantDigits: 6, useGrouping: false, numberingSystem: 'latn' }
    known = new Intl.NumberFormat(language, options)
    formats.set(language, known)
  }
  return known.format(value)
}
