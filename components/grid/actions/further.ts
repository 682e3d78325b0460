import type { Formula } from '../../../src/dough/document/formula.js'
import { Blocks } from '../blocks/blocks.js'
import { sayReleases } from '../editing/releases.js'
import { TouchKeys } from '../editing/touch-keys.js'
import { rowName } from '../editing/words.js'
import '../offers/tb-offers.js'
import { furtherStyles } from '../styles/further-styles.js'
import type { Row } from '../table/table.js'
import { RowMenu } from './menu.js'
import { MenuCommands } from './menu-commands.js'
import { menuName } from './menu-words.js'
import { actionsFor } from './row-actions.js'
import type { ActionsContext, Further } from './row-commands.js'

/** Blocks, menus and the keys of touch screens: fetched when the lines are painted, or when they are first wanted. */
export class FurtherActions implements Further {
  readonly blocks: Blocks
  readonly menu: RowMenu
  readonly touchKeys: TouchKeys
  #commands: MenuCommands
  #context: ActionsContext

  constructor(context: ActionsContext) {
    this.#context = context
    context.grid.shadowRoot?.adoptedStyleSheets.push(furtherStyles.styleSheet!)
    this.blocks = new Blocks(context)
    this.menu = new RowMenu(context)
    this.#commands = new MenuCommands(context)
    this.touchKeys = new TouchKeys(context)
    if (context.grid.isConnected) this.touchKeys.connect()
  }

  sayReleases(before: Formula, typedIn: string): void {
    sayReleases(this.#context, before, typedIn)
  }

  openMenu(row: Row, by: HTMLElement): void {
    const { selection } = this.#context
    this.menu.open(menuName(rowName(row)), actionsFor(row, selection.cell.column, this.#commands), by)
  }
}
