import { css, html, nothing, type PropertyValues } from 'lit'
import type { Photograph } from '../../../src/day/bench/photograph.js'
import { databasePhotographs, type Photographs } from '../../../src/storage/photographs/photographs.js'
import { databaseOfPage } from '../../base/asked-of-page.js'
import { BaseElement } from '../../base/base-element.js'
import { say } from '../../base/events.js'
import { photographWords } from './words.js'

/** Photographs of bakes that are no more, as after a workbook file took the place of all: to be deleted. */
export class TbPhotographsLeft extends BaseElement {
  static override properties = {
    bakes: { attribute: false },
    left: { state: true },
  }

  declare bakes: readonly { readonly id: string }[] // all there are, also those that cannot be read
  declare private left: readonly Photograph[]

  constructor() {
    super()
    this.bakes = []
    this.left = []
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('bakes')) void this.#look().catch(() => {})
  }

  async #withStore(use: (store: Photographs) => Promise<void>): Promise<void> {
    const store = databasePhotographs(databaseOfPage())
    try {
      await use(store)
    } finally {
      store.close()
    }
  }

  #look(): Promise<void> {
    const ids = new Set(this.bakes.map(({ id }) => id))
    return this.#withStore(async store => {
      this.left = (await store.all()).filter(({ bake }) => !ids.has(bake))
    })
  }

  override render() {
    const { length } = this.left
    if (length === 0 || this.readOnly) return nothing
    return html`<p>${photographWords.left(length)}</p>
      <button class="lined" @click=${this.#remove}>${photographWords.removeLeft(length)}</button>`
  }

  #remove = async (): Promise<void> => {
    const { left } = this
    await this.#withStore(async store => {
      for (const one of left) await store.remove(one)
    }).catch(() => {})
    say(this, photographWords.removedLeft(left.length))
    await this.#look().catch(() => {})
  }

  static override styles = css`
    :host {
      display: block;
      margin: 14px 0;
    }
    p {
      margin: 0 0 8px;
      max-width: 60ch;
    }
    button {
      min-height: 48px;
    }
  `
}
customElements.define('tb-photographs-left', TbPhotographsLeft)

declare global {
  interface HTMLElementTagNameMap {
    'tb-photographs-left': TbPhotographsLeft
  }
}
