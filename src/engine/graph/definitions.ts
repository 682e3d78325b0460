import { type Cells, CYCLIC, Kind, RESHAPED } from './cells.js'
import type { Evaluate } from './compile.js'
import * as errors from './errors.js'
import type { Journal } from './journal.js'
import { derivedCells, Order } from './order.js'
import { grown } from './slots.js'

/** Which cells there are, by name, what each takes from, and in which order that puts them. */
export class Definitions {
  /** Number of cells defined. */
  size = 0
  /** No level is above. */
  highest = 0
  readonly #cells: Cells
  readonly #journal: Journal
  readonly #ids = new Map<string, number>() // of cells and of missing names
  readonly #constants = new Map<number, number>() // value → id
  readonly #order = new Order()
  readonly #unsorted: number[] = [] // cells that may stand above some of their users, or on a cycle
  readonly #unused: number[] = [] // missing names and constants that may have lost their last user
  #inputs = new Int32Array(64) // scratch: ids that a cell is to take from

  constructor(cells: Cells, journal: Journal) {
    this.#cells = cells
    this.#journal = journal
  }

  /** The id of a cell or a missing name. */
  find(name: string): number | undefined {
    return this.#ids.get(name)
  }

  /** The cell of that name; a missing one if there is none. */
  idOf(name: string): number {
    const known = this.#ids.get(name)
    if (known !== undefined) return known
    const id = this.#cells.add(name, Kind.missing, Number.NaN)
    this.#ids.set(name, id)
    return id
  }

  /** Makes the cell one that `code` works out from `names`, then `constants`. */
  derive(name: string, names: readonly string[], constants: readonly number[], code: Evaluate): void {
    const id = this.idOf(name)
    const count = names.length + constants.length
    if (count > this.#inputs.length) this.#inputs = grown(this.#inputs, count * 2)
    const inputs = this.#inputs
    for (let i = 0; i < names.length; i++) inputs[i] = this.idOf(names[i]!)
    for (let i = 0; i < constants.length; i++) inputs[names.length + i] = this.#constant(constants[i]!)
    const { kinds, code: codes } = this.#cells
    if (kinds[id] === Kind.derived && codes[id] === code && this.#cells.takesFrom(id, inputs, count)) return
    this.#reshape(id, Kind.derived, code, inputs, count)
  }

  /** Makes the cell an input, or a missing name. Its value is the caller's to set. */
  clear(id: number, kind: typeof Kind.input | typeof Kind.missing): void {
    if (this.#cells.kinds[id] === kind) return
    this.#reshape(id, kind, undefined, this.#inputs, 0)
    if (kind === Kind.missing && this.#cells.users[id] === 0) this.#unused.push(id)
  }

  /** Puts what was redefined in order again, and gives their error to cells that lie on a cycle. */
  settle(): void {
    if (this.highest > 4 * this.#cells.length + 1024) {
      this.highest = 0
      this.#sort(derivedCells(this.#cells))
    } else if (this.#unsorted.length > 0) this.#sort(this.#unsorted)
  }

  /** Puts definitions and cycles back as they were, then values. */
  undo(): void {
    const { marks, users } = this.#cells
    const journal = this.#journal
    for (let at = 0; at < journal.length; at++) {
      const id = journal.ids[at]!
      if (!(marks[id]! & CYCLIC)) continue
      marks[id]! &= ~CYCLIC
      this.#unsorted.push(id)
    }
    for (const id of journal.reshaped) {
      const former = journal.formers.get(id)
      const inputs = former?.inputs ?? this.#inputs
      this.#shape(id, former?.kind ?? Kind.missing, former?.code, inputs, former?.inputs.length ?? 0)
      this.#unsorted.push(id)
      if (users[id] === 0) this.#unused.push(id)
    }
    this.#sort(this.#unsorted)
    journal.restore()
  }

  /** Lets names and constants go that nothing takes from any more. */
  tidy(): void {
    if (this.#unused.length === 0) return
    const cells = this.#cells
    for (const id of this.#unused) {
      if (cells.users[id] !== 0) continue
      if (cells.kinds[id] === Kind.missing) this.#ids.delete(cells.names[id]!)
      else if (cells.kinds[id] === Kind.constant) this.#constants.delete(cells.values[id]!)
      else continue
      cells.free(id)
    }
    this.#unused.length = 0
  }

  #constant(value: number): number {
    const known = this.#constants.get(value)
    if (known !== undefined) return known
    const id = this.#cells.add('', Kind.constant, value)
    this.#constants.set(value, id)
    return id
  }

  #reshape(id: number, kind: Kind, code: Evaluate | undefined, inputs: Int32Array, count: number): void {
    this.#remember(id)
    this.#loosen(id)
    this.#shape(id, kind, code, inputs, count)
  }

  #remember(id: number): void {
    const { marks, kinds, code, froms, counts, slots } = this.#cells
    if (marks[id]! & RESHAPED) return
    marks[id]! |= RESHAPED
    this.#journal.reshaped.push(id)
    if (kinds[id] === Kind.missing) return
    const from = froms[id]!
    this.#journal.formers.set(id, {
      kind: kinds[id] as Kind,
      code: code[id],
      inputs: slots.takes.slice(from, from + counts[id]!),
    })
  }

  /** Before a member of a cycle changes: what lay on the cycle with it may do so no longer. */
  #loosen(id: number): void {
    const { marks, users, slots } = this.#cells
    if (!(marks[id]! & CYCLIC)) return
    marks[id]! &= ~CYCLIC
    const loosened = [id]
    for (const member of loosened) {
      for (let slot = users[member]!; slot; slot = slots.next[slot]!) {
        const user = slots.owner[slot]!
        if (!(marks[user]! & CYCLIC)) continue
        marks[user]! &= ~CYCLIC
        loosened.push(user)
      }
    }
    for (const member of loosened) {
      this.#unsorted.push(member)
      this.#journal.loosened.push(member)
    }
  }

