/** Rows of the built page: its bytes, the time to an editable grid, and key presses until they are painted. */
import { writeFile } from 'node:fs/promises'
import { buildSite } from '../../src/app/build.mjs'
import { serve } from '../../src/app/server.mjs'
import { formulaFile } from './big-formulas.mjs'
import { shelfRows } from './big-shelf.mjs'
import { buildEmptyPage } from './empty-page.mjs'
import { mainThreadOf } from './main-thread.mjs'
import { pasteRows } from './pasting.mjs'
import { sizes } from './sizes.mjs'

/**
 * @import { Browser, ElementHandle, Page } from 'puppeteer-core'
 * @import { Row } from './row'
 */

/** @typedef {{ painted: number, work: number }} Spent ms by the clock until the page is painted, and ms that its main thread worked */

const frame = 1000 / 60 // ms

/** Where the eyes go: functions that the page runs, by the page they are for. */
export const shown = {
  // The readings, as text; empty until the grid beside them can be typed in.
  app: `(() => {
    const app = document.querySelector('tb-app')?.shadowRoot
    const grid = app?.querySelector('tb-sheet')?.shadowRoot?.querySelector('tb-grid')?.shadowRoot
    if (!grid?.querySelector('td[data-column="weight"]')) return ''
    return app.querySelector('tb-tally')?.shadowRoot?.querySelector('dl')?.textContent ?? ''
  })`,
  empty: `(() => document.querySelector('bench-empty')?.shadowRoot?.querySelector('p')?.textContent ?? '')`,
}

/**
 * Runs in the page before its own scripts. Looks after each frame is painted whether what is shown has
 * changed: first from nothing, then from what it was when Enter went down.
 * @param {string} shownBy
 */
const watcher = shownBy => `{
  const shown = ${shownBy}
  const painted = work => requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = work
    port2.postMessage(0)
  })
  const whenOther = (before, done) => painted(() => {
    const now = shown()
    if (now !== '' && now !== before) done()
    else whenOther(before, done)
  })
  whenOther('', () => { globalThis.readyAfter = performance.now() })
  addEventListener('keydown', event => {
    if (event.key !== 'Enter') return
    const before = shown()
    globalThis.paintedAfter = undefined
    whenOther(before, () => { globalThis.paintedAfter = performance.now() - event.timeStamp })
  }, { capture: true })
}`

/**
 * @param {number[]} of
 * @returns {number}
 */
const median = of => of.toSorted((a, b) => a - b)[of.length >> 1] ?? Number.NaN

/**
 * @param {Browser} browser
 * @param {string} shownBy
 */
export async function openPage(browser, shownBy) {
  const page = await browser.newPage()
  await page.setViewport({ width: 1280, height: 900 })
  await page.evaluateOnNewDocument(watcher(shownBy))
  return page
}

/**
 * @param {Page} page
 * @param {'readyAfter' | 'paintedAfter'} what
 * @returns {Promise<number>} ms
 */
export async function timed(page, what) {
  await page.waitForFunction(`globalThis.${what} !== undefined`, { polling: 10, timeout: 20_000 })
  return Number(await page.evaluate(`globalThis.${what}`))
}

/**
 * @param {Page} page the app's
 * @param {Page} empty
 * @param {string} address
 * @param {string} emptyAddress
 * @returns {Promise<Row>}
 */
async function navigation(page, empty, address, emptyAddress) {
  /** @type {number[]} */
  const app = []
  /** @type {number[]} */
  const bare = []
  for (let sample = -3; sample < 21; sample += 1) {
    for (const [which, url, into] of /** @type {const} */ ([
      [page, address, app],
      [empty, emptyAddress, bare],
    ])) {
      await which.bringToFront()
      await which.goto(url)
      const ready = await timed(which, 'readyAfter')
      if (sample >= 0) into.push(ready)
    }
  }
  const [value, baseline] = [median(app), median(bare)]
  const name = 'navigation to an editable grid, against an empty Lit page'
  return { name, value, unit: 'ms', baseline, ratio: value / baseline, budget: 3 }
}

