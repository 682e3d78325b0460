import assert from 'node:assert/strict'
import { test } from 'node:test'
import { localise, parse } from '../../src/engine/expression/parse'
import { amount, refusal, units } from './expressions'

const comma = { decimal: ',', units } as const

const bothWays: readonly (readonly [canonical: string, typed: string])[] = [
  ['2.5 g', '2,5 g'],
  ['min(1.5, 2)', 'min(1,5; 2)'],
  ['min(1.5,2)', 'min(1,5;2)'],
  ['max(min(1, 2.25), levain.water) + .5%', 'max(min(1; 2,25); levain.water) + ,5%'],
  ['2 1/2 tsp', '2 1/2 tsp'],
  ["1'000.25 g", "1'000,25 g"],
  ['1.5e3', '1,5e3'],
  ['2 fl. oz', '2 fl. oz'],
  ['2½ cup', '2½ cup'],
  ['water > 1.5 g ? 2.5 : 3', 'water > 1,5 g ? 2,5 : 3'],
]

for (const [canonical, typed] of bothWays) {
  test(`${canonical} is ${typed} where the comma is the decimal mark`, () => {
    assert.equal(localise(canonical, ','), typed)
    assert.equal(localise(canonical, '.'), canonical)
    const read = parse(typed, comma)
    assert.equal(read.text, canonical)
    assert.deepEqual(read, parse(canonical, { units }))
  })
}

test('a decimal point is understood where the comma is usual', () => {
  assert.equal(amount('2.5 g', comma), 2.5)
  assert.equal(amount('0.125', comma), 0.125)
})

const refused: readonly (readonly [text: string, words: RegExp])[] = [
  ['1.000 g', /two ways: write 1000 or 1,000/],
  ['min(2, 3)', /put ";" between the parts/],
  ['1.234,5', /write 1234 or 1,234/],
  ['2,', /only separates/],
]
for (const [text, words] of refused) {
  test(`${text} is refused where the comma is the decimal mark`, () => {
    assert.match(refusal(() => parse(text, comma))?.message ?? 'not refused', words)
  })
}

test('the place of an error is that in the text as typed', () => {
  assert.equal(refusal(() => parse('  1,5 + [', comma))?.at, 8)
})

test('semicolons become commas in the text that is kept', () => {
  assert.equal(parse(' min(1; 2) ').text, 'min(1, 2)')
})

test('a text that cannot be read is shown as it is', () => {
  assert.equal(localise('2.5 *', ','), '2,5 *')
  assert.equal(localise(`${'2.5 '.repeat(200)}`, ','), `${'2.5 '.repeat(200)}`)
})
