import assert from 'node:assert/strict'
import { test } from 'node:test'
import { finalDoughOf } from '../../src/dough/document/formula.js'
import { applyChanges, emptyWorkbook } from '../../src/dough/document/workbook.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { offersFor } from '../../src/dough/offers/offers.js'
import { remarksOnLine } from '../../src/dough/remarks/remarks.js'
import { formulaOf } from './notation.js'

/** What is offered for a last line of the final dough by that name, and the formula with it. */
function offered(name: string) {
  const formula = formulaOf(
    `Soaker:\nSunflower seeds = 100%\nWater = 100%\n\nFinal dough:\nBread flour = 100%\nWater = 60%\n${name} = 30%`,
  )
  const line = finalDoughOf(formula).lines.at(-1)!
  const sheet = openFormula(formula)
  const offers = remarksOnLine(sheet.workedOut, line.id).flatMap(remark => offersFor(sheet, remark))
  return { formula, offers }
}

const labels = (name: string) => offered(name).offers.map(({ label }) => label)

test('a name left unfinished is offered what it begins', () => {
  const { formula, offers } = offered('Soa')
  assert.deepEqual(
    offers.map(({ label }) => label),
    ['It is Soaker'],
  )
  const workbook = { ...emptyWorkbook, formulas: [formula] }
  const { changes } = offers[0]!.edit(workbook)!
  const [changed] = applyChanges(workbook, changes).workbook.formulas
  assert.equal(finalDoughOf(changed!).lines.at(-1)!.ingredient, 'Soaker')
  // 100 g of seeds and of water, 30 % of 1,000 g of flour: 150 g of water carried in
  assert.equal(openFormula(changed!).reading('trueHydration'), 0.75)
})

test('of ingredients likewise, where few begin so', () => {
  assert.deepEqual(labels('Hone'), ['It is Honey'])
  assert.ok(!labels('Final d').includes('It is Final dough'), 'not the stage that it stands in')
  assert.deepEqual(
    labels('Who').filter(label => label.startsWith('It is')),
    [],
    'too many begin so',
  )
  assert.deepEqual(labels('Ho'), [], 'two letters say nothing')
})
