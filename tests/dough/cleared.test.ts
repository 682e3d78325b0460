import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Formula } from '../../src/dough/document/formula.js'
import {
  applyChanges,
  type Cleared,
  type Transaction,
  type Workbook,
} from '../../src/dough/document/workbook.js'
import {
  type BroughtBack,
  bringBackCleared,
  forgetAllCleared,
  forgetCleared,
  readCleared,
} from '../../src/dough/edits/cleared/cleared-edits.js'
import { Refusal } from '../../src/dough/edits/edits.js'
import { newDay, removeDay } from '../../src/dough/edits/fetched/day-edits.js'
import { defineIngredient, forgetIngredient } from '../../src/dough/edits/fetched/larder-edits.js'
import { addFormulas, removeFormula, replaceFormula } from '../../src/dough/edits/fetched/shelf-edits.js'
import { forgetState, keepState } from '../../src/dough/edits/fetched/state-edits.js'
import { usualLarder } from '../../src/dough/larder/usual-larder.js'
import { formulaOf } from './notation.js'

/** What is deleted is cleared away, and comes back. */

const bread = (name: string): Formula => ({
  ...formulaOf('Final dough:\n Bread flour = 100%\n Water = 70%'),
  id: name.replace(/\W/g, '-'),
  name,
})
const [salt, flour] = ['Salt', 'Bread flour'].map(name => usualLarder.find(i => i.name === name)!)
const own = { ...salt!, id: 'own', name: 'Mill salt', otherNames: ['Grey salt'] }
const changed = { ...flour!, note: 'from the mill' } // of the usual larder
const day = { ...newDay({ name: 'Saturday oven', date: '2026-12-05', zone: 'UTC' }), id: 'saturday' }
const kept = (() => {
  const workbook: Workbook = {
    name: 'Mill',
    formulas: [bread('Rye'), bread('Spelt'), bread('Tin')],
    larder: [own, changed],
    days: [day, { ...day, id: 'sunday', name: 'Sunday oven' }],
  }
  const then = '2026-05-01T07:00:00.000Z'
  return ['first', 'second', 'third'].reduce(
    (now, name) => applyChanges(now, keepState(now, 'Spelt', name, then).changes).workbook,
    workbook,
  )
})()

/** The workbook after an edit, once it is seen that its inverse brings back the very same as before. */
function after(workbook: Workbook, edit: Transaction): Workbook {
  const done = applyChanges(workbook, edit.changes)
  assert.deepEqual(applyChanges(done.workbook, done.inverse).workbook, workbook)
  return done.workbook
}

/** Brings back the only thing that is cleared away. */
function back(workbook: Workbook): { workbook: Workbook; done: BroughtBack } {
  assert.equal(workbook.cleared?.length, 1)
  const { transaction, done } = bringBackCleared(workbook, workbook.cleared![0]!.id)
  return { workbook: after(workbook, transaction), done }
}

const names = (list: readonly { readonly name: string }[] = []) => list.map(({ name }) => name).join(', ')
const spelt = ({ formulas }: Workbook) => formulas.find(({ id }) => id === 'Spelt')!
const second = (workbook: Workbook) => spelt(workbook).states!.find(({ name }) => name === 'second')!.id

/** What each kind of thing is deleted by, and the list it stood in. */
const deletions = {
  'a formula': (w: Workbook) => removeFormula(w, 'Spelt'),
  'a kept state': (w: Workbook) => forgetState(w, 'Spelt', second(w)),
  'an ingredient': (w: Workbook) => forgetIngredient(w, 'own'),
  'a change of a usual ingredient': (w: Workbook) => forgetIngredient(w, changed.id),
  'a day': (w: Workbook) => removeDay(w, 'saturday'),
} as const

for (const [what, remove] of Object.entries(deletions))
  test(`${what} that is deleted is cleared away with the moment, and comes back to where it stood, the same`, () => {
    const from = new Date().toISOString()
    const gone = after(kept, remove(kept))
    assert.notDeepEqual({ ...gone, cleared: undefined }, { ...kept, cleared: undefined })
    const [cleared] = gone.cleared!
    assert.ok(cleared!.at >= from && cleared!.at <= new Date().toISOString())
    assert.equal(readCleared(cleared!), cleared, 'it is read as it stands')
    const { workbook, done } = back(gone)
    assert.deepEqual(workbook, kept)
    assert.equal(done.now, done.name)
  })