  #shape(id: number, kind: Kind, code: Evaluate | undefined, inputs: Int32Array, count: number): void {
    const cells = this.#cells
    this.size += Number(kind !== Kind.missing) - Number(cells.kinds[id] !== Kind.missing)
    cells.kinds[id] = kind
    cells.code[id] = code
    cells.connect(id, inputs, count, this.#unused)
    const level = cells.levelNeeded(id)
    const rose = level > cells.levels[id]!
    cells.levels[id] = level
    if (level > this.highest) this.highest = level
    if (rose && cells.crowded(id)) this.#unsorted.push(id)
  }

  /** Gives levels to everything behind the cells of `roots`, and an error to what lies on a cycle. */
  #sort(roots: readonly number[]): void {
    const { marks, values, errors: held, names } = this.#cells
    const cycles = this.#order.arrange(this.#cells, roots, members => this.#start(members))
    this.highest = Math.max(this.highest, this.#order.highest)
    this.#unsorted.length = 0
    for (const { members, path } of cycles) {
      const standing = held.get(members[0]!)
      if (standing && members.every(id => marks[id]! & CYCLIC && held.get(id) === standing)) continue
      const found = errors.cycle(path.map(id => names[id]!))
      const error = standing && errors.sameError(standing, found) ? standing : found
      for (const id of members) {
        this.#journal.note(id)
        marks[id]! |= CYCLIC
        values[id] = Number.NaN
        held.set(id, error)
      }
    }
  }

  /** A cycle is told from a cell that was just edited, if it has one. */
  #start(members: readonly number[]): number {
    const { marks } = this.#cells
    let start = 0
    let edited = false
    for (const id of members) {
      const reshaped = (marks[id]! & RESHAPED) !== 0
      if (start === 0 || (reshaped && !edited) || (reshaped === edited && id < start)) {
        start = id
        edited = reshaped
      }
    }
    return start
  }
}
