import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Day } from '../../src/dough/document/day.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { addDay, renameDay, setLeeway } from '../../src/dough/edits/fetched/day-edits.js'
import { History } from '../../src/storage/history.js'
import { newsInWords } from '../../src/storage/news.js'
import { merge } from '../../src/storage/record/merge.js'
import { saturday } from '../day/notation.js'
import { loaf, workbookOf } from './bread.js'
import { Disk, keeperOn } from './stand-ins.js'

const miche = loaf('Miche', 'flour 100%')
const day = (id: string, more: Partial<Day> = {}): Day => ({
  ...saturday([[miche, 6]]),
  id,
  name: id,
  ...more,
})
const withDays = (...days: readonly Day[]): Workbook => ({
  ...workbookOf(miche),
  ...(days.length && { days }),
})
const names = ({ days = [] }: Workbook) => days.map(({ name, note }) => `${name}${note && `: ${note}`}`)

/** A disk on which these days are, saved one edit after the other. */
async function diskWith(...states: readonly Workbook[]): Promise<Disk> {
  const disk = new Disk()
  const { keeper } = await keeperOn(disk)
  for (const workbook of states) {
    keeper.keep(workbook)
    await keeper.flush()
  }
  return disk
}

test('each day is a record of its own, written when it changes and removed when it goes', async () => {
  const [a, b] = [day('a'), day('b')]
  const disk = await diskWith(withDays(a, b), withDays(a, { ...b, note: 'busy' }), withDays(b), withDays())
  assert.deepEqual(disk.written, [
    ['workbook', 'formula Miche', 'day a', 'day b'],
    ['workbook', 'day b'],
    ['workbook', 'day b', '-day a'],
    ['workbook', '-day b'],
  ])
  assert.equal('days' in (disk.parts.get('workbook') as object), false)
})

test('days are loaded in their order, with fields that this version does not know', async () => {
  const days = [day('z'), { ...day('a'), moon: 'full' }, day('m')]
  const { keeper } = await keeperOn(await diskWith({ ...withDays(...days), leeway: 0 }))
  assert.deepEqual(keeper.workbook, { ...withDays(...days), leeway: 0 })
  assert.deepEqual(keeper.problems, [])
})

test('a database from before days is read as before, and a version from before leaves them alone', async () => {
  const disk = await diskWith(withDays())
  assert.deepEqual((await keeperOn(disk)).keeper.workbook, withDays())
  assert.deepEqual(disk.written[0], ['workbook', 'formula Miche'])
  const planned = await diskWith(withDays(day('a')))
  // A version that knows no days writes the head anew with the fields that it does not know.
  const head = planned.parts.get('workbook') as object
  planned.parts.set('workbook', { ...head, revision: 7, mark: 'other' })
  assert.deepEqual(names((await keeperOn(planned)).keeper.workbook), ['a'])
})

const unread = ' could not be read. What is stored of it is kept, and can be downloaded as it is.'

for (const [what, damaged, said] of [
  ['without a zone', { ...day('a'), zone: undefined }, `The day “a”${unread}`],
  ['of another id', { ...day('a'), id: 'b' }, `The day “a”${unread}`],
  ['that is a number', 5, `A day${unread}`],
] as const)
  test(`a day ${what} is told and stays stored, and the others load`, async () => {
    const disk = await diskWith(withDays(day('a'), day('b')))
    disk.parts.set('day a', damaged)
    const { keeper } = await keeperOn(disk)
    assert.deepEqual(names(keeper.workbook), ['b'])
    assert.deepEqual(keeper.problems.map(newsInWords), [said])
    keeper.keep({ ...keeper.workbook, name: 'Mill' })
    await keeper.flush()
    assert.deepEqual(disk.parts.get('day a'), damaged)
    assert.deepEqual((disk.parts.get('workbook') as { days: unknown }).days, ['b', 'a'])
  })

