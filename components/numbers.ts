/** The baker's own way of writing numbers, from the browser's language. */
export interface NumberStyle {
  readonly language: string
  readonly decimal: '.' | ','
}

export function numberStyleOf(language: string): NumberStyle {
  const part = new Intl.NumberFormat(language).formatToParts(1.5).find(p => p.type === 'decimal')
  return { language, decimal: part?.value === ',' ? ',' : '.' }
}

const formats = new Map<string, Intl.NumberFormat>()

function format(value: number, language: string, digits: number): string {
  const key = `${language} ${digits}`
  let known = formats.get(key)
  if (!known) {
    known = new Intl.NumberFormat(language, { minimumFractionDigits: digits, maximumFractionDigits: digits })
    formats.set(key, known)
  }
  return known.format(value)
}

/** A weight for the screen: 1,921 · 210 · 21.0 · 3.15 — more decimals the lighter it is. Grams, without the unit. */
export function showGrams(grams: number, style: NumberStyle): string {
  const size = Math.abs(grams)
  return format(grams, style.language, size === 0 || size >= 99.95 ? 0 : size >= 9.995 ? 1 : 2)
}

/** A fraction of 1 as per cent for the screen: 70.5 · 1.88 — two decimals under 10 %. Without the sign. */
export function showPercent(fraction: number, style: NumberStyle): string {
  const percent = fraction * 100
  return format(percent, style.language, Math.abs(percent) >= 9.995 ? 1 : 2)
}
