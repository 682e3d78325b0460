import assert from 'node:assert/strict'
import { test } from 'node:test'
import { openDay } from '../../src/day/plan/open-day.js'
import { Weights } from '../../src/day/plan/weigh-list.js'
import { dayMade, inMixingOrder } from '../../src/day/trade/builds-made.js'
import { isWhole, packsFor } from '../../src/day/trade/cost.js'
import { currencies, guessCurrency, moneyText } from '../../src/day/trade/currency.js'
import { doughCosts } from '../../src/day/trade/dough-costs.js'
import { needsOf } from '../../src/day/trade/needs.js'
import { unevenOn } from '../../src/day/trade/uneven.js'
import type { Batch } from '../../src/dough/document/batch.js'
import type { Day } from '../../src/dough/document/day.js'
import type { Formula } from '../../src/dough/document/formula.js'
import type { Ingredient } from '../../src/dough/document/larder.js'
import { larderWith, usualLarder } from '../../src/dough/larder/usual-larder.js'
import { near } from './near.js'
import { bread, saturday } from './notation.js'

/** Usual ingredients, bought so. */
const bought = (all: Readonly<Record<string, Partial<Ingredient>>>) =>
  larderWith(
    Object.entries(all).map(([name, how]) => ({ ...usualLarder.find(i => i.name === name)!, ...how })),
  )

const made = (
  day: Day,
  formulas: readonly Formula[],
  larder = larderWith([]),
  scale?: ConstructorParameters<typeof Weights>[2],
) => dayMade(day, formulas, new Weights(formulas, larder, scale))

const onlyDay = (formula: Formula, batch: Batch): Day =>
  saturday([], { breads: [{ id: 'b1', formula: formula.id, batch }] })

const plain = () =>
  bread(
    'Plain',
    'Final dough:\n Bread flour 1000 g\n Water 650 g\n Salt 20 g\n hands Mix: 10 min\n bake Bake: 45 min, 4 at once',
  )

test('38.4 kg of a flour in packs of 25 kg are two packs, and the noise of doubles makes no third', () => {
  const formula = plain()
  const larder = bought({ 'Bread flour': { pack: 25_000, price: 20, supplier: 'Brackwater Mill' } })
  const needs = needsOf(made(onlyDay(formula, { make: 'factor', factor: 38.4 }), [formula], larder), larder)
  const flour = needs.all[0]!
  assert.equal(flour.name, 'Bread flour')
  near(flour.grams, 38_400)
  assert.deepEqual([flour.packs, flour.toBuy, flour.short, flour.buying.amount], [2, 2, undefined, 40])
  near(flour.cost.amount, 30.72) // 38.4 ÷ 25 × 20
  assert.equal(packsFor(0.1 + 0.2, 0.1), 3)
  assert.equal(packsFor(50_000, 25_000), 2)
  assert.equal(packsFor(50_000.1, 25_000), 3)
  assert.equal(packsFor(0, 25_000), 0)
})

test('what is there is not bought, and what is short is bought in whole packs', () => {
  const formula = plain()
  const larder = bought({
    'Bread flour': { pack: 5000, price: 6, stock: 4000 },
    Salt: { pack: 1000, price: 1, stock: 5000 },
  })
  const { all, used, buying } = needsOf(
    made(onlyDay(formula, { make: 'factor', factor: 10 }), [formula], larder),
    larder,
  )
  const [flour, , salt] = all
  assert.deepEqual([flour!.short, flour!.toBuy, salt!.short, salt!.toBuy], [6000, 2, 0, 0])
  near(used.amount, 10_000 * 0.0012 + 200 * 0.001)
  near(buying.amount, 12)
})

test('a sum without a price says of what, and that it is not all', () => {
  const formula = bread(
    'Seeded',
    'Final dough:\n Bread flour 1000 g\n Sunflower seeds 100 g\n Water 650 g\n Ripe starter 100 g\n Dragon dust 5 g',
  )
  const larder = bought({ 'Bread flour': { pack: 1000, price: 1 }, 'Sunflower seeds': { price: 4 } }) // a price, of nobody knows how much
  const worked = made(onlyDay(formula, { make: 'as written' }), [formula], larder)
  const { all, used } = needsOf(worked, larder)
  assert.equal(isWhole(used), false)
  assert.deepEqual(used.unpriced, ['Sunflower seeds', 'Dragon dust'])
  assert.deepEqual(used.free, ['Water', 'Ripe starter'])
  near(used.amount, 1)
  assert.equal(all.find(({ name }) => name === 'Dragon dust')!.known, undefined)
  const [cost] = doughCosts(worked, larder)
  assert.deepEqual(cost!.cost.unpriced, ['Sunflower seeds', 'Dragon dust'])
})

test('a weight that is not known is never taken for nothing', () => {
  const formula = bread('Handful', 'Final dough:\n Bread flour 1000 g\n Walnuts 1 handful\n Salt 20 g')
  const larder = bought({ 'Bread flour': { pack: 1000, price: 1 }, Walnuts: { pack: 1000, price: 9 } })
  const { all, used } = needsOf(made(onlyDay(formula, { make: 'as written' }), [formula], larder), larder)
  const walnuts = all.find(({ name }) => name === 'Walnuts')!
  assert.equal(walnuts.isAll, false)
  assert.deepEqual(used.unweighed, ['Walnuts'])
  assert.equal(isWhole(used), false)
})

test('a bread whose formula is gone is told, not left out in silence', () => {
  const formula = plain()
  const day = saturday([[formula, 2]], {})
  const worked = made({ ...day, breads: [...day.breads, { ...day.breads[0]!, id: 'b2', formula: 'gone' }] }, [
    formula,
  ])
  assert.equal(worked.missing, 1)
  assert.equal(doughCosts(worked, larderWith([])).length, 1)
})

