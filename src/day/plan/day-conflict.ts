import type { Step } from '../../dough/document/formula.js'
import type { NearestTime, Shortfall } from '../../times/index.js'
import type { DayEvent, Reason } from '../course/day-network.js'
import type { DayProblem, HoldReason } from '../course/day-problem.js'
import type { ConflictFound } from './planning.js'

/** A time of the day that would do, on the minute. */
export type NearestOf = NearestTime & { readonly reason: HoldReason }

/** Loads of one bread, shaped at once, that cannot wait for each other as long as they have to. */
export interface LoadsApart {
  readonly bread: string // id
  readonly stage: string // id
  readonly wait: DayEvent // before they are baked
  readonly bake: Step
  readonly loads: number
  readonly apart: number // minutes from one to the next
}

/** Why a day has no times: the smallest set of what cannot be together. */
export interface DayConflict {
  readonly reasons: readonly Reason[] // of the spans concerned
  readonly holds: readonly HoldReason[]
  readonly groups: readonly string[]
  readonly nearest: readonly NearestOf[] // what would do, each by itself
  readonly shortfall: Shortfall | undefined
  readonly loads: LoadsApart | undefined // where it is nothing but these
}

/** A conflict of times in the terms of the day. */
export function dayConflict(
  { network, holds }: DayProblem,
  { spans, holds: held, groups, nearest, shortfall }: ConflictFound,
): DayConflict {
  const reasons = spans.map(i => network.reasons[i]!)
  const isOfLoads = reasons.some(({ of }) => of === 'order') && held.length + groups.length === 0
  return {
    reasons,
    holds: held.map(i => holds[i]!),
    groups,
    nearest: nearest.map(nearestOf(holds)),
    shortfall,
    loads: isOfLoads && shortfall ? loadsApart(network.events, reasons, shortfall) : undefined,
  }
}

function loadsApart(
  events: readonly DayEvent[],
  reasons: readonly Reason[],
  { minutes }: Shortfall,
): LoadsApart | undefined {
  const waits = reasons.flatMap(reason =>
    reason.of === 'event' && reason.event.kind === 'wait' && reason.event.load ? [reason.event] : [],
  )
  const [wait, other] = waits
  if (!wait?.length || !wait.load || !other?.load) return undefined
  const [bread] = wait.breads
  const baked = events.find(e => e.kind === 'bake' && e.breads[0] === bread && e.stage === wait.stage)
  if (!baked) return undefined
  const { least, most } = wait.length
  const apart = (most - least + minutes) / Math.abs(other.load.number - wait.load.number)
  return { bread: bread!, stage: wait.stage, wait, bake: baked.step, loads: wait.load.of, apart }
}

export const nearestOf =
  (holds: DayProblem['holds']) =>
  (nearest: NearestTime): NearestOf => ({ ...nearest, reason: holds[nearest.hold]! })
