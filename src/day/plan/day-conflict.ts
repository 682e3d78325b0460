import {
  type NearestTime,
  nearestTimes,
  type Shortfall,
  shortfallOf,
  type TimeConflict,
} from '../../times/index.js'
import type { Reason } from './day-network.js'
import type { DayProblem, HoldReason } from './day-problem.js'

/** Why a day has no times: the smallest set of what cannot be together. */
export interface DayConflict {
  readonly reasons: readonly Reason[] // of the spans concerned
  readonly holds: readonly HoldReason[]
  readonly groups: readonly string[]
  readonly nearest: readonly (NearestTime & { readonly reason: HoldReason })[] // what would do, each by itself
  readonly shortfall: Shortfall | undefined
}

/** A conflict of times in the terms of the day. */
export function dayConflict({ problem, network, holds }: DayProblem, conflict: TimeConflict): DayConflict {
  return {
    reasons: conflict.spans.map(i => network.reasons[i]!),
    holds: conflict.holds.map(i => holds[i]!),
    groups: conflict.groups,
    nearest: nearestTimes(problem, conflict).map(n => ({ ...n, reason: holds[n.hold]! })),
    shortfall: shortfallOf(problem, conflict),
  }
}
