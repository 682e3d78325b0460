import assert from 'node:assert/strict'
import { test } from 'node:test'
import { Desk } from '../../components/desk/desk.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { emptyWorkbook } from '../../src/dough/document/workbook.js'
import { workOf } from '../work.js'
import { straightDough } from './breads.js'

const english = { language: 'en', decimal: '.' } as const
const doughOf = (lines: number): Formula =>
  straightDough(
    Array.from({ length: lines }, (_, i) => `Seed ${i} = ${i + 1}%`).join('\n'),
    `Loaf of ${lines}`,
  )

function begin(others: number) {
  const open = doughOf(20)
  const formulas = [...Array.from({ length: others }, () => doughOf(200)), open]
  let desk: Desk | undefined
  const work = workOf(() => {
    desk = new Desk(
      { ...emptyWorkbook, formulas },
      english,
      () => {},
      () => {},
      open.id,
    )
  })
  assert.equal(desk!.formula, open)
  return work
}

test('a desk begins with the formula it is to open worked out, and no other', () => {
  begin(1) // makes what is made only once
  const [few, many] = [begin(2), begin(40)]
  assert.ok(many < few * 1.2, `${few} steps beside 2 formulas, ${many} beside 40`)
})
