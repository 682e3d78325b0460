import { Blocks } from '../blocks/blocks.js'
import { rowName } from '../editing/words.js'
import type { Row } from '../table/table.js'
import { RowMenu } from './menu.js'
import { menuName } from './menu-words.js'
import { actionsFor } from './row-actions.js'
import type { ActionsContext, Further } from './row-commands.js'

/** Blocks and menus: fetched when the lines are painted, or when they are first wanted. */
export class FurtherActions implements Further {
  readonly blocks: Blocks
  readonly menu: RowMenu
  #context: ActionsContext

  constructor(context: ActionsContext) {
    this.#context = context
    this.blocks = new Blocks(context)
    this.menu = new RowMenu(context)
  }

  openMenu(row: Row, by: HTMLElement): void {
    const { selection, rowCommands } = this.#context
    this.menu.open(menuName(rowName(row)), actionsFor(row, selection.cell.column, rowCommands), by)
  }
}
