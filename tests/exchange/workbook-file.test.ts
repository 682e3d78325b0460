import assert from 'node:assert/strict'
import { test } from 'node:test'
import { allergensOf } from '../../src/dough/about/allergens.js'
import { type Formula, newId } from '../../src/dough/document/formula.js'
import { applyChanges, type Workbook } from '../../src/dough/document/workbook.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { larderWith, usualLarder } from '../../src/dough/larder/usual-larder.js'
import { partOfWorkbook } from '../../src/exchange/data/part-of-workbook.js'
import { mergeWorkbooks, restorePlan } from '../../src/exchange/data/restore.js'
import { readWorkbookFile, writeWorkbookFile } from '../../src/exchange/data/workbook-file.js'
import { formulaOf } from '../dough/notation.js'
import { randomOf } from '../random.js'
import { Disk, keeperOn } from '../storage/stand-ins.js'
import { anyFormula, anyNames } from './any-formula.js'

const at = '2026-10-07T05:30:00.000Z'
const loaf = formulaOf('Final dough:\n Bread flour = 100%\n Water = 68%')
const workbookOf = (...formulas: Formula[]): Workbook => ({ name: 'Brackwater Mill', formulas, larder: [] })
const file = (fields: object) =>
  JSON.stringify({ format: 'tarebook workbook file', version: 1, savedAt: at, ...fields })
test('some formulas leave as a workbook file of their own, with the own ingredients that they or their states name', () => {
  const own = (id: string, name: string, ...otherNames: string[]) => ({
    ...usualLarder[0]!,
    id,
    name,
    otherNames,
  })
  const { states: _none, ...then } = formulaOf('Final dough:\n Sharp salt = 2%')
  const states = [{ id: 's', name: 'Before', keptAt: at, formula: then }]
  const chosen = { ...formulaOf('Final dough:\n Bread flour = 100%\n HILL  meal = 10%'), states }
  const workbook: Workbook = {
    ...workbookOf(loaf, chosen),
    larder: [own('a', 'Meal of the hill', 'Hill meal'), own('b', 'Sharp salt'), own('c', 'Old dough')],
    scale: { step: 5, fineStep: 0.1, fineBelow: 10 },
  }
  const text = writeWorkbookFile(partOfWorkbook(workbook, [chosen]), at)
  const { workbook: read, problems } = readWorkbookFile(text)
  assert.deepEqual(problems, [])
  assert.deepEqual(read!.formulas, [chosen])
  assert.deepEqual(
    read!.larder.map(({ id }) => id),
    ['a', 'b'],
  )
  assert.equal(read!.scale, undefined, 'how a scale weighs is the reader’s own')
})

const saidOf = (text: string) => readWorkbookFile(text).problems.map(p => `${p.severity}: ${p.message}`)

/** The same with fields that no version knows, here and there. */
function withUnknown<T>(value: T, random: ReturnType<typeof randomOf>): T {
  if (Array.isArray(value)) return value.map((item: unknown) => withUnknown(item, random)) as T
  if (typeof value !== 'object' || value === null) return value
  const fields = Object.entries(value).map(([name, inner]) => [name, withUnknown<unknown>(inner, random)])
  if (random.below(4) === 0)
    fields.splice(random.below(fields.length + 1), 0, [
      `later ${random.below(9)}`,
      random.pick<unknown>([null, 1.5, 'x', { deep: [[{}]] }, []]),
    ])
  return Object.fromEntries(fields) as T
}

test('workbooks of every kind are the same file after writing, reading and writing, to the byte (seed 21)', () => {
  const random = randomOf(21)
  for (let i = 0; i < 70; i++) {
    const formulas = Array.from({ length: random.below(4) }, (): Formula => {
      const { states: _states, ...kept } = anyFormula(random)
      const state = { id: newId(), name: random.pick(anyNames), keptAt: at, formula: kept }
      return {
        ...anyFormula(random),
        ...(random.below(3) ? {} : { states: [state] }),
        ...(random.below(2) ? {} : { group: random.pick(anyNames) }),
      }
    })
    const {
      name,
      scale,
      formulas: bread,
      larder,
      ...later
    } = withUnknown<Workbook>(
      {
        name: random.pick(anyNames),
        ...(random.below(2) ? { scale: { step: 5, fineStep: 0.1, fineBelow: 10 } } : {}),
        formulas,
        larder: usualLarder.slice(0, random.below(5)).map(i => ({ ...i, name: random.pick(anyNames) })),
      },
      random,
    )
    const workbook: Workbook = {
      name,
      ...(scale && { scale }),
      formulas: bread,
      larder,
      ...(Object.keys(later).length && { later }),
    }
    const written = writeWorkbookFile(workbook, at)
    const { workbook: read, savedAt, problems } = readWorkbookFile(written)
    assert.deepEqual(problems, [], `round ${i}`)
    assert.deepEqual(read, JSON.parse(JSON.stringify(workbook)), `round ${i}`)
    assert.equal(writeWorkbookFile(read!, savedAt), written, `round ${i}`)
  }
})

