import assert from 'node:assert/strict'
import { test } from 'node:test'
import { Weights } from '../../src/day/plan/weigh-list.js'
import { dayMade } from '../../src/day/trade/builds-made.js'
import { needsOf } from '../../src/day/trade/needs.js'
import { writeTradeText } from '../../src/day/trade/trade-text.js'
import { larderWith, usualLarder } from '../../src/dough/larder/usual-larder.js'
import { writeTotals } from '../../src/exchange/csv/day-totals.js'
import { bread, saturday } from '../day/notation.js'

const usual = (name: string) => usualLarder.find(i => i.name === name)!
const larder = larderWith([
  { ...usual('Bread flour'), pack: 25_000, price: 23.5, stock: 500, supplier: '=Mill; "of" Brackwater' },
  { ...usual('Salt'), stock: 40.5 },
])
// 1,800 g of 1,670 g: × 1800 ÷ 1670 gives 1,077.84, 700.60 and 21.56 g, which round to 1,801 g; the flour, changed least, is weighed one less.
// 1,077 g × 23.50 ÷ 25,000 g is 1.01238.
const formula = bread('Plain', 'Final dough:\n Bread flour 1000 g\n Water 650 g\n Salt 20 g')
const day = saturday([[formula, 2]])
const needs = needsOf(dayMade(day, [formula], new Weights([formula], larder)), larder)

test('the totals of a day are a file for an office program: points and commas', () => {
  assert.equal(
    writeTotals(needs, { decimal: '.', currency: 'EUR' }),
    [
      'ingredient,grams,pack grams,packs used,in stock grams,short grams,packs to buy,price of a pack,cost used,cost to buy,currency,supplier,remark',
      `Bread flour,1077,25000,1,500,577,1,23.5,1.0124,23.5,EUR,"'=Mill; ""of"" Brackwater",`,
      'Water,701,,,,,,,,,,,',
      'Salt,22,,,40.5,0,,,,,,,no price',
      '',
    ].join('\r\n'),
  )
})

test('where the comma is the decimal sign, semicolons part the cells', () => {
  const [, flour, , salt] = writeTotals(needs, { decimal: ',', currency: 'EUR' }).split('\r\n')
  assert.equal(flour, `Bread flour;1077;25000;1;500;577;1;23,5;1,0124;23,5;EUR;"'=Mill; ""of"" Brackwater";`)
  assert.equal(salt, 'Salt;22;;;40,5;0;;;;;;;no price')
})

test('the same as text, figures beneath each other', () => {
  assert.equal(
    writeTradeText({
      name: 'Saturday oven',
      date: 'Saturday 5 December',
      needs: [
        { name: 'Bread flour', figure: '1,078 g', about: '1 pack of 25 kg' },
        { name: 'Salt', figure: '22 g' },
      ],
      remarks: [],
      costs: [],
      notes: 'Notes are as written.',
      lists: [{ name: 'Plain', lines: [{ name: 'Salt', figure: '22 g' }] }],
    }),
    [
      'Saturday oven, Saturday 5 December',
      '',
      'TO BUY',
      '  Bread flour  1,078 g',
      '    1 pack of 25 kg',
      '  Salt            22 g',
      '',
      'TO WEIGH, DOUGH BY DOUGH',
      'Notes are as written.',
      '',
      'Plain',
      '  Salt  22 g',
      '',
    ].join('\n'),
  )
})
