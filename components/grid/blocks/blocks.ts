import { say } from '../../base/events.js'
import type { EditingContext } from '../editing/session.js'
import type { Extent } from '../moving/extent.js'
import { clearBlock, coversRows } from './block-edits.js'
import { copied, putOn } from './clipboard.js'
import type { Held, Place } from './forms.js'
import { copiedWords, copyRefused, editLabels, nothingToClear, pasteRefused, removedWords } from './words.js'

/** Copying, cutting, pasting and clearing of the selected cells. */
export class Blocks {
  #context: EditingContext

  constructor(context: EditingContext) {
    this.#context = context
  }

  /** Puts the selected cells on the clipboard of an event. */
  copy(data: DataTransfer, cuts: boolean): void {
    const { extent } = this.#context.selection
    putOn(data, extent, this.#context.grid.numbers)
    this.#copied(extent, cuts)
  }

  #copied(extent: Extent, cuts: boolean): void {
    say(this.#context.grid, copiedWords)
    if (cuts) this.clear(extent, editLabels.cut)
  }

  /** Copies without a key, where the browser lets a page write to the clipboard. */
  async write(extent: Extent, cuts = false): Promise<void> {
    const { plain, html } = copied(extent, this.#context.grid.numbers)
    const as = (type: string, text: string) => new Blob([text], { type })
    try {
      await navigator.clipboard.write([
        new ClipboardItem({ 'text/plain': as('text/plain', plain), 'text/html': as('text/html', html) }),
      ])
      this.#copied(extent, cuts)
    } catch {
      say(this.#context.grid, copyRefused)
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
      await this.paste({ own: '', html: await text('text/html'), plain: await text('text/plain') })
    } catch {
      say(this.#context.grid, pasteRefused)
    }
  }

  /** Pastes in a place, or where the baker is now. How is fetched when it is first wanted. */
  async paste(held: Held, place: Place = this.#here): Promise<void> {
    await (await import('./paste.js')).paste(held, place, this.#context)
  }

  get #here(): Place {
    const { table, columns, selection } = this.#context
    return { extent: selection.extent, table, columns }
  }

  clear(extent: Extent, label: string = editLabels.clear): void {
    const { grid, columns, dispatcher } = this.#context
    if (grid.readOnly) return
    const lines = extent.rows.filter(row => row.kind === 'line').length
    let made = false
    const clear = clearBlock(grid.sheet.formula.id, extent, columns, label)
    const done = dispatcher.editHere(workbook => {
      const transaction = clear(workbook)
      made = transaction !== undefined
      return transaction
    })
    if (!done) return
    if (!made) say(grid, nothingToClear)
    else if (coversRows(extent, columns)) say(grid, removedWords(lines))
  }
}
