import type { TimeConflict, TimeHold, TimePlan, TimeProblem, TimeSpan } from './problem/time-problem.js'
import { Search } from './search.js'

/** The time with which one hold of a conflict would fit all the rest of the problem. */
export interface NearestTime {
  readonly hold: number // its place among the holds
  readonly bound: 'at' | 'from' | 'until' // which of its times would have to change
  readonly time: number // to this, the nearest that will do
  readonly proven: boolean // false: the search stopped at its limit, and a nearer one may exist
}

const reaches = [60, 240, 960] // minutes from the time wanted
const mostProblems = 2_000 // relaxed, for each time that is looked for

/**
 * For each hold of a conflict the nearest time that it alone would have to be at, from or until, the rest staying
 * as it is. A hold that cannot help is left out: the rest has a conflict of its own, or no plan was found among
 * 2,000 relaxed problems.
 */
export function nearestTimes(problem: TimeProblem, { holds }: Pick<TimeConflict, 'holds'>): NearestTime[] {
  return holds.flatMap(hold => {
    const { moment, at, from, until } = problem.holds[hold]!
    const rest = { ...problem, holds: problem.holds.filter((_, other) => other !== hold) }
    const bounds: readonly [NearestTime['bound'], number | undefined, Omit<TimeHold, 'moment'>][] = [
      ['at', at, {}],
      ['from', from, { until: from! }],
      ['until', until, { from: until! }],
    ]
    const found = bounds.flatMap(([bound, wanted, side]) => {
      if (wanted === undefined) return []
      const holds = bound === 'at' ? rest.holds : [...rest.holds, { ...side, moment }]
      const nearest = nearestTo(wanted, moment, { ...rest, holds })
      return nearest ? [{ hold, bound, ...nearest, off: Math.abs(nearest.time - wanted) }] : []
    })
    const best = found.sort((a, b) => a.off - b.off)[0]
    return best ? [{ hold, bound: best.bound, time: best.time, proven: best.proven }] : []
  })
}

/** The time of a moment that is nearest to the one wanted. */
function nearestTo(
  wanted: number,
  moment: string,
  problem: TimeProblem,
): { time: number; proven: boolean } | undefined {
  const { moments, spans, holds } = problem
  let name = 'wanted'
  while (moments.includes(name)) name += '′'
  const within = (most: number, kept: readonly TimeSpan[]): TimeProblem => ({
    ...problem,
    moments: [...moments, name],
    spans: [...kept, { from: name, to: moment, least: -most, most, usual: 0 }],
    holds: [...holds, { moment: name, at: wanted }],
  })
  // Any plan is found sooner near the time wanted, and where the waits draw to their usual; then only how far it is
  // off costs.
  for (const reach of [...reaches, farthest(problem, wanted)]) {
    const earlier = firstPlan(within(reach, spans))
    if (!earlier) continue
    const off = Math.abs(earlier.at.get(moment)! - wanted) + 1e-6
    const bare = spans.map(({ from, to, least, most }) => ({ from, to, least, most }))
    const search = new Search(within(off, bare), { earlier, limit: mostProblems })
    while (!search.step(1) && search.progress.gap > 0);
    const plan = search.answer()
    if (plan.kind === 'plan') return { time: plan.at.get(moment)!, proven: search.progress.gap === 0 }
  }
  return undefined
}

function firstPlan(problem: TimeProblem): TimePlan | undefined {
  const search = new Search(problem, { limit: mostProblems })
  while (!search.step(1) && search.progress.cost === Infinity);
  if (search.progress.cost === Infinity) return undefined
  const plan = search.answer()
  return plan.kind === 'plan' ? plan : undefined
}

/** Farther than any bounds can push a moment from the time wanted. */
function farthest({ spans, holds, alone = [] }: TimeProblem, wanted: number): number {
  const times = [
    ...holds.flatMap(({ at, from, until }) => [at, from, until]),
    ...alone.flatMap(({ closed = [] }) => closed.flat()),
  ].map(time => (time ?? wanted) - wanted)
  const lengths = [
    ...spans.flatMap(({ least, most }) => [least, most]),
    ...alone.flatMap(({ uses, between = 0, change = 0 }) => uses.map(() => Math.max(between, change))),
  ]
  let sum = 1
  for (const length of [...times, ...lengths]) if (Number.isFinite(length)) sum += Math.abs(length)
  return sum
}
