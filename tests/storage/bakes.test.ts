import assert from 'node:assert/strict'
import { test } from 'node:test'
import { removeBake } from '../../src/day/bench/bench-edits.js'
import type { Unread, Workbook } from '../../src/dough/document/workbook.js'
import { History } from '../../src/storage/history.js'
import { merge } from '../../src/storage/record/merge.js'
import { readSteps, stepsToKeep } from '../../src/storage/record/stored-steps.js'
import { loaf, workbookOf } from './bread.js'
import { Disk, keeperOn } from './stand-ins.js'

const miche = loaf('Miche', 'flour 100%')
const bake = (id: string, more: object = {}): Unread => ({
  id,
  at: '2026-12-05T05:00:00Z',
  name: 'Miche',
  formula: miche,
  bread: 'b',
  zone: 'UTC',
  moments: [],
  weighed: [],
  figures: [],
  timers: [],
  note: '',
  verdict: '',
  ...more,
})
const having = (...bakes: readonly Unread[]): Workbook => ({
  ...workbookOf(miche),
  ...(bakes.length && { bakes }),
})

async function diskWith(...states: readonly Workbook[]): Promise<Disk> {
  const disk = new Disk()
  const { keeper } = await keeperOn(disk)
  for (const workbook of states) {
    keeper.keep(workbook)
    await keeper.flush()
  }
  return disk
}

test('each bake is a record of its own, written when it changes and gone when it is deleted', async () => {
  const [a, b] = [bake('a'), bake('b')]
  const disk = await diskWith(having(a, b), having(a, { ...b, note: 'dark' }), having(a), having())
  assert.deepEqual(disk.written, [
    ['workbook', 'formula Miche', 'bake a', 'bake b'],
    ['workbook', 'bake b'],
    ['workbook', '-bake b'],
    ['workbook', '-bake a'],
  ])
  assert.ok(![...disk.parts.keys()].some(key => key.startsWith('bake')))
})

test('bakes are loaded, with fields that this version does not know', async () => {
  const workbook = having(bake('a', { moon: 'full' }), bake('b'))
  const { keeper } = await keeperOn(await diskWith(workbook))
  assert.deepEqual(keeper.workbook, workbook)
  assert.deepEqual(keeper.problems, [])
})

test('what two tabs did to bakes is kept of both', () => {
  const [a, b] = [bake('a'), bake('b')]
  const { workbook } = merge(having(a), having(a, b), having({ ...a, note: 'windy' }))
  assert.deepEqual(
    workbook.bakes!.map(({ id, note }) => [id, note]),
    [
      ['a', 'windy'],
      ['b', ''],
    ],
  )
})

test('a bake in the steps to undo is looked at like all that is stored', () => {
  const step = (value: unknown) => ({
    done: [{ label: 'x', changes: [{ of: 'bake', id: 'a', value }], inverse: [{ of: 'bake', id: 'a' }] }],
    undone: [],
  })
  assert.ok(readSteps(step(bake('a'))))
  assert.equal(readSteps(step({ ...bake('a'), at: 'noon' })), undefined)
})

test('a bake that is deleted is gone from the steps to undo as well, and all else can be undone as before', () => {
  const history = new History(having(bake('a')))
  const [b, secret] = [bake('b', { note: 'windy' }), bake('b', { note: 'secret' })]
  history.apply({
    label: 'windy',
    changes: [
      { of: 'bake', id: 'b', value: b },
      { of: 'workbook', value: { name: 'windy' } },
    ],
  })
  history.apply({ label: 'only it', changes: [{ of: 'bake', id: 'b', value: secret }] })
  history.apply(removeBake(history.workbook, 'b')!)
  const ids = () => history.workbook.bakes!.map(({ id }) => id)
  assert.deepEqual(ids(), ['a'])
  assert.doesNotMatch(JSON.stringify(stepsToKeep(history.steps)), /"b"|secret/)
  assert.equal(history.undoLabel, 'windy')
  history.undo()
  assert.equal(history.workbook.name, 'Bakehouse')
  history.redo()
  assert.equal(history.workbook.name, 'windy')
  assert.deepEqual(ids(), ['a'])
})
