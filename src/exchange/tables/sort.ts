import type { DecimalMark } from '../values/decimals.js'
import { type AmountUse, type CellRead, isAmountUse, readCell } from './cell-quantity.js'
import { gaps, isBlankRow } from './split.js'
import type { ColumnUse, ForeignRow, Mapping } from './types.js'
import { folded, isReading, isTotalWord, totalOf } from './words.js'

/** All that a row says. */
export const textOf = ({ cells }: { readonly cells: readonly string[] }): string =>
  cells.filter(cell => cell.trim() !== '').join(' | ')

/** What a row says that is kept as a note. */
export const noteOf = ({ name, note }: Sorted): string => [name, note].filter(Boolean).join(' ')

export interface AmountCell {
  readonly use: AmountUse
  readonly cell: string
  readonly read: Exclude<CellRead, { is: 'nothing' }>
}

/** A row by the uses of its columns, before its neighbours are looked at. */
export interface Sorted {
  readonly row: number
  readonly is:
    | 'not understood'
    | 'blank'
    | 'headings'
    | 'name' // a name and no amount
    | 'amounts' // amounts and no name
    | 'total'
    | 'reading' // tells of the dough, not of an ingredient
    | 'notes' // only in the column of notes
    | 'line'
  readonly name: string // the ingredient, or whatever stands in its place
  readonly stage: string
  readonly formula: string
  readonly note: string
  readonly amounts: readonly AmountCell[]
  readonly cells: readonly string[]
  readonly why?: string
}

/** Reads cells, each text once: a table says 20 g and 100 % over and over. */
class CellReader {
  readonly #known = new Map<AmountUse, Map<string, CellRead>>()
  constructor(readonly mark: DecimalMark) {}

  read(cell: string, use: AmountUse): CellRead {
    let known = this.#known.get(use)
    if (!known) {
      known = new Map()
      this.#known.set(use, known)
    }
    let read = known.get(cell)
    if (!read) {
      if (known.size > 5000) known.clear()
      read = readCell(cell, use, this.mark)
      known.set(cell, read)
    }
    return read
  }
}

const headingRowKey = (cells: readonly string[]): string => cells.map(folded).join('\t').trim()

const tidyCell = (cell: string): string => {
  const said = cell.trim()
  return /[^\S ]| {2}/.test(said) ? said.replace(/\s+/g, ' ') : said
}

const nothing = { name: '', stage: '', formula: '', note: '', amounts: [] } as const

interface Label {
  readonly isTotal: boolean
  readonly isTotalWord: boolean
  readonly isReading: boolean
}

export class Sorter {
  readonly #cells: CellReader
  readonly #headings: string
  readonly #columns: readonly ColumnUse[]
  readonly #labels = new Map<string, Label>()
  readonly #otherHeadings: readonly number[] // columns with a heading, but for that of the ingredients

  constructor(
    mapping: Mapping,
    readonly headings: readonly string[],
    readonly delimiter: string,
  ) {
    this.#cells = new CellReader(mapping.decimal)
    this.#headings = headingRowKey(headings)
    this.#columns = mapping.columns
    const ingredient = mapping.columns.indexOf('ingredient')
    this.#otherHeadings = [...headings.keys()].filter(at => at !== ingredient && headings[at]!.trim() !== '')
  }

