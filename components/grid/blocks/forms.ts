import type { Extent } from '../moving/extent.js'
import type { Column, Table } from '../table/table.js'

/** Where the baker was when it was pasted. */
export interface Place {
  readonly extent: Extent
  readonly table: Table
  readonly columns: readonly Column[]
}

/** A text for a cell as it was typed elsewhere; computed: only what followed there from another cell. */
export interface PastedCell {
  readonly text: string
  readonly computed: boolean
}
export interface Pasted {
  readonly rows: readonly (readonly PastedCell[])[]
  readonly decimal: '.' | ','
  readonly columns?: readonly Column[] // they were copied from, where that is known
}

/** Our own kind of clipboard text: what was typed and what only followed from it, with decimal points. */
export const ownType = 'application/x-tarebook-lines+json'
export interface OwnBlock {
  readonly tarebook: 'lines'
  readonly columns: readonly Column[]
  readonly rows: readonly (readonly PastedCell[])[]
}

/** Where the table says the same: not every clipboard keeps a kind of our own. */
export const ownAttribute = 'data-tarebook-lines'

/** What a clipboard holds, in the forms a block is read from. */
export interface Held {
  readonly own: string
  readonly html: string
  readonly plain: string
}

/** All of it, at once: a clipboard event's data is gone after it. */
export const heldBy = (data: { getData(type: string): string }): Held => ({
  own: data.getData(ownType),
  html: data.getData('text/html'),
  plain: data.getData('text/plain'),
})
