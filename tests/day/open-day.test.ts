import assert from 'node:assert/strict'
import { test } from 'node:test'
import { readLocal } from '../../src/day/course/clock.js'
import { earlySaid } from '../../src/day/plan/early-words.js'
import { ovenDays } from '../../src/day/plan/loads.js'
import { openDay } from '../../src/day/plan/open-day.js'
import { Weights } from '../../src/day/plan/weigh-list.js'
import { remarkSentence } from '../../src/day/plan/words.js'
import { near } from './near.js'
import { bread, momentOf, saturday } from './notation.js'
import { workedWheat } from './worked-bread.js'

/** Minutes since the midnight before the day before the day: as the worked check counts. */
const minute = (local: string) => {
  const { date, minutes } = readLocal(local)!
  return (Date.parse(`${date}T00:00Z`) - Date.parse('2026-12-03T00:00Z')) / 60_000 + minutes
}

test('one bread back from 9:00: every wait at its usual, the levain at 4:15 the day before the day before', () => {
  const formula = workedWheat()
  const day = saturday([[formula, 6]])
  const sheet = openDay(day, [formula])
  assert.equal(sheet.conflict, undefined)
  const at = (does: string, stage?: string) =>
    sheet.plan!.at.get(momentOf(day, [formula], does, stage))! - Date.parse('2026-12-03T00:00Z') / 60_000
  near(at('Mix', 'Levain'), 1695)
  near(at('Mix', 'Final dough'), 2245)
  near(at('Divide and shape'), 2545)
  near(at('Bake'), 3375)
  assert.ok(sheet.plan!.cost < 1e-9)
  assert.equal(minute(sheet.moments[0]!.local), 1695)
})

test('with the night closed four waits are shorter by the same part of their leeway, and the folds untouched', () => {
  const formula = workedWheat()
  const day = saturday([[formula, 6]], { asleep: [{ from: '22:30', until: '6:00' }] })
  const sheet = openDay(day, [formula])
  const start = Date.parse('2026-12-03T00:00Z') / 60_000
  const at = (does: string, stage?: string, more = '') =>
    sheet.plan!.at.get(momentOf(day, [formula], does, stage) + more)! - start
  near(at('Mix', 'Levain'), 1800, 1e-7)
  near(at('Mix', 'Final dough'), 2317.69, 1e-5)
  near(at('Salt'), 2364.62, 1e-5)
  near(at('Bulk', undefined, ' time 1'), 2399.62, 1e-5)
  near(at('Bulk', undefined, ' time 2'), 2434.62, 1e-5)
  near(at('Divide and shape'), 2593.46, 1e-5)
  near(at('Bake'), 3375, 1e-7)
  near(sheet.plan!.cost, 28.269, 1e-4)
  const { title, words, because } = sheet.working(momentOf(day, [formula], 'Mix', 'Final dough'))
  assert.equal(title, 'Mix 14:38')
  assert.equal(
    words,
    'ready 9:00 − bake 45 min − retard 12 h 42 − divide and shape 20 min − bulk 3 h 44 − salt 5 min − rest 37 min − mix 10 min',
  )
  assert.ok(because.includes('Bulk has 3 h 44 of its 3.5–4.5 h, because nobody is up before 6:00.'))
})

test('a moment held stays where it is, the rest follows, and released it follows again', () => {
  const formula = workedWheat()
  const day = saturday([[formula, 6]], { asleep: [{ from: '22:30', until: '6:00' }] })
  const sheet = openDay(day, [formula])
  const salt = momentOf(day, [formula], 'Salt')
  const before = sheet.moments
  sheet.hold(salt, '15:30')
  const held = sheet.moments.find(m => m.name === salt)!
  assert.deepEqual([held.local, held.held], ['2026-12-04T15:30', true])
  assert.equal(sheet.working(salt).anchor, 'held at 15:30')
  assert.match(
    sheet.working(momentOf(day, [formula], 'Mix', 'Levain')).words,
    /^Salt held at 15:30 − rest 38 min − mix 10 min − ripen 8 h 32 −/,
  )
  sheet.release(salt)
  assert.deepEqual(sheet.moments, before)
  assert.throws(() => sheet.hold('nothing', '8:00'), /no moment nothing/)
  assert.throws(() => sheet.hold(salt, 'noon'), /“noon” is no clock time/)
})