for (const [what, damaged, said] of [
  ['without an oven', { ...day('a'), ovens: [] }, 'ovens'],
  ['with breads that are texts', { ...day('a'), breads: ['Miche', 'Rye'] }, '2 breads'],
  ['with mixings that are none', { ...day('a'), mixes: 'x' }, 'mixes'],
] as const)
  test(`a day ${what} loads without them, is told, and stays stored as it was beside itself`, async () => {
    const disk = await diskWith(withDays(day('a'), day('b')))
    disk.parts.set('day a', damaged)
    const { keeper } = await keeperOn(disk)
    assert.deepEqual(names(keeper.workbook), ['a', 'b'])
    assert.deepEqual(keeper.problems.map(newsInWords), [
      `The day “a” is damaged. Not read of it: ${said}. The rest is here; what was stored is kept, and can be downloaded as it is.`,
    ])
    keeper.keep({ ...keeper.workbook, name: 'Mill' })
    await keeper.flush()
    assert.deepEqual([...(await keeper.damaged()).values()], [damaged])
    assert.deepEqual((await keeperOn(disk)).keeper.problems, [])
  })

test('a day that the order names and that is missing is told, one that it does not name is there', async () => {
  const disk = await diskWith(withDays(day('a'), day('b')))
  disk.parts.delete('day a')
  disk.parts.set('day c', day('c'))
  const { keeper } = await keeperOn(disk)
  assert.deepEqual(names(keeper.workbook), ['b', 'c'])
  assert.deepEqual(
    keeper.problems.map(p => p.code),
    ['dayMissing'],
  )
})

for (const leeway of [-0.1, 1, 'x', null])
  test(`a stored leeway of ${leeway} is the usual one`, async () => {
    const disk = await diskWith(withDays())
    disk.parts.set('workbook', { ...(disk.parts.get('workbook') as object), leeway })
    assert.deepEqual((await keeperOn(disk)).keeper.workbook, withDays())
  })

for (const [what, base, mine, theirs, merged, copies] of [
  ['added in both', [], [day('a')], [day('b')], ['b', 'a'], []],
  ['changed here', [day('a')], [day('a', { note: 'mine' })], [day('a')], ['a: mine'], []],
  ['changed there', [day('a')], [day('a')], [day('a', { note: 'theirs' })], ['a: theirs'], []],
  [
    'changed in both',
    [day('a')],
    [day('a', { note: 'mine' })],
    [day('a', { note: 'theirs' })],
    ['a: theirs', 'a (from another tab): mine'],
    ['a (from another tab)'],
  ],
  ['removed here, changed there', [day('a')], [], [day('a', { note: 'theirs' })], ['a: theirs'], []],
  ['removed here', [day('a')], [], [day('a')], [], []],
] as const)
  test(`two tabs: a day ${what}`, () => {
    const done = merge(withDays(...base), withDays(...mine), withDays(...theirs))
    assert.deepEqual(names(done.workbook).toSorted(), [...merged].toSorted())
    assert.deepEqual(done.copies, copies)
    assert.equal(done.workbook.days?.length === 0, false, 'none is no list')
  })

test('two tabs: what is the same as there is their workbook, and the leeway of the one that changed it stays', () => {
  const theirs = withDays(day('a'))
  assert.equal(merge(withDays(), withDays(), theirs).workbook, theirs)
  assert.equal(merge(theirs, { ...theirs, leeway: 0.2 }, theirs).workbook.leeway, 0.2)
  assert.equal(merge(theirs, { ...theirs, leeway: 0.2 }, { ...theirs, leeway: 0.1 }).workbook.leeway, 0.1)
})

test('days planned when the page goes away are taken in by the next', async () => {
  const disk = await diskWith(withDays(day('a')))
  const first = await keeperOn(disk)
  first.keeper.keep({ ...withDays(day('a', { note: 'late' }), day('b')), leeway: 0.3 })
  disk.fault = 'never ends' // of the save that the page does not live to see
  first.leave()
  const { keeper } = await keeperOn(new Disk(disk.parts))
  assert.deepEqual(names(keeper.workbook), ['a: late', 'b'])
  assert.equal(keeper.workbook.leeway, 0.3)
})

test('edits of days are undone and redone', () => {
  const history = new History(withDays())
  const planned = history.apply(addDay(day('a')))
  history.apply(renameDay(planned, 'a', 'Market')!)
  const loose = history.apply(setLeeway(0.2))
  assert.equal(history.undoLabel, 'Waits move by 20 %')
  history.undo()
  history.undo()
  assert.equal(history.workbook.days![0]!.name, 'a')
  history.undo()
  assert.deepEqual(history.workbook, withDays())
  for (let n = 0; n < 3; n++) history.redo()
  assert.deepEqual(history.workbook, loose)
})
