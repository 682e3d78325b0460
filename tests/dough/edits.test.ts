import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Formula } from '../../src/dough/document/formula.js'
import {
  applyChanges,
  emptyWorkbook,
  type Transaction,
  type Workbook,
} from '../../src/dough/document/workbook.js'
import {
  enterAmount,
  enterIngredient,
  moveLine,
  moveStage,
  Refusal,
  renameFormula,
  renameStage,
  setFlourWeight,
  together,
} from '../../src/dough/edits/edits.js'
import { removeLines, removeStage, setFerments } from '../../src/dough/edits/fetched/row-edits.js'
import {
  addFormulas,
  blankFormula,
  duplicateFormula,
  removeFormula,
  replaceFormula,
} from '../../src/dough/edits/fetched/shelf-edits.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { formulaOf, lineOf, workedCheck } from './notation.js'

const shelf = (...formulas: Formula[]): Workbook => ({ ...emptyWorkbook, formulas })
const after = (workbook: Workbook, transaction: Transaction) =>
  applyChanges(workbook, transaction.changes).workbook
const lines = (formula: Formula, stage: string) =>
  formula.stages.find(s => s.name === stage)!.lines.map(l => `${l.ingredient} ${l.amount}`)

function at(formula: Formula, stage: string, ingredient: string) {
  return {
    formula: formula.id,
    stage: formula.stages.find(s => s.name === stage)!.id,
    line: lineOf(formula, stage, ingredient).id,
  }
}

const kept: readonly (readonly [
  typed: string,
  column: 'percent' | 'weight',
  decimal: '.' | ',',
  kept: string,
])[] = [
  ['70', 'percent', '.', '70%'],
  ['70', 'weight', '.', '70 g'],
  ['70,5', 'percent', ',', '70.5%'],
  ['20 g', 'percent', '.', '20 g'],
  ['2%', 'weight', '.', '2%'],
  ['2 1/2 tsp', 'weight', '.', '2 1/2 tsp'],
  ['30 + 40', 'percent', '.', '(30 + 40)%'],
  ['30 + 40', 'weight', '.', '(30 + 40) g'],
  ['2*salt', 'percent', '.', '2*salt'],
  ['min(2,5; 3) g', 'weight', ',', 'min(2.5, 3) g'],
  ['  ', 'weight', '.', ''],
  ['who knows?', 'weight', '.', 'who knows?'],
  ['=70', 'percent', '.', '70%'],
  [' = 690 + 20', 'weight', '.', '(690 + 20) g'],
  ['=2*salt', 'weight', '.', '2*salt'],
  ['＝2,5%', 'percent', ',', '2.5%'],
  ['=who knows?', 'weight', '.', 'who knows?'],
  ['=', 'weight', '.', '='],
  ['==5', 'weight', '.', '==5'],
]
for (const [typed, column, decimal, expected] of kept) {
  test(`"${typed}" typed as ${column} with decimal ${decimal} is kept as "${expected}"`, () => {
    const formula = formulaOf(workedCheck)
    const edit = enterAmount(shelf(formula), at(formula, 'Final dough', 'water'), column, typed, decimal)
    assert.equal(lineOf(after(shelf(formula), edit).formulas[0]!, 'Final dough', 'water').amount, expected)
  })
}

test('what was typed is shown as typed, and the other column follows', () => {
  const formula = formulaOf(
    'Dough:\n Bread flour = 1000 g\n Water = (30 + 40)%\n Salt = 2%\n Olive oil = 2 tbsp',
  )
  const sheet = openFormula(formula)
  const shown = formula.stages[0]!.lines.map(l => sheet.line(l.id)).map(l => [
    l.typedIn,
    l.typed,
    l.plain,
    l.weight,
  ])
  assert.deepEqual(shown, [
    ['weight', '1000', true, 1000],
    ['percent', '30 + 40', false, 700],
    ['percent', '2', true, 20],
    ['weight', '2 tbsp', false, 27],
  ])
})

test('every edit is taken back by its inverse', () => {
  const formula = formulaOf(workedCheck)
  const start = shelf(formula)
  const edits = [
    enterAmount(start, at(formula, 'Levain', 'water'), 'weight', '90'),
    enterIngredient(start, at(formula, 'Levain', 'water'), 'milk'),
    removeLines(start, [at(formula, 'Levain', 'water'), at(formula, 'Final dough', 'salt')]),
    moveLine(start, at(formula, 'Final dough', 'bread flour'), -1)!,
    moveLine(start, at(formula, 'Final dough', 'salt'), 1)!,
    renameStage(start, at(formula, 'Levain', 'water'), 'Sour'),
    removeStage(start, at(formula, 'Levain', 'water')),
    moveStage(start, at(formula, 'Levain', 'water'), 1)!,
    setFerments(start, at(formula, 'Levain', 'water'), false),
    renameFormula(start, formula.id, 'Mill wheat'),
    setFlourWeight(start, formula.id, 800),
    duplicateFormula(start, formula.id),
    removeFormula(start, formula.id),
    addFormulas(start, [blankFormula(), blankFormula()]),
    replaceFormula(start, formula.id, blankFormula()),
  ]
  for (const edit of [...edits, together('Some', edits.slice(0, 2))]) {
    const { workbook, inverse } = applyChanges(start, edit.changes)
    assert.notDeepEqual(workbook, start, edit.label)
    assert.deepEqual(applyChanges(workbook, inverse).workbook, start, edit.label)
  }
})