/**
 * Waits for an element behind shadow roots. puppeteer's own `>>>` waits for changes of the document, and
 * what changes inside a shadow root is none.
 * @param {Page} page
 * @param {string[]} path a selector for each shadow root, then one for the element
 */
async function find(page, ...path) {
  const found = await page.waitForFunction(
    (...steps) => {
      /** @type {ParentNode | null | undefined} */
      let root = document
      const last = steps.pop() ?? ''
      for (const step of steps) root = root?.querySelector(step)?.shadowRoot
      return root?.querySelector(last)
    },
    { polling: 'raf', timeout: 20_000 },
    ...path,
  )
  return /** @type {ElementHandle<HTMLInputElement>} */ (found)
}

/**
 * @param {Page} page
 * @param {string} file a formula file, chosen as a baker would
 * @param {number} lines
 * @returns {Promise<Spent>} from the key that adds it to the frame with its readings and its first rows
 */
async function bringIn(page, file, lines) {
  const worked = await mainThreadOf(page)
  await page.bringToFront()
  // Not the button beside it, which takes back what was brought in and says so.
  const button = await page.waitForFunction(() => {
    const head = document.querySelector('tb-app')?.shadowRoot?.querySelector('tb-head')?.shadowRoot
    return [...(head?.querySelectorAll('button') ?? [])].find(b => b.textContent?.trim() === 'Bring in')
  })
  await /** @type {ElementHandle<Element>} */ (button).click()
  const dialog = ['tb-app', 'tb-dialogs', 'tb-bring-in']
  await (await find(page, ...dialog, 'input[type="file"]')).uploadFile(file)
  await find(page, ...dialog, '#understood')
  await (await find(page, ...dialog, 'button.main:not([disabled])')).focus()
  await page.evaluate('globalThis.paintedAfter = undefined')
  const before = await worked()
  await page.keyboard.press('Enter')
  const painted = await timed(page, 'paintedAfter')
  const work = (await worked()) - before
  // The other rows follow after the paint; what is measured next begins when all are there.
  await page.waitForFunction(
    wanted => {
      const app = document.querySelector('tb-app')?.shadowRoot
      const grid = app?.querySelector('tb-sheet')?.shadowRoot?.querySelector('tb-grid')?.shadowRoot
      const cells = grid?.querySelectorAll('td[data-column="wholeDough"]').length ?? 0
      return cells >= wanted && !grid?.querySelector('[aria-busy]')
    },
    { timeout: 60_000 },
    lines,
  )
  return { painted, work }
}

/**
 * Scrolls to an element and waits until it is painted: rows out of sight are nowhere that a pointer could meet.
 * @param {ElementHandle<Element>} element
 */
const intoView = element =>
  element.evaluate(async there => {
    there.scrollIntoView({ block: 'nearest' })
    for (let frames = 0; frames < 2; frames += 1) await new Promise(requestAnimationFrame)
  })

/**
 * Types another percentage into the final dough's water; Enter is still to come.
 * @param {Page} page
 * @param {string} percent
 */
async function typeAmount(page, percent) {
  const cell = await page.evaluateHandle(() => {
    const app = document.querySelector('tb-app')?.shadowRoot
    const grid = app?.querySelector('tb-sheet')?.shadowRoot?.querySelector('tb-grid')?.shadowRoot
    const rows = [...(grid?.querySelectorAll('tr[data-row]') ?? [])]
    const water = rows.findLast(row => row.textContent?.trim().startsWith('Water'))
    return water?.querySelector('[data-column="percent"]') ?? null
  })
  const element = cell.asElement()
  if (!element) throw new Error('The final dough has no line of water.')
  await intoView(/** @type {ElementHandle<Element>} */ (element))
  await /** @type {ElementHandle<Element>} */ (element).click()
  await page.keyboard.type(percent)
  await page.evaluate('globalThis.paintedAfter = undefined')
}

/**
 * Types into the final dough's water, again and again.
 * @param {Page} page
 * @returns {Promise<Spent>} from Enter to the frame with the new readings, medians
 */
