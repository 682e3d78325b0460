import assert from 'node:assert/strict'
import { test } from 'node:test'
import { ovenDays } from '../../src/day/plan/loads.js'
import { openDay } from '../../src/day/plan/open-day.js'
import { remarkSentence } from '../../src/day/plan/words.js'
import type { Oven } from '../../src/dough/document/day.js'
import { bread, saturday } from './notation.js'

const loaf = (name: string, bake: string, proof = '2–6 h') =>
  bread(name, `Final dough:\n Flour 1000 g\n hands Shape: 10 min\n wait Proof: ${proof}\n ${bake}`)
const clock = (instant: number) => new Date(Math.round(instant) * 60_000).toISOString().slice(11, 16)
const stone: Oven = { id: 'stone', name: 'Stone oven', atOnce: 6, between: 15, change: 0, heating: 60 }

test('a load is what goes in at once, heated up before the first; the last may not be full', () => {
  const wheat = loaf('Mill wheat', 'bake Bake: 45 min, at 240 °C')
  const { plan } = openDay(saturday([[wheat, 14]], { ovens: [stone] }), [wheat])
  const [{ oven, heatings, loads }, ...others] = ovenDays(plan!) as [ReturnType<typeof ovenDays>[0]]
  assert.deepEqual([oven, others.length], [stone, 0])
  // three loads of 45 min with 15 between, the last out at 9:00
  assert.deepEqual(
    loads.map(l => [clock(l.from), clock(l.until), l.number, l.of, l.pieces, l.atOnce, l.celsius]),
    [
      ['06:15', '07:00', 1, 3, 6, 6, 240],
      ['07:15', '08:00', 2, 3, 6, 6, 240],
      ['08:15', '09:00', 3, 3, 2, 6, 240],
    ],
  )
  assert.deepEqual(
    heatings.map(({ from, until, asleep }) => [clock(from), clock(until), asleep]),
    [['05:15', '06:15', false]],
  )
})

test('steps that bake one after the other are one load, and each oven has its own', () => {
  const pot = loaf('Mill wheat', 'bake Bake covered: 25 min, at 240 °C\n bake Bake open: 20 min, at 220 °C')
  const rolls = loaf('Rolls', 'bake Bake: 15 min, 24 at once')
  const deck: Oven = { id: 'deck', name: 'Deck', between: 5, change: 0, heating: 0 }
  const day = saturday(
    [
      [pot, 4],
      [rolls, 20],
    ],
    { ovens: [stone, deck], bakers: 2 },
  )
  const breads = day.breads.map((b, i) => (i === 1 ? { ...b, oven: 'deck' } : b))
  const { plan } = openDay({ ...day, breads }, [pot, rolls])
  assert.deepEqual(
    ovenDays(plan!).map(({ oven, heatings, loads }) => [
      oven.name,
      heatings.length > 0,
      loads.map(l => [clock(l.from), clock(l.until), l.pieces, l.atOnce, l.celsius]),
    ]),
    [
      ['Stone oven', true, [['08:15', '09:00', 4, 6, 240]]],
      ['Deck', false, [['08:45', '09:00', 20, 24, undefined]]],
    ],
  )
})

test('a day on which nothing is baked has no loads', () => {
  const soaker = bread('Soaker', 'Final dough:\n Seeds 100 g\n hands Soak: 5 min')
  assert.deepEqual(ovenDays(openDay(saturday([[soaker, 1]]), [soaker]).plan!), [])
})

test('after a long pause an oven is heated up anew; where nobody is up to switch it on that is said', () => {
  const wheat = loaf('Mill wheat', 'bake Bake: 45 min, at 240 °C', '9–12 h')
  const rolls = loaf('Rolls', 'bake Bake: 15 min')
  const day = saturday(
    [
      [wheat, 6],
      [rolls, 6],
    ],
    { ovens: [stone], asleep: [{ from: '22:30', until: '7:30' }] },
  )
  const breads = day.breads.map((b, i) => (i === 1 ? { ...b, ready: '12:00' } : b))
  const sheet = openDay({ ...day, breads }, [wheat, rolls])
  const [{ heatings }] = ovenDays(sheet.plan!) as [ReturnType<typeof ovenDays>[0]]
  // In at 8:15 and out at 9:00; the rolls at 11:45, 2 h 45 later. An hour each to heat up.
  assert.deepEqual(
    heatings.map(({ from, until, asleep }) => [clock(from), clock(until), asleep]),
    [
      ['07:15', '08:15', true],
      ['10:45', '11:45', false],
    ],
  )
  assert.deepEqual(sheet.remarks.filter(r => r.code === 'heats asleep').map(remarkSentence), [
    'Stone oven has to heat up from 7:15, when nobody is up: set its timer if it has one, or be ready later.',
  ])
})
