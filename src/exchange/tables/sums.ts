import type { Quantity } from './cell-quantity.js'
import type { Sorted } from './sort.js'
import { headingName, isFinalDough, isStageName } from './words.js'

/** What lines add to, in grams and as a fraction of 1; undefined where one of them has no such figure. */
export interface Sums {
  readonly grams: number | undefined
  readonly percent: number | undefined
  readonly step: number // the last digits of the weights, added
}

export function sumOf(values: readonly (number | undefined)[]): number | undefined {
  let sum = 0
  for (const value of values) {
    if (value === undefined) return undefined
    sum += value
  }
  return sum
}

/** Is a printed figure what the lines add to, as far as its digits go? */
export function sumAgrees(printed: Quantity, sums: Sums): boolean {
  const close = (a: number | undefined, b: number | undefined, within: number) =>
    a !== undefined && b !== undefined && a > 0 && Math.abs(a - b) <= within * (1 + 1e-9) + 1e-9
  return (
    close(printed.grams, sums.grams, Math.max(printed.step / 2, sums.step / 2)) ||
    close(printed.percent, sums.percent, printed.step)
  )
}

/** What the lines from here to the end of their block add to. */
export function blockSum(sorted: readonly Sorted[], from: number): Sums {
  const grams: (number | undefined)[] = []
  const percent: (number | undefined)[] = []
  let step = 0
  for (let at = from; sorted[at]?.is === 'line'; at++) {
    const quantities = quantitiesOf(sorted[at]!)
    const weight = quantities.find(quantity => quantity.grams !== undefined)
    grams.push(weight?.grams)
    percent.push(quantities.find(quantity => quantity.percent !== undefined)?.percent)
    step += weight?.step ?? 0
  }
  return { grams: sumOf(grams), percent: sumOf(percent), step }
}

export const quantitiesOf = ({ amounts }: Sorted): Quantity[] =>
  amounts.flatMap(({ read }) => (read.is === 'quantity' ? [read] : []))

/** Is this row, `Levain 220 g`, the heading of the lines below it with what they add to? */
export function headsWithTotal(sorted: readonly Sorted[], at: number): boolean {
  const row = sorted[at]!
  const { name } = headingName(row.name)
  if (!isStageName(name) || sorted[at + 1]?.is !== 'line') return false
  if (row.is !== 'line' && !(row.is === 'total' && isFinalDough(name))) return false
  if (/:\s*$/.test(row.name)) return true
  const sums = blockSum(sorted, at + 1)
  return quantitiesOf(row).some(quantity => sumAgrees(quantity, sums))
}
