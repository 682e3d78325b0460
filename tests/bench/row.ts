/** One line of the bench's table. */
export interface Row {
  readonly name: string
  readonly value: number
  readonly unit: string
  readonly baseline?: number // in the same unit, measured in the same run
  readonly ratio?: number // value ÷ baseline
  readonly budget?: number // what the ratio, or else the value, may not pass
}

/** The time in milliseconds, as `performance.now` gives it. */
export type Now = () => number

let sink = 0

/** Uses a result, so that what made it is not optimised away. */
export function use(result: number): void {
  sink += result
}

export const sunk = () => sink

export function median(of: readonly number[]): number {
  return of.toSorted((a, b) => a - b)[of.length >> 1]!
}

/**
 * Median times in microseconds of one call of each, taken in turns, so that what slows the machine slows all.
 * A sample calls often enough to last about four milliseconds, for coarse clocks.
 */
export function timeInTurns(now: Now, works: readonly (() => number)[], samples = 41): number[] {
  const often = works.map(work => {
    const end = now() + 150
    for (let calls = 1; ; calls *= 2) {
      const started = now()
      for (let i = 0; i < calls; i++) use(work())
      const took = now() - started
      if (now() > end && took > 0) return Math.max(1, Math.round((calls * 4) / took))
    }
  })
  const times = works.map((): number[] => [])
  for (let sample = -5; sample < samples; sample++) {
    for (const [w, work] of works.entries()) {
      const calls = often[w]!
      const started = now()
      for (let i = 0; i < calls; i++) use(work())
      const took = now() - started
      if (sample >= 0) times[w]!.push((took * 1000) / calls)
    }
  }
  return times.map(median)
}

/** A row of the first time against the second. */
export function against(
  name: string,
  [value, baseline]: readonly number[],
  unit: string,
  budget?: number,
): Row {
  const row = { name, value: value!, unit, baseline: baseline!, ratio: value! / baseline! }
  return budget === undefined ? row : { ...row, budget }
}
