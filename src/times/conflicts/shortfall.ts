import { constraintsOf } from '../problem/constraints.js'
import type { TimeConflict, TimeProblem } from '../problem/time-problem.js'
import { cycleOf } from './conflict.js'

/** What one member adds to a conflict of spans and holds. */
export interface ShortfallStep {
  readonly kind: 'span' | 'hold'
  readonly index: number // among the problem's spans or holds
  readonly bound: 'least' | 'most' | 'at' | 'from' | 'until' // which of its bounds is in the way
  readonly minutes: number // that bound
}

/** The figures of a conflict in which no group has a part. */
export interface Shortfall {
  readonly minutes: number // how much is lacking
  readonly steps: readonly ShortfallStep[] // one behind the other, from a hold to another where there are any
}

/** How the spans and holds of a conflict contradict each other; undefined where a group has a part in it. */
export function shortfallOf(problem: TimeProblem, conflict: TimeConflict): Shortfall | undefined {
  if (conflict.groups.length > 0) return undefined
  const { moments } = problem
  const spans = conflict.spans.map(index => problem.spans[index]!)
  const holds = conflict.holds.map(index => problem.holds[index]!)
  const constraints = constraintsOf({ moments, spans, holds })
  const cycle = cycleOf({ moments, spans, holds }, constraints)
  if (!cycle) return undefined
  const steps = cycle.map(({ member, from }): ShortfallStep => {
    const span = spans[member]
    if (span) {
      const bound = moments[from] === span.from ? 'most' : 'least'
      return { kind: 'span', index: conflict.spans[member]!, bound, minutes: span[bound] }
    }
    const place = member - spans.length
    const hold = holds[place]!
    const bound = hold.at !== undefined ? 'at' : from === constraints.origin ? 'until' : 'from'
    return { kind: 'hold', index: conflict.holds[place]!, bound, minutes: hold[bound]! }
  })
  return { minutes: -cycle.reduce((sum, { limit }) => sum + limit, 0), steps }
}
