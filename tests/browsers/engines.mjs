/** The browser engines that tests run in, and which of them are on this machine. */
import { chromiumSeats, findBrowser } from './chromium.mjs'
import { findFirefox, firefoxSeats } from './firefox.mjs'
import { isTried } from './table.mjs'
import { findWebKit, webKitSeats } from './webkit.mjs'

/** @import { Seat } from './seats.mjs' */

/**
 * @typedef {object} Engine
 * @property {string} name
 * @property {() => string | undefined} find gives the path of its program
 * @property {(program: string) => (origin: string) => Promise<Seat>} seats
 * @property {(file: string) => boolean} [takes] which of the tests it runs; all unless said
 * @property {string} toInstall what to do where it is missing
 */

/** @type {Engine[]} */
export const engines = [
  {
    name: 'Chromium',
    find: findBrowser,
    seats: chromiumSeats,
    toInstall: 'install Chromium, Chrome or Edge, or set CHROME_PATH to the path of its program',
  },
  {
    name: 'Firefox',
    find: findFirefox,
    seats: firefoxSeats,
    takes: file => !file.includes('.chromium.'),
    toInstall: 'install Firefox, or set FIREFOX_PATH to the path of its program',
  },
  {
    name: 'WebKit',
    find: findWebKit,
    seats: webKitSeats,
    takes: file =>
      (file.startsWith('tests/whole-app/') && isTried(file)) ||
      file === 'tests/house/browser.browser.test.ts',
    toInstall:
      'on Debian and Ubuntu, install webkit2gtk-driver xvfb openbox gir1.2-webkit2-4.1 python3-gi; elsewhere there is none',
  },
]
