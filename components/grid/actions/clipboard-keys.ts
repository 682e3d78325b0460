import type { BlocksContext } from '../blocks/blocks.js'

/**
 * Copies, cuts and pastes while a cell has the focus. They are heard at the document: Firefox sends them to the page's
 * body where nothing is selected and the focus is in a shadow root. Once it sends them to what has the focus, as
 * Chromium and Safari do, the table can hear them itself.
 */
export class ClipboardKeys {
  #context: BlocksContext

  constructor(context: BlocksContext) {
    this.#context = context
  }

  connect(): void {
    for (const type of types) document.addEventListener(type, this.#hear)
  }

  disconnect(): void {
    for (const type of types) document.removeEventListener(type, this.#hear)
  }

  #hear = (event: ClipboardEvent): void => {
    const { elements, session, blocks } = this.#context
    if (session.state || !elements.focused?.closest('[role=grid]')) return
    if (event.type === 'copy') blocks.copy(event)
    else if (event.type === 'cut') blocks.cut(event)
    else void blocks.paste(event)
  }
}

const types = ['copy', 'cut', 'paste'] as const
