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
  const grid = app?.querySelector('tb-sheet')?.shadowRoot?.querySelector('tb-grid')?.shadowRoot
  return !trouble && grid?.querySelector('td') ? 'works' : ''
}

/** @type {[what: string, before: (page: Page) => Promise<unknown>, address: string][]} */
const cases = [
  ...missing.map(
    part =>
      /** @type {[string, (page: Page) => Promise<unknown>, string]} */ ([
        `without ${part}`,
        page => page.evaluateOnNewDocument(takeAway, part),
        '',
      ]),
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
  ['a stray % in the address', async () => {}, '#50%'],
  ['a script that is not there', page => page.setRequestInterception(true), ''],
]

const folder = mkdtempSync(join(tmpdir(), 'tarebook-missing-'))
const program = findBrowser()
await buildSite({ outdir: join(folder, 'site') })
const { port, close } = await serve(join(folder, 'site'), 0)
const browser = await launch({ executablePath: program, args: browserArguments })
let faults = 0
try {
  let at = 0
  const one = async () => {
    for (let number = at++; number < cases.length; number = at++) {
      const [what, before, hash] = cases[number] ?? ['', async () => {}, '']
      const page = await browser.newPage()
      page.on('request', request => {
        if (!request.isInterceptResolutionHandled() && page.listenerCount('request') > 0)
          void (/\/main-[^/]*\.js$/.test(request.url()) ? request.abort() : request.continue()).catch(
            () => {},
          )
      })
      await before(page)
      await page.goto(`http://localhost:${port}/index.html?offline=no&database=without-${number}${hash}`)
      const began = Date.now()
      let says = ''
      while (!says && Date.now() - began < 20_000) {
        says = await page.evaluate(shown).catch(() => '')
        if (!says) await new Promise(resolve => setTimeout(resolve, 50))
      }
      if (!says) faults += 1
      console.log(`${what}: ${says || 'SAYS NOTHING'}, ${((Date.now() - began) / 1000).toFixed(1)} s`)
      await page.close()
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
