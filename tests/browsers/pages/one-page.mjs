/**
 * In the page: test files that share it, each a suite of its own that finds the page as the first did. It is noted
 * which cases use no keys, no pointer and no clipboard.
 */
import { emulateMedia, executeServerCommand, setViewport } from '@web/test-runner-commands'

/**
 * @typedef {object} Case
 * @property {string} title
 * @property {() => string} fullTitle
 */
/** @typedef {{ tests: Case[], suites: Suite[] }} Suite */

/** As much of mocha as is used here; its own types know nothing of how suites are made. */
const { mocha, Mocha } = /** @type {{ mocha: any, Mocha: any }} */ (/** @type {unknown} */ (globalThis))

/** Cases that used keys, the pointer or the clipboard. */
const needing = new Set()
/** @type {Case | undefined} */
let current

const send = WebSocket.prototype.send
WebSocket.prototype.send = function (data) {
  if (/"command":"send-(keys|mouse)"/.test(String(data))) needing.add(current)
  return send.call(this, data)
}
if ('clipboard' in navigator)
  for (const name of /** @type {const} */ (['read', 'readText', 'write', 'writeText'])) {
    const asked = Clipboard.prototype[name]
    Object.assign(Clipboard.prototype, {
      /** @this {Clipboard} @param {...never} given */
      [name](...given) {
        needing.add(current)
        return Reflect.apply(asked, this, given)
      },
    })
  }

/** What a file may have left on the page is not there for the next one. */
async function clear() {
  document.body.replaceChildren()
  localStorage.clear()
  history.replaceState(null, '', location.href.replace(/#.*/, ''))
  await emulateMedia({ media: 'screen' })
  await emulateMedia({ colorScheme: 'light' })
  await setViewport({ width: 800, height: 600 })
}

/**
 * @param {Suite} suite
 * @returns {Case[]}
 */
const casesOf = ({ tests, suites }) => [...tests, ...suites.flatMap(casesOf)]

/**
 * @param {Suite} suite
 * @param {readonly string[]} titles
 */
function leaveOut(suite, titles) {
  suite.tests = suite.tests.filter(each => !titles.includes(each.fullTitle()))
  for (const inner of suite.suites) leaveOut(inner, titles)
}

/**
 * @param {readonly string[]} files paths from the top of the repository
 * @param {readonly string[]} asked full titles of cases that were asked of another engine, and of no more
 */
export async function load(files, asked) {
  const whole = mocha.suite
  for (const file of files) {
    mocha.suite = Mocha.Suite.create(whole, file)
    mocha.ui('bdd') // what is described from here on is in that suite
    await import(`/${file.replace(/ts$/, 'js')}`).catch(error => it('is loaded', () => Promise.reject(error)))
    if (file !== files.at(-1)) after(clear)
  }
  mocha.suite = whole
  mocha.ui('bdd')
  leaveOut(whole, asked)
  beforeEach(function () {
    current = /** @type {any} */ (this).currentTest
  })
  after(() => {
    const keyless = casesOf(whole).filter(each => !needing.has(each))
    return executeServerCommand(
      'keyless',
      keyless.map(each => each.fullTitle()),
    )
  })
}