test('what cannot be together is told with what it needs and the nearest time that would do', () => {
  const formula = workedWheat()
  const day = saturday([[formula, 6]])
  const sheet = openDay(day, [formula])
  sheet.hold(momentOf(day, [formula], 'Salt'), '15:30')
  sheet.hold(momentOf(day, [formula], 'Divide and shape'), '17:00')
  assert.equal(sheet.plan, undefined)
  assert.equal(
    sheet.conflictSentence,
    // from 15:30 to 17:00 is 1 h 30; salt 5 min and bulk 3 h 30 are 3 h 35, which end at 19:05, or begin at 13:25
    'Salt at 15:30 and Divide and shape at 17:00 leave 1 h 30; salt (5 min) and bulk (at least 3 h 30) need 3 h 35. Hold Salt at 13:25, or hold Divide and shape at 19:05.',
  )
  sheet.release(momentOf(day, [formula], 'Divide and shape'))
  assert.equal(sheet.conflict, undefined)
})

test('what cannot last as long as two times are apart is told by its most', () => {
  const formula = workedWheat()
  const day = saturday([[formula, 6]])
  const sheet = openDay(day, [formula])
  sheet.hold(momentOf(day, [formula], 'Mix', 'Final dough'), '9:00')
  sheet.hold(momentOf(day, [formula], 'Divide and shape'), '19:00')
  assert.equal(
    sheet.conflictSentence,
    // 10 min, 1 h, 5 min and 4 h 30 are 5 h 45: from 9:00 to 14:45, or from 13:15 to 19:00
    'Mix at 9:00 and Divide and shape at 19:00 are 10 h apart; mix (10 min), rest (at most 1 h), salt (5 min) and bulk (at most 4 h 30) last 5 h 45 at most. Hold Mix at 13:15, or hold Divide and shape at 14:45.',
  )
})

test('twelve loaves of which six fit at once bake in two loads, the second when the oven has recovered', () => {
  const formula = workedWheat()
  const day = saturday([[formula, 12]], {
    ovens: [{ id: 'oven', name: 'Oven', atOnce: 6, between: 15, change: 0, heating: 40 }],
  })
  const sheet = openDay(day, [formula])
  const loads = sheet.plan!.events.filter(e => e.kind === 'bake')
  assert.deepEqual(
    loads.map(e => [e.load!.number, e.load!.pieces]),
    [
      [1, 6],
      [2, 6],
    ],
  )
  const ready = Date.parse('2026-12-05T09:00Z') / 60_000
  near(loads[1]!.until, ready, 1e-12)
  near(loads[0]!.until, ready - 45 - 15, 1e-12)
  // Of what is done for both the last load tells, which is ready in time.
  assert.match(
    sheet.working(momentOf(day, [formula], 'Salt')).words,
    /^ready 9:00 − bake, load 2 45 min − retard, load 2 /,
  )
})

test('two breads, one oven, ready at one time: one of them is done before, and it is said', () => {
  const [wheat, rye] = [workedWheat(), { ...workedWheat(), id: 'rye', name: 'Rye' }]
  const sheet = openDay(
    saturday([
      [wheat, 6],
      [rye, 6],
    ]),
    [wheat, rye],
  )
  const [first, second] = sheet.plan!.events.filter(e => e.kind === 'bake')
  near(second!.from - first!.until, 10, 1e-6) // the oven’s own time between loads
  const { anchor, parts } = sheet.working(first!.begins)
  assert.deepEqual([anchor, parts[0]!.words, parts[0]!.moment], ['ready 9:00', 'Before its time', undefined])
  near(parts[0]!.minutes, 55, 1e-6) // from the typed time on, so that the parts come to the time shown
  assert.deepEqual(
    sheet.remarks.map(r => [r.code, 'minutes' in r && Math.round(r.minutes)]),
    [['done early', 55]],
  )
})

