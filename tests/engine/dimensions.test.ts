import assert from 'node:assert/strict'
import { test } from 'node:test'
import { dimensionOf } from '../../src/engine/expression/dimension'
import { parse } from '../../src/engine/expression/parse'
import type { Dimension } from '../../src/engine/expression/tree'
import { refusal, units } from './expressions'

const dimension = (text: string, percentOf: string | null = 'base') =>
  dimensionOf(parse(text, { units, percentOf }), name =>
    ['k', 'hydration'].includes(name) ? 'number' : name === 'ripe' ? 'truth' : 'weight',
  )

const measured: readonly (readonly [text: string, what: Dimension])[] = [
  ['5', 'number'],
  ['0', 'number'],
  ['20 g', 'weight'],
  ['70% + 20 g', 'weight'],
  ['(k + 2)%', 'weight'],
  ['k * water', 'weight'],
  ['water * k / 2', 'weight'],
  ['water / salt', 'number'],
  ['70% / water', 'number'],
  ['water / 70%', 'number'],
  ['water + 0', 'weight'],
  ['0 - water', 'weight'],
  ['0 / water', 'number'],
  ['min(water, 0, 5 g)', 'weight'],
  ['round(water, 1)', 'weight'],
  ['abs(ceil(floor(k)))', 'number'],
  ['average(water, salt)', 'weight'],
  ['2^k', 'number'],
  ['-water', 'weight'],
  ['water > 0', 'truth'],
  ['water > 5 g and not (k == 2) or ripe', 'truth'],
  ['ripe ? water : 0', 'weight'],
  ['ripe ? water / salt : k', 'number'],
]
for (const [text, what] of measured) {
  test(`${text} is a ${what}`, () => assert.equal(dimension(text), what))
}

test('per cent of nothing in particular is a number', () =>
  assert.equal(dimension('70% * k', null), 'number'))

const refused: readonly (readonly [text: string, words: string])[] = [
  ['20 g + 5', '20 g + 5: give the 5 a unit.'],
  ['5 + 70%', '5 + 70%: give the 5 a unit.'],
  ['min(water, 5)', 'min(…): give the 5 a unit.'],
  ['water > 5', 'water > 5: give the 5 a unit.'],
  ['water + k', 'water + k: water is a weight and k a plain number; give it a unit.'],
  ['ripe ? water : 5', 'a choice between them: give the 5 a unit.'],
  [
    'ripe ? water : ripe',
    'a choice between them: ripe is a condition and water is not; they do not go together.',
  ],
  [
    'water * salt',
    'A weight times a weight is not a weight; multiply water by a plain number instead of salt.',
  ],
  ['50% * water', '50% is a weight here, per cent of the base: for that share of water write 0.5*water.'],
  [
    'water * (k+2)%',
    '(k + 2)% is a weight here, per cent of the base: for that share of water write (k + 2)/100*water.',
  ],
  ['water%', 'water is a weight already; for a share of it write a number, as in 0.5*water.'],
  ['20 g%', '20 g is a weight already; for a share of it write a number, as in 0.5*20 g.'],
  ['(water + salt) g', 'water + salt is a weight already; take away "g".'],
  [
    '5 / water',
    '5 is a plain number and water a weight: a number divided by a weight is neither. Give 5 a unit.',
  ],
  ['water^2', 'water is a weight, and a power of a weight is not a weight; multiply by plain numbers.'],
  ['2^water', 'water has to be a plain number to be an exponent.'],
  ['round(water, salt)', 'salt has to be a plain number to be the decimal places of round(…).'],
  ['water and ripe', 'water is not a condition; write one such as water > 0.'],
  ['not k', 'k is not a condition; write one such as k > 0.'],
  ['k ? 1 : 2', 'k is not a condition; write one such as k > 0.'],
  ['(k > 1) + 1', 'k > 1 is a condition, not an amount; choose by it with k > 1 ? a : b.'],
  ['2 * ripe', 'ripe is a condition, not an amount; choose by it with ripe ? a : b.'],
  ['ripe == ripe', 'ripe is a condition, not an amount; choose by it with ripe ? a : b.'],
]
for (const [text, words] of refused) {
  test(`${text} is refused in words that name the parts`, () => {
    assert.equal(refusal(() => dimension(text))?.message, words)
  })
}
