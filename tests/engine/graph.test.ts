import assert from 'node:assert/strict'
import { test } from 'node:test'
import { parse } from '../../src/engine/expression/parse'
import type { CellError } from '../../src/engine/expression/problem'
import { Graph } from '../../src/engine/graph/graph'
import { enter, sheet, show } from './sheet'

const dough = `
  flour = 1000
  water = 0.7 * flour
  salt = 0.02 * flour
  dough = flour + water + salt
  hydration = water / flour`

test('an edit works out what depends on it, once and in order', () => {
  const graph = sheet(dough)
  assert.equal(show(graph, 'water salt dough hydration'), 'water 700, salt 20, dough 1720, hydration 0.7')
  const before = graph.evaluations
  const { changed } = graph.transact(() => graph.input('flour', 500))
  assert.equal(show(graph, 'water salt dough hydration'), 'water 350, salt 10, dough 860, hydration 0.7')
  assert.equal(graph.evaluations - before, 4)
  assert.deepEqual([...changed].sort(), ['dough', 'flour', 'salt', 'water'])
})

test('what lies behind a value that did not change is left alone', () => {
  const graph = sheet('grams = 20.2; weighed = round(grams); price = weighed * 3')
  const before = graph.evaluations
  const { changed } = graph.transact(() => graph.input('grams', 20.4))
  assert.deepEqual(changed, ['grams'])
  assert.equal(graph.evaluations - before, 1)
})

test('setting a cell to what it was changes nothing', () => {
  const graph = sheet(dough)
  assert.deepEqual(graph.transact(() => graph.input('flour', 1000)).changed, [])
  assert.deepEqual(graph.transact(() => enter(graph, 'water = 0.7 * flour')).changed, [])
  assert.deepEqual(graph.transact(() => enter(graph, 'water = 0.6 * flour; water = 0.7 * flour')).changed, [])
})

test('a name can be taken from before it is defined', () => {
  const graph = sheet('dough = flour + salt; flour = 1000')
  assert.equal(
    show(graph, 'dough salt'),
    'dough: Nothing here is called "salt"., salt: Nothing here is called "salt".',
  )
  assert.equal(graph.has('salt'), false)
  assert.equal((graph.value('dough') as CellError).origin, 'salt')
  assert.deepEqual([...graph.transact(() => graph.input('salt', 20)).changed].sort(), ['dough', 'salt'])
  assert.equal(show(graph, 'dough'), 'dough 1020')
})

test('a removed cell is missed by those that take from it', () => {
  const graph = sheet(dough)
  const { changed } = graph.transact(() => graph.remove('salt'))
  assert.deepEqual([...changed].sort(), ['dough', 'salt'])
  assert.equal(show(graph, 'dough'), 'dough: Nothing here is called "salt".')
  assert.deepEqual(graph.usersOf('salt'), ['dough'])
  assert.equal(graph.size, 4)
  graph.input('salt', 10)
  assert.equal(show(graph, 'dough'), 'dough 1710')
  graph.remove('nothing of that name')
})

test('a cell defined and removed in one transaction is no change', () => {
  const graph = sheet('dough = flour + salt')
  const both = () => {
    enter(graph, 'salt = 20; egg = 50; milk = egg * 2')
    for (const name of ['salt', 'egg', 'milk']) graph.remove(name)
  }
  assert.deepEqual(graph.transact(both).changed, [])
  assert.equal(graph.size, 1)
})

test('the first erroneous input is what its users hold, the same object', () => {
  const graph = sheet('sum = 2 * later + earlier; behind = sum + 1; later = 1 / 0; earlier = 0 / 0')
  assert.equal(graph.value('sum'), graph.value('later'))
  assert.equal(graph.value('behind'), graph.value('later'))
})

test('what cannot be worked out is an error in words', () => {
  const words = (name: string) =>
    `${name}: This has no result: something in it is divided by zero, or is too large to work with.`
  const graph = sheet('a = 1 / 0; b = 0 / 0; c = 10 ^ 308 * 10')
  assert.equal(show(graph, 'a b c'), ['a', 'b', 'c'].map(words).join(', '))
  assert.deepEqual(graph.transact(() => enter(graph, 'a = 2 / 0')).changed, [], 'the same error is no change')
})

test('a cell can be set to an error, and to a number again', () => {
  const graph = sheet('water = 700; dough = water + 1000')
  const why = { code: 'notAnAmount', message: 'This is not an amount.' }
  graph.fail('water', why)
  assert.equal(show(graph, 'dough'), 'dough: This is not an amount.')
  assert.deepEqual(graph.transact(() => graph.fail('water', { ...why })).changed, [])
  graph.input('water', 600)
  assert.equal(show(graph, 'dough'), 'dough 1600')
})

test('only a finite number can be set', () => {
  const graph = sheet('flour = 1000')
  for (const value of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])
    assert.throws(() => graph.input('flour', value), RangeError)
  assert.equal(show(graph, 'flour'), 'flour 1000')
})

test('zero and minus zero are two values', () => {
  const graph = sheet('a = 0; b = 1 / (a - 1)')
  assert.deepEqual(graph.transact(() => graph.input('a', -0)).changed, ['a'])
})

