import assert from 'node:assert/strict'
import { test } from 'node:test'
import { solveTimes, type TimeProblem } from '../../src/times/index'
import { randomOf, rounds } from '../random'
import { boundsOf, leastCost, possible } from './oracle'

// Tens of minutes only, and many spans between few moments: bounds meet their limits together, and many say the
// same.

function networkOf(seed: number): TimeProblem {
  const { below } = randomOf(seed)
  const moments = Array.from({ length: 3 + below(9) }, (_, k) => `m${k}`)
  const times = moments.map(() => below(20) * 10)
  const spans = Array.from({ length: moments.length + below(2 * moments.length) }, () => {
    const from = below(moments.length)
    const to = (from + 1 + below(moments.length - 1)) % moments.length
    const length = times[to]! - times[from]!
    const least = length - below(4) * 10
    const kind = below(4)
    return {
      from: moments[from]!,
      to: moments[to]!,
      least,
      most: kind === 3 ? Infinity : length + below(4) * 10,
      ...(kind < 2 ? { usual: least + below(8) * 10 } : {}),
    }
  })
  const holds = Array.from({ length: below(4) }, () => {
    const held = below(moments.length)
    const moment = moments[held]!
    const time = times[held]!
    return below(2) === 0
      ? { moment, at: time }
      : { moment, from: time - below(3) * 10, until: time + below(3) * 10 }
  })
  return { moments, spans, holds }
}

for (let seed = 1; seed <= rounds(150); seed++) {
  test(`times at many limits at once have the least cost and keep every bound, seed ${seed}`, () => {
    const problem = networkOf(seed)
    const bounds = boundsOf(problem)
    // Made from times, so there is always a plan.
    assert.ok(possible(bounds, problem.moments.length + 1))
    const plan = solveTimes(problem)
    assert.ok(plan.kind === 'plan' && plan.proven)
    const time = (moment: number) => plan.at.get(problem.moments[moment]!) ?? 0
    for (const { from, to, limit } of bounds) assert.ok(time(to) - time(from) <= limit + 1e-9)
    const { cost } = leastCost(problem, bounds)
    assert.ok(Math.abs(plan.cost - cost) <= 1e-7 * Math.max(1, cost), `${plan.cost} for ${cost}`)
  })
}
