import type { ReadingName } from '../document/reading-names.js'

/** What an update may have changed of what a sheet shows; everything else reads as before. */
export interface Touched {
  readonly all: boolean // anything may differ (another formula, larder, scale); then the sets say nothing
  readonly lines: ReadonlySet<string> // ids of lines whose figures, plan or text may differ
  readonly stages: ReadonlySet<string> // ids of stages whose figures or text may differ, or those of a line in them or that takes them
  readonly readings: ReadonlySet<ReadingName>
  readonly jottings: ReadonlySet<string> // ids
  readonly structure: boolean // lines or stages came, went or moved
}

/** Nothing reads otherwise than before. */
export const untouched: Touched = {
  all: false,
  lines: new Set(),
  stages: new Set(),
  readings: new Set(),
  jottings: new Set(),
  structure: false,
}

/** Nothing may be taken to read as before. */
export const allTouched: Touched = { ...untouched, all: true, structure: true }

const union = <T>(a: ReadonlySet<T>, b: ReadonlySet<T>): ReadonlySet<T> =>
  a.size === 0 ? b : b.size === 0 ? a : new Set([...a, ...b])

/** What two updates one after the other have touched. */
export function bothTouched(first: Touched, then: Touched): Touched {
  if (first === untouched || then.all) return then
  if (then === untouched || first.all) return first
  return {
    all: false,
    lines: union(first.lines, then.lines),
    stages: union(first.stages, then.stages),
    readings: union(first.readings, then.readings),
    jottings: union(first.jottings, then.jottings),
    structure: first.structure || then.structure,
  }
}
