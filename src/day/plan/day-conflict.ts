import type { NearestTime, Shortfall } from '../../times/index.js'
import type { Reason } from '../course/day-network.js'
import type { DayProblem, HoldReason } from '../course/day-problem.js'
import type { ConflictFound } from './planning.js'

/** A time of the day that would do, on the minute. */
export type NearestOf = NearestTime & { readonly reason: HoldReason }

/** Why a day has no times: the smallest set of what cannot be together. */
export interface DayConflict {
  readonly reasons: readonly Reason[] // of the spans concerned
  readonly holds: readonly HoldReason[]
  readonly groups: readonly string[]
  readonly nearest: readonly NearestOf[] // what would do, each by itself
  readonly shortfall: Shortfall | undefined
}

/** A conflict of times in the terms of the day. */
export const dayConflict = (
  { network, holds }: DayProblem,
  { spans, holds: held, groups, nearest, shortfall }: ConflictFound,
): DayConflict => ({
  reasons: spans.map(i => network.reasons[i]!),
  holds: held.map(i => holds[i]!),
  groups,
  nearest: nearest.map(nearestOf(holds)),
  shortfall,
})

export const nearestOf =
  (holds: DayProblem['holds']) =>
  (nearest: NearestTime): NearestOf => ({ ...nearest, reason: holds[nearest.hold]! })
