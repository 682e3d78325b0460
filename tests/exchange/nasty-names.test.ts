import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Batch } from '../../src/dough/document/batch.js'
import {
  type CountsAs,
  type Formula,
  type Hold,
  type KeptSetting,
  type Line,
  nameKey,
  newId,
  type Stage,
} from '../../src/dough/document/formula.js'
import { larderOf } from '../../src/dough/document/larder.js'
import { tidy } from '../../src/dough/document/words.js'
import { usualLarder } from '../../src/dough/larder/usual-larder.js'
import { readFormulas, type WriteOptions, writeFormulas } from '../../src/exchange/index.js'
import { randomOf } from '../random.js'
import { shown } from './notation.js'

const nastyNames = [
  'Water',
  'Bread flour',
  'Levain',
  'Salt',
  '=1+1',
  "'quoted",
  "''=",
  '"inch" 9"',
  'a,b',
  'a;b',
  'a\tb',
  'two\nlines',
  'two\r\nlines',
  '\rcr',
  '+',
  '-',
  '@',
  'Æbleskiver',
  'e\u0301',
  'é',
  '面粉',
  '🥖',
  ';=;',
  "\t'=\n'-",
  '1,5',
  '1.000',
  'null',
  '__proto__',
  '  spaces  ',
  'a"',
  '""',
  'formula',
  '\ufeffbom',
]
const nastyAmounts = [
  '',
  '70%',
  '20 g',
  '2 tsp',
  '2*salt',
  'min(1.5%, 20 g)',
  '½ tsp',
  '2 1/2 cup',
  '=SUM(A1)',
  '-5 g',
  'what, no',
  '"x"',
  'a;b',
  "'",
  '1e3 g',
  '0.1%',
  'a\nb',
]

function anyFormula(random: ReturnType<typeof randomOf>, name: string): Formula {
  const { pick, below } = random
  const some = <T>(n: number, make: (at: number) => T): T[] => Array.from({ length: n }, (_, at) => make(at))
  const unique = (n: number) => {
    const names = new Map<string, string>()
    while (names.size < n) {
      const one = pick(nastyNames)
      names.set(nameKey(one), one)
    }
    return [...names.values()]
  }
  const line = (): Line => ({
    id: newId(),
    ingredient: pick(nastyNames),
    amount: pick(nastyAmounts),
    note: pick(['', '', ...nastyNames]),
    ...(below(5) === 0 ? { base: true } : {}),
  })
  const stages = unique(1 + below(3)).map(stageName => ({
    id: newId(),
    name: stageName,
    ...(below(2) ? { ferments: below(2) === 0 } : {}),
    ...(below(3) ? {} : { keepBack: below(2) ? ('seed' as const) : tidy(anyWeight(random)) }),
    ...(below(3) ? {} : { loss: tidy(anyPart(random)) }),
    lines: some(below(5), line),
  }))
  // what a file can tell: ingredients that are in lines and are not an earlier stage, unlike the larder
  const larder = larderOf(usualLarder)
  const meant = new Map<string, { ingredient: string; countsAs: CountsAs }>()
  const seen = new Set<string>()
  stages.forEach((stage, at) => {
    for (const { ingredient } of stage.lines) {
      const key = nameKey(ingredient)
      if (stages.slice(0, at).some(s => nameKey(s.name) === key) || seen.has(key)) continue
      seen.add(key)
      const countsAs = pick<CountsAs>([
        { kind: 'flour' },
        { kind: 'other' },
        { kind: 'starter', hydration: pick([0.5, 1.25, 0.333]) },
      ])
      if (larder.find(ingredient)?.countsAs.kind !== countsAs.kind) meant.set(key, { ingredient, countsAs })
    }
  })
  const final = stages.at(-1)!
  final.lines = final.lines.filter(l => l.ingredient.trim() !== '')
  const { batch, holds } = anyMaking(random, stages)
  return {
    id: newId(),
    name,
    note: pick(['', ...nastyNames]),
    flourWeight: pick([1000, 500, 1234.5678, 1 / 3, 1e-7, 1e21]),
    stages,
    meanings: [...meant.values()],
    ...batch,
    ...holds,
    keptSettings: unique(below(3)).map(setting => ({
      stage: pick(['', ...nastyNames]),
      setting: pick(['keep-back', 'hold true hydration', 'make', setting]),
      amount: pick(nastyAmounts),
      note: pick(nastyNames),
    })),
  }
}

