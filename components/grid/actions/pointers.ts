import { wish } from '../../base/events.js'
import type { EditSession } from '../editing/session.js'
import type { Walk } from '../moving/selection.js'
import { type Column, type Given, isAmount, type Row, rowAt, type Spot, type Table } from '../table/table.js'
import type { Orders } from './commands.js'

/** What the pointers ask of the grid around them. */
export interface PointersHost {
  readonly given: Given & EventTarget
  readonly walk: Walk
  readonly session: EditSession
  readonly orders: Orders
  table(): Table
  focused(): EventTarget | null
  startEditing(spot: Spot, how: 'typing' | 'end' | 'all'): boolean
  openMenu(row: Row, by: HTMLElement): void
  wantFocus(): void
  /** Renders at once: within a tap, or a phone does not bring up its keyboard. */
  renderNow(): void
}

/** The cell an event happened in. */
export function spotOf(target: EventTarget | null): Spot | undefined {
  if (!(target instanceof Element)) return undefined
  const row = target.closest<HTMLElement>('[data-row]')?.dataset.row
  const column = target.closest<HTMLElement>('[data-column]')?.dataset.column
  return row && column ? { row, column: column as Column } : undefined
}

export const keepFocus = (event: Event): void => event.preventDefault()

/** Mouse and finger: a click goes to a cell, a second tap or a double click does what Enter does there. */
export class Pointers {
  #host: PointersHost
  #tapped: Spot | undefined // the active cell, when a finger comes down on it

  constructor(host: PointersHost) {
    this.#host = host
  }

  readonly pointerDown = (event: PointerEvent): void => {
    const spot = event.pointerType === 'mouse' ? undefined : spotOf(event.target)
    const focused = spotOf(this.#host.focused())
    const again = spot && focused && spot.row === focused.row && spot.column === focused.column
    this.#tapped = again && !this.#host.session.state ? spot : undefined
  }

  readonly mouseDown = (event: MouseEvent): void => {
    const target = event.target as Element
    if (target.closest('[data-choice], [data-how]')) return keepFocus(event)
    const spot = spotOf(target)
    if (!event.shiftKey || !spot || this.#host.session.state) return
    event.preventDefault() // or the browser selects text
    this.#host.walk.extendTo(spot)
    this.#host.wantFocus()
  }

  readonly click = (event: MouseEvent): void => {
    const { given, session, orders } = this.#host
    const target = event.target as Element
    const choice = target.closest<HTMLElement>('[data-choice]')?.dataset.choice
    if (choice !== undefined) return session.pick(Number(choice))
    const define = target.closest<HTMLElement>('[data-define]')?.dataset.define
    if (define !== undefined) return wish(given, { want: 'define', ingredient: define })
    const dots = target.closest<HTMLElement>('[data-row-actions]')
    const spot = spotOf(target)
    const row = spot && rowAt(this.#host.table(), spot.row)
    if (!row || !spot) return
    if (dots) return this.#host.openMenu(row, dots)
    if (target.closest('[data-how]')) return void orders.ask(row, spot.column)
    const { row: key, column } = this.#tapped ?? {}
    if (key !== spot.row || column !== spot.column) return
    this.#tapped = undefined
    if (this.#host.startEditing(spot, isAmount(spot.column) ? 'all' : 'end')) this.#host.renderNow()
    else orders.askOfComputed(row, spot.column)
  }

  readonly doubleClick = (event: MouseEvent): void => {
    const spot = spotOf(event.target)
    const row = spot && rowAt(this.#host.table(), spot.row)
    if (!row || this.#host.session.state || (event.target as Element).closest('button')) return
    if (this.#host.startEditing(spot, 'end') || this.#host.orders.askOfComputed(row, spot.column))
      event.preventDefault()
  }
}
