import assert from 'node:assert/strict'
import { beforeEach, mock, test } from 'node:test'
import type { Transaction } from '../../src/dough/document/workbook.js'
import { History } from '../../src/storage/history.js'
import { randomOf } from '../random.js'
import { inWords, loaf, put, workbookOf } from './bread.js'

const miche = (salt: string) => loaf('Miche', 'flour 100%', `salt ${salt}`)

let history: History<string>
beforeEach(() => {
  history = new History(workbookOf(miche('2%')))
})
const setSalt = (salt: string) =>
  history.apply({ ...put(miche(salt)), label: `Salt ${salt}` }, `salt at ${salt}`)
const shown = () => inWords(history.workbook)

test('an edit is undone and redone with its label and its place', () => {
  setSalt('2.2%')
  assert.equal(history.undoLabel, 'Salt 2.2%')
  assert.equal(history.redoLabel, undefined)

  assert.equal(history.undo()?.place, 'salt at 2.2%')
  assert.equal(shown(), 'Miche flour 100% salt 2%')
  assert.equal(history.redoLabel, 'Salt 2.2%')

  assert.equal(history.redo()?.place, 'salt at 2.2%')
  assert.equal(shown(), 'Miche flour 100% salt 2.2%')
  assert.equal(history.redo(), undefined)
})

test('a new edit clears what could be redone', () => {
  setSalt('2.2%')
  history.undo()
  setSalt('1.8%')
  assert.equal(history.redoLabel, undefined)
  assert.equal(history.redo(), undefined)
  assert.equal(shown(), 'Miche flour 100% salt 1.8%')
})

test('200 edits can be undone', () => {
  for (let i = 1; i <= 200; i++) setSalt(`${i}%`)
  for (let i = 1; i <= 200; i++) history.undo()
  assert.equal(shown(), 'Miche flour 100% salt 2%')
})

test('an edit that fails half way leaves workbook, undo and redo as they were', () => {
  setSalt('2.2%')
  setSalt('2.4%')
  history.undo()
  const before = history.workbook
  const broken: Transaction = {
    label: 'Broken',
    changes: [...put(loaf('Baguette')).changes, { of: 'fields', formula: 'gone', value: { name: 'x' } }],
  }
  assert.throws(() => history.apply(broken), RangeError)
  assert.equal(history.workbook, before)
  assert.equal(history.undoLabel, 'Salt 2.2%')
  assert.equal(history.redoLabel, 'Salt 2.4%')
})

test('a transaction without changes is no step', () => {
  history.apply({ label: 'Nothing', changes: [] })
  assert.equal(history.undoLabel, undefined)
})

test('listeners hear of every way a workbook changes, with the changes as made', () => {
  const heard: string[] = []
  history.subscribe(({ way, transaction, workbook, place }) => {
    heard.push([way, transaction.label, transaction.changes.length, place, inWords(workbook)].join(' | '))
  })
  setSalt('2.2%')
  history.undo()
  history.redo()
  history.load(workbookOf(), 'Another tab')
  assert.deepEqual(heard, [
    'do | Salt 2.2% | 1 | salt at 2.2% | Miche flour 100% salt 2.2%',
    'undo | Salt 2.2% | 1 | salt at 2.2% | Miche flour 100% salt 2%',
    'redo | Salt 2.2% | 1 | salt at 2.2% | Miche flour 100% salt 2.2%',
    'load | Another tab | 0 |  | ',
  ])
  assert.equal(history.undoLabel, undefined)
})

test('listeners hear how the workbook was before', () => {
  const heard: string[] = []
  setSalt('2.1%')
  history.subscribe(({ before, workbook }) => heard.push(`${inWords(before)} → ${inWords(workbook)}`))
  history.apply({ label: 'Delete', changes: [{ of: 'formula', id: history.workbook.formulas[0]!.id }] })
  history.undo()
  assert.deepEqual(heard, ['Miche flour 100% salt 2.1% → ', ' → Miche flour 100% salt 2.1%'])
})

test('a listener that edits or fails keeps no other listener from hearing everything in order', () => {
  const report = mock.fn()
  Object.assign(globalThis, { reportError: report })
  const heard: string[] = []
  history.subscribe(({ transaction }) => {
    if (transaction.label === 'Salt 2.1%') setSalt('2.2%')
    else throw new Error('a listener of ours')
  })
  const stop = history.subscribe(({ transaction }) => heard.push(transaction.label))
  setSalt('2.1%')
  stop()
  setSalt('2.3%')
  assert.deepEqual(heard, ['Salt 2.1%', 'Salt 2.2%'])
  assert.equal(report.mock.callCount(), 2)
})

for (const seed of [1, 20, 2026]) {
  test(`after random edits, undoing all is the start and redoing all is the end (seed ${seed})`, () => {
    const { below: random, pick } = randomOf(seed)
    const start = workbookOf(miche('2%'), loaf('Baguette', 'flour 100%', 'water 68%'))
    const history = new History(start)

    const randomEdit = (): Transaction['changes'][number] => {
      const formula = pick(history.workbook.formulas)
      const name = `Bread ${random(6)}`
      if (!formula || random(5) === 0) {
        return { of: 'formula', id: name, value: loaf(name, 'flour 100%', 'salt 2%'), index: random(4) }
      }
      const stage = pick(formula.stages)
      const line = pick(stage.lines)
      const index = random(4)
      switch (random(6)) {
        case 0:
          return { of: 'formula', id: formula.id }
        case 1:
          return { of: 'fields', formula: formula.id, value: { note: `note ${random(99)}` } }
        case 2:
          return { of: 'workbook', value: { name: `Bakehouse ${random(99)}` } }
        case 3: {
          const id = `line ${random(5)}`
          const value = { id, ingredient: 'rye', amount: `${random(50)}%`, note: '' }
          return { of: 'line', formula: formula.id, stage: stage.id, id, value, index }
        }
        default:
          return line
            ? {
                of: 'line',
                formula: formula.id,
                stage: stage.id,
                id: line.id,
                ...(random(2) ? { value: line, index } : {}),
              }
            : {
                of: 'stage',
                formula: formula.id,
                id: stage.id,
                value: { ...stage, name: `Stage ${random(9)}` },
              }
      }
    }

    for (let i = 0; i < 150; i++) {
      history.apply({ label: `Edit ${i}`, changes: [randomEdit()] })
      if (random(4) === 0) history.undo()
      if (random(8) === 0) history.redo()
    }
    history.apply({ label: 'The end', changes: [{ of: 'workbook', value: { name: 'The end' } }] })
    const end = history.workbook
    while (history.undo());
    assert.deepEqual(history.workbook, start)
    while (history.redo());
    assert.deepEqual(history.workbook, end)
  })
}