const anyPart = (random: ReturnType<typeof randomOf>) =>
  random.pick([0.02, 0.125, 1 / 8192, 1e-9, 0.999, 0.0188])
const anyWeight = (random: ReturnType<typeof randomOf>) =>
  random.pick([900, 85.5, 1234.5678, 1e-7, 1e21, 0.1 + 0.2 - 4e-17])

/** An amount to make and readings held, each by a line of its own; numbers of at most fifteen digits. */
function anyMaking(random: ReturnType<typeof randomOf>, stages: readonly Stage[]) {
  const { pick, below } = random
  const grams = () => tidy(anyWeight(random))
  const pieces = Array.from({ length: 1 + below(3) }, () => ({
    count: pick([1, 6, 12, 2.5]),
    weight: grams(),
  }))
  const make = pick<Batch>([
    { make: 'as written' },
    { make: 'pieces', pieces },
    { make: 'baked pieces', pieces },
    { make: 'dough', grams: grams() },
    { make: 'flour', grams: grams() },
    { make: 'all of', ingredient: pick(nastyNames), grams: grams() },
    { make: 'factor', factor: pick([2.5, 1 / 4, 1e-7]) },
  ])
  const losses = {
    ...(below(3) ? {} : { loss: tidy(anyPart(random)) }),
    ...(below(3) ? {} : { bakeLoss: tidy(anyPart(random)) }),
  }
  const batch =
    make.make === 'as written' && !losses.loss && !losses.bakeLoss ? {} : { batch: { ...make, ...losses } }
  const readings = new Set<string>()
  const holds = stages.at(-1)!.lines.flatMap((line): Hold[] => {
    const reading = pick<Hold['reading']>(['wholeDough', 'trueHydration', 'salt', 'doughWeight'])
    if (below(2) || (reading !== 'wholeDough' && readings.has(reading))) return []
    readings.add(reading)
    return [{ reading, value: reading === 'doughWeight' ? grams() : tidy(anyPart(random)), line: line.id }]
  })
  return { batch, holds: holds.length ? { holds: holds.reverse() } : {} }
}

test('formulas with nasty names come back as they were, and are written again to the byte (seed 7)', () => {
  const random = randomOf(7)
  for (let i = 0; i < 250; i++) {
    const names = [
      ...new Map(
        Array.from({ length: 1 + random.below(3) }, () => random.pick(nastyNames)).map(n => [nameKey(n), n]),
      ).values(),
    ]
    const formulas = names.map(name => anyFormula(random, name)).filter(f => distinctSettings(f))
    const figures: WriteOptions['figures'] = () => id => ({ grams: id.length * 1.1, percent: 1 / 7 })
    const options = random.below(2) ? { figures } : {}
    const written = writeFormulas(formulas, options)
    const read = readFormulas(written)
    assert.deepEqual(
      read.problems.filter(p => p.severity === 'error'),
      [],
      `round ${i}`,
    )
    assert.deepEqual(read.formulas.map(shown), formulas.map(shown), `round ${i}`)
    assert.equal(writeFormulas(read.formulas, options), written, `round ${i}`)
  }
})

/**
 * A file has one setting of a name in a stage, a stage's own settings need the stage named, and what could be
 * used is not kept.
 */
function distinctSettings({ keptSettings, stages, batch, holds = [] }: Formula): boolean {
  const keys = keptSettings.map(k => `${nameKey(k.stage)}\n${nameKey(k.setting)}`)
  const isUsed = ({ stage, setting, amount }: KeptSetting) =>
    (setting === 'keep-back' &&
      (stage === '' ||
        amount === '20 g' ||
        amount === '1e3 g' ||
        stages.some(s => nameKey(s.name) === nameKey(stage)))) ||
    (stage === '' && setting === 'make' && batch !== undefined) ||
    (stage === '' && setting === 'hold true hydration' && holds.some(h => h.reading === 'trueHydration'))
  return new Set(keys).size === keys.length && !keptSettings.some(isUsed)
}
