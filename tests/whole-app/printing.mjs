/** The built app in a browser of its own, to be printed. */
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { launch } from 'puppeteer-core'
import { buildSite } from '../../src/app/build.mjs'
import { serve } from '../../src/app/server.mjs'
import { browserArguments, findBrowser } from '../browsers/chromium.mjs'
import { patience } from '../browsers/patience.mjs'

/** @import { Page } from 'puppeteer-core' */

/**
 * Opens the app with its examples, does the work, says each thing that it gives as a line of JSON, and ends the process.
 * @param {(page: Page) => AsyncGenerator<object>} work
 */
export async function printing(work) {
  const folder = await mkdtemp(join(tmpdir(), 'tarebook-printed-'))
  // Built already where the tests run, or now.
  const site = process.env.BUILT_SITE ?? (await buildSite({ outdir: join(folder, 'site') })).outdir
  const { port, close } = await serve(site, 0)
  const browser = await launch({
    executablePath: findBrowser(),
    args: browserArguments,
    defaultViewport: { width: 1280, height: 860 },
  })
  try {
    const page = await browser.newPage()
    page.setDefaultTimeout(patience)
    await page.goto(`http://localhost:${port}/index.html?offline=no&database=printed`)
    await page.waitForSelector('>>> td')
    for await (const said of work(page)) console.log(JSON.stringify(said))
  } finally {
    await browser.close()
    close()
    await rm(folder, { recursive: true, force: true, maxRetries: 5 })
  }
  process.exit()
}

/**
 * How many pages it comes to on paper.
 * @param {Page} page
 * @param {'a4' | 'letter'} format
 */
export async function pagesOn(page, format) {
  const pdf = Buffer.from(await page.pdf({ preferCSSPageSize: true, format }))
  return pdf.toString('latin1').match(/\/Type \/Page\b(?!s)/g)?.length ?? 0
}