test('what comes back has another name where that is taken, and keeps out of what others are called', () => {
  const without = after(kept, removeFormula(kept, 'Spelt'))
  const formula = back(after(without, addFormulas(without, [{ ...bread('spelt'), id: 'new' }])))
  assert.equal(names(formula.workbook.formulas), 'Rye, Spelt 2, Tin, spelt')
  assert.deepEqual(formula.done, { of: 'formula', name: 'Spelt', now: 'Spelt 2', formula: 'Spelt' })

  const gone = after(kept, forgetState(kept, 'Spelt', second(kept)))
  const state = back(after(gone, keepState(gone, 'Spelt', 'second', '2026-06-01T07:00:00.000Z')))
  assert.equal(names(spelt(state.workbook).states), 'first, second 2, third, second')

  const other = { ...own, id: 'other', name: 'grey salt', otherNames: ['Mill salt'] }
  const larder = back(after(after(kept, forgetIngredient(kept, 'own')), defineIngredient(other)))
  assert.equal(names(larder.workbook.larder), 'Mill salt 2, Bread flour, grey salt')
  assert.deepEqual(larder.workbook.larder[0]!.otherNames, [])

  const planned = { ...day, id: 'again' }
  const days = back(
    after(after(kept, removeDay(kept, 'saturday')), {
      label: '',
      changes: [{ of: 'day', id: 'again', value: planned }],
    }),
  )
  assert.equal(names(days.workbook.days), 'Saturday oven 2, Sunday oven, Saturday oven')
})

test('what is brought back beside another of its id has one of its own', () => {
  const replaced = after(kept, replaceFormula(kept, 'Spelt', bread('Spelt')))
  assert.equal(replaced.cleared!.length, 1, 'what was replaced is cleared away')
  const { workbook, done } = back(replaced)
  assert.equal(names(workbook.formulas), 'Rye, Spelt 2, Spelt, Tin')
  assert.notEqual(done.formula, 'Spelt')
  assert.equal(workbook.formulas[1]!.states!.length, 3)
})

test('a state whose formula is gone comes back as a formula of its own', () => {
  const gone = after(kept, forgetState(kept, 'Spelt', second(kept)))
  const without = { ...gone, formulas: gone.formulas.filter(({ id }) => id !== 'Spelt') }
  const { workbook, done } = back(without)
  assert.equal(names(workbook.formulas), 'Rye, Tin, Spelt, second')
  assert.deepEqual(
    { ...done, formula: '' },
    {
      of: 'state',
      name: 'second',
      now: 'Spelt, second',
      formula: '',
      called: 'Spelt',
      alone: true,
    },
  )
})

test('it is deleted for good one by one, or all at once, and undo takes that back too', () => {
  const once = after(kept, removeFormula(kept, 'Rye'))
  const twice = after(once, removeDay(once, 'sunday'))
  const forget = forgetCleared(twice, twice.cleared![0]!.id)
  assert.equal(forget.label, 'Delete Rye for good')
  assert.deepEqual(after(twice, forget).cleared, [twice.cleared![1]])
  const all = forgetAllCleared(twice)
  assert.equal(all.label, 'Delete 2 things for good')
  assert.equal('cleared' in after(twice, all), false, 'nothing is no list')
})

for (const [what, item, code] of [
  ['is not there any more', undefined, 'clearedGone'],
  ['is of an unknown kind', { of: 'spoon', thing: {} }, 'clearedDamaged'],
  ['is no formula', { of: 'formula', thing: { name: 'Rye' } }, 'clearedDamaged'],
  ['is a state of no formula', { of: 'state', thing: spelt(kept).states![0] }, 'clearedDamaged'],
] as const)
  test(`what ${what} is not brought back, in a sentence`, () => {
    const at = '2026-05-01T07:00:00.000Z'
    const cleared: Cleared[] = item ? [{ id: 'x', at, ...item }] : []
    assert.throws(
      () => bringBackCleared({ ...kept, cleared }, 'x'),
      (error: unknown) => error instanceof Refusal && error.problem.code === code,
    )
  })
