import { wish } from '../../base/events.js'
import { spotOf } from '../table/elements.js'
import { isAmount, rowAt, type Spot } from '../table/table.js'
import type { CommandsContext } from './commands.js'

/** Mouse and finger: a click goes to a cell, a second tap or a double click does what Enter does there. */
export class Pointers {
  #context: CommandsContext
  #tapped: Spot | undefined // the active cell, when a finger comes down on it

  constructor(context: CommandsContext) {
    this.#context = context
  }

  readonly pointerDown = (event: PointerEvent): void => {
    const spot = event.pointerType === 'mouse' ? undefined : spotOf(event.target)
    const focused = spotOf(this.#context.elements.focused)
    const again = spot && focused && spot.row === focused.row && spot.column === focused.column
    this.#tapped = again && !this.#context.session.state ? spot : undefined
  }

  readonly mouseDown = (event: MouseEvent): void => {
    const target = event.target as Element
    if (target.closest('[data-choice], [data-how]')) return event.preventDefault()
    const spot = spotOf(target)
    if (!event.shiftKey || !spot || this.#context.session.state) return
    event.preventDefault() // or the browser selects text
    this.#context.selection.extendTo(spot)
    this.#context.grid.focus()
  }

  readonly click = (event: MouseEvent): void => {
    const { grid, table, session, commands } = this.#context
    const target = event.target as Element
    const choice = target.closest<HTMLElement>('[data-choice]')?.dataset.choice
    if (choice !== undefined) return session.pick(Number(choice))
    const define = target.closest<HTMLElement>('[data-define]')?.dataset.define
    if (define !== undefined) return wish(grid, { want: 'define', ingredient: define })
    const method = target.closest<HTMLElement>('[data-method]')?.dataset.method
    if (method !== undefined) return this.#context.rowCommands.toMethod(method)
    const dots = target.closest<HTMLElement>('[data-row-actions]')
    const spot = spotOf(target)
    const row = spot && rowAt(table, spot.row)
    if (!row || !spot) return
    if (dots) return commands.openMenu(row, dots)
    if (target.closest('[data-how]')) return void commands.ask(row, spot.column)
    const { row: key, column } = this.#tapped ?? {}
    if (key !== spot.row || column !== spot.column) return
    this.#tapped = undefined
    if (session.start(spot, isAmount(spot.column) ? 'all' : 'end')) grid.renderNow()
    else commands.askOfComputed(row, spot.column)
  }

  readonly doubleClick = (event: MouseEvent): void => {
    const { table, session, commands } = this.#context
    const spot = spotOf(event.target)
    const row = spot && rowAt(table, spot.row)
    if (!row || session.state || (event.target as Element).closest('button')) return
    if (session.start(spot, 'end') || commands.askOfComputed(row, spot.column)) event.preventDefault()
  }
}
