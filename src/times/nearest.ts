import type { TimeConflict, TimeHold, TimeProblem } from './problem.js'
import { Search } from './search.js'

/** The time with which one hold of a conflict would fit all the rest of the problem. */
export interface NearestTime {
  readonly hold: number // its place among the holds
  readonly bound: 'at' | 'from' | 'until' // which of its times would have to change
  readonly time: number // to this, the nearest that will do
  readonly proven: boolean // false: the search stopped at its limit, and a nearer one may exist
}

const mostProblems = 2_000 // relaxed, for each time that is looked for

/**
 * For each hold of a conflict the nearest time that it alone would have to be at, from or until, the rest staying as it is. A hold that cannot
 * help is left out: the rest has a conflict of its own, or no plan was found among 2,000 relaxed problems.
 */
export function nearestTimes(problem: TimeProblem, conflict: TimeConflict): NearestTime[] {
  return conflict.holds.flatMap(hold => {
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

/** The time of a moment that is nearest to the one wanted: it alone costs, the square of how far it is off. */
function nearestTo(
  wanted: number,
  moment: string,
  { moments, spans, holds, alone = [] }: TimeProblem,
): { time: number; proven: boolean } | undefined {
  let name = 'wanted'
  while (moments.includes(name)) name += '′'
  const far = farthest({ moments, spans, holds, alone }, wanted)
  const search = new Search(
    {
      moments: [...moments, name],
      spans: [
        ...spans.map(({ from, to, least, most }) => ({ from, to, least, most })),
        { from: name, to: moment, least: -far, most: far, usual: 0 },
      ],
      holds: [...holds, { moment: name, at: wanted }],
      alone,
    },
    { limit: mostProblems },
  )
  while (!search.step(1) && search.progress.gap > 0);
  if (search.progress.cost === Infinity) return undefined
  const plan = search.answer()
  return plan.kind === 'plan' ? { time: plan.at.get(moment)!, proven: search.progress.gap === 0 } : undefined
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
