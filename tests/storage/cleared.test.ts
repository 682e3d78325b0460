import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Cleared, Workbook } from '../../src/dough/document/workbook.js'
import { applyChanges } from '../../src/dough/document/workbook.js'
import { bringBackCleared, forgetAllCleared } from '../../src/dough/edits/cleared/cleared-edits.js'
import { removeFormula } from '../../src/dough/edits/fetched/shelf-edits.js'
import { forgetState, keepState } from '../../src/dough/edits/fetched/state-edits.js'
import { History } from '../../src/storage/history.js'
import { newsInWords } from '../../src/storage/news.js'
import { merge } from '../../src/storage/record/merge.js'
import { readSteps, stepsToKeep } from '../../src/storage/record/stored-steps.js'
import { inWords, loaf, withFormula, workbookOf } from './bread.js'
import { Disk, keeperOn } from './stand-ins.js'

/** What was deleted, as it is stored and as two tabs have it. */

const [miche, rye] = [loaf('Miche', 'flour 100%'), loaf('Rye', 'rye 100%')]
const start = workbookOf(miche, rye)
const without = (workbook: Workbook, id: string): Workbook =>
  applyChanges(workbook, removeFormula(workbook, id).changes).workbook
const daysAgo = (days: number): string => new Date(Date.now() - days * 864e5).toISOString()
const cleared = (id: string, days: number): Cleared => ({
  id,
  at: daysAgo(days),
  of: 'formula',
  thing: { ...rye, id },
  index: 0,
})
const namesOf = ({ cleared: list = [] }: Workbook): string =>
  list
    .map(({ thing }) => (thing as { name: string }).name)
    .toSorted()
    .join(', ')

async function diskWith(workbook: Workbook): Promise<Disk> {
  const disk = new Disk()
  const { keeper } = await keeperOn(disk)
  keeper.keep(workbook)
  await keeper.flush()
  return disk
}

test('each deleted thing is a record of its own, there after a reload and gone when it is brought back', async () => {
  const gone = without(start, 'Rye')
  const [{ id }] = gone.cleared as [Cleared]
  const disk = await diskWith(gone)
  const { keeper } = await keeperOn(disk)
  assert.deepEqual(keeper.workbook, gone)
  assert.deepEqual(keeper.problems, [])
  const { transaction } = bringBackCleared(keeper.workbook, id)
  keeper.keep(applyChanges(keeper.workbook, transaction.changes).workbook)
  await keeper.flush()
  assert.deepEqual(disk.written, [
    ['workbook', 'formula Miche', `cleared ${id}`],
    ['workbook', 'formula Rye', `-cleared ${id}`],
  ])
  assert.deepEqual((await keeperOn(disk)).keeper.workbook, start)
})

test('after 30 days it is no longer there at a start, and the next save removes it', async () => {
  const disk = await diskWith({ ...start, cleared: [cleared('old', 31), cleared('young', 29)] })
  const { keeper } = await keeperOn(new Disk(disk.parts))
  assert.deepEqual(
    keeper.workbook.cleared!.map(({ id }) => id),
    ['young'],
  )
  assert.equal(keeper.state.status, 'saved')
  keeper.keep({ ...keeper.workbook, name: 'Mill' })
  await keeper.flush()
  assert.deepEqual(
    [...disk.parts.keys()].filter(key => key.startsWith('cleared')),
    ['cleared young'],
  )
})

test('a version from before leaves what is cleared away where it is', async () => {
  const disk = await diskWith(without(start, 'Rye'))
  // It writes the head anew with the fields that it does not know.
  disk.parts.set('workbook', { ...(disk.parts.get('workbook') as object), revision: 7, mark: 'other' })
  assert.equal(namesOf((await keeperOn(disk)).keeper.workbook), 'Rye')
})

for (const [what, damaged] of [
  ['a number', 5],
  ['without a moment', { id: 'young', of: 'formula', thing: rye }],
  ['of another id', { ...cleared('old', 1) }],
] as const)
  test(`a deleted thing that is ${what} is told, stays stored and can be had as it is`, async () => {
    const disk = await diskWith({ ...start, cleared: [cleared('young', 1)] })
    disk.parts.set('cleared young', damaged)
    const { keeper } = await keeperOn(disk)
    assert.equal(keeper.workbook.cleared, undefined)
    assert.deepEqual(keeper.problems.map(newsInWords), [
      'A deleted thing could not be read. What is stored of it is kept, and can be downloaded as it is.',
    ])
    keeper.keep({ ...keeper.workbook, name: 'Mill' })
    await keeper.flush()
    assert.deepEqual(disk.parts.get('cleared young'), damaged)
    assert.deepEqual([...(await keeper.damaged())], [['cleared young', damaged]])
  })

