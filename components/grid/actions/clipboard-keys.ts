import { heldBy } from '../blocks/forms.js'
import type { ActionsContext } from './row-commands.js'

/**
 * Copies, cuts and pastes while a cell has the focus. They are heard at the document: Firefox sends them to the page's
 * body where nothing is selected and the focus is in a shadow root. Once it sends them to what has the focus, as
 * Chromium and Safari do, the table can hear them itself.
 */
export class ClipboardKeys {
  #context: ActionsContext

  constructor(context: ActionsContext) {
    this.#context = context
  }

  connect(): void {
    for (const type of types) document.addEventListener(type, this.#hear)
  }

  disconnect(): void {
    for (const type of types) document.removeEventListener(type, this.#hear)
  }

  #hear = (event: ClipboardEvent): void => {
    const { elements, session } = this.#context
    const { type, clipboardData } = event
    if (!clipboardData || session.state || !elements.focused?.closest('[role=grid]')) return
    if (type === 'paste') this.#paste(event, clipboardData)
    else if (!this.#hasSelectedText()) this.#copy(event, clipboardData)
  }

  #paste(event: ClipboardEvent, data: DataTransfer): void {
    event.preventDefault()
    const held = heldBy(data)
    const { grid, selection, table, columns } = this.#context
    const place = { extent: selection.extent, table, columns }
    if (!grid.readOnly) this.#context.withFurther(({ blocks }) => void blocks.paste(held, place))
  }

  /** Until blocks are fetched, the event is over before there is anything to put on its clipboard. */
  #copy(event: ClipboardEvent, data: DataTransfer): void {
    const { grid, further, selection } = this.#context
    const { extent } = selection
    const cuts = event.type === 'cut'
    if (cuts && grid.readOnly) return
    event.preventDefault()
    if (further) further.blocks.copy(data, cuts)
    else this.#context.withFurther(({ blocks }) => void blocks.write(extent, cuts))
  }

  /** Text that is selected on the page is copied as the browser does. */
  #hasSelectedText(): boolean {
    const root = this.#context.grid.shadowRoot as { getSelection?(): Selection | null } | null
    const inRoot = root?.getSelection?.() // Chromium keeps a shadow root's selection by itself
    return [inRoot, document.getSelection()].some(s => s && !s.isCollapsed && String(s) !== '')
  }
}

const types = ['copy', 'cut', 'paste'] as const
