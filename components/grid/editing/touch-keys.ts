import { html, nothing, type TemplateResult } from 'lit'
import { isComposing } from '../moving/key-map.js'
import { isAmount, takesTyping } from '../table/table.js'
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
    this.#context.grid.shadowRoot?.addEventListener('keydown', this.#enter, { capture: true })
    for (const name of ['resize', 'scroll']) visualViewport?.addEventListener(name, this.#keepInView)
  }

  disconnect(): void {
    this.#context.grid.shadowRoot?.removeEventListener('keydown', this.#enter, { capture: true })
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

  /**
   * On a touch screen Enter and Next keep an amount and open the one of the next line, in the same task: the keyboard
   * stays where it is. False where that is not to be done.
   */
  next(): boolean {
    const { grid, session, table } = this.#context
    const { state } = session
    if (!state || !isAmount(state.column) || state.chosen >= 0 || !isTouch()) return false
    const { row, column } = state
    const lines = table.rows.slice((table.index.get(row) ?? 0) + 1)
    const onward = lines.find(line => line.kind === 'line' && takesTyping(line, column))
    if (!onward) return false
    if (session.keep() && session.start({ row: onward.key, column }, 'all')) grid.renderNow()
    return true
  }

  #enter = (event: Event): void => {
    const { key, shiftKey, altKey, ctrlKey, metaKey } = event as KeyboardEvent
    const isPlain = key === 'Enter' && !(shiftKey || altKey || ctrlKey || metaKey)
    if (!isPlain || isComposing(event as KeyboardEvent) || event.target !== this.#context.elements.field)
      return
    if (!this.next()) return
    event.preventDefault()
    event.stopPropagation()
  }

  #click = (event: MouseEvent): void => {
    const button = (event.target as Element).closest('button')
    if (!button || (button.dataset.pad === 'next' && this.next())) return
    this.#context.session.pad(button.dataset.types, button.dataset.pad)
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
