import { css, html, nothing } from 'lit'
import { SheetElement } from '../base/base-element.js'
import { narrow } from '../styles/breakpoints.js'
import { batchProse } from './batch-prose.js'
import { batchWords } from './words.js'

/** How much to make: a sentence to read, and beneath it, when it is to be changed, fields to say it. */
export class TbBatch extends SheetElement {
  static override properties = {
    open: { state: true },
  }

  declare open: boolean
  #formula = '' // of which it is open or closed
  #wasOpen = false // closed, the fields keep what else was typed

  constructor() {
    super()
    this.open = false
  }

  protected override willUpdate(): void {
    const { id = '' } = this.sheet?.formula ?? {}
    if (id === this.#formula) return
    this.#formula = id
    this.open = false
    this.#wasOpen = false
  }

  override render() {
    const { sheet, numbers, open, readOnly } = this
    if (!sheet) return nothing
    const isOpen = open && !readOnly
    return html`<p class="prose">
        ${batchProse(sheet, numbers)}
        ${
          readOnly
            ? nothing
            : html`<button
              id="toggle"
              data-opens="batch"
              aria-expanded=${isOpen}
              aria-controls="form"
              aria-label=${isOpen ? batchWords.doneWithThis : batchWords.changeThis}
              @click=${this.#toggle}
            >${isOpen ? batchWords.done : batchWords.change}</button>`
        }
      </p>
      <div
        id="form"
        class="form"
        role="group"
        aria-label=${batchWords.howMuch}
        ?hidden=${!isOpen}
        @keydown=${this.#key}
      >${
        this.#wasOpen
          ? html`<tb-batch-fields .sheet=${sheet} .version=${this.version} .numbers=${numbers}></tb-batch-fields>`
          : nothing
      }</div>`
  }

  #toggle = (): void => {
    void import('./tb-batch-fields.js') // fetched when first wanted; an element may stand there before
    this.open = !this.open
    this.#wasOpen = true
  }

  #key = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || event.isComposing) return
    event.stopPropagation()
    this.open = false
    this.renderRoot.querySelector<HTMLElement>('#toggle')?.focus()
  }

  static override styles = css`
    :host {
      display: block;
    }
    .prose {
      margin: 0;
      max-width: 68ch;
      color: var(--ink-soft);
      font-size: var(--size-text);
    }
    .prose b {
      color: var(--ink);
      font-weight: 640;
      white-space: nowrap;
    }
    .prose button {
      margin: -6px 0 -6px 2px;
      padding: 4px 8px;
      color: var(--accent);
      font-size: var(--size-text);
      white-space: nowrap;
      text-decoration: underline;
      text-decoration-thickness: 1px;
      text-underline-offset: 3px;
    }
    .form {
      margin: 8px 0 2px;
      padding: 8px 0 10px 16px;
      border-left: 3px solid var(--accent);
    }
    @media ${narrow} {
      .form {
        padding-left: 12px;
      }
    }
    @media print {
      .form {
        display: none;
      }
    }
  `
}
customElements.define('tb-batch', TbBatch)

declare global {
  interface HTMLElementTagNameMap {
    'tb-batch': TbBatch
  }
}