  sort(foreign: ForeignRow): Sorted {
    const { row, cells, broken } = foreign
    if (broken) return { ...nothing, row, cells, is: 'not understood', why: broken }
    if (isBlankRow(foreign)) return { ...nothing, row, cells, is: 'blank' }
    if (this.#isHeadings(cells)) return { ...nothing, row, cells, is: 'headings' }
    const over = this.#headingOver(cells)
    if (over !== undefined) return { ...nothing, row, cells, is: 'name', name: over }
    const { length } = this.#columns
    const lost = (why: string): Sorted => ({ ...nothing, row, cells, is: 'not understood', why })
    if (cells.length > length && cells.slice(length).some(cell => cell.trim() !== ''))
      return lost(
        `Row ${row} has ${cells.length} cells where the table has ${length} columns, so that it is not known which is which. A comma within a cell needs quotation marks around the cell.`,
      )
    const sorted = this.#sort(row, cells)
    if (!this.#mayBeShifted(sorted)) return sorted
    return lost(
      `Row ${row} has ${cells.length} cells where the table has ${length} columns, and blanks do not show which is missing.`,
    )
  }

  #isHeadings(cells: readonly string[]): boolean {
    const { headings } = this
    return (
      headings.length > 0 &&
      cells[0]?.length === headings[0]?.length &&
      headingRowKey(cells) === this.#headings
    )
  }

  /** `Levain | kg | %` under `Dough | kg | %`: the headings again, with the name of a stage among them. */
  #headingOver(cells: readonly string[]): string | undefined {
    const at = this.#columns.indexOf('ingredient')
    const others = this.#otherHeadings
    if (at < 0 || others.length === 0) return undefined
    const isSame = others.every(column => cells[column]?.trim() === this.headings[column]!.trim())
    const name = tidyCell(cells[at] ?? '')
    return isSame && name !== '' ? name : undefined
  }

  /** Between blanks an empty cell is not seen, so that a number without a unit may stand in the wrong column. */
  #mayBeShifted({ cells, is, amounts }: Sorted): boolean {
    if (this.delimiter !== gaps || (is !== 'line' && is !== 'total' && is !== 'amounts')) return false
    const last = this.#columns.findLastIndex(use => use !== 'note')
    return cells.length <= last && amounts.some(({ read }) => read.is === 'quantity' && read.bare)
  }

  #sort(row: number, cells: readonly string[]): Sorted {
    const at = { ingredient: '', stage: '', formula: '', note: '', unit: '' }
    const amounts: AmountCell[] = []
    const given: { use: AmountUse; cell: string }[] = []
    for (let column = 0; column < cells.length; column++) {
      const use = this.#columns[column]
      if (use === undefined || use === 'leave out' || use === 'of a stage') continue
      const said = tidyCell(cells[column]!)
      if (said === '') continue
      if (isAmountUse(use)) given.push({ use, cell: said })
      else at[use] = at[use] === '' ? said : `${at[use]}; ${said}`
    }
    for (const { use, cell: said } of given) {
      const hasUnit = use !== 'amount' || at.unit === '' || !/[\d¼-¾⅐-⅞]$/.test(said)
      const cell = hasUnit ? said : `${said} ${at.unit}`
      const read = this.#cells.read(cell, use)
      if (read.is !== 'nothing') amounts.push({ use, cell, read })
    }
    const { stage, formula, note } = at
    // a total is often written in whatever column has room
    const label = at.ingredient || stage || formula
    const is = this.#kind(label, at.ingredient, stage, amounts)
    const name = is === 'total' ? label : at.ingredient
    return { row, is, name, stage, formula, note, amounts, cells }
  }

  #kind(label: string, name: string, stage: string, amounts: readonly AmountCell[]): Sorted['is'] {
    if (label === '') return amounts.length > 0 ? 'amounts' : 'notes'
    const { isTotal, isTotalWord: isSaid, isReading: isOfDough } = this.#label(label)
    if (isTotal && (name === '' || amounts.length > 0 || (stage === '' && isSaid))) return 'total'
    if (amounts.length === 0) return 'name'
    if (name === '') return 'amounts'
    return isOfDough || amounts.some(({ read }) => read.is === 'reading') ? 'reading' : 'line'
  }

  #label(name: string): Label {
    let label = this.#labels.get(name)
    if (!label) {
      if (this.#labels.size > 5000) this.#labels.clear()
      const isTotal = totalOf(name) !== undefined
      label = { isTotal, isTotalWord: isTotal && isTotalWord(name), isReading: isReading(name) }
      this.#labels.set(name, label)
    }
    return label
  }
}
