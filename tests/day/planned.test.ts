import assert from 'node:assert/strict'
import { test } from 'node:test'
import { dayProblem } from '../../src/day/course/day-problem.js'
import { plannedDay } from '../../src/day/plan/planned.js'
import { solveTimes } from '../../src/times/index.js'
import { bread, saturday } from './notation.js'

test('a plan than which none is cheaper is proven, though orders of equal cost are left to settle', () => {
  const formula = bread(
    'Rolls',
    'Final dough:\n Flour 600 g\n hands Mix: 10 min\n wait Proof: 1–2 h\n bake Bake: 15 min',
  )
  const day = saturday([[formula, 6]])
  const written = dayProblem(day, new Map([[formula.id, formula]]), { leeway: 0.15, strict: true })
  const plan = solveTimes(written.problem)
  assert.ok(plan.kind === 'plan')
  for (const [proven, gap, said] of [
    [true, 0, true],
    [false, 0, true],
    [false, 0.5, false],
  ] as const)
    assert.equal(plannedDay(day, written, { ...plan, proven, gap }).proven, said)
})
