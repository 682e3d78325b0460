import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Formula } from '../../src/dough/document/formula.js'
import { applyChanges, type Workbook } from '../../src/dough/document/workbook.js'
import { usualLarder } from '../../src/dough/larder/usual-larder.js'
import { withIds, withoutIds } from '../../src/exchange/data/new-ids.js'
import { mergeWorkbooks, type RestoreChoice, restorePlan } from '../../src/exchange/data/restore.js'
import { formulaOf } from '../dough/notation.js'
import { randomOf } from '../random.js'
import { anyFormula } from './any-formula.js'

const bread = (name: string, water: number, id = name): Formula => ({
  ...formulaOf(`Final dough:\n Bread flour = 100%\n Water = ${water}%`),
  id,
  name,
})
const salt = usualLarder.find(i => i.name === 'Salt')!
const own = (name: string, note = ''): (typeof usualLarder)[number] => ({
  ...salt,
  id: `own-${name}`,
  name,
  otherNames: [],
  note,
})

const rye = bread('Rye', 80)
const spelt = bread('Spelt', 70)
const here: Workbook = { name: 'Mill', formulas: [rye, spelt], larder: [own('Mill salt')] }
const file: Workbook = {
  name: 'Old mill',
  scale: { step: 5, fineStep: 1, fineBelow: 50 },
  formulas: [bread('Tin', 65), { ...spelt, note: 'wetter' }, withIds(rye)],
  larder: [own('Mill salt', 'fine'), own('Bran salt')],
}

const after = (choice: RestoreChoice, current = here, incoming = file) =>
  applyChanges(current, mergeWorkbooks(current, incoming, choice).changes)
const namesIn = (workbook: Workbook) => workbook.formulas.map(f => `${f.name}${f.note && ` (${f.note})`}`)

test('what a file would change is said before anything is changed', () => {
  const plan = restorePlan(here, file)
  assert.deepEqual(
    plan.formulas.map(f => `${f.incoming.name} is ${f.is}`),
    ['Tin is new', 'Spelt is different', 'Rye is same'],
  )
  assert.deepEqual(
    plan.ingredients.map(f => `${f.incoming.name} is ${f.is}`),
    ['Mill salt is different', 'Bran salt is new'],
  )
  assert.deepEqual(plan.missing, { formulas: [], ingredients: [], days: [], bakes: [] })
  assert.deepEqual(plan.name, { current: 'Mill', incoming: 'Old mill' })
  assert.equal(plan.scaleDiffers, true)
  assert.deepEqual(
    restorePlan(file, here).missing.formulas.map(f => f.name),
    ['Tin'],
  )
})

for (const [differing, shelf, larder] of [
  ['keep', ['Rye', 'Spelt', 'Tin'], ['Mill salt', 'Bran salt']],
  ['take', ['Rye', 'Spelt (wetter)', 'Tin'], ['Mill salt: fine', 'Bran salt']],
  [
    'beside',
    ['Rye', 'Spelt', 'Tin', 'Spelt 2 (wetter)'],
    ['Mill salt', 'Mill salt (from the file): fine', 'Bran salt'],
  ],
] as const)
  test(`merging with “${differing}” for what differs leaves the rest as it is, and can be undone`, () => {
    const { workbook, inverse } = after({ way: 'merge', differing })
    assert.deepEqual(namesIn(workbook), shelf)
    assert.deepEqual(
      workbook.larder.map(i => i.name + (i.note && i.note !== salt.note ? `: ${i.note}` : '')),
      larder,
    )
    assert.equal(workbook.name, 'Mill')
    assert.equal(workbook.formulas[0], rye)
    assert.deepEqual(applyChanges(workbook, inverse).workbook, here)
  })

test('what differs can be decided one by one', () => {
  const { workbook } = after({ way: 'merge', differing: 'keep', each: new Map([[spelt.id, 'take']]) })
  assert.deepEqual(namesIn(workbook), ['Rye', 'Spelt (wetter)', 'Tin'])
  assert.equal(workbook.larder[0]!.note, '')
})

test('replacing makes the workbook what the file holds, in its order, and can be undone', () => {
  const { workbook, inverse } = after({ way: 'replace' })
  const { cleared: _cleared, ...rest } = workbook
  assert.deepEqual(rest, file)
  assert.deepEqual(applyChanges(workbook, inverse).workbook, here)
})

test('an ingredient of the file that is called as one of everybody’s larder is not taken without the choice', () => {
  const odd: Workbook = {
    name: '',
    formulas: [],
    larder: [
      { ...salt, countsAs: { kind: 'other' } },
      { ...own('Sea'), otherNames: ['Sel', 'Mer'] },
    ],
  }
  const plan = restorePlan(here, odd)
  assert.deepEqual(
    plan.ingredients.map(i => i.is),
    ['different', 'new'],
  )
  const { workbook } = after({ way: 'merge', differing: 'keep' }, here, odd)
  assert.deepEqual(
    workbook.larder.map(i => [i.name, i.otherNames]),
    [
      ['Mill salt', []],
      ['Sea', ['Mer']],
    ],
  )
})

test('the same file twice changes nothing the second time', () => {
  const { workbook } = after({ way: 'merge', differing: 'keep' })
  assert.deepEqual(
    mergeWorkbooks(workbook, { ...file, larder: here.larder }, { way: 'merge', differing: 'keep' }).changes,
    [],
  )
})

test('whatever is merged, nothing here changes unless it is to be taken, and ids and names stay apart (seed 31)', () => {
  const random = randomOf(31)
  for (let i = 0; i < 50; i++) {
    const some = () => Array.from({ length: random.below(4) }, () => anyFormula(random))
    const current: Workbook = { name: 'x', formulas: some(), larder: [] }
    const incoming: Workbook = {
      name: 'y',
      formulas: [...some(), ...current.formulas.map(f => (random.below(2) ? f : { ...f, note: 'other' }))],
      larder: [],
    }
    const merged = after({ way: 'merge', differing: random.pick(['keep', 'beside']) }, current, incoming)
    for (const formula of current.formulas)
      assert.ok(merged.workbook.formulas.includes(formula), `round ${i}`)
    const ids = merged.workbook.formulas.map(f => f.id)
    assert.equal(new Set(ids).size, ids.length)
    const replaced = after({ way: 'replace' }, current, incoming)
    const { cleared: _cleared, ...rest } = replaced.workbook
    assert.deepEqual(rest, incoming, `round ${i}`)
    assert.deepEqual(applyChanges(replaced.workbook, replaced.inverse).workbook, current, `round ${i}`)
  }
})

test('formulas that differ in their ids alone are the same', () => {
  assert.deepEqual(withoutIds(withIds(rye)), withoutIds(rye))
})
