import assert from 'node:assert/strict'
import { test } from 'node:test'
import '../../src/dough/cells/rare-cells-at-once.js'
import '../../src/dough/amounts/spoken-at-once.js'
import { Desk, type DeskEvent } from '../../components/desk/desk.js'
import { said, soakerCountedIn } from '../../components/desk/said.js'
import { finalDoughOf, type Line } from '../../src/dough/document/formula.js'
import { emptyWorkbook } from '../../src/dough/document/workbook.js'
import { enterAmount } from '../../src/dough/edits/edits.js'
import { formulaOf } from '../dough/notation.js'

const english = { language: 'en', decimal: '.' } as const

/** A desk with this formula, and what is said of each edit of an amount there. */
function deskOf(text: string) {
  const happened: DeskEvent[] = []
  const formula = formulaOf(text)
  const desk: Desk = new Desk(
    { ...emptyWorkbook, formulas: [formula] },
    english,
    event => happened.push(event),
    () => {},
  )
  const toldOf = (act: () => void) => {
    act()
    const event = happened.at(-1)!
    return { said: said(desk, event), shown: soakerCountedIn(desk, event) }
  }
  const type = (name: string, amount: string, of: readonly Line[] = finalDoughOf(formula).lines) => {
    const line = of.find(({ ingredient }) => ingredient === name)!
    const stage = formula.stages.find(({ lines }) => lines === of)!
    return toldOf(() =>
      desk.edit(
        enterAmount(desk.workbook, { formula: formula.id, stage: stage.id, line: line.id }, 'weight', amount),
      ),
    )
  }
  return { desk, formula, type, toldOf }
}

const dough = (lines: string) =>
  `Soaker:\nLinseed = 100 g\nWater = 150 g\n\nDough:\nBread flour = 1000 g\nWater = 760 g\n${lines}`
const counted = 'The soaker’s water counted in: 91.0 % with it, 76.0 % without.'

test('that a soaker’s water is counted in is said of the edit that has it taken, and of none after it', () => {
  const { desk, type, toldOf } = deskOf(dough('Soaker ='))
  assert.deepEqual(type('Soaker', '250'), { said: `Soaker set to 250 grams. ${counted}`, shown: counted })
  assert.deepEqual(type('Soaker', '125'), {
    said: 'Soaker set to 125 grams; true hydration 83.5 %',
    shown: '',
  })
  for (const [way, words] of [
    ['undo', 'Undone'],
    ['redo', 'Done again'],
  ] as const) {
    const told = toldOf(() => desk.history[way]())
    assert.equal(told.shown, '')
    assert.match(told.said, new RegExp(`^${words}: .*; true hydration `))
  }
})

test('also of one that gives the soaker its first water', () => {
  const { formula, type } = deskOf(
    'Soaker:\nLinseed = 100 g\nWater =\n\nDough:\nBread flour = 1000 g\nWater = 760 g\nSoaker = all of it',
  )
  assert.equal(type('Water', '150', formula.stages[0]!.lines).shown, counted)
})

test('it is not said of a levain, of a dough without a figure before, nor where milk brings much of the water', () => {
  const levain = deskOf(
    'Levain:\nRipe starter = 50 g\nBread flour = 100 g\nWater = 100 g\n\nDough:\nBread flour = 1000 g\nWater = 600 g\nLevain =',
  )
  assert.equal(levain.type('Levain', '250').shown, '')
  assert.equal(
    deskOf('Soaker:\nLinseed = 100 g\nWater = 150 g\n\nDough:\nSoaker = 250 g\nBread flour =').type(
      'Bread flour',
      '1000',
    ).shown,
    '',
  )
  assert.equal(deskOf(dough('Whole milk = 300 g\nSoaker =')).type('Soaker', '250').shown, '')
})
