import assert from 'node:assert/strict'
import { test } from 'node:test'
import '../../src/dough/cells/rare-cells-at-once.js'
import type { Formula } from '../../src/dough/document/formula.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { newDay } from '../../src/dough/edits/fetched/day-edits.js'
import { larderWith } from '../../src/dough/larder/usual-larder.js'
import { remarksOn } from '../../src/dough/remarks/remarks.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { readWorkbookFile, writeWorkbookFile } from '../../src/exchange/data/workbook-file.js'
import { newsInWords } from '../../src/storage/news.js'
import { asJson } from '../../src/storage/record/as-json.js'
import { randomOf } from '../random.js'
import { inWords, loaf, workbookOf } from './bread.js'
import { Disk, keeperOn } from './stand-ins.js'

/** Records that a disk, a file or another program has made something else of. */

const rye: Formula = {
  ...loaf('Rye', 'rye 100%', 'water 80%', 'salt 2%'),
  meanings: [{ ingredient: 'rye', countsAs: { kind: 'flour' } }],
  holds: [{ reading: 'salt', value: 0.02, line: 'Rye-salt' }],
  batch: { make: 'pieces', pieces: [{ count: 2, weight: 900 }], loss: 0.02 },
  jottings: [{ id: 'tin', name: 'tin', text: '21*11' }],
  states: [{ id: 's', name: 'before', keptAt: '2026-01-01T07:00:00.000Z', formula: loaf('Rye', 'rye 100%') }],
}
const malt = {
  id: 'malt',
  name: 'Malt',
  otherNames: ['Diastatic malt'],
  kind: 'other',
  countsAs: { kind: 'other' },
  moisture: 0.05,
  fat: 0,
  sugar: 0.6,
  protein: 0.1,
  salt: 0,
  allergens: { us: ['Wheat'], eu: ['Gluten'], canada: ['Gluten'] },
  note: '',
} as const
const day = { ...newDay({ name: 'Saturday', date: '2026-12-05', zone: 'Europe/Brussels' }), id: 'saturday' }
const workbook: Workbook = { ...workbookOf(rye, loaf('Miche', 'flour 100%')), larder: [malt], days: [day] }

async function aDisk(): Promise<Disk> {
  const disk = new Disk()
  const { keeper } = await keeperOn(disk)
  keeper.keep(workbook)
  await keeper.flush()
  return disk
}

const withFields = (part: unknown, fields: object) => ({ ...(part as object), ...fields })

/** Everything a page does with a workbook at its start, which must not throw. */
function workOut(of: Workbook): void {
  const larder = larderWith(of.larder)
  for (const formula of of.formulas) {
    const sheet = openSheet(formula, larder)
    remarksOn(sheet.workedOut)
    for (const state of formula.states ?? []) openSheet(state.formula, larder)
  }
  writeWorkbookFile(of)
}

for (const [what, fields, said] of [
  ['meanings with a null', { meanings: [null, ...rye.meanings] }, 'meaning'],
  [
    'a meaning of an unknown kind',
    { meanings: [{ ingredient: 'rye', countsAs: { kind: 'gold' } }] },
    'meaning',
  ],
  ['holds with a null', { holds: [null] }, 'hold'],
  ['a hold of an unknown reading', { holds: [{ reading: 'luck', value: 1, line: 'Rye-salt' }] }, 'hold'],
  ['a batch that is null', { batch: null }, 'batch'],
  ['a batch whose pieces are junk', { batch: { make: 'pieces', pieces: 'many' } }, 'batch'],
  ['a batch whose kind has no text', { batch: { make: { toString: null } } }, 'batch'],
  ['kept settings that are a number', { keptSettings: 5 }, 'list of kept settings'],
  ['a flour weight below nothing', { flourWeight: -3 }, 'flour weight'],
  ['a method that is a text', { stages: [{ ...rye.stages[0], method: 'knead' }] }, 'method'],
  ['a line that is null', { stages: [{ ...rye.stages[0], lines: [null, ...rye.stages[0]!.lines] }] }, 'line'],
] as const)
  test(`${what}: the formula is there, it is said what is not, and what was stored can be had as it was`, async () => {
    const disk = await aDisk()
    const damaged = withFields(disk.parts.get('formula Rye'), fields)
    disk.parts.set('formula Rye', damaged)
    const { keeper } = await keeperOn(disk)
    assert.equal(inWords(keeper.workbook), 'Rye rye 100% water 80% salt 2%; Miche flour 100%')
    assert.deepEqual(keeper.problems.map(newsInWords), [
      `The formula “Rye” is damaged. Not read of it: ${said}. The rest is here; what was stored is kept, and can be downloaded as it is.`,
    ])
    workOut(keeper.workbook)
    assert.deepEqual([...(await keeper.damaged()).values()], [damaged])

    // Kept so through edits and saves, and not complained of for ever.
    keeper.keep({ ...keeper.workbook, formulas: [loaf('Rye', 'rye 90%')] })
    await keeper.flush()
    const next = await keeperOn(disk)
    assert.deepEqual(next.keeper.problems, [])
    assert.equal(inWords(next.keeper.workbook), 'Rye rye 90%')
    assert.deepEqual([...(await next.keeper.damaged()).values()], [damaged])
    next.keeper.keep({ ...next.keeper.workbook, name: 'Mill' })
    await next.keeper.flush()
    assert.deepEqual([...(await next.keeper.damaged()).values()], [damaged])
  })

