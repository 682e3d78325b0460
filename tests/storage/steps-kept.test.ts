import assert from 'node:assert/strict'
import { test } from 'node:test'
import { removeFormula } from '../../src/dough/edits/fetched/shelf-edits.js'
import { renameFormula, setFormulaNote } from '../../src/dough/edits/formula-edits.js'
import { enterAmount } from '../../src/dough/edits/line-edits.js'
import { History } from '../../src/storage/history.js'
import { openKeeper } from '../../src/storage/keeper.js'
import { readSteps, stepsToKeep } from '../../src/storage/record/stored-steps.js'
import { randomOf } from '../random.js'
import { inWords, loaf, put, workbookOf } from './bread.js'
import { Disk } from './stand-ins.js'

/** What can be undone after the page was loaded anew. */

async function aPage(disk: Disk) {
  const page: { history?: History } = {}
  const keeper = await openKeeper({
    database: 'steps',
    parts: disk,
    onState: () => {},
    tabs: () => ({ enter: async () => true, takeOver: async () => {}, saved() {}, leave() {} }),
    onLeave: () => () => {},
    persist: async () => false,
    stepsToKeep: () => page.history && stepsToKeep(page.history.steps),
  })
  const history = new History(keeper.workbook)
  page.history = history
  history.subscribe(({ workbook }) => keeper.keep(workbook))
  const steps = readSteps(keeper.steps)
  if (steps) history.takeUp(steps)
  return { keeper, history }
}

const at = { formula: 'Miche', stage: 'Miche-dough', line: 'Miche-salt' }

test('edits are taken back and made again after a reload, a deleted formula too', async () => {
  const disk = new Disk()
  const first = await aPage(disk)
  first.history.apply(put(loaf('Miche', 'flour 100%', 'salt 2%')))
  first.history.apply(put(loaf('Rye', 'rye 100%')))
  first.history.apply(enterAmount(first.history.workbook, at, 'percent', '1.8', '.')!)
  first.history.apply(setFormulaNote(first.history.workbook, 'Miche', 'dark'))
  first.history.apply(renameFormula(first.history.workbook, 'Rye', 'Black rye'))
  first.history.apply(removeFormula(first.history.workbook, 'Miche'))
  await first.keeper.flush()

  const second = await aPage(disk)
  assert.equal(inWords(second.history.workbook), 'Black rye rye 100%')
  assert.match(second.history.undoLabel!, /Miche/)
  second.history.undo()
  assert.equal(inWords(second.history.workbook), 'Miche flour 100% salt 1.8%; Black rye rye 100%')
  second.history.undo()
  second.history.undo()
  second.history.undo()
  await second.keeper.flush()

  const third = await aPage(disk)
  assert.equal(inWords(third.history.workbook), 'Miche flour 100% salt 2%; Rye rye 100%')
  third.history.redo()
  assert.equal(inWords(third.history.workbook), 'Miche flour 100% salt 1.8%; Rye rye 100%')
})

test('nothing is undone of a workbook that something else has saved since', async () => {
  const disk = new Disk()
  const first = await aPage(disk)
  first.history.apply(put(loaf('Miche', 'flour 100%')))
  await first.keeper.flush()
  const head = disk.parts.get('workbook') as object
  disk.parts.set('workbook', { ...head, mark: 'another', revision: 9 })
  assert.equal((await aPage(disk)).history.undoLabel, undefined)
})

test('the latest fifty outlive the page, fewer where they are large', async () => {
  const history = new History(workbookOf(loaf('Miche', 'flour 100%', 'salt 2%')))
  for (let n = 1; n <= 60; n++) history.apply(enterAmount(history.workbook, at, 'percent', String(n), '.')!)
  assert.equal(stepsToKeep(history.steps).done.length, 50)
  assert.equal(stepsToKeep(history.steps).done.at(-1), history.steps.done.at(-1))

  const large = loaf('Large', ...Array.from({ length: 6000 }, (_, n) => `seed${n} 1%`))
  const big = new History(workbookOf())
  for (let n = 0; n < 10; n++) big.apply(put({ ...large, note: String(n) }))
  // Each puts 6,001 and takes 6,001 back, but the first, which takes nothing: at most one of them fits into 20,000.
  assert.equal(stepsToKeep(big.steps).done.length, 1)
})

test('damaged steps (2000, seed 5) are not taken up, or do what whole ones do: nothing throws', async () => {
  const disk = new Disk()
  const { history, keeper } = await aPage(disk)
  history.apply(put(loaf('Miche', 'flour 100%', 'salt 2%')))
  history.apply(enterAmount(history.workbook, at, 'percent', '1.8', '.')!)
  history.apply(setFormulaNote(history.workbook, 'Miche', 'dark'))
  history.apply(removeFormula(history.workbook, 'Miche'))
  await keeper.flush()
  const stored = JSON.stringify((disk.parts.get('steps') as { steps: unknown }).steps)
  const random = randomOf(5)
  let taken = 0
  for (let round = 0; round < 2000; round++) {
    const keys = [...stored.matchAll(/"[a-zA-Z]+":|"[^"]*"|\d+/g)]
    const key = random.pick(keys)
    const odd = key[0].endsWith(':') ? '"x":' : random.pick(['null', '5', '"x"', '{}', '[]', '[null]'])
    const steps = readSteps(
      JSON.parse(stored.slice(0, key.index) + odd + stored.slice(key.index + key[0].length)),
    )
    if (!steps) continue
    taken += 1
    const page = new History(keeper.workbook)
    page.takeUp(steps)
    while (page.undo());
    while (page.redo());
  }
  process.stdout.write(`damaged steps taken up: ${taken} of 2000\n`)
  assert.ok(taken > 0 && taken < 2000)
})
