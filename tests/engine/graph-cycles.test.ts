import assert from 'node:assert/strict'
import { test } from 'node:test'
import { parse } from '../../src/engine/expression/parse'
import type { CellError } from '../../src/engine/expression/problem'
import { Graph } from '../../src/engine/graph/graph'
import { enter, sheet, show } from './sheet'

test('a cycle is an error that spells its path, and all else still computes', () => {
  const graph = sheet(
    'flour = 1000; water = flour * 0.7; levain = water * 0.3; salt = flour * 0.02; dough = salt + water',
  )
  const { changed } = graph.transact(() => enter(graph, 'water = levain * 2'))
  const error = graph.value('water') as CellError
  assert.deepEqual([error.kind, error.path], ['cycle', ['water', 'levain', 'water']])
  assert.equal(graph.value('levain'), error)
  assert.equal(graph.value('dough'), error)
  assert.equal(graph.value('salt'), 20)
  assert.deepEqual([...changed].sort(), ['dough', 'levain', 'water'])
  assert.deepEqual(graph.transact(() => graph.input('flour', 500)).changed, ['flour', 'salt'])
})

test('a broken cycle recovers wherever it is broken', () => {
  for (const [edit, values] of [
    ['a = 1', 'a 1, b 2, c 3, behind 6'],
    ['b = 5', 'a 7, b 5, c 6, behind 12'],
    ['c = 9', 'a 10, b 11, c 9, behind 18'],
  ] as const) {
    const graph = sheet('a = c + 1; b = a + 1; c = b + 1; behind = c * 2')
    assert.equal((graph.value('behind') as CellError).kind, 'cycle')
    enter(graph, edit)
    assert.equal(show(graph, 'a b c behind'), values)
  }
})

test('a cell that takes from itself is a cycle', () => {
  const graph = sheet('a = a + 1')
  assert.equal(show(graph, 'a'), 'a: a takes from a.')
  graph.input('a', 1)
  assert.equal(graph.value('a'), 1)
})

test('removing a member of a cycle leaves it missing', () => {
  const graph = sheet('a = b + 1; b = a + 1')
  graph.remove('b')
  assert.equal(show(graph, 'a'), 'a: Nothing here is called "b".')
})

test('two cycles that touch are both gone when both are broken', () => {
  const graph = sheet('a = b + c; b = a; c = a')
  enter(graph, 'b = 1')
  assert.equal((graph.value('a') as CellError).kind, 'cycle')
  assert.equal(graph.value('b'), 1)
  enter(graph, 'c = 2')
  assert.equal(show(graph, 'a b c'), 'a 3, b 1, c 2')
})

test('a cycle stays the same error while something else is edited', () => {
  const graph = sheet('x = 1; a = b + x; b = a; behind = b')
  const error = graph.value('a')
  assert.deepEqual(graph.transact(() => enter(graph, 'x = y + 1; y = 3')).changed.toSorted(), ['x', 'y'])
  assert.equal(graph.value('behind'), error)
})

test('a cycle made in a transaction that throws never was', () => {
  const graph = sheet('a = 1; b = a + 1; c = b + 1; p = q; q = p')
  const failing = () => {
    enter(graph, 'a = c; p = 1')
    throw new Error('no')
  }
  const error = graph.value('p')
  assert.throws(() => graph.transact(failing))
  assert.equal(show(graph, 'a b c'), 'a 1, b 2, c 3')
  assert.equal(graph.value('q'), error)
  enter(graph, 'a = 2')
  assert.equal(show(graph, 'a b c'), 'a 2, b 3, c 4')
})

const long = 100_000
const link = parse('before + 1')

test('a chain of 100,000 cells is worked out, in whatever order it is built', () => {
  for (const backwards of [false, true]) {
    const graph = new Graph()
    graph.transact(() => {
      graph.input('c0', 0)
      for (let k = 1; k <= long; k++) {
        const i = backwards ? long + 1 - k : k
        graph.define(`c${i}`, link, () => `c${i - 1}`)
      }
    })
    assert.equal(graph.value(`c${long}`), long)
    assert.equal(graph.transact(() => graph.input('c0', 1)).changed.length, long + 1)
  }
})

test('a cycle of 100,000 cells is found, and recovers', () => {
  const graph = new Graph()
  graph.transact(() => {
    for (let i = 0; i < long; i++) graph.define(`c${i}`, link, () => `c${(i + 1) % long}`)
  })
  const error = graph.value('c5') as CellError
  assert.equal(error.path?.length, long + 1)
  assert.deepEqual(error.path?.slice(0, 3), ['c0', 'c1', 'c2'])
  assert.deepEqual(error.path?.slice(-2), [`c${long - 1}`, 'c0'])
  graph.input('c0', 0)
  assert.equal(graph.value('c1'), long - 1)
})
