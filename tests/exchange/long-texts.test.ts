import assert from 'node:assert/strict'
import { test } from 'node:test'
import { readFormulas } from '../../src/exchange/index.js'
import { statedTimes } from '../../src/exchange/markup/stated-times.js'
import { readPlainText } from '../../src/exchange/text/read-plain-text.js'
import { growsInStep, workOf } from '../work.js'

const heads = 'Loaf\n═══\n\nDough\n───\nIngredient  %  Grams  As typed  Note\n'

for (const [what, most, given] of [
  ['quotation marks', 9e5, n => '"'.repeat(n)],
  ['a quotation mark never closed', 9e5, n => `"${'a'.repeat(n)}`],
  ['lines of one name', 19_000, n => 'Water  –  –  70%\n'.repeat(n)],
  [
    'bases of one name',
    9000,
    n => `x\n\nDough\n───\n${'Base: Water\n'.repeat(n)}Ingredient  As typed\n${'Water  70%\n'.repeat(n)}`,
  ],
  [
    'holds by one line',
    19_000,
    n => `Water  –  –  70%\n\n${'Hold whole dough: 2%  Water  gives\n'.repeat(n)}`,
  ],
  ['titles', 9000, n => 'Loaf\n═══\n'.repeat(n)],
] as const satisfies [string, number, (n: number) => string][])
  test(`the work of reading a text of nothing but ${what} grows no faster than the text`, () =>
    growsInStep(n => readPlainText(heads + given(n)), most / 2))

test('a text too long is refused without being read', () => {
  assert.ok(workOf(() => readPlainText(heads + 'x\n'.repeat(1e7))) < 1000)
})

for (const piece of [
  '1 ',
  '1/',
  'bake ',
  '2 h 3',
  '½',
  'bake 40 min then ',
  '1.1.',
  ',',
  'bake ,,',
  '40 min ',
])
  test(`the work of reading the times in a note of nothing but “${piece}” grows no faster than the note`, () => {
    const read = (n: number) => statedTimes([piece.repeat(n)])
    growsInStep(read, Math.floor(9000 / piece.length))
    read(20_000) // what is past all measure is not looked at
  })

test('the work of reading a formula file grows no faster than its rows', () => {
  const row = (_: unknown, i: number) => `Loaf ${i % 97},Final dough,Bread flour,${i} g\n`
  growsInStep(
    n => readFormulas(`formula,stage,ingredient,amount\n${Array.from({ length: n }, row).join('')}`),
    5000,
  )
})
