import type { Diagnostic } from '../expression/diagnostic.js'
import type { CellError, CellValue } from '../expression/problem.js'
import type { Expression } from '../expression/tree.js'
import { Cells, Kind } from './cells.js'
import { compile, type Evaluate } from './compile.js'
import { Definitions } from './definitions.js'
import * as errors from './errors.js'
import { Flow } from './flow.js'
import { Journal } from './journal.js'

/**
 * Named cells that follow each other. An edit marks what depends on it, works that out once in dependency
 * order, stops where a value did not change, and reports which cells changed. Edits belong into `transact`;
 * one made outside is a transaction of its own.
 *
 * A cell without a number holds the reason as a `CellError`; users of it hold the very same object.
 * Names may be taken from before they are defined. What lies on a cycle holds an error that spells it.
 */
export class Graph {
  readonly #cells = new Cells()
  readonly #journal = new Journal(this.#cells)
  readonly #definitions = new Definitions(this.#cells, this.#journal)
  readonly #flow = new Flow(this.#cells, this.#journal)
  readonly #sums = new Map<number, Evaluate>() // number of inputs → their sum
  #depth = 0
  #failure: { readonly reason: unknown } | undefined // why the transaction cannot hold

  /** How many times a cell has been worked out since the graph was made. */
  get evaluations(): number {
    return this.#flow.evaluations
  }

  /** Number of cells defined. */
  get size(): number {
    return this.#definitions.size
  }

  has(name: string): boolean {
    const id = this.#definitions.find(name)
    return id !== undefined && this.#cells.kinds[id] !== Kind.missing
  }

  /** Within a transaction, derived cells still have their values from before it. */
  value(name: string): CellValue {
    const id = this.#definitions.find(name)
    if (id === undefined) return errors.missing(name)
    const value = this.#cells.values[id]!
    if (!Number.isNaN(value)) return value
    return this.#cells.errorOf(id)
  }

  /** Sets the cell to a number, and makes it an input if it was not. Throws a RangeError unless `value` is finite. */
  input(name: string, value: number): void {
    if (!Number.isFinite(value))
      throw new RangeError(`"${name}" is to be set to a finite number, not to ${value}.`)
    if (this.#depth > 0 && !this.#flow.running) this.#set(name, value, undefined)
    else this.transact(() => this.#set(name, value, undefined))
  }

  /** Sets the cell to an error of kind 'text' that says why. */
  fail(name: string, why: Diagnostic): void {
    this.#edit(() => this.#set(name, Number.NaN, { ...why, kind: 'text', origin: name }))
  }

  /** Defines the cell by an expression. `resolve` gives the cell that a name in the expression stands for. */
  define(name: string, expression: Expression, resolve?: (name: string) => string): void {
    const code = compile(expression)
    const { names, numbers } = expression
    const inputs = resolve ? names.map(resolve) : names
    this.#edit(() => this.#definitions.derive(name, inputs, numbers, code))
  }

  /**
   * Defines the cell by a function over other cells, called only when all of them have numbers. The array it is given
   * is used again for the next call.
   */
  compute(
    name: string,
    inputs: readonly string[],
    fn: (values: readonly number[]) => number | CellError,
  ): void {
    const given = new Array<number>(inputs.length).fill(0)
    const code: Evaluate = (values, slots, from) => {
      for (let i = 0; i < given.length; i++) {
        const value = values[slots[from + i]!]!
        if (Number.isNaN(value)) return value
        given[i] = value
      }
      const result = fn(given)
      if (typeof result === 'number') return result
      this.#flow.told = result
      return Number.NaN
    }
    this.#edit(() => this.#definitions.derive(name, inputs, [], code))
  }

  /** Defines the cell as the sum of others, of any number. */
  sum(name: string, inputs: readonly string[]): void {
    const count = inputs.length
    let code = this.#sums.get(count)
    if (!code) {
      code = (values, slots, from) => {
        let total = 0
        for (let slot = from; slot < from + count; slot++) total += values[slots[slot]!]!
        return total
      }
      this.#sums.set(count, code)
    }
    this.#edit(() => this.#definitions.derive(name, inputs, [], code))
  }

  /** Takes the cell away. Those that take from it will miss it by its name. */
  remove(name: string): void {
    if (!this.has(name)) return
    this.#edit(() => {
      const id = this.#definitions.find(name)!
      this.#journal.note(id)
      this.#definitions.clear(id, Kind.missing)
      this.#cells.values[id] = Number.NaN
      this.#cells.errors.set(id, errors.missing(name))
    })
  }

