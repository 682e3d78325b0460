import assert from 'node:assert/strict'
import { beforeEach, mock, test } from 'node:test'
import { newsInWords } from '../../src/storage/news.js'
import { inWords, loaf, withFormula, workbookOf } from './bread.js'
import { Disk, keeperOn } from './stand-ins.js'

const miche = loaf('Miche', 'flour 100%')
const salted = loaf('Miche', 'flour 100%', 'salt 2%')
const baguette = loaf('Baguette', 'flour 100%')

let disk: Disk
beforeEach(async () => {
  mock.method(console, 'warn', () => {})
  disk = new Disk()
  const { keeper } = await keeperOn(disk)
  keeper.keep(workbookOf(miche, baguette))
  await keeper.flush()
})

const onDisk = async () => inWords((await keeperOn(disk)).keeper.workbook)

for (const [fault, status, reason] of [
  ['interrupted', 'refused', /will not keep the workbook\. Download it before/],
  ['full', 'full', /storage is full.*Download the workbook, then/],
  ['unheard', 'refused', /will not keep/],
] as const) {
  test(`a save that is ${fault} is said in words, and the next save has all of it`, async () => {
    const { keeper, said } = await keeperOn(disk)
    disk.fault = fault
    keeper.keep(withFormula(keeper.workbook, salted))
    await keeper.flush()
    const { state } = keeper
    assert.equal(state.status, status)
    assert.match('reason' in state ? state.reason.message : '', reason)
    assert.equal(inWords(keeper.workbook), 'Miche flour 100% salt 2%; Baguette flour 100%')

    keeper.keep(withFormula(keeper.workbook, loaf('Rye', 'rye 100%')))
    assert.equal(keeper.state.status, status, 'until a save has succeeded')
    await keeper.flush()
    assert.equal(keeper.state.status, 'saved')
    assert.equal(said.at(-1), 'saved')
    assert.equal(await onDisk(), 'Miche flour 100% salt 2%; Baguette flour 100%; Rye rye 100%')
  })
}

test('an interrupted save leaves the disk as it was', async () => {
  const { keeper } = await keeperOn(disk)
  disk.fault = 'interrupted'
  keeper.keep(workbookOf(salted))
  await keeper.flush()
  assert.equal(await onDisk(), 'Miche flour 100%; Baguette flour 100%')
})

test('without storage the workbook is edited in memory, and a sentence says so', async () => {
  const none = new Disk()
  none.refuses = true
  const { keeper } = await keeperOn(none)
  assert.equal(keeper.state.status, 'refused')
  keeper.keep(workbookOf(miche))
  await keeper.flush()
  assert.equal(inWords(keeper.workbook), 'Miche flour 100%')
  assert.deepEqual(keeper.state, {
    status: 'refused',
    reason: {
      code: 'storageRefused',
      message: 'This browser will not keep the workbook. Download it before closing this tab.',
    },
  })
})

test('storage that comes back after all loses neither what it holds nor what was entered', async () => {
  disk.refuses = true
  const { keeper } = await keeperOn(disk)
  keeper.keep(workbookOf(loaf('Rye', 'rye 100%')))
  await keeper.flush()
  disk.refuses = false
  await keeper.flush()
  assert.equal(keeper.state.status, 'saved')
  assert.equal(await onDisk(), 'Miche flour 100%; Baguette flour 100%; Rye rye 100%')
})

test('a formula that cannot be read is said, and stays stored as it is', async () => {
  const damaged = { ...miche, stages: 'gone' }
  disk.parts.set('formula Miche', damaged)
  const { keeper } = await keeperOn(disk)
  assert.equal(inWords(keeper.workbook), 'Baguette flour 100%')
  assert.match(
    newsInWords(keeper.problems[0]!),
    /“Miche” could not be read\. What is stored of it is kept, and can be downloaded/,
  )

  keeper.keep(withFormula(keeper.workbook, loaf('Rye', 'rye 100%')))
  await keeper.flush()
  assert.deepEqual(disk.parts.get('formula Miche'), damaged)
  disk.parts.set('formula Miche', miche)
  assert.equal(await onDisk(), 'Baguette flour 100%; Rye rye 100%; Miche flour 100%')
})

test('a shelf that cannot be read leaves its formulas, and is put aside at the next save', async () => {
  disk.parts.set('workbook', 'scrambled')
  const { keeper } = await keeperOn(disk)
  assert.equal(inWords(keeper.workbook), 'Miche flour 100%; Baguette flour 100%')
  assert.match(newsInWords(keeper.problems[0]!), /could not be read/)

  keeper.keep(withFormula(keeper.workbook, salted))
  await keeper.flush()
  assert.equal(keeper.state.status, 'saved')
  assert.ok([...disk.parts].some(([key, part]) => key.startsWith('damaged ') && part === 'scrambled'))
  assert.equal(await onDisk(), 'Miche flour 100% salt 2%; Baguette flour 100%')
})

