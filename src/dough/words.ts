/** A weight in a sentence: at most one decimal from 10 g on, two below. */
export function grams(weight: number): string {
  const digits = Math.abs(weight) >= 10 ? 1 : 2
  return `${Number(weight.toFixed(digits)).toLocaleString('en-GB')} g`
}

/** A fraction of 1 in a sentence: `97 %`, `1.88 %`. */
export function per100(fraction: number): string {
  const percent = fraction * 100
  return `${Number(percent.toFixed(Math.abs(percent) >= 10 ? 1 : 2))} %`
}