for (const [what, text, said] of [
  ['an empty file', ' \n', 'This file is empty.'],
  [
    'half a file',
    writeWorkbookFile(workbookOf(loaf)).slice(0, 200),
    'This is not a workbook file, or not the whole of one. Choose a file that Tarebook wrote, or read formulas from a table instead.',
  ],
  [
    'a table',
    'formula,stage',
    'This is not a workbook file, or not the whole of one. Choose a file that Tarebook wrote, or read formulas from a table instead.',
  ],
  [
    'another JSON file',
    '{"name":"x"}',
    'This is not a workbook file of Tarebook. Choose a file that “Send out” wrote.',
  ],
  ['a list', '[]', 'This is not a workbook file of Tarebook. Choose a file that “Send out” wrote.'],
  [
    'a file of a newer version',
    file({ version: 2 }),
    'This workbook file was written by a newer Tarebook (version 2 of the file; this one reads up to 1). Bring Tarebook up to date and read it again; nothing was changed.',
  ],
  [
    'a file without a version',
    file({ version: '1' }),
    'This workbook file does not say of which version it is, so it cannot be read.',
  ],
  [
    'a file that nests without end',
    '['.repeat(200_000) + ']'.repeat(200_000),
    'This file nests things more than 64 deep, which no workbook does. It was not read.',
  ],
  [
    'a field that nests without end',
    file({ formulas: [], x: JSON.parse(`${'{"a":'.repeat(70)}1${'}'.repeat(70)}`) }),
    'This file nests things more than 64 deep, which no workbook does. It was not read.',
  ],
  [
    'a file of countless formulas',
    file({ formulas: Array.from({ length: 20_000 }, () => 0) }),
    'This file holds 20000 formulas; at most 10000 are read.',
  ],
  [
    'a file too large',
    ' '.repeat(64_000_001),
    'This file has 64 million characters; a workbook file has at most 64 million.',
  ],
] as const)
  test(`${what} is refused with a sentence`, () => {
    assert.deepEqual(saidOf(text), [`error: ${said}`])
    assert.equal(readWorkbookFile(text).workbook, undefined)
  })

const bad: readonly (readonly [string, object])[] = [
  ['is a number', 5 as unknown as object],
  ['has no name', { ...loaf, name: undefined }],
  ['has a name that is a list', { ...loaf, name: ['x'] }],
  ['has no stages', { ...loaf, stages: [] }],
  ['has stages that are a text', { ...loaf, stages: 'x' }],
  ['has a stage without lines', { ...loaf, stages: [{ id: 'a', name: 'x' }] }],
  [
    'has more lines than a day has seconds',
    {
      ...loaf,
      stages: [
        {
          id: 'a',
          name: 'x',
          lines: Array.from({ length: 6000 }, (_, i) => ({
            id: `l${i}`,
            ingredient: '',
            amount: '',
            note: '',
          })),
        },
      ],
    },
  ],
]
for (const [what, formula] of bad)
  test(`a formula that ${what} is left out, and the others are read`, () => {
    const { workbook, problems } = readWorkbookFile(file({ formulas: [formula, loaf], larder: [] }))
    assert.deepEqual(workbook?.formulas, [loaf])
    assert.match(problems.at(-1)!.message, /damaged and was left out/)
  })

for (const [what, fields] of [
  ['a note that is a number', { note: 7 }],
  ['a flour weight of nothing', { flourWeight: 0 }],
  ['a batch of no dough', { batch: { make: 'dough', grams: -1 } }],
  ['a batch that is made of something unknown', { batch: { make: 'constructor' } }],
  ['pieces that are no list', { batch: { make: 'pieces', pieces: { length: 1 } } }],
  ['a hold on no reading', { holds: [{ reading: 'toString', value: 1, line: 'x' }] }],
  [
    'a meaning that means nothing',
    { meanings: [{ ingredient: 'x', countsAs: { kind: 'starter', hydration: -1 } }] },
  ],
  ['jottings that are a text', { jottings: 'per_loaf' }],
  ['a kept state without a formula', { states: [{ id: 'a', name: 'x', keptAt: at, formula: {} }] }],
] as const)
  test(`${what} is left out of its formula, which is told`, () => {
    const { workbook, problems } = readWorkbookFile(file({ formulas: [{ ...loaf, ...fields }], larder: [] }))
    const [read] = workbook!.formulas
    assert.equal(problems.length, 1)
    assert.match(problems[0]!.message, /^The formula “Test” has /)
    assert.deepEqual(read!.stages, loaf.stages)
    assert.doesNotThrow(() => openFormula(read!).problems)
  })

test('names of a prototype do no harm, as fields or as texts', () => {
  const text = file({ formulas: [{ ...loaf, name: '__proto__', constructor: 'x' }], larder: [] }).replace(
    '"note"',
    '"__proto__":{"polluted":1},"note"',
  )
  const { workbook, problems } = readWorkbookFile(text)
  assert.deepEqual(problems, [])
  const [read] = workbook!.formulas
  assert.equal(read!.name, '__proto__')
  assert.equal(Object.hasOwn(read!, '__proto__'), false)
  assert.equal(Object.getPrototypeOf(read), Object.prototype)
  assert.equal(({} as Record<string, unknown>).polluted, undefined)
})

