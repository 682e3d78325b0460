import assert from 'node:assert/strict'
import { test } from 'node:test'
import { numberStyleOf } from '../../components/base/numbers.js'
import { groupsOf } from '../../components/grid/table/row-groups.js'
import { emptyTable, type Row, type RowGroup, type Table } from '../../components/grid/table/table.js'
import { tableOf } from '../../components/grid/table/table-of.js'
import { usualScale } from '../../src/dough/document/batch.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { emptyWorkbook } from '../../src/dough/document/workbook.js'
import { addLine, enterAmount, newLine, Refusal } from '../../src/dough/edits/edits.js'
import '../../src/dough/cells/rare-cells-at-once.js'
import { larderWith } from '../../src/dough/larder/usual-larder.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { type Touched, untouched } from '../../src/dough/sheet/touched.js'
import { History } from '../../src/storage/index.js'
import { anyEdit } from '../dough/any-edit.js'
import { formulaOf, lineOf } from '../dough/notation.js'
import { randomOf } from '../random.js'

const style = numberStyleOf('en')

/** A formula on a desk: its sheet, its rows as they follow the edits, and what the last edit touched. */
function deskWith(formula: Formula) {
  const history = new History<undefined>({ ...emptyWorkbook, formulas: [formula] })
  let own = history.workbook.larder
  let larder = larderWith(own)
  const sheet = openSheet(formula, larder)
  let table = tableOf(sheet, style, false, emptyTable)
  let touched: Touched = untouched
  history.subscribe(({ workbook }) => {
    if (workbook.larder !== own) larder = larderWith(workbook.larder)
    own = workbook.larder
    touched = sheet.update(workbook.formulas[0]!, larder, workbook.scale ?? usualScale)
    table = tableOf(sheet, style, false, table, untouched) // between the edit and the paint
    table = tableOf(sheet, style, false, table, touched)
  })
  return { history, sheet, table: () => table, touched: () => touched }
}

const keysOf = (rows: readonly Row[]) => rows.map(row => row.key)

/** A dough of so many spices, each 1 g. */
const spiced = (spices: number): Formula =>
  formulaOf(
    `Final dough:
      Bread flour = 1000 g
      Water = 700 g
      ${Array.from({ length: spices }, (_, i) => `Spice ${i + 1} = 1 g`).join('\n')}`,
  )

for (const seed of [31, 32, 33, 34])
  test(`after random edits the rows that followed are those read afresh (seed ${seed})`, () => {
    const random = randomOf(seed)
    const start = `
      Levain:
        Ripe starter = 40 g
        Bread flour = 100 g
        Water = 80 g
      Soaker:
        Water = 120 g
        Honey = 10%
      Final dough:
        Bread flour = 82%
        Wholemeal spelt = 18%
        Water = 69%
        Salt = 2.1%
        Levain = 210 g
        Soaker = 50 g`
    const { history, sheet, table } = deskWith(formulaOf(start))
    for (let step = 0; step < 85; step++) {
      try {
        const edit = anyEdit(history.workbook, sheet, random)
        if (edit) history.apply(edit)
        else if (random.below(2)) history.undo()
        else history.redo()
      } catch (error) {
        if (!(error instanceof Refusal)) throw error
      }
      const fresh = tableOf(sheet, style, false, emptyTable)
      assert.deepEqual(table().rows, fresh.rows, `step ${step}`)
      holdsTogether(table())
    }
  })

function holdsTogether({ rows, groups, index }: Table): void {
  assert.deepEqual(
    groups.flatMap(g => g.rows),
    rows,
  )
  for (const [i, row] of rows.entries()) assert.equal(index.get(row.key), i)
  for (const { key, rows } of groups) {
    assert.equal(key, rows[0]!.key)
    assert.ok(rows.length <= 100)
  }
}

test('an amount that touches one line makes one line’s row anew, and leaves the other groups as they are', () => {
  const formula = spiced(400)
  const { history, table, touched } = deskWith(formula)
  const before = table()
  const spice = lineOf(formula, 'Final dough', 'Spice 300')
  const at = { formula: formula.id, stage: formula.stages[0]!.id, line: spice.id }
  history.apply(enterAmount(history.workbook, at, 'weight', '3')!)
  assert.deepEqual([...touched().lines], [spice.id])
  const others = (kind: Row['kind']) =>
    table()
      .rows.filter((row, i) => row.kind === kind && row !== before.rows[i])
      .map(row => row.key)
  assert.deepEqual(others('line'), [spice.id])
  const anew = table().groups.filter((group, i) => group !== before.groups[i])
  const holding = (key: string) => table().groups.find(g => g.rows.some(row => row.key === key))
  // That of the line, the first with the stage's own row, and the last with its sum.
  assert.deepEqual(anew, [table().groups[0], holding(spice.id), table().groups.at(-1)])
})

test('a line that comes between others moves none of them into another group', () => {
  const formula = spiced(400)
  const { history, table } = deskWith(formula)
  const groupsBefore = table().groups
  const at = { formula: formula.id, stage: formula.stages[0]!.id }
  const line = newLine({ ingredient: 'Spice 0', amount: '1 g' })
  history.apply(addLine(at, line, 200))
  const groupsNow = table().groups
  assert.deepEqual(
    groupsNow.map(g => keysOf(g.rows).filter(key => key !== line.id)),
    groupsBefore.map(g => keysOf(g.rows)),
  )
  // Its own group is another one, the first with the stage's weight, and the last with its sum.
  assert.equal(groupsNow.filter(g => groupsBefore.includes(g)).length, groupsBefore.length - 3)
})

test('a group that has grown past a hundred rows is parted, and the others stay', () => {
  const rows = (from: number, to: number) =>
    Array.from({ length: to - from }, (_, i): Row => {
      const key = `add ${from + i}`
      return { kind: 'add', key, stage: 's', stageName: 'Final dough', isFinal: true }
    })
  const [first, second] = [rows(0, 60), rows(60, 120)]
  const begun = new Map<string, RowGroup>()
  const before = groupsOf([...first, ...second], begun)
  for (const group of before) begun.set(group.key, group)
  assert.deepEqual(
    before.map(g => g.rows.length),
    [40, 40, 40],
  )
  const grown = groupsOf([...first, ...rows(200, 300), ...second], begun)
  assert.deepEqual(
    grown.map(g => g.rows.length),
    // 40, then the second forty with a hundred more in three parts of 140 rows, then 40
    [40, 47, 46, 47, 40],
  )
  assert.equal(grown[0], before[0])
  assert.equal(grown.at(-1), before.at(-1))
})
