import { html, nothing, type TemplateResult } from 'lit'
import { isAmount } from '../table/table.js'
import type { Editing } from './editor.js'
import { padKeys, padWords } from './pad-words.js'
import type { EditingContext } from './session.js'

const isTouch = (): boolean => matchMedia('(pointer: coarse)').matches

/** The strip of signs above a touch keyboard, and the place the two of them leave. */
export class TouchKeys {
  #context: EditingContext

  constructor(context: EditingContext) {
    this.#context = context
  }

  connect(): void {
    for (const name of ['resize', 'scroll']) visualViewport?.addEventListener(name, this.#keepInView)
  }

  disconnect(): void {
    for (const name of ['resize', 'scroll']) visualViewport?.removeEventListener(name, this.#keepInView)
  }

  /** A touch keyboard came, went or grew: the editor stays above it, and so does the strip of signs. */
  #keepInView = (event: Event): void => {
    const { grid, elements, session } = this.#context
    if (!session.state || !visualViewport) return
    const below = innerHeight - visualViewport.height - visualViewport.offsetTop
    grid.style.setProperty('--pad-bottom', `${Math.max(0, Math.round(below))}px`)
    if (event.type === 'resize') elements.field?.scrollIntoView({ block: 'nearest' })
  }

  template(editing: Editing | undefined): TemplateResult | typeof nothing {
    if (!editing || !isAmount(editing.column) || !isTouch()) return nothing
    const keepFocus = (event: Event) => event.preventDefault()
    return html`<div @mousedown=${keepFocus} @click=${this.#click}>${padTemplate(editing)}</div>`
  }

  /** To be called when it has been rendered: in the top layer, since the page may keep bars of its own down there. */
  rendered(): void {
    const { pad } = this.#context.elements
    if (pad && !pad.matches(':popover-open')) pad.showPopover()
  }

  #click = (event: MouseEvent): void => {
    const button = (event.target as Element).closest('button')
    if (button) this.#context.session.pad(button.dataset.types, button.dataset.pad)
  }
}

const padTemplate = (editing: Editing): TemplateResult => html`
  <div class="pad" id="pad" popover="manual" role="group" aria-label=${padWords.name}>
    ${padKeys.map(
      key => html`<button tabindex="-1" data-types=${key.types} aria-label=${key.name}>${key.shows}</button>`,
    )}
    <button tabindex="-1" data-pad="keys">${editing.textKeys ? padWords.digits : padWords.letters}</button>
    <button tabindex="-1" data-pad="next" class="main">${padWords.next}</button>
  </div>
`
