import type { Touched } from '../../src/dough/sheet/touched.js'
import { Commands, type CommandsContext } from './actions/commands.js'
import { type Further, RowCommands } from './actions/row-commands.js'
import { Dispatcher } from './editing/dispatcher.js'
import { EditSession } from './editing/session.js'
import { Selection } from './moving/selection.js'
import { Contents } from './table/contents.js'
import { Elements } from './table/elements.js'
import type { Column, Table, Width } from './table/table.js'
import type { GridElement } from './table/table-context.js'

/** Everything the rooms of a grid work with, made once for each grid. */
export class GridContext implements CommandsContext {
  readonly grid: GridElement
  readonly elements: Elements
  readonly selection = new Selection(this)
  readonly dispatcher = new Dispatcher(this)
  readonly session = new EditSession(this)
  readonly rowCommands = new RowCommands(this)
  readonly commands = new Commands(this)
  #contents: Contents
  #further: Further | undefined

  constructor(grid: GridElement & { readonly version: number; readonly width: Width }) {
    this.grid = grid
    this.elements = new Elements(grid)
    this.#contents = new Contents(grid)
  }

  get table(): Table {
    return this.#contents.table
  }

  /** Reads from the sheet what is touched. */
  follow(touched: Touched): void {
    this.#contents.follow(touched)
  }

  get columns(): readonly Column[] {
    return this.#contents.columns
  }

  get further(): Further | undefined {
    return this.#further
  }

  withFurther(act: (further: Further) => void): void {
    if (this.#further) act(this.#further)
    else void this.fetchFurther().then(act)
  }

  async fetchFurther(): Promise<Further> {
    const { FurtherActions } = await import('./actions/further.js')
    this.#further ??= new FurtherActions(this)
    return this.#further
  }
}
