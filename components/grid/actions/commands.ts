import { say, wish } from '../../base/events.js'
import type { Blocks } from '../blocks/blocks.js'
import type { Command } from '../moving/key-map.js'
import type { Walk } from '../moving/selection.js'
import { takesTyping } from '../moving/steps.js'
import { type Column, type Given, isNumber, type Row, rowAt, type Spot, type Table } from '../table/table.js'
import { questionAt } from './questions.js'
import type { Deeds } from './row-commands.js'

/** What the orders ask of the grid around them. */
export interface OrdersHost {
  readonly given: Given & HTMLElement
  readonly walk: Walk
  readonly deeds: Deeds
  blocks(): Blocks
  table(): Table
  page(): number // rows of a screenful
  startEditing(spot: Spot, how: 'typing' | 'end' | 'all'): boolean
  openMenu(row: Row, by: HTMLElement): void
  /** Puts the focus on the active cell now, so that what opens knows where to give it back. */
  focusCell(): void
}

/** What the keys ask for outside an open editor, done. */
export class Orders {
  #host: OrdersHost

  constructor(host: OrdersHost) {
    this.#host = host
  }

  /** Does what a key asks; false: the key is left to the browser. */
  obey(command: Command, event: KeyboardEvent): boolean {
    const { walk, deeds, given } = this.#host
    const { readOnly } = given
    const row = rowAt(this.#host.table(), walk.active.row)
    if (!row) return false
    const onButton = event.target instanceof HTMLButtonElement
    switch (command.do) {
      case 'move':
        walk.move(command.to, command.extend, this.#host.page)
        given.focus()
        return true
      case 'select':
        walk.select(command.what)
        return true
      case 'type':
        if (!onButton) this.#editHere(row, 'typing')
        return false // the browser delivers the key to the field
      case 'edit':
        if (!onButton) this.#editHere(row, 'end')
        return !onButton
      case 'stay':
        return !onButton
      case 'clear':
        this.#host.blocks().clear()
        return true
      case 'undo':
      case 'redo':
        wish(given, { want: command.do })
        return true
      case 'ask':
        if (!this.ask(row, walk.cellOf(walk.active).column))
          say(given, 'There is no number here to ask about.')
        return true
      case 'actions':
        if (readOnly) return false
        this.#host.openMenu(row, event.target as HTMLElement)
        return true
      case 'addBelow':
        if (readOnly) return false
        deeds.addBelow(row)
        return true
      case 'shift':
        if (!readOnly) deeds.shift(row, command.by)
        return true
    }
  }

  /** Undo from a menu or a gesture, where no field of ours has an undo of its own. */
  beforeInput(event: InputEvent): void {
    if (event.inputType !== 'historyUndo' && event.inputType !== 'historyRedo') return
    event.preventDefault()
    wish(this.#host.given, { want: event.inputType === 'historyUndo' ? 'undo' : 'redo' })
  }

  #editHere(row: Row, how: 'typing' | 'end'): void {
    const { walk, given } = this.#host
    const spot = walk.cellOf(walk.active)
    if (this.#host.startEditing(spot, how)) return
    if (how === 'end' && this.askOfComputed(row, spot.column)) return
    if (!given.readOnly && (row.kind === 'sum' || isNumber(spot.column)))
      say(given, 'This number follows from the others.')
  }

  /** Asks how the number of a cell is worked out, or the row's weight; false: there is none. */
  ask(row: Row, column: Column): boolean {
    const question = questionAt(row, column, this.#host.walk.columns.includes('batch'))
    if (!question) return false
    this.#host.focusCell()
    this.#host.deeds.ask(question.cell)
    return true
  }

  /** Asks the same where there is nothing to type: what Enter does there. */
  askOfComputed(row: Row, column: Column): boolean {
    return isNumber(column) && !takesTyping(row, column) && this.ask(row, column)
  }
}
