import assert from 'node:assert/strict'
import { test } from 'node:test'
import { fuzz } from './fuzz.js'

test('of 500 inputs of all kinds none throws, and most are read; seed 20260409', async () => {
  const { inputs, read, refused, formulas, threw } = await fuzz(20260409, 500)
  assert.deepEqual(threw, [])
  assert.equal(read + refused, inputs)
  assert.ok(
    read > inputs / 3 && refused > inputs / 20 && formulas > inputs / 5,
    `${read} ${refused} ${formulas}`,
  )
})
