import assert from 'node:assert/strict'
import { test } from 'node:test'
import { readFormulas, sheetFigures, writeFormulas } from '../../src/exchange/index.js'
import { formulaOf, workedCheck } from '../dough/notation.js'
import { readWell, told } from './notation.js'

const loaf = formulaOf(workedCheck)
const batch = { make: 'pieces', pieces: [{ count: 6, weight: 900 }], loss: 0.02 } as const
const write = (formulas: Parameters<typeof writeFormulas>[0]) =>
  writeFormulas(formulas, { figures: sheetFigures() })

test('a formula with a batch is written with the grams that are weighed of it, for those who read the file', () => {
  const [head, ...rows] = write([{ ...loaf, batch }]).split('\r\n')
  assert.match(head!, /,grams,percent,whole dough percent,batch grams$/)
  // 5,400 g ÷ 0.98 of 1,921 g: k = 2.868404, and 690 g of water are 1,979.2 g
  assert.match(rows.find(row => /,water,690 g,/i.test(row))!, /,690,.*,1979$/)
})

test('without a batch nothing is written of it', () => {
  assert.doesNotMatch(write([loaf]), /batch grams/)
})

test('they are not read where there is an amount, and never change it', () => {
  const written = write([{ ...loaf, batch }])
  const [again] = readWell(written.replace(/,1979\r/, ',5\r'))
  assert.deepEqual(again!.batch, batch)
  assert.equal(
    again!.stages.at(-1)!.lines.find(({ ingredient }) => ingredient.toLowerCase() === 'water')!.amount,
    '690 g',
  )
  assert.equal(write(readWell(written)), written)
})

test('alone they are no amount, and that is told', () => {
  const { formulas, problems } = readFormulas('ingredient,amount,batch grams\nFlour,1000 g,3000\nSalt,,60')
  assert.equal(formulas[0]!.stages[0]!.lines[1]!.amount, '')
  assert.deepEqual(told(problems), [
    '3 warning: Row 3 gives only the grams of a batch for Salt, which are not read. Give it an amount.',
  ])
})
