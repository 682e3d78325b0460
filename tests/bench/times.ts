import { Search, solveTimes, type TimePlan, type TimeProblem } from '../../src/times/index'
import { against, median, type Now, type Row, timeInTurns, use } from './row'
import { eightBreads, fiveBreads, oneBread } from './times-days'
import { figuresOf, flowShop, listSchedule } from './times-flow-shop'

const frame = 16.7 // ms

/** Times of planning a day of the Saturday oven, and what its plans come to. */
export function timesRows(now: Now): Row[] {
  const one = oneBread()
  const [small] = timeInTurns(now, [() => costOf(solveTimes(one))])
  const five = fiveBreads()
  const eight = eightBreads()
  const [day] = often(now, 15, [() => costOf(solveTimes(five))])
  const [large] = often(now, 5, [() => costOf(solveTimes(eight))])
  return [
    { name: 'the times of one bread of 20 steps', value: small! / 1000, unit: 'ms', budget: 1 },
    { name: 'a day of five breads, one oven, one pair of hands', value: day!, unit: 'ms', budget: 50 },
    { name: 'a day of eight breads, two loads each', value: large!, unit: 'ms', budget: 500 },
    ...gapRows(eight),
    ...moved(now, five),
    ...shopRows(),
  ]
}

/** The cost of the plan against what it is known to be at least; 1 where it is proven. */
function gapRows(problem: TimeProblem): Row[] {
  const { cost, gap } = planOf(problem)
  const row = { name: 'its cost, against what it is at least', value: cost, unit: '', baseline: cost - gap }
  return [cost - gap > 0 ? { ...row, ratio: cost / (cost - gap) } : row]
}

/**
 * One held time later by a quarter of an hour: the first answer in the old order, and the proven one, against
 * planning afresh.
 */
function moved(now: Now, problem: TimeProblem): Row[] {
  const earlier = planOf(problem)
  const holds = problem.holds.map((hold, k) => (k === 2 ? { ...hold, at: hold.at! + 15 } : hold))
  const later = { ...problem, holds }
  const first = () => {
    const search = new Search(later, { earlier })
    while (!search.step(1) && search.progress.cost === Infinity);
    return costOf(search.answer())
  }
  const [soon, proven, fresh] = often(now, 15, [
    first,
    () => costOf(solveTimes(later, { earlier })),
    () => costOf(solveTimes(later)),
  ])
  return [
    { name: 'a held time of that day moved, first answer', value: soon!, unit: 'ms', budget: frame },
    against('a held time of that day moved, proven, against afresh', [proven!, fresh!], 'ms'),
  ]
}

/** The no-wait flow shop of eight products against a list schedule of the same. */
function shopRows(): Row[] {
  const plan = planOf(flowShop())
  const ours = figuresOf(plan)
  const list = listSchedule()
  const proven = plan.proven ? 'proven' : 'not proven'
  return [
    against(
      `no-wait flow shop of eight products, makespan (${proven}) against a list`,
      [ours.makespan, list.makespan],
      'min',
      1,
    ),
    against('its oven idle, against the list', [ours.idle, list.idle], 'min'),
  ]
}

/** Median times in milliseconds, taken in turns. */
function often(now: Now, samples: number, works: readonly (() => number)[]): number[] {
  const times = works.map((): number[] => [])
  for (let sample = -1; sample < samples; sample++) {
    for (const [k, work] of works.entries()) {
      const started = now()
      use(work())
      if (sample >= 0) times[k]!.push(now() - started)
    }
  }
  return times.map(median)
}

function planOf(problem: TimeProblem): TimePlan {
  const answer = solveTimes(problem)
  if (answer.kind !== 'plan') throw new Error('A day of the bench has no plan.')
  return answer
}

const costOf = (answer: ReturnType<typeof solveTimes>) => (answer.kind === 'plan' ? answer.cost : -1)
