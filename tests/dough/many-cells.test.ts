import assert from 'node:assert/strict'
import { describe, test } from 'node:test'
import { amountAsKept } from '../../src/dough/amounts/amounts.js'
import '../../src/dough/amounts/spoken-at-once.js'
import { dimensionsOf, planJottings } from '../../src/dough/amounts/jottings.js'
import type { Formula } from '../../src/dough/document/formula.js'
import {
  applyChanges,
  type Change,
  emptyWorkbook,
  type LineChange,
  type Workbook,
} from '../../src/dough/document/workbook.js'
import {
  addLine,
  enterAmount,
  enterIngredient,
  enterNote,
  newLine,
  Refusal,
} from '../../src/dough/edits/edits.js'
import { type CellTyped, enterCells, type LineTyped } from '../../src/dough/edits/fetched/many-cells.js'
import { randomOf } from '../random.js'
import { growsInStep } from '../work.js'
import { formulaOf } from './notation.js'

const range = (count: number) => [...Array(count).keys()]

const bread = (): Formula => {
  const formula = formulaOf(`
    Levain:
      Ripe starter = 20 g
      Bread flour = 100%
      Water = 80%
    Soaker:
      Seeds = 50 g
      Water = seeds*2
    Final dough:
      Bread flour = 82%
      Rye = 18%
      Water = 69%
      Salt = 2.1%
      Levain = 210 g
      Soaker = salt*5`)
  const final = formula.stages.at(-1)!
  return {
    ...formula,
    jottings: [{ id: 'j', name: 'Per loaf', text: 'rye/2' }],
    holds: [{ reading: 'trueHydration', value: 0.7, line: final.lines[2]!.id }],
    stages: formula.stages.map(stage =>
      stage === final
        ? { ...stage, method: [{ id: 'm', does: 'Mix', kind: 'hands', text: 'adds Salt', note: '' }] }
        : stage,
    ),
  }
}

const workbookOf = (formula: Formula): Workbook => ({ ...emptyWorkbook, formulas: [formula] })
const [names, amounts, notes] = [
  ['Salt', 'Rye', 'Levain', 'Soaker', 'Final dough', 'Sea salt', '', ' Honey ', 'Water'],
  ['70', '2*salt', '30 g', '', 'rye', 'per_loaf', 'warm', '1,5', 'sea_salt'],
  ['cold', '', 'at dawn'],
]

/** The same typed by one edit after the other. */
function oneByOne(workbook: Workbook, formula: string, lines: readonly LineTyped[]) {
  const refusals: string[] = []
  let now = workbook
  for (const { stage, line, begun, cells } of lines) {
    if (begun) now = applyChanges(now, addLine({ formula, stage }, begun).changes).workbook
    for (const { column, text } of cells)
      try {
        const at = { formula, stage, line }
        const made =
          column === 'ingredient'
            ? enterIngredient(now, at, text)
            : column === 'note'
              ? enterNote(now, at, text)
              : enterAmount(now, at, column, text, ',')
        now = applyChanges(now, made.changes).workbook
      } catch (error) {
        if (!(error instanceof Refusal)) throw error
        refusals.push(error.message)
      }
  }
  return { now, refusals }
}

