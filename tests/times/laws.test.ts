import assert from 'node:assert/strict'
import { test } from 'node:test'
import { solveTimes, type TimePlan, type TimeProblem } from '../../src/times/index'
import { randomOf } from '../random'
import { boundsOf, choicesOf } from './oracle'
import { randomProblem } from './random-problems'

/** The first problem from a seed on that has a plan, with that. */
function planned(seed: number): { problem: TimeProblem; plan: TimePlan } {
  const random = randomOf(seed * 7919)
  for (;;) {
    const problem = randomProblem(random)
    const plan = solveTimes(problem)
    if (plan.kind === 'plan') return { problem, plan }
  }
}

function near(plan: TimePlan, other: TimePlan, shift = 0): void {
  for (const [moment, time] of plan.at) {
    const found = other.at.get(moment)! - shift
    assert.ok(Math.abs(found - time) < 1e-6, `${moment}: ${found} for ${time}`)
  }
  assert.ok(Math.abs(plan.cost - other.cost) < 1e-7)
}

for (let seed = 1; seed <= 60; seed++) {
  test(`a plan keeps every bound, hold and group, and costs what its lengths say, seed ${seed}`, () => {
    const { problem, plan } = planned(seed)
    const time = (moment: number) => plan.at.get(problem.moments[moment]!) ?? 0
    const over = ({ from, to, limit }: { from: number; to: number; limit: number }) =>
      time(to) - time(from) - limit
    for (const bound of boundsOf(problem)) assert.ok(over(bound) <= 1e-9, JSON.stringify(bound))
    for (const sides of choicesOf(problem)) assert.ok(sides.some(side => over(side) <= 2e-9))
    const costs = problem.spans.map(({ from, to, least, most, usual }) =>
      usual === undefined || least === most
        ? 0
        : (plan.at.get(to)! - plan.at.get(from)! - usual) ** 2 / (most - least),
    )
    const cost = costs.reduce((sum, value) => sum + value, 0)
    assert.ok(Math.abs(cost - plan.cost) <= 1e-9 * Math.max(1, cost), `${plan.cost} for ${cost}`)
    assert.equal(plan.at.size, problem.moments.length)
  })

  test(`holding a moment where it already is changes nothing, seed ${seed}`, () => {
    const { problem, plan } = planned(seed)
    const random = randomOf(seed)
    const moment = random.pick(problem.moments)
    const held = { ...problem, holds: [...problem.holds, { moment, at: plan.at.get(moment)! }] }
    const again = solveTimes(held)
    assert.ok(again.kind === 'plan')
    near(plan, again)
  })

  test(`shifting holds and closed hours shifts the times, seed ${seed}`, () => {
    const { problem, plan } = planned(seed)
    const shift = (randomOf(seed).next() - 0.5) * 20_000
    const shifted = solveTimes({
      ...problem,
      holds: problem.holds.map(({ moment, ...times }) => ({
        moment,
        ...Object.fromEntries(Object.entries(times).map(([bound, time]) => [bound, time + shift])),
      })),
      alone: (problem.alone ?? []).map(group => ({
        ...group,
        closed: (group.closed ?? []).map(([a, b]) => [a + shift, b + shift] as const),
      })),
    })
    assert.ok(shifted.kind === 'plan')
    near(plan, shifted, shift)
  })

  test(`a plan that fits all at their usual is given at cost 0, seed ${seed}`, () => {
    const { problem, plan } = planned(seed)
    const length = (from: string, to: string) => plan.at.get(to)! - plan.at.get(from)!
    const spans = problem.spans.map(span =>
      span.usual === undefined ? span : { ...span, usual: length(span.from, span.to) },
    )
    const again = solveTimes({ ...problem, spans })
    assert.ok(again.kind === 'plan' && again.proven)
    assert.ok(again.cost <= 1e-12)
    for (const { from, to, least, most, usual } of spans)
      if (usual !== undefined && least < most)
        assert.ok(Math.abs(again.at.get(to)! - again.at.get(from)! - usual) < 1e-6)
  })
}
