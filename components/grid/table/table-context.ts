import type { Elements } from './elements.js'
import type { Column, Given, Table } from './table.js'

/** The grid's element, as its rooms use it: events leave from it. */
export interface GridElement extends HTMLElement, Given {
  requestUpdate(): void
  /** Renders at once: within a tap, or a phone does not bring up its keyboard. */
  renderNow(): void
  goTo(place: { readonly line: string; readonly column: 'ingredient' }): void
}

/**
 * What every room of the grid works with: what the app gave, as rows and columns, and the elements that show them.
 * Each later room adds what it brings; the grid makes them all and is the one context of all.
 */
export interface TableContext {
  readonly grid: GridElement
  readonly elements: Elements
  readonly table: Table
  readonly columns: readonly Column[] // that are shown
}
