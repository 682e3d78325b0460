import type { AloneGroup, TimeHold, TimeProblem, TimeSpan } from '../../src/times/index'
import type { randomOf } from '../random'

type Random = ReturnType<typeof randomOf>

/** Between two numbers, in tenths. */
const between = (random: Random, low: number, high: number) =>
  low + Math.round(random.next() * (high - low) * 10) / 10

/**
 * A few chains of work and waits, some with a branch or a cross-tie, some held, with a group that uses of the work share and hours in which it is closed.
 * Many have an answer, some have not.
 */
export function randomProblem(random: Random, { uses: most = 3 } = {}): TimeProblem {
  const moments: string[] = []
  const spans: TimeSpan[] = []
  const holds: TimeHold[] = []
  const work: { from: string; to: string; setting?: string }[] = []
  const chains = 1 + random.below(2)
  for (let chain = 0; chain < chains; chain++) {
    const name = (step: number) => `${'abc'[chain]}${step}`
    const steps = 2 + random.below(3)
    for (let step = 0; step <= steps; step++) moments.push(name(step))
    for (let step = 0; step < steps; step++) {
      const from = name(step)
      const to = name(step + 1)
      if (random.below(3) === 0) {
        const length = between(random, 5, 30)
        spans.push({ from, to, least: length, most: length })
        work.push({ from, to })
        continue
      }
      const least = between(random, 10, 100)
      const most = least + between(random, 1, 60)
      const usual = between(random, least, most)
      spans.push({ from, to, least, most, ...(random.below(6) > 0 ? { usual } : {}) })
      if (random.below(4) === 0) work.push({ from, to })
    }
    const time = between(random, 200, 400)
    if (chain === 0 || random.below(3) > 0) holds.push({ moment: name(steps), at: time })
    else holds.push({ moment: name(steps), from: time - 30, until: time + 20 })
    if (random.below(3) === 0) holds.push({ moment: name(0), from: time - between(random, 60, 250) })
  }
  if (random.below(2) === 0) {
    const from = random.pick(moments)
    const to = random.pick(moments.filter(moment => moment !== from))
    const least = between(random, -150, 60)
    spans.push({ from, to, least, most: least + between(random, 20, 200), usual: least + 10 })
  }
  const uses = work
    .slice(0, most)
    .map(use => (random.below(3) === 0 ? { ...use, setting: random.pick(['hot', 'mild']) } : use))
  const group: AloneGroup = {
    name: 'hands',
    uses,
    ...(random.below(2) === 0 ? { between: between(random, 0, 10) } : {}),
    ...(random.below(2) === 0 ? { change: between(random, 0, 20) } : {}),
    ...(random.below(2) === 0
      ? { closed: [[between(random, 50, 200), between(random, 200, 260)]] as const }
      : {}),
  }
  return { moments, spans, holds, alone: uses.length > 0 ? [group] : [] }
}
