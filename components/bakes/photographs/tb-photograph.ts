import { css, html, nothing, type TemplateResult } from 'lit'
import type { Photograph } from '../../../src/day/bench/photograph.js'
import '../../controls/tb-grow.js'
import { TbDialog } from '../../controls/tb-dialog.js'
import { photographWords } from './words.js'

/** What is looked at large. */
export interface Looked {
  readonly photograph: Photograph
  readonly url: string // of the picture
  readonly number: number // from 1
  readonly of: number
  readonly taken: string // in words
}

/** A photograph, large: what is to be seen can be said, and it can be deleted. Tells `tb-described` and `tb-deleted`. */
export class TbPhotograph extends TbDialog {
  static override properties = {
    looked: { state: true },
    sure: { state: true },
  }

  declare private looked: Looked | undefined
  declare private sure: boolean // whether it is to be deleted is being asked

  constructor() {
    super()
    this.looked = undefined
    this.sure = false
  }

  /** Shows one; again with what was said of it since. */
  show(looked: Looked): void {
    this.looked = looked
    this.sure = false
    if (!this.opened) this.open()
  }

  protected override heading(): string {
    const { number = 1, of = 1 } = this.looked ?? {}
    return photographWords.title(number, of)
  }

  protected override body(): TemplateResult {
    const { looked, readOnly } = this
    if (!looked) return html``
    const { photograph, url, number } = looked
    return html`<div class="body">
      <img
        src=${url}
        width=${photograph.width}
        height=${photograph.height}
        alt=${photographWords.alt(photograph.described, number)}
      />
      <label for="described">${photographWords.describe}</label>
      <tb-grow
        id="described"
        label=${photographWords.describe}
        hint=${readOnly ? '' : photographWords.describeHint}
        field=${`photograph ${photograph.id}`}
        .value=${photograph.described}
        ?readOnly=${readOnly}
        @tb-entered=${(event: CustomEvent<string>) => this.#tell('tb-described', event.detail)}
      ></tb-grow>
      <p class="soft">${looked.taken}</p>
    </div>`
  }

  protected override actions(): TemplateResult | typeof nothing {
    if (this.readOnly) return nothing
    if (!this.sure)
      return html`<button class="lined" @click=${() => this.#ask(true)}>${photographWords.remove}</button>`
    return html`<span role="alert">${photographWords.sure}</span>
      <button class="lined" @click=${this.#remove}>${photographWords.remove}</button>
      <button class="main" @click=${() => this.#ask(false)}>${photographWords.keep}</button>`
  }

  #ask(sure: boolean): void {
    this.sure = sure
  }

  #remove = (): void => {
    this.#tell('tb-deleted', '')
    this.close()
  }

  #tell(name: 'tb-described' | 'tb-deleted', words: string): void {
    const { photograph } = this.looked!
    this.dispatchEvent(new CustomEvent(name, { detail: { photograph, words } }))
  }

  static override styles = [
    TbDialog.styles,
    css`
      img {
        display: block;
        width: auto;
        height: auto;
        max-width: 100%;
        max-height: 64vh;
        margin: 0 auto 14px;
        border-radius: var(--radius);
      }
      label {
        color: var(--ink-soft);
        font-size: var(--size-small);
      }
      .soft {
        margin: 8px 0 0;
        color: var(--ink-soft);
        font-size: var(--size-small);
      }
    `,
  ]
}
customElements.define('tb-photograph', TbPhotograph)

declare global {
  interface HTMLElementTagNameMap {
    'tb-photograph': TbPhotograph
  }
}
