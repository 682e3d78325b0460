/**
 * Finds and opens a Chromium-family browser for the tests and measurements: `CHROME_PATH`, then the usual places
 * of Chromium, Chrome and Edge; on Debian or Ubuntu as root it installs the `chromium` package.
 */
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { homedir } from 'node:os'
import { join } from 'node:path'
import { launch } from 'puppeteer-core'
import { patience } from './patience.mjs'
import { programIn } from './programs.mjs'
import { leaveUnasked } from './seats.mjs'

/** @import { Seat } from './seats.mjs' */

const isRoot = process.getuid?.() === 0

const folders = ['/Applications', join(homedir(), 'Applications')]

const installed = () =>
  programIn({
    linux: [
      'chromium',
      'chromium-browser',
      'google-chrome',
      'google-chrome-stable',
      'microsoft-edge',
      'microsoft-edge-stable',
    ],
    darwin: folders.flatMap(folder =>
      ['Google Chrome', 'Chromium', 'Microsoft Edge'].map(app =>
        join(folder, `${app}.app/Contents/MacOS/${app}`),
      ),
    ),
    win32: [
      'Google\\Chrome\\Application\\chrome.exe',
      'Chromium\\Application\\chrome.exe',
      'Microsoft\\Edge\\Application\\msedge.exe',
    ],
  })

/** Debian and Ubuntu only, as root: nobody else is asked to have a package put on their machine. */
function installFromDebian() {
  if (!isRoot || !existsSync('/etc/debian_version') || !existsSync('/usr/bin/apt-get')) return
  console.log('No browser found: installing the Debian package chromium, once.')
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  for (const argv of [
    ['update', '-q'],
    ['install', '-y', '-q', '--no-install-recommends', 'chromium'],
  ]) {
    const { status, stdout, stderr } = spawnSync('apt-get', argv, { env, encoding: 'utf8' })
    if (status !== 0) console.error(`apt-get ${argv[0]} failed:\n${stdout}\n${stderr}`)
  }
}

/**
 * @returns {string} path of the browser's program
 * @throws {Error} with a sentence on what to install
 */
export function findBrowser() {
  const chosen = process.env.CHROME_PATH
  if (chosen) {
    if (existsSync(chosen)) return chosen
    throw new Error(`CHROME_PATH names ${chosen}, where there is no browser.`)
  }
  const found = installed()
  if (found) return found
  installFromDebian()
  const fresh = installed()
  if (fresh) return fresh
  throw new Error(
    'No browser found: install Chromium, Chrome or Edge, or set CHROME_PATH to the path of its program.',
  )
}

/**
 * Chromium refuses its sandbox as root; the rest keeps it from talking to the network by itself, and from opening the pages
 * that it has for its own address bar, which cost as much as the app's.
 */
export const browserArguments = [
  ...(isRoot ? ['--no-sandbox'] : []),
  '--disable-gpu',
  '--disable-dev-shm-usage', // containers give /dev/shm 64 MB, on which long runs crash
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
  '--disable-features=WebUIOmniboxPopup,WebUIOmniboxAimPopup',
]

/** One process for what is shown, where one page is open at a time: without them a blank one comes before, a spare one after. */
export const onePage = ['--renderer-process-limit=1', '--disable-features=SpareRendererForSitePerProcess']

/** The pages of tests come one after the other: one process for all of them, which is warm from the second on. */
const oneAfterTheOther = ['--process-per-site', '--disable-back-forward-cache', '--in-process-gpu']

/** No page of tests lives long enough for what the compilers that optimize cost. */
export const compilesOnce = ['--js-flags=--no-turbofan,--no-maglev']

/** What a page may do without asking; the last is what a button that copies asks for. */
const allowed = /** @type {const} */ (['clipboard-read', 'clipboard-write', 'clipboard-sanitized-write'])

/**
 * @param {string} executablePath
 * @returns {(origin: string) => Promise<Seat>}
 */
export const chromiumSeats = executablePath => async origin => {
  const browser = await launch({
    executablePath,
    args: [...browserArguments, ...onePage, ...oneAfterTheOther, ...compilesOnce],
    networkEnabled: false, // nobody asks
    timeout: patience,
  })
  const page = await browser.newPage()
  page.setDefaultTimeout(patience)
  leaveUnasked(page)
  await page.emulateFocusedPage(true) // it has the focus as soon as it is there
  await browser.defaultBrowserContext().overridePermissions(origin, [...allowed])
  const evaluate = /** @param {string} script */ script => page.evaluate(`(() => {${script}})()`)
  return { page, evaluate, pids: [browser.process()?.pid ?? 0], close: () => browser.close() }
}
