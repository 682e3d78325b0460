import assert from 'node:assert/strict'
import { test } from 'node:test'
import { openDay, openFound } from '../../src/day/plan/open-day.js'
import { Planning } from '../../src/day/plan/planning.js'
import { Weights } from '../../src/day/plan/weigh-list.js'
import { bread, momentOf, saturday } from './notation.js'

const quick = (name: string) =>
  bread(
    name,
    `Final dough:
       Flour 1000 g
       hands Mix: 10 min
       wait Bulk: 3–4 h
       hands Shape: 20 min
       wait Proof: 50–70 min
       bake Bake: 45 min`,
  )
const formulas = ['Wheat', 'Rye', 'Spelt'].map(quick)
const of = (pieces: number) => ({
  day: saturday(
    formulas.map(f => [f, pieces] as const),
    { asleep: [{ from: '22:30', until: '4:00' }], ready: '12:00' },
  ),
  formulas,
  leeway: 0.15,
})

test('a day planned in slices of one problem, and sent across as plain data, is the day planned at once', () => {
  const planning = new Planning(of(6))
  let slices = 0
  while (!planning.step(1)) slices += 1
  assert.ok(slices > 1)
  const sent = structuredClone(planning.found())
  const sheet = openFound(of(6), new Weights(formulas, undefined), sent)
  const atOnce = openDay(of(6).day, formulas)
  assert.ok(sheet.plan)
  assert.deepEqual(sheet.moments, atOnce.moments)
  assert.deepEqual(sheet.remarks, atOnce.remarks)
  const [first] = sheet.moments
  assert.deepEqual(sheet.working(first!.name), atOnce.working(first!.name))
})

test('before anything is found there is no answer, and no reason why not either', () => {
  const { answer } = new Planning(of(6)).found()
  assert.equal(answer, undefined)
})

test('an earlier answer is begun from', () => {
  const planning = new Planning(of(6))
  while (!planning.step());
  const { answer } = planning.found()
  assert.ok(answer?.kind === 'plan')
  const again = new Planning({ ...of(6), earlier: answer })
  while (!again.step());
  assert.deepEqual(
    openFound(of(6), new Weights(formulas, undefined), again.found()).moments.map(m => m.local),
    openFound(of(6), new Weights(formulas, undefined), planning.found()).moments.map(m => m.local),
  )
})

test('the nearest time that would do is on a minute, on the side that does', () => {
  // Mixed 7:00 and shaped 9:59.5 at the earliest: a bulk of 169.5 min at least, 10 min after mixing, ends at 9:59.5.
  const formula = bread(
    'Half',
    'Final dough:\n Flour 100 g\n hands Mix: 10 min\n wait Bulk: 169.5–180 min\n hands Shape: 10 min\n bake Bake: 45 min',
  )
  const day = saturday([[formula, 1]], { ready: undefined as never, begin: '7:00' })
  const moment = momentOf(day, [formula], 'Shape')
  const held = { ...day, holds: [{ moment, at: '2026-12-05T09:30' }] }
  const { conflict, conflictSentence } = openDay(held, [formula])
  const start = Date.parse('2026-12-05T00:00Z') / 60_000
  assert.deepEqual(
    conflict!.nearest.map(({ time, reason }) => [reason.of, time - start]),
    [
      ['begin', 6 * 60 + 30], // 6:30.5 at the latest
      ['held', 10 * 60],
    ],
  )
  assert.match(conflictSentence, /Begin at 6:30, or hold Shape at 10:00\.$/)
  const taken = { ...day, holds: [{ moment, at: '2026-12-05T10:00' }] }
  assert.equal(openDay(taken, [formula]).conflict, undefined)
})
