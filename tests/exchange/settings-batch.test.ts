import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Batch } from '../../src/dough/document/batch.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { readFormulas, writeFormulas } from '../../src/exchange/index.js'
import { formulaOf, workedCheck } from '../dough/notation.js'
import { readWell, shown, told } from './notation.js'

const loaf = formulaOf(workedCheck)
const rows = (csv: string, what: RegExp) => csv.split('\r\n').filter(row => what.test(row))
const bread =
  'formula,stage,ingredient,amount,setting\nLoaf,Levain,Ripe starter,40 g,\nLoaf,Dough,Levain,210 g,\n'
const read = (...rows: string[]) => readFormulas(bread + rows.join('\n'))
const making = (text: string, setting = 'make') => read(`Loaf,,,"${text}",${setting}`)

const texts: readonly (readonly [text: string, batch: Batch, ...also: string[]])[] = [
  [
    '6 × 900 g',
    { make: 'pieces', pieces: [{ count: 6, weight: 900 }] },
    '6 x 900 g',
    '6*900',
    '6x900g',
    '6 × 0.9 kg',
  ],
  [
    '4 × 900 g + 12 × 85 g',
    {
      make: 'pieces',
      pieces: [
        { count: 4, weight: 900 },
        { count: 12, weight: 85 },
      ],
    },
    '4×900+12×85',
  ],
  [
    '6 × 1234.56789012345 g baked',
    { make: 'baked pieces', pieces: [{ count: 6, weight: 1234.56789012345 }] },
    '6 X 1.23456789012345 KG Baked',
  ],
  [
    '3 × 852 g (round tin) + 2 × 500 g (bâtard, 1.5 cm cut) + 4 × 85 g',
    {
      make: 'pieces',
      pieces: [
        { count: 3, weight: 852, name: 'round tin' },
        { count: 2, weight: 500, name: 'bâtard, 1.5 cm cut' },
        { count: 4, weight: 85 },
      ],
    },
    '3x852(round tin)+2*500 g  ( bâtard, 1.5 cm cut )+4x85',
  ],
  [
    '3 × 750 g (round tin) baked',
    { make: 'baked pieces', pieces: [{ count: 3, weight: 750, name: 'round tin' }] },
    '3 × 0.75 kg (round tin) baked',
  ],
  ['5400 g dough', { make: 'dough', grams: 5400 }, '5.4 kg of dough', '5400 dough'],
  ['1000 g flour', { make: 'flour', grams: 1000 }, '1 kg flour'],
  ['all of 310 g Levain', { make: 'all of', ingredient: 'Levain', grams: 310 }, 'All of 0.31 kg Levain'],
  ['all of 21 g Salt, fine 1,5', { make: 'all of', ingredient: 'Salt, fine 1,5', grams: 21 }],
  ['2.5 times', { make: 'factor', factor: 2.5 }, '2.5  Times'],
]
for (const [text, batch, ...also] of texts)
  test(`to make ${text} is written so and read`, () => {
    const written = writeFormulas([{ ...loaf, batch }])
    const [again] = readWell(written)
    assert.deepEqual(again!.batch, batch)
    assert.equal(writeFormulas([again!]), written)
    assert.ok(rows(written, /,make,/)[0]!.includes(text))
    for (const other of also) {
      const { formulas, problems } = making(other)
      assert.deepEqual([told(problems), formulas[0]!.batch], [[], batch], other)
    }
  })

test('the name of a shape is not touched where a file has decimal commas', () => {
  const { formulas, problems } = readFormulas(
    'formula;stage;ingredient;amount;setting\nLoaf;Dough;Flour;100,5 g;\nLoaf;;;3 × 852,5 g (tin of 1,5 l);make',
  )
  assert.deepEqual(told(problems), [])
  assert.deepEqual(formulas[0]!.batch, {
    make: 'pieces',
    pieces: [{ count: 3, weight: 852.5, name: 'tin of 1,5 l' }],
  })
})

test('what would part the shapes is no part of a name', () => {
  const batch: Batch = { make: 'pieces', pieces: [{ count: 3, weight: 852, name: ' tin (round) + lid\n' }] }
  const written = writeFormulas([{ ...loaf, batch }])
  const [again] = readWell(written)
  assert.deepEqual(again!.batch, {
    make: 'pieces',
    pieces: [{ count: 3, weight: 852, name: 'tin [round] + lid' }],
  })
  assert.equal(writeFormulas([again!]), written)
})

test('losses are written in per cent, with the batch or without', () => {
  const batch: Batch = {
    make: 'baked pieces',
    pieces: [{ count: 6, weight: 800 }],
    loss: 0.02,
    bakeLoss: 0.1275,
  }
  const written = writeFormulas([
    { ...loaf, batch },
    { ...loaf, name: 'Other', batch: { make: 'as written', loss: 0.07 } },
  ])
  assert.deepEqual(rows(written, /,(make|.*loss),/), [
    'Test,,,6 × 800 g baked,,,make,,,',
    'Test,,,2%,,,loss,,,',
    'Test,,,12.75%,,,bake loss,,,',
    'Other,,,7%,,,loss,,,',
  ])
  const [first, second] = readWell(written)
  assert.deepEqual(first!.batch, batch)
  assert.deepEqual(second!.batch, { make: 'as written', loss: 0.07 })
})

