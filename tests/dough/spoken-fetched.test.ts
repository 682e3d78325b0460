import assert from 'node:assert/strict'
import { test } from 'node:test'
import { fetchSpokenFor } from '../../components/base/fetched-spoken.js'
import { readAmount } from '../../src/dough/amounts/amounts.js'
import { isSpokenRead, mayBeSaid } from '../../src/dough/amounts/spoken-reader.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { formulaOf } from './notation.js'

// In a process of its own: what reads amounts as they are said is there for all once it is fetched, and the tests go from
// before to after.

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

test('formulas without such amounts fetch nothing', async () => {
  await fetchSpokenFor([bread('70%'), bread('0.5 cup')])
  assert.equal(isSpokenRead(), false)
})

test('an amount asked for too early is not remembered as none', async () => {
  assert.equal(milkIn('half a cup'), 'notAnAmount')
  await fetchSpokenFor([bread('half a cup')])
  assert.equal(isSpokenRead(), true)
  assert.equal(milkIn('half a cup'), milkIn('0.5 cup'))
  assert.equal(typeof milkIn('half a cup'), 'number')
})
