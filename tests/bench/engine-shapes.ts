import { parse } from '../../src/engine/expression/parse'
import type { Expression } from '../../src/engine/expression/tree'
import { Graph } from '../../src/engine/graph/graph'

// The same arithmetic twice: as cells of a graph, and as closures over one array with their plan known in advance.

export type Direct = () => void

/** One derived cell: what the graph is told, and the closure that does the same. */
export interface Step {
  readonly name: string
  readonly expression: Expression
  readonly sum?: readonly string[] // a group sum in place of the expression
  readonly at: number // place of the result among the values
  readonly direct: (values: Float64Array) => Direct
}

const templates = {
  add: parse('a + 1'),
  scale: parse('a * 2'),
  times: parse('a * b'),
  minus: parse('a - b'),
  over: parse('a / b'),
  round: parse('round(a)'),
}
type Template = keyof typeof templates

const makers: Record<Template, (v: Float64Array, at: number, a: number, b: number, c: number) => Direct> = {
  add: (v, at, a, _, c) => () => {
    v[at] = v[a]! + c
  },
  scale: (v, at, a, _, c) => () => {
    v[at] = v[a]! * c
  },
  times: (v, at, a, b) => () => {
    v[at] = v[a]! * v[b]!
  },
  minus: (v, at, a, b) => () => {
    v[at] = v[a]! - v[b]!
  },
  over: (v, at, a, b) => () => {
    v[at] = v[a]! / v[b]!
  },
  round: (v, at, a) => () => {
    v[at] = Math.round(v[a]!)
  },
}

/** Cells in the order they are defined; inputs first come to 1. */
export class Shape {
  readonly inputs: { readonly name: string; readonly at: number }[] = []
  readonly steps: Step[] = []
  #count = 0

  input(): number {
    const at = this.#count++
    this.inputs.push({ name: nameOf(at), at })
    return at
  }

  step(template: Template, a: number, b = 0, c = 1): number {
    const at = this.#count++
    const { names, numbers, ...rest } = templates[template]
    const taken = names.length === 2 ? [nameOf(a), nameOf(b)] : [nameOf(a)]
    const expression = { ...rest, names: taken, numbers: numbers.map(() => c) }
    this.steps.push({ name: nameOf(at), expression, at, direct: v => makers[template](v, at, a, b, c) })
    return at
  }

  sum(of: readonly number[]): number {
    const at = this.#count++
    const direct = (v: Float64Array) => () => {
      let total = 0
      for (let i = 0; i < of.length; i++) total += v[of[i]!]!
      v[at] = total
    }
    this.steps.push({ name: nameOf(at), expression: templates.add, sum: of.map(nameOf), at, direct })
    return at
  }

  get size(): number {
    return this.#count
  }

  /** All of it as cells, in one transaction. */
  graph(graph = new Graph()): Graph {
    graph.transact(() => {
      for (const { name } of this.inputs) graph.input(name, 1)
      for (const step of this.steps) {
        if (step.sum) graph.sum(step.name, step.sum)
        else graph.define(step.name, step.expression)
      }
    })
    return graph
  }

  /** All of it as closures, run once. */
  direct(): { values: Float64Array; plan: Direct[] } {
    const values = new Float64Array(this.#count).fill(1)
    const plan = this.steps.map(step => step.direct(values))
    for (const run of plan) run()
    return { values, plan }
  }
}

const kept: string[] = []

/** The name of a cell, the same text object each time. */
export function nameOf(at: number): string {
  for (let i = kept.length; i <= at; i++) kept.push(`line ${i}`)
  return kept[at]!
}

/** A line: an amount and ten cells that follow from it, four deep. */
export const lineSize = 11

/** Lines of eleven cells, up to about that many cells. */
export function workbook(cells: number): Shape {
  const shape = new Shape()
  const base = shape.input()
  const factor = shape.input()
  for (let line = 0; shape.size + lineSize <= cells; line++) {
    const amount = shape.input()
    const weight = shape.step('times', amount, base)
    const parts = [0.5, 0.4, 0.02, 0.07].map(c => shape.step('scale', weight, 0, c * (1 + (line % 7))))
    const all = shape.sum(parts)
    shape.step('over', parts[1]!, factor)
    shape.step('minus', all, parts[2]!)
    shape.step('times', all, factor)
    shape.step('add', all, 0, line % 5)
  }
  return shape
}

// Chain and fan mix what their cells do, as a sheet does. Of one kind only, the JIT would inline the one closure
// into the loop over the plan, and the comparison would be with no calls at all.

export function chain(cells: number): Shape {
  const shape = new Shape()
  let at = shape.input()
  const other = shape.input()
  for (let i = 0; i < cells; i++) {
    if (i % 3 === 0) at = shape.step('add', at)
    else if (i % 3 === 1) at = shape.step('minus', at, other)
    else at = shape.step('scale', at, 0, -1)
  }
  return shape
}

export function fan(cells: number): Shape {
  const shape = new Shape()
  const at = shape.input()
  const other = shape.input()
  for (let i = 0; i < cells; i++) {
    if (i % 3 === 0) shape.step('add', at, 0, i % 97)
    else if (i % 3 === 1) shape.step('minus', at, other)
    else shape.step('scale', at, 0, 1 + (i % 97))
  }
  return shape
}

/** Diamonds one behind the other, three cells each. */
export function diamonds(cells: number): Shape {
  const shape = new Shape()
  let at = shape.input()
  for (let i = 0; i + 3 <= cells; i += 3) {
    const left = shape.step('add', at)
    const right = shape.step('scale', at, 0, 2)
    at = shape.step('minus', right, left)
  }
  return shape
}

/** An amount, its rounding, and that many users of the rounding. */
export function rounded(users: number): Shape {
  const shape = new Shape()
  const weighed = shape.step('round', shape.input())
  for (let i = 0; i < users; i++) shape.step('scale', weighed, 0, 1 + (i % 97))
  return shape
}