for (const [what, ingredient, said] of [
  [
    'other names that are a text',
    { ...malt, otherNames: 'malt' },
    'The ingredient “Malt” is damaged. Not read of it: list of other names. The rest is here; what was stored is kept, and can be downloaded as it is.',
  ],
  [
    'allergens that are a text',
    { ...malt, allergens: 'wheat' },
    'The ingredient “Malt” is damaged. Not read of it: allergens. The rest is here; what was stored is kept, and can be downloaded as it is.',
  ],
  [
    'allergens with a null',
    { ...malt, allergens: { us: [null], eu: [], canada: [] } },
    'The ingredient “Malt” is damaged. Not read of it: allergens. The rest is here; what was stored is kept, and can be downloaded as it is.',
  ],
  [
    'an unknown kind',
    { ...malt, countsAs: { kind: 'gold' } },
    'The ingredient “Malt” of the larder could not be read. What is stored of it is kept, and can be downloaded as it is.',
  ],
  [
    'nothing at all',
    null,
    'A ingredient of the larder could not be read. What is stored of it is kept, and can be downloaded as it is.',
  ],
] as const)
  test(`an ingredient with ${what} is told, and what was stored can be had as it was`, async () => {
    const disk = await aDisk()
    disk.parts.set('workbook', withFields(disk.parts.get('workbook'), { larder: [ingredient] }))
    const { keeper } = await keeperOn(disk)
    assert.deepEqual(keeper.problems.map(newsInWords), [said.replace(/^A ingr/, 'An ingr')])
    workOut(keeper.workbook)
    assert.deepEqual([...(await keeper.damaged()).values()], [ingredient])
    keeper.keep({ ...keeper.workbook, name: 'Mill' })
    await keeper.flush()
    assert.deepEqual([...(await (await keeperOn(disk)).keeper.damaged()).values()], [ingredient])
  })

test('what JSON does not know is read as damaged and written down as it is', async () => {
  const circle: Record<string, unknown> = { id: 'Rye', name: 'Rye' }
  circle.stages = [circle]
  for (const part of [
    circle,
    new Date(0),
    new Map([['id', 'Rye']]),
    { ...rye, later: 5n },
    { ...rye, later: circle },
  ]) {
    const disk = await aDisk()
    disk.parts.set('formula Rye', part)
    const { keeper } = await keeperOn(disk)
    assert.equal(inWords(keeper.workbook), 'Miche flour 100%')
    assert.match(newsInWords(keeper.problems[0]!), /could not be read/)
    assert.doesNotThrow(() => JSON.parse(asJson(disk.parts)))
  }
  assert.deepEqual(
    JSON.parse(asJson(new Map<string, unknown>([['a', { n: 5n, m: new Map([['x', 1]]), u: undefined }]]))),
    {
      a: { n: '5', m: { x: 1 }, u: 'undefined' },
    },
  )
  assert.deepEqual(JSON.parse(asJson(new Map([['a', circle]]))), {
    a: { id: 'Rye', name: 'Rye', stages: ['…'] },
  })
})