test('an ingredient that cannot be read is written back as it was', async () => {
  const head = disk.parts.get('workbook') as object
  disk.parts.set('workbook', { ...head, larder: [{ id: 'x', name: 'Malt' }] })
  const { keeper } = await keeperOn(disk)
  assert.deepEqual(keeper.workbook.larder, [])
  keeper.keep(withFormula(keeper.workbook, salted))
  await keeper.flush()
  assert.deepEqual((disk.parts.get('workbook') as { larder: unknown }).larder, [{ id: 'x', name: 'Malt' }])
})

test('a workbook of a newer version is shown and never written over', async () => {
  const head = { ...(disk.parts.get('workbook') as object), version: 2 }
  disk.parts.set('workbook', head)
  const { keeper } = await keeperOn(disk)
  assert.equal(inWords(keeper.workbook), 'Miche flour 100%; Baguette flour 100%')
  keeper.keep(workbookOf())
  await keeper.flush()
  assert.deepEqual(disk.parts.get('workbook'), head)
  assert.equal('reason' in keeper.state && keeper.state.reason.code, 'storedByNewerVersion')
})

test('a newer version that comes in between stops an older one', async () => {
  const { keeper } = await keeperOn(disk)
  disk.parts.set('workbook', { format: 'tarebook workbook', version: 2, pages: 'of another kind' })
  keeper.keep(workbookOf())
  await keeper.flush()
  assert.equal(keeper.state.status, 'refused')
  assert.ok(disk.parts.has('formula Miche'))
})

test('after the site’s data were deleted, the whole workbook is written again', async () => {
  const { keeper } = await keeperOn(disk)
  disk.parts.clear()
  keeper.keep(withFormula(keeper.workbook, salted))
  await keeper.flush()
  assert.equal(keeper.state.status, 'saved')
  assert.equal(await onDisk(), 'Miche flour 100% salt 2%; Baguette flour 100%')
})

test('a tab that follows keeps what it shows when the site’s data were deleted, and saves it once it may', async () => {
  const { keeper, others } = await keeperOn(disk, { mayWrite: false })
  disk.parts.clear()
  await others.gained()
  await keeper.flush()
  assert.equal(inWords(keeper.workbook), 'Miche flour 100%; Baguette flour 100%')
  assert.equal(await onDisk(), 'Miche flour 100%; Baguette flour 100%')
})

test('a listener that fails keeps nothing from being saved', async () => {
  const report = mock.fn()
  Object.assign(globalThis, { reportError: report })
  const { keeper, others } = await keeperOn(disk, {
    onState: () => {
      throw new Error('a listener of ours')
    },
  })
  keeper.keep(withFormula(keeper.workbook, salted))
  await keeper.flush()
  others.saved()
  assert.ok(report.mock.callCount() > 2)
  assert.equal(await onDisk(), 'Miche flour 100% salt 2%; Baguette flour 100%')
})

for (const [name, code] of [
  ['SecurityError', 'storageRefused'],
  ['UnknownError', 'storageUnread'],
  ['NotFoundError', 'storageUnread'],
  ['VersionError', 'storedByNewerVersion'],
] as const)
  test(`a start on which reading fails with ${name} says so, and knows nothing of what is stored`, async () => {
    const before = structuredClone(disk.parts)
    disk.refusal = new DOMException('No.', name)
    disk.refuses = true
    const { keeper } = await keeperOn(disk)
    assert.equal(keeper.unread, true)
    assert.equal(keeper.fresh, false)
    assert.equal('reason' in keeper.state && keeper.state.reason.code, code)
    await keeper.flush()
    assert.deepEqual(disk.parts, before)
  })

test('storage that can be read after all brings the workbook to the page', async () => {
  disk.refuses = true
  disk.refusal = new DOMException('No.', 'UnknownError')
  const { keeper, loaded } = await keeperOn(disk)
  await keeper.flush()
  assert.equal(keeper.unread, true)
  disk.refuses = false
  await keeper.flush()
  assert.equal(keeper.unread, false)
  assert.equal(keeper.state.status, 'saved')
  assert.equal(loaded.length, 1)
  assert.equal(inWords(keeper.workbook), 'Miche flour 100%; Baguette flour 100%')
})
