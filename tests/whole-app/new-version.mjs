/**
 * Two tabs hold one version of the page when the host gets another, and none of the first is there any more. One tab takes
 * the new version; in the other, parts of the page that are fetched for the first time then have to be there still.
 */
import { cp, mkdtemp, readdir, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { launch } from 'puppeteer-core'
import { buildSite } from '../../src/app/build.mjs'
import { serve } from '../../src/app/server.mjs'
import { browserArguments, findBrowser } from '../browsers/chromium.mjs'
import { patience } from '../browsers/patience.mjs'

/** @import { Page } from 'puppeteer-core' */

const folder = await mkdtemp(join(tmpdir(), 'tarebook-versions-'))
const site = join(folder, 'site')
await buildSite({ outdir: site, minify: false }) // so that its files have other names than those of the next
// Built already where the tests run, or now.
const next = process.env.BUILT_SITE ?? (await buildSite({ outdir: join(folder, 'next') })).outdir
const files = await readdir(next)
const { port, close } = await serve(site, 0)
const address = `http://localhost:${port}/index.html?database=versions`
const browser = await launch({
  executablePath: findBrowser(),
  args: browserArguments,
  defaultViewport: { width: 1280, height: 860 },
})

/**
 * The first button that says this, through all shadow roots.
 * @param {Page} page
 * @param {string} words
 */
const click = (page, words) =>
  page.locator(`>>> button::-p-text(${words})`).setTimeout(patience).setVisibility('visible').click()

/** @param {Page} page */
const main = page => page.$eval('script[src*="main-"]', script => script.getAttribute('src'))

try {
  const tab = async () => {
    const page = await (await browser.createBrowserContext()).newPage()
    page.setDefaultTimeout(patience)
    return page
  }
  const old = await tab()
  const other = await old.browserContext().newPage()
  for (const page of [old, other]) {
    await page.goto(address)
    await page.evaluate(async () => void (await navigator.serviceWorker.ready))
  }
  // Loaded by the worker, as on the second day.
  await old.reload()
  await old.waitForSelector('>>> td')
  await other.reload()
  const before = await main(old)

  await rm(site, { recursive: true })
  await cp(next, site, { recursive: true })
  await other.bringToFront()
  await other.evaluate(async () => void (await (await navigator.serviceWorker.ready).update()))
  await other.waitForSelector('>>> ::-p-text(A new version of Tarebook is ready.)')
  await Promise.all([other.waitForNavigation(), click(other, 'Reload')])
  const after = await main(other)
  if (!after || after === before || !files.includes(after))
    throw new Error(`${after} is not the new version.`)

  await old.bringToFront()
  if ((await main(old)) !== before) throw new Error('The old tab was loaded anew without being asked.')
  await click(old, 'Larder')
  await old.waitForSelector('tb-app >>> tb-larder >>> dialog[open]')
  await old.waitForSelector('>>> ::-p-text(A new version of Tarebook is ready.)')
  console.log('The old tab has its late parts, and says that there is a new version.')
} finally {
  await browser.close()
  close()
  await rm(folder, { recursive: true, force: true, maxRetries: 5 })
}
process.exit()
