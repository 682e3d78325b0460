import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Bake } from '../../src/day/bench/bake.js'
import { bakesIn } from '../../src/day/bench/bake-data.js'
import { applyChanges, type Unread, type Workbook } from '../../src/dough/document/workbook.js'
import { mergeWorkbooks, readWorkbookFile, writeWorkbookFile } from '../../src/exchange/index.js'
import { bread, saturday } from '../day/notation.js'

const saved = '2026-12-06T05:30:00.000Z'
const rye = bread('Rye', 'Final dough:\n Rye flour 500 g\n hands Mix: 10 min\n bake Bake: 1 h')
const day = saturday([[rye, 6]])
const mix = `b1 ${rye.stages[0]!.id} ${rye.stages[0]!.method![0]!.id}`
const bake: Bake = {
  id: 'one',
  at: '2026-12-05T05:00:00Z',
  name: 'Rye',
  formula: rye,
  day: day.id,
  bread: 'b1',
  zone: 'UTC',
  moments: [{ moment: mix, planned: '2026-12-05T07:50:00Z', at: '2026-12-05T07:58:10Z' }],
  weighed: [{ moment: mix, line: rye.stages[0]!.lines[0]!.id, wanted: 500, grams: 502 }],
  figures: [{ moment: mix, what: 'dough', value: 25.5 }],
  timers: [{ id: 't', name: 'Kettle', begun: '2026-12-05T07:00:00Z', ends: '2026-12-05T07:05:00Z' }],
  note: 'windy',
  verdict: 'close crumb',
  tastes: { sour: 3, dark: 4 },
}
const having = (...bakes: readonly object[]): Workbook => ({
  name: 'Mill',
  formulas: [rye],
  larder: [],
  days: [day],
  ...(bakes.length && { bakes: bakes as Unread[] }),
})

test('bakes are the same file after writing, reading and writing, to the byte, fields of later versions in them', () => {
  const workbook = having(bake, { ...bake, id: 'two', moon: 'full' })
  const written = writeWorkbookFile(workbook, saved)
  const { workbook: read, problems } = readWorkbookFile(written)
  assert.deepEqual(problems, [])
  assert.deepEqual(read, workbook)
  assert.equal(writeWorkbookFile(read!, saved), written)
})

const damaged: readonly (readonly [what: string, of: object, said: string | undefined])[] = [
  ['a figure of nothing that is measured', { figures: [{ moment: mix, what: 'luck', value: 1 }] }, 'figure'],
  ['a moment whose time is none', { moments: [{ moment: mix, at: 'noon' }] }, 'at'],
  ['tastes beyond their scale', { tastes: { sour: 9 } }, 'tastes'],
  ['no formula', { formula: undefined }, undefined],
  ['no beginning', { at: 'yesterday' }, undefined],
]
for (const [what, of, said] of damaged)
  test(`a bake with ${what} is ${said ? 'read without it' : 'left out'}, and that is told`, () => {
    const { workbook, problems } = readWorkbookFile(writeWorkbookFile(having({ ...bake, ...of }), saved))
    assert.equal(problems.length, 1)
    assert.equal(bakesIn(workbook!).length, said ? 1 : 0)
    assert.match(problems[0]!.message, said ? new RegExp(said) : /bake/)
  })

test('a bench that went on in two places is brought together: what was noted in either is in it', () => {
  const { at: _at, ...planned } = bake.moments[0]!
  const here: Bake = { ...bake, moments: [planned], note: '' }
  const there: Bake = { ...bake, weighed: [], figures: [{ moment: mix, what: 'room', value: 21 }] }
  const { changes } = mergeWorkbooks(having(here), having(there), { way: 'merge', differing: 'beside' })
  const { workbook } = applyChanges(having(here), changes)
  const [joined, none] = bakesIn(workbook)
  assert.equal(none, undefined)
  assert.deepEqual(joined!.moments, bake.moments)
  assert.deepEqual(joined!.weighed, bake.weighed)
  assert.deepEqual(
    joined!.figures.map(({ what }) => what),
    ['dough', 'room'],
  )
  assert.equal(joined!.note, 'windy')
})

test('replacing makes the bakes those of the file', () => {
  const mine = having(bake)
  const theirs = having({ ...bake, id: 'other' })
  const { workbook } = applyChanges(mine, mergeWorkbooks(mine, theirs, { way: 'replace' }).changes)
  assert.deepEqual(
    bakesIn(workbook).map(({ id }) => id),
    ['other'],
  )
})
