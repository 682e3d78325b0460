import assert from 'node:assert/strict'
import { test } from 'node:test'
import { Search, solveTimes, type TimePlan, type TimeProblem } from '../../src/times/index'
import { randomOf } from '../random'
import { randomProblem } from './random-problems'
import { timesOf } from './text'

/** So many loads of 20 minutes that would all begin at 100, of unlike leeway. */
function crowd(loads: number): TimeProblem {
  const lines = Array.from(
    { length: loads },
    (_, k) => `a ${40 - k}-${160 + k * 3}:100 p${k} \n p${k} 20 P${k}`,
  )
  const uses = lines.map((_, k) => `p${k}..P${k}`).join(', ')
  return timesOf(`${lines.join('\n')} \n a at 0 \n oven: ${uses}`)
}

function planOf(problem: TimeProblem, options = {}): TimePlan {
  const answer = solveTimes(problem, options)
  assert.ok(answer.kind === 'plan')
  return answer
}

test('a search in slices comes to the same answer as one in a single go', () => {
  const problem = crowd(5)
  const search = new Search(problem)
  let slices = 1
  while (!search.step(3)) slices += 1
  assert.ok(slices > 3)
  assert.deepEqual(search.answer(), planOf(problem))
})

test('what a search has found gets cheaper, and what may be left to find gets less', () => {
  const search = new Search(crowd(6))
  let { cost, gap } = search.progress
  assert.deepEqual([cost, gap], [Infinity, Infinity])
  while (!search.step(5)) {
    const now = search.progress
    assert.ok(now.cost <= cost)
    assert.ok(now.gap <= gap + 1e-9)
    cost = now.cost
    gap = now.gap
  }
  assert.equal(search.progress.gap, 0)
})

test('a search that is stopped gives the best so far and by how much at most it can be bettered', () => {
  const problem = crowd(6)
  const least = planOf(problem)
  assert.equal(least.proven, true)
  const search = new Search(problem)
  while (search.progress.cost === Infinity) search.step(1)
  const early = search.answer()
  assert.ok(early.kind === 'plan')
  assert.equal(early.proven, false)
  assert.ok(early.gap > 0)
  assert.ok(early.cost - early.gap <= least.cost + 1e-9)
  assert.ok(early.cost >= least.cost - 1e-9)
})

test('the limit stops the search, and the plan says that it is not proven', () => {
  const problem = crowd(6)
  const search = new Search(problem, { limit: 60 })
  while (!search.step());
  assert.equal(search.progress.relaxed, 60)
  const plan = search.answer()
  assert.ok(plan.kind === 'plan')
  assert.equal(plan.proven, false)
})

test('a limit too short for any plan still gives one that keeps everything', () => {
  const problem = crowd(6)
  const plan = planOf(problem, { limit: 1 })
  assert.equal(plan.proven, false)
  const times = Array.from({ length: 6 }, (_, k) => plan.at.get(`p${k}`)!).sort((a, b) => a - b)
  for (const [k, time] of times.entries()) if (k > 0) assert.ok(time - times[k - 1]! >= 20 - 1e-9)
})

test('loads alike go in the order in which they are given', () => {
  const names = ['p', 'q', 's', 't']
  const lines = names.map(name => `a 60-140 ${name} \n ${name} 10 ${name}x`).join('\n')
  for (const order of ['pqst', 'tsqp', 'qtps']) {
    const uses = [...order].map(name => `${name}..${name}x`).join(', ')
    const plan = planOf(timesOf(`${lines} \n a at 0 \n oven: ${uses}`))
    const sorted = names.toSorted((a, b) => plan.at.get(a)! - plan.at.get(b)!).join('')
    assert.equal(sorted, order)
    // 85, 95, 105, 115: 2·(15² + 5²) ÷ 80
    assert.ok(Math.abs(plan.cost - 6.25) < 1e-9)
  }
})

test('orders that cost nothing are settled by the order given as well', () => {
  const problem = timesOf('p 30 P \n q 30 Q \n p from 0 until 200 \n q from 0 until 200 \n oven: p..P, q..Q')
  const plan = planOf(problem)
  assert.deepEqual([plan.at.get('p'), plan.at.get('q')], [170, 200])
  const turned = {
    ...problem,
    alone: [{ ...problem.alone![0]!, uses: problem.alone![0]!.uses.toReversed() }],
  }
  const other = planOf(turned)
  assert.deepEqual([other.at.get('q'), other.at.get('p')], [170, 200])
})

for (let seed = 1; seed <= 60; seed++) {
  test(`an earlier answer to begin from does not change the answer, seed ${seed}`, () => {
    const random = randomOf(seed * 104_729)
    const problem = randomProblem(random)
    const earlier = solveTimes(problem)
    if (earlier.kind === 'conflict') return
    const moved = {
      ...problem,
      holds: problem.holds.map(({ moment, ...times }) => ({
        moment,
        ...Object.fromEntries(Object.entries(times).map(([bound, time]) => [bound, time + random.below(20)])),
      })),
    }
    const fresh = solveTimes(moved)
    const warm = solveTimes(moved, { earlier })
    assert.equal(warm.kind, fresh.kind)
    if (fresh.kind === 'conflict' || warm.kind === 'conflict') return
    for (const [moment, time] of fresh.at) assert.ok(Math.abs(warm.at.get(moment)! - time) < 1e-6, moment)
  })
}
