import type { CellError, Expression, Graph, Worded } from '../../engine/index.js'
import type { LinePlan, StagePlan } from '../outline/outline.js'

/** Whose figures a cell stands behind; a reading's id is its name. */
export interface Owner {
  readonly of: 'line' | 'stage' | 'reading' | 'jotting'
  readonly id: string
}

/** How a cell is defined. Two definitions of one key are the same. */
export interface Definition {
  readonly key: string
  readonly words: string // what the cell is called
  readonly owner: Owner | undefined
  readonly make: (graph: Graph, name: string) => void
}

/** What is written by itself: a line, a stage, or what goes through all of them. */
export type Part =
  | LinePlan
  | StagePlan
  | 'holds'
  | 'flour weight'
  | 'readings'
  | 'batch'
  | 'jottings'
  | 'scale'
  | 'common'

/** A weight and what a gram of it brings: a number, or the cell that says it. */
export type Term = readonly [weight: string, brings: number | string]

/** Writes down how cells are to be defined, by name, and what each is called in words. */
export class CellWriter {
  readonly cells = new Map<string, Definition>()
  /** Whether two parts have written a cell of one name, so that neither can be written anew by itself. */
  isTangled = false
  readonly #written = new Map<Part, string[]>() // names of the cells of each part
  #here: string[] = [] // of the part being written
  #owner: Owner | undefined

  /** Writes a part; cells belong to `owner` unless `belonging` says otherwise. */
  part(part: Part, owner: Owner | undefined, write: () => void): void {
    this.#here = this.#written.get(part) ?? []
    this.#written.set(part, this.#here)
    this.belonging(owner, write)
  }

  /** The cells that `write` writes belong to `owner`. */
  belonging(owner: Owner | undefined, write: () => void): void {
    const before = this.#owner
    this.#owner = owner
    write()
    this.#owner = before
  }

  /** A cell that any part may take from, written by the first that does. */
  common(name: string, write: () => void): void {
    if (this.cells.has(name)) return
    const here = this.#here
    this.part('common', undefined, write)
    this.#here = here
  }

  /** Takes out what was written of a part. */
  take(part: Part): Map<string, Definition> {
    const taken = new Map<string, Definition>()
    for (const name of this.#written.get(part) ?? []) {
      taken.set(name, this.cells.get(name)!)
      this.cells.delete(name)
    }
    this.#written.delete(part)
    return taken
  }

  /** The names of the cells written of a part. */
  namesOf(part: Part): readonly string[] {
    return this.#written.get(part) ?? []
  }

  #put(name: string, words: string, key: string, make: Definition['make']): void {
    if (this.cells.has(name)) this.isTangled = true
    this.cells.set(name, { key, words, owner: this.#owner, make })
    this.#here.push(name)
  }

  input(name: string, words: string, value: number): void {
    this.#put(name, words, `is ${value}`, (graph, at) => graph.input(at, value))
  }

  fail(name: string, words: string, why: Worded): void {
    this.#put(name, words, `fails ${JSON.stringify(why)}`, (graph, at) => graph.fail(at, why))
  }

  sum(name: string, words: string, of: readonly string[]): void {
    if (of.length === 0) this.input(name, words, 0)
    else this.#put(name, words, `sum ${of.join(' ')}`, (graph, at) => graph.sum(at, of))
  }

  /** `how` names the function, with all that it closes over. */
  compute(
    name: string,
    words: string,
    how: string,
    of: readonly string[],
    fn: (values: readonly number[]) => number | CellError,
  ): void {
    this.#put(name, words, `${how} ${of.join(' ')}`, (graph, at) => graph.compute(at, of, fn))
  }

  expression(name: string, words: string, expression: Expression, resolve: (name: string) => string): void {
    const key = `${expression.key} ${expression.numbers.join(' ')} ${expression.names.map(resolve).join(' ')}`
    this.#put(name, words, key, (graph, at) => graph.define(at, expression, resolve))
  }

  /** Σ weight × what a gram brings. */
  dot(name: string, words: string, terms: readonly Term[]): void {
    if (terms.length === 0) return this.input(name, words, 0)
    const of = terms.flatMap(([weight, brings]) => (typeof brings === 'string' ? [weight, brings] : [weight]))
    const brings = terms.map(([, b]) => (typeof b === 'string' ? undefined : b))
    this.compute(name, words, `brings ${brings.join(' ')}`, of, values => {
      let total = 0
      let at = 0
      for (const fixed of brings) {
        total += values[at]! * (fixed ?? values[at + 1]!)
        at += fixed === undefined ? 2 : 1
      }
      return total
    })
  }
}
