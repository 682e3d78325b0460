/** Turns at something that only so many can use at once; who waited longest is next. */
export class Turns {
  /** @type {(() => void)[]} */
  #waiting = []
  #free

  /** @param {number} atOnce */
  constructor(atOnce) {
    this.#free = atOnce
  }

  /** @returns {Promise<void>} resolves when it is one's turn, which has to be given back */
  async take() {
    if (this.#free > 0) this.#free -= 1
    else await new Promise(resolve => this.#waiting.push(() => resolve(undefined)))
  }

  giveBack() {
    const next = this.#waiting.shift()
    if (next) next()
    else this.#free += 1
  }
}
