import assert from 'node:assert/strict'
import { test } from 'node:test'
import { type FormulaSheet, openFormula } from '../../src/dough/formula-sheet.js'
import { formulaOf, lineOf } from './notation.js'
import { plainLarder } from './plain-larder.js'

const sheetOf = (text: string) => {
  const sheet = openFormula(formulaOf(text), plainLarder)
  const { formula } = sheet
  const line = (name: string) => lineOf(formula, 'Final dough', name).id
  const told = (name: string) => {
    const { code, cause } = sheet.line(line(name)).problem ?? {}
    return [code, cause]
  }
  return { sheet, line, told }
}

const mill = 'Final dough:\n flour = 1000 g\n water = AMOUNT\n salt = water*0.03\n oil = salt'

test('a line without a figure says in which line its problem arose', () => {
  const { sheet, line, told } = sheetOf(mill.replace('AMOUNT', 'malt'))
  assert.deepEqual(told('water'), ['unknownInAmount', line('water')])
  assert.deepEqual(told('salt'), ['aroseElsewhere', line('water')])
  assert.deepEqual(told('oil'), ['aroseElsewhere', line('water')])
  assert.deepEqual(told('flour'), [undefined, undefined])
  const stage = sheet.stage(sheet.formula.stages[0]!.id)
  assert.deepEqual([stage.problem?.code, stage.problem?.cause], ['aroseElsewhere', line('water')])
})

test('lines that work each other out are a circle, which is of no line', () => {
  const { told } = sheetOf(mill.replace('AMOUNT', 'oil'))
  for (const name of ['water', 'salt', 'oil']) assert.deepEqual(told(name), ['figuresInCircle', undefined])
})

const errorsOn = ({ problems }: FormulaSheet) =>
  problems.filter(p => p.severity === 'error').map(p => [p.code, p.where.line])

test('holds without an answer are told of by the first line that gives', () => {
  const { sheet, line, told } = sheetOf(
    'Final dough:\n flour = 100%\n water = 70%\n oil = 3%\n salt = oil*0.03\n malt = 1%',
  )
  sheet.hold('totalWater', 650, { stage: 'Final dough', ingredient: 'oil' })
  sheet.hold('trueHydration', 0.75, { stage: 'Final dough', ingredient: 'malt' })
  for (const name of ['oil', 'salt', 'malt'])
    assert.deepEqual(told(name), ['holdsContradict', line('oil')], name)
  assert.deepEqual(errorsOn(sheet), [['holdsContradict', line('oil')]])
})

test('where one of them cannot be reached, the line that gives for it is told of, and how far it goes', () => {
  const { sheet, line, told } = sheetOf(
    'Final dough:\n flour = 100%\n water = 70%\n salt = water*0.03\n malt = 1%',
  )
  sheet.hold('totalWater', 700, { stage: 'Final dough', ingredient: 'water' })
  sheet.hold('trueHydration', 0.75, { stage: 'Final dough', ingredient: 'malt' })
  for (const name of ['water', 'salt', 'malt'])
    assert.deepEqual(told(name), ['holdsContradict', line('water')], name)
  assert.deepEqual(errorsOn(sheet), [['holdOutOfReach', line('malt')]])
  // 700 g of water on 1000 g of flour, of which malt changes neither.
  assert.match(sheet.problems[0]!.message, /True hydration cannot be 75 %: at most 70 % while water stays/)
})