test('a function is called only with numbers, and its error is its value', () => {
  const graph = sheet('a = 1; b = 1 / 0')
  const calls: number[][] = []
  const error = { kind: 'domain', code: 'notFitting', message: 'The two do not fit.', origin: 'fit' } as const
  graph.compute('fit', ['a', 'b'], values => {
    calls.push([...values])
    return values[0] === values[1] ? values[0]! : error
  })
  assert.equal(graph.value('fit'), graph.value('b'))
  graph.input('b', 2)
  assert.equal(graph.value('fit'), error)
  graph.input('b', 1)
  assert.equal(graph.value('fit'), 1)
  assert.deepEqual(calls, [
    [1, 2],
    [1, 1],
  ])
})

test('a sum takes any number of inputs, repeated ones and none', () => {
  const graph = new Graph()
  const names = Array.from({ length: 5000 }, (_, i) => `line ${i}`)
  graph.transact(() => {
    for (const name of names) graph.input(name, 2)
    graph.sum('all', [...names, 'line 0'])
    graph.sum('none', [])
  })
  assert.equal(show(graph, 'all none'), 'all 10002, none 0')
  graph.input('line 0', 3)
  assert.equal(show(graph, 'all'), 'all 10004')
  assert.deepEqual(graph.usersOf('line 0'), ['all'])
})

test('names in an expression can stand for other cells', () => {
  const graph = sheet('dough/water = 690; dough/flour = 1000')
  graph.define('dough/hydration', parse('water / flour'), name => `dough/${name}`)
  assert.equal(graph.value('dough/hydration'), 0.69)
  assert.deepEqual(graph.inputsOf('dough/hydration'), ['dough/water', 'dough/flour'])
})

test('edits can be traced to what they take from and what takes from them', () => {
  const graph = sheet(`${dough}; bread = dough * 0.88 + butter`)
  assert.deepEqual(graph.inputsOf('dough'), ['flour', 'water', 'salt'])
  assert.deepEqual(graph.usersOf('flour'), ['water', 'salt', 'dough', 'hydration'])
  assert.deepEqual(graph.inputsOf('bread'), ['dough', 'butter'])
  assert.deepEqual(graph.inputsOf('flour'), [])
  assert.deepEqual(graph.usersOf('nobody'), [])
})

test('a transaction within another is part of it', () => {
  const graph = sheet(dough)
  const before = graph.evaluations
  const { result, changed } = graph.transact(() => {
    const inner = graph.transact(() => graph.input('flour', 2000))
    assert.deepEqual(inner.changed, [])
    assert.equal(graph.value('water'), 700)
    graph.input('flour', 3000)
    return 'done'
  })
  assert.equal(result, 'done')
  assert.equal(graph.evaluations - before, 4)
  assert.deepEqual([...changed].sort(), ['dough', 'flour', 'salt', 'water'])
})

test('a transaction that throws leaves everything as it was', () => {
  const graph = sheet(`${dough}; lost = gone * 2`)
  const names = 'flour water salt dough hydration lost gone egg'
  const before = show(graph, names)
  const failing = () => {
    enter(graph, 'flour = 10; gone = 4; egg = 50; water = dough; salt = 4 * egg')
    graph.remove('hydration')
    throw new Error('no')
  }
  assert.throws(() => graph.transact(failing), /^Error: no$/)
  assert.equal(show(graph, names), before)
  assert.deepEqual(graph.inputsOf('water'), ['flour'])
  assert.deepEqual([graph.size, graph.has('egg')], [6, false])
  graph.input('flour', 500)
  assert.equal(show(graph, 'dough hydration'), 'dough 860, hydration 0.7')
})

test('a function that throws rolls the edit back', () => {
  const graph = sheet('a = 1; b = a + 1')
  graph.compute('c', ['b'], ([b]) => {
    if (b! > 5) throw new Error('too much')
    return b!
  })
  graph.define('d', parse('c * 10'))
  assert.throws(() => graph.input('a', 7), /too much/)
  assert.equal(show(graph, 'a b c d'), 'a 1, b 2, c 2, d 20')
  graph.input('a', 2)
  assert.equal(show(graph, 'a b c d'), 'a 2, b 3, c 3, d 30')
})

test('a transaction cannot hold once one within it threw', () => {
  const graph = sheet('a = 1')
  const careless = () => {
    try {
      graph.transact(() => {
        graph.input('a', 2)
        throw new Error('inner')
      })
    } catch {}
  }
  assert.throws(() => graph.transact(careless), /inner/)
  assert.equal(graph.value('a'), 1)
})

test('a function cannot edit its graph', () => {
  const graph = sheet('a = 1')
  const meddle = () =>
    graph.compute('b', ['a'], () => {
      graph.input('a', 2)
      return 0
    })
  assert.throws(meddle, /cannot edit/)
  assert.deepEqual([graph.value('a'), graph.has('b')], [1, false])
})

test('within a transaction a new cell has no number yet', () => {
  const graph = sheet('a = 1')
  graph.transact(() => {
    enter(graph, 'b = a + 1')
    assert.equal(show(graph, 'b'), 'b: "b" is worked out when this edit is done.')
  })
  assert.equal(graph.value('b'), 2)
})
