/**
 * Prints the sheet of every example as a baker's browser does, and says what came of it: pages, and how a stage stands on
 * them. One line of JSON for each paper of each formula.
 */
import { pagesOn, printing } from './printing.mjs'

const margin = 16 // millimetres, as the styles of the page say
const pixels = 96 / 25.4
const heights = { a4: 297, letter: 279.4 } // millimetres

await printing(async function* (page) {
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
      const pages = await pagesOn(page, format)
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
      yield { name, paper, pages, stages, hidden, room: (high - 2 * margin) * pixels }
    }
  }
})