/** Puts something odd at a random place of a value. */
function spoil(value: unknown, random: ReturnType<typeof randomOf>): unknown {
  const odd: readonly unknown[] = [
    null,
    undefined,
    true,
    -1,
    0,
    1e308,
    Number.NaN,
    Number.POSITIVE_INFINITY,
    '',
    'x',
    '=1+1',
    '__proto__',
    [],
    [null],
    {},
    [[]],
    { kind: 'gold' },
    { make: 'pieces' },
    { toString: null },
    [{ id: 'x' }],
    { length: 5 },
    new Date(0),
    5n,
  ]
  if (typeof value !== 'object' || value === null || random.below(6) === 0) return random.pick(odd)
  const keys = Object.keys(value)
  if (keys.length === 0) return random.pick(odd)
  const at = random.pick(keys)
  if (Array.isArray(value)) {
    const list = [...value]
    const way = random.below(4)
    if (way === 0) list.push(random.pick(odd))
    else if (way === 1) list.splice(Number(at), 1)
    else if (way === 2) list.push(list[Number(at)])
    else list[Number(at)] = spoil(list[Number(at)], random)
    return list
  }
  const fields: Record<string, unknown> = { ...value }
  if (random.below(5) === 0) delete fields[at]
  else fields[at] = spoil(fields[at], random)
  return fields
}

const rounds = 600
const seed = 20261130

test(`${rounds} damaged workbooks (seed ${seed}) open, say what they miss, are worked out and saved`, async () => {
  const random = randomOf(seed)
  const whole = await aDisk()
  const keys = [...whole.parts.keys()]
  const counts = { whole: 0, inPart: 0, unreadable: 0, shelf: 0 }
  for (let round = 0; round < rounds; round++) {
    const disk = new Disk(new Map(whole.parts))
    for (let times = 1 + random.below(3); times > 0; times--) {
      const key = random.pick(keys)
      disk.parts.set(key, spoil(disk.parts.get(key), random))
    }
    const was = disk.parts
    disk.parts = new Map(was)
    const about = () => `round ${round}: ${asJson(was)}`
    const { keeper } = await keeperOn(disk)
    const { status } = keeper.state
    assert.ok(status !== 'loading' && status !== 'full', about())
    if (status === 'refused') assert.equal(keeper.state.reason.code, 'storedByNewerVersion', about())
    const said = keeper.problems.map(newsInWords)
    assert.ok(
      said.every(sentence => !/undefined|\[object/.test(sentence)),
      `${said} ${about()}`,
    )
    try {
      workOut(keeper.workbook)
    } catch (error) {
      throw new Error(about(), { cause: error })
    }
    for (const { code } of keeper.problems)
      if (code === 'shelfUnreadable') counts.shelf++
      else if (/Unreadable|Missing/.test(code)) counts.unreadable++
      else counts.inPart++
    if (keeper.problems.length === 0) counts.whole++

    // What was read can be saved, and is the same when it is read again.
    keeper.keep({ ...keeper.workbook, name: 'Saved' })
    await keeper.flush()
    if (status === 'refused') continue
    assert.equal(keeper.state.status, 'saved', about())
    const again = await keeperOn(disk)
    assert.deepEqual(again.keeper.workbook, keeper.workbook, `round ${round}`)
    const file = readWorkbookFile(writeWorkbookFile(keeper.workbook))
    assert.deepEqual(file.problems, [], about())
  }
  process.stdout.write(`damaged workbooks: ${JSON.stringify(counts)}\n`)
  for (const count of Object.values(counts)) assert.ok(count > rounds / 50)
})

test(`${rounds} damaged workbook files (seed ${seed + 1}) are read as far as they go, and what is read is whole`, () => {
  const random = randomOf(seed + 1)
  const whole = JSON.parse(writeWorkbookFile(workbook))
  const counts = { refused: 0, told: 0, whole: 0 }
  for (let round = 0; round < rounds; round++) {
    let file: unknown = whole
    for (let times = 1 + random.below(3); times > 0; times--) file = spoil(file, random)
    const text = asJson(new Map(Object.entries((file as object | null) ?? {})))
    const read = readWorkbookFile(text)
    if (!read.workbook) counts.refused++
    else {
      if (read.problems.length > 0) counts.told++
      else counts.whole++
      try {
        workOut(read.workbook)
      } catch (error) {
        throw new Error(`round ${round}: ${text}`, { cause: error })
      }
      assert.deepEqual(readWorkbookFile(writeWorkbookFile(read.workbook)).problems, [], `round ${round}`)
    }
  }
  process.stdout.write(`damaged workbook files: ${JSON.stringify(counts)}\n`)
  for (const count of Object.values(counts)) assert.ok(count > rounds / 50)
})
