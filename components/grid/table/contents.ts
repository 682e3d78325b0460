import { allTouched, type Touched, untouched } from '../../../src/dough/sheet/touched.js'
import { type Column, columnsFor, emptyTable, type Given, type Table, type Width } from './table.js'
import { tableOf } from './table-of.js'

/** What the grid holds: its rows and its columns, each the same object for as long as they are the same. */
export class Contents {
  #given: Given & { readonly width: Width }
  #table: Table = emptyTable
  #tableOf: readonly unknown[] = [] // what the rows were made of
  #columns: readonly Column[] = []
  #columnsOf = ''

  constructor(given: Given & { readonly width: Width }) {
    this.#given = given
  }

  /**
   * The rows of the formula as it stands, also between an edit and its painting: until what it touched is known, lines
   * that stayed show their former figures.
   */
  get table(): Table {
    const { sheet, numbers, readOnly } = this.#given
    if (!sheet) return this.#table // not given yet
    const [made, formula, style, fixed] = this.#tableOf
    if (sheet !== made || numbers !== style || readOnly !== fixed) this.follow(allTouched)
    else if (sheet.formula !== formula) this.follow(untouched)
    return this.#table
  }

  /** Reads from the sheet what is touched. */
  follow(touched: Touched): void {
    const { sheet, numbers, readOnly } = this.#given
    const [made, , style] = this.#tableOf
    const before = sheet === made && numbers === style ? this.#table : emptyTable
    this.#table = tableOf(sheet, numbers, readOnly, before, touched)
    this.#tableOf = [sheet, sheet.formula, numbers, readOnly]
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
