import { cellColumn, rowAt, type Spot } from '../table/table.js'
import type { TableContext } from '../table/table-context.js'
import { type Block, type Extent, extentOf } from './extent.js'
import type { Direction, Leave } from './key-map.js'
import { amountOfNewLine, nextToType, step } from './steps.js'

export interface MovingContext extends TableContext {
  readonly selection: Selection
}

/** Where the baker is: the cell that has, or would take, the focus, and the block of cells selected around it. */
export class Selection {
  active: Spot = { row: '', column: 'ingredient' }
  block: Block | undefined
  #index = 0 // of the active row, for when it goes
  #context: TableContext

  constructor(context: TableContext) {
    this.#context = context
  }

  moveTo(spot: Spot, block?: Block): void {
    this.active = spot
    this.block = block
    this.#context.grid.requestUpdate()
  }

  /** The cell that is really there of a row and a column. */
  cellOf({ row, column }: Spot): Spot {
    const { table, columns } = this.#context
    return { row, column: cellColumn(rowAt(table, row), column, columns) }
  }

  /** The active cell that is really there. */
  get cell(): Spot {
    return this.cellOf(this.active)
  }

  get extent(): Extent {
    const { table, columns } = this.#context
    return extentOf(table, columns, this.active, this.block)
  }

  get wholeRow(): Extent {
    const { table, columns } = this.#context
    const row = rowAt(table, this.active.row)
    return { rows: row ? [row] : [], columns }
  }

  /** `page` says how many rows a screenful has, when that is what is asked for. */
  move(to: Direction, extend: boolean, page: () => number): void {
    const { table, columns } = this.#context
    const rows = to === 'pageUp' || to === 'pageDown' ? page() : 0
    const spot = step(table, columns, this.active, to, rows)
    if (extend) this.extendTo(spot)
    else this.moveTo(spot)
  }

  /** The block from where it began to `spot`; where whole rows are selected it goes on by whole rows. */
  extendTo(spot: Spot): void {
    const { columns } = this.#context
    const { anchor, head } = this.block ?? { anchor: this.cell, head: undefined }
    const last = columns[columns.length - 1]
    const isRows = last && anchor.column === columns[0] && head?.column === last
    this.moveTo(spot, { anchor, head: isRows ? { row: spot.row, column: last } : this.cellOf(spot) })
  }

  select(what: 'all' | 'row' | 'column'): void {
    const { columns } = this.#context
    const { rows } = this.#context.table
    const { row, column } = this.cell
    const [left, right] = what === 'column' ? [column, column] : [columns[0]!, columns[columns.length - 1]!]
    const [top, bottom] =
      what === 'row' ? [row, row] : [rows[0]?.key ?? row, rows[rows.length - 1]?.key ?? row]
    this.moveTo(this.active, { anchor: { row: top, column: left }, head: { row: bottom, column: right } })
  }

  /** Where the way on from an edited cell leads; undefined past the last cell. */
  onward(from: Spot, to: Leave): Spot | undefined {
    const { table, columns } = this.#context
    if (to === 'stay') return from
    if (to === 'next') return amountOfNewLine(table, columns, from) ?? nextToType(table, columns, from, 1)
    if (to === 'previous') return nextToType(table, columns, from, -1)
    return step(table, columns, from, to, 1)
  }

  /** Rows may have come and gone: stays on the row, or where the row was. */
  settle(afresh: boolean): void {
    const { table } = this.#context
    if (afresh) this.#index = 0
    if (afresh || !table.index.has(this.active.row)) {
      const row = table.rows[Math.min(this.#index, table.rows.length - 1)]
      this.active = { row: row?.key ?? '', column: this.active.column }
    }
    const { block } = this
    if (block && !(table.index.has(block.anchor.row) && table.index.has(block.head.row)))
      this.block = undefined
    this.#index = table.index.get(this.active.row) ?? 0
  }
}
