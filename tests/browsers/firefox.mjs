/** Finds and opens Firefox, which puppeteer drives by WebDriver BiDi: `FIREFOX_PATH`, then the usual places. */
import { homedir } from 'node:os'
import { launch } from 'puppeteer-core'
import { patience } from './patience.mjs'
import { programIn } from './programs.mjs'
import { leaveUnasked } from './seats.mjs'

/**
 * @import { Page } from 'puppeteer-core'
 * @import { Seat, TestPage } from './seats.mjs'
 */

/** @returns {string | undefined} path of the browser's program */
export const findFirefox = () =>
  process.env.FIREFOX_PATH ||
  programIn({
    linux: ['firefox', 'firefox-esr'],
    darwin: ['/Applications', `${homedir()}/Applications`].map(
      f => `${f}/Firefox.app/Contents/MacOS/firefox`,
    ),
    win32: ['Mozilla Firefox\\firefox.exe'],
  })

const preferences = {
  'dom.events.testing.asyncClipboard': true, // the clipboard may be read and written without asking
  'layout.css.prefers-color-scheme.content-override': 1, // light, whatever the desktop
  'ui.useOverlayScrollbars': 1, // take no room, as in the other browsers without a screen
  // The pages of tests come one after the other: one process for all of them, none kept for going back or in reserve.
  'fission.autostart': false,
  'dom.ipc.processCount': 1,
  'dom.ipc.processPrelaunch.enabled': false,
  'browser.sessionhistory.max_total_viewers': 0,
  'browser.sessionstore.interval': 3_600_000, // ms between copies of what is open
  'toolkit.cosmeticAnimations.enabled': false,
}

/**
 * What puppeteer knows of the connection below a page. It is not among its types: BiDi as spoken by puppeteer cannot
 * emulate media yet, so they are set in the browser's own scope.
 * @typedef {{ send(method: string, params: object): Promise<{ result: any }> }} Session
 */

/**
 * @param {Page} page
 * @returns {(expression: string) => Promise<void>} runs it in the browser's own scope
 */
function browserOf(page) {
  const frame = /** @type {{ browsingContext: { userContext: { browser: { session: Session } } } }} */ (
    /** @type {unknown} */ (page.mainFrame())
  )
  const { session } = frame.browsingContext.userContext.browser
  return async expression => {
    const tree = await session.send('browsingContext.getTree', { 'moz:scope': 'chrome' })
    const { result } = await session.send('script.evaluate', {
      expression,
      target: { context: tree.result.contexts[0].context },
      awaitPromise: false,
    })
    if (result.type === 'exception')
      throw new Error(`Firefox: ${expression}: ${result.exceptionDetails.text}`)
  }
}

/**
 * @param {string} executablePath
 * @returns {(origin: string) => Promise<Seat>}
 */
export const firefoxSeats = executablePath => async () => {
  const browser = await launch({
    browser: 'firefox',
    executablePath,
    args: ['--remote-allow-system-access'],
    extraPrefsFirefox: preferences,
    networkEnabled: false, // nobody asks; telling of each file costs as much as the page does
    timeout: patience,
  })
  const page = await browser.newPage()
  page.setDefaultTimeout(patience)
  leaveUnasked(page)
  const inBrowser = browserOf(page)
  /**
   * @param {'prefersColorSchemeOverride' | 'mediumOverride'} name
   * @param {string} value
   */
  const override = (name, value) =>
    inBrowser(`gBrowser.selectedBrowser.browsingContext.top.${name} = ${JSON.stringify(value)}`)
  const takeFocus = 'gBrowser.selectedBrowser.focus()' // Tab in a page's last field has left it
  // WebDriver calls this key by what it types.
  /** @type {<K>(key: K) => K} */
  const named = key => /** @type {typeof key} */ (key === 'Space' ? ' ' : key)
  /** @type {TestPage} */
  const testPage = {
    async goto(url) {
      await page.goto(url)
      await inBrowser(takeFocus)
    },
    url: () => page.url(),
    async setViewport(size) {
      await page.setViewport(size)
      await inBrowser(takeFocus)
    },
    keyboard: {
      type: text => page.keyboard.type(text),
      press: key => page.keyboard.press(named(key)),
      down: key => page.keyboard.down(named(key)),
      up: key => page.keyboard.up(named(key)),
    },
    mouse: page.mouse,
    emulateMediaType: type => override('mediumOverride', !type || type === 'screen' ? '' : type),
    async emulateMediaFeatures(features) {
      const scheme = features?.find(({ name }) => name === 'prefers-color-scheme')?.value
      await override('prefersColorSchemeOverride', scheme || 'none')
    },
  }
  const evaluate = /** @param {string} script */ script => page.evaluate(`(() => {${script}})()`)
  return { page: testPage, evaluate, pids: [browser.process()?.pid ?? 0], close: () => browser.close() }
}
