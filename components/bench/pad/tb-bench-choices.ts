import { css, html, nothing } from 'lit'
import { BaseElement } from '../../base/base-element.js'
import type { TbNumberPad } from './tb-number-pad.js'
import './tb-number-pad.js'
import { padStyles } from './pad-styles.js'
import { padWords } from './words.js'

/** One of several things that can be chosen. */
export interface Choice {
  readonly words: string
  readonly run: () => void
}

/** A few large buttons over the foot of the bench, one of which is pressed. */
export class TbBenchChoices extends BaseElement {
  static override properties = {
    heading: { state: true },
    choices: { state: true },
    back: { state: true },
  }

  declare private heading: string
  declare private choices: readonly Choice[]
  declare private back: string // what the button says that chooses nothing

  constructor() {
    super()
    this.heading = ''
    this.choices = []
    this.back = padWords.cancel
  }

  /** The number pad that lies over them. */
  get pad(): TbNumberPad {
    return this.renderRoot.querySelector('tb-number-pad')!
  }

  async ask(heading: string, choices: readonly Choice[], back: string = padWords.cancel): Promise<void> {
    this.back = back
    this.heading = heading
    this.choices = choices
    await this.updateComplete
    const dialog = this.renderRoot.querySelector('dialog')!
    if (!dialog.open) dialog.showModal()
  }

  override render() {
    return html`<dialog aria-labelledby="title">
        <h2 id="title">${this.heading}</h2>
        <div>
          ${this.choices.map(
            ({ words, run }) => html`<button
              class="lined"
              @click=${() => {
                this.#close()
                run()
              }}
            >${words}</button>`,
          )}
        </div>
        ${this.choices.length ? html`<button class="cancel" @click=${this.#close}>${this.back}</button>` : nothing}
      </dialog>
      <tb-number-pad .numbers=${this.numbers}></tb-number-pad>`
  }

  #close = (): void => {
    this.renderRoot.querySelector('dialog')?.close()
  }

  static override styles = [
    padStyles,
    css`
    h2 {
      margin: 0 0 12px;
      font-size: var(--size-lead);
      font-weight: 600;
    }
    div {
      display: grid;
      grid-template-columns: repeat(auto-fit, minmax(96px, 1fr));
      gap: 10px;
    }
    button {
      min-height: 60px;
      font-size: var(--size-lead);
      background: var(--board);
    }
    .cancel {
      width: 100%;
      margin-top: 12px;
      background: none;
    }
    @media (min-width: 480px) {
      dialog {
        margin-bottom: auto;
        border-radius: 14px;
      }
    }
  `,
  ]
}
customElements.define('tb-bench-choices', TbBenchChoices)

declare global {
  interface HTMLElementTagNameMap {
    'tb-bench-choices': TbBenchChoices
  }
}
