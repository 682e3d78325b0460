/**
 * Kills the page and the browser while somebody types, or with `bench` while they weigh at the bench, and looks whether anything is
 * lost that was shown as saved: `node tests/bench/kills.mjs [times] [seed] [bench]`, a thousand times unless otherwise said. Chromium only.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { launch } from 'puppeteer-core'
import { buildSite } from '../../src/app/build.mjs'
import { serve } from '../../src/app/server.mjs'
import { browserArguments, compilesOnce, findBrowser, onePage } from '../browsers/chromium.mjs'
import { patience } from '../browsers/patience.mjs'
import { atTheBench, typing } from './kill-sessions.mjs'

/** @import { Browser, Page } from 'puppeteer-core' */

const times = Number(process.argv[2] ?? 1000)
const seed = Number(process.argv[3] ?? 1)
const session = process.argv[4] === 'bench' ? atTheBench() : typing()
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

/** @param {Page} page */
async function shown(page) {
  for (const end = Date.now() + patience; Date.now() < end; ) {
    const now = await page.evaluate(session.look)
    if (now) return now
    await pause(25)
  }
  throw new Error('The page does not show its place.')
}

/**
 * Resolves when what was left in fields stands there again: until then the page is not what it is about to be.
 * @param {Page} page
 */
const isFurnished = page =>
  page.evaluate(() => /** @type {any} */ (document.querySelector('tb-app')).furnished)

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
    args: [...browserArguments, ...onePage, ...compilesOnce],
    timeout: patience,
  })

/** @type {Browser} */
let browser = await open()
const counts = { kills: 0, ofTheBrowser: 0, seenSaved: 0, lost: 0 }

/** Opens the page at the place of the session. */
async function openPage() {
  const page = await browser.newPage()
  await page.goto(address)
  if (!session.at) return page
  const formula = await page.waitForFunction(
    () => /** @type {any} */ (document.querySelector('tb-app'))?.desk?.workbook.formulas[0]?.id,
    { timeout: patience },
  )
  await page.evaluate(
    (at, id) => {
      location.hash = `${at}/${id}`
    },
    session.at,
    await formula.jsonValue(),
  )
  return page
}

try {
  let page = await openPage()
  let safe = await shown(page)
  while (counts.kills < times) {
    // Three things are done; after each, what is shown as saved has to be there whatever happens.
    for (let edits = 1 + below(3); edits > 0; edits--) {
      await session.act(page, below)
      for (let looks = below(30); looks > 0; looks--) {
        const now = await shown(page)
        if (now.isSaved) {
          safe = now
          session.safe()
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
    page = await openPage()
    let now = await shown(page)
    await isFurnished(page)
    now = await shown(page)
    const isThere = () => session.isThere(safe, now)
    for (let tries = 0; tries < 200 && !isThere(); tries++) {
      await pause(25)
      now = await shown(page)
    }
    if (!isThere()) {
      counts.lost += 1
      console.log(`LOST at kill ${counts.kills} of seed ${seed}: ${JSON.stringify({ safe, now })}`)
    }
    safe = now
    session.safe()
  }
} finally {
  await browser.close().catch(() => {})
  close()
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 })
}
console.log(`kills, seed ${seed}: ${JSON.stringify(counts)}`)
process.exit(counts.lost === 0 ? 0 : 1)
