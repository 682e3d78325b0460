/** The sum of all; undefined where one is not known. */
export function sumOf(values: readonly (number | undefined)[]): number | undefined {
  let sum = 0
  for (const value of values) {
    if (value === undefined) return undefined
    sum += value
  }
  return sum
}