  /** The cells that this one takes from, as it is defined; missing names too. */
  inputsOf(name: string): readonly string[] {
    const id = this.#definitions.find(name)
    if (id === undefined) return []
    const { froms, counts, slots, kinds, names } = this.#cells
    const from = froms[id]!
    const inputs = slots.takes.subarray(from, from + counts[id]!)
    return [...new Set(inputs)].filter(input => kinds[input] !== Kind.constant).map(input => names[input]!)
  }

  /** The cells that take from this one. */
  usersOf(name: string): readonly string[] {
    const { users, slots, names } = this.#cells
    const found: string[] = []
    for (let slot = users[this.#definitions.find(name) ?? 0]!; slot; slot = slots.next[slot]!)
      found.push(names[slots.owner[slot]!]!)
    return [...new Set(found.reverse())]
  }

  /**
   * Makes several edits at once and then works out what they touch. `changed` names the cells whose value is not
   * what it was before, those newly defined and those removed; it is to be read before the next transaction. If
   * `edit` or the function of a cell throws, everything is as before and the error goes on to the caller. A
   * transaction within another is part of that: it reports no changes, and if it throws, the outer one cannot
   * hold either.
   */
  transact<T>(edit: () => T): { readonly result: T; readonly changed: readonly string[] } {
    if (this.#flow.running) throw new Error('The function of a cell cannot edit the graph it is in.')
    const outermost = this.#depth === 0
    if (outermost) this.#forget()
    this.#depth++
    try {
      const result = edit()
      if (!outermost) return { result, changed: [] }
      if (this.#failure) throw this.#failure.reason
      this.#definitions.settle()
      this.#flow.run(this.#definitions.highest)
      return new Done(result, this.#journal)
    } catch (reason) {
      this.#failure ??= { reason }
      if (outermost) {
        this.#flow.stop()
        this.#definitions.undo()
        this.#forget()
      }
      throw reason
    } finally {
      this.#depth--
      if (outermost) this.#failure = undefined
    }
  }

  /** Lets go of what was noted of the transaction before, which can no longer be asked for. */
  #forget(): void {
    this.#journal.clear()
    this.#definitions.tidy()
  }

  #edit(edit: () => void): void {
    if (this.#depth === 0 || this.#flow.running) this.transact(edit)
    else edit()
  }

  #set(name: string, value: number, error: CellError | undefined): void {
    const { errors: held } = this.#cells
    const id = this.#definitions.idOf(name)
    this.#journal.note(id)
    this.#definitions.clear(id, Kind.input)
    this.#cells.values[id] = value
    if (error) held.set(id, error)
    else if (held.size > 0) held.delete(id)
  }
}

/** What a transaction came to. The names are gathered when they are asked for: most callers do not. */
class Done<T> {
  readonly #transaction: number
  #changed: readonly string[] | undefined

  constructor(
    readonly result: T,
    private readonly journal: Journal,
  ) {
    this.#transaction = journal.transaction
  }

  /** Throws when another transaction has begun since and these were not read before. */
  get changed(): readonly string[] {
    if (!this.#changed && this.journal.transaction !== this.#transaction)
      throw new Error('The changes of a transaction are to be read before the next one.')
    this.#changed ??= this.journal.changes()
    return this.#changed
  }
}
