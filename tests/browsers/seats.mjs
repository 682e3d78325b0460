/**
 * Places for test files to run in: each a page in a browser process of its own, and so with a focus, a clipboard and
 * stored data of its own. Real keys go to the page that has the focus, hence one page a process.
 */

import { busy } from './processor.mjs'

/**
 * @import { BrowserLauncher } from '@web/test-runner-core'
 * @import { KeyInput, MediaFeature, MouseButton } from 'puppeteer-core'
 * @import { Turns } from './turns.mjs'
 */

/**
 * What the tests' commands ask of a page, in puppeteer's words.
 * @typedef {object} TestPage
 * @property {(url: string) => Promise<unknown>} goto
 * @property {() => string} url
 * @property {(size: { width: number, height: number }) => Promise<void>} setViewport
 * @property {(type?: string) => Promise<void>} emulateMediaType
 * @property {(features?: MediaFeature[]) => Promise<void>} emulateMediaFeatures
 * @property {{
 *   type(text: string): Promise<void>,
 *   press(key: KeyInput): Promise<void>,
 *   down(key: KeyInput): Promise<void>,
 *   up(key: KeyInput): Promise<void>,
 * }} keyboard
 * @property {{
 *   move(x: number, y: number): Promise<void>,
 *   click(x: number, y: number, options?: { button?: MouseButton }): Promise<void>,
 *   down(options?: { button?: MouseButton }): Promise<void>,
 *   up(options?: { button?: MouseButton }): Promise<void>,
 *   reset(): Promise<void>,
 * }} mouse
 */
/**
 * @typedef {object} Seat
 * @property {TestPage} page
 * @property {(script: string) => Promise<any>} evaluate runs the body of a function in the page
 * @property {readonly number[]} pids of its processes, without those that they started
 * @property {() => Promise<void>} close
 */

/**
 * A test that has ended leaves its page whatever was typed there: the page asks, and nobody else would answer.
 * @param {import('puppeteer-core').Page} page
 */
export const leaveUnasked = page => page.on('dialog', dialog => void dialog.accept())

/**
 * @param {string} name of the browser
 * @param {number} concurrency how many pages run at once, each when it is its turn
 * @param {Turns} turns
 * @param {(origin: string) => Promise<Seat>} open where pages of that origin may use the clipboard
 * @param {object} told
 * @param {(id: string) => Promise<void>} told.begins before a page waits for its turn
 * @param {(id: string, ms: number) => Promise<void>} told.worked how long a page kept a processor busy, and opening the browser with none
 * @returns {BrowserLauncher & { getPage(id: string): TestPage }}
 */
export function launcherOf(name, concurrency, turns, open, { begins, worked }) {
  /** @type {Set<Seat>} */
  const all = new Set()
  /** @type {Seat[]} */
  const free = []
  /** @type {Map<string, Seat>} */
  const taken = new Map()
  /** @type {Map<string, number>} how long a seat's processes had been busy when a file began */
  const before = new Map()

  /** @param {string} url */
  const newSeat = async url => {
    try {
      const seat = await open(new URL(url).origin)
      all.add(seat)
      await worked('', busy(seat.pids))
      return seat
    } catch (error) {
      turns.giveBack()
      throw error
    }
  }

  /** @param {string} id */
  const seatOf = id => {
    const seat = taken.get(id)
    if (!seat) throw new Error(`${name} has no page for ${id}.`)
    return seat
  }

  return {
    name,
    type: 'puppeteer', // the commands know what to do with such a page
    concurrency,
    async startSession(id, url) {
      await begins(id)
      await turns.take()
      const seat = free.pop() ?? (await newSeat(url))
      taken.set(id, seat)
      before.set(id, busy(seat.pids))
      await seat.page.setViewport({ width: 800, height: 600 })
      await seat.page.goto(url)
    },
    isActive: id => taken.has(id),
    getBrowserUrl: id => seatOf(id).page.url(),
    getPage: id => seatOf(id).page,
    /** What still runs on the page ends with it. A page that cannot leave is not used again. */
    async stopSession(id) {
      const seat = seatOf(id)
      taken.delete(id)
      try {
        await seat.page.goto('about:blank')
        await seat.page.emulateMediaType()
        await seat.page.emulateMediaFeatures()
        free.push(seat)
      } finally {
        await worked(id, busy(seat.pids) - (before.get(id) ?? 0))
        turns.giveBack()
      }
      return {}
    },
    async startDebugSession() {
      throw new Error('Tests are not debugged here.')
    },
    async stop() {
      await Promise.all([...all].map(seat => seat.close()))
    },
  }
}
