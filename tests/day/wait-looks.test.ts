import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { test } from 'node:test'
import { methodCautions } from '../../src/day/method/cautions.js'
import { feedingsOn } from '../../src/day/mixing/fed-on-day.js'
import { openDay } from '../../src/day/plan/open-day.js'
import { riseAt, standingIn, waitLooks } from '../../src/day/plan/wait-looks.js'
import { Weights } from '../../src/day/plan/weigh-list.js'
import type { Day } from '../../src/dough/document/day.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { larderWith } from '../../src/dough/larder/usual-larder.js'
import { readFormulas } from '../../src/exchange/index.js'
import { near } from './near.js'
import { bread, momentOf, saturday } from './notation.js'

const example = (name: string): Formula =>
  readFormulas(readFileSync(`examples/${name}.csv`, 'utf8')).formulas[0]!

function planned(formulas: readonly Formula[], more: Partial<Day> = {}) {
  const day = saturday(
    formulas.map(f => [f, 2]),
    more,
  )
  const weights = new Weights(formulas, larderWith([]))
  const sheetOf = (id: string) => weights.sheet(day, id)
  const { plan, conflictSentence } = openDay(day, formulas)
  assert.equal(conflictSentence, '')
  return { day, plan: plan!, sheetOf }
}

for (const [celsius, rise] of [
  [10, 1],
  [18, 1],
  [19.5, 0.875],
  [21, 0.75],
  [24, 0.525],
  [27, 0.3],
  [31, 0.3],
] as const)
  test(`at ${celsius} °C a dough has grown by ${rise * 100} % when its bulk is done`, () =>
    near(riseAt(celsius), rise))

const wheat = (bulk = '4 h, at 24 °C') =>
  bread(
    'Mill wheat',
    `Levain:
       Ripe starter 20 g
       Bread flour 90 g
       Water 90 g
       hands Mix: 10 min
       wait Ripen: 9 h, at 24 °C
     Soaker:
       Oats 100 g
       Water 100 g
       wait Soak: 8 h
     Final dough:
       Bread flour 900 g
       Water 650 g
       Soaker 200 g
       Levain 200 g
       hands Mix: 10 min
       wait Rest: 30 min
       hands Salt: 5 min
       wait Bulk: ${bulk}
       hands Shape: 20 min
       wait Retard: 12 h, in the fridge
       wait Proof: 1 h, at 24 °C
       bake Bake: 45 min
       wait Cool: 2 h`,
  )

test('what ripens and rises is looked for by what it is; soaking, resting and cooling are not', () => {
  const { plan, sheetOf } = planned([wheat()], { kitchen: 21 })
  const looks = waitLooks(plan, sheetOf)
  assert.deepEqual(
    looks.map(l => l.event.step.does),
    ['Ripen', 'Bulk', 'Retard', 'Proof'],
  )
  const [ripen, bulk, retard, proof] = looks.map(l => l.lookFor)
  assert.match(ripen!, /twice its height/)
  assert.match(bulk!, /grown by about 75 % of its volume/)
  assert.match(retard!, /firm to the touch/)
  assert.match(proof!, /a dent made with a finger/)
  assert.deepEqual(
    looks.map(l => [l.scaled.written, l.scaled.celsius]),
    [
      [24, 21],
      [24, 21],
      [undefined, 4],
      [24, 21],
    ],
  )
})

test('the baker’s own words of what to look for go before the usual ones', () => {
  const { plan, sheetOf } = planned([example('mill-wheat')], { kitchen: 22 })
  const ripen = waitLooks(plan, sheetOf).find(l => l.event.step.does === 'Ripen')!
  assert.equal(ripen.lookFor, 'doubled and still domed; it floats or smells of apples')
})

test('a dough with egg and milk is minded as it is planned: a cool day takes longer, a fridge of 5 °C is cold', () => {
  const buns = example('morning-buns')
  const minutes = (more: Partial<Day>) => {
    const { plan, sheetOf } = planned([buns], { ready: '12:00', ...more })
    const [caution, ...others] = methodCautions(sheetOf('b1')!, standingIn(plan))
    assert.deepEqual(others, [])
    assert.ok(caution?.code === 'perishableWarm' && caution.by === 'plan')
    return caution.minutes
  }
  // By its method 265 min: 55 by hand and twice 105 min at 26 °C; y(26) ÷ y(22) = 1.4069
  near(minutes({ kitchen: 26 }), 265, 0.06)
  near(minutes({ kitchen: 22 }), 55 + 210 * 1.4069, 0.06)
  near(minutes({ kitchen: 26, fridge: 5 }), 265, 0.06)
  assert.ok(minutes({ kitchen: 26, fridge: 8 }) > 265 + 8 * 60, 'a fridge of 8 °C is not')
})

test('a proofer of 38 °C is too warm for a levain that stands in it, whatever its method says', () => {
  const { plan, sheetOf } = planned([wheat('4 h, at 36 °C')], { kitchen: 20, proofer: 35.5 })
  const codes = methodCautions(sheetOf('b1')!, standingIn(plan)).map(c => c.code)
  assert.deepEqual(codes, ['starterTooWarm'])
})

test('a day’s builds are fed when their wait begins and ripe when they are first taken', () => {
  const formula = example('two-build-rye')
  const { day, plan, sheetOf } = planned([formula], { kitchen: 26, ready: '18:00' })
  const [first, second, ...others] = feedingsOn(day, plan, sheetOf)
  assert.deepEqual(others, [])
  assert.deepEqual([first!.stageName, first!.celsius, second!.stageName], ['First build', 26, 'Second build'])
  const at = (does: string, stage: string) => plan.at.get(momentOf(day, [formula], does, stage))
  assert.equal(first!.fed!.at, at('Ripen', 'First build'))
  assert.equal(first!.ripe!.at, at('Mix', 'Second build'))
  assert.equal(second!.fed!.at, at('Ripen', 'Second build'))
  assert.equal(second!.ripe!.at, at('Mix to a paste', 'Final dough'))
  assert.deepEqual(
    feedingsOn(day, undefined, sheetOf).map(f => [f.fed, f.ripe]),
    [
      [undefined, undefined],
      [undefined, undefined],
    ],
  )
})

test('a build that two breads share is ripe when the first of them takes it', () => {
  const [one, other] = [wheat(), { ...wheat(), name: 'Country' }]
  const { day, plan, sheetOf } = planned([one, other], {
    kitchen: 24,
    together: ['levain', 'soaker'],
    bakers: 2,
    ovens: [
      { id: 'a', name: 'A', between: 0, change: 0, heating: 0 },
      { id: 'b', name: 'B', between: 0, change: 0, heating: 0 },
    ],
  })
  const [levain, ...others] = feedingsOn(day, plan, sheetOf)
  assert.deepEqual(others, [])
  assert.deepEqual(levain!.breads, ['b1', 'b2'])
  const taken = ['b1', 'b2'].map(b => plan.at.get(momentOf(day, [one, other], 'Mix', 'Final dough', b))!)
  assert.equal(levain!.ripe!.at, Math.min(...taken))
})
