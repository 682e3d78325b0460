import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { test } from 'node:test'
import { clockText } from '../../src/day/course/clock.js'
import { ovenDays } from '../../src/day/plan/loads.js'
import { type DaySheet, openDay } from '../../src/day/plan/open-day.js'
import type { Day, Oven } from '../../src/dough/document/day.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { readFormulas } from '../../src/exchange/index.js'
import { near } from './near.js'
import { bread, momentOf, saturday } from './notation.js'

const start = Date.parse('2026-12-05T00:00Z') / 60_000
const earlyCosts = 240 // minutes² of a load before its time, ÷ this

/** Minutes of the day of each load, the first first: `b1 1 6:15`. */
const loadsOf = (sheet: DaySheet) => ovenDays(sheet.plan!).flatMap(({ loads }) => loads)
const saidLoads = (sheet: DaySheet) =>
  loadsOf(sheet).map(l => `${l.bread} ${l.number} ${clockText(l.from - start)}–${clockText(l.until - start)}`)

/** Nothing but a bake of so many minutes. */
const baked = (name: string, minutes: number, celsius = 240): Formula =>
  bread(name, `Final dough:\n Flour 1000 g\n bake Bake: ${minutes} min, at ${celsius} °C, 6 at once`)

const stone = (more: Partial<Oven> = {}): Oven => ({
  id: 'stone',
  name: 'Stone oven',
  between: 10,
  change: 0,
  heating: 45,
  ...more,
})

const dayOf = (formulas: readonly Formula[], pieces: number, more: Partial<Day> = {}): Day =>
  saturday(
    formulas.map(formula => [formula, pieces] as const),
    more,
  )

test('three breads of two loads each, ready by one minute, follow each other without a gap', () => {
  const formulas = ['Wheat', 'Rye', 'Spelt'].map(name => baked(name, 45))
  const sheet = openDay(dayOf(formulas, 12), formulas)
  assert.equal(sheet.conflictSentence, '')
  // six loads of 45 min, 10 between: the last out at 9:00, each 55 min before the next
  assert.deepEqual(
    loadsOf(sheet).map(l => l.until - start),
    [265, 320, 375, 430, 485, 540],
  )
  near(sheet.plan!.cost, (55 ** 2 * (1 + 4 + 9 + 16 + 25)) / earlyCosts)
  const done = (bread: string) => Math.max(...loadsOf(sheet).flatMap(l => (l.bread === bread ? l.until : [])))
  assert.deepEqual(
    sheet.plan!.early.map(({ bread, minutes }) => [bread, minutes]),
    ['b1', 'b2', 'b3'].flatMap(id => (done(id) < start + 540 ? [[id, start + 540 - done(id)]] : [])),
  )
  assert.equal(sheet.plan!.early.length, 2)
})

/** Every order in which things of two kinds each can come. */
function* ordersOf(left: readonly number[]): Generator<number[]> {
  if (left.every(count => count === 0)) yield []
  for (const [kind, count] of left.entries()) {
    if (count === 0) continue
    const rest = left.map((n, i) => (i === kind ? n - 1 : n))
    for (const order of ordersOf(rest)) yield [kind, ...order]
  }
}

for (const [title, minutes, heats, oven] of [
  ['of unlike length', [40, 30, 20], [240, 240, 240], stone()],
  ['of unlike heat', [40, 30, 20], [240, 210, 240], stone({ change: 30 })],
  [
    'of unlike heat in an oven that recovers slowly',
    [50, 25, 35],
    [250, 250, 190],
    stone({ between: 20, change: 45 }),
  ],
  ['far beyond four hours', [90, 80, 70], [240, 200, 240], stone({ between: 25, change: 60 })],
] as const)
  test(`six loads ${title} go in the cheapest of their 90 orders`, () => {
    const formulas = minutes.map((m, i) => baked(`Bread ${i}`, m, heats[i]))
    const sheet = openDay(dayOf(formulas, 12, { ovens: [oven] }), formulas)
    // Each order by itself: the last is out at 9:00, each other as late as the next lets it.
    const costs = [...ordersOf([2, 2, 2])].map(order => {
      let out = 0 // minutes before 9:00
      let cost = 0
      for (const [i, kind] of order.toReversed().entries()) {
        const next = order.at(-i)
        if (i > 0)
          out +=
            minutes[next!]! +
            (heats[kind] === heats[next!] ? oven.between : Math.max(oven.between, oven.change))
        cost += out ** 2 / earlyCosts
      }
      return cost
    })
    assert.equal(costs.length, 90)
    near(sheet.plan!.cost, Math.min(...costs))
    assert.ok(sheet.plan!.proven)
  })

