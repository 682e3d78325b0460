import type { CellError, Expression, Graph, Worded } from '../../engine/index.js'

/** How a cell is defined. Two definitions of one key are the same. */
export interface Definition {
  readonly key: string
  readonly words: string // what the cell is called
  readonly make: (graph: Graph, name: string) => void
}

/** A weight and what a gram of it brings: a number, or the cell that says it. */
export type Term = readonly [weight: string, brings: number | string]

/** Writes down how cells are to be defined, by name, and what each is called in words. */
export class CellWriter {
  readonly cells = new Map<string, Definition>()

  #put(name: string, words: string, key: string, make: Definition['make']): void {
    this.cells.set(name, { key, words, make })
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
