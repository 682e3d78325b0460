import { parse } from '../../src/engine/expression/parse'
import { Graph } from '../../src/engine/graph/graph'
import {
  chain,
  type Direct,
  diamonds,
  fan,
  lineSize,
  nameOf,
  rounded,
  type Shape,
  workbook,
} from './engine-shapes'
import { hostileTexts } from './hostile-texts'
import { against, median, type Now, type Row, timeInTurns } from './row'

const small = 1000
const large = 100_000
const long = 20_000

/**
 * Times of the engine against closures that do the same arithmetic with their plan known in advance.
 * `memory` gives the bytes in use after collecting garbage, where that can be had.
 */
export function engineRows(now: Now, memory?: () => number): Row[] {
  return [
    ...edits(now),
    ...runs(now),
    stopped(now),
    together(now),
    ...builds(now),
    ...addedLine(now),
    ...(memory ? [bytes(memory)] : []),
    hostile(now),
  ]
}

/** Changes the first input and lets it take effect. */
function pair(shape: Shape) {
  const graph = shape.graph()
  const { values, plan } = shape.direct()
  const { name, at } = shape.inputs[0]!
  let turn = 0
  const edit = () => {
    const value = 1 + (++turn % 1009) / 16
    return graph.transact(() => graph.input(name, value))
  }
  const cells = () => {
    edit()
    return graph.evaluations
  }
  const named = () => edit().changed.length
  let directTurn = 0
  const direct = () => {
    values[at] = 1 + (++directTurn % 1009) / 16
    for (let i = 0; i < plan.length; i++) plan[i]!()
    return values[values.length - 1]!
  }
  return { graph, cells, named, direct }
}

/** One edit with ten dependents, of one of eight lines far from each other. */
function line(shape: Shape) {
  const lines = shape.inputs.length - 2
  const graph = shape.graph()
  const { values, plan } = shape.direct()
  const chosen = Array.from({ length: 8 }, (_, i) => Math.floor((i * lines) / 8))
  const plans: Direct[][] = chosen.map(at => plan.slice(at * (lineSize - 1), (at + 1) * (lineSize - 1)))
  const edited = chosen.map(at => shape.inputs[at + 2]!)
  let turn = 0
  const edit = () => {
    const { name } = edited[turn & 7]!
    const value = 1 + (++turn % 1009) / 16
    return graph.transact(() => graph.input(name, value))
  }
  const cells = () => {
    edit()
    return graph.evaluations
  }
  const named = () => edit().changed.length
  let directTurn = 0
  const direct = () => {
    const at = directTurn & 7
    values[edited[at]!.at] = 1 + (++directTurn % 1009) / 16
    const run = plans[at]!
    for (let i = 0; i < run.length; i++) run[i]!()
    return values[edited[at]!.at + 10]!
  }
  return { cells, named, direct }
}

function edits(now: Now): Row[] {
  const [few, many] = [line(workbook(small)), line(workbook(large))]
  if (few.named() !== lineSize) throw new Error('an edit did not change what it should')
  const [a, b, c, d] = timeInTurns(now, [few.cells, few.direct, many.cells, many.direct], 81) as [
    number,
    number,
    number,
    number,
  ]
  return [
    against('one edit with ten dependents, 1,000 cells', [a, b], 'µs', 5),
    against('one edit with ten dependents, 100,000 cells', [c, d], 'µs', 5),
    against('the same, 100,000 cells against 1,000', [c, a], 'µs', 1.5),
  ]
}

function runs(now: Now): Row[] {
  const run = (name: string, shape: Shape, budget: number) => {
    const { cells, direct } = pair(shape)
    return against(name, timeInTurns(now, [cells, direct]), 'µs', budget)
  }
  const { graph, named } = pair(diamonds(long))
  const before = graph.evaluations
  const changed = named() - 1
  const worked = graph.evaluations - before
  const told = pair(chain(long))
  return [
    run('chain of 20,000 cells', chain(long), 3),
    against('the same, with the names of what changed', timeInTurns(now, [told.named, told.direct]), 'µs'),
    run('20,000 cells on one input', fan(long), 4),
    run('diamonds of 20,000 cells', diamonds(long), 8),
    against('cells worked out in them, against cells that change', [worked, changed], 'cells', 1),
  ]
}

function stopped(now: Now): Row {
  const nudge = (users: number) => {
    const graph = rounded(users).graph()
    let turn = 0
    return () => {
      const value = 20.1 + (++turn % 4) / 10
      graph.transact(() => graph.input(nameOf(0), value))
      return graph.evaluations
    }
  }
  const name = 'a change that a rounding stops, 20,000 cells behind it against 1'
  return against(name, timeInTurns(now, [nudge(long), nudge(1)], 81), 'µs', 1.2)
}

