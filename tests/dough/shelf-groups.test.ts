import assert from 'node:assert/strict'
import { test } from 'node:test'
import { readFormulaData } from '../../src/dough/data/formula-data.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { emptyWorkbook } from '../../src/dough/document/workbook.js'
import {
  duplicateFormula,
  groupFormulas,
  groupsOf,
  removeFormulas,
} from '../../src/dough/edits/fetched/shelf-edits.js'
import { bringBack, keepState } from '../../src/dough/edits/fetched/state-edits.js'
import { readWorkbookFile, writeWorkbookFile } from '../../src/exchange/data/workbook-file.js'
import { formulaFromLink, linkOf, readFormulas, writeFormulas } from '../../src/exchange/index.js'
import { History } from '../../src/storage/history.js'
import { merge } from '../../src/storage/record/merge.js'
import { formulaOf } from './notation.js'

const bread = (name: string, group?: string): Formula => ({
  ...formulaOf('Final dough:\nBread flour = 100%\nWater = 70%'),
  id: name.toLowerCase(),
  name,
  ...(group && { group }),
})
const shelf = (...formulas: Formula[]) => ({ ...emptyWorkbook, formulas })
/** `Rye in Dark, Miche`: names and groups as they stand. */
const told = ({ formulas }: { readonly formulas: readonly Formula[] }) =>
  formulas.map(({ name, group }) => (group === undefined ? name : `${name} in ${group}`)).join(', ')

test('formulas are put into a group, into another and out of any, each as one step that can be taken back', () => {
  const history = new History(shelf(bread('Rye'), bread('Miche'), bread('Bun')))
  history.apply(groupFormulas(history.workbook, ['rye', 'miche'], '  Dark '))
  assert.equal(told(history.workbook), 'Rye in Dark, Miche in Dark, Bun')
  assert.equal(history.undoLabel, 'Put 2 formulas into Dark')
  history.apply(groupFormulas(history.workbook, ['bun'], 'DARK'))
  assert.equal(
    told(history.workbook),
    'Rye in Dark, Miche in Dark, Bun in Dark',
    'a known group is spelled as it is',
  )
  history.apply(groupFormulas(history.workbook, ['rye'], ''))
  assert.equal(told(history.workbook), 'Rye, Miche in Dark, Bun in Dark')
  assert.equal(history.undoLabel, 'Take Rye out of its group')
  assert.ok(!('group' in history.workbook.formulas[0]!))
  assert.deepEqual(groupFormulas(history.workbook, ['bun'], 'Dark').changes, [], 'there already')
  for (let step = 0; step < 3; step++) history.undo()
  assert.equal(told(history.workbook), 'Rye, Miche, Bun')
})

test('several are deleted as one step', () => {
  const history = new History(shelf(bread('Rye'), bread('Miche'), bread('Bun')))
  history.apply(removeFormulas(history.workbook, ['rye', 'bun']))
  assert.equal(told(history.workbook), 'Miche')
  assert.equal(history.undoLabel, 'Delete 2 formulas')
  history.undo()
  assert.equal(told(history.workbook), 'Rye, Miche, Bun')
})

test('the groups of a shelf are told once each', () => {
  assert.deepEqual(groupsOf(shelf(bread('A', 'Dark'), bread('B'), bread('C', 'Sweet'), bread('D', 'dark'))), [
    'Dark',
    'Sweet',
  ])
})

test('a copy is in the group of what it is a copy of; a kept state is in none and changes none', () => {
  const history = new History(shelf(bread('Rye', 'Dark')))
  history.apply(keepState(history.workbook, 'rye', 'first', '2026-01-01T00:00:00Z'))
  const [rye] = history.workbook.formulas
  assert.ok(!('group' in rye!.states![0]!.formula))
  history.apply(groupFormulas(history.workbook, ['rye'], 'Winter'))
  history.apply(bringBack(history.workbook, 'rye', rye!.states![0]!.id))
  history.apply(duplicateFormula(history.workbook, 'rye'))
  assert.equal(told(history.workbook), 'Rye in Winter, Rye 2 in Winter')
})

for (const [what, group, read] of [
  ['a name', 'Dark', 'Dark'],
  ['nothing to read', '  ', undefined],
  ['a number', 3, undefined],
  ['a list', ['Dark'], undefined],
  ['a whole book', 'x'.repeat(201), undefined],
] as const)
  test(`a group that is ${what} is ${read ? 'read' : 'left out and told'}`, () => {
    const left: unknown[] = []
    const formula = readFormulaData({ ...bread('Rye'), group }, one => left.push(one))
    assert.equal(formula?.group, read)
    assert.deepEqual(left, read ? [] : [{ code: 'fieldNotUnderstood', field: 'group' }])
  })

test('a group goes along in a workbook file and in CSV, and stays behind in a link', async () => {
  const rye = bread('Rye', 'Dark, 2,5 kg')
  assert.equal(told(readWorkbookFile(writeWorkbookFile(shelf(rye))).workbook!), 'Rye in Dark, 2,5 kg')
  const csv = writeFormulas([rye])
  assert.match(csv, /^Rye,,,"Dark, 2,5 kg",,,group,,,\r$/m)
  const { formulas, problems } = readFormulas(csv)
  assert.deepEqual(problems, [])
  assert.equal(told({ formulas }), 'Rye in Dark, 2,5 kg')
  const link = await linkOf(rye, 'https://mill.example/')
  assert.ok(typeof link === 'string')
  const came = await formulaFromLink(new URL(link).hash)
  assert.ok('formula' in came)
  assert.equal(told({ formulas: [came.formula] }), 'Rye')
})

test('a row that names no group is told', () => {
  const { problems } = readFormulas('formula,ingredient,amount,setting\nRye,Water,70%,\nRye,, ,group\n')
  assert.deepEqual(
    problems.map(({ message }) => message),
    ['Row 3 is a group without a name. Write it in the amount column.'],
  )
})

const wetter = (formula: Formula): Formula => ({ ...formula, note: 'wetter' })
for (const [what, mine, theirs, merged] of [
  ['grouped here, changed there', bread('Rye', 'Dark'), wetter(bread('Rye')), 'Rye in Dark'],
  ['changed here, grouped there', wetter(bread('Rye')), bread('Rye', 'Dark'), 'Rye in Dark'],
  ['grouped in both', bread('Rye', 'Dark'), bread('Rye', 'Winter'), 'Rye in Winter'],
  ['grouped here only', bread('Rye', 'Dark'), bread('Rye'), 'Rye in Dark'],
] as const)
  test(`two tabs: ${what}, and it takes no copy`, () => {
    const id = (formula: Formula): Formula => ({ ...formula, stages: base.formulas[0]!.stages })
    const base = shelf(bread('Rye'))
    const { workbook, copies } = merge(base, shelf(id(mine)), shelf(id(theirs)))
    assert.equal(told(workbook), merged)
    assert.deepEqual(copies, [])
    assert.equal(workbook.formulas[0]!.note, mine.note || theirs.note)
  })

test('two tabs: taken out of its group here and changed there, it is in none', () => {
  const base = shelf(bread('Rye', 'Dark'))
  const { group: _group, ...mine } = base.formulas[0]!
  const { workbook } = merge(base, shelf(mine), shelf(wetter(base.formulas[0]!)))
  assert.equal(told(workbook), 'Rye')
  assert.equal(workbook.formulas[0]!.note, 'wetter')
})
