import { css, html, nothing, type TemplateResult } from 'lit'
import { BaseElement } from '../base/base-element.js'
import { slim } from '../styles/breakpoints.js'

/** A quiet disclosure that stands in a row with others; what it opens takes the width of the row, beneath them all. */
export class TbFold extends BaseElement {
  static override properties = {
    words: {},
    count: { type: Number },
    of: {},
    inside: { attribute: false },
    open: { type: Boolean, reflect: true },
  }

  declare words: string
  declare count: number // behind the words; 0 is not said
  declare of: string // id of a formula; open for one, it is closed for the next
  declare inside: () => TemplateResult // is asked for while it is open only
  declare open: boolean

  constructor() {
    super()
    this.words = ''
    this.count = 0
    this.of = ''
    this.inside = () => html``
    this.open = false
  }

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (changed.has('of')) this.open = false
  }

  override render() {
    const { words, count, open } = this
    return html`<button aria-expanded=${open} aria-controls="inside" @click=${this.#toggle}>
        ${words}${count ? html` <span>${count}</span>` : nothing}
      </button>
      <div id="inside" ?hidden=${!open}>${open ? this.inside() : nothing}</div>`
  }

  #toggle = (): void => {
    this.open = !this.open
  }

  static override styles = css`
    :host {
      display: contents; /* the button stays in the row, what it opens takes a row of its own beneath */
    }
    button {
      display: inline-flex;
      align-items: center;
      gap: 7px;
      margin-left: -8px;
      padding: 4px 8px;
      color: var(--ink-soft);
      font-size: var(--size-small);
    }
    button::before {
      content: '';
      width: 0;
      height: 0;
      border: 4px solid transparent;
      border-left-color: currentColor;
      border-right-width: 0;
      forced-color-adjust: none; /* what is transparent of it stays so */
    }
    [aria-expanded='true'] {
      color: var(--ink);
    }
    [aria-expanded='true']::before {
      transform: rotate(90deg);
    }
    @media ${slim} {
      button {
        padding-inline: 6px;
        gap: 4px;
        font-size: var(--size-fine);
      }
    }
    span {
      font-variant-numeric: tabular-nums;
    }
    #inside {
      flex: 1 1 100%;
      order: 1;
      padding: 6px 0 14px 15px;
      margin: 0 0 6px;
      border-left: 1px solid var(--rule-strong);
    }
    @media print {
      :host {
        display: none;
      }
    }
  `
}
customElements.define('tb-fold', TbFold)

declare global {
  interface HTMLElementTagNameMap {
    'tb-fold': TbFold
  }
}
