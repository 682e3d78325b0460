/**
 * Prints the sheet of every example as a baker's browser does, and says what came of it: pages, and how a stage stands on
 * them. One line of JSON for each paper of each formula.
 */
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { launch } from 'puppeteer-core'
import { buildSite } from '../../src/app/build.mjs'
import { serve } from '../../src/app/server.mjs'
import { browserArguments, findBrowser } from '../browsers/chromium.mjs'
import { patience } from '../browsers/patience.mjs'

const folder = await mkdtemp(join(tmpdir(), 'tarebook-printed-'))
// Built already where the tests run, or now.
const site = process.env.BUILT_SITE ?? (await buildSite({ outdir: join(folder, 'site') })).outdir
const { port, close } = await serve(site, 0)
const browser = await launch({
  executablePath: findBrowser(),
  args: browserArguments,
  defaultViewport: { width: 1280, height: 860 },
})
const margin = 16 // millimetres, as the styles of the page say
const pixels = 96 / 25.4
const heights = { a4: 297, letter: 279.4 } // millimetres

try {
  const page = await browser.newPage()
  page.setDefaultTimeout(patience)
  await page.goto(`http://localhost:${port}/index.html?offline=no&database=printed`)
  await page.waitForSelector('>>> td')
  const formulas = await page.$$eval('tb-app >>> a[href^="#"]', links =>
    links.map(link => ({ address: link.getAttribute('href'), name: link.textContent?.trim() ?? '' })),
  )
  for (const { address, name } of formulas) {
    await page.evaluate(to => {
      location.hash = to ?? ''
    }, address)
    await page.waitForFunction(
      is => document.title.split(' · ')[0] === is.slice(0, document.title.indexOf(' · ')),
      {},
      name,
    )
    // What it is on paper is fetched with what else it can do, and what stands beneath the grid follows it.
    await page.waitForFunction(() => {
      const app = document.querySelector('tb-app')?.shadowRoot
      const sheet = app?.querySelector('tb-sheet')?.shadowRoot
      const grid = sheet?.querySelector('tb-grid')?.shadowRoot
      const tally = app?.querySelector('tb-tally')?.shadowRoot
      return (
        sheet?.querySelector('tb-cautions')?.shadowRoot?.querySelector('section') &&
        tally?.querySelector('tb-remarks')?.shadowRoot?.querySelector('p') &&
        [grid, tally].every(root =>
          [...(root?.adoptedStyleSheets.at(-1)?.cssRules ?? [])].some(
            rule => rule instanceof CSSMediaRule && rule.conditionText === 'print',
          ),
        )
      )
    })
    for (const [paper, high] of Object.entries(heights)) {
      const format = /** @type {'a4' | 'letter'} */ (paper)
      const pdf = Buffer.from(await page.pdf({ preferCSSPageSize: true, format }))
      const pages = pdf.toString('latin1').match(/\/Type \/Page\b(?!s)/g)?.length ?? 0
      await page.emulateMediaType('print')
      const stages = await page.$$eval('tb-app >>> tbody', groups =>
        groups.map(group => ({
          inside: getComputedStyle(group).breakInside,
          height: group.getBoundingClientRect().height,
        })),
      )
      const hidden = await page.$$eval('tb-app >>> :is(tb-method, tb-head, tb-shelf)', elements =>
        elements.every(element => !element.checkVisibility()),
      )
      await page.emulateMediaType() // a page that is emulated prints as it is emulated
      console.log(JSON.stringify({ name, paper, pages, stages, hidden, room: (high - 2 * margin) * pixels }))
    }
  }
} finally {
  await browser.close()
  close()
  await rm(folder, { recursive: true, force: true, maxRetries: 5 })
}
process.exit()
