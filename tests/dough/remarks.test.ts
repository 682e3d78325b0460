import assert from 'node:assert/strict'
import { test } from 'node:test'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { formulaOf } from './notation.js'

const said = (text: string, fields = {}) =>
  openFormula(formulaOf(text, fields)).problems.map(p => `${p.severity}: ${p.message}`)

const dough = (lines: string) => `
  Final dough:
    ${lines.split('; ').join('\n    ')}`

const table: readonly (readonly [title: string, formula: string, remark: RegExp])[] = [
  [
    'flours that do not add up',
    dough('Bread flour = 82%; Wholemeal spelt = 15%; Water = 70%; Salt = 2%'),
    /remark: The flours of Final dough add to 97 %, not 100 %/,
  ],
  [
    'a formula without flour',
    dough('Water = 500 g; Salt = 10 g'),
    /warning: There is no flour in this formula yet/,
  ],
  [
    'a line without an amount',
    dough('Bread flour = 100%; Water = 70%; Salt ='),
    /remark: Salt in Final dough has no amount yet/,
  ],
  [
    'an amount without an ingredient',
    dough('Bread flour = 100%; = 20 g'),
    /warning: A line of Final dough has an amount but no ingredient/,
  ],
  [
    'an unknown ingredient',
    dough('Bread flour = 100%; Moon dust = 2%'),
    /warning: Moon dust is not in the larder: only its weight is counted/,
  ],
  [
    'little salt',
    dough('Bread flour = 1000 g; Water = 700 g; Salt = 9 g'),
    /remark: Salt is 0.9 %; usual is 1.6 % to 2.4 %/,
  ],
  [
    'much water',
    dough('Bread flour = 1000 g; Water = 920 g; Salt = 20 g'),
    /remark: True hydration is 92 %; usual is 58 % to 85 %/,
  ],
  [
    'more levain taken than made',
    `
    Levain:
      Ripe starter = 40 g
      Bread flour = 100 g
      Water = 80 g
    ${dough('Bread flour = 1000 g; Water = 700 g; Salt = 20 g; Levain = 250 g')}`,
    /warning: Levain as written makes 220 g and 250 g is taken: 30 g short/,
  ],
  [
    'levain left over',
    `
    Levain:
      Ripe starter = 40 g
      Bread flour = 100 g
      Water = 80 g
    ${dough('Bread flour = 1000 g; Water = 700 g; Salt = 20 g; Levain = 210 g')}`,
    /remark: Levain as written makes 220 g and 210 g is taken\. 10 g is left/,
  ],
  [
    'a stage nothing takes',
    `
    Soaker:
      Linseed = 50 g
    ${dough('Bread flour = 1000 g; Water = 700 g; Salt = 20 g')}`,
    /remark: No later stage takes Soaker yet/,
  ],
  [
    'a stage that is mixed after the one that takes it',
    `
    Sponge:
      Bread flour = 100 g
      Levain = 50 g
    Levain:
      Ripe starter = 50 g
    ${dough('Bread flour = 1000 g; Water = 700 g; Salt = 20 g; Sponge = 150 g')}`,
    /remark: Sponge takes Levain, which is mixed after it/,
  ],
  [
    'an amount that is not understood',
    dough('Bread flour = 1000 g; Water = 7O0 g'),
    /error: Water in Final dough: /,
  ],
  [
    'a name that nothing has',
    dough('Bread flour = 1000 g; Water = 2*slt'),
    /error: Water in Final dough: Nothing in Final dough is called slt/,
  ],
  [
    'two weights multiplied',
    dough('Bread flour = 1000 g; Salt = 2 g; Water = salt*salt'),
    /error: Water in Final dough: A weight times a weight is not a weight/,
  ],
  [
    'a spoon of something nobody measured',
    dough('Bread flour = 1000 g; Moon dust = 2 tsp'),
    /error: .*Moon dust is not in the larder, so what a tsp of Moon dust weighs is not known/,
  ],
  [
    'percentages that leave no room for grams',
    dough('Bread flour = 100%; Wholemeal spelt = 50 g'),
    /remark: Wholemeal spelt in Final dough is 50 g, .*: 5 % on top, so the flours add to 105 % of 1,000 g\./,
  ],
  [
    'a weight below nothing',
    dough('Bread flour = 1000 g; Water = -5 g'),
    /error: Water in Final dough: This comes to -5 g, which is below 0/,
  ],
  [
    'a stage made of itself',
    `
    Levain:
      Levain = 20 g
      Bread flour = 100 g
    ${dough('Bread flour = 1000 g; Water = 700 g')}`,
    /error: Levain takes Levain: a stage cannot be made of itself/,
  ],
]

for (const [title, formula, remark] of table) {
  test(`the sheet remarks on ${title}`, () => {
    const all = said(formula)
    assert.ok(
      all.some(one => remark.test(one)),
      `${remark} is not among\n${all.join('\n')}`,
    )
  })
}

test('a plain good formula draws no remark', () => {
  assert.deepEqual(said(dough('Bread flour = 100%; Water = 70%; Salt = 2%')), [])
})

test('a formula that counts an ingredient otherwise than the larder says so', () => {
  const meanings = [{ ingredient: 'Cornmeal', countsAs: { kind: 'other' as const } }]
  const all = said(dough('Bread flour = 100%; Cornmeal = 10%; Water = 70%; Salt = 2%'), { meanings })
  assert.deepEqual(all, ['remark: Cornmeal counts as other in this formula, not as your larder has it.'])
})
