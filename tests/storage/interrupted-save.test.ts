import assert from 'node:assert/strict'
import { beforeEach, mock, test } from 'node:test'
import { inWords, loaf, withFormula, workbookOf } from './bread.js'
import { Disk, keeperOn } from './stand-ins.js'

/** Pages that go away while a save of theirs has been sent and never ends. */

const miche = loaf('Miche', 'flour 100%')
const salted = loaf('Miche', 'flour 100%', 'salt 2%')

let disk: Disk
beforeEach(async () => {
  mock.method(console, 'warn', () => {})
  disk = new Disk()
  const { keeper } = await keeperOn(disk)
  keeper.keep(workbookOf(miche, loaf('Rye', 'rye 100%')))
  await keeper.flush()
})

const unsaved = () => [...disk.parts.keys()].filter(key => key.startsWith('unsaved '))

/** A page on the disk that is left, and what it still saves never ends. */
async function aPage() {
  const its = new Disk(disk.parts)
  const page = await keeperOn(its)
  const goesAway = () => {
    its.fault = 'never ends'
    page.leave()
    assert.equal(unsaved().length, 1)
  }
  return { ...page, disk: its, goesAway }
}

async function nextPage(options = {}) {
  const bench = await keeperOn(disk, options)
  await bench.keeper.flush()
  return bench
}

test('the next page has the edits and saves them', async () => {
  const page = await aPage()
  page.keeper.keep({ ...page.keeper.workbook, formulas: [loaf('New', 'flour 100%'), salted] })
  page.goesAway()

  const next = await nextPage()
  assert.equal(inWords(next.keeper.workbook), 'New flour 100%; Miche flour 100% salt 2%')
  assert.equal(next.keeper.state.status, 'saved')
  assert.deepEqual(unsaved(), [])
  assert.deepEqual(next.keeper.problems, [])
})

test('edits made by two such pages in a row come together', async () => {
  const page = await aPage()
  page.keeper.keep(withFormula(page.keeper.workbook, salted))
  page.goesAway()
  const second = await aPage()
  second.keeper.keep(withFormula(second.keeper.workbook, loaf('Miche', 'flour 100%', 'salt 1.8%')))
  second.goesAway()

  const { keeper } = await nextPage()
  assert.equal(inWords(keeper.workbook), 'Miche flour 100% salt 1.8%; Rye rye 100%')
  assert.deepEqual(unsaved(), [])
})

test('edits made while a save was on its way come after it, also a change taken back', async () => {
  const page = await aPage()
  const asItWas = page.keeper.workbook
  page.keeper.keep(withFormula(asItWas, salted))
  await new Promise<void>(landed => {
    page.disk.beforeCommit = () => {
      page.disk.beforeCommit = undefined
      page.keeper.keep({ ...asItWas, name: 'New name' })
      page.leave()
      queueMicrotask(() => {
        page.disk.fault = 'never ends'
        landed()
      })
    }
    void page.keeper.flush()
  })

  const { keeper } = await nextPage()
  assert.equal(inWords(keeper.workbook), 'Miche flour 100%; Rye rye 100%')
  assert.equal(keeper.workbook.name, 'New name')
})

test('a page that comes back after all saves as ever', async () => {
  const page = await aPage()
  page.keeper.keep(withFormula(page.keeper.workbook, salted))
  page.leave()
  page.leave()
  await page.keeper.flush()
  assert.equal(page.keeper.state.status, 'saved')
  assert.deepEqual(unsaved(), [])
})

test('where another has changed the same formula meanwhile, the edits left behind become a copy', async () => {
  const page = await aPage()
  const other = await keeperOn(disk)
  page.keeper.keep(withFormula(page.keeper.workbook, salted))
  page.goesAway()
  other.keeper.keep(withFormula(other.keeper.workbook, loaf('Miche', 'flour 100%', 'water 80%')))
  await other.keeper.flush()

  const { keeper } = await nextPage()
  assert.equal(
    inWords(keeper.workbook),
    'Miche flour 100% water 80%; Miche (from another tab) flour 100% salt 2%; Rye rye 100%',
  )
})

test('a read-only tab leaves them to the tab that edits', async () => {
  const page = await aPage()
  page.keeper.keep(withFormula(page.keeper.workbook, salted))
  page.goesAway()
  const reader = await nextPage({ mayWrite: false })
  assert.equal(inWords(reader.keeper.workbook), 'Miche flour 100%; Rye rye 100%')
  assert.equal(unsaved().length, 1)
  await reader.keeper.takeOver()
  assert.equal(inWords(reader.keeper.workbook), 'Miche flour 100% salt 2%; Rye rye 100%')
})

test('edits that cannot be read are left where they are', async () => {
  disk.parts.set('unsaved x', { format: 'tarebook unsaved edits', version: 2 })
  const { keeper } = await nextPage()
  assert.equal(keeper.state.status, 'saved')
  assert.deepEqual(unsaved(), ['unsaved x'])
})
