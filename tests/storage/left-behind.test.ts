import assert from 'node:assert/strict'
import { beforeEach, mock, test } from 'node:test'
import { inWords, loaf, withFormula, workbookOf } from './bread.js'
import { Disk, keeperOn, SmallTexts } from './stand-ins.js'

/** Pages that go away in a browser that drops what they then ask of the database. */

const miche = loaf('Miche', 'flour 100%')
const salted = (percent: number) => loaf('Miche', 'flour 100%', `salt ${percent}%`)
const note = { formula: 'miche', field: 'note', text: 'Folded thr' }
const none = { ...note, text: '' }
const name = 'tarebook left a bench'

let disk: Disk
let texts: SmallTexts
beforeEach(async () => {
  mock.method(console, 'warn', () => {})
  disk = new Disk()
  texts = new SmallTexts()
  const { keeper } = await keeperOn(disk, { texts })
  keeper.keep(workbookOf(miche, loaf('Rye', 'rye 100%')))
  await keeper.flush()
})

async function aPage(parts = disk.parts) {
  const its = new Disk(parts)
  const page = await keeperOn(its, { texts })
  const goesAway = () => {
    its.drops = true
    its.fault = 'never ends'
    page.leave()
  }
  return { ...page, disk: its, goesAway }
}

async function nextPage() {
  const bench = await keeperOn(disk, { texts })
  await bench.keeper.flush()
  return bench
}

test('the next page has the edits and what was being typed, and saves both', async () => {
  const page = await aPage()
  page.keeper.keep(withFormula(page.keeper.workbook, salted(2)))
  page.keeper.type([note])
  page.goesAway()

  const { keeper } = await nextPage()
  assert.equal(inWords(keeper.workbook), 'Miche flour 100% salt 2%; Rye rye 100%')
  assert.deepEqual(keeper.left, [note])
  assert.equal(keeper.state.status, 'saved')
  assert.deepEqual(keeper.problems, [])
  assert.equal(inWords((await keeperOn(disk)).keeper.workbook), 'Miche flour 100% salt 2%; Rye rye 100%')
})

test('so it is where nothing had been stored before', async () => {
  disk = new Disk()
  const page = await aPage()
  assert.equal(page.keeper.fresh, true)
  page.keeper.keep(workbookOf(salted(2)))
  page.goesAway()
  assert.equal(disk.parts.size, 0)

  const { keeper } = await nextPage()
  assert.equal(keeper.fresh, false)
  assert.equal(inWords(keeper.workbook), 'Miche flour 100% salt 2%')
})

test('nothing of it is left once all is saved', async () => {
  const { keeper, leave } = await aPage()
  keeper.keep(withFormula(keeper.workbook, salted(2)))
  keeper.type([note])
  leave()
  assert.notEqual(texts.kept.get(name), '')
  await keeper.flush()
  assert.equal(texts.kept.get(name), '')
})

test('a text that a killed browser brings back is passed over where something was saved since', async () => {
  const { keeper, leave } = await aPage()
  keeper.keep(withFormula(keeper.workbook, salted(2)))
  leave()
  const old = texts.kept.get(name)!
  await keeper.flush()
  keeper.keep(withFormula(keeper.workbook, salted(3)))
  await keeper.flush()

  texts.kept.set(name, old)
  const next = await nextPage()
  assert.equal(inWords(next.keeper.workbook), 'Miche flour 100% salt 3%; Rye rye 100%')
  assert.deepEqual(next.keeper.problems, [])
})

test('what was typed on since is not typed over by it', async () => {
  const { keeper, leave } = await aPage()
  keeper.type([note])
  leave()
  const old = texts.kept.get(name)!
  await keeper.flush()
  keeper.type([{ ...note, text: 'Folded three times' }])
  await keeper.flush()

  texts.kept.set(name, old)
  assert.deepEqual((await nextPage()).keeper.left, [{ ...note, text: 'Folded three times' }])
})

test('edits of a save whose end was not heard of come once', async () => {
  const page = await aPage()
  page.disk.fault = 'unheard'
  page.keeper.keep(withFormula(page.keeper.workbook, salted(2)))
  await page.keeper.flush()
  page.goesAway()

  const { keeper } = await nextPage()
  assert.equal(inWords(keeper.workbook), 'Miche flour 100% salt 2%; Rye rye 100%')
  assert.deepEqual(keeper.problems, [])
})

for (const text of ['{', 'null', '[]', '{"marks":[null]}', '{"marks":"x","puts":[[1]]}'])
  test(`a text that says nothing is passed over: ${text}`, async () => {
    texts.kept.set(name, text)
    const { keeper } = await nextPage()
    assert.equal(inWords(keeper.workbook), 'Miche flour 100%; Rye rye 100%')
    assert.deepEqual(keeper.left, [])
  })

test('of what it says only edits and what was typed are taken in', async () => {
  const { mark } = disk.parts.get('workbook') as { mark: string }
  const puts = [['formula Miche', salted(9)], ['typed', [none, 5]], ['unsaved x', { format: 'unknown' }], 7]
  texts.kept.set(name, JSON.stringify({ marks: [mark], typed: [], puts }))
  const { keeper } = await nextPage()
  assert.equal(inWords(keeper.workbook), 'Miche flour 100%; Rye rye 100%')
  assert.deepEqual(keeper.left, [none])
})

test('a small storage that is full, or refused, stops nothing', async () => {
  texts.full = true
  const page = await aPage()
  page.keeper.keep(withFormula(page.keeper.workbook, salted(2)))
  page.leave()
  await page.keeper.flush()
  assert.equal(page.keeper.state.status, 'saved')
  const refused = {
    getItem: () => {
      throw new DOMException('Not here.', 'SecurityError')
    },
    setItem: () => {
      throw new DOMException('Not here.', 'SecurityError')
    },
  }
  const { keeper } = await keeperOn(disk, { texts: refused })
  assert.equal(inWords(keeper.workbook), 'Miche flour 100% salt 2%; Rye rye 100%')
})
