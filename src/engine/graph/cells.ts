import type { CellError } from '../expression/problem.js'
import type { Evaluate } from './compile.js'
import { missing, pending } from './errors.js'
import { grown, Slots } from './slots.js'

/** What a cell is. */
export const Kind = {
  none: 0, // no cell: a number to be given out again
  missing: 1, // a name that others take from and nobody has defined
  input: 2, // a number or an error that was set
  constant: 3, // a number written in expressions, shared by all that write it
  derived: 4, // worked out from its slots
} as const
export type Kind = (typeof Kind)[keyof typeof Kind]

// Passing notes on a cell, a bit each.
export const CYCLIC = 1 // lies on a cycle: holds its error and is not worked out
export const RESHAPED = 2 // to be worked out, or undone, at the end of this transaction

/** All cells of a graph, a column a property, a row a cell. Cell 0 is no cell. */
export class Cells {
  values: Float64Array = new Float64Array(64) // NaN: an error, or not worked out yet
  kinds = new Uint8Array(64)
  marks = new Uint8Array(64)
  levels = new Int32Array(64) // above those of all it takes from; cells of one cycle share theirs
  notes = new Int32Array(64) // the transaction whose journal last noted the cell
  froms = new Int32Array(64) // first slot
  counts = new Int32Array(64) // number of slots
  users = new Int32Array(64) // first slot that takes from this cell, the latest linked
  readonly code: (Evaluate | undefined)[] = [undefined]
  readonly names: string[] = ['']
  readonly errors = new Map<number, CellError>() // of the cells whose value is NaN
  readonly slots = new Slots()
  length = 1
  readonly #freed: number[] = []

  add(name: string, kind: Kind, value: number): number {
    let id = this.#freed.pop()
    if (id === undefined) {
      id = this.length++
      if (id === this.values.length) this.#grow()
    }
    this.kinds[id] = kind
    this.values[id] = value
    this.names[id] = name
    this.code[id] = undefined
    return id
  }

  /** The error of a cell whose value is NaN. */
  errorOf(id: number): CellError {
    const known = this.errors.get(id)
    if (known) return known
    const name = this.names[id]!
    if (this.kinds[id] !== Kind.missing) return pending(name)
    const error = missing(name)
    this.errors.set(id, error)
    return error
  }

  /** Lets a cell without slots and without users go. */
  free(id: number): void {
    this.kinds[id] = Kind.none
    this.names[id] = ''
    this.errors.delete(id)
    this.levels[id] = 0
    this.#freed.push(id)
  }

  /** True when the cell takes from exactly these already, in this order. */
  takesFrom(id: number, inputs: Int32Array, count: number): boolean {
    if (this.counts[id] !== count) return false
    const { takes } = this.slots
    const from = this.froms[id]!
    for (let i = 0; i < count; i++) if (takes[from + i] !== inputs[i]) return false
    return true
  }

  /** Makes the cell take from the first `count` of `inputs`, and tells which of the former inputs have no user left. */
  connect(id: number, inputs: Int32Array, count: number, unused: number[]): void {
    const { slots, users } = this
    const former = this.counts[id]!
    if (former > 0) {
      const { takes, next, prev } = slots
      const from = this.froms[id]!
      for (let slot = from; slot < from + former; slot++) {
        const before = prev[slot]!
        const after = next[slot]!
        if (before) next[before] = after
        else users[takes[slot]!] = after
        if (after) prev[after] = before
        else if (!before) unused.push(takes[slot]!)
      }
      slots.free(from, former)
    }
    const from = slots.claim(count)
    const { takes, owner, next, prev } = slots
    for (let i = 0; i < count; i++) {
      const slot = from + i
      const input = inputs[i]!
      const after = users[input]!
      takes[slot] = input
      owner[slot] = id
      next[slot] = after
      prev[slot] = 0
      if (after) prev[after] = slot
      users[input] = slot
    }
    this.froms[id] = from
    this.counts[id] = count
  }

  /** The lowest level the cell may have: one above the highest it takes from. */
  levelNeeded(id: number): number {
    const { levels } = this
    const { takes } = this.slots
    const from = this.froms[id]!
    const end = from + this.counts[id]!
    let level = 0
    for (let slot = from; slot < end; slot++) {
      const above = levels[takes[slot]!]! + 1
      if (above > level) level = above
    }
    return level
  }

  /** True when some user does not stand above the cell, as after the cell rose. */
  crowded(id: number): boolean {
    const { levels } = this
    const { owner, next } = this.slots
    for (let slot = this.users[id]!; slot; slot = next[slot]!)
      if (levels[owner[slot]!]! <= levels[id]!) return true
    return false
  }

  #grow(): void {
    const length = Math.ceil(this.values.length * 1.5)
    this.values = grown(this.values, length)
    this.kinds = grown(this.kinds, length)
    this.marks = grown(this.marks, length)
    this.levels = grown(this.levels, length)
    this.notes = grown(this.notes, length)
    this.froms = grown(this.froms, length)
    this.counts = grown(this.counts, length)
    this.users = grown(this.users, length)
  }
}
