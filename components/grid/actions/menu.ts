import { html, nothing, type TemplateResult } from 'lit'
import { entryBy, openBy } from '../../controls/menu-keys.js'
import type { TableContext } from '../table/table-context.js'

/** One entry of a row's menu. */
export interface Action {
  readonly label: string
  readonly run: () => void
  readonly keys?: string // that do the same
  readonly checked?: boolean // one of several ways, and whether it is this one
  readonly apart?: true // a rule before it
}

/** The menu of a row, in the browser's top layer; one for the whole grid. */
export class RowMenu {
  #actions: readonly Action[] = []
  #label = ''
  #opener: HTMLElement | undefined // where it is still to be opened
  #context: TableContext

  constructor(context: TableContext) {
    this.#context = context
  }

  open(label: string, actions: readonly Action[], opener: HTMLElement): void {
    if (actions.length === 0) return
    this.#label = label
    this.#actions = actions
    this.#opener = opener
    this.#context.grid.requestUpdate()
  }

  /** To be called when it has been rendered; says whether it took the focus. */
  rendered(): boolean {
    const menu = this.#context.elements.menu
    const opener = this.#opener
    if (!menu || !opener) return false
    this.#opener = undefined
    openBy(menu, opener, 'right')
    menu.querySelector('button')?.focus()
    return true
  }

  template(): TemplateResult {
    return html`<div
      id="menu"
      role="menu"
      popover
      aria-label=${this.#label}
      @keydown=${this.#key}
      @click=${this.#click}
    >${this.#actions.map(entryTemplate)}</div>`
  }

  #close(): void {
    this.#context.elements.menu?.hidePopover()
    this.#context.grid.focus()
  }

  #click = (event: MouseEvent): void => {
    const entry = event.target instanceof Element ? event.target.closest<HTMLElement>('[data-action]') : null
    const action = entry ? this.#actions[Number(entry.dataset.action)] : undefined
    if (!action) return
    this.#close()
    action.run()
  }

  #key = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' || event.key === 'Tab') {
      event.preventDefault()
      this.#close()
      return
    }
    const next = entryBy(event, [...(this.#context.elements.menu?.querySelectorAll('button') ?? [])])
    if (!next) return
    event.preventDefault()
    next.focus()
  }
}

const entryTemplate = (action: Action, index: number): TemplateResult => html`${
  action.apart && index > 0 ? html`<hr role="separator" />` : nothing
}<button
  role=${action.checked === undefined ? 'menuitem' : 'menuitemradio'}
  aria-checked=${action.checked === undefined ? nothing : String(action.checked)}
  tabindex="-1"
  data-action=${index}
><span>${action.label}</span>${action.keys ? html`<kbd aria-hidden="true">${action.keys}</kbd>` : nothing}</button>`
