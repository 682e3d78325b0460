import type { Column, Spot } from './table.js'

export type Field = HTMLInputElement | HTMLTextAreaElement

/** Ids in the grid's shadow root: with hundreds of rows, a search by anything else takes its time. */
export const rowId = (key: string): string => `row-${key.replaceAll(' ', '-')}`
export const groupId = (key: string): string => `group-${key.replaceAll(' ', '-')}`
export const fieldId = 'field'

/** The cell an event happened in. */
export function spotOf(target: EventTarget | null): Spot | undefined {
  if (!(target instanceof Element)) return undefined
  const row = target.closest<HTMLElement>('[data-row]')?.dataset.row
  const column = target.closest<HTMLElement>('[data-column]')?.dataset.column
  return row && column ? { row, column: column as Column } : undefined
}

/** The grid's elements that others have to find. */
export class Elements {
  #grid: HTMLElement

  constructor(grid: HTMLElement) {
    this.#grid = grid
  }

  get #root(): ShadowRoot {
    return this.#grid.shadowRoot!
  }

  /** What has the focus within the grid. */
  get focused(): Element | null {
    return this.#root.activeElement
  }

  has(node: Node): boolean {
    return this.#root.contains(node)
  }

  /** The open editor's field. */
  get field(): Field | null {
    return this.#root.getElementById(fieldId) as Field | null
  }

  get menu(): HTMLElement | null {
    return this.#root.getElementById('menu')
  }

  /** The strip above a touch keyboard. */
  get pad(): HTMLElement | null {
    return this.#root.getElementById('pad')
  }

  /** Of a group of rows, by its key. */
  group(key: string): HTMLElement | null {
    return this.#root.getElementById(groupId(key))
  }

  /** As wide as the grid. */
  get ruler(): HTMLElement | null {
    return this.#root.getElementById('ruler')
  }

  /** What takes the focus of a cell: the cell, or the one button in it. */
  cell({ row, column }: Spot): HTMLElement | null {
    const cells = this.#root.getElementById(rowId(row))?.children ?? []
    for (const cell of cells)
      if (cell instanceof HTMLElement && cell.dataset.column === column)
        return column === 'actions' ? (cell.querySelector<HTMLElement>('button') ?? cell) : cell
    return null
  }
}