function together(now: Now): Row {
  const shape = workbook(large)
  const edited = shape.inputs.slice(2, 1002)
  const graph = shape.graph()
  const { values, plan } = shape.direct()
  const run = plan.slice(0, 1000 * (lineSize - 1))
  let turn = 0
  const cells = () => {
    const value = 1 + (++turn % 1009) / 16
    const edit = () => {
      for (const { name } of edited) graph.input(name, value)
    }
    graph.transact(edit)
    return graph.evaluations
  }
  let directTurn = 0
  const direct = () => {
    const value = 1 + (++directTurn % 1009) / 16
    for (const { at } of edited) values[at] = value
    for (let i = 0; i < run.length; i++) run[i]!()
    return values[edited[0]!.at + 10]!
  }
  return against('1,000 edits in one transaction', timeInTurns(now, [cells, direct]), 'µs', 3)
}

function builds(now: Now): Row[] {
  const shape = workbook(large)
  const texts = shape.steps.map(({ expression, at }) => {
    const [a, b] = expression.names.map(name => name.replace(' ', ''))
    return b ? `${a} * ${b}` : `${a} + ${at % 100}`
  })
  const works = [() => shape.graph().size, () => shape.direct().plan.length]
  const [graph, direct] = timeInTurns(now, works, 15)
  const [reading] = timeInTurns(
    now,
    [() => texts.reduce((sum, text) => sum + parse(text).names.length, 0)],
    7,
  )
  return [
    against('building 100,000 cells', [graph! / 1000, direct! / 1000], 'ms', 15),
    { name: 'reading the texts of 100,000 cells', value: reading! / 1000, unit: 'ms' },
  ]
}

/**
 * A line of eight cells comes into a stage whose sum has users: in forty stages side by side, as those of a
 * formula are, and in forty far from each other, where much of the time is the machine fetching memory.
 */
function addedLine(now: Now): Row[] {
  const stages = 40
  const added = (cells: number, near: boolean) => {
    const shape = workbook(cells)
    const graph = shape.graph()
    const count = shape.inputs.length - 2
    const places = Array.from({ length: stages }, (_, i) => {
      const line = near ? (count >> 1) + i : Math.floor((i * count) / stages)
      const at = shape.inputs[line + 2]!.at
      return { at, names: [] as string[] }
    })
    let called = 0
    const parts = (at: number) => [2, 3, 4, 5].map(k => nameOf(at + k))
    const product = parse('a * b')
    // Never the same name twice: a Map's deleted keys stay in its chains until it grows.
    const prepare = () => {
      for (const place of places) place.names = Array.from({ length: 8 }, () => `added ${called++}`)
    }
    const add = () => {
      for (const { names, at } of places) {
        const [amount, ...others] = names as [string, ...string[]]
        graph.transact(() => {
          graph.input(amount, 3)
          for (const name of names)
            graph.define(name, product, letter => (letter === 'a' ? amount : nameOf(at)))
          graph.sum(nameOf(at + 6), [...parts(at), others[0]!])
        })
      }
    }
    const takeAway = () => {
      for (const { names, at } of places) {
        graph.transact(() => {
          graph.sum(nameOf(at + 6), parts(at))
          for (const name of names) graph.remove(name)
        })
      }
    }
    return { prepare, add, takeAway }
  }
  const works = [added(small, true), added(large, true), added(small, false), added(large, false)]
  const times = works.map((): number[] => [])
  for (let sample = -20; sample < 101; sample++) {
    for (const [k, { prepare, add, takeAway }] of works.entries()) {
      prepare()
      const started = now()
      add()
      const took = now() - started
      takeAway()
      if (sample >= 0) times[k]!.push((took * 1000) / stages)
    }
  }
  const [few, many, fewApart, manyApart] = times.map(median) as [number, number, number, number]
  const { budget: _, ...apart } = against('the same, lines far apart', [manyApart, fewApart], 'µs', 0)
  return [against('adding a line of 8 cells, 100,000 cells against 1,000', [many, few], 'µs', 1.5), apart]
}

function bytes(memory: () => number): Row {
  const shape = workbook(large)
  shape.graph()
  const graph = new Graph()
  const before = memory()
  shape.graph(graph)
  const used = memory() - before
  return { name: 'memory of a cell without its text', value: used / graph.size, unit: 'bytes', budget: 250 }
}

/** The longest that any text takes, each the shortest of three tries with another structure. */
function hostile(now: Now): Row {
  let longest = 0
  for (const text of hostileTexts()) {
    const tries = ['', '+1', '+1+1'].map(tail => {
      const started = now()
      try {
        parse(text.slice(0, 512 - tail.length) + tail)
      } catch {}
      return now() - started
    })
    longest = Math.max(longest, Math.min(...tries))
  }
  return { name: 'the slowest text of 512 characters', value: longest, unit: 'ms', budget: 5 }
}