test('eight breads in one oven are found, however early the first has to be', () => {
  const formulas = Array.from({ length: 8 }, (_, i) => baked(`Bread ${i + 1}`, 60))
  const sheet = openDay(dayOf(formulas, 6, { ready: '14:00' }), formulas)
  assert.deepEqual(
    saidLoads(sheet).map(said => said.split(' ')[2]),
    [
      '4:50–5:50',
      '6:00–7:00',
      '7:10–8:10',
      '8:20–9:20',
      '9:30–10:30',
      '10:40–11:40',
      '11:50–12:50',
      '13:00–14:00',
    ],
  )
})

const asleep = [{ from: '22:30', until: '6:00' }]
const quick = () =>
  bread(
    'Quick loaf',
    `Final dough:
       Flour 1000 g
       hands Mix: 10 min
       wait Bulk: =3 h
       hands Shape: 20 min
       wait Proof: =1 h
       bake Bake: 45 min`,
  )

test('a bread that cannot be done at its minute is done before it, and the later time that would do is told', () => {
  const formula = quick()
  const day = dayOf([formula], 6, { ready: '9:00', asleep })
  const sheet = openDay(day, [formula])
  // From mixing to the end of baking 5 h 15: begun at 6:00 it is done at 11:15; before 9:00 only if it is out by 22:30.
  assert.deepEqual(saidLoads(sheet), ['b1 1 21:45–22:30'])
  assert.deepEqual(sheet.plan!.early, [{ bread: 'b1', minutes: 10.5 * 60 }])
  assert.deepEqual(
    sheet.later.map(({ time, reason }) => [reason.of, time - start]),
    [['ready', 11 * 60 + 15]],
  )
  assert.deepEqual(openDay({ ...day, ready: '11:15' }, [formula]).plan!.early, [])
})

test('a bread held so early that it is done before its time is no conflict', () => {
  const formula = quick()
  const day = dayOf([formula], 6, { ready: '18:00' })
  const sheet = openDay(day, [formula])
  sheet.hold(momentOf(day, [formula], 'Mix'), '9:00')
  assert.deepEqual(saidLoads(sheet), ['b1 1 13:30–14:15'])
  assert.deepEqual(sheet.plan!.early, [{ bread: 'b1', minutes: 225 }])
})

test('a bread held so late that it is done after its time is one, and the nearest times are told', () => {
  const formula = quick()
  const day = dayOf([formula], 6, { ready: '13:00' })
  const sheet = openDay(day, [formula])
  sheet.hold(momentOf(day, [formula], 'Mix'), '9:00')
  assert.equal(
    sheet.conflictSentence,
    'Quick loaf ready at 13:00 and Mix at 9:00 leave 4 h; mix (10 min), bulk (3 h), shape (20 min), proof (1 h) and bake (45 min) need 5 h 15. Have Quick loaf ready at 14:15, or hold Mix at 7:45.',
  )
})

test('loads shaped at once that cannot wait for each other so long are told as that', () => {
  const formula = bread(
    'Plain loaf',
    `Final dough:
       Flour 1000 g
       hands Mix: 10 min
       wait Bulk: 3–4 h
       hands Shape: 20 min
       wait Proof: 50–70 min
       bake Bake: 45 min, 6 at once`,
  )
  // 45 min and 10 between the loads: the second waits 55 min longer, the third 110; 20 are allowed
  const sheet = (pieces: number) => openDay(dayOf([formula], pieces), [formula])
  assert.equal(
    sheet(12).conflictSentence,
    'Plain loaf is baked in 2 loads, 55 min apart, so its last load waits 55 min longer than its first. Proof (50–70 min) allows 20 min. To make it fit, write a wider time in Proof, write in Bake that more than 6 bake at once, or bake less of it.',
  )
  assert.match(
    sheet(18).conflictSentence,
    /^Plain loaf is baked in 3 loads, 55 min apart, so its last load waits 1 h 50 longer/,
  )
  assert.equal(sheet(6).conflictSentence, '')
})

