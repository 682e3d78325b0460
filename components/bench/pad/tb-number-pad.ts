import { css, html, nothing } from 'lit'
import { BaseElement } from '../../base/base-element.js'
import { padStyles } from './pad-styles.js'
import { padWords } from './words.js'

/** What is asked for. */
export interface PadAsked {
  readonly title: string
  readonly unit: string
  readonly was: string // as it stands; '' for nothing
  readonly kind: 'number' | 'clock'
  /** Takes what was typed; gives why it cannot be, or undefined. */
  readonly take: (typed: string) => string | undefined
}

const keysOf = (kind: PadAsked['kind'], decimal: string) => [
  ...['7', '8', '9', '4', '5', '6', '1', '2', '3'],
  kind === 'clock' ? ':' : decimal,
  '0',
]

/** A number typed with a knuckle: large keys at the foot of the page, and the keyboard where there is one. */
export class TbNumberPad extends BaseElement {
  static override properties = {
    asked: { state: true },
    typed: { state: true },
    why: { state: true },
  }

  declare private asked: PadAsked | undefined
  declare private typed: string
  declare private why: string

  constructor() {
    super()
    this.asked = undefined
    this.typed = ''
    this.why = ''
  }

  /** Asks for a number; what it was before is overwritten by the first key. */
  async ask(asked: PadAsked): Promise<void> {
    this.asked = asked
    this.typed = ''
    this.why = ''
    await this.updateComplete
    const dialog = this.renderRoot.querySelector('dialog')!
    if (!dialog.open) dialog.showModal()
    dialog.querySelector<HTMLElement>('.ok')?.focus()
  }

  override render() {
    const { asked, typed, why } = this
    return html`<dialog aria-labelledby="title" @keydown=${this.#key} @close=${this.#closed}>
      ${
        asked
          ? html`<h2 id="title">${asked.title}</h2>
            <output class=${typed ? '' : 'was'} aria-live="polite">${typed || asked.was || '–'}<small>${asked.unit}</small></output>
            ${why ? html`<p class="why" role="alert">${why}</p>` : nothing}
            <div class="keys">
              ${keysOf(asked.kind, this.numbers.decimal).map(
                key => html`<button @click=${() => this.#add(key)}>${key}</button>`,
              )}
              <button aria-label=${padWords.back} @click=${this.#back}>⌫</button>
            </div>
            <div class="end">
              <button class="lined" @click=${this.#close}>${padWords.cancel}</button>
              <button class="main ok" @click=${this.#take}>${padWords.ok}</button>
            </div>`
          : nothing
      }
    </dialog>`
  }

  #add(key: string): void {
    if (this.typed.length < 8) this.typed += key
    this.why = ''
  }

  #back = (): void => {
    this.typed = this.typed.slice(0, -1)
  }

  #take = (): void => {
    const why = this.asked?.take(this.typed || this.asked.was)
    if (why) this.why = why
    else this.#close()
  }

  #close = (): void => {
    this.renderRoot.querySelector('dialog')?.close()
  }

  #closed = (): void => {
    this.asked = undefined
  }

  #key = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    if (event.key === 'Backspace') this.#back()
    else if (event.key === 'Enter') this.#take()
    else if (/^[\d.,:]$/.test(event.key)) this.#add(event.key)
    else return
    event.preventDefault()
  }

  static override styles = [
    padStyles,
    css`
    h2 {
      margin: 0;
      font-size: var(--size-text);
      font-weight: 600;
    }
    output {
      display: block;
      font-size: var(--size-reading);
      line-height: 1.15;
      text-align: right;
    }
    output.was {
      color: var(--ink-soft);
      opacity: 0.6;
    }
    output small {
      margin-left: 8px;
      font-size: var(--size-lead);
    }
    .why {
      margin: 0 0 8px;
      color: var(--warn);
    }
    .keys,
    .end {
      display: grid;
      grid-template-columns: repeat(3, 1fr);
      gap: 8px;
    }
    .end {
      grid-template-columns: 1fr 2fr;
      margin-top: 12px;
    }
    button {
      min-height: 60px;
      font-size: var(--size-figure);
    }
    .keys button {
      background: var(--board);
      border-color: var(--rule);
    }
    @media (max-height: 560px) {
      button {
        min-height: 56px;
      }
      output {
        font-size: var(--size-title);
      }
    }
    /* A phone lying on its side: the keys beside what is typed. */
    @media (max-height: 480px) and (min-width: 600px) {
      dialog[open] {
        display: grid;
        grid-template-columns: 5fr 7fr;
        grid-template-rows: auto auto 1fr auto;
        gap: 0 20px;
        width: min(100vw, 680px);
      }
      h2,
      output,
      .why,
      .end {
        grid-column: 1;
      }
      output {
        font-size: var(--size-reading);
      }
      .end {
        grid-row: 4;
        grid-template-columns: auto 1fr;
      }
      .keys {
        grid-column: 2;
        grid-row: 1 / span 4;
      }
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
customElements.define('tb-number-pad', TbNumberPad)

declare global {
  interface HTMLElementTagNameMap {
    'tb-number-pad': TbNumberPad
  }
}
