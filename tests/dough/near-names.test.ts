import assert from 'node:assert/strict'
import { describe, test } from 'node:test'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { formulaOf, lineOf } from './notation.js'

const mill = `
  Old levain:
    ripe starter = 40 g
    bread flour = 100 g
    water = 80 g
  Final dough:
    bread flour = 820 g
    crème fraîche = 50 g
    T65 bio = 180 g
    water = 690 g
    salt = AMOUNT
    old levain = 210 g`

const said = (amount: string): string | undefined => {
  const sheet = openFormula(formulaOf(mill.replace('AMOUNT', amount)))
  return sheet.line(lineOf(sheet.formula, 'Final dough', 'salt').id).problem?.message
}
const jotted = (text: string): string | undefined => {
  const formula = { ...formulaOf(mill.replace('AMOUNT', '20 g')), jottings: [{ id: 'j', name: 'x', text }] }
  return openFormula(formula).jotting('j').problem?.message
}

const meant: readonly (readonly [text: string, written: string, name: string])[] = [
  ['total flour / 4', 'total flour', 'total_flour'],
  ['Dough weight', 'Dough weight', 'dough_weight'],
  ['2% * total-flour', 'total-flour', 'total_flour'],
  ['totalFlour/4', 'totalFlour', 'total_flour'],
  ['dough  weight - 20 g', 'dough  weight', 'dough_weight'],
  ['3*bread flour + water', 'bread flour', 'bread_flour'],
  ['creme_fraiche/2', 'creme_fraiche', 'crème_fraîche'],
  ['t 65 bio/2', 't 65 bio', 't65_bio'],
  ['old levain.water/2', 'old levain.water', 'old_levain.water'],
  ['old-levain.ripe-starter', 'old-levain.ripe-starter', 'old_levain.ripe_starter'],
]
describe('A name that is nearly one there is asked after', () => {
  for (const [text, written, name] of meant) {
    test(`${text} in an amount and in a jotting`, () => {
      const question = `Nothing here is called ${written}. Did you mean ${name}?`
      assert.equal(said(text), question)
      assert.equal(jotted(text), question)
    })
  }

  const others: readonly (readonly [text: string, why: RegExp])[] = [
    ['rye/2', /^Nothing in Final dough is called rye\. Write a weight/],
    ['water salt', /^water salt: put \+, -, \* or \/ in between\.$/],
    ['bread_flour-water-rye', /^Nothing in Final dough is called rye\. Write/],
    [`${'total '.repeat(40_000)}`, /longer than 512 characters/],
  ]
  for (const [text, why] of others) {
    test(`and no other is: ${text.slice(0, 40)}`, () => assert.match(said(text)!, why))
  }

  test('of a line of the stage itself, where the dough has none of that name', () => {
    const sheet = openFormula(
      formulaOf('Levain:\n rye flour = 100 g\n water = rye flour\nDough:\n flour = 900 g'),
    )
    assert.equal(
      sheet.line(lineOf(sheet.formula, 'Levain', 'water').id).problem?.message,
      'Nothing here is called rye flour. Did you mean rye_flour?',
    )
  })
})
