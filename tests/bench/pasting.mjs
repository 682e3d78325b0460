/** Rows of a table pasted into the grid: until the first of them are painted, and until all are. */

/**
 * @import { Page } from 'puppeteer-core'
 * @import { Row } from './row'
 */

/**
 * Runs in the page: pastes so many rows past the last line of the open formula, as its clipboard would.
 * @param {number} count
 * @returns {Promise<{ first: number, all: number, longest: number }>} ms; `longest`: without a turn for anything else
 */
async function paste(count) {
  const sheet = document.querySelector('tb-app')?.shadowRoot?.querySelector('tb-sheet')?.shadowRoot
  const root = sheet?.querySelector('tb-grid')?.shadowRoot
  if (!root) throw new Error('There is no grid.')
  const last = [...root.querySelectorAll('tr')].findLast(row =>
    row.textContent?.includes('Add an ingredient'),
  )
  const cell = /** @type {HTMLElement | null | undefined} */ (last?.querySelector('[tabindex]'))
  cell?.focus()
  const clipboardData = new DataTransfer()
  const row = (/** @type {number} */ i) => `Seed ${i}\t\t${1 + (i % 90)}\n`
  clipboardData.setData('text/plain', Array.from({ length: count }, (_, i) => row(i)).join(''))
  const began = performance.now()
  let [longest, before, goesOn] = [0, began, true]
  const beat = () => {
    const now = performance.now()
    longest = Math.max(longest, now - before)
    before = now
    if (goesOn) setTimeout(beat)
  }
  beat()
  const options = { clipboardData, bubbles: true, composed: true, cancelable: true }
  root.activeElement?.dispatchEvent(new ClipboardEvent('paste', options))
  const painted = () => new Promise(resolve => requestAnimationFrame(() => setTimeout(resolve)))
  const seeds = () => root.querySelectorAll('tr[data-row] td[data-column="weight"]').length
  const were = seeds()
  while (seeds() === were) await painted()
  const first = performance.now() - began
  while (seeds() < were + count || root.querySelector('[aria-busy]')) await painted()
  goesOn = false
  return { first, all: performance.now() - began, longest }
}

/**
 * @param {Page} page of a workbook that begins with the examples
 * @param {string} origin
 * @param {() => Promise<unknown>} ready resolves when the page can be edited
 * @returns {Promise<Row[]>}
 */
export async function pasteRows(page, origin, ready) {
  /** @type {Row[]} */
  const rows = []
  for (const [count, budget] of /** @type {const} */ ([
    [500, 500],
    [4900, 3000],
  ])) {
    await page.goto(`${origin}/?offline=no&database=paste-${count}`)
    await ready()
    await page.evaluate(() => Object(document.querySelector('tb-app')).furnished) // what is fetched late is there
    const { first, all, longest } = await page.evaluate(paste, count)
    const name = `${count.toLocaleString('en')} rows pasted`
    rows.push({ name: `${name}: until the first are painted`, value: first, unit: 'ms', budget })
    rows.push({ name: `${name}: until all are`, value: all, unit: 'ms' })
    rows.push({ name: `${name}: longest work without a break`, value: longest, unit: 'ms' })
  }
  return rows
}
