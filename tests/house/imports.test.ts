import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { basename, join } from 'node:path/posix'
import { test } from 'node:test'
import { circleIn, filesBelow, importGraph, importsOf, roomGraph, roomOf } from './import-graph.js'

/** Imports go one way: engine, times ← dough ← day ← exchange, storage ← components ← app. */
const mayImport: Record<string, readonly string[]> = {
  'src/engine': [],
  'src/times': [],
  'src/dough': ['src/engine', 'src/times'],
  'src/day': ['src/engine', 'src/times', 'src/dough'],
  'src/exchange': ['src/engine', 'src/times', 'src/dough', 'src/day'],
  'src/storage': ['src/engine', 'src/times', 'src/dough', 'src/day'],
  components: ['src/engine', 'src/times', 'src/dough', 'src/day', 'src/exchange', 'src/storage'],
  'src/app': [
    'src/engine',
    'src/times',
    'src/dough',
    'src/day',
    'src/exchange',
    'src/storage',
    'components',
    'examples',
  ],
}

/** The rooms of each part, in an order in which each imports only from those before it. `.` is the part's own folder. */
const rooms: Record<string, string> = {
  'src/engine': 'expression graph .',
  'src/dough':
    'document lexicon amounts larder outline weighed cells sheet remarks workings edits edits/fetched edits/builds offers data edits/cleared about label .',
  'src/times': 'problem network least-squares orders conflicts .',
  'src/day': 'temperature method course plan mixing out trade bench learning',
  'src/exchange': 'values steps csv data text label several markup page recipe tables arriving .',
  'src/storage': 'disk record outside photographs .',
  components:
    'styles base typed controls learnt working larder batch tally beside ' +
    'grid/styles grid/table grid/moving grid/editing grid/blocks grid/offers grid/paint grid/actions grid jottings feeding method water builds cleared help ' +
    'bring-in/plan bring-in/tables bring-in/recipes bring-in/workbooks bring-in/unknown bring-in ' +
    'sheet desk shelf card label handout send-out lanes day/facts day trade/orders trade bench/pad bench/timers bakes/photographs bakes bench page',
}

const mostInRoom = 15
/** What each room has of its own, under the same name in all. */
const inEveryRoom = new Set(['index.ts', 'words.ts'])

const partOf = (path: string) => Object.keys(mayImport).find(part => path.startsWith(`${part}/`))
const files = ['src', 'components'].flatMap(filesBelow)
const graph = importGraph(files)

for (const [part, allowed] of Object.entries(mayImport)) {
  test(`${part} imports only from ${allowed.join(', ') || 'itself'}`, () => {
    for (const file of filesBelow(part)) {
      for (const target of importsOf(file)) {
        const there = partOf(target) ?? target.split('/')[0]!
        assert.ok(there === part || allowed.includes(there), `${file} imports ${target}`)
      }
    }
  })
}

for (const [part, order] of Object.entries(rooms)) {
  const inOrder = order.split(' ').map(room => join(part, room))

  test(`each room of ${part} imports only from rooms before it`, () => {
    for (const [file, targets] of graph) {
      if (partOf(file) !== part) continue
      const here = inOrder.indexOf(roomOf(file))
      assert.ok(here >= 0, `${roomOf(file)} has no place in the order of ${part}`)
      for (const target of targets)
        if (partOf(target) === part)
          assert.ok(inOrder.indexOf(roomOf(target)) <= here, `${file} imports ${target}, of a later room`)
    }
    const there = new Set(filesBelow(part).map(roomOf))
    assert.deepEqual(
      inOrder.filter(room => !there.has(room)),
      [],
      'rooms that are no more',
    )
  })
}

test('no files import each other in a circle, type imports included', () => {
  assert.equal(circleIn(graph), undefined)
})

test('no rooms import each other in a circle, type imports included', () => {
  assert.equal(circleIn(roomGraph(graph)), undefined)
})

test('a circle is found through type imports and late ones, and its path is shown', () => {
  const imports = new Map(
    Object.entries({
      'a/one.ts': "import type { Two } from '../b/two.js'",
      'b/two.ts': "const three = () => import('../c/three.js')",
      'c/three.ts': "export { one } from '../a/one.js'\n/* from './four.js' */",
      'c/four.ts': "import './three.js'",
    }).map(([file, text]) => [file, new Set(importsOf(file, text))] as const),
  )
  assert.equal(circleIn(imports), 'a/one.ts → b/two.ts → c/three.ts → a/one.ts')
  assert.equal(circleIn(roomGraph(imports)), 'a → b → c → a')
  imports.set('c/three.ts', new Set())
  assert.equal(circleIn(imports), undefined)
})

test(`a room has at most ${mostInRoom} files`, () => {
  const counts = new Map<string, number>()
  for (const file of files) counts.set(roomOf(file), (counts.get(roomOf(file)) ?? 0) + 1)
  assert.deepEqual(
    [...counts].filter(([, count]) => count > mostInRoom),
    [],
  )
})

test('no file name stands for two things', () => {
  const places = new Map<string, string[]>()
  for (const file of files) places.set(basename(file), [...(places.get(basename(file)) ?? []), file])
  assert.deepEqual(
    [...places].filter(([name, at]) => at.length > 1 && !inEveryRoom.has(name)),
    [],
  )
})

for (const part of ['src/engine', 'src/times', 'src/dough', 'src/day', 'src/exchange']) {
  test(`${part} never touches the DOM`, () => {
    for (const file of filesBelow(part)) {
      const code = readFileSync(file, 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, '')
      assert.doesNotMatch(code, /\b(document|window|HTMLElement|localStorage|indexedDB)\s*[.[(]/, file)
    }
  })
}