export async function editing(page) {
  await page.bringToFront()
  const worked = await mainThreadOf(page)
  /** @type {number[]} */
  const times = []
  /** @type {number[]} */
  const works = []
  for (let sample = -5; sample < 41; sample += 1) {
    await typeAmount(page, String(60 + ((sample + 50) % 19)))
    const before = await worked()
    await page.keyboard.press('Enter')
    const time = await timed(page, 'paintedAfter')
    const work = (await worked()) - before
    if (sample < 0) continue
    times.push(time)
    works.push(work)
  }
  return { painted: median(times), work: median(works) }
}

/**
 * @param {Page} page the empty one
 * @returns {Promise<number>} ms
 */
async function emptyKeyPress(page) {
  await page.bringToFront()
  await (await find(page, 'bench-empty', 'input')).click()
  /** @type {number[]} */
  const times = []
  for (let sample = -5; sample < 41; sample += 1) {
    await page.keyboard.type('70')
    await page.evaluate('globalThis.paintedAfter = undefined')
    await page.keyboard.press('Enter')
    const time = await timed(page, 'paintedAfter')
    if (sample >= 0) times.push(time)
  }
  return median(times)
}

/**
 * @param {Browser} browser
 * @param {string} folder for builds
 * @returns {Promise<Row[]>}
 */
export async function pageRows(browser, folder) {
  const { outdir, files } = await buildSite({ outdir: `${folder}/site` })
  const server = await serve(outdir, 0)
  const emptyServer = await serve(await buildEmptyPage(folder), 0)
  const origin = `http://localhost:${server.port}`
  try {
    const page = await openPage(browser, shown.app)
    const empty = await openPage(browser, shown.empty)
    const row = await navigation(
      page,
      empty,
      `${origin}/?offline=no&database=bench`,
      `http://localhost:${emptyServer.port}/`,
    )
    // What the page fetches after that, when it has nothing else to do, is not needed for it.
    const ready = await timed(page, 'readyAfter')
    const fetched = /** @type {string[]} */ (
      await page.evaluate(
        until =>
          performance
            .getEntriesByType('resource')
            .filter(e => e.startTime < until)
            .map(e => new URL(e.name).pathname.slice(1)),
        ready,
      )
    )
    const bare = await emptyKeyPress(empty)
    /** @type {Row[]} */
    const presses = []
    const unit = 'ms'
    /** @param {number} lines */
    const written = async lines => {
      const file = `${folder}/${lines}.csv`
      await writeFile(file, formulaFile(`Bread of ${lines} lines`, lines))
      return file
    }
    const arrival = await bringIn(page, await written(2000), 2000)
    const arrived = '2,000 lines brought in until they are painted'
    presses.push({ name: arrived, value: arrival.painted, unit, budget: 250 })
    presses.push({ name: `${arrived}: work of the main thread`, value: arrival.work, unit, budget: 250 })
    // A key goes down anywhere between two frames, also on the empty page: what is allowed comes on top.
    let [baseline, words] = [bare, 'an empty page’s and a frame']
    let few = Number.NaN // the work at 30 lines
    for (const [lines, more, next] of /** @type {const} */ ([
      [30, frame, 'those of 30 lines and a quarter of a frame'],
      [500, frame / 4, 'those of 30 lines and two frames'],
      [5000, 2 * frame, ''],
    ])) {
      await bringIn(page, await written(lines), lines)
      const { painted, work } = await editing(page)
      const name = `key press to painted readings, ${lines} lines; ${words}`
      presses.push({ name, value: painted, unit, baseline, budget: baseline + more })
      const named = { name: `${name}: work of the main thread`, value: work, unit }
      presses.push(lines === 30 ? named : { ...named, baseline: few, budget: few + more })
      if (lines === 30) [baseline, few] = [painted, work]
      words = next
    }
    const shelf = await shelfRows(
      page,
      origin,
      () => timed(page, 'readyAfter'),
      async () => (await editing(page)).painted,
    )
    const pasted = await pasteRows(page, origin, () => timed(page, 'readyAfter'))
    const bytes = await sizes(outdir, files, ['index.html', ...new Set(fetched)])
    return [...bytes, row, ...presses, ...shelf, ...pasted]
  } finally {
    server.close()
    emptyServer.close()
  }
}
