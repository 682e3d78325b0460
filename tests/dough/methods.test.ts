import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Formula } from '../../src/dough/document/formula.js'
import { withAddedName } from '../../src/dough/document/step-names.js'
import {
  applyChanges,
  emptyWorkbook,
  type Transaction,
  type Workbook,
} from '../../src/dough/document/workbook.js'
import { enterIngredient, renameStage } from '../../src/dough/edits/edits.js'
import {
  addStep,
  changeStep,
  moveStep,
  newStep,
  removeStep,
} from '../../src/dough/edits/fetched/method-edits.js'
import { formulaOf } from './notation.js'

const workbookOf = (formula: Formula): Workbook => ({ ...emptyWorkbook, formulas: [formula] })
const start = () =>
  workbookOf(
    formulaOf(`
    Levain:
      ripe starter = 40 g
      bread flour = 100 g
      water = 80 g
    Final dough:
      bread flour = 820 g
      salt = 21 g
      levain = 210 g`),
  )
const at = ({ formulas: [formula] }: Workbook, stage: number) => ({
  formula: formula!.id,
  stage: formula!.stages[stage]!.id,
})
const method = ({ formulas: [formula] }: Workbook, stage: number) =>
  (formula!.stages[stage]!.method ?? []).map(({ does, text }) => (text ? `${does}: ${text}` : does))
const doing = (workbook: Workbook, transaction: Transaction | undefined) =>
  applyChanges(workbook, transaction!.changes)

test('steps are added, changed, moved and removed, and each is taken back', () => {
  let workbook = start()
  const steps = ['Mix', 'Bulk', 'Bake'].map(does => newStep(does, 'hands'))
  for (const step of steps) workbook = doing(workbook, addStep(workbook, at(workbook, 1), step)).workbook
  workbook = doing(
    workbook,
    addStep(workbook, at(workbook, 1), newStep('Rest', 'wait', '30 min'), 1),
  ).workbook
  assert.deepEqual(method(workbook, 1), ['Mix', 'Rest: 30 min', 'Bulk', 'Bake'])
  const place = { ...at(workbook, 1), step: steps[1]!.id }
  const edits = [
    changeStep(workbook, place, { text: '4 h', kind: 'wait' }),
    moveStep(workbook, place, -1),
    moveStep(workbook, place, 1),
    removeStep(workbook, place),
  ]
  const after = [
    ['Mix', 'Rest: 30 min', 'Bulk: 4 h', 'Bake'],
    ['Mix', 'Bulk', 'Rest: 30 min', 'Bake'],
    ['Mix', 'Rest: 30 min', 'Bake', 'Bulk'],
    ['Mix', 'Rest: 30 min', 'Bake'],
  ]
  for (const [i, edit] of edits.entries()) {
    const done = doing(workbook, edit)
    assert.deepEqual(method(done.workbook, 1), after[i])
    assert.deepEqual(applyChanges(done.workbook, done.inverse).workbook, workbook)
  }
  assert.equal(moveStep(workbook, { ...place, step: steps[0]!.id }, -1), undefined)
  assert.equal(changeStep(workbook, place, { does: 'Bulk' }), undefined)
  assert.throws(
    () => removeStep(workbook, { ...place, step: 'gone' }),
    /That step is no longer in the method/,
  )
})

test('a stage whose last step is removed has no method at all', () => {
  let workbook = start()
  const before = workbook
  const step = newStep('Mix', 'hands')
  workbook = doing(workbook, addStep(workbook, at(workbook, 0), step)).workbook
  workbook = doing(workbook, removeStep(workbook, { ...at(workbook, 0), step: step.id })).workbook
  assert.deepEqual(workbook, before)
})

test('steps that add a line follow its renaming, and that of a stage it takes', () => {
  let workbook = start()
  const step = newStep('Mix', 'hands', '5 min, adds salt, Levain, at 25 °C')
  workbook = doing(workbook, addStep(workbook, at(workbook, 1), step)).workbook
  const salt = { ...at(workbook, 1), line: workbook.formulas[0]!.stages[1]!.lines[1]!.id }
  workbook = doing(workbook, enterIngredient(workbook, salt, 'sea salt')).workbook
  assert.deepEqual(method(workbook, 1), ['Mix: 5 min, adds sea salt, Levain, at 25 °C'])
  workbook = doing(workbook, renameStage(workbook, at(workbook, 0), 'Rye levain')).workbook
  assert.deepEqual(method(workbook, 1), ['Mix: 5 min, adds sea salt, Rye levain, at 25 °C'])
  assert.equal(workbook.formulas[0]!.stages[1]!.lines[1]!.ingredient, 'sea salt')
  assert.equal(workbook.formulas[0]!.stages[1]!.lines[2]!.ingredient, 'Rye levain')
})

const renamed: readonly (readonly [text: string, from: string, to: string, now: string])[] = [
  ['adds Salt', 'salt', 'Sea salt', 'adds Sea salt'],
  ['5 min,adds Salt ,Water', 'Salt', 'Sea salt', '5 min,adds Sea salt ,Water'],
  ['ajoute Sel, Eau', 'eau', 'Lait', 'ajoute Sel, Lait'],
  ['Salt, 5 min', 'Salt', 'Sea salt', 'Salt, 5 min'],
  ['adds Water (2)', 'Water', 'Milk', 'adds Water (2)'],
  ['1,5 h, adds Salt', 'Salt', 'Sea salt', '1,5 h, adds Sea salt'],
]
for (const [text, from, to, now] of renamed)
  test(`“${text}” with ${from} called ${to} is “${now}”`, () =>
    assert.equal(withAddedName(text, from, to), now))