test('what is deleted when the page goes away is taken in by the next', async () => {
  const disk = await diskWith(start)
  const first = await keeperOn(disk)
  first.keeper.keep(without(first.keeper.workbook, 'Rye'))
  disk.fault = 'never ends' // of the save that the page does not live to see
  first.leave()
  const { keeper } = await keeperOn(new Disk(disk.parts))
  assert.equal(inWords(keeper.workbook), 'Miche flour 100%')
  assert.equal(namesOf(keeper.workbook), 'Rye')
})

const change = (workbook: Workbook): Workbook => withFormula(workbook, { ...rye, note: 'dark' })
const brought = (workbook: Workbook): Workbook =>
  applyChanges(workbook, bringBackCleared(workbook, workbook.cleared![0]!.id).transaction.changes).workbook
const emptied = (workbook: Workbook): Workbook =>
  applyChanges(workbook, forgetAllCleared(workbook).changes).workbook
const stated = applyChanges(start, keepState(start, 'Rye', 'first', daysAgo(3)).changes).workbook
const letGo = (workbook: Workbook): Workbook => {
  const [state] = workbook.formulas.find(({ id }) => id === 'Rye')!.states!
  return applyChanges(workbook, forgetState(workbook, 'Rye', state!.id).changes).workbook
}
const same = (workbook: Workbook): Workbook => workbook
const gone = without(start, 'Rye')

for (const [what, base, mine, theirs, shelf, away] of [
  ['deleted here', start, (w: Workbook) => without(w, 'Rye'), same, 'Miche', 'Rye'],
  ['deleted there', start, same, (w: Workbook) => without(w, 'Rye'), 'Miche', 'Rye'],
  [
    'deleted in both',
    start,
    (w: Workbook) => without(w, 'Rye'),
    (w: Workbook) => without(w, 'Rye'),
    'Miche',
    'Rye',
  ],
  [
    'another deleted in each',
    start,
    (w: Workbook) => without(w, 'Rye'),
    (w: Workbook) => without(w, 'Miche'),
    '',
    'Miche, Rye',
  ],
  ['deleted here, changed there', start, (w: Workbook) => without(w, 'Rye'), change, 'Miche, Rye', ''],
  ['changed here, deleted there', start, change, (w: Workbook) => without(w, 'Rye'), 'Miche, Rye', ''],
  ['brought back here', gone, brought, same, 'Miche, Rye', ''],
  ['brought back in both', gone, brought, brought, 'Miche, Rye', ''],
  ['deleted for good there', gone, same, emptied, 'Miche', ''],
  ['brought back here, deleted for good there', gone, brought, emptied, 'Miche, Rye', ''],
  ['a state let go here', stated, letGo, same, 'Miche, Rye', 'first'],
  ['a state let go in both', stated, letGo, letGo, 'Miche, Rye', 'first'],
] as const)
  test(`two tabs: ${what}`, () => {
    const { workbook, copies } = merge(base, mine(base), theirs(base))
    const names = workbook.formulas.map(({ name }) => name).toSorted()
    assert.equal(names.join(', '), shelf)
    assert.equal(namesOf(workbook), away)
    assert.deepEqual(copies, [])
    assert.equal(workbook.cleared?.length === 0, false, 'nothing is no list')
  })

test('a state let go here whose formula was changed there stays with it, and is not cleared away', () => {
  const theirs = withFormula(stated, { ...stated.formulas[1]!, note: 'dark' })
  const { workbook } = merge(stated, letGo(stated), theirs)
  assert.equal(workbook.formulas.find(({ id }) => id === 'Rye')!.states!.length, 1)
  assert.equal(namesOf(workbook), '')
})

test('what is the same as there is their workbook', () => {
  assert.equal(merge(start, start, gone).workbook, gone)
})

test('a deletion is undone after a reload, and what is cleared away goes with it', () => {
  const history = new History(start)
  history.apply(removeFormula(start, 'Rye'))
  const steps = readSteps(structuredClone(stepsToKeep(history.steps)))
  const page = new History(history.workbook)
  page.takeUp(steps!)
  page.undo()
  assert.deepEqual(page.workbook, start)
  page.redo()
  assert.deepEqual(page.workbook, history.workbook)
})
