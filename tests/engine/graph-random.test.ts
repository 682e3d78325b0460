import assert from 'node:assert/strict'
import { test } from 'node:test'
import { parse } from '../../src/engine/expression/parse'
import type { CellError, CellValue } from '../../src/engine/expression/problem'
import { Graph } from '../../src/engine/graph/graph'
import { randomOf, rounds } from '../random'

// Random edits, each compared with working everything out anew by plain recursion.

type Work = (values: readonly number[]) => number | CellError
interface Definition {
  readonly takes: readonly string[]
  readonly work: Work
  readonly fixed?: CellError // set by `fail`
}
type Model = Map<string, Definition>

const noAmount = { code: 'noAmount', message: 'No amount.' }
const over = (limit: number) => ({ code: 'over', limit, message: `Over ${limit}.` })

const names = [
  'flour',
  'water',
  'salt',
  'levain',
  'dough',
  'oil',
  'malt',
  'rye',
  'egg',
  'milk',
  'seed',
  'bran',
]

/** How to work out `a`, `b` and `c`; with NaN for what is in error, as conditionals pass over the branch not taken. */
const formulas: readonly [text: string, work: (a: number, b: number, c: number) => number][] = [
  ['a + b', (a, b) => a + b],
  ['a - b', (a, b) => a - b],
  ['a * 2 + b', (a, b) => a * 2 + b],
  ['a / b', (a, b) => a / b],
  ['-a', a => -a],
  ['a + a', a => a + a],
  ['min(a, b, c)', (a, b, c) => Math.min(a, b, c)],
  ['floor(a / 4)', a => Math.floor(a / 4)],
  ['abs(a) > 2 ? b : c', (a, b, c) => (Number.isNaN(a) ? a : Math.abs(a) > 2 ? b : c)],
  ['7 * 3', () => 21],
]

type Random = ReturnType<typeof randomOf>

class Refused extends Error {}

/** Makes one random edit in both; gives the name edited. */
function edit({ below, pick }: Random, graph: Graph, model: Model): string {
  const name = pick(names)
  const input = () => {
    const value = pick([-3, -1, -0, 0, 1, 2, 5, 8])
    graph.input(name, value)
    model.set(name, { takes: [], work: () => value })
  }
  const define = () => {
    const [text, work] = pick(formulas)
    const stands: Record<string, string> = { a: pick(names), b: pick(names), c: pick(names) }
    const expression = parse(text)
    graph.define(name, expression, letter => stands[letter]!)
    const letters = expression.names
    const of = (values: readonly number[], letter: string) => values[letters.indexOf(letter)]!
    const worked: Work = values => work(of(values, 'a'), of(values, 'b'), of(values, 'c'))
    model.set(name, { takes: letters.map(letter => stands[letter]!), work: worked })
  }
  const some = () => Array.from({ length: below(5) }, () => pick(names))
  const compute = () => {
    const takes = some()
    const limit = pick([4, 20, 100])
    const failing = pick([7, 1000])
    const work: Work = values => {
      const total = values.reduce((sum, value) => sum + value, 0)
      if (Number.isNaN(total)) return total
      if (Math.abs(total) % 50 === failing) throw new Refused(`${name} refuses ${total}`)
      return Math.abs(total) > limit ? { kind: 'domain', ...over(limit), origin: name } : total
    }
    graph.compute(name, takes, work)
    model.set(name, { takes, work })
  }
  const sum = () => {
    const takes = some()
    graph.sum(name, takes)
    model.set(name, { takes, work: values => values.reduce((total, value) => total + value, 0) })
  }
  const fail = () => {
    graph.fail(name, noAmount)
    const fixed: CellError = { kind: 'text', ...noAmount, origin: name }
    model.set(name, { takes: [], work: () => Number.NaN, fixed })
  }
  const remove = () => {
    graph.remove(name)
    model.delete(name)
  }
  pick([input, input, input, define, define, define, define, compute, sum, fail, remove])()
  return name
}

/** Everything reached from a name by way of `step`, itself only when there is a way back. */
function reach(name: string, step: (name: string) => readonly string[]): Set<string> {
  const reached = new Set<string>()
  const walk = (from: string) => {
    for (const next of step(from)) {
      if (reached.has(next)) continue
      reached.add(next)
      walk(next)
    }
  }
  walk(name)
  return reached
}

