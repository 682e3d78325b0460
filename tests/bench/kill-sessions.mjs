/** What somebody does while `kills.mjs` kills page and browser, and how it is told whether anything of it is lost. */

/** @import { Page } from 'puppeteer-core' */

/**
 * @typedef {object} Session
 * @property {string} at the address of its place, behind the `#`; '' for the sheet
 * @property {(page: Page, below: (n: number) => number) => Promise<void>} act does one thing
 * @property {() => { isSaved: boolean } | undefined} look read in the page: what is shown; undefined while it is not there
 * @property {(safe: any, now: any) => boolean} isThere whether what was shown as saved is there, or later
 */

/** What stands in the two fields that are typed in, and whether the page says that it is saved. */
const lookAtSheet = () => {
  const shadow = /** @param {Element | null | undefined} at */ at => at?.shadowRoot
  const app = shadow(document.querySelector('tb-app'))
  const sheet = shadow(app?.querySelector('tb-sheet'))
  const weight = shadow(sheet?.querySelector('tb-flour-weight'))?.querySelector('input')
  const note = shadow(sheet?.querySelector('tb-grow.note'))?.querySelector('textarea')
  if (!weight || !note) return undefined
  const says = shadow(app?.querySelector('tb-head'))?.querySelector('.kept')?.textContent ?? ''
  return { isSaved: says.startsWith('Saved'), weight: Number(weight.defaultValue), note: note.value }
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

/** Somebody types a flour weight and a note. */
export function typing() {
  let next = 2000 // more than the example begins with
  /** @type {string[]} */
  let since = [] // notes typed since something was shown as saved, of which a beginning may be kept by the time of the kill
  /** @type {Session & { safe: () => void }} */
  const session = {
    at: '',
    look: lookAtSheet,
    safe: () => {
      since = []
    },
    act: async (page, below) => {
      next += 1
      if (below(2) === 0) {
        await typeIn(page, 'flour', String(next))
        await page.keyboard.press('Enter')
      } else {
        since.push(`half a thought ${next}`)
        await typeIn(page, 'note', `half a thought ${next}`)
      }
    },
    // What is there is what was saved, or later: numbers only grow.
    isThere: (safe, now) =>
      now.weight >= safe.weight &&
      (now.note === safe.note || (now.note !== '' && since.some(text => text.startsWith(now.note)))),
  }
  return session
}

/** What is ticked off and done at all benches, as the page has it, and what of the step in sight shows a tick. */
const lookAtBench = () => {
  const shadow = /** @param {Element | null | undefined} at */ at => at?.shadowRoot
  const root = document.querySelector('tb-app')
  const app = shadow(root)
  const place = shadow(app?.querySelector('tb-bench-place'))
  const bench = shadow(place?.querySelector('tb-bench'))
  const { bakes = [] } = /** @type {any} */ (root)?.desk?.workbook ?? {}
  const section = bench?.querySelector('.todo')
  if (!section) return undefined
  const step = section.getAttribute('data-key')?.replace(/ \w+$/, '') ?? ''
  const boxes = [...(shadow(bench?.querySelector('tb-bench-weighing'))?.querySelectorAll('.tick') ?? [])]
  const says = shadow(app?.querySelector('tb-head'))?.querySelector('.kept')?.textContent ?? ''
  /** @type {string[]} */
  const done = bakes.flatMap((/** @type {any} */ bake) => [
    ...bake.weighed.map((/** @type {any} */ one) => `${bake.id} weighed ${one.moment} ${one.line}`),
    ...bake.moments.flatMap((/** @type {any} */ one) => (one.at ? [`${bake.id} done ${one.moment}`] : [])),
    ...(bake.finished ? [`${bake.id} finished`] : []),
  ])
  const open = bakes
    .filter((/** @type {any} */ bake) => !bake.finished)
    .map((/** @type {any} */ { id }) => id)
  const ofStep = done.filter(
    one => one.includes(` weighed ${step} `) && open.some((/** @type {string} */ id) => one.startsWith(id)),
  )
  const ticks = boxes.filter(box => box.getAttribute('aria-checked') === 'true').length
  // What is ticked in the data and not on the page, or the other way, is not looked at as saved.
  return { isSaved: says.startsWith('Saved') && ticks === (boxes.length ? ofStep.length : 0), done, ticks }
}

/** Somebody weighs and does one thing after the other at the bench of the first formula. */
export function atTheBench() {
  /** @type {Session & { safe: () => void }} */
  const session = {
    at: 'bench',
    look: lookAtBench,
    safe: () => {},
    act: async (page, below) => {
      const wish = below(4)
      await page.evaluate(skip => {
        const shadow = /** @param {Element | null | undefined} at */ at => at?.shadowRoot
        const app = shadow(document.querySelector('tb-app'))
        const bench = shadow(shadow(app?.querySelector('tb-bench-place'))?.querySelector('tb-bench'))
        const weighing = shadow(bench?.querySelector('tb-bench-weighing'))
        const line = /** @type {HTMLElement | null | undefined} */ (
          weighing?.querySelector('.tick[aria-checked=false]')
        )
        const main = /** @type {HTMLElement | null | undefined} */ (bench?.querySelector('.go .main'))
        const asked = /** @type {HTMLElement | null | undefined} */ (
          shadow(bench?.querySelector('tb-bench-choices'))?.querySelector('dialog[open] button')
        )
        if (asked) asked.click()
        else if (line && !skip) line.click()
        else if (main) main.click()
        else line?.click()
      }, wish === 0)
      // Finished, it is a bake: the next one begins at the bench again.
      await page.evaluate(
        () =>
          new Promise(resolve => {
            setTimeout(() => {
              const { bakes = [] } =
                /** @type {any} */ (document.querySelector('tb-app'))?.desk?.workbook ?? {}
              if (location.hash.startsWith('#bench/bake/')) location.hash = `bench/${bakes[0].formula.id}`
              resolve(undefined)
            }, 20)
          }),
      )
    },
    isThere: (safe, now) => safe.done.every((/** @type {string} */ one) => now.done.includes(one)),
  }
  return session
}