test('as written is what a formula without a batch is', () => {
  assert.equal(writeFormulas([{ ...loaf, batch: { make: 'as written' } }]), writeFormulas([loaf]))
  assert.equal(making('As written').formulas[0]!.batch, undefined)
})

test('what a stage keeps back and loses comes back with the stage', () => {
  const [levain, dough] = loaf.stages
  const formula: Formula = { ...loaf, stages: [{ ...levain!, keepBack: 50, loss: 0.015 }, dough!] }
  const written = writeFormulas([formula])
  assert.deepEqual(rows(written, /,(keep-back|loss),/), [
    'Test,Levain,,50 g,,,keep-back,,,',
    'Test,Levain,,1.5%,,,loss,,,',
  ])
  assert.equal(shown(readWell(written)[0]!), shown(formula))
  const seed: Formula = { ...loaf, stages: [{ ...levain!, keepBack: 'seed' }, dough!] }
  assert.equal(readWell(writeFormulas([seed]))[0]!.stages[0]!.keepBack, 'seed')
})

test('a batch that was read makes what it says', () => {
  const [levain, dough] = loaf.stages
  const batch: Batch = { make: 'pieces', pieces: [{ count: 6, weight: 900 }], loss: 0.02 }
  const formula: Formula = { ...loaf, batch, stages: [{ ...levain!, keepBack: 50 }, dough!] }
  const sheet = openFormula(readWell(writeFormulas([formula]))[0]!)
  assert.ok(Math.abs(sheet.stage(sheet.formula.stages[0]!.id).build! - 652.3647) < 1e-3)
})

test('a file of one stage has the loss of its formula', () => {
  const [formula] = readWell('ingredient,amount,setting\nBread flour,100%,\n,2%,loss\n')
  assert.deepEqual([formula!.batch?.loss, formula!.stages[0]!.loss], [0.02, undefined])
})

test('decimal commas are read in what is to be made, and left alone in names', () => {
  const { formulas, problems } = readFormulas(
    'formula;stage;ingredient;amount;setting\nLoaf;Dough;Roggen 1,15;12,5 g;\nLoaf;;;all of 310,25 g Roggen 1,15;make\nLoaf;;;2,5%;loss\n',
  )
  assert.deepEqual(told(problems), [])
  assert.deepEqual(formulas[0]!.batch, {
    make: 'all of',
    ingredient: 'Roggen 1,15',
    grams: 310.25,
    loss: 0.025,
  })
})

const makeLike = 'Write 6 × 900 g, 5400 g dough, 1000 g flour, all of 310 g Levain, or 2.5 times. It is kept.'
const lossLike = 'Write a percentage from 0 to below 100, like 2%. It is kept.'
for (const [setting, stage, amount, problem] of [
  ['make', '', 'six loaves', `says to make “six loaves”, which is not understood. ${makeLike}`],
  ['make', '', '0 × 900 g', `says to make “0 × 900 g”, which is not understood. ${makeLike}`],
  ['make', '', '1e999 g dough', `says to make “1e999 g dough”, which is not understood. ${makeLike}`],
  [
    'make',
    'Dough',
    '2 times',
    'sets “make” of a stage. It is the formula’s own: leave the stage empty. It is kept.',
  ],
  ['loss', '', '100%', `gives “100%” as loss. ${lossLike}`],
  ['bake loss', '', '0.12', `gives “0.12” as bake loss. ${lossLike}`],
  ['loss', 'Levain', 'much', `gives “much” as loss. ${lossLike}`],
  [
    'keep-back',
    'Levain',
    'some',
    'gives “some” as keep-back. Write a weight, like 50 g, or seed. It is kept.',
  ],
  ['keep-back', 'Sponge', '50 g', 'sets “keep-back” of “Sponge”, but Loaf has no such stage. It is kept.'],
] as const)
  test(`${setting} ${amount}${stage && ` of ${stage}`} is a problem of its row and is kept`, () => {
    const { formulas, problems } = read(`Loaf,${stage},,${amount},${setting}`)
    assert.deepEqual(told(problems), [`4 warning: Row 4 ${problem}`])
    assert.deepEqual(formulas[0]!.keptSettings, [{ stage, setting, amount, note: '' }])
    const written = writeFormulas(formulas)
    assert.equal(writeFormulas(readFormulas(written).formulas), written)
  })

test('a setting kept because it was not understood goes when the formula says it itself', () => {
  const [formula] = making('six loaves').formulas
  const batch: Batch = { make: 'factor', factor: 2 }
  assert.deepEqual(rows(writeFormulas([{ ...formula!, batch }]), /,make,/), ['Loaf,,,2 times,,,make,,,'])
})
