import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Day } from '../../src/dough/document/day.js'
import { applyChanges, type Workbook } from '../../src/dough/document/workbook.js'
import { withIds } from '../../src/exchange/data/new-ids.js'
import {
  mergeWorkbooks,
  type RestoreChoice,
  readWorkbookFile,
  restorePlan,
  writeWorkbookFile,
} from '../../src/exchange/index.js'
import { bread, momentOf, saturday } from '../day/notation.js'
import { randomOf } from '../random.js'

const at = '2026-10-07T05:30:00.000Z'
const rye = bread('Rye', 'Final dough:\n Rye flour 500 g\n hands Mix: 10 min\n bake Bake: 1 h')
const wheat = bread('Wheat', 'Final dough:\n Bread flour 500 g\n hands Mix: 10 min\n bake Bake: 1 h')
const plain = saturday([
  [rye, 6],
  [wheat, 4],
])
const mixing = {
  bread: 'b1',
  stage: rye.stages[0]!.id,
  wanted: 28,
  room: 17.5,
  lines: [{ line: rye.stages[0]!.lines[0]!.id, celsius: 19 }],
}
const full: Day = {
  ...plain,
  people: 11,
  ready: '8:00',
  begin: '5:30',
  asleep: [{ from: '22:30', until: '6:00' }],
  ovens: [...plain.ovens, { id: 'deck', name: 'Deck', atOnce: 6, between: 5, change: 15, heating: 60 }],
  freezer: -18,
  tap: 12,
  proofer: 28,
  together: ['levain'],
  holds: [{ moment: momentOf(plain, [rye, wheat], 'Bake'), at: '2026-12-05T06:30' }],
  mixes: [mixing],
  note: 'early',
}
const workbook: Workbook = {
  name: 'Mill',
  leeway: 0.2,
  formulas: [rye, wheat],
  larder: [],
  days: [plain, { ...full, id: 'two' }],
}
const file = (day: object) => writeWorkbookFile({ ...workbook, days: [day as Day] }, at)
const saidOf = (text: string) => readWorkbookFile(text).problems.map(p => `${p.severity}: ${p.message}`)

test('days and the leeway are the same file after writing, reading and writing, to the byte', () => {
  const written = writeWorkbookFile(workbook, at)
  const { workbook: read, problems } = readWorkbookFile(written)
  assert.deepEqual(problems, [])
  assert.deepEqual(read, workbook)
  assert.equal(writeWorkbookFile(read!, at), written)
})

test('fields that no version knows stay in a day, at every level', () => {
  const later = { deep: [{}] }
  const day = {
    ...full,
    later,
    breads: full.breads.map(b => ({ ...b, later })),
    ovens: full.ovens.map(o => ({ ...o, later })),
    holds: full.holds.map(h => ({ ...h, later })),
    asleep: full.asleep.map(n => ({ ...n, later })),
    mixes: [{ ...mixing, later, lines: mixing.lines.map(l => ({ ...l, later })) }],
  }
  const written = file(day)
  assert.equal(writeWorkbookFile(readWorkbookFile(written).workbook!, at), written)
})

for (const [what, day, said] of [
  [
    'without a date',
    { ...full, date: undefined },
    'error: The day “Saturday oven” is damaged and was left out.',
  ],
  [
    'on no date',
    { ...full, date: '2026-02-30' },
    'error: The day “Saturday oven” is damaged and was left out.',
  ],
  ['in no zone', { ...full, zone: 'Mill' }, 'error: The day “Saturday oven” is damaged and was left out.'],
  ['that is a list', [], 'error: The day number 1 is damaged and was left out.'],
] as const)
  test(`a day ${what} is left out and told`, () => {
    assert.deepEqual(saidOf(file(day)), [said])
    assert.equal(readWorkbookFile(file(day)).workbook!.days, undefined)
  })

