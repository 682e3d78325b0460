/** Opens the built page in Chromium with one part of the browser taken away, or not answering, for each in turn. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { launch } from 'puppeteer-core'
import { buildSite } from '../../src/app/build.mjs'
import { serve } from '../../src/app/server.mjs'
import { browserArguments, findBrowser } from '../browsers/chromium.mjs'

/** @import { Page } from 'puppeteer-core' */

const missing = [
  'navigator.locks',
  'navigator.serviceWorker',
  'navigator.storage',
  'navigator.language',
  'crypto.randomUUID',
  'crypto',
  'indexedDB',
  'localStorage',
  'BroadcastChannel',
  'structuredClone',
  'customElements',
  'CSSStyleSheet',
  'CSS',
  'Intl',
  'ResizeObserver',
  'IntersectionObserver',
  'matchMedia',
  'requestIdleCallback',
  'requestAnimationFrame',
  'visualViewport',
  'HTMLDialogElement',
  'CompressionStream',
  'Worker',
  'URLSearchParams',
  'AbortController',
  'performance',
  'reportError',
  'history',
]
const atOnce = 6
let served = 0 // the port
const base = () => `http://localhost:${served}/`

/** @param {string} path */
function takeAway(path) {
  const names = path.split('.')
  const name = names.pop() ?? ''
  /** @type {object} */
  let of = window
  for (const step of names) of = Reflect.get(of, step)
  for (let at = of; at; at = Object.getPrototypeOf(at))
    if (Object.hasOwn(at, name)) Object.defineProperty(at, name, { value: undefined, configurable: true })
}

/** What the page shows in the end: the sheet, or a sentence and a way to what is stored. */
function shown() {
  const trouble = document.querySelector('.trouble')
  if (trouble && getComputedStyle(trouble).visibility === 'visible')
    return trouble.querySelector('a[href="rescue.html"]') ? 'says that it has not started' : ''
  const app = document.querySelector('tb-app')?.shadowRoot
  const empty = app?.querySelector('tb-empty-shelf')?.shadowRoot
  if (empty?.querySelector('a[href^="rescue.html"]')) return 'says that nothing could be read'
  const notices = app?.querySelector('tb-notices')?.shadowRoot?.textContent ?? ''
  if (notices.includes('There was a workbook here')) return 'says that a workbook is gone'
  const grid = app?.querySelector('tb-sheet')?.shadowRoot?.querySelector('tb-grid')?.shadowRoot
  return !trouble && grid?.querySelector('td') ? 'works' : ''
}

/**
 * Makes a database as it may be found, of a version and without its store, before the page is opened.
 * @param {Page} page
 * @param {string} database
 * @param {number} version
 */
async function make(page, database, version) {
  await page.goto(`${base()}rescue.html?database=none`)
  await page.evaluate(
    (name, number) =>
      new Promise(resolve => {
        const opening = indexedDB.open(name, number)
        opening.onsuccess = () => {
          opening.result.close()
          resolve(undefined)
        }
      }),
    database,
    version,
  )
}

/** @typedef {[what: string, before: (page: Page, database: string) => Promise<unknown>, hash: string, says?: string]} Case */

/** @type {Case[]} */
const cases = [
  ...missing.map(
    part => /** @type {Case} */ ([`without ${part}`, page => page.evaluateOnNewDocument(takeAway, part), '']),
  ),
  [
    'storage that never answers',
    page =>
      page.evaluateOnNewDocument(() => {
        IDBFactory.prototype.open = () => /** @type {IDBOpenDBRequest} */ ({})
      }),
    '',
  ],
  [
    'locks that never answer',
    page =>
      page.evaluateOnNewDocument(() => {
        LockManager.prototype.request = () => new Promise(() => {})
      }),
    '',
  ],
  [
    'a language that is none',
    page =>
      page.evaluateOnNewDocument(() =>
        Object.defineProperty(navigator, 'language', { value: 'en-US@posix', configurable: true }),
      ),
    '',
  ],
  ['a stray % in the address', async () => {}, '#50%', 'works'],
  [
    'a database of a later version',
    (page, name) => make(page, name, 2),
    '',
    'says that nothing could be read',
  ],
  [
    'a database without its store',
    (page, name) => make(page, name, 1),
    '',
    'says that nothing could be read',
  ],
  [
    'a database that the browser has dropped',
    async (page, name) => {
      await page.goto(`${base()}rescue.html?database=none`)
      const was = JSON.stringify({ savedAt: '2026-11-28T04:00:00.000Z', formulas: 12 })
      await page.evaluate((key, text) => localStorage.setItem(key, text), `tarebook was here ${name}`, was)
    },
    '',
    'says that a workbook is gone',
  ],
  ['a script that is not there', page => page.setRequestInterception(true), ''],
]

const folder = mkdtempSync(join(tmpdir(), 'tarebook-missing-'))
const program = findBrowser()
await buildSite({ outdir: join(folder, 'site') })
const { port, close } = await serve(join(folder, 'site'), 0)
served = port
const browser = await launch({ executablePath: program, args: browserArguments })
let faults = 0
try {
  let at = 0
  const one = async () => {
    for (let number = at++; number < cases.length; number = at++) {
      const [what, before, hash, wanted] = cases[number] ?? ['', async () => {}, '']
      const database = `without-${number}`
      const window = await browser.createBrowserContext() // of its own, or the page is hidden and nothing moves in it
      const page = await window.newPage()
      page.on('request', request => {
        if (!request.isInterceptResolutionHandled() && page.listenerCount('request') > 0)
          void (/\/main-[^/]*\.js$/.test(request.url()) ? request.abort() : request.continue()).catch(
            () => {},
          )
      })
      await before(page, database)
      await page.goto(`${base()}index.html?offline=no&database=${database}${hash}`)
      const began = Date.now()
      let says = ''
      const isEnough = () => says !== '' && (wanted === undefined || says === wanted)
      while (!isEnough() && Date.now() - began < 20_000) {
        says = await page.evaluate(shown).catch(() => '')
        if (!isEnough()) await new Promise(resolve => setTimeout(resolve, 50))
      }
      if (!isEnough()) faults += 1
      console.log(`${what}: ${says || 'SAYS NOTHING'}, ${((Date.now() - began) / 1000).toFixed(1)} s`)
      await window.close()
    }
  }
  await Promise.all(Array.from({ length: atOnce }, one))
} finally {
  await browser.close()
  close()
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 })
}
console.log(`parts taken away: ${cases.length}, without a sentence: ${faults}`)
process.exit(faults === 0 ? 0 : 1)
