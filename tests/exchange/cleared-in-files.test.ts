import assert from 'node:assert/strict'
import { test } from 'node:test'
import { applyChanges, type Cleared, type Workbook } from '../../src/dough/document/workbook.js'
import { bringBackCleared } from '../../src/dough/edits/cleared/cleared-edits.js'
import { newDay, removeDay } from '../../src/dough/edits/fetched/day-edits.js'
import { removeFormula } from '../../src/dough/edits/fetched/shelf-edits.js'
import { forgetState, keepState } from '../../src/dough/edits/fetched/state-edits.js'
import { mergeWorkbooks, type RestoreChoice, restorePlan } from '../../src/exchange/data/restore.js'
import { readWorkbookFile, writeWorkbookFile } from '../../src/exchange/data/workbook-file.js'
import { formulaOf } from '../dough/notation.js'

/** What was deleted goes along in the workbook file, and what a file takes the place of is cleared away. */

const bread = (name: string, water = 70) => ({
  ...formulaOf(`Final dough:\n Bread flour = 100%\n Water = ${water}%`),
  id: name,
  name,
})
const day = { ...newDay({ name: 'Saturday oven', date: '2026-12-05', zone: 'UTC' }), id: 'saturday' }
const full: Workbook = { name: 'Mill', formulas: [bread('Rye'), bread('Spelt')], larder: [], days: [day] }
const done = (workbook: Workbook, edit: (w: Workbook) => { changes: readonly never[] } | unknown): Workbook =>
  applyChanges(workbook, (edit(workbook) as { changes: [] }).changes).workbook
const stated = done(full, w => keepState(w, 'Rye', 'first', '2026-05-01T07:00:00.000Z'))
const state = stated.formulas[0]!.states![0]!.id
const cleared = [
  (w: Workbook) => removeFormula(w, 'Spelt'),
  (w: Workbook) => removeDay(w, 'saturday'),
  (w: Workbook) => forgetState(w, 'Rye', state),
].reduce(done, stated)

const read = (workbook: Workbook): Workbook => readWorkbookFile(writeWorkbookFile(workbook)).workbook!
const after = (here: Workbook, file: Workbook, choice: RestoreChoice): Workbook => {
  const made = applyChanges(here, mergeWorkbooks(here, file, choice).changes)
  assert.deepEqual(applyChanges(made.workbook, made.inverse).workbook, here, 'undo brings back all')
  return made.workbook
}
const namesOf = ({ cleared: list = [] }: Workbook): string =>
  list.map(({ thing }) => (thing as { name: string }).name).join(', ')
const merging: RestoreChoice = { way: 'merge', differing: 'keep' }

test('a workbook file has what was deleted, to the byte, and one from before reads as before', () => {
  const text = writeWorkbookFile(cleared, '2026-06-01T07:00:00.000Z')
  const { workbook, savedAt, problems } = readWorkbookFile(text)
  assert.deepEqual(problems, [])
  assert.deepEqual(workbook, cleared)
  assert.equal(writeWorkbookFile(workbook!, savedAt), text)
  assert.equal('cleared' in read(full), false)
})

test('a damaged one is left out and told, with its name or its place', () => {
  const [first, second, third] = cleared.cleared!
  const text = writeWorkbookFile({
    ...cleared,
    cleared: [first!, { ...second!, thing: { name: 'Market' } }, 5 as unknown as Cleared, third!],
  })
  const { workbook, problems } = readWorkbookFile(text)
  assert.equal(namesOf(workbook!), 'Spelt, first')
  assert.deepEqual(
    problems.map(({ message }) => message),
    [
      'The deleted thing “Market” is damaged and was left out.',
      'The deleted thing number 3 is damaged and was left out.',
    ],
  )
})

test('restoring from it in an empty workbook brings everything, and each comes back from there', () => {
  let workbook = after({ name: '', formulas: [], larder: [] }, read(cleared), { way: 'replace' })
  assert.equal(namesOf(workbook), 'Spelt, Saturday oven, first')
  for (const { id } of workbook.cleared!) workbook = done(workbook, w => bringBackCleared(w, id).transaction)
  assert.deepEqual(workbook, stated)
})

test('adding from a file adds what was deleted there and is neither here nor cleared away here', () => {
  assert.deepEqual(
    restorePlan(full, read(cleared)).cleared.map(({ of }) => of),
    ['state'],
    'formula and day are here',
  )
  assert.equal(namesOf(after(cleared, read(cleared), merging)), 'Spelt, Saturday oven, first', 'once')
  const old = cleared.cleared!.map(one => ({ ...one, at: new Date(Date.now() - 31 * 864e5).toISOString() }))
  assert.equal(namesOf(after(full, read({ ...cleared, cleared: old }), merging)), '', 'for 30 days')
})

test('a state that was deleted there belongs to the formula as it is called here', () => {
  const here: Workbook = { ...full, formulas: [{ ...bread('Rye'), id: 'other' }], days: [] }
  const file = { ...read(cleared), days: [] }
  const merged = after(here, file, merging)
  const away = merged.cleared!.find(({ of }) => of === 'state')!
  assert.equal(away.formula, 'other')
})

test('what a file takes the place of is cleared away, what is the same in both is not', () => {
  const here: Workbook = {
    ...full,
    formulas: [bread('Rye'), bread('Spelt', 80), bread('Only here')],
    days: [day],
  }
  const file = read(full)
  assert.equal(namesOf(after(here, file, { way: 'replace' })), 'Only here, Spelt')
  assert.equal(namesOf(after(here, file, { way: 'merge', differing: 'take' })), 'Spelt')
  assert.equal(namesOf(after(here, file, { way: 'merge', differing: 'beside' })), '')
})
