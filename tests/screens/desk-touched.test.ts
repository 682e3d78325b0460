import assert from 'node:assert/strict'
import { test } from 'node:test'
import '../../src/dough/cells/rare-cells-at-once.js'
import { Desk } from '../../components/desk/desk.js'
import { finalDoughOf } from '../../src/dough/document/formula.js'
import { emptyWorkbook } from '../../src/dough/document/workbook.js'
import { enterAmount, holdReading, renameFormula } from '../../src/dough/edits/edits.js'
import { setScale } from '../../src/dough/edits/fetched/batch-edits.js'
import { millWheat, straightDough } from './breads.js'

const english = { language: 'en', decimal: '.' } as const

function deskOf() {
  const formulas = [millWheat(), straightDough('Bread flour = 100%\nWater = 66%', 'Tin')]
  const desk = new Desk(
    { ...emptyWorkbook, formulas },
    english,
    () => {},
    () => {},
  )
  const final = finalDoughOf(formulas[0]!)
  const line = (ingredient: string) => final.lines.find(l => l.ingredient === ingredient)!.id
  const at = (ingredient: string) => ({ formula: formulas[0]!.id, stage: final.id, line: line(ingredient) })
  const type = (ingredient: string, text: string) =>
    desk.edit(enterAmount(desk.workbook, at(ingredient), 'percent', text))
  return { desk, line, at, type, formulas }
}

test('what edits touched is gathered until the sheet is shown', () => {
  const { desk, type, line } = deskOf()
  assert.ok(desk.touched.all) // nothing of it has been shown
  desk.shown()
  type('Salt', '2.2')
  type('Water', '70')
  assert.deepEqual([...desk.touched.lines].sort(), [line('Salt'), line('Water')].sort())
  assert.ok(!desk.touched.all && !desk.touched.structure)
  desk.shown()
  assert.equal(desk.touched.lines.size, 0)
})

test('undo touches what the edit did', () => {
  const { desk, type, line } = deskOf()
  type('Salt', '2.2')
  desk.shown()
  desk.history.undo()
  assert.deepEqual([...desk.touched.lines], [line('Salt')])
})

test('a hold touches the line that gives, and what counts it', () => {
  const { desk, at, line } = deskOf()
  desk.shown()
  desk.edit(holdReading(desk.workbook, at('Salt'), 'salt', 0.02))
  assert.deepEqual([...desk.touched.lines], [line('Salt')])
  assert.ok(desk.touched.readings.has('salt') && !desk.touched.readings.has('trueHydration'))
})

test('another formula, another larder and another scale touch everything', () => {
  const { desk, formulas } = deskOf()
  desk.shown()
  desk.open(formulas[1]!.id)
  assert.ok(desk.touched.all)
  desk.shown()
  desk.open(formulas[1]!.id) // it is open
  assert.ok(!desk.touched.all)
  desk.edit(setScale({ step: 5, fineStep: 1, fineBelow: 20 }))
  assert.ok(desk.touched.all)
})

test('an edit of another formula on the shelf touches nothing of the open one', () => {
  const { desk, formulas } = deskOf()
  desk.shown()
  desk.edit(renameFormula(desk.workbook, formulas[1]!.id, 'Tin loaf'))
  assert.equal(desk.touched.lines.size + desk.touched.readings.size + desk.touched.stages.size, 0)
  assert.ok(!desk.touched.all && !desk.touched.structure)
})
