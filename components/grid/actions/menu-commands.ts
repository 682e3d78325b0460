import type { Formula } from '../../../src/dough/document/formula.js'
import { wish } from '../../base/events.js'
import type { Column } from '../table/table.js'
import type { Action } from './menu.js'
import { type ActionsContext, RowCommands } from './row-commands.js'

/** What the menu of a row does besides what keys do. */
export class MenuCommands extends RowCommands {
  readonly hasClipboard = 'clipboard' in navigator
  #context: ActionsContext

  constructor(context: ActionsContext) {
    super(context)
    this.#context = context
  }

  get formulas(): readonly Formula[] | undefined {
    return this.#context.grid.formulas
  }

  get columns(): readonly Column[] {
    return this.#context.columns
  }

  define(ingredient: string): void {
    wish(this.#context.grid, { want: 'define', ingredient })
  }

  /** Opens a menu of other actions where the last one was. */
  offer(label: string, actions: readonly Action[]): void {
    const { further, elements, selection, grid } = this.#context
    further?.menu.open(label, actions, elements.cell(selection.cell) ?? grid)
  }

  copy(): void {
    const { selection, further } = this.#context
    void further?.blocks.write(selection.block ? selection.extent : selection.wholeRow)
  }

  paste(): void {
    const { selection, further } = this.#context
    if (!selection.block) selection.moveTo({ row: selection.active.row, column: 'ingredient' })
    void further?.blocks.read()
  }
}
