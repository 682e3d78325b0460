import type { Constraints, NamedArc } from '../problem/constraints.js'
import type { TimeConflict, TimeProblem } from '../problem/time-problem.js'
import { shortestCycle } from './potentials.js'
import { Proof, TooLong } from './proof.js'

/**
 * How many steps the first proof of a conflict may take, and those that make it smaller, before and after a plan
 * was looked for.
 */
const stepsToProve = 10_000
const stepsAtFirst = 20
const stepsAtLast = 500

/** Whether a problem has a plan, as far as a short search can tell. */
export type HasPlan = (problem: TimeProblem) => boolean | undefined

/**
 * A smallest set of members that cannot be together, or times (from the base on, by moment) that keep all of them.
 * Where spans and holds alone are at fault, it is a negative cycle with the fewest of them, and of those the one
 * that is short by most. Else members are left out one after the other, as long as the others still cannot be
 * together.
 */
export function conflictOrTimes(
  problem: TimeProblem,
  constraints: Constraints,
  hasPlan: HasPlan,
): TimeConflict | { times: Float64Array } {
  const cycle = cycleOf(problem, constraints)
  if (cycle) return conflict(problem, new Set(cycle.map(arc => arc.member)), true)
  const proof = new Proof(constraints)
  const all = new Set(Array(constraints.members).keys())
  const found = attempt(proof, all, stepsToProve)
  if (found === 'too long') return conflict(problem, all, false)
  return found ? shrunk(problem, proof, found, hasPlan) : { times: proof.times }
}

/**
 * The arcs of spans and holds that contradict each other, one after the other from the origin on where they pass
 * it.
 */
export function cycleOf(
  { spans, holds }: TimeProblem,
  { arcs, origin }: Constraints,
): NamedArc[] | undefined {
  const ungrouped = arcs.filter(({ member }) => member < spans.length + holds.length)
  const cycle = shortestCycle(ungrouped, origin + 1)?.map(arc => ungrouped[arc]!)
  if (!cycle) return undefined
  const start = Math.max(
    0,
    cycle.findIndex(({ from }) => from === origin),
  )
  return [...cycle.slice(start), ...cycle.slice(0, start)]
}

function shrunk(
  problem: TimeProblem,
  proof: Proof,
  found: ReadonlySet<number>,
  hasPlan: HasPlan,
): TimeConflict {
  let left = new Set(found)
  let proven = true
  const against = (members: Set<number>): Set<number> | undefined => {
    const short = attempt(proof, members, stepsAtFirst)
    if (short !== 'too long') return short
    const plan = hasPlan(only(problem, members))
    if (plan !== undefined) return plan ? undefined : members
    const long = attempt(proof, members, stepsAtLast)
    if (long !== 'too long') return long
    proven = false
    return undefined
  }
  // A proof often needs less than the one before, before anything is left out.
  for (;;) {
    const again = attempt(proof, left, stepsAtLast)
    if (!again || again === 'too long' || again.size === left.size) break
    left = again
  }
  for (const member of [...left].sort((a, b) => a - b)) {
    if (!left.has(member)) continue
    const others = new Set(left)
    others.delete(member)
    left = against(others) ?? left
  }
  return conflict(problem, left, proven)
}

function attempt(
  proof: Proof,
  members: ReadonlySet<number>,
  steps: number,
): Set<number> | undefined | 'too long' {
  try {
    return proof.against(members, steps)
  } catch (error) {
    if (!(error instanceof TooLong)) throw error
    return 'too long'
  }
}

/** The problem with those members only. */
function only({ moments, spans, holds, alone = [] }: TimeProblem, members: ReadonlySet<number>): TimeProblem {
  return {
    moments,
    spans: spans.filter((_, k) => members.has(k)),
    holds: holds.filter((_, k) => members.has(spans.length + k)),
    alone: alone.filter((_, k) => members.has(spans.length + holds.length + k)),
  }
}

function conflict(
  { spans, holds, alone = [] }: TimeProblem,
  members: ReadonlySet<number>,
  proven: boolean,
): TimeConflict {
  const among = (first: number, count: number) =>
    [...members]
      .filter(member => member >= first && member < first + count)
      .map(member => member - first)
      .sort((a, b) => a - b)
  return {
    kind: 'conflict',
    spans: among(0, spans.length),
    holds: among(spans.length, holds.length),
    groups: among(spans.length + holds.length, alone.length).map(group => alone[group]!.name),
    proven,
  }
}
