import assert from 'node:assert/strict'
import { test } from 'node:test'
import { solveTimes, type TimeProblem } from '../../src/times/index'
import { alikeOrders } from '../../src/times/orders/alike'
import { randomOf, rounds } from '../random'
import { choicesOf, triedAll } from './oracle'
import { alikeProblem, randomProblem } from './random-problems'
import { timesOf } from './text'

// Each problem is solved a second time by trying every order; see oracle.ts.

/** Against trying all orders: as cheap as any, and of those as cheap the one that is preferred. */
function asEnumerated(problem: TimeProblem): void {
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
}

for (let seed = 1; seed <= rounds(50); seed++)
  test(`the cost is the least of all orders, and the first of equal ones is taken, seed ${seed}`, () =>
    asEnumerated(randomProblem(randomOf(seed))))

for (let seed = 1; seed <= rounds(30); seed++)
  test(`loads that are alike lose no plan by the order they are looked at in, seed ${seed}`, () =>
    asEnumerated(alikeProblem(randomOf(seed * 31))))

/** The same where what was held at a time may be earlier without an end, at a cost that grows. */
function earlier(problem: TimeProblem): TimeProblem {
  const by = (moment: string) => `${moment} by`
  const until = ({ at, until }: TimeProblem['holds'][number]) => at ?? until
  const held = problem.holds.filter(hold => until(hold) !== undefined)
  return {
    ...problem,
    moments: [...problem.moments, ...held.map(({ moment }) => by(moment))],
    spans: [
      ...problem.spans,
      ...held.map(({ moment }, i) => ({
        from: moment,
        to: by(moment),
        least: 0,
        most: Number.POSITIVE_INFINITY,
        usual: 0,
        leeway: 30 + 40 * i,
      })),
    ],
    holds: held.map(hold => ({ moment: by(hold.moment), at: until(hold)! })),
  }
}

for (let seed = 1; seed <= rounds(20); seed++)
  test(`what may be early without an end is so as little as it has to be, seed ${seed}`, () =>
    asEnumerated(earlier(randomProblem(randomOf(seed * 53)))))

test('of equal orders the first given goes before the others, even between two that are alike', () => {
  // Two loads alike and one other, all of 20 min that would begin at 100: at 80, 100 and 120 in any order
  const lines = ['p', 'q', 's'].map(name => `a 60-140 ${name} \n ${name} 20 ${name}x`).join('\n')
  for (const order of ['pqs', 'qsp', 'spq']) {
    const uses = [...order].map(name => `${name}..${name}x`).join(', ')
    const plan = solveTimes(timesOf(`${lines} \n a at 0 \n oven: ${uses}`))
    assert.ok(plan.kind === 'plan' && plan.proven)
    assert.equal([...order].toSorted((a, b) => plan.at.get(a)! - plan.at.get(b)!).join(''), order)
  }
})

test('what is alike is found through all that hangs on it, and nothing else', () => {
  const loads = (more = '') =>
    timesOf(
      `a 60-140 p \n p 20 px \n px 10-30 py \n a 60-140 q \n q 20 qx \n qx 10-30 qy \n a 60-140 r \n r 20 rx \n rx 10-30 ry \n a at 0 ${more} \n oven: p..px, q..qx, r..rx`,
    )
  const fixed = (more?: string) => alikeOrders(loads(more)) // of p q, p r, q r
  assert.deepEqual(fixed(), [0, 1, 2])
  assert.deepEqual(fixed('\n qy until 300'), [1])
  assert.deepEqual(fixed('\n py until 300 \n qy until 300 \n ry until 300'), [0, 1, 2])
  assert.deepEqual(fixed('\n qy 5-10 z'), [1])
  assert.deepEqual(fixed('\n px 0-100 q'), [])
  assert.deepEqual(fixed('\n hands: p..px'), [2])
  assert.deepEqual(fixed('\n hands: p..px, q..qx, r..rx'), [0, 1, 2]) // in one group: the other follows
})
