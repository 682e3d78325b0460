import { css, html, nothing } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import { BaseElement } from '../base/base-element.js'
import { entryBy, openBy } from './menu-keys.js'

export interface MenuItem {
  readonly label: string
  readonly note?: string // a few quiet words behind the label
  readonly run: () => void
}

/** A button that opens a menu: arrow keys, Home, End and first letters move in it, Escape and Tab close it. */
export class TbMenu extends BaseElement {
  static override properties = {
    label: {},
    face: {},
    items: { attribute: false },
    open: { state: true },
    look: { reflect: true },
  }

  declare label: string // the button's name for those who listen
  declare face: string // what the button shows; left out: three dots
  declare items: readonly MenuItem[]
  declare open: boolean
  declare look: 'plain' | 'lined' | 'main'

  constructor() {
    super()
    this.label = ''
    this.face = ''
    this.items = []
    this.open = false
    this.look = 'plain'
  }

  override render() {
    return html`<button
        id="opener"
        class=${this.look}
        aria-label=${this.face ? nothing : this.label}
        title=${this.face ? nothing : this.label}
        aria-haspopup="menu"
        aria-expanded=${this.open}
        @click=${this.#toggle}
        @keydown=${this.#openByKey}
      >
        ${
          this.face ||
          html`<svg aria-hidden="true" width="18" height="18" fill="currentColor">
          <circle cx="3" cy="9" r="1.6" /><circle cx="9" cy="9" r="1.6" /><circle cx="15" cy="9" r="1.6" />
        </svg>`
        }
      </button>
      <div
        role="menu"
        popover
        aria-label=${this.label}
        @toggle=${this.#toggled}
        @keydown=${this.#moveByKey}
      >
        ${repeat(
          this.items,
          ({ label }) => label, // one that has the focus keeps it when others come
          item =>
            html`<button role="menuitem" tabindex="-1" @click=${() => this.#run(item)}>
            ${item.label}${item.note ? html` <span class="quiet">${item.note}</span>` : nothing}
          </button>`,
        )}
      </div>`
  }

  get #menu(): HTMLElement {
    return this.renderRoot.querySelector<HTMLElement>('[role=menu]')!
  }

  get #buttons(): HTMLButtonElement[] {
    return [...this.renderRoot.querySelectorAll<HTMLButtonElement>('[role=menuitem]')]
  }

  get #opener(): HTMLButtonElement {
    return this.renderRoot.querySelector<HTMLButtonElement>('#opener')!
  }

  override focus(): void {
    this.#opener.focus()
  }

  #toggle = (): void => {
    if (this.#menu.matches(':popover-open')) this.#menu.hidePopover()
    else this.#show(0)
  }

  #show(at: number): void {
    openBy(this.#menu, this.#opener, 'left')
    this.#buttons.at(at)?.focus()
  }

  // The browser closes a popover by itself, at Escape or a click elsewhere; this hears of every way.
  #toggled = (event: ToggleEvent): void => {
    this.open = event.newState === 'open'
  }

  #openByKey = (event: KeyboardEvent): void => {
    if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return
    event.preventDefault()
    this.#show(event.key === 'ArrowDown' ? 0 : -1)
  }

  #moveByKey = (event: KeyboardEvent): void => {
    if (event.key === 'Tab' || event.key === 'Escape') {
      if (event.key === 'Escape') event.preventDefault()
      event.stopPropagation()
      this.#menu.hidePopover()
      this.#opener.focus()
      return
    }
    const next = entryBy(event, this.#buttons)
    if (!next) return
    event.preventDefault()
    next.focus()
  }

  #run(item: MenuItem): void {
    this.#menu.hidePopover()
    this.#opener.focus()
    item.run()
  }

  static override styles = css`
    :host {
      display: inline-block;
    }
    #opener {
      display: inline-flex;
      align-items: center;
      justify-content: center;
      padding: 4px 9px;
    }
    #opener.lined {
      padding: 4px 14px;
    }
    [role='menu'] {
      inset: auto;
      margin: 0;
      padding: 6px;
      min-width: 180px;
      max-width: calc(100vw - 16px);
      max-height: calc(100vh - 16px);
      overflow: auto;
      color: var(--ink);
      background: var(--board);
      border: 1px solid var(--rule-strong);
      border-radius: 8px;
      box-shadow: 0 8px 28px rgb(30 20 10 / 0.16);
    }
    [role='menuitem'] {
      display: block;
      width: 100%;
      text-align: left;
    }
    [role='menuitem']:focus-visible {
      outline-offset: -2px;
    }
  `
}
customElements.define('tb-menu', TbMenu)

declare global {
  interface HTMLElementTagNameMap {
    'tb-menu': TbMenu
  }
}
