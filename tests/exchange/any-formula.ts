import type { Batch } from '../../src/dough/document/batch.js'
import {
  type Formula,
  type Hold,
  type Line,
  newId,
  type Stage,
  type Step,
} from '../../src/dough/document/formula.js'
import type { ReadingName } from '../../src/dough/document/reading-names.js'
import { tidy } from '../../src/dough/document/words.js'
import type { randomOf } from '../random.js'

type Random = ReturnType<typeof randomOf>

/** Names of every kind: ordinary ones, of many scripts, and such as mean something to a program on the way. */
export const anyNames = [
  'Water',
  'Bread flour',
  'Wholemeal spelt',
  'Levain',
  'Salt',
  'Ripe starter',
  'Egg',
  'Final dough',
  'Honig & Öl',
  'Crème fraîche',
  '面粉',
  'ماء',
  '🥖 flour',
  'e\u0301',
  '  spaces  ',
  'two  spaces',
  'two\nlines',
  'two\r\nlines',
  '\rcr',
  'a\tb',
  '=1+1',
  '+1',
  '-5',
  '@x',
  '＝1',
  '\n=1',
  'soft;-)',
  "'quoted",
  '"inch" 9"',
  '"\\u003d"',
  '–',
  '═══',
  '───',
  '> cited',
  'Note:',
  'Make: 6 × 900 g',
  'Ingredient',
  'Readings',
  '# heading',
  '1. first',
  '| a | b |',
  '`code`',
  '*bold* _it_',
  '[a](javascript:alert(1))',
  '<script>alert(1)</script>',
  '</script><b>',
  '<!--',
  ']]>',
  '&lt;',
  '$&',
  '\\',
  'null',
  '__proto__',
  'constructor',
  '\ufeffbom',
  'nul\0',
  'lone \ud800',
  'line\u2028sep',
  'no\u00a0break',
  'x'.repeat(120),
  'Method',
]

/** Texts of steps of every kind. */
export const anySteps = [
  '30 min',
  '=1 h',
  '3,5–4,5 h; at 25 °C',
  '4 × 5 min every 30 min',
  '10 min, adds Salt',
  '',
]

export const anyAmounts = [
  '70%',
  '100%',
  '20 g',
  '2 tsp',
  '2*salt',
  'min(1.5%, 20 g)',
  '½ tsp',
  '2 1/2 cup',
  '3 each',
  '0.1%',
  '1e3 g',
  '',
  '-5 g',
  '=SUM(1)',
  'what, no',
  'a\nb',
  '–',
  '"x"',
]

const anyNotes = [
  '',
  'fresh milled',
  'Mix. Fold twice! Bake in a pot?',
  '- fold\n- shape\n\nBake',
  'a\n\n\nb\n',
  ' indented\n  more',
  'trailing \nspace',
  '> cited\n>',
  '════\n────',
  'Levain\n──────',
  '\n',
]

/** A formula of any kind, with numbers of at most fifteen digits. Ids as the program makes them. */
export function anyFormula(random: Random): Formula {
  const { pick, below } = random
  const some = <T>(n: number, make: () => T): T[] => Array.from({ length: n }, make)
  const name = () => pick(anyNames)
  const note = () => pick([...anyNotes, ...anyNames])
  const part = () => pick([0.02, 0.125, 0.0188, 0.999, 1e-9])
  const weight = () => pick([900, 85.5, 1234.5678, 1e-7, 1e21, 0.3])
  const maybe = <T extends object>(make: () => T): T | Record<string, never> => (below(3) ? {} : make())
  const line = (): Line => ({
    id: newId(),
    ingredient: pick([name(), name(), '']),
    amount: pick(anyAmounts),
    note: pick(['', note()]),
    ...(below(5) ? {} : { base: true as const }),
  })
  const step = (): Step => ({
    id: newId(),
    does: pick([name(), '']),
    kind: pick(['hands', 'wait', 'bake'] as const),
    text: pick([...anySteps, name()]),
    note: pick(['', note()]),
  })
  const stages = some(
    1 + below(3),
    (): Stage => ({
      id: newId(),
      name: pick([name(), '']),
      lines: some(below(6), line),
      ...maybe(() => ({ ferments: below(2) === 0 })),
      ...maybe(() => ({ keepBack: pick<number | 'seed'>(['seed', 0, weight()]) })),
      ...maybe(() => ({ loss: part() })),
      ...maybe(() => ({ method: some(1 + below(4), step) })),
    }),
  )
  const readings = new Set<string>()
  const holds = stages.at(-1)!.lines.flatMap((giving): Hold[] => {
    const reading = pick<ReadingName | 'wholeDough'>([
      'wholeDough',
      'trueHydration',
      'salt',
      'doughWeight',
      'fat',
    ])
    if (below(3) || readings.has(reading)) return []
    if (reading !== 'wholeDough') readings.add(reading)
    return [{ reading, value: reading === 'doughWeight' ? tidy(weight()) : part(), line: giving.id }]
  })
  const jottings = some(below(3), () => ({ id: newId(), name: name(), text: pick(anyAmounts) }))
  return {
    id: newId(),
    name: name(),
    note: note(),
    flourWeight: pick([1000, 500, 1234.5678, 1 / 3]),
    stages,
    meanings: some(below(3), () => ({
      ingredient: name(),
      countsAs: pick([{ kind: 'flour' }, { kind: 'other' }, { kind: 'starter', hydration: 1.25 }] as const),
    })),
    keptSettings: some(below(2), () => ({
      stage: pick(['', name()]),
      setting: name(),
      amount: pick(anyAmounts),
      note: pick(['', note()]),
      ...maybe(() => ({ ingredient: name() })),
    })),
    ...(holds.length ? { holds } : {}),
    ...anyBatch(random, weight, part),
    ...(jottings.length ? { jottings } : {}),
  }
}

function anyBatch({ pick, below }: Random, weight: () => number, part: () => number): { batch?: Batch } {
  const pieces = Array.from({ length: 1 + below(2) }, () => ({ count: pick([1, 6, 2.5]), weight: weight() }))
  const make = pick<Batch>([
    { make: 'as written' },
    { make: 'pieces', pieces },
    { make: 'baked pieces', pieces },
    { make: 'dough', grams: weight() },
    { make: 'flour', grams: weight() },
    { make: 'all of', ingredient: pick(anyNames), grams: weight() },
    { make: 'factor', factor: pick([2.5, 0.25, 1e-7]) },
  ])
  const losses = { ...(below(3) ? {} : { loss: part() }), ...(below(3) ? {} : { bakeLoss: part() }) }
  const isPlain = make.make === 'as written' && Object.keys(losses).length === 0
  return isPlain ? {} : { batch: { ...make, ...losses } }
}
