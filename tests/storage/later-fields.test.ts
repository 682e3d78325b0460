import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { usualLarder } from '../../src/dough/larder/usual-larder.js'
import { mergeWorkbooks, readWorkbookFile, restorePlan, writeWorkbookFile } from '../../src/exchange/index.js'
import { History } from '../../src/storage/history.js'
import { loaf, workbookOf } from './bread.js'
import { Disk, keeperOn } from './stand-ins.js'

const at = '2026-10-07T05:30:00.000Z'
const later = { deep: [{ of: 2 }], none: null }

/** A workbook file as a later version might write it: a field at every level that this one does not know. */
function fileOfLater(): string {
  const lines = [
    { id: 'flour', ingredient: 'flour', amount: '100%', note: '' },
    { id: 'salt', ingredient: 'salt', amount: '2%', note: '' },
  ]
  const stage = { id: 'dough', name: 'Final dough', lines }
  const formula = { ...loaf('Miche'), stages: [stage] }
  const salt = usualLarder.find(ingredient => ingredient.name === 'Salt')!
  return `${JSON.stringify(
    {
      format: 'tarebook workbook file',
      version: 1,
      savedAt: at,
      name: 'Mill',
      scale: { step: 5, fineStep: 1, fineBelow: 50, later },
      formulas: [
        {
          ...formula,
          stages: [{ ...stage, lines: lines.map(line => ({ ...line, later })), later }],
          meanings: [{ ingredient: 'salt', countsAs: { kind: 'salt', later }, later }],
          keptSettings: [{ stage: '', setting: 'proof', amount: '2 h', note: '', later }],
          holds: [{ reading: 'salt', value: 0.02, line: 'salt', later }],
          batch: { make: 'dough', grams: 900, later },
          jottings: [{ id: 'j', name: 'n', text: '1', later }],
          states: [{ id: 's', name: 'before', keptAt: at, formula: { ...formula, later }, later }],
          later,
        },
      ],
      larder: [{ ...salt, id: 'own', name: 'Mill salt', otherNames: [], later }],
      calendar: { firstDay: 'Monday' },
      revision: 'not the one of the storage',
      later,
    },
    null,
    1,
  )}\n`
}

/** The workbook after an edit, a save and a start anew. */
async function reloaded(workbook: Workbook, from: Workbook = workbookOf()): Promise<Workbook> {
  const disk = new Disk()
  const { keeper } = await keeperOn(disk)
  keeper.keep(from)
  await keeper.flush()
  keeper.keep(workbook)
  await keeper.flush()
  return (await keeperOn(disk)).keeper.workbook
}

for (const [way, choice] of [
  ['replacing', { way: 'replace' }],
  ['merging', { way: 'merge', differing: 'keep' }],
] as const)
  test(`fields of a later version at every level of a workbook file are in the next one after ${way} and a reload`, async () => {
    const text = fileOfLater()
    const { workbook: incoming, problems } = readWorkbookFile(text)
    assert.deepEqual(problems, [])
    const empty: Workbook = { name: '', formulas: [], larder: [] }
    const history = new History(empty)
    history.apply(mergeWorkbooks(empty, incoming!, choice))
    const again = writeWorkbookFile(await reloaded(history.workbook, empty), at)
    assert.deepEqual(JSON.parse(again), JSON.parse(text))
    history.undo()
    assert.deepEqual(history.workbook, empty)
  })

test('merging keeps the later fields that are here and adds those that are not', () => {
  const current = { ...workbookOf(), later: { a: 1, b: 2 } }
  const incoming = { ...workbookOf(), later: { c: 4, b: 3 } }
  assert.deepEqual(restorePlan(current, incoming).later, ['c'])
  const history = new History<unknown>(current)
  history.apply(mergeWorkbooks(current, incoming, { way: 'merge', differing: 'keep' }))
  assert.deepEqual(history.workbook.later, { a: 1, b: 2, c: 4 })
  assert.deepEqual(
    mergeWorkbooks(history.workbook, incoming, { way: 'merge', differing: 'keep' }).changes,
    [],
  )
})

test('replacing by a file without later fields leaves none, also on the disk', async () => {
  const current = { ...workbookOf(loaf('Miche')), later: { a: 1 } }
  const history = new History<unknown>(current)
  history.apply(mergeWorkbooks(current, workbookOf(), { way: 'replace' }))
  assert.equal('later' in (await reloaded(history.workbook, current)), false)
  history.undo()
  assert.deepEqual(history.workbook, current)
})

test('an edit and another name leave the later fields where they are', () => {
  const history = new History<unknown>({ ...workbookOf(), later: { a: 1 } })
  history.apply({ label: 'Rename', changes: [{ of: 'workbook', value: { name: 'Other' } }] })
  assert.deepEqual(history.workbook.later, { a: 1 })
})

test('later fields restored in a page that went away before it had saved are there at the next start', async () => {
  const disk = new Disk()
  const { keeper, leave } = await keeperOn(disk)
  keeper.keep(workbookOf(loaf('Miche')))
  await keeper.flush()
  keeper.keep({ ...keeper.workbook, later: { a: 1 } })
  disk.fault = 'never ends'
  leave()
  assert.deepEqual((await keeperOn(new Disk(disk.parts))).keeper.workbook.later, { a: 1 })
})
