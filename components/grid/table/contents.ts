import { type Column, columnsFor, emptyTable, type Given, type Table, type Width } from './table.js'
import { tableOf } from './table-of.js'

/** What the grid holds: its rows and its columns, each the same object for as long as they are the same. */
export class Contents {
  #given: Given & { readonly version: number; readonly width: Width }
  #table: Table = emptyTable
  #tableOf: readonly unknown[] = [] // what the rows were made of
  #columns: readonly Column[] = []
  #columnsOf = ''

  constructor(given: Given & { readonly version: number; readonly width: Width }) {
    this.#given = given
  }

  /** The rows as the formula stands, also between an edit and its painting. */
  get table(): Table {
    const { sheet, version, numbers, readOnly } = this.#given
    if (!sheet) return this.#table // not given yet
    const of = [sheet, sheet.formula, version, numbers, readOnly]
    if (of.some((v, i) => v !== this.#tableOf[i])) {
      const afresh = sheet !== this.#tableOf[0] || numbers !== this.#tableOf[3]
      this.#table = tableOf(sheet, numbers, readOnly, afresh ? emptyTable : this.#table)
      this.#tableOf = of
    }
    return this.#table
  }

  get columns(): readonly Column[] {
    const { width, readOnly } = this.#given
    const { batch } = this.table
    const of = `${width} ${readOnly} ${batch}`
    if (of !== this.#columnsOf) {
      this.#columns = columnsFor(width, readOnly, batch)
      this.#columnsOf = of
    }
    return this.#columns
  }
}
