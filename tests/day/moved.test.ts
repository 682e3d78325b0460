import assert from 'node:assert/strict'
import { test } from 'node:test'
import { movedSentences, movedWaits } from '../../src/day/plan/moved.js'
import { openDay } from '../../src/day/plan/open-day.js'
import type { Day } from '../../src/dough/document/day.js'
import { near } from './near.js'
import { bread, momentOf, saturday } from './notation.js'

const asleep = [{ from: '22:30', until: '6:00' }]

const millWheat = () =>
  bread(
    'Mill wheat',
    `Levain:
       Ripe starter 40 g
       Bread flour 100 g
       Water 80 g
       hands Mix: 10 min
       wait Ripen: 8–10 h
     Final dough:
       Bread flour 1000 g
       Water 690 g
       Levain 210 g
       hands Mix: 10 min
       wait Rest: 30–60 min
       hands Salt: 5 min
       wait Bulk: 3.5–4.5 h, 2 × 5 min every 30 min
       hands Divide and shape: 20 min
       wait Retard: 12–15 h
       bake Bake: 45 min`,
  )

function sentences(more: Partial<Day>, nameOf = (_: string) => ''): string[] {
  const formula = millWheat()
  const { plan } = openDay(saturday([[formula, 6]], more), [formula])
  return movedSentences(plan!, nameOf)
}

test('where every wait is at its usual nothing is said', () => assert.deepEqual(sentences({}), []))

test('four waits that a night shortens by the same part are one sentence, with the reason', () => {
  // The worked check: each of the four waits with leeway is shorter by 26.9 % of it, the folds are untouched.
  const said = sentences({ asleep })
  assert.deepEqual(said, ['Because nobody is up before 6:00, four waits are 27 % of their leeway shorter.'])
  assert.deepEqual(
    sentences({ asleep }, () => 'Mill wheat'),
    ['Because nobody is up before 6:00, four waits of Mill wheat are 27 % of their leeway shorter.'],
  )
})

test('waits that are longer are told apart from those that are shorter', () => {
  // Salt held 30 min later than usual: 15 min of rest and bulk and retard before and after take it up.
  const formula = millWheat()
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
      'Because Salt is held at 14:00, two waits are 8 % of their leeway longer.', // 20 of 240
    ],
  )
})
