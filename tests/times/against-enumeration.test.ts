import assert from 'node:assert/strict'
import { test } from 'node:test'
import { solveTimes } from '../../src/times/index'
import { randomOf } from '../random'
import { choicesOf, triedAll } from './oracle'
import { randomProblem } from './random-problems'

// Each problem is solved a second time by trying every order; see oracle.ts.

for (let seed = 1; seed <= 120; seed++) {
  test(`the cost is the least of all orders, and the first of equal ones is taken, seed ${seed}`, () => {
    const problem = randomProblem(randomOf(seed))
    const answer = solveTimes(problem)
    const tried = triedAll(problem)
    assert.equal(answer.kind, tried.length > 0 ? 'plan' : 'conflict')
    if (answer.kind === 'conflict') return
    assert.ok(answer.proven)
    const least = Math.min(...tried.map(way => way.cost))
    assert.ok(Math.abs(answer.cost - least) <= 1e-6 * Math.max(1, least), `${answer.cost} for ${least}`)
    const first = tried.find(way => way.cost <= least + 1e-7 * Math.max(1, least))!
    const time = (moment: number) => answer.at.get(problem.moments[moment]!) ?? 0
    for (const [k, sides] of choicesOf(problem).entries()) {
      const { from, to, limit } = sides[Number(first.sides[k])]!
      assert.ok(time(to) - time(from) <= limit + 1e-8, `choice ${k} of ${first.sides}`)
    }
    for (const { from, to, usual, least: low, most } of problem.spans) {
      if (usual === undefined || low === most) continue
      const length = first.x[problem.moments.indexOf(to)]! - first.x[problem.moments.indexOf(from)]!
      const found = answer.at.get(to)! - answer.at.get(from)!
      assert.ok(Math.abs(length - found) < 1e-3, `${from} to ${to}: ${found} for ${length}`)
    }
  })
}
