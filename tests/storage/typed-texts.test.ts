import assert from 'node:assert/strict'
import { beforeEach, mock, test } from 'node:test'
import { inWords, loaf, withFormula, workbookOf } from './bread.js'
import { Disk, keeperOn } from './stand-ins.js'

/** What stands in fields and is not entered, on its way to the disk and back. */

const miche = loaf('Miche', 'flour 100%')
const salted = loaf('Miche', 'flour 100%', 'salt 2%')
const note = { formula: 'miche', field: 'note', text: 'Folded thr' }

let disk: Disk
beforeEach(async () => {
  mock.method(console, 'warn', () => {})
  disk = new Disk()
  const { keeper } = await keeperOn(disk)
  keeper.keep(workbookOf(miche))
  await keeper.flush()
})

test('what is being typed is not called saved until it is on disk, and the next page has it', async () => {
  const { keeper, said } = await keeperOn(disk)
  keeper.type([note])
  assert.equal(keeper.state.status, 'waiting')
  await keeper.flush()
  assert.equal(keeper.state.status, 'saved')
  assert.deepEqual(said, ['loading', 'saved', 'waiting', 'saved'])
  assert.deepEqual((await keeperOn(disk)).keeper.left, [note])
})

test('what was entered is left by nobody: the edit and the field it leaves are one write', async () => {
  const { keeper } = await keeperOn(disk)
  keeper.type([note])
  await keeper.flush()
  disk.written.length = 0
  keeper.keep(withFormula(keeper.workbook, salted))
  keeper.type([])
  await keeper.flush()
  assert.equal(disk.written.length, 1)
  assert.ok(disk.written[0]!.includes('typed'))
  const next = await keeperOn(disk)
  assert.deepEqual(next.keeper.left, [])
  assert.equal(inWords(next.keeper.workbook), 'Miche flour 100% salt 2%')
})

test('a page that is hidden writes at once what is being typed and what was edited', async () => {
  const its = new Disk(disk.parts)
  const { keeper, leave } = await keeperOn(its)
  keeper.keep(withFormula(keeper.workbook, salted))
  keeper.type([note])
  its.fault = 'never ends'
  leave()
  const next = await keeperOn(disk)
  assert.deepEqual(next.keeper.left, [note])
  assert.equal(inWords(next.keeper.workbook), 'Miche flour 100% salt 2%')
})

test('where storage refuses, what is typed is said not to be kept', async () => {
  const { keeper } = await keeperOn(disk)
  disk.refuses = true
  keeper.type([note])
  await keeper.flush()
  assert.equal(keeper.state.status, 'refused')
  disk.refuses = false
  await keeper.flush()
  assert.equal(keeper.state.status, 'saved')
  assert.deepEqual((await keeperOn(disk)).keeper.left, [note])
})

test('a tab that only reads writes nothing of what is typed', async () => {
  const { keeper, leave } = await keeperOn(disk, { mayWrite: false })
  keeper.type([note])
  leave()
  await keeper.flush()
  assert.deepEqual((await keeperOn(disk)).keeper.left, [])
})

test('what cannot be read of it is passed over', async () => {
  for (const part of [null, 'x', {}, [null, 1, { formula: 'miche' }, note, { ...note, text: 5 }]]) {
    disk.parts.set('typed', part)
    assert.deepEqual((await keeperOn(disk)).keeper.left, Array.isArray(part) ? [note] : [])
  }
})

test('who edits without a pause is saved at once, and then every second', async t => {
  t.mock.timers.enable({ apis: ['setTimeout', 'Date'], now: 1e12 })
  const { keeper } = await keeperOn(disk)
  disk.written.length = 0
  const saves: number[] = []
  for (let time = 0; time < 3000; time += 100) {
    keeper.keep(withFormula(keeper.workbook, loaf('Miche', 'flour 100%', `salt ${time}%`)))
    const before = disk.written.length
    t.mock.timers.tick(100)
    for (let turn = 0; turn < 20; turn++) await Promise.resolve()
    if (disk.written.length > before) saves.push(time + 100)
  }
  assert.deepEqual(saves, [100, 1100, 2100])
})

test('going away is a risk where storage refuses or does not answer, not in the moment before a save', async t => {
  t.mock.timers.enable({ apis: ['setTimeout', 'Date'] })
  const { keeper } = await keeperOn(disk)
  assert.equal(keeper.atRisk, false)
  keeper.type([note])
  assert.equal(keeper.atRisk, false)

  disk.fault = 'never ends'
  keeper.keep(withFormula(keeper.workbook, salted))
  t.mock.timers.tick(1000)
  for (let turn = 0; turn < 20; turn++) await Promise.resolve()
  assert.equal(keeper.state.status, 'saving')
  assert.equal(keeper.atRisk, false)
  t.mock.timers.tick(1501)
  assert.equal(keeper.atRisk, true)

  const other = await keeperOn(disk)
  disk.refuses = true
  other.keeper.type([note])
  await other.keeper.flush()
  assert.equal(other.keeper.atRisk, true)
})
