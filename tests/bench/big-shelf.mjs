/** Workbooks of few and of many formulas: the time until the grid can be typed in, and what an edit writes. */

/**
 * @import { Page } from 'puppeteer-core'
 * @import { Row } from './row'
 */

/**
 * Puts a workbook of so many formulas, a levain and a dough of eight lines each, where the page keeps its own.
 * Runs in a page of its origin.
 * @param {string} database
 * @param {number} count
 */
async function store(database, count) {
  /** @type {[ingredient: string, amount: string][]} */
  const levain = [
    ['Ripe starter', '20%'],
    ['Bread flour', '100%'],
    ['Water', '80%'],
  ]
  /** @type {[ingredient: string, amount: string][]} */
  const dough = [
    ['Bread flour', '80%'],
    ['Wholemeal spelt', '20%'],
    ['Water', '70%'],
    ['Salt', '2%'],
    ['Levain', '20%'],
  ]
  /** @param {number} of */
  const formula = of => {
    /** @type {(lines: [string, string][], stage: number) => unknown[]} */
    const linesOf = (lines, stage) =>
      lines.map(([ingredient, amount], i) => ({ id: `${of}-${stage}-${i}`, ingredient, amount, note: '' }))
    return {
      id: `bread-${of}`,
      name: `Bread ${of}`,
      note: '',
      flourWeight: 1000,
      meanings: [],
      keptSettings: [],
      stages: [
        { id: `levain-${of}`, name: 'Levain', lines: linesOf(levain, 0) },
        { id: `dough-${of}`, name: 'Final dough', lines: linesOf(dough, 1) },
      ],
    }
  }
  const formulas = Array.from({ length: count }, (_, i) => formula(i))
  const head = {
    format: 'tarebook workbook',
    version: 1,
    revision: 1,
    mark: 'bench',
    savedAt: '2026-05-01T08:00:00.000Z',
    name: 'Brackwater Mill',
    shelf: formulas.map(({ id }) => id),
    larder: [],
  }
  /** @type {IDBDatabase} */
  const opened = await new Promise((resolve, reject) => {
    const request = indexedDB.open(database, 1)
    request.onupgradeneeded = () => request.result.createObjectStore('workbook')
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })
  await new Promise((resolve, reject) => {
    const transaction = opened.transaction('workbook', 'readwrite')
    const kept = transaction.objectStore('workbook')
    kept.put(head, 'workbook')
    for (const one of formulas) kept.put(one, `formula ${one.id}`)
    transaction.oncomplete = resolve
    transaction.onerror = () => reject(transaction.error)
  })
  opened.close()
}

/** Runs in the page before its own scripts: notes the keys of what is put into a database. */
const noteWrites = `{
  globalThis.written = []
  const { put } = IDBObjectStore.prototype
  IDBObjectStore.prototype.put = function (value, key) {
    globalThis.written.push(String(key))
    return put.call(this, value, key)
  }
}`

/** @param {number} count of formulas on the shelf, all with their readings; runs in the page */
const hasRows = count => `(() => {
  const shelf = document.querySelector('tb-app').shadowRoot.querySelector('tb-shelf').shadowRoot
  return shelf.querySelectorAll('a').length === ${count} && !shelf.querySelector('[data-waits]')
})()`

/** Runs in the page: whether all is saved. */
const isSaved = `document.querySelector('tb-app').kept.status === 'saved'`

/**
 * @param {Page} page the app's
 * @param {string} origin
 * @param {() => Promise<number>} opened ms from the navigation until the grid can be typed in
 * @param {() => Promise<number>} editing types amounts; ms until one is painted, median
 * @returns {Promise<Row[]>}
 */
export async function shelfRows(page, origin, opened, editing) {
  const sizes = [6, 1000]
  const address = /** @param {number} count */ count => `${origin}/?offline=no&database=shelf-of-${count}`
  await page.bringToFront()
  await page.goto(`${origin}/manifest.webmanifest`)
  for (const count of sizes) await page.evaluate(store, `shelf-of-${count}`, count)
  /** @type {number[][]} */
  const times = sizes.map(() => [])
  for (let sample = -2; sample < 15; sample += 1)
    for (const [i, count] of sizes.entries()) {
      await page.goto(address(count))
      const ready = await opened()
      if (sample >= 0) times[i]?.push(ready)
    }
  /** @type {number[]} */
  const presses = []
  await page.evaluateOnNewDocument(noteWrites)
  for (const count of sizes) {
    await page.goto(address(count))
    await opened()
    await page.waitForFunction(hasRows(count), { polling: 100, timeout: 60_000 })
    presses.push(await editing())
  }
  await page.waitForFunction(isSaved, { polling: 50, timeout: 20_000 })
  const written = /** @type {string[]} */ (await page.evaluate('globalThis.written'))
  const formulas = new Set(written.filter(key => key.startsWith('formula '))).size
  const [few = Number.NaN, many = Number.NaN] = times.map(t => t.toSorted((a, b) => a - b)[t.length >> 1])
  const [pressFew = Number.NaN, pressMany = Number.NaN] = presses
  return [
    against('navigation to an editable grid, 1,000 formulas against six', many, few, 1.5),
    against('key press to painted readings, 1,000 formulas against six', pressMany, pressFew, 1.5),
    {
      // Besides it the workbook's head, the steps of undo and what stands in open fields, whatever the number of formulas.
      name: 'formulas written by edits of one among 1,000',
      value: formulas,
      unit: 'formulas',
      budget: 1,
    },
  ]
}

/**
 * @param {string} name
 * @param {number} value
 * @param {number} baseline
 * @param {number} budget
 * @returns {Row}
 */
const against = (name, value, baseline, budget) => ({
  name,
  value,
  unit: 'ms',
  baseline,
  ratio: value / baseline,
  budget,
})