for (const [what, fields, said, kept] of [
  [
    'a time that is none',
    { ready: '25:00' },
    'a ready that is not understood; it is left out',
    (d: Day) => d.ready === undefined,
  ],
  [
    'a fridge on fire',
    { fridge: 400 },
    'a fridge that is not understood; it is left out',
    (d: Day) => d.fridge === 4,
  ],
  [
    'nobody to bake',
    { bakers: 0 },
    'a bakers that is not understood; it is left out',
    (d: Day) => d.bakers === 1,
  ],
  [
    'ovens that are none',
    { ovens: [null] },
    'an oven that could not be read',
    (d: Day) => d.ovens.length === 1 && d.ovens[0]!.name === 'Oven',
  ],
  [
    'a bread without a batch',
    { breads: [...full.breads, { id: 'b9', formula: 'x' }] },
    'a bread that could not be read',
    (d: Day) => d.breads.length === 2,
  ],
  [
    'two breads of one id',
    { breads: [full.breads[0], full.breads[0]] },
    'a bread that could not be read',
    (d: Day) => d.breads.length === 1,
  ],
  [
    'a hold at no time',
    { holds: [{ moment: 'x', at: 'soon' }] },
    'a hold that could not be read',
    (d: Day) => d.holds.length === 0,
  ],
  [
    'a mixing that is too hot',
    { mixes: [{ bread: 'b1', stage: 'x', wanted: 28, rise: 90 }] },
    'a mixing that could not be read',
    (d: Day) => d.mixes!.length === 0,
  ],
  [
    'nights that are none',
    { asleep: [{ from: 'dusk', until: 'dawn' }] },
    'a night that could not be read',
    (d: Day) => d.asleep.length === 0,
  ],
] as const)
  test(`of a day with ${what} the rest is read, and it is told`, () => {
    const read = readWorkbookFile(file({ ...full, ...fields }))
    assert.ok(
      read.problems.some(p => p.severity === 'warning' && p.message.includes(`“Saturday oven” has ${said}`)),
      read.problems.map(p => p.message).join(),
    )
    assert.ok(kept(read.workbook!.days![0]!))
  })

test('a leeway that is none is the usual one, and told', () => {
  const read = readWorkbookFile(writeWorkbookFile({ ...workbook, leeway: 3 }, at))
  assert.equal(read.workbook!.leeway, undefined)
  assert.deepEqual(
    read.problems.map(p => p.code),
    ['leewayUnreadable'],
  )
})

test('whatever is done to a day in a file, it is read or told, and never thrown (seed 71)', () => {
  const { pick, below } = randomOf(71)
  const hostile: readonly unknown[] = [
    undefined,
    null,
    -1,
    Number.NaN,
    '',
    'x',
    [],
    {},
    [null],
    [[]],
    '__proto__',
    1e308,
  ]
  for (let round = 0; round < 130; round++) {
    const day: Record<string, unknown> = { ...structuredClone(full) }
    for (let n = below(3); n >= 0; n--) {
      const name = pick(Object.keys(day))
      const list = day[name]
      if (Array.isArray(list) && list.length && below(2)) {
        const item = list[below(list.length)]
        if (typeof item === 'object' && item) item[pick(Object.keys(item))] = pick(hostile)
      } else day[name] = pick(hostile)
    }
    const { workbook: read, problems } = readWorkbookFile(file(day))
    const days = read!.days ?? []
    assert.ok(days.length === 1 || problems.length > 0, JSON.stringify(day))
    const again = writeWorkbookFile(read!, at)
    assert.deepEqual(readWorkbookFile(again).workbook, read)
    assert.deepEqual(readWorkbookFile(again).problems, [])
  }
})

const after = (current: Workbook, incoming: Workbook, choice: RestoreChoice) => {
  const done = applyChanges(current, mergeWorkbooks(current, incoming, choice).changes)
  assert.deepEqual(applyChanges(done.workbook, done.inverse).workbook, current)
  return done.workbook
}
const here: Workbook = { name: 'Mill', formulas: [rye, wheat], larder: [], days: [plain] }
const merging = { way: 'merge', differing: 'keep' } as const

