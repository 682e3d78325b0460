import type { AloneGroup, TimeHold, TimeProblem, TimeSpan } from '../../src/times/index'
import type { randomOf } from '../random'

type Random = ReturnType<typeof randomOf>

/** Between two numbers, in tenths. */
const between = (random: Random, low: number, high: number) =>
  low + Math.round(random.next() * (high - low) * 10) / 10

/**
 * A few chains of work and waits, some with a branch or a cross-tie, some held, with a group that uses of the work
 * share and hours in which it is closed. Many have an answer, some have not.
 */
export function randomProblem(random: Random, { chains: mostChains = 3, uses: most = 4 } = {}): TimeProblem {
  const moments: string[] = []
  const spans: TimeSpan[] = []
  const holds: TimeHold[] = []
  const work: { from: string; to: string; setting?: string }[] = []
  const chains = random.below(5) === 0 ? 1 : 2 + random.below(mostChains - 1)
  for (let chain = 0; chain < chains; chain++) {
    const name = (step: number) => `${'abc'[chain]}${step}`
    const steps = 2 + random.below(2)
    for (let step = 0; step <= steps; step++) moments.push(name(step))
    for (let step = 0; step < steps; step++) {
      const from = name(step)
      const to = name(step + 1)
      if (step === steps - 1 || random.below(3) === 0) {
        const length = between(random, 5, 30)
        spans.push({ from, to, least: length, most: length })
        work.push({ from, to })
        continue
      }
      const least = between(random, 10, 60)
      const most = least + between(random, 5, 120)
      const usual = between(random, least, most)
      spans.push({ from, to, least, most, ...(random.below(8) > 0 ? { usual } : {}) })
      if (random.below(5) === 0) work.push({ from, to })
    }
    const time = between(random, 300, 400)
    if (random.below(5) === 0) holds.push({ moment: name(steps), at: time })
    else holds.push({ moment: name(steps), from: time - 80, until: time + 60 })
    if (random.below(5) === 0) holds.push({ moment: name(0), from: time - between(random, 100, 400) })
  }
  if (random.below(4) === 0) {
    const from = random.pick(moments)
    const to = random.pick(moments.filter(moment => moment !== from))
    const least = between(random, -150, 60)
    spans.push({ from, to, least, most: least + between(random, 100, 300), usual: least + 10 })
  }
  const uses = shuffled(random, work)
    .slice(0, most)
    .map(use => (random.below(3) === 0 ? { ...use, setting: random.pick(['hot', 'mild']) } : use))
  const group: AloneGroup = {
    name: 'hands',
    uses,
    ...(random.below(2) === 0 ? { between: between(random, 0, 10) } : {}),
    ...(random.below(2) === 0 ? { change: between(random, 0, 20) } : {}),
    ...(random.below(3) === 0
      ? { closed: [[between(random, 150, 230), between(random, 230, 280)]] as const }
      : {}),
  }
  return { moments, spans, holds, alone: uses.length > 0 ? [group] : [] }
}

/**
 * Breads of which one or two have loads that are alike: from one moment on each with a wait and work of its own, some with a wait
 * after it, held alike or nearly so; beside them something else that shares the oven.
 */
export function alikeProblem(random: Random): TimeProblem {
  const moments: string[] = []
  const spans: TimeSpan[] = []
  const holds: TimeHold[] = []
  const uses: { from: string; to: string; setting?: string }[] = []
  const loads = random.pick([[2], [3], [2, 2], [2, 1], [3, 1]])
  for (const [bread, count] of loads.entries()) {
    const of = (step: string) => `${'ab'[bread]}${step}`
    moments.push(of(''))
    holds.push(
      random.below(2) === 0
        ? { moment: of(''), at: between(random, 0, 30) }
        : { moment: of(''), from: 0, until: between(random, 10, 60) },
    )
    const least = between(random, 10, 60)
    const most = least + between(random, 20, 120)
    const usual = between(random, least, most)
    const others = random.below(3) > 0 ? usual : between(random, least, most)
    const work = between(random, 5, 30)
    const after = random.below(2) === 0
    const until = random.below(3) > 0 ? between(random, 90, 200) : undefined
    const unlike = random.below(2) === 0 ? 0 : between(random, 5, 40) // then only nearly alike
    const setting = random.below(2) === 0 ? {} : { setting: random.pick(['hot', 'mild']) }
    for (let load = 1; load <= count; load++) {
      const [begins, ends, cool] = [of(`${load}`), of(`${load}x`), of(`${load}y`)]
      moments.push(begins, ends)
      spans.push({ from: of(''), to: begins, least, most, usual: load === 1 ? usual : others })
      spans.push({ from: begins, to: ends, least: work, most: work })
      uses.push({ from: begins, to: ends, ...setting })
      if (after) {
        moments.push(cool)
        spans.push({ from: ends, to: cool, least: 10, most: 40, usual: 20 })
      }
      if (until !== undefined)
        holds.push({ moment: after ? cool : ends, until: until + unlike * (count - load) })
    }
  }
  const group: AloneGroup = {
    name: 'oven',
    uses: shuffled(random, uses),
    ...(random.below(2) === 0 ? { between: between(random, 0, 10), change: between(random, 0, 20) } : {}),
    ...(random.below(4) === 0
      ? { closed: [[between(random, 60, 90), between(random, 90, 110)]] as const }
      : {}),
  }
  return { moments, spans, holds, alone: [group] }
}

function shuffled<T>(random: Random, of: readonly T[]): T[] {
  const left = [...of]
  return of.map(() => left.splice(random.below(left.length), 1)[0]!)
}
