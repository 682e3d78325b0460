/**
 * Kills the page and the browser while somebody types, and looks whether anything is lost that was shown as saved:
 * `node tests/bench/kills.mjs [times] [seed]`, a thousand times unless otherwise said. Chromium only.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { launch } from 'puppeteer-core'
import { buildSite } from '../../src/app/build.mjs'
import { serve } from '../../src/app/server.mjs'
import { browserArguments, findBrowser, onePage } from '../browsers/chromium.mjs'
import { patience } from '../browsers/patience.mjs'

/** @import { Browser, Page } from 'puppeteer-core' */
/** @typedef {{ weight: number, note: string }} Shown */

const times = Number(process.argv[2] ?? 1000)
const seed = Number(process.argv[3] ?? 1)
const browserEach = 6 // of so many kills one takes the whole browser

/** mulberry32, public domain, as in tests/random.ts. */
let state = seed >>> 0
const below = /** @param {number} n */ n => {
  state = (state + 0x6d2b79f5) >>> 0
  let t = Math.imul(state ^ (state >>> 15), state | 1)
  t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
  return Math.floor((((t ^ (t >>> 14)) >>> 0) / 4294967296) * n)
}
const pause = /** @param {number} ms */ ms => new Promise(resolve => setTimeout(resolve, ms))

/** What stands in the two fields that are typed in, and whether the page says that it is saved. */
const look = () => {
  const shadow = /** @param {Element | null | undefined} at */ at => at?.shadowRoot
  const app = shadow(document.querySelector('tb-app'))
  const sheet = shadow(app?.querySelector('tb-sheet'))
  const weight = shadow(sheet?.querySelector('tb-flour-weight'))?.querySelector('input')
  const note = shadow(sheet?.querySelector('tb-grow.note'))?.querySelector('textarea')
  if (!weight || !note) return undefined
  const says = shadow(app?.querySelector('tb-head'))?.querySelector('.kept')?.textContent ?? ''
  return { isSaved: says.startsWith('Saved'), weight: Number(weight.defaultValue), note: note.value }
}

/** @param {Page} page */
async function shown(page) {
  for (const end = Date.now() + patience; Date.now() < end; ) {
    const now = await page.evaluate(look)
    if (now) return now
    await pause(25)
  }
  throw new Error('The page shows no sheet.')
}

/**
 * @param {Page} page
 * @param {string} field as its text is kept under
 * @param {string} text
 */
async function typeIn(page, field, text) {
  await page.evaluate(name => {
    const host = name === 'note' ? 'tb-grow.note' : 'tb-flour-weight'
    const sheet = document.querySelector('tb-app')?.shadowRoot?.querySelector('tb-sheet')
    const found = sheet?.shadowRoot?.querySelector(host)?.shadowRoot?.querySelector(`[data-typed="${name}"]`)
    if (found instanceof HTMLInputElement || found instanceof HTMLTextAreaElement) {
      found.focus()
      found.select()
    }
  }, field)
  await page.keyboard.type(text)
}

const folder = mkdtempSync(join(tmpdir(), 'tarebook-kills-'))
const site = process.env.BUILT_SITE ?? join(folder, 'site')
const program = findBrowser()
if (!process.env.BUILT_SITE) await buildSite({ outdir: site })
const { port, close } = await serve(site, 0)
const address = `http://localhost:${port}/index.html?offline=no&database=kills`
const open = () =>
  launch({
    executablePath: program,
    userDataDir: join(folder, 'profile'),
    args: [...browserArguments, ...onePage],
    timeout: patience,
  })

/** @type {Browser} */
let browser = await open()
const counts = { kills: 0, ofTheBrowser: 0, seenSaved: 0, lost: 0 }
let next = 2000 // more than the example begins with
try {
  let page = await browser.newPage()
  await page.goto(address)
  /** @type {Shown} */
  let safe = await shown(page)
  /** @type {string[]} */
  let since = [] // notes typed since then, of which a beginning may be kept by the time of the kill
  while (counts.kills < times) {
    // Three things are done; after each, what is shown as saved has to be there whatever happens.
    for (let edits = 1 + below(3); edits > 0; edits--) {
      next += 1
      if (below(2) === 0) {
        await typeIn(page, 'flour', String(next))
        await page.keyboard.press('Enter')
      } else {
        since.push(`half a thought ${next}`)
        await typeIn(page, 'note', `half a thought ${next}`)
      }
      for (let looks = below(30); looks > 0; looks--) {
        const { isSaved, weight, note } = await shown(page)
        if (isSaved) {
          safe = { weight, note }
          since = []
          counts.seenSaved += 1
          break
        }
        await pause(20)
      }
    }
    await pause(below(60))
    counts.kills += 1
    if (counts.kills % browserEach === 0) {
      counts.ofTheBrowser += 1
      const { pid } = browser.process() ?? {}
      const gone = new Promise(resolve => browser.process()?.once('exit', resolve))
      if (pid) process.kill(pid, 'SIGKILL')
      await gone
      rmSync(join(folder, 'profile', 'SingletonLock'), { force: true })
      browser = await open()
    } else {
      const session = await page.createCDPSession()
      const crashed = new Promise(resolve => page.once('error', resolve))
      await Promise.race([session.send('Page.crash').catch(() => {}), crashed, pause(500)])
      void page.close().catch(() => {})
    }
    page = await browser.newPage()
    await page.goto(address)
    // What is there is what was saved, or later: numbers only grow.
    let now = await shown(page)
    const isThere = () =>
      now.weight >= safe.weight &&
      (now.note === safe.note || (now.note !== '' && since.some(text => text.startsWith(now.note))))
    for (let tries = 0; tries < 200 && !isThere(); tries++) {
      await pause(25) // what was typed comes back into its field a moment after the sheet
      now = await shown(page)
    }
    if (!isThere()) {
      counts.lost += 1
      console.log(`LOST at kill ${counts.kills} of seed ${seed}: ${JSON.stringify({ safe, now })}`)
    }
    safe = { weight: now.weight, note: now.note }
    since = []
  }
} finally {
  await browser.close().catch(() => {})
  close()
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 })
}
console.log(`kills, seed ${seed}: ${JSON.stringify(counts)}`)
process.exit(counts.lost === 0 ? 0 : 1)
