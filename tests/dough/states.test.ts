import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Formula } from '../../src/dough/document/formula.js'
import { emptyWorkbook, type Transaction } from '../../src/dough/document/workbook.js'
import { enterAmount, holdReading, Refusal, renameFormula } from '../../src/dough/edits/edits.js'
import { duplicateFormula } from '../../src/dough/edits/fetched/shelf-edits.js'
import { bringBack, forgetState, keepState } from '../../src/dough/edits/fetched/state-edits.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { History } from '../../src/storage/history.js'
import { near } from '../assert.js'
import { formulaOf, lineOf, workedCheck } from './notation.js'

const keptAt = '2025-11-24T07:42:00.000Z'

/** A workbook with the worked check in it, and its edits. */
function bench() {
  const formula = formulaOf(workedCheck)
  const history = new History({ ...emptyWorkbook, formulas: [formula] })
  const now = (): Formula => history.workbook.formulas[0]!
  const make = (transaction: Transaction | undefined) => transaction && history.apply(transaction)
  const water = {
    formula: formula.id,
    stage: formula.stages[1]!.id,
    line: lineOf(formula, 'Final dough', 'water').id,
  }
  return { formula, history, now, make, water, workbook: () => history.workbook }
}
const hydration = (formula: Formula) => openFormula(formula).reading('trueHydration')

test('a state is kept, the formula goes on, and the state is as it was', () => {
  const { formula, now, make, water, workbook } = bench()
  make(keepState(workbook(), formula.id, '  before the new flour ', keptAt))
  make(enterAmount(workbook(), water, 'weight', '740'))
  const [state] = now().states!
  assert.deepEqual([state!.name, state!.keptAt], ['before the new flour', keptAt])
  near(hydration(state!.formula), 8640 / 12260, 1e-12)
  near(hydration(now()), 9190 / 12260, 1e-12)
  assert.equal('states' in state!.formula, false, 'states hold no states')
})

test('a state is brought back whole, holds and all; the name and the states stay, and undo takes it back', () => {
  const { formula, history, now, make, water, workbook } = bench()
  make(holdReading(workbook(), water, 'trueHydration', 0.75))
  make(keepState(workbook(), formula.id, 'held', keptAt))
  make(enterAmount(workbook(), water, 'weight', '600'))
  make(renameFormula(workbook(), formula.id, 'Saturday loaf'))
  make(keepState(workbook(), formula.id, 'dry', keptAt))
  const before = now()
  assert.equal(before.holds?.length, 0)

  make(bringBack(workbook(), formula.id, before.states![0]!.id))
  near(hydration(now()), 0.75, 1e-12)
  assert.equal(now().name, 'Saturday loaf')
  assert.deepEqual(
    now().states!.map(s => s.name),
    ['held', 'dry'],
  )
  history.undo()
  assert.deepEqual(now(), before)
  history.redo()
  near(hydration(now()), 0.75, 1e-12)
})

test('a field that came later goes again when an earlier state is brought back', () => {
  const { formula, now, make, workbook } = bench()
  make(keepState(workbook(), formula.id, 'plain', keptAt))
  make({
    label: 'Make',
    changes: [{ of: 'fields', formula: formula.id, value: { batch: { make: 'factor', factor: 2 } } }],
  })
  make(bringBack(workbook(), formula.id, now().states![0]!.id))
  assert.equal('batch' in now(), false)
})

test('a state is let go, and undo brings it back', () => {
  const { formula, history, now, make, workbook } = bench()
  make(keepState(workbook(), formula.id, 'one', keptAt))
  make(keepState(workbook(), formula.id, 'two', keptAt))
  const kept = now().states
  make(forgetState(workbook(), formula.id, kept![0]!.id))
  assert.deepEqual(
    now().states!.map(s => s.name),
    ['two'],
  )
  history.undo()
  assert.deepEqual(now().states, kept)
})

test('a state needs a name, and one that is gone says so', () => {
  const { formula, workbook } = bench()
  assert.throws(() => keepState(workbook(), formula.id, ' ', keptAt), Refusal)
  assert.throws(() => bringBack(workbook(), formula.id, 'gone'), /no longer kept/)
  assert.throws(() => forgetState(workbook(), formula.id, 'gone'), /no longer kept/)
})

test('a duplicate keeps the states, and its holds point at its own lines', () => {
  const { formula, make, water, workbook } = bench()
  make(holdReading(workbook(), water, 'trueHydration', 0.75))
  make(keepState(workbook(), formula.id, 'held', keptAt))
  make(duplicateFormula(workbook(), formula.id))
  const copy = workbook().formulas[1]!
  near(hydration(copy), 0.75, 1e-12)
  assert.equal(copy.holds![0]!.line, lineOf(copy, 'Final dough', 'water').id)
  make(bringBack(workbook(), copy.id, copy.states![0]!.id))
  near(hydration(workbook().formulas[1]!), 0.75, 1e-12)
})
