import { type Column, rowAt, type Spot, type Table } from '../table/table.js'
import type { Direction, Leave } from './key-map.js'
import { type Block, cellColumn, type Extent, extentOf, nextToType, step } from './steps.js'

/** What the walk asks of the grid around it. */
export interface WalkHost {
  table(): Table
  columns(): readonly Column[]
  changed(): void
}

/** Where the baker is: the cell that has, or would take, the focus, and the block of cells selected around it. */
export class Walk {
  active: Spot = { row: '', column: 'ingredient' }
  block: Block | undefined
  #index = 0 // of the active row, for when it goes
  #host: WalkHost

  constructor(host: WalkHost) {
    this.#host = host
  }

  stand(spot: Spot, block?: Block): void {
    this.active = spot
    this.block = block
    this.#host.changed()
  }

  /** The cell that is really there of a row and a column. */
  cellOf(spot: Spot): Spot {
    const column = cellColumn(rowAt(this.#host.table(), spot.row), spot.column, this.#host.columns())
    return { row: spot.row, column }
  }

  get extent(): Extent {
    return extentOf(this.#host.table(), this.#host.columns(), this.active, this.block)
  }

  get wholeRow(): Extent {
    const row = rowAt(this.#host.table(), this.active.row)
    return { rows: row ? [row] : [], columns: this.#host.columns() }
  }

  get columns(): readonly Column[] {
    return this.#host.columns()
  }

  /** `page` says how many rows a screenful has, when that is what is asked for. */
  move(to: Direction, extend: boolean, page: () => number): void {
    const rows = to === 'pageUp' || to === 'pageDown' ? page() : 0
    const spot = step(this.#host.table(), this.#host.columns(), this.active, to, rows)
    if (extend) this.extendTo(spot)
    else this.stand(spot)
  }

  /** The block from where it began to `spot`; where whole rows are selected it goes on by whole rows. */
  extendTo(spot: Spot): void {
    const columns = this.#host.columns()
    const { anchor, head } = this.block ?? { anchor: this.cellOf(this.active), head: undefined }
    const last = columns[columns.length - 1]
    const isRows = last && anchor.column === columns[0] && head?.column === last
    this.stand(spot, { anchor, head: isRows ? { row: spot.row, column: last } : this.cellOf(spot) })
  }

  select(what: 'all' | 'row' | 'column'): void {
    const { rows } = this.#host.table()
    const columns = this.#host.columns()
    const { row, column } = this.cellOf(this.active)
    const [left, right] = what === 'column' ? [column, column] : [columns[0]!, columns[columns.length - 1]!]
    const [top, bottom] =
      what === 'row' ? [row, row] : [rows[0]?.key ?? row, rows[rows.length - 1]?.key ?? row]
    this.stand(this.active, { anchor: { row: top, column: left }, head: { row: bottom, column: right } })
  }

  /** Where the way on from an edited cell leads; undefined past the last cell. */
  onward(from: Spot, to: Leave): Spot | undefined {
    const [table, columns] = [this.#host.table(), this.#host.columns()]
    if (to === 'stay') return from
    if (to === 'next' || to === 'previous') return nextToType(table, columns, from, to === 'next' ? 1 : -1)
    return step(table, columns, from, to, 1)
  }

  /** Rows may have come and gone: stays on the row, or where the row was. */
  settle(afresh: boolean): void {
    const table = this.#host.table()
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
