import assert from 'node:assert/strict'
import { test } from 'node:test'
import { solveTimes, type TimeProblem } from '../../src/times/index'
import { oneBread, oneBreadByDay } from './one-bread'

// With the hands closed the levain is mixed at 1800 at the earliest, 105 later than usual would be. The four waits
// with leeway (120, 30, 60, 180: 390 together) each give 105 ÷ 390 of it; the cost is 105² ÷ 390.

const part = 105 / 390

function planOf(problem: TimeProblem) {
  const answer = solveTimes(problem)
  assert.ok(answer.kind === 'plan' && answer.proven)
  const time = (moment: string) => answer.at.get(moment)!
  const near = (moment: string, expected: number, tolerance = 1e-9) =>
    assert.ok(Math.abs(time(moment) - expected) <= tolerance, `${moment} at ${time(moment)}, not ${expected}`)
  return { answer, time, near }
}

test('one bread is planned back from 9:00, every wait at its usual', () => {
  const { answer, near } = planOf(oneBread())
  assert.equal(answer.cost, 0)
  const expected: readonly [string, number][] = [
    ['levain', 1695],
    ['mix', 2245],
    ['salt', 2300],
    ['fold-1', 2335],
    ['fold-2', 2370],
    ['divide', 2545],
    ['bake', 3375],
    ['out', 3420],
  ]
  for (const [moment, time] of expected) near(moment, time)
})

test('while the hands sleep every wait gives the same part of its leeway, and the folds none', () => {
  const { answer, time, near } = planOf(oneBreadByDay())
  near('levain', 1800)
  near('mix', 1810 + 540 - 120 * part)
  near('mix', 2317.69, 0.005)
  near('salt', 2364.62, 0.005)
  near('fold-1', 2399.62, 0.005)
  near('fold-2', 2434.62, 0.005)
  near('divide', 2593.46, 0.005)
  near('bake', 3375)
  assert.ok(Math.abs(answer.cost - (105 * 105) / 390) < 1e-9)
  assert.equal(answer.cost.toFixed(3), '28.269')
  const waits: readonly [string, string, number, number][] = [
    ['levain-mixed', 'mix', 540, 120],
    ['mixed', 'salt', 45, 30],
    ['salted', 'divide', 240, 60],
    ['shaped', 'bake', 810, 180],
  ]
  for (const [from, to, usual, leeway] of waits) {
    const shorter = (usual - (time(to) - time(from))) / leeway
    assert.ok(Math.abs(shorter - part) < 1e-9)
    assert.equal((shorter * 100).toFixed(1), '26.9')
  }
  for (const [from, to] of [
    ['salted', 'fold-1'],
    ['folded-1', 'fold-2'],
  ] as const)
    assert.ok(Math.abs(time(to) - time(from) - 30) < 1e-9)
})
