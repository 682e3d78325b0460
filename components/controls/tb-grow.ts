import { css, html, nothing } from 'lit'
import { BaseElement } from '../base/base-element.js'

/**
 * A text field that looks like the text it holds and grows with it. Fires `tb-entered` with the new text when the
 * baker leaves it changed, or presses Enter where it is one line (then `tb-left` says that the focus may go on); Escape
 * puts the old text back.
 */
export class TbGrow extends BaseElement {
  static override properties = {
    value: {},
    label: {},
    hint: {},
    field: {},
    manyLines: { type: Boolean },
    typed: { state: true },
    cut: { state: true },
  }

  declare value: string
  declare label: string
  declare hint: string // shown while there is no text
  declare field: string // what its text is kept under while it is not entered
  declare manyLines: boolean
  declare typed: string | undefined // what stands in the field while it is being edited
  declare cut: boolean // there is more of it than is shown

  constructor() {
    super()
    this.value = ''
    this.label = ''
    this.hint = ''
    this.field = ''
    this.manyLines = false
    this.typed = undefined
    this.cut = false
  }

  // Its width says how many lines it has, so it is looked at whenever that changes.
  #measured = new ResizeObserver(() => {
    const field = this.renderRoot.querySelector('.field')!
    this.cut = field.scrollHeight > field.clientHeight + 1
  })

  protected override firstUpdated(): void {
    if (this.hasAttribute('folds')) this.#measured.observe(this.renderRoot.querySelector('textarea')!)
  }

  override render() {
    const text = this.typed ?? this.value
    return html`<span class=${this.cut ? 'field cut' : 'field'} data-text=${`${text || this.hint} `}
      ><textarea
        rows="1"
        data-typed=${this.field}
        aria-label=${this.label}
        placeholder=${this.hint || nothing}
        spellcheck="false"
        enterkeyhint=${this.manyLines ? 'enter' : 'done'}
        ?readonly=${this.readOnly}
        .defaultValue=${this.value}
        .value=${text}
        @input=${this.#input}
        @change=${this.#enter}
        @keydown=${this.#key}
      ></textarea
    ></span>`
  }

  get #field(): HTMLTextAreaElement {
    return this.renderRoot.querySelector('textarea')!
  }

  override focus(): void {
    this.#field.focus()
    this.#field.select()
  }

  #input = (): void => {
    this.typed = this.#field.value
  }

  #enter = (): void => {
    const text = this.manyLines ? this.#field.value.trim() : this.#field.value.replace(/\s+/g, ' ').trim()
    this.typed = undefined
    this.#field.value = this.value
    if (text === this.value) return
    this.dispatchEvent(new CustomEvent('tb-entered', { detail: text }))
  }

  #key = (event: KeyboardEvent): void => {
    if (event.isComposing || event.keyCode === 229) return // Safari: Enter that ends a composition
    if (event.key === 'Enter' && !this.manyLines) {
      event.preventDefault()
      this.#enter()
      this.#field.blur()
      this.dispatchEvent(new CustomEvent('tb-left'))
    } else if (event.key === 'Escape') {
      this.typed = undefined
      this.#field.value = this.value
      this.#field.blur()
    }
  }

  // A hidden copy of the text gives the field its size: `field-sizing: content` is not in Firefox yet.
  static override styles = css`
    :host {
      display: block;
      min-width: 0;
    }
    .field {
      display: inline-grid;
      max-width: 100%;
      vertical-align: top;
    }
    :host([wide]) .field {
      display: grid;
    }
    /* A long note is cut after two lines, the end of the second fading, until somebody goes into it. */
    :host([folds]:not(:focus-within)) .field {
      grid-template-rows: minmax(0, 1fr); /* the field itself is no higher than what is seen of it */
      max-height: calc(2lh + 4px);
      overflow: clip;
    }
    :host([folds]:not(:focus-within)) .field.cut {
      mask:
        linear-gradient(#000 0 0) top / 100% calc(1lh + 4px) no-repeat,
        linear-gradient(90deg, #000 72%, transparent 98%) bottom / 100% 1lh no-repeat;
    }
    @media print {
      :host([folds]) .field {
        max-height: none !important;
        mask: none !important;
      }
    }
    .field::after {
      content: attr(data-text);
      visibility: hidden;
      white-space: pre-wrap;
    }
    .field::after,
    textarea {
      grid-area: 1 / 1;
      min-width: 0;
      min-height: 0;
      margin: 0;
      padding: var(--grow-padding, 3px 8px);
      font: inherit;
      letter-spacing: inherit;
      line-height: inherit;
      overflow-wrap: anywhere;
    }
    .field::after {
      border: 1px solid transparent;
    }
    textarea {
      width: 100%;
      height: 100%;
      resize: none;
      overflow: hidden;
      color: inherit;
      background: none;
      border-color: transparent;
    }
    textarea::placeholder {
      color: var(--ink-soft);
      opacity: 1;
    }
    textarea:hover:not([readonly]) {
      border-color: var(--rule-strong);
    }
    textarea:focus-visible {
      background: var(--board);
      outline-offset: 0;
    }
  `
}
customElements.define('tb-grow', TbGrow)

declare global {
  interface HTMLElementTagNameMap {
    'tb-grow': TbGrow
  }
}