describe('many cells typed into at once', () => {
  test('come to what they come to one after the other, and are taken back as one step; seed 20260401', () => {
    const { next: random, below, pick } = randomOf(20260401)
    for (let run = 0; run < 130; run++) {
      const formula = bread()
      const workbook = workbookOf(formula)
      const dimensions = dimensionsOf(planJottings(formula.jottings!))
      const stage = pick(formula.stages)
      const cellIn = (column: CellTyped['column']): CellTyped => {
        if (column === 'ingredient' || column === 'note')
          return { column, text: pick(column === 'note' ? notes : names) }
        const text = pick(amounts)
        return {
          column,
          text,
          kept: column === 'wholeDough' ? '' : amountAsKept(text, column, ',', dimensions),
        }
      }
      const lines = range(1 + below(6)).map((_, i): LineTyped => {
        const existing = random() < 0.6 ? stage.lines[i] : undefined
        const begun = existing ? undefined : newLine()
        const columns = (['ingredient', 'percent', 'weight', 'wholeDough', 'note'] as const).filter(
          column => random() < 0.4 && (column !== 'wholeDough' || random() < 0.3),
        )
        return {
          stage: stage.id,
          line: (existing ?? begun!).id,
          ...(begun && { begun }),
          cells: columns.map(cellIn),
        }
      })
      const refusals: string[] = []
      const made = enterCells(workbook, formula.id, lines, ',', 'Paste', why => refusals.push(why))
      const wanted = oneByOne(workbook, formula.id, lines)
      const done = applyChanges(workbook, made?.changes ?? [])
      assert.deepEqual(done.workbook, wanted.now, `run ${run}`)
      assert.deepEqual(refusals, wanted.refusals, `run ${run}`)
      assert.deepEqual(applyChanges(done.workbook, done.inverse).workbook, workbook, `run ${run}`)
    }
  })

  const rows = (count: number, stage: string, cells: (i: number) => readonly CellTyped[]): LineTyped[] =>
    range(count).map(i => {
      const begun = newLine()
      return { stage, line: begun.id, begun, cells: cells(i) }
    })

  for (const [title, typed] of [
    [
      'new lines',
      (count: number, { stages }: Formula) =>
        rows(count, stages.at(-1)!.id, i => [
          { column: 'ingredient', text: `Seed ${i}` },
          { column: 'weight', text: `${i}`, kept: `${i} g` },
        ]),
    ],
    [
      'lines that take a stage, or would take their own',
      (count: number, { stages }: Formula) =>
        rows(count, stages.at(-1)!.id, i => [
          { column: 'ingredient', text: i % 2 ? 'Levain' : 'Final dough' },
          { column: 'note', text: 'again' },
        ]),
    ],
  ] as const)
    test(`twice as many ${title} are at most a tenth more than twice the work, to make and to take back`, () => {
      const formula = bread()
      const workbook = workbookOf(formula)
      growsInStep(count => {
        const made = enterCells(workbook, formula.id, typed(count, formula), '.', 'Paste', () => {})!
        const done = applyChanges(workbook, made.changes)
        applyChanges(done.workbook, done.inverse)
      }, 300)
    })

  test('other names for lines that are there are given in a time that grows with them', () => {
    growsInStep(count => {
      const formula = formulaOf(
        `Final dough:\n${range(count)
          .map(i => `Seed ${i} = 2%`)
          .join('\n')}`,
      )
      const [stage] = formula.stages
      const lines = stage!.lines.map(
        (line, i): LineTyped => ({
          stage: stage!.id,
          line: line.id,
          cells: [{ column: 'ingredient', text: `Grain ${i}` }],
        }),
      )
      enterCells(workbookOf(formula), formula.id, lines, '.', 'Paste')
    }, 300)
  })

  test('so many names that amounts speak of are not changed at once that it would take long', () => {
    const formula = formulaOf(
      `Final dough:\n${range(600)
        .map(i => `x${i} = x${i + 1}*1`)
        .join('\n')}`,
    )
    const [stage] = formula.stages
    const lines = (count: number) =>
      stage!.lines.slice(0, count).map(
        (line, i): LineTyped => ({
          stage: stage!.id,
          line: line.id,
          cells: [{ column: 'ingredient', text: `y${i}` }],
        }),
      )
    const workbook = workbookOf(formula)
    assert.throws(() => enterCells(workbook, formula.id, lines(600), '.', 'Paste'), /in several parts/)
    const made = enterCells(workbook, formula.id, lines(20), '.', 'Paste')!
    const { formulas } = applyChanges(workbook, made.changes).workbook
    assert.equal(formulas[0]!.stages[0]!.lines[3]!.amount, 'y4*1')
  })
})

describe('changes of many lines', () => {
  test('come to what each by itself comes to, forth and back; seed 20260402', () => {
    const { next: random, below: upTo } = randomOf(20260402)
    for (let run = 0; run < 100; run++) {
      const formula = bread()
      const workbook = workbookOf(formula)
      const ids = [...formula.stages.at(-1)!.lines.map(l => l.id), 'new', 'other']
      const changes = range(1 + upTo(8)).map((): LineChange => {
        const id = ids[upTo(ids.length)]!
        return {
          of: 'line',
          formula: formula.id,
          stage: formula.stages.at(-1)!.id,
          id,
          ...(random() < 0.7 && { value: { id, ingredient: `${upTo(99)}`, amount: '', note: '' } }),
          ...(random() < 0.5 && { index: upTo(9) - 1 }),
        }
      })
      // Each put in a plain list: taken out where it is, then put at its place, or where it was, or last.
      const list = [...formula.stages.at(-1)!.lines]
      for (const { id, value, index } of changes) {
        const at = list.findIndex(line => line.id === id)
        if (at >= 0) list.splice(at, 1)
        const to = index ?? (at < 0 ? list.length : at)
        if (value) list.splice(Math.max(0, Math.min(to, list.length)), 0, value)
      }
      const done = applyChanges(workbook, changes)
      assert.deepEqual(done.workbook.formulas[0]!.stages.at(-1)!.lines, list, `run ${run}`)
      assert.deepEqual(applyChanges(done.workbook, done.inverse).workbook, workbook, `run ${run}`)
      const inverse = changes.reduce<{ now: Workbook; back: Change[] }>(
        ({ now, back }, change) => {
          const one = applyChanges(now, [change])
          return { now: one.workbook, back: [...one.inverse, ...back] }
        },
        { now: workbook, back: [] },
      ).back
      assert.deepEqual(done.inverse, inverse, `run ${run}`)
    }
  })
})
