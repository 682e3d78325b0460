/** What one engine was asked and no other needs to be: of each page the cases without keys. */
export class Asked {
  /** @type {Promise<readonly string[]>[]} */
  #titles
  /** @type {((titles: readonly string[]) => void)[]} */
  #tell = []

  /** @param {number} pages how many there are */
  constructor(pages) {
    this.#titles = Array.from({ length: pages }, (_, page) => new Promise(tell => (this.#tell[page] = tell)))
  }

  /**
   * To be called when a page has ended, in whatever way. The first time counts.
   * @param {number} page
   * @param {readonly string[]} titles
   */
  tell(page, titles) {
    this.#tell[page]?.(titles)
  }

  /** Where no page is left to tell of. */
  end() {
    for (const tell of this.#tell) tell([])
  }

  /**
   * @param {number} page
   * @returns {Promise<readonly string[]>} full titles
   */
  of(page) {
    return this.#titles[page] ?? Promise.resolve([])
  }
}
