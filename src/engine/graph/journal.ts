import type { CellError } from '../expression/problem.js'
import { type Cells, Kind, RESHAPED } from './cells.js'
import type { Evaluate } from './compile.js'
import { sameError } from './errors.js'
import { grown } from './slots.js'

/** How a cell was defined before a transaction. */
export interface Former {
  readonly kind: Kind
  readonly code: Evaluate | undefined
  readonly inputs: Int32Array
}

/** What a transaction has touched, as it was before. Each cell is noted once. */
export class Journal {
  ids = new Int32Array(64)
  transaction = 1 // number of this one
  length = 0
  edited = 0 // as many were noted by edits; the others because they came to another value
  readonly reshaped: number[] = [] // cells newly defined, redefined or removed
  readonly formers = new Map<number, Former>() // of the reshaped, those that were defined
  readonly loosened: number[] = [] // cells of a cycle that may have been broken
  readonly #cells: Cells
  readonly #errors = new Map<number, CellError>() // a noted NaN without one was no value at all
  #values: Float64Array = new Float64Array(64)

  constructor(cells: Cells) {
    this.#cells = cells
  }

  /** Notes the cell's value as it is now, unless an earlier one is noted. */
  note(id: number): void {
    const { notes } = this.#cells
    if (notes[id] === this.transaction) return
    notes[id] = this.transaction
    this.add(id, this.#cells.values[id]!)
  }

  /** Notes the value of a cell that is not noted yet, nor will be again. */
  add(id: number, value: number): void {
    const at = this.length++
    if (at === this.ids.length) this.#grow()
    this.ids[at] = id
    this.#values[at] = value
    if (Number.isNaN(value)) this.#noteError(id)
  }

  #grow(): void {
    this.ids = grown(this.ids, this.length * 2)
    this.#values = grown(this.#values, this.length * 2)
  }

  #noteError(id: number): void {
    const error = this.#cells.errors.get(id)
    if (error) this.#errors.set(id, error)
  }

  /** Whether the value noted at that place is another now. */
  differs(at: number): boolean {
    const { values, errors } = this.#cells
    const id = this.ids[at]!
    const before = this.#values[at]!
    const now = values[id]!
    if (!Number.isNaN(before) || !Number.isNaN(now)) return !Object.is(before, now)
    return errors.get(id) !== this.#errors.get(id)
  }

  /** Where an edit came to an error that tells the same as the one noted, keeps that, so that nothing changed. */
  keep(at: number): void {
    const { errors } = this.#cells
    const id = this.ids[at]!
    const before = this.#errors.get(id)
    const now = errors.get(id)
    if (before && now && sameError(before, now)) errors.set(id, before)
  }

  /** Names of the cells whose value is not what was noted. */
  changes(): string[] {
    const { ids, length, edited } = this
    const { kinds, names, values } = this.#cells
    const changed = new Array<string>(length)
    let count = 0
    for (let at = 0; at < edited; at++) {
      const id = ids[at]!
      if (!this.differs(at)) continue
      const neverWas = Number.isNaN(this.#values[at]) && !this.#errors.has(id)
      if (neverWas && kinds[id] === Kind.missing && Number.isNaN(values[id])) continue
      changed[count++] = names[id]!
    }
    for (let at = edited; at < length; at++) changed[count++] = names[ids[at]!]!
    if (count < length) changed.length = count
    return changed
  }

  /** Puts the values back. */
  restore(): void {
    const { values, errors } = this.#cells
    for (let at = 0; at < this.length; at++) {
      const id = this.ids[at]!
      const error = this.#errors.get(id)
      values[id] = this.#values[at]!
      if (error) errors.set(id, error)
      else errors.delete(id)
    }
  }

  clear(): void {
    const { marks } = this.#cells
    this.transaction++
    this.length = 0
    this.edited = 0
    if (this.#errors.size > 0) this.#errors.clear()
    if (this.reshaped.length === 0) return
    for (const id of this.reshaped) marks[id]! &= ~RESHAPED
    this.reshaped.length = 0
    this.loosened.length = 0
    this.formers.clear()
  }
}
