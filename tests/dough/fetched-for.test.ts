import assert from 'node:assert/strict'
import { test } from 'node:test'
import { fetchFor } from '../../components/base/fetched-for.js'
import { readAmount } from '../../src/dough/amounts/amounts.js'
import { isSpokenRead, mayBeSaid } from '../../src/dough/amounts/spoken-reader.js'
import { areRareCellsThere, wantsRareCells } from '../../src/dough/cells/rare-cells.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { formulaOf } from './notation.js'

// In a process of its own: what is fetched late is there for all from the moment it is fetched: the tests go from before to after.

for (const text of [
  '',
  '70%',
  '70 %',
  '20 g',
  '-5 g',
  '.5%',
  '3.5 tsp',
  '2 each',
  '250',
  '1 CUP',
  '8 oz',
  '3 1/2 tsp',
  '1/2 cup',
  '1/2',
  '(70 + 8)%',
  '2*5 g',
  '2*salt',
  'salt + 5 g',
])
  test(`${text || 'no amount'} is read without words`, () => {
    assert.equal(mayBeSaid(text), false)
    assert.equal(text !== '' && 'problem' in readAmount(text)!, false)
  })

for (const text of [
  'half a cup',
  'a pinch',
  'pinch',
  '~20 g',
  '3 eggs',
  '1 lb 4 oz',
  '1,000 g',
  '70,5 %',
  '1 000 g',
  '5*',
  'salt*water',
  '1/salt',
  'max(salt, 5 g)',
  'salt > 2 g',
])
  test(`${text} may be said in words, or has to be told about`, () => assert.equal(mayBeSaid(text), true))

const bread = (amount: string) => formulaOf(`Final dough:\nBread flour = 500 g\nMilk = ${amount}`)

/** Grams of milk, or the code of why there are none. */
function milkIn(amount: string): number | string | undefined {
  const formula = bread(amount)
  const { weight, problem } = openSheet(formula).line(formula.stages[0]!.lines[1]!.id)
  return problem ? problem.code : weight
}

test('formulas without such amounts, without holds and without a batch fetch nothing', async () => {
  const asWritten = { ...bread('70%'), batch: { make: 'as written' } } as const
  await fetchFor([bread('70%'), bread('0.5 cup'), { ...bread('60%'), holds: [] }, asWritten])
  assert.equal(isSpokenRead(), false)
  assert.equal(areRareCellsThere(), false)
})

/** Grams of a line that gives, or why there are none. */
function given(formula: Formula): number | string | undefined {
  const { weight, problem } = openSheet(formula).line(formula.holds![0]!.line)
  return problem ? problem.code : weight
}

function held(): Formula {
  const formula = bread('10%')
  const milk = formula.stages[0]!.lines[1]!.id
  return { ...formula, holds: [{ reading: 'doughWeight', value: 900, line: milk }] }
}

/** Grams weighed of the flour for three pieces of 271 g: 500 × 813 ÷ 550 = 739.09. */
function weighedOf(): number | undefined {
  const formula = {
    ...bread('50 g'),
    batch: { make: 'pieces', pieces: [{ count: 3, weight: 271 }] },
  } as const
  return openSheet(formula).weighed(formula.stages[0]!.lines[0]!.id)?.grams
}

/** How many times the dough is made that uses all of 250 g of milk, of which it takes 50 g. */
function timesOf(milk: string): number | string | undefined {
  const formula = { ...bread('50 g'), batch: { make: 'all of', ingredient: milk, grams: 250 } } as const
  const { batch, problem } = openSheet(formula).line(formula.stages[0]!.lines[0]!.id)
  return problem ? problem.code : batch && batch / 500
}

/** Told where it cannot be worked out yet, a hold touches every line whose figures it takes away. */
function touchedByHolding(): readonly [touched: boolean, percent: number | undefined] {
  const formula = formulaOf('Final dough:\nBread flour = 100%\nMilk = 50 g')
  const [flour, milk] = formula.stages[0]!.lines.map(l => l.id) as [string, string]
  const sheet = openSheet(formula)
  assert.equal(sheet.line(milk).percent, 0.05)
  const touched = sheet.update({ ...formula, holds: [{ reading: 'totalFlour', value: 900, line: flour }] })
  return [touched.lines.has(milk), sheet.line(milk).percent]
}

test('a formula that was held before what works holds out is there says so, and is worked out once it is', async () => {
  assert.equal(areRareCellsThere(), false)
  assert.equal(given(held()), 'rareNotFetched')
  assert.deepEqual(touchedByHolding(), [true, undefined])
  assert.equal(timesOf('Milk'), undefined)
  assert.equal(weighedOf(), undefined)
  // A kept state is shown beside its formula, and so is worked out too.
  await fetchFor([
    {
      ...bread('70%'),
      states: [{ id: 'a', name: 'Tuesday', keptAt: '2026-04-10T08:00:00.000Z', formula: held() }],
    },
  ])
  assert.equal(areRareCellsThere(), true)
  assert.equal(isSpokenRead(), false)
  assert.equal(given(held()), 400)
  assert.deepEqual(touchedByHolding(), [true, 50 / 900])
  assert.equal(timesOf('Milk'), 5)
  assert.equal(weighedOf(), 739)
})

for (const [what, fields] of [
  ['a hold', { holds: held().holds! }],
  ['a batch, which is weighed', { batch: { make: 'pieces', pieces: [{ count: 2, weight: 900 }] } }],
  ['a batch of all there is of something', { batch: { make: 'all of', ingredient: 'Milk', grams: 250 } }],
] as const)
  test(`${what} wants what is fetched late`, () => {
    assert.equal(wantsRareCells({ ...bread('50 g'), ...fields }), true)
  })

test('an amount asked for too early is not remembered as none', async () => {
  assert.equal(milkIn('half a cup'), 'notAnAmount')
  await fetchFor([bread('half a cup')])
  assert.equal(isSpokenRead(), true)
  assert.equal(milkIn('half a cup'), milkIn('0.5 cup'))
  assert.equal(typeof milkIn('half a cup'), 'number')
})