test('what a file would change of the days is said: new, the same, different, missing', () => {
  const plan = restorePlan(
    { ...here, days: [plain, { ...full, id: 'three', name: 'Market' }] },
    {
      ...workbook,
      days: [
        { ...plain, note: 'other' },
        { ...full, id: 'five', date: '2026-12-12' },
        { ...full, id: 'four', name: 'market' },
      ],
    },
  )
  assert.deepEqual(
    plan.days.map(d => d.is),
    ['different', 'new', 'different'],
  )
  assert.deepEqual(plan.missing.days, [])
  assert.equal(plan.leewayDiffers, true)
  assert.deepEqual(restorePlan(here, { ...workbook, days: [] }).missing.days, [plain])
  assert.deepEqual(
    restorePlan(here, { ...workbook, days: [plain] }).days.map(d => d.is),
    ['same'],
  )
})

for (const [differing, notes] of [
  ['keep', ['Saturday oven ', 'New ']],
  ['take', ['Saturday oven other', 'New ']],
  ['beside', ['Saturday oven ', 'Saturday oven (from the file) other', 'New ']],
] as const)
  test(`merging with “${differing}” for a day that differs leaves the rest as it is`, () => {
    const incoming = {
      ...workbook,
      days: [
        { ...plain, note: 'other' },
        { ...plain, id: 'new', name: 'New' },
      ],
    }
    const merged = after(here, incoming, { way: 'merge', differing })
    assert.deepEqual(
      merged.days!.map(d => `${d.name} ${d.note}`),
      notes,
    )
    assert.equal(new Set(merged.days!.map(d => d.id)).size, notes.length)
    assert.equal(merged.leeway, 0.2, 'nothing was said of it here')
  })

test('a day that comes in bakes the formulas that are here, whatever their ids were in the file', () => {
  const [elsewhere, other] = [withIds(rye), withIds(wheat)]
  const theirs = saturday([
    [elsewhere, 6],
    [other, 4],
  ])
  const stage = elsewhere.stages[0]!
  const incoming: Workbook = {
    name: '',
    formulas: [elsewhere, other],
    larder: [],
    days: [
      {
        ...theirs,
        id: 'theirs',
        date: '2026-12-12',
        holds: [{ moment: momentOf(theirs, [elsewhere, other], 'Bake'), at: '2026-12-12T06:30' }],
        mixes: [{ bread: 'b1', stage: stage.id, lines: [{ line: stage.lines[0]!.id, celsius: 20 }] }],
      },
    ],
  }
  const merged = after(here, incoming, merging)
  assert.deepEqual(merged.formulas, here.formulas)
  const day = merged.days![1]!
  assert.deepEqual(
    day.breads.map(b => b.formula),
    [rye.id, wheat.id],
  )
  assert.deepEqual(day.holds, [{ moment: momentOf(plain, [rye, wheat], 'Bake'), at: '2026-12-12T06:30' }])
  assert.deepEqual(day.mixes, [
    { bread: 'b1', stage: rye.stages[0]!.id, lines: [{ line: rye.stages[0]!.lines[0]!.id, celsius: 20 }] },
  ])
  assert.deepEqual(
    mergeWorkbooks(merged, incoming, merging).changes,
    [],
    'a second time nothing is to be done',
  )
})

test('a day that comes with a formula kept beside another bakes that one', () => {
  const wetter = { ...rye, note: 'wetter' }
  const incoming = {
    ...here,
    formulas: [wetter, wheat],
    days: [{ ...plain, id: 'theirs', date: '2026-12-12' }],
  }
  const beside = after(here, incoming, { way: 'merge', differing: 'beside' })
  const copy = beside.formulas.find(f => f.note === 'wetter')!
  assert.notEqual(copy.id, rye.id)
  assert.equal(beside.days![1]!.breads[0]!.formula, copy.id)
  const kept = after(here, incoming, merging)
  assert.equal(kept.days![1]!.breads[0]!.formula, rye.id)
})

test('replacing makes days and leeway what the file holds, and a day that is not in it is cleared away', () => {
  const incoming = { ...workbook, formulas: [withIds(rye), wheat], days: [{ ...full, id: 'two' }, plain] }
  assert.deepEqual(after(here, incoming, { way: 'replace' }), incoming)
  const { days: _, ...none } = workbook
  const { cleared, ...left } = after(here, none, { way: 'replace' })
  assert.deepEqual(left, none)
  assert.deepEqual(
    cleared!.map(({ of, thing, index }) => [of, thing, index]),
    [['day', plain, 0]],
  )
})
