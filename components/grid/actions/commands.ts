import { say, wish } from '../../base/events.js'
import type { Extent } from '../moving/extent.js'
import type { Command } from '../moving/key-map.js'
import { type Column, isNumber, type Row, rowAt, takesTyping } from '../table/table.js'
import { questionAt } from './questions.js'
import type { ActionsContext } from './row-commands.js'
import { nothingToAsk, onlyFollows } from './words.js'

export interface CommandsContext extends ActionsContext {
  readonly commands: Commands
}

/** What the keys ask for outside an open editor, done. */
export class Commands {
  #context: ActionsContext

  constructor(context: ActionsContext) {
    this.#context = context
  }

  /** Does what a key asks; false: the key is left to the browser. */
  run(command: Command, event: KeyboardEvent): boolean {
    const { grid, table, selection, rowCommands } = this.#context
    const { readOnly } = grid
    const row = rowAt(table, selection.active.row)
    if (!row) return false
    const onButton = event.target instanceof HTMLButtonElement
    switch (command.do) {
      case 'move':
        selection.move(command.to, command.extend, () => this.#rowsOfScreen())
        grid.focus()
        return true
      case 'select':
        selection.select(command.what)
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
        this.#clear(selection.extent)
        return true
      case 'undo':
      case 'redo':
        wish(grid, { want: command.do })
        return true
      case 'ask':
        if (!this.ask(row, selection.cell.column)) say(grid, nothingToAsk)
        return true
      case 'actions':
        if (readOnly) return false
        this.openMenu(row, event.target as HTMLElement)
        return true
      case 'addBelow':
        if (readOnly) return false
        rowCommands.addBelow(row)
        return true
      case 'shift':
        if (!readOnly) rowCommands.shift(row, command.by)
        return true
    }
  }

  #clear(extent: Extent): void {
    this.#context.withFurther(({ blocks }) => blocks.clear(extent))
  }

  /** Undo from a menu or a gesture, where no field of ours has an undo of its own. */
  beforeInput(event: InputEvent): void {
    if (event.inputType !== 'historyUndo' && event.inputType !== 'historyRedo') return
    event.preventDefault()
    wish(this.#context.grid, { want: event.inputType === 'historyUndo' ? 'undo' : 'redo' })
  }

  #rowsOfScreen(): number {
    const { elements, selection } = this.#context
    const height = elements.cell(selection.cell)?.getBoundingClientRect().height ?? 44
    return Math.max(3, Math.floor((innerHeight - 160) / height))
  }

  #editHere(row: Row, how: 'typing' | 'end'): void {
    const { grid, selection, session } = this.#context
    const spot = selection.cell
    if (session.start(spot, how)) return
    if (how === 'end' && this.askOfComputed(row, spot.column)) return
    if (!grid.readOnly && (row.kind === 'sum' || isNumber(spot.column))) say(grid, onlyFollows)
  }

  /** Asks how the number of a cell is worked out, or the row's weight; false: there is none. */
  ask(row: Row, column: Column): boolean {
    const { columns, elements, selection, rowCommands } = this.#context
    const question = questionAt(row, column, columns.includes('batch'))
    if (!question) return false
    elements.cell(selection.cell)?.focus() // now, so that what opens knows where to give it back
    rowCommands.ask(question.cell)
    return true
  }

  /** Asks the same where there is nothing to type: what Enter does there. */
  askOfComputed(row: Row, column: Column): boolean {
    return isNumber(column) && !takesTyping(row, column) && this.ask(row, column)
  }

  openMenu(row: Row, by: HTMLElement): void {
    this.#context.withFurther(further => further.openMenu(row, by))
  }
}