test('from a beginning everything follows at its usual', () => {
  const formula = workedWheat()
  const { ready: _, ...rest } = saturday([[formula, 6]])
  const day = { ...rest, begin: '7:00' }
  const sheet = openDay(day, [formula])
  // 7:00 + 10 + 540 + 10 + 45 + 5 + 240 + 20 + 810 = 7:00 + 1680 min
  assert.equal(sheet.moments[0]!.local, '2026-12-05T07:00')
  assert.equal(sheet.moments.at(-1)!.local, '2026-12-06T11:00')
  assert.equal(
    sheet.working(momentOf(day, [formula], 'Salt')).words,
    'begin 7:00 + mix 10 min + ripen 9 h + mix 10 min + rest 45 min',
  )
})

test('what goes in at a step is what it names; all else goes in at the first, as much as the batch takes', () => {
  const formula = workedWheat()
  const day = saturday([[formula, 6]])
  const sheet = openDay(day, [formula])
  // six of 900 g from 1,921 g as written
  const k = 5400 / 1921
  const grams = (does: string, stage: string) =>
    sheet.weighList(momentOf(day, [formula], does, stage)).map(w => [w.ingredient, w.grams!] as const)
  const mix = new Map(grams('Mix', 'Final dough'))
  assert.deepEqual([...mix.keys()], ['Bread flour', 'Wholemeal spelt', 'Water', 'Levain'])
  near(mix.get('Bread flour')!, 820 * k)
  near(mix.get('Levain')!, 210 * k)
  const [salt] = grams('Salt', 'Final dough')
  near(salt![1], 21 * k)
  near(new Map(grams('Mix', 'Levain')).get('Ripe starter')!, (40 / 220) * 210 * k)
})

test('a stage that two breads share is built once, for both', () => {
  const [wheat, rye] = [workedWheat(), { ...workedWheat(), id: 'rye', name: 'Rye' }]
  const day = saturday(
    [
      [wheat, 6],
      [rye, 4],
    ],
    { together: ['levain'] },
  )
  const sheet = openDay(day, [wheat, rye])
  const mixes = sheet.plan!.events.filter(e => e.stageName === 'Levain' && e.kind === 'hands')
  assert.deepEqual(
    mixes.map(e => e.breads),
    [['b1', 'b2']],
  )
  const [seed] = sheet.weighList(mixes[0]!.begins)
  near(seed!.grams!, (40 / 220) * 210 * ((5400 + 3600) / 1921))
})

test('a wait written for another temperature is scaled to the kitchen, and says so', () => {
  const formula = bread(
    'Quick',
    'Final dough:\n Flour 100 g\n hands Mix: 10 min\n wait Bulk: 3–5 h at 24 °C\n bake Bake: 40 min',
  )
  const sheet = openDay(saturday([[formula, 1]], { kitchen: 22 }), [formula])
  const bulk = sheet.plan!.events.find(e => e.step.does === 'Bulk')!
  // × 1.235274258094598: usual 240 → 296.466, moved by 56.466; from and to move out by 5.6466
  near(bulk.length!.usual, 240 * 1.235274258094598)
  near(bulk.length!.least, 180 * 1.235274258094598 - 5.646582194)
  near(bulk.length!.most, 300 * 1.235274258094598 + 5.646582194)
  assert.deepEqual(
    sheet.remarks.map(r => r.code),
    ['scaled'],
  )
})

test('over the night on which clocks go back the plan is an hour longer by the clock', () => {
  const formula = workedWheat()
  const day = saturday([[formula, 6]], { zone: 'Europe/Paris', date: '2026-10-25' })
  const sheet = openDay(day, [formula])
  // 1,725 min before 9:00 winter time; the clock shows an hour more at the levain
  assert.equal(sheet.moments[0]!.local, '2026-10-24T05:15')
})