// A proof written for 25 °C that stands at 22 takes a time that is no whole number of minutes.
test('what a conflict of loads tells comes out as it is told, and says whose number at once counts', () => {
  const formula = bread(
    'Tin loaf',
    `Final dough:
       Flour 1000 g
       hands Mix: 10 min
       wait Proof: 1.5–2.25 h, at 25 °C
       bake Bake: 50 min, 2 at once`,
  )
  const day = dayOf([formula], 11)
  const told = (of: typeof day, formulas = [formula]) => openDay(of, formulas).conflictSentence
  const minutes = (text: string) => {
    const [, hours, rest] = /^(\d+) h(?: (\d\d))?$/.exec(text)!
    return Number(hours) * 60 + Number(rest ?? 0)
  }
  const inOven = { ...day, kitchen: 22, ovens: day.ovens.map(oven => ({ ...oven, atOnce: 4 })) }
  const said = told(inOven)
  const [, loads, apart, longer, least, most, allowed] =
    /baked in (\d) loads, (\d h(?: \d\d)?) apart, so its last load waits (\d h(?: \d\d)?) longer than its first\. Proof \((\d h(?: \d\d)?)–(\d h(?: \d\d)?)\) allows (\d h(?: \d\d)?)\./.exec(
      said,
    )!
  assert.equal(Number(loads), 6)
  assert.equal(minutes(longer!), 5 * minutes(apart!))
  assert.equal(minutes(allowed!), minutes(most!) - minutes(least!))
  assert.match(said, /that more than 2 bake at once \(that counts before the 4 that the oven holds\), or/)
  const plain = {
    ...formula,
    stages: formula.stages.map(stage => ({
      ...stage,
      method: stage.method!.map(step => ({ ...step, text: step.text.replace(', 2 at once', '') })),
    })),
  }
  assert.match(
    told(inOven, [plain]),
    /wider time in Proof, say that the oven holds more at once, or bake less of it\.$/,
  )
})

test('from a beginning breads begin as much later as they have to', () => {
  const formulas = Array.from({ length: 5 }, (_, i) =>
    bread(`Bread ${i + 1}`, 'Final dough:\n Flour 1000 g\n hands Mix: 7 h\n bake Bake: 30 min'),
  )
  const { ready: _, ...rest } = dayOf(formulas, 6)
  const sheet = openDay({ ...rest, begin: '0:00' }, formulas)
  // one pair of hands: 0, 7, 14, 21 and 28 h, of which the last is more than a day after the first
  assert.deepEqual(
    sheet.plan!.events.filter(e => e.kind === 'hands').map(e => (e.from - start) / 60),
    [0, 7, 14, 21, 28],
  )
})

/** All that a plan has to keep, read from its times alone. */
function keepsAll({ plan, day }: DaySheet): void {
  const events = plan!.events
  const slack = 1e-6
  const isAsleep = (instant: number) => {
    const clock = (((instant - start) % 1440) + 1440) % 1440
    return clock > 22.5 * 60 + slack || clock < 6 * 60 - slack
  }
  const hands = events.filter(e => e.kind === 'hands')
  for (const [i, { from, until, step }] of hands.entries()) {
    assert.ok(!isAsleep(from) && !isAsleep(until), `${step.does} by somebody who is up`)
    const next = hands[i + 1]
    assert.ok(!next || next.from >= until - slack, `${step.does} is done before ${next?.step.does}`)
  }
  const loads = loadsOf({ plan, day } as DaySheet).toSorted((a, b) => a.from - b.from)
  const [{ between, change }] = day.ovens as [Oven]
  for (const [i, { from, until, celsius }] of loads.entries()) {
    assert.ok(!isAsleep(from) && !isAsleep(until), 'somebody is up at the oven')
    const next = loads[i + 1]
    const gap = next?.celsius === celsius ? between : Math.max(between, change)
    assert.ok(!next || next.from - until >= gap - slack, 'the oven has its time')
  }
  for (const { kind, from, until, length, ends, step } of events)
    if (kind === 'wait' && ends !== undefined)
      assert.ok(until - from >= length!.least - slack && until - from <= length!.most + slack, step.does)
  for (const { id } of day.breads) {
    const done = Math.max(...events.filter(e => e.breads.includes(id)).map(e => e.until))
    assert.ok(done <= plan!.at.get(`${id} ready`)! + slack, `${id} is done by its time`)
  }
}

for (const ready of ['9:00', '12:00', '15:00'])
  test(`the breads of the Saturday oven, two loads each, ready by ${ready}, keep all there is to keep`, () => {
    const formulas = ['mill-wheat', 'poolish-baguette', 'seeded-spelt-tin'].flatMap(
      name => readFormulas(readFileSync(`examples/${name}.csv`, 'utf8')).formulas,
    )
    const ovens = [stone({ atOnce: 6, between: 15, change: 20 })]
    const day = dayOf(formulas, 12, { ready, asleep, ovens, kitchen: 18 })
    const three = day.breads.map(b =>
      b.id === 'b3' ? { ...b, batch: { make: 'pieces', pieces: [{ count: 3, weight: 900 }] } as const } : b,
    )
    const sheet = openDay({ ...day, breads: three }, formulas)
    assert.equal(sheet.conflictSentence, '')
    assert.deepEqual(loadsOf(sheet).length, 6)
    keepsAll(sheet)
  })
