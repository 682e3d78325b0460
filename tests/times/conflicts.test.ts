import assert from 'node:assert/strict'
import { test } from 'node:test'
import {
  nearestTimes,
  shortfallOf,
  solveTimes,
  type TimeConflict,
  type TimeProblem,
} from '../../src/times/index'
import { randomOf, rounds } from '../random'
import { oneBread } from './one-bread'
import { waysOf } from './oracle'
import { randomProblem } from './random-problems'
import { timesOf } from './text'

function conflictOf(problem: TimeProblem): TimeConflict {
  const answer = solveTimes(problem)
  assert.ok(answer.kind === 'conflict')
  return answer
}

/** The problem with the conflict's members only, or with all of them but one. */
function only(problem: TimeProblem, { spans, holds, groups }: TimeConflict, left?: string): TimeProblem {
  return {
    moments: problem.moments,
    spans: problem.spans.filter((_, k) => spans.includes(k) && left !== `span ${k}`),
    holds: problem.holds.filter((_, k) => holds.includes(k) && left !== `hold ${k}`),
    alone: (problem.alone ?? []).filter(({ name }) => groups.includes(name) && left !== `group ${name}`),
  }
}

/** The nearest times, to a billionth of a minute. */
const nearestOf = (problem: TimeProblem, conflict: TimeConflict) =>
  nearestTimes(problem, conflict).map(found => ({ ...found, time: Math.round(found.time * 1e9) / 1e9 }))

const hasPlan = (problem: TimeProblem) => !waysOf(problem).next().done

test('mixing at 9:00 and out of the oven by 13:00 leaves bulk, proof and baking too little', () => {
  const problem = timesOf(`
    mix 15 bulk
    bulk 210-270 shape
    shape 45 bake
    bake 40 out
    out 60-120 cold
    mix at 540
    out until 780`)
  const conflict = conflictOf(problem)
  assert.deepEqual(conflict, {
    kind: 'conflict',
    spans: [0, 1, 2, 3],
    holds: [0, 1],
    groups: [],
    proven: true,
  })
  // 15 + 210 + 45 + 40 = 310 for 240
  assert.deepEqual(shortfallOf(problem, conflict), {
    minutes: 70,
    steps: [
      { kind: 'hold', index: 1, bound: 'until', minutes: 780 },
      { kind: 'span', index: 3, bound: 'least', minutes: 40 },
      { kind: 'span', index: 2, bound: 'least', minutes: 45 },
      { kind: 'span', index: 1, bound: 'least', minutes: 210 },
      { kind: 'span', index: 0, bound: 'least', minutes: 15 },
      { kind: 'hold', index: 0, bound: 'at', minutes: 540 },
    ],
  })
  assert.deepEqual(nearestOf(problem, conflict), [
    { hold: 0, bound: 'at', time: 470, proven: true },
    { hold: 1, bound: 'until', time: 850, proven: true },
  ])
})

test('waits that cannot last as long as two holds are apart say so by their most', () => {
  const problem = timesOf('a 10-20 b \n b 30-40 c \n a at 0 \n c from 75 until 90')
  const conflict = conflictOf(problem)
  assert.deepEqual(
    [conflict.spans, conflict.holds],
    [
      [0, 1],
      [0, 1],
    ],
  )
  const shortfall = shortfallOf(problem, conflict)!
  assert.equal(shortfall.minutes, 15)
  assert.deepEqual(
    shortfall.steps.map(({ bound }) => bound),
    ['at', 'most', 'most', 'from'],
  )
  assert.deepEqual(nearestOf(problem, conflict), [
    { hold: 0, bound: 'at', time: 15, proven: true },
    { hold: 1, bound: 'from', time: 60, proven: true },
  ])
})

test('of several conflicts the one with the fewest members is told', () => {
  const problem = timesOf('a 10 b \n b 10 c \n c 10 d \n a at 0 \n d at 20 \n c at 30 \n b 40 c')
  const conflict = conflictOf(problem)
  assert.deepEqual([conflict.spans, conflict.holds], [[1, 3], []])
  assert.equal(shortfallOf(problem, conflict)!.minutes, 30)
  assert.deepEqual(nearestOf(problem, conflict), [])
})

