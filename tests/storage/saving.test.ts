import assert from 'node:assert/strict'
import { beforeEach, test } from 'node:test'
import { inWords, loaf, withFormula, workbookOf } from './bread.js'
import { Disk, keeperOn } from './stand-ins.js'

const miche = loaf('Miche', 'flour 100%')
const baguette = loaf('Baguette', 'flour 100%')
const saltedMiche = loaf('Miche', 'flour 100%', 'salt 2%')

let disk: Disk
beforeEach(() => {
  disk = new Disk()
})

/** A disk with Miche and Baguette on it, and a keeper that has read it. */
async function aKeeper() {
  const first = await keeperOn(disk)
  first.keeper.keep(workbookOf(miche, baguette))
  await first.keeper.flush()
  disk.written.length = 0
  return keeperOn(disk)
}

const onDisk = async () => inWords((await keeperOn(disk)).keeper.workbook)

test('a workbook is loaded as it was saved, with its order', async () => {
  const { keeper } = await aKeeper()
  assert.deepEqual(keeper.workbook, workbookOf(miche, baguette))
  assert.equal(keeper.fresh, false)
  assert.equal(keeper.state.status, 'saved')
})

test('a browser without a workbook gives an empty one and says so', async () => {
  const { keeper, said } = await keeperOn(disk)
  assert.equal(keeper.fresh, true)
  assert.deepEqual(keeper.workbook.formulas, [])
  assert.deepEqual(said, ['loading', 'saved'])
  assert.deepEqual(disk.written, [])
})

/** Until what began by itself has ended. */
const settled = async () => {
  for (let turn = 0; turn < 30; turn++) await Promise.resolve()
}
const salted = (percent: number) => loaf('Miche', 'flour 100%', `salt ${percent}%`)
const writtenSalt = () =>
  (disk.parts.get('formula Miche') as typeof miche | undefined)?.stages[0]?.lines[1]?.amount

test('the first edit after a pause is written at once, others are gathered until 400 ms after the last', async t => {
  t.mock.timers.enable({ apis: ['setTimeout', 'Date'], now: 1e12 })
  const { keeper } = await aKeeper()
  t.mock.timers.tick(400)
  const at: Record<number, string | undefined> = {} // what is written by then, ms after the first edit
  const edits = new Map([
    [0, 1],
    [100, 1.5],
    [300, 2],
    [1100, 2.5], // quiet again
  ])
  for (let time = 0; time <= 1200; time++) {
    const percent = edits.get(time)
    if (percent) keeper.keep(withFormula(keeper.workbook, salted(percent)))
    t.mock.timers.tick(1) // and what changed is painted
    await settled()
    at[time] = writtenSalt()
  }
  assert.deepEqual(
    [0, 100, 300, 698, 699, 1099, 1100].map(time => at[time]),
    ['1%', '1%', '1%', '1%', '2%', '2%', '2.5%'],
  )
  assert.equal(disk.written.length, 3)
  assert.equal(keeper.state.status, 'saved')
})

test('what follows a first edit before it is painted is in the same write', async t => {
  t.mock.timers.enable({ apis: ['setTimeout', 'Date'], now: 1e12 })
  const { keeper } = await aKeeper()
  t.mock.timers.tick(400)
  keeper.keep(withFormula(keeper.workbook, salted(1)))
  await settled()
  keeper.keep(withFormula(keeper.workbook, salted(2)))
  t.mock.timers.tick(1)
  await settled()
  assert.deepEqual(disk.written, [['workbook', 'formula Miche']])
  t.mock.timers.tick(2000)
  await settled()
  assert.equal(disk.written.length, 1)
  assert.equal(await onDisk(), 'Miche flour 100% salt 2%; Baguette flour 100%')
})

test('leaving the page saves at once', async () => {
  const { keeper, leave } = await aKeeper()
  keeper.keep(withFormula(keeper.workbook, saltedMiche))
  leave()
  await keeper.flush()
  assert.equal(disk.written.length, 1)
})

test('an edit writes the formula it changed and the head, no other', async () => {
  const { keeper } = await aKeeper()
  keeper.keep(withFormula(keeper.workbook, saltedMiche))
  await keeper.flush()
  keeper.keep({ ...keeper.workbook, formulas: keeper.workbook.formulas.filter(f => f.id !== 'Baguette') })
  await keeper.flush()
  assert.deepEqual(disk.written, [
    ['workbook', 'formula Miche'],
    ['workbook', '-formula Baguette'],
  ])
})

test('“saved” is said only when what is on the screen is on disk', async () => {
  const { keeper, said } = await aKeeper()
  said.length = 0
  disk.beforeCommit = () => {
    disk.beforeCommit = undefined
    keeper.keep(withFormula(keeper.workbook, loaf('Baguette', 'flour 100%', 'water 68%')))
  }
  keeper.keep(withFormula(keeper.workbook, saltedMiche))
  await keeper.flush()
  assert.deepEqual(said, ['waiting', 'saving', 'waiting', 'saving', 'saved'])
  assert.equal(disk.written.length, 2)
  assert.equal(await onDisk(), 'Miche flour 100% salt 2%; Baguette flour 100% water 68%')
})

test('fields this version does not know stay stored', async () => {
  const { keeper: first } = await aKeeper()
  await first.close()
  disk.parts.set('workbook', { ...(disk.parts.get('workbook') as object), oven: 'deck' })
  disk.parts.set('formula Miche', { ...miche, steam: [1], stages: [{ ...miche.stages[0], hours: 4 }] })

  const { keeper } = await keeperOn(disk)
  const read = keeper.workbook.formulas[0]!
  keeper.keep(withFormula(keeper.workbook, { ...read, note: 'dark crust' }))
  await keeper.flush()
  const stored = disk.parts.get('formula Miche') as {
    steam: unknown
    note: string
    stages: { hours: number }[]
  }
  assert.equal((disk.parts.get('workbook') as { oven: string }).oven, 'deck')
  assert.deepEqual([stored.steam, stored.note, stored.stages[0]!.hours], [[1], 'dark crust', 4])
})

test('the browser is asked to keep the data at the first edit, and once', async () => {
  let asked = 0
  const { keeper } = await keeperOn(disk, {
    persist: async () => {
      asked += 1
      return true
    },
  })
  assert.equal(keeper.persisted, undefined)
  keeper.keep(workbookOf(miche))
  keeper.keep(workbookOf(miche, baguette))
  await keeper.flush()
  assert.equal(asked, 1)
  assert.equal(keeper.persisted, true)
})
