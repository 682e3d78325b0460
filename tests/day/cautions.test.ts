import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { test } from 'node:test'
import { methodCautions } from '../../src/day/method/cautions.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { readFormulas } from '../../src/exchange/index.js'
import { cautionsSaid } from '../../src/exchange/text/cautions-said.js'
import { bread } from './notation.js'

const said = (formula: Formula) => methodCautions(openFormula(formula)).map(c => [c.code, c.message])
const codes = (text: string) => methodCautions(openFormula(bread('Buns', text))).map(c => c.code)
const ripened = (celsius: string) => `
  Levain:
    Ripe starter 40 g
    Bread flour 100 g
    Water 80 g
    wait Ripen: 4 h, at ${celsius}
  Final dough:
    Bread flour 900 g
    Water 600 g
    Levain 200 g
    wait Bulk: 3 h, at 24 °C`
const buns = (...steps: readonly string[]) =>
  `Final dough:\n Bread flour 500 g\n Milk 230 g\n Egg 100 g\n${steps.join('\n')}`

test('a starter that stands above 35 °C is said with its step and stage', () => {
  assert.deepEqual(said(bread('Mill', ripened('38 °C'))), [
    [
      'starterTooWarm',
      'Ripen of Levain stands at 38 °C. From about 35 °C up the yeasts of a starter no longer grow: let it stand cooler.',
    ],
  ])
  assert.deepEqual(codes(ripened('35 °C')), [])
  assert.deepEqual(codes(ripened('96 °F')), ['starterTooWarm'], '35.6 °C')
})

test('the dough that takes a levain is a starter’s too; one of yeast alone is not, nor is baking', () => {
  assert.deepEqual(codes(ripened('24 °C').replace('3 h, at 24', '3 h, at 36')), ['starterTooWarm'])
  assert.deepEqual(
    codes('Final dough:\n Bread flour 500 g\n Instant yeast 5 g\n wait Proof: 1 h, at 38 °C'),
    [],
  )
  assert.deepEqual(codes(`${ripened('24 °C')}\n bake Bake: 40 min, at 240 °C`), [])
})

for (const [what, steps, expected] of [
  ['two hours in the warm', ['hands Mix: 30 min', 'wait Bulk: 90 min'], []],
  ['a little more than two hours', ['hands Mix: 31 min', 'wait Bulk: 90 min'], ['perishableWarm']],
  [
    'a night in the fridge between',
    ['wait Bulk: 1 h', 'wait Retard: 12 h, in the fridge', 'wait Proof: 1 h'],
    [],
  ],
  ['a night at 4 °C', ['wait Bulk: 1 h', 'wait Retard: 12 h, at 4 °C'], []],
  ['a night at 5 °C', ['wait Bulk: 1 h', 'wait Retard: 12 h, at 5 °C'], ['perishableWarm']],
  ['an hour at 33 °C', ['wait Proof: 1 h, at 33 °C'], []],
  ['more than an hour at 33 °C', ['wait Proof: 61 min, at 33 °C'], ['perishableHot']],
  ['more than an hour at 32 °C', ['wait Proof: 61 min, at 32 °C'], []],
  ['what is kept hot above 60 °C', ['wait Hold: 4 h, at 65 °C'], []],
  ['milk and egg that go in late', ['wait Rest: 3 h', 'hands Mix: 10 min, adds Milk, Egg'], []],
  ['what comes after baking', ['wait Bulk: 1 h', 'bake Bake: 20 min', 'wait Cool: 4 h'], []],
  ['a range by its middle', ['wait Bulk: 1.5–2.5 h', 'hands Shape: 1 min'], ['perishableWarm']],
] as const)
  test(`egg and milk with ${what}: ${expected.length ? 'a caution' : 'none'}`, () => {
    assert.deepEqual(codes(buns(...steps)), expected)
  })

test('what an earlier stage with milk has stood counts, from the step at which it is taken', () => {
  const soaked = (take: string) => `
    Soaker:
      Milk 200 g
      Oats 100 g
      wait Soak: 90 min
    Final dough:
      Bread flour 500 g
      Soaker 300 g
      wait Autolyse: 40 min
      hands Mix: 10 min${take}
      wait Proof: 20 min`
  assert.deepEqual(codes(soaked(', adds Soaker')), [], '90 + 10 + 20')
  assert.deepEqual(said(bread('Buns', soaked(''))), [
    [
      'perishableWarm',
      'By its method, what is in Final dough stands 2.7 h in all between 4 and 60 °C before it is baked, with egg or milk in it; the usual public rule is no more than 2 h. Shorten what is warm, or let more of it pass in the fridge.',
    ],
  ])
})

test('the morning buns stand in the warm for 15 + 15 + 105 + 25 + 105 min, and every text says so', () => {
  const [formula] = readFormulas(readFileSync('examples/morning-buns.csv', 'utf8')).formulas
  const [caution, ...others] = methodCautions(openFormula(formula!))
  assert.deepEqual(others, [])
  assert.match(caution!.message, /in Final dough stands 4\.4 h in all/)
  assert.ok(cautionsSaid(openFormula(formula!), 'eu').includes(`Egg or milk, warm: ${caution!.message}`))
})

test('a formula without a method, and a stage that takes itself, have none', () => {
  assert.deepEqual(codes('Final dough:\n Milk 100 g'), [])
  assert.deepEqual(
    codes(`Poolish:\n Poolish 5 g\n Milk 100 g\n wait Ripen: 9 h\nFinal dough:\n Poolish 100 g`),
    ['perishableWarm'],
  )
})
