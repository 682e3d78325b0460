import { type Cells, Kind, Mark } from './cells.js'
import * as errors from './errors.js'
import type { Journal } from './journal.js'
import type { CellError } from './problem.js'
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

  constructor(cells: Cells, journal: Journal) {
    this.#cells = cells
    this.#journal = journal
  }

  run(): void {
    const { kinds } = this.#cells
    const journal = this.#journal
    const edited = journal.length
    for (let at = 0; at < edited; at++) {
      journal.keep(at)
      if (journal.differs(at)) this.#queueUsers(journal.ids[at]!)
    }
    for (const id of journal.reshaped) if (kinds[id] === Kind.derived) this.#enqueue(id)
    for (const id of journal.loosened) if (kinds[id] === Kind.derived) this.#enqueue(id)
    this.running = true
    try {
      this.#drain()
    } finally {
      this.running = false
    }
  }

  /** Forgets what still waits, after a cell's function threw. */
  stop(): void {
    const { marks } = this.#cells
    for (let id = this.#queue.take(); id; id = this.#queue.take()) marks[id]! &= ~Mark.queued
    this.told = undefined
  }

  #drain(): void {
    const { marks } = this.#cells
    for (let id = this.#queue.take(); id; id = this.#queue.take()) {
      marks[id]! &= ~Mark.queued
      // A lone user, when nothing else waits, has all its inputs final and needs no queue.
      for (let lone = this.#work(id); lone; ) lone = this.#work(lone)
    }
  }

  /** Works the cell out and passes a change on; gives back a lone user that can be worked out at once, or 0. */
  #work(id: number): number {
    const cells = this.#cells
    this.evaluations++
    const before = cells.values[id]!
    const result = cells.code[id]!(cells.values, cells.slots.takes, cells.froms[id]!)
    if (result - result === 0) {
      if (Object.is(result, before)) return 0
      this.#journal.note(id)
      cells.values[id] = result
      if (Number.isNaN(before)) cells.errors.delete(id)
    } else if (!this.#fault(id)) return 0
    const slot = cells.users[id]!
    if (slot === 0) return 0
    if (cells.slots.next[slot] !== 0 || this.#queue.size > 0) {
      this.#queueUsers(id)
      return 0
    }
    const lone = cells.slots.owner[slot]!
    return cells.marks[lone]! & Mark.cyclic ? 0 : lone
  }

  #queueUsers(id: number): void {
    const { users, slots } = this.#cells
    const { owner, next } = slots
    for (let slot = users[id]!; slot; slot = next[slot]!) this.#enqueue(owner[slot]!)
  }

  #enqueue(id: number): void {
    const { marks, levels } = this.#cells
    if (marks[id]! & (Mark.queued | Mark.cyclic)) return
    marks[id]! |= Mark.queued
    this.#queue.put(id, levels[id]!)
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
