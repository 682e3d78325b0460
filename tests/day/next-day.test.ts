import assert from 'node:assert/strict'
import { test } from 'node:test'
import { nextDay } from '../../src/day/out/next-day.js'
import { saturday } from './notation.js'

const days = ['2026-12-05', '2026-12-19', '2026-12-12'].map(date => saturday([], { id: date, date }))

for (const [from, next] of [
  ['2026-12-01', '2026-12-05'],
  ['2026-12-05', '2026-12-05'],
  ['2026-12-06', '2026-12-12'],
  ['2026-12-20', '2026-12-19'],
] as const)
  test(`on ${from} the day to come, or else the last, is ${next}`, () => {
    assert.equal(nextDay(days, from)?.id, next)
  })

test('without days there is none', () => assert.equal(nextDay([], '2026-12-01'), undefined))