/** What every defined cell should hold; an erroneous input stands for the error its users share. */
function workOut(model: Model): Map<string, number | { error: CellError; from?: string }> {
  const takes = (name: string) => model.get(name)?.takes ?? []
  const known = new Map<string, number | { error: CellError; from?: string }>()
  const value = (name: string): number | { error: CellError; from?: string } => {
    const held = known.get(name) ?? afresh(name)
    known.set(name, held)
    return held
  }
  const afresh = (name: string): number | { error: CellError; from?: string } => {
    const cell = model.get(name)
    if (!cell) return { error: { kind: 'undefined', code: 'unknownCell', ...{ name }, origin: name } }
    if (cell.fixed) return { error: cell.fixed }
    if (reach(name, takes).has(name)) return { error: { kind: 'cycle', code: 'cellsInCircle', origin: name } }
    const inputs = cell.takes.map(value)
    const result = cell.work(inputs.map(input => (typeof input === 'number' ? input : Number.NaN)))
    if (typeof result !== 'number') return { error: result }
    if (Number.isFinite(result)) return result
    const at = inputs.findIndex(input => typeof input !== 'number')
    const first = inputs[at]
    if (typeof first === 'object') return { error: first.error, from: cell.takes[at]! }
    return { error: { kind: 'domain', code: 'noResult', origin: name } }
  }
  for (const name of names) value(name)
  return known
}

function compare(graph: Graph, model: Model): void {
  assert.equal(graph.size, model.size)
  const expected = workOut(model)
  const takes = (name: string) => model.get(name)?.takes ?? []
  for (const name of names) {
    assert.equal(graph.has(name), model.has(name))
    assert.deepEqual(graph.inputsOf(name), [...new Set(takes(name))])
    const users = [...model].filter(([, cell]) => cell.takes.includes(name)).map(([user]) => user)
    assert.deepEqual(graph.usersOf(name).toSorted(), users.toSorted())
    const held = graph.value(name)
    const wanted = expected.get(name)!
    if (typeof wanted === 'number') {
      assert.ok(Object.is(held, wanted), `${name} holds ${JSON.stringify(held)}, not ${wanted}`)
      continue
    }
    assert.ok(typeof held !== 'number', `${name} holds ${held}, not ${wanted.error.kind}`)
    assert.equal(held.kind, wanted.error.kind, name)
    if (wanted.from !== undefined) {
      const of = graph.value(wanted.from)
      if (graph.has(wanted.from)) assert.equal(held, of, `${name} shares the error of ${wanted.from}`)
      assert.deepEqual(held, of)
    } else if (held.kind === 'cycle') {
      const path = held.path!
      assert.ok(path.length > 1 && path[0] === path.at(-1) && path[0] === held.origin)
      for (let i = 1; i < path.length; i++) assert.ok(takes(path[i - 1]!).includes(path[i]!), path.join(' '))
      assert.ok(path[0] === name || (reach(name, takes).has(path[0]!) && reach(path[0]!, takes).has(name)))
    } else {
      assert.equal(held.origin, wanted.error.origin)
      assert.equal(held.code, wanted.error.code)
      assert.deepEqual(held, wanted.error)
    }
  }
}

const snapshot = (graph: Graph) =>
  new Map<string, CellValue>(names.filter(name => graph.has(name)).map(name => [name, graph.value(name)]))

function play(seed: number, rounds: number): void {
  const random = randomOf(seed)
  const { below } = random
  const graph = new Graph()
  let model: Model = new Map()
  for (let round = 0; round < rounds; round++) {
    const before = snapshot(graph)
    const former = new Map(model)
    const evaluated = graph.evaluations
    const edited: string[] = []
    let changed: readonly string[] = []
    const throwing = below(8) === 0
    try {
      changed = graph.transact(() => {
        for (let n = below(5); n >= 0; n--) {
          if (below(3) > 0) edited.push(edit(random, graph, model))
          else edited.push(graph.transact(() => edit(random, graph, model)).result)
        }
        if (throwing) throw new Refused('the edit itself')
      }).changed
    } catch (reason) {
      if (!(reason instanceof Refused)) throw reason
      assert.ok(throwing || throws(model), reason.message)
      model = former
      assert.deepEqual(
        names.filter(name => !Object.is(before.get(name), snapshot(graph).get(name))),
        [],
      )
    }
    compare(graph, model)
    const after = snapshot(graph)
    const differ = names.filter(name => !Object.is(before.get(name), after.get(name)))
    assert.deepEqual(changed.toSorted(), differ.toSorted())
    const users = (name: string) =>
      names.filter(user => [model, former].some(cells => cells.get(user)?.takes.includes(name)))
    const affected = new Set(edited.flatMap(name => [name, ...reach(name, users)]))
    if (model !== former) assert.ok(graph.evaluations - evaluated <= affected.size)
  }
}

function throws(model: Model): boolean {
  try {
    workOut(model)
    return false
  } catch {
    return true
  }
}

for (let seed = 1; seed <= rounds(60); seed++) {
  test(`random edits come to what working everything out anew comes to (seed ${seed})`, () => play(seed, 150))
}