test('a bread whose formula is gone is left out and said, and the others are planned as without it', () => {
  const [formula, gone] = [workedWheat(), workedWheat()]
  const day = saturday([
    [gone, 4],
    [formula, 6],
  ])
  const sheet = openDay(day, [formula])
  const [first] = sheet.remarks
  assert.deepEqual(first, { code: 'formula gone', breads: ['b1'] })
  assert.match(remarkSentence(first!), /^A formula of this day is no longer on the shelf, .* off the day\.$/)
  const alone = openDay({ ...day, breads: [day.breads[1]!] }, [formula])
  assert.deepEqual(sheet.moments, alone.moments)
  assert.deepEqual(sheet.remarks.slice(1), alone.remarks)
})

test('what an earlier stage bakes takes the oven as well', () => {
  const formula = bread(
    'Seed loaf',
    `Toasted seeds:
       Seeds 100 g
       bake Toast: 20 min
     Final dough:
       Flour 500 g
       Toasted seeds 100 g
       hands Mix: 10 min
       bake Bake: 40 min`,
  )
  const other = bread('Flat loaf', 'Final dough:\n Flour 500 g\n hands Mix: 10 min\n bake Bake: 20 min')
  // seeds 7:50–8:10, mixing to 8:20, baking to 9:00; the other would bake 7:50–8:10, and comes out by 7:40 for the oven to recover
  const day = saturday([[formula, 1]])
  const second = { ...day.breads[0]!, id: 'b2', formula: other.id, ready: '8:10' }
  const { plan } = openDay({ ...day, breads: [...day.breads, second] }, [formula, other])
  const at = (does: string, bread: string) =>
    plan!.events.find(e => e.step.does === does && e.breads[0] === bread)!
  const start = Date.parse('2026-12-05T00:00Z') / 60_000
  near(at('Toast', 'b1').from - start, 7 * 60 + 50)
  near(at('Bake', 'b2').until - start, 7 * 60 + 40)
})

// As written 1,921 g of dough: three of 900 g take 2700 ÷ 1921 of its levain’s 210 g, six twice as much, shared 40 : 100 : 80.
test('times go with the amounts of another state of their day, and without the pieces of its loads', () => {
  const formula = workedWheat()
  const three = saturday([[formula, 3]])
  const six = saturday([[formula, 6]], { ready: '11:00' })
  const sheet = openDay(three, [formula])
  const other = sheet.weighedAs(six, new Weights([formula], undefined))
  const mix = momentOf(three, [formula], 'Mix', 'Levain')
  const levain = (210 * 2700) / 1921 / 220
  for (const [of, times] of [
    [sheet, 1],
    [other, 2],
  ] as const)
    for (const [i, parts] of [40, 100, 80].entries())
      near(of.weighList(mix)[i]!.grams!, levain * parts * times, 1e-9)
  assert.deepEqual(
    other.plan!.events.map(e => e.from),
    sheet.plan!.events.map(e => e.from),
  )
  assert.deepEqual(
    [sheet, other].map(({ plan }) => ovenDays(plan!)[0]!.loads.map(load => load.pieces)),
    [[3], [undefined]],
  )
  assert.equal(
    sheet.weighedAs({ ...three, breads: [] }, new Weights([formula], undefined)).weighList(mix).length,
    0,
  )
})

test('a day of which a bread is done early is said to fit, and how', () => {
  const [wheat, rye] = [workedWheat(), { ...workedWheat(), id: 'rye', name: 'Rye' }]
  const { plan } = openDay(
    saturday([
      [wheat, 6],
      [rye, 6],
    ]),
    [wheat, rye],
  )
  const said = earlySaid(
    plan!,
    id => (id === 'b1' ? wheat.name : rye.name),
    () => 'at 8:05',
  )!
  assert.equal(
    said.fits,
    'All of it fits, though not every bread can be done just at its time: those named below are done before it.',
  )
  assert.match(said.breads.join(), /^(?:Mill wheat|Rye): out of the oven at 8:05, 55 min before its time\.$/)
})
