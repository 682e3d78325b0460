import type { LinePlan, StagePlan } from '../outline/outline.js'

/** A stage as the batch makes it: takers come before what they take. */
export interface Build {
  readonly stage: StagePlan
  readonly loss: number
  readonly keepBack: number // grams
  readonly isSeedKept: boolean
}

/** The lines that seed a stage: its starters. */
export const seedLines = (stage: StagePlan): LinePlan[] =>
  stage.lines.filter(l => l.countsAs?.kind === 'starter')

/** build = needed ÷ (1 − loss) + keep-back; kept as much as the seed, the seed's own part of it is what grows. */
export function timesOf(
  needed: number,
  weight: number,
  loss: number,
  keepBack: number,
  seeds: readonly number[],
): number {
  const made = weight - seeds.reduce((sum, w) => sum + w, 0)
  return made <= 0 ? 0 : (needed / (1 - loss) + keepBack) / made
}
