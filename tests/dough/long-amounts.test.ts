import assert from 'node:assert/strict'
import { describe, test } from 'node:test'
import { amountAsKept, plainPercent, readAmount } from '../../src/dough/amounts/amounts.js'
import '../../src/dough/amounts/spoken-at-once.js'
import { planJottings } from '../../src/dough/amounts/jottings.js'
import { typedGrams, typedNumber } from '../../src/dough/amounts/typed.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { growsInStep } from '../work.js'
import { formulaOf } from './notation.js'

const pieces = [
  '1/',
  '½',
  '½/',
  '1 ',
  '1,000',
  '1.',
  ',',
  '(',
  '%(',
  '1%(',
  'min(',
  'a ',
  'half a ',
  '1 1/2 ',
  '1 lb 4 oz ',
  'twenty-',
  '- ',
  '−',
  '1⁄',
  'e\u0301',
  '🍞',
  '\u00a0',
  '٣',
  '\n',
]

describe('a very long text typed or pasted as an amount', () => {
  for (const piece of pieces) {
    const text = (characters: number) =>
      piece.repeat(Math.ceil(characters / piece.length)).slice(0, characters)
    test(`of nothing but ${JSON.stringify(piece)} is kept as it is, told to be too long, and looked at no longer than its length asks`, () => {
      const long = text(100_000)
      for (const column of ['percent', 'weight'] as const) assert.equal(amountAsKept(long, column, ','), long)
      const amount = readAmount(long, new Map([['rye', 'number']]), ['Rye', 'Eggs'])
      assert.ok(amount && 'problem' in amount)
      assert.equal(amount.problem.code, 'tooManyCharacters')
      assert.ok(amount.problem.message.length < 200)
      for (const value of [plainPercent(long, '.'), typedNumber(long, ','), typedGrams(long, '.')])
        assert.equal(value, undefined)
      growsInStep(characters => {
        const typed = text(characters)
        amountAsKept(typed, 'weight', '.')
        readAmount(typed)
        plainPercent(typed, ',')
        typedNumber(typed, ',')
        planJottings([{ id: 'j', name: 'rye', text: typed }])
      }, 50_000)
    })
  }

  test('leaves the rest of the formula worked out', () => {
    const formula = formulaOf(`Final dough:\nBread flour = 1000 g\nWater = ${'½'.repeat(100_000)}`)
    const sheet = openSheet(formula)
    const [flour, water] = formula.stages[0]!.lines
    assert.equal(sheet.line(flour!.id).weight, 1000)
    assert.equal(sheet.line(water!.id).problem!.code, 'tooManyCharacters')
  })
})
