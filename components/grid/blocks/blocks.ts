import type { Extent } from '../moving/steps.js'
import { clearBlock, coversRows } from './block-edits.js'
import { copied, putOn } from './clipboard.js'
import { type Held, heldBy } from './forms.js'
import type { BlocksHost } from './host.js'

/** Copying, cutting, pasting and clearing of the selected cells. */
export class Blocks {
  #host: BlocksHost

  constructor(host: BlocksHost) {
    this.#host = host
  }

  copy(event: ClipboardEvent): void {
    if (!event.clipboardData || hasSelectedText(event)) return
    event.preventDefault()
    putOn(event.clipboardData, this.#host.extent(), this.#host.given.numbers)
    this.#host.say('Copied.')
  }

  cut(event: ClipboardEvent): void {
    if (hasSelectedText(event) || this.#host.given.readOnly) return
    this.copy(event)
    this.clear('Cut')
  }

  async paste(event: ClipboardEvent): Promise<void> {
    if (!event.clipboardData || this.#host.given.readOnly) return
    event.preventDefault()
    await this.#put(heldBy(event.clipboardData))
  }

  /** Copies without a key, where the browser lets a page write to the clipboard. */
  async write(extent: Extent): Promise<void> {
    const { plain, html } = copied(extent, this.#host.given.numbers)
    const as = (type: string, text: string) => new Blob([text], { type })
    try {
      await navigator.clipboard.write([
        new ClipboardItem({ 'text/plain': as('text/plain', plain), 'text/html': as('text/html', html) }),
      ])
      this.#host.say('Copied.')
    } catch {
      this.#host.say('The browser did not let Tarebook copy. Press Ctrl+C, or ⌘C.')
    }
  }

  /** Pastes without a key, where the browser lets a page read the clipboard. */
  async read(): Promise<void> {
    try {
      const items = await navigator.clipboard.read()
      const text = async (type: string) => {
        const item = items.find(i => i.types.includes(type))
        return item ? (await item.getType(type)).text() : ''
      }
      await this.#put({ own: '', html: await text('text/html'), plain: await text('text/plain') })
    } catch {
      this.#host.say('The browser did not let Tarebook read the clipboard. Press Ctrl+V, or ⌘V.')
    }
  }

  /** Pastes where the baker is now. How is fetched when it is first wanted. */
  async #put(held: Held): Promise<void> {
    const host = this.#host
    const place = { extent: host.extent(), table: host.table(), columns: host.columns() }
    await (await import('./paste.js')).paste(held, place, host)
  }

  clear(label = 'Clear cells'): void {
    const host = this.#host
    if (host.given.readOnly) return
    const extent = host.extent()
    const lines = extent.rows.filter(row => row.kind === 'line').length
    let made = false
    const clear = clearBlock(host.given.sheet.formula.id, extent, host.columns(), label)
    const done = host.act(workbook => {
      const transaction = clear(workbook)
      made = transaction !== undefined
      return transaction
    })
    if (!done) return
    if (!made) host.say('There is nothing typed here to clear.')
    else if (coversRows(extent, host.columns()))
      host.say(lines === 1 ? 'Removed a line.' : `Removed ${lines} lines.`)
  }
}

/** Text that is selected on the page is copied as the browser does. */
function hasSelectedText(event: Event): boolean {
  const root = (event.target as Node).getRootNode() as Node & { getSelection?(): Selection | null }
  const inRoot = root.getSelection?.() // Chromium keeps a shadow root's selection by itself
  return [inRoot, document.getSelection()].some(s => s && !s.isCollapsed && String(s) !== '')
}