test('other names of one ingredient are it too', () => {
  const one = bread('One', 'Final dough:\n Bread flour 1000 g\n Water 700 g')
  const other = bread('Other', 'Final dough:\n strong flour 500 g\n Water 300 g')
  assert.equal(larderWith([]).find('strong flour')?.name, 'Bread flour')
  const { all } = needsOf(
    made(
      saturday([
        [one, 1],
        [other, 1],
      ]),
      [one, other],
    ),
    larderWith([]),
  )
  assert.deepEqual(
    all.map(({ name }) => name),
    ['Bread flour', 'Water'],
  )
})

test('totals are what the lists add up to, on the scale there is', () => {
  const formula = bread(
    'Odd',
    'Levain:\n Ripe starter 41 g\n Bread flour 103 g\n Water 87 g\nFinal dough:\n Bread flour 817 g\n Water 583 g\n Salt 17.3 g\n Levain 211 g',
  )
  const scale = { step: 5, fineStep: 1, fineBelow: 50 }
  const worked = made(saturday([[formula, 7]]), [formula], larderWith([]), scale)
  const { all } = needsOf(worked, larderWith([]))
  for (const { name, grams } of all) {
    const lines = worked.builds.flatMap(({ lines }) => lines).filter(({ ingredient }) => ingredient === name)
    assert.equal(
      grams,
      lines.reduce((sum, line) => sum + line.grams!, 0),
    )
    for (const line of lines)
      assert.equal(line.grams! % line.step, 0, `${name} ${line.grams} in steps of ${line.step}`)
  }
})

test('the lists come in the order in which they are mixed, where the day has its times', () => {
  const early = bread(
    'Early',
    'Poolish:\n Bread flour 100 g\n Water 100 g\n hands Mix: 5 min\n wait Ripen: =12 h\nFinal dough:\n Bread flour 500 g\n Water 300 g\n Poolish 200 g\n hands Mix: 10 min\n wait Proof: =1 h\n bake Bake: 30 min',
  )
  const late = bread(
    'Late',
    'Soaker:\n Water 50 g\n hands Pour: 5 min\n wait Soak: =1 h\nFinal dough:\n Bread flour 500 g\n Water 300 g\n Soaker 50 g\n hands Mix: 10 min\n wait Proof: =20 min\n bake Bake: 30 min',
  )
  const day = saturday([
    [late, 1],
    [early, 1],
  ])
  const { plan } = openDay(day, [early, late])
  const first = new Map<string, number>()
  for (const { begins, from } of plan!.events) {
    const key = begins.split(' ').slice(0, 2).join(' ')
    first.set(key, Math.min(from, first.get(key) ?? from))
  }
  const { builds } = made(day, [early, late])
  assert.deepEqual(
    builds.map(({ name }) => name),
    ['Soaker', 'Poolish', 'Final dough', 'Final dough'],
  )
  const ordered = inMixingOrder(builds, key => first.get(key))
  assert.equal(ordered[0]!.name, 'Poolish')
  assert.deepEqual(
    ordered.map(({ key }) => first.get(key)),
    [...first.values()].toSorted((a, b) => a - b),
  )
  assert.equal(
    inMixingOrder(builds, () => undefined),
    builds,
  )
})

for (const [language, currency] of [
  ['en-US', 'USD'],
  ['en-GB', 'GBP'],
  ['fr', 'EUR'],
  ['fr-CA', 'CAD'],
  ['de-CH', 'CHF'],
  ['da', 'DKK'],
  ['ja', 'JPY'],
  ['C', 'USD'],
  ['no such language', 'USD'],
] as const)
  test(`money in ${language} is guessed to be ${currency}`, () =>
    assert.equal(guessCurrency(language), currency))

test('money is written as its language and its currency have it', () => {
  assert.ok(currencies().includes('EUR'))
  assert.equal(moneyText(18.5, 'EUR', 'en-GB'), '€18.50')
  assert.match(moneyText(1234.5, 'EUR', 'de'), /^1\.234,50\s€$/)
  assert.equal(moneyText(180, 'JPY', 'en'), '¥180')
})

for (const [title, batch, own, said] of [
  [
    'six of a load of four',
    { make: 'pieces', pieces: [{ count: 6, weight: 900 }] },
    undefined,
    ['loadNotFull 2 of 4'],
  ],
  ['eight of a load of four', { make: 'pieces', pieces: [{ count: 8, weight: 900 }] }, undefined, []],
  [
    'two and a half pieces',
    { make: 'pieces', pieces: [{ count: 2.5, weight: 900 }] },
    undefined,
    ['pieceNotWhole'],
  ],
  ['dough of tins that it does not fill', { make: 'dough', grams: 5400 }, 852, ['doughLeftOver 6, 288 g']], // 6 × 852 = 5,112
  ['dough of tins that it fills', { make: 'dough', grams: 5112 }, 852, []],
] as const)
  test(`what does not come out even: ${title}`, () => {
    const formula = {
      ...plain(),
      ...(own && { batch: { make: 'pieces', pieces: [{ count: 3, weight: own }] } as Batch }),
    }
    const day = onlyDay(formula, batch as Batch)
    const uneven = unevenOn(day, [formula], doughCosts(made(day, [formula]), larderWith([])))
    assert.deepEqual(
      uneven.map(one =>
        one.code === 'loadNotFull'
          ? `${one.code} ${one.last} of ${one.atOnce}`
          : one.code === 'doughLeftOver'
            ? `${one.code} ${one.pieces}, ${Math.round(one.left)} g`
            : one.code,
      ),
      said,
    )
  })