test('parts with one id, or with none that can be used, get ids of their own, and a hold keeps its line', () => {
  const [flour, water] = loaf.stages[0]!.lines
  const stages = [
    { id: 'same', name: 'Levain', lines: [{ ...flour!, id: 'same' }] },
    {
      id: 'reading',
      name: 'Final dough',
      lines: [flour!, { ...water!, id: 'same' }, { ...water!, id: 'a.b c' }],
    },
  ]
  const holds = [{ reading: 'trueHydration', value: 0.7, line: 'same' }]
  const { workbook } = readWorkbookFile(file({ formulas: [{ ...loaf, stages, holds }, loaf], larder: [] }))
  const [read, other] = workbook!.formulas
  const ids = [read!.id, other!.id, ...read!.stages.flatMap(s => [s.id, ...s.lines.map(l => l.id)])]
  assert.equal(new Set(ids).size, ids.length)
  assert.equal(read!.stages[1]!.lines[1]!.id, 'same')
  assert.ok(ids.slice(2).every(id => /^[\w-]+$/.test(id) && id !== 'reading'))
})

const { allergens: _allergens, ...unsaid } = usualLarder.find(i => i.name === 'Rice flour')!
const meal = { ...unsaid, id: 'meal', name: 'Hill meal', otherNames: [] }
const none = { us: [], eu: [], canada: [] }
const notKnownIn = (workbook: Workbook) =>
  allergensOf(
    openFormula(formulaOf('Final dough:\n Hill meal = 100%'), larderWith(workbook.larder)),
  ).notKnown.map(u => u.ingredient)

for (const [what, own, isKnown] of [
  ['nobody has said the allergens of', meal, false],
  ['of an older workbook with empty lists', { ...meal, allergens: none }, false],
  ['that is none of these', { ...meal, allergens: none, noneListed: true }, true],
  ['with mustard', { ...meal, allergens: { ...none, eu: ['mustard'] } }, true],
] as const)
  test(`an ingredient ${what} is ${isKnown ? '' : 'not '}known, and goes through a file, a start anew and a merge as it was`, async () => {
    const workbook: Workbook = { ...workbookOf(), larder: [own] }
    const written = writeWorkbookFile(workbook, at)
    const { workbook: read, problems } = readWorkbookFile(written)
    assert.deepEqual(problems, [])
    assert.equal(writeWorkbookFile(read!, at), written)
    const disk = new Disk()
    const { keeper } = await keeperOn(disk)
    keeper.keep(read!)
    await keeper.flush()
    const { workbook: stored } = (await keeperOn(disk)).keeper
    assert.equal(writeWorkbookFile(stored, at), written)
    const { changes } = mergeWorkbooks(workbookOf(), stored, { way: 'merge', differing: 'keep' })
    const merged = applyChanges(workbookOf(), changes).workbook
    assert.equal(writeWorkbookFile(merged, at), written)
    assert.ok(restorePlan(merged, read!).ingredients.every(i => i.is === 'same'))
    assert.deepEqual(notKnownIn(merged), isKnown ? [] : ['Hill meal'])
  })

for (const [what, fields] of [
  ['no lists', { allergens: 7 }],
  ['a damaged list', { allergens: { ...none, us: 'milk' } }],
  ['a list missing', { allergens: { us: [], eu: [] } }],
  ['a damaged statement', { allergens: none, noneListed: 'yes' }],
] as const)
  test(`an ingredient with ${what} is not known, and that is told`, () => {
    const { workbook, problems } = readWorkbookFile(
      file({ formulas: [], larder: [{ ...meal, noneListed: true, ...fields }] }),
    )
    assert.equal(problems.length, 1)
    assert.deepEqual(notKnownIn(workbook!), ['Hill meal'])
  })

test('a damaged ingredient of the larder is left out, and told', () => {
  const [salt] = usualLarder
  const { workbook, problems } = readWorkbookFile(
    file({
      formulas: [],
      larder: [{ ...salt, countsAs: { kind: 'gold' } }, { ...salt, density: 'heavy' }, salt],
    }),
  )
  assert.equal(workbook!.larder.length, 2)
  assert.equal(problems.length, 2)
})

test('of very many problems the first are told, and how many there are', () => {
  const problems = saidOf(file({ formulas: Array.from({ length: 500 }, () => 0), larder: [] }))
  assert.equal(problems.length, 101)
  assert.equal(problems.at(-1), 'error: There are 400 more things that could not be read.')
})

test('files with random damage never throw, nor do the formulas read from them (seed 22)', () => {
  const random = randomOf(22)
  for (let i = 0; i < 100; i++) {
    const text = writeWorkbookFile(workbookOf(anyFormula(random), loaf), at)
    const damaged = text.replace(/: (?:"[^"]*"|[\d.e+-]+)/g, found =>
      random.below(40)
        ? found
        : `: ${random.pick(['null', '[]', '{}', '-1', '1e999', '"x"', 'true', '"__proto__"'])}`,
    )
    const { workbook } = readWorkbookFile(damaged)
    for (const formula of workbook?.formulas ?? []) openFormula(formula).problems
  }
})