test('renaming a stage takes its lines and the amounts that speak of it along', () => {
  const formula = formulaOf(`${workedCheck}\n oil = levain.water / 2`)
  const now = after(shelf(formula), renameStage(shelf(formula), at(formula, 'Levain', 'water'), 'Sour build'))
    .formulas[0]!
  assert.deepEqual(lines(now, 'Final dough').slice(-2), ['Sour build 210 g', 'oil sour_build.water / 2'])
})

test('renaming an ingredient takes the amounts of its stage along', () => {
  const formula = formulaOf('Dough:\n salt = 20 g\n oil = 2*salt')
  const now = after(shelf(formula), enterIngredient(shelf(formula), at(formula, 'Dough', 'salt'), 'Sea salt'))
    .formulas[0]!
  assert.deepEqual(lines(now, 'Dough'), ['Sea salt 20 g', 'oil 2*sea_salt'])
})

const refused: readonly (readonly [title: string, edit: (formula: Formula) => unknown, why: RegExp])[] = [
  [
    'a stage that takes itself',
    f => enterIngredient(shelf(f), at(f, 'Levain', 'water'), 'levain'),
    /Levain would take Levain\. A stage cannot be made of itself/,
  ],
  [
    'a stage that takes itself round a corner',
    f => enterIngredient(shelf(f), at(f, 'Levain', 'water'), 'Final dough'),
    /Levain would take Final dough, which takes Levain/,
  ],
  [
    'a stage name that is taken',
    f => renameStage(shelf(f), at(f, 'Levain', 'water'), 'final dough'),
    /There is a stage called final dough already/,
  ],
  ['a formula without a name', f => renameFormula(shelf(f), f.id, ' '), /A formula needs a name/],
  ['a flour weight of nothing', f => setFlourWeight(shelf(f), f.id, 0), /a number of grams above 0/],
  ['a formula that is gone', f => renameFormula(emptyWorkbook, f.id, 'x'), /no longer on the shelf/],
]
for (const [title, edit, why] of refused) {
  test(`refused with a sentence: ${title}`, () => {
    assert.throws(
      () => edit(formulaOf(workedCheck)),
      (error: Error) => error instanceof Refusal && why.test(error.message),
    )
  })
}

test('a line moves into the neighbouring stage at an end, and no further than the last', () => {
  const formula = formulaOf(workedCheck)
  const up = after(shelf(formula), moveLine(shelf(formula), at(formula, 'Final dough', 'bread flour'), -1)!)
    .formulas[0]!
  assert.equal(lines(up, 'Levain').at(-1), 'bread flour 820 g')
  assert.equal(moveLine(shelf(formula), at(formula, 'Final dough', 'levain'), 1), undefined)
  const stages = after(shelf(formula), moveStage(shelf(formula), at(formula, 'Final dough', 'water'), -1)!)
    .formulas[0]!
  assert.deepEqual(
    stages.stages.map(s => s.name),
    ['Final dough', 'Levain'],
  )
})

test('copies on the shelf get names that are free', () => {
  const formula = { ...formulaOf(workedCheck), name: 'Mill wheat' }
  const twice = after(shelf(formula), duplicateFormula(shelf(formula), formula.id))
  const thrice = after(twice, addFormulas(twice, [{ ...formula, id: 'other' }]))
  assert.deepEqual(
    thrice.formulas.map(f => f.name),
    ['Mill wheat', 'Mill wheat 2', 'Mill wheat 3'],
  )
})

test('a program types into a line, and makes the line and the stage when there are none', () => {
  const sheet = openFormula(formulaOf(workedCheck))
  sheet.enter('Final dough', 'Water', 'weight', '700')
  assert.equal(sheet.weight('Final dough', 'water'), 700)
  sheet.enter('Soaker', 'Linseed', 'weight', '50')
  sheet.enter('Soaker', 'Water', 'percent', '150')
  assert.equal(sheet.weight('soaker', 'water'), 75)
  assert.deepEqual(
    sheet.formula.stages.map(s => s.name),
    ['Levain', 'Soaker', 'Final dough'],
  )
})
