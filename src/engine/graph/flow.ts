import type { CellError } from '../expression/problem.js'
import { type Cells, CYCLIC, Kind } from './cells.js'
import * as errors from './errors.js'
import type { Journal } from './journal.js'
import { LevelQueue } from './queue.js'

/** Works out what a transaction touched, each cell once and after all that it takes from. */
export class Flow {
  /** How many times a cell has been worked out. */
  evaluations = 0
  /** Why the function of the cell at hand gives no number, if it says so itself. */
  told: CellError | undefined
  running = false
  readonly #cells: Cells
  readonly #journal: Journal
  readonly #queue = new LevelQueue()
  #rest = 0 // first of those taken from the queue that are not worked out yet

  constructor(cells: Cells, journal: Journal) {
    this.#cells = cells
    this.#journal = journal
  }

  /** `highest`: no level is above. */
  run(highest: number): void {
    this.#queue.reserve(this.#cells.length, highest)
    const journal = this.#journal
    journal.edited = journal.length
    for (let at = 0; at < journal.edited; at++) {
      journal.keep(at)
      if (journal.differs(at)) this.#queueUsers(journal.ids[at]!)
    }
    for (const id of journal.reshaped) this.#enqueue(id)
    for (const id of journal.loosened) this.#enqueue(id)
    this.running = true
    try {
      this.#drain()
    } finally {
      this.running = false
    }
  }

  /** Forgets what still waits, after a cell's function threw. */
  stop(): void {
    this.#queue.clear(this.#rest)
    this.#rest = 0
    this.told = undefined
  }

  // The inner loop of the engine: columns at hand, and no call for what most cells do not need.
  #drain(): void {
    const { values, users, slots, code, froms, notes, marks, errors } = this.#cells
    const { takes, owner, next } = slots
    const journal = this.#journal
    const { transaction } = journal
    const queue = this.#queue
    for (let head = queue.takeLevel(); head; head = queue.takeLevel()) {
      for (let first = head; first; first = this.#rest) {
        this.#rest = queue.after(first)
        for (let id = first; id; ) {
          this.evaluations++
          const before = values[id]!
          const result = code[id]!(values, takes, froms[id]!)
          if (result - result === 0) {
            if (result === before && (result !== 0 || 1 / result === 1 / before)) break // Object.is, but without a call
            if (notes[id] !== transaction) journal.add(id, before)
            values[id] = result
            if (Number.isNaN(before)) errors.delete(id)
          } else if (!this.#fault(id)) break
          const slot = users[id]!
          if (slot === 0) break
          if (next[slot] !== 0 || this.#rest !== 0 || queue.filled > 0) {
            this.#queueUsers(id)
            break
          }
          // A lone user, when nothing else waits, has all its inputs final and needs no queue.
          id = owner[slot]!
          if (marks[id]! & CYCLIC) break
        }
      }
    }
  }

  #enqueue(id: number): void {
    const { kinds, marks, levels } = this.#cells
    if (kinds[id] === Kind.derived && !(marks[id]! & CYCLIC)) this.#queue.put(id, levels[id]!)
  }

  #queueUsers(id: number): void {
    const { users, slots, levels, marks } = this.#cells
    const { owner, next } = slots
    const queue = this.#queue
    for (let slot = users[id]!; slot; slot = next[slot]!) {
      const user = owner[slot]!
      if (!(marks[user]! & CYCLIC)) queue.put(user, levels[user]!)
    }
  }

  /** Gives the cell the reason why it has no number: the first of its inputs', or its own. True when that is news. */
  #fault(id: number): boolean {
    const { values, errors: held, names, froms, counts, slots } = this.#cells
    const told = this.told
    this.told = undefined
    const before = held.get(id)
    let error: CellError | undefined
    const from = froms[id]!
    for (let slot = from; slot < from + counts[id]! && !error; slot++) {
      const input = slots.takes[slot]!
      if (Number.isNaN(values[input])) error = this.#cells.errorOf(input)
    }
    if (!error) {
      error = told ?? errors.domain(names[id]!)
      if (before && errors.sameError(before, error)) return false
    }
    if (before === error) return false
    this.#journal.note(id)
    values[id] = Number.NaN
    held.set(id, error)
    return true
  }
}
