/** A page driven by W3C WebDriver, in the words that the tests' commands use. */

/**
 * @import { MouseButton } from 'puppeteer-core'
 * @import { TestPage } from './seats.mjs'
 */

/** The code points of keys that type nothing (WebDriver, section 17.4.2). */
const keys = new Map(
  Object.entries({
    Backspace: '\uE003',
    Tab: '\uE004',
    Enter: '\uE007',
    Shift: '\uE008',
    Control: '\uE009',
    Alt: '\uE00A',
    Escape: '\uE00C',
    Space: ' ',
    PageUp: '\uE00E',
    PageDown: '\uE00F',
    End: '\uE010',
    Home: '\uE011',
    ArrowLeft: '\uE012',
    ArrowUp: '\uE013',
    ArrowRight: '\uE014',
    ArrowDown: '\uE015',
    Insert: '\uE016',
    Delete: '\uE017',
    F2: '\uE032',
    F10: '\uE03A',
    Meta: '\uE03D',
  }),
)

/** @param {string} key */
function keyValue(key) {
  const value = keys.get(key) ?? key
  if ([...value].length !== 1) throw new Error(`No key is known as ${key}.`)
  return value
}

/** @param {MouseButton | undefined} button */
const numberOf = button => Math.max(0, ['left', 'middle', 'right'].indexOf(button ?? 'left'))

/** A session of a driver that answers at `base`. */
export class Session {
  /** @type {string} */ #base
  #id = ''

  /** @param {string} base */
  constructor(base) {
    this.#base = base
  }

  /**
   * @param {'GET' | 'POST' | 'DELETE'} method
   * @param {string} path
   * @param {object} [body]
   * @returns {Promise<any>} what WebDriver calls the value
   */
  async #ask(method, path, body) {
    const answer = await fetch(this.#base + path, {
      method,
      headers: { 'content-type': 'application/json' },
      ...(body && { body: JSON.stringify(body) }),
    })
    const { value } = /** @type {{ value: any }} */ (await answer.json())
    if (!answer.ok) throw new Error(`${method} ${path}: ${value.error}: ${value.message}`)
    return value
  }

  /** @param {object} capabilities */
  async begin(capabilities) {
    const { sessionId } = await this.#ask('POST', '/session', { capabilities: { alwaysMatch: capabilities } })
    this.#id = `/session/${sessionId}`
  }

  end() {
    return this.#ask('DELETE', this.#id)
  }

  /**
   * @param {string} script the body of a function
   * @returns {Promise<any>}
   */
  evaluate(script) {
    return this.#ask('POST', `${this.#id}/execute/sync`, { script, args: [] })
  }

  /** @param {object} source of input, with what it does */
  #act(source) {
    return this.#ask('POST', `${this.#id}/actions`, { actions: [source] })
  }

  /** @param {object[]} actions */
  #keyboard(...actions) {
    return this.#act({ type: 'key', id: 'keyboard', actions })
  }

  /** @param {object[]} actions */
  #mouse(...actions) {
    return this.#act({ type: 'pointer', id: 'mouse', parameters: { pointerType: 'mouse' }, actions })
  }

  /** @type {TestPage['keyboard']} */
  keyboard = {
    type: text =>
      this.#keyboard(
        ...[...text].flatMap(sign => {
          const value = sign === '\n' ? keyValue('Enter') : sign
          return [
            { type: 'keyDown', value },
            { type: 'keyUp', value },
          ]
        }),
      ),
    press: key =>
      this.#keyboard({ type: 'keyDown', value: keyValue(key) }, { type: 'keyUp', value: keyValue(key) }),
    down: key => this.#keyboard({ type: 'keyDown', value: keyValue(key) }),
    up: key => this.#keyboard({ type: 'keyUp', value: keyValue(key) }),
  }

  /** @type {TestPage['mouse']} */
  mouse = {
    move: (x, y) => this.#mouse({ type: 'pointerMove', x, y, duration: 0 }),
    click: (x, y, { button } = {}) =>
      this.#mouse(
        { type: 'pointerMove', x, y, duration: 0 },
        { type: 'pointerDown', button: numberOf(button) },
        { type: 'pointerUp', button: numberOf(button) },
      ),
    down: ({ button } = {}) => this.#mouse({ type: 'pointerDown', button: numberOf(button) }),
    up: ({ button } = {}) => this.#mouse({ type: 'pointerUp', button: numberOf(button) }),
    reset: () => this.#ask('DELETE', `${this.#id}/actions`),
  }

  /** @param {string} url */
  goto(url) {
    return this.#ask('POST', `${this.#id}/url`, { url })
  }

  /**
   * Of the window, which has no frame here.
   * @param {{ width: number, height: number }} size
   */
  resize(size) {
    return this.#ask('POST', `${this.#id}/window/rect`, size)
  }
}
