import assert from 'node:assert/strict'
import { test } from 'node:test'
import { totalsToWeigh } from '../../src/day/out/totals.js'
import { openDay } from '../../src/day/plan/open-day.js'
import { near } from './near.js'
import { bread, saturday } from './notation.js'

test('all that a day needs of an ingredient is added over stages and breads, and no stage is weighed twice', () => {
  const wheat = bread(
    'Mill wheat',
    `Levain:
       Ripe starter 40 g
       Bread flour 100 g
       Water 80 g
       hands Mix: 10 min
       wait Ripen: 8–10 h
     Final dough:
       Bread flour 800 g
       Water 560 g
       Salt 20 g
       Levain 220 g
       hands Mix: 10 min
       hands Salt: 5 min, adds Salt
       wait Proof: 2–6 h
       bake Bake: 45 min, 2 at once`,
  )
  const flat = bread(
    'Flatbread',
    'Final dough:\n bread  flour 600 g\n Water 400 g\n hands Mix: 10 min\n bake Bake: 5 min',
  )
  // 1,600 g of wheat dough × 9/4 for four of 900 g; 1,000 g of flatbread × 9/10 for one
  const day = saturday([
    [wheat, 4],
    [flat, 1],
  ])
  const totals = totalsToWeigh(openDay(day, [wheat, flat]), [wheat, flat])
  assert.deepEqual(
    totals.map(t => t.ingredient),
    ['Bread flour', 'Water', 'Ripe starter', 'Salt'],
  )
  for (const [i, grams] of [900 * 2.25 + 540, 640 * 2.25 + 360, 40 * 2.25, 20 * 2.25].entries())
    near(totals[i]!.grams!, grams, 1e-9)
})

test('what is not known of one bread is not known in all', () => {
  const wheat = bread(
    'Mill wheat',
    'Final dough:\n Bread flour 600 g\n Seeds 1 handful\n hands Mix: 10 min\n bake Bake: 45 min',
  )
  const totals = totalsToWeigh(openDay(saturday([[wheat, 1]]), [wheat]), [wheat])
  assert.equal(totals.find(t => t.ingredient === 'Seeds')!.grams, undefined)
})

test('what goes in when the loads begin to wait is weighed once, however many they are', () => {
  const rolls = bread(
    'Seeded rolls',
    'Final dough:\n Flour 600 g\n Water 290 g\n Seeds 10 g\n hands Mix: 10 min\n wait Proof: 1–5 h, adds Seeds\n bake Bake: 15 min, 2 at once',
  )
  const sheet = openDay(saturday([[rolls, 6]]), [rolls])
  assert.equal(sheet.plan!.events.filter(e => e.step.does === 'Proof').length, 3)
  near(totalsToWeigh(sheet, [rolls]).find(t => t.ingredient === 'Seeds')!.grams!, 60) // of 5,400 g
})

test('what a day weighs is in the scale’s steps, and its totals are the sums of what is weighed', () => {
  const loaf = bread(
    'Loaf',
    'Final dough:\n Flour 100%\n Water 71%\n Salt 2%\n hands Mix: 10 min\n bake Bake: 45 min',
  )
  // 1,000 g of dough from 173 parts: 578.03 g flour, 410.40 g water, 11.56 g salt.
  const day = { ...saturday([[loaf, 1]]) }
  const sized = {
    ...day,
    breads: day.breads.map(one => ({
      ...one,
      batch: { make: 'dough' as const, grams: 1000, loss: 0, bakeLoss: 0 },
    })),
  }
  const sheet = openDay(sized, [loaf])
  const mix = sheet.plan!.events.find(e => e.step.does === 'Mix')!
  assert.deepEqual(
    sheet.weighList(mix.begins).map(({ ingredient, weighed }) => [ingredient, weighed]),
    [
      ['Flour', 578],
      ['Water', 410],
      ['Salt', 12],
    ],
  )
  assert.deepEqual(
    totalsToWeigh(sheet, [loaf]).map(({ grams }) => grams),
    [578, 410, 12],
  )
})
