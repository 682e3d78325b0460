/** What several bakes tell of one thing. */
export interface Learnt {
  readonly count: number // of bakes
  readonly middle: number // their median
  readonly low: number // between these the inner 80 % lie
  readonly high: number
  readonly isFew: boolean // the range is no narrower than a tenth either way
}

/** Of so many bakes, the latest, it is learnt: flours and kitchens change. */
export const latest = 20

const few = 5 // bakes below which a range is no narrower than a tenth either way
const atLeast = 0.1

/**
 * A quantile of values in their order, at place p·(n + 1) between them, the first and the last at the ends: of so few as bakes
 * are, the tenth and the ninetieth of a hundred then have eight of ten more between them, and no fewer.
 */
export function quantile(sorted: readonly number[], part: number): number {
  const at = Math.min(Math.max(part * (sorted.length + 1), 1), sorted.length)
  const below = Math.floor(at)
  const low = sorted[below - 1]!
  return low + (at - below) * ((sorted[below] ?? low) - low)
}

/**
 * The median of the latest values, and from where to where the inner 80 % lie: the 10 % and the 90 % quantile. Below five values the
 * range reaches at least a tenth of the median, and `apart`, to either side. `values`: the earliest first. Undefined of none.
 */
export function learntFrom(values: readonly number[], apart = 0): Learnt | undefined {
  const sorted = values.slice(-latest).sort((a, b) => a - b)
  const count = sorted.length
  if (count === 0) return undefined
  const middle = quantile(sorted, 0.5)
  const isFew = count < few
  const out = isFew ? Math.max(Math.abs(middle) * atLeast, apart) : 0
  const low = Math.min(quantile(sorted, 0.1), middle - out)
  const high = Math.max(quantile(sorted, 0.9), middle + out)
  return { count, middle, low, high, isFew }
}
