import type { Edit } from '../events.js'
import {
  clearBlock,
  coversRows,
  enterInCell,
  fillBlock,
  type PasteCount,
  type Pasted,
  pasteBlock,
} from './block-edits.js'
import { copied, putOn, readForeign, takenFrom } from './clipboard.js'
import type { Extent } from './moving.js'
import type { Column, Given, Table } from './table.js'

/** What the blocks ask of the grid around them. */
export interface BlocksHost {
  readonly given: Given
  columns(): readonly Column[]
  table(): Table
  extent(): Extent
  /** Makes the edit and keeps the place; false: it was refused, and the baker has been told. */
  act(edit: Edit): boolean
  say(sentence: string): void
}

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
    this.put(await takenFrom(event.clipboardData, this.#host.given.numbers))
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
      this.put(await readForeign(await text('text/html'), await text('text/plain'), this.#host.given.numbers))
    } catch {
      this.#host.say('The browser did not let Tarebook read the clipboard. Press Ctrl+V, or ⌘V.')
    }
  }

  put(pasted: Pasted | undefined): void {
    const host = this.#host
    if (!pasted || pasted.rows.length === 0) {
      host.say('There is no text to paste.')
      return
    }
    const extent = host.extent()
    const row = extent.rows[0]
    const column = extent.columns[0]
    if (!row || !column) return
    const single = pasted.rows.length === 1 && pasted.rows[0]?.length === 1
    const formula = host.given.sheet.formula.id
    if (row.kind === 'stage' && single) {
      host.act(enterInCell(formula, row, 'ingredient', pasted.rows[0]![0]!.text, '.', ''))
      return
    }
    if (row.kind === 'stage' || row.kind === 'sum') {
      host.say('Paste on a line, or on “Add an ingredient”.')
      return
    }
    const count: PasteCount = { pasted: 0, notUnderstood: 0, leftOut: 0, refusals: [] }
    const many = extent.rows.length > 1 || extent.columns.length > 1
    const edit =
      single && many
        ? fillBlock(formula, extent, pasted, count)
        : pasteBlock(formula, host.table(), host.columns(), { row, column }, pasted, count)
    if (host.act(edit)) host.say(pasteSentence(count))
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

function pasteSentence(count: PasteCount): string {
  const { pasted, notUnderstood, leftOut, refusals } = count
  if (pasted + notUnderstood + refusals.length === 0)
    return leftOut
      ? 'There is no room for this here.'
      : 'These cells follow from the others and take nothing.'
  const parts = [`${Math.max(0, pasted - refusals.length)} pasted`]
  if (notUnderstood) parts.push(`${notUnderstood} not understood`)
  if (leftOut) parts.push(`${leftOut} left out, past the last column`)
  return [`${parts.join(', ')}.`, ...refusals].join(' ')
}
