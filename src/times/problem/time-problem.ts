/** What is asked of the solver. All times and lengths are minutes, real numbers; an infinite bound is no bound. */
export interface TimeProblem {
  readonly moments: readonly string[] // names, each once
  readonly spans: readonly TimeSpan[]
  readonly holds: readonly TimeHold[]
  readonly alone?: readonly AloneGroup[]
}

/** `least ≤ to − from ≤ most`; a length other than `usual` costs (length − usual)² ÷ leeway. */
export interface TimeSpan {
  readonly from: string
  readonly to: string
  readonly least: number
  readonly most: number
  readonly usual?: number // counts only where least < most, and both are finite or a leeway is given
  readonly leeway?: number // most − least where it is left out
}

/** A moment `at` a time, or not before `from` and not after `until`. */
export interface TimeHold {
  readonly moment: string
  readonly at?: number
  readonly from?: number
  readonly until?: number
}

/** Something that only one can use at a time. */
export interface AloneGroup {
  readonly name: string
  readonly between?: number // from the end of one use to the beginning of the next
  readonly change?: number // the same where their settings differ; the longer counts
  readonly closed?: readonly (readonly [begins: number, ends: number])[] // no use may reach into these
  readonly uses: readonly TimeUse[]
}

/** From one moment to another, which is not before it. */
export interface TimeUse {
  readonly from: string
  readonly to: string
  readonly setting?: string // none given differs from any that is
}

/** The times of least cost. */
export interface TimePlan {
  readonly kind: 'plan'
  readonly at: ReadonlyMap<string, number> // every moment
  readonly cost: number
  readonly proven: boolean // false: the search stopped at its limit, and a better one may exist
  readonly gap: number // by how much at most a better one would cost less; 0 where proven
}

/**
 * A smallest set that cannot be together: leave out any one of its members and the others can.
 * `spans` and `holds` are places in the problem's lists, `groups` are names.
 */
export interface TimeConflict {
  readonly kind: 'conflict'
  readonly spans: readonly number[]
  readonly holds: readonly number[]
  readonly groups: readonly string[]
  readonly proven: boolean // false: the search stopped at its limit; the set may be too large, or even have a plan
}
