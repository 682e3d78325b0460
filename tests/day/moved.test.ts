import assert from 'node:assert/strict'
import { test } from 'node:test'
import { movedSentences, movedWaits } from '../../src/day/plan/moved.js'
import { movedSentence } from '../../src/day/plan/moved-words.js'
import { openDay } from '../../src/day/plan/open-day.js'
import type { Day } from '../../src/dough/document/day.js'
import { near } from './near.js'
import { bread, momentOf, saturday } from './notation.js'
import { workedWheat } from './worked-bread.js'

const asleep = [{ from: '22:30', until: '6:00' }]

function sentences(more: Partial<Day>, nameOf = (_: string) => ''): string[] {
  const formula = workedWheat()
  const { plan } = openDay(saturday([[formula, 6]], more), [formula])
  return movedSentences(plan!, nameOf)
}

test('where every wait is at its usual nothing is said', () => assert.deepEqual(sentences({}), []))

test('four waits that a night shortens by the same part are one sentence, with the reason', () => {
  // The worked check: each of the four waits with leeway is shorter by 26.9 % of it, the folds are untouched.
  // The longest of them is the retard, 2593.46 + 20 to 3375: 761.54 min instead of 810.
  const said = sentences({ asleep })
  assert.deepEqual(said, [
    'Because nobody is up before 6:00, four waits are up to 48 min shorter than usual (27 % of the time between their shortest and longest).',
  ])
  assert.deepEqual(
    sentences({ asleep }, () => 'Mill wheat'),
    [
      'Because nobody is up before 6:00, four waits of Mill wheat are up to 48 min shorter than usual (27 % of the time between their shortest and longest).',
    ],
  )
})

test('waits that are longer are told apart from those that are shorter', () => {
  // Salt held 30 min later than usual: 15 min of rest and bulk and retard before and after take it up.
  const formula = workedWheat()
  const day = saturday([[formula, 6]])
  const salt = momentOf(day, [formula], 'Salt')
  const sheet = openDay({ ...day, holds: [{ moment: salt, at: '2026-12-04T15:00' }] }, [formula])
  const moved = movedWaits(sheet.plan!)
  // Usual back from 9:00: bake 8:15, retard 18:45, divide 18:25, bulk 14:25, salt 14:20. Held at 15:00, 40 min later:
  // bulk and retard have 40 min less of 60 + 180 leeway each; all before moves along.
  assert.deepEqual(
    moved.map(({ count, shorter }) => [count, shorter]),
    [[2, true]],
  )
  near(moved[0]!.least, 40 / 240)
  near(moved[0]!.most, 40 / 240)
  const earlier = openDay({ ...day, holds: [{ moment: salt, at: '2026-12-04T14:00' }] }, [formula])
  assert.deepEqual(
    movedSentences(earlier.plan!, () => ''),
    [
      'Because Salt is held at 14:00, two waits are up to 15 min longer than usual (8 % of the time between their shortest and longest).', // 20 of 240; of the retard’s 180, 15
    ],
  )
})

test('what moved of many breads is one sentence', () => {
  // Out at 9:00, so in at 8:15: bulk of a usual 4 h has 3 h 30, 4 h 30 and 3 h of its 3–5 h.
  const loaf = (name: string) =>
    bread(name, 'Final dough:\n Flour 1000 g\n hands Mix: 10 min\n wait Bulk: 3–5 h\n bake Bake: 45 min')
  const formulas = ['Wheat', 'Rye', 'Spelt'].map(loaf)
  const [first] = saturday([]).ovens
  const day = saturday(
    formulas.map(f => [f, 6] as const),
    { bakers: 3, ovens: formulas.map((_, i) => ({ ...first!, id: `oven${i}` })) },
  )
  const breads = day.breads.map((b, i) => ({ ...b, oven: `oven${i}` }))
  const holds = ['04:35', '03:35', '05:05'].map((at, i) => ({
    moment: momentOf(day, formulas, 'Mix', undefined, `b${i + 1}`),
    at: `2026-12-05T${at}`,
  }))
  const { plan } = openDay({ ...day, breads, holds }, formulas)
  assert.deepEqual(
    movedSentences(plan!, () => 'x'),
    ['Because Mix is held at 3:35, two waits are up to 1 h shorter than usual and one is 30 min longer.'],
  )
})

// A wait is half of its leeway from its usual when it is as short or as long as its step allows.
for (const [least, most, shorter, said] of [
  [0.1, 0.3, true, 'Three waits are up to 20 min shorter than usual.'],
  [
    0.1,
    0.5,
    true,
    'Three waits are up to 20 min shorter than usual, at least one of them as short as its step allows.',
  ],
  [
    0.01,
    0.4996,
    false,
    'Three waits are up to 20 min longer than usual, at least one of them as long as its step allows.',
  ],
  [
    0.5,
    0.5,
    false,
    'Three waits are up to 20 min longer than usual (50 % of the time between their shortest and longest).',
  ],
] as const)
  test(`waits moved by ${least} to ${most} of their leeway: ${said}`, () =>
    assert.equal(movedSentence({ count: 3, least, most, minutes: 20, shorter }, [], undefined), said))