test('two loads held to the same time are at odds over the oven alone', () => {
  const problem = timesOf('p 30 P \n q 30 Q \n q 5-9 z \n P at 100 \n Q at 110 \n oven between 5: p..P, q..Q')
  const conflict = conflictOf(problem)
  // However short p–P were, it would lie neither before 75 nor after 115.
  assert.deepEqual([conflict.spans, conflict.holds, conflict.groups], [[1], [0, 1], ['oven']])
  assert.equal(shortfallOf(problem, conflict), undefined)
  // P ends at 75 at the latest before q begins at 80; Q ends at 135 at the earliest after P at 100.
  assert.deepEqual(nearestOf(problem, conflict), [
    { hold: 0, bound: 'at', time: 75, proven: true },
    { hold: 1, bound: 'at', time: 135, proven: true },
  ])
})

test('a hold goes to the nearer side of closed hours', () => {
  const problem = timesOf('m 10 M \n M at 100 \n hands closed 60-120: m..M')
  const conflict = conflictOf(problem)
  assert.deepEqual([conflict.holds, conflict.groups], [[0], ['hands']])
  assert.deepEqual(nearestOf(problem, conflict), [{ hold: 0, bound: 'at', time: 130, proven: true }])
})

test('more loads than the oven has time for are a conflict of the oven, found without trying every order', () => {
  const loads = Array.from({ length: 14 }, (_, k) => `p${k} 30 P${k} \n p${k} from 0 \n P${k} until 400`)
  const uses = loads.map((_, k) => `p${k}..P${k}`).join(', ')
  const problem = timesOf(`${loads.join('\n')} \n oven: ${uses}`)
  const conflict = conflictOf(problem)
  assert.deepEqual(conflict.groups, ['oven'])
  assert.equal(conflict.spans.length, 14) // thirteen take 390
  assert.equal(conflict.holds.length, 28)
  assert.equal(conflict.proven, true)
})

test('a levain that cannot be mixed so late names the whole chain, without the folds', () => {
  const problem = oneBread('out at 3420 \n levain from 1900')
  const conflict = conflictOf(problem)
  const names = conflict.spans.map(k => problem.spans[k]!.from)
  assert.deepEqual(names, [
    'levain',
    'levain-mixed',
    'mix',
    'mixed',
    'salt',
    'salted',
    'divide',
    'shaped',
    'bake',
  ])
  // 10 + 480 + 10 + 30 + 5 + 210 + 20 + 720 + 45 = 1530 before 3420
  assert.deepEqual(nearestOf(problem, conflict), [
    { hold: 0, bound: 'at', time: 3430, proven: true },
    { hold: 1, bound: 'from', time: 1890, proven: true },
  ])
})

for (let seed = 1; seed <= rounds(400); seed++) {
  const problem = randomProblem(randomOf(seed * 31))
  if (hasPlan(problem)) continue
  test(`a conflict is one, and is none without any of its members, seed ${seed * 31}`, () => {
    const conflict = conflictOf(problem)
    assert.equal(conflict.proven, true)
    assert.equal(hasPlan(only(problem, conflict)), false)
    const members = [
      ...conflict.spans.map(k => `span ${k}`),
      ...conflict.holds.map(k => `hold ${k}`),
      ...conflict.groups.map(name => `group ${name}`),
    ]
    for (const member of members) assert.ok(hasPlan(only(problem, conflict, member)), member)
  })

  test(`a hold moved to its nearest time fits, and a little nearer does not, seed ${seed * 31}`, () => {
    const conflict = conflictOf(problem)
    const nearest = nearestTimes(problem, conflict)
    for (const hold of conflict.holds) {
      const found = nearest.find(entry => entry.hold === hold)
      const others = problem.holds.filter((_, k) => k !== hold)
      if (!found) {
        assert.equal(hasPlan({ ...problem, holds: others }), false)
        continue
      }
      const held = problem.holds[hold]!
      const moved = (time: number) =>
        hasPlan({ ...problem, holds: [...others, { ...held, [found.bound]: time }] })
      const wanted = held[found.bound]!
      assert.ok(found.proven)
      assert.ok(moved(found.time), `${found.time} for ${wanted}`)
      for (const off of [0.001, Math.abs(found.time - wanted) / 2]) {
        const nearer = Math.max(0, Math.abs(found.time - wanted) - off)
        assert.ok(!moved(wanted + nearer))
        assert.ok(!moved(wanted - nearer))
      }
    }
  })
}
