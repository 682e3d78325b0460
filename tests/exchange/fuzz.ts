import { amountAsKept, readAmount } from '../../src/dough/amounts/amounts.js'
import '../../src/dough/amounts/spoken-at-once.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { emptyWorkbook } from '../../src/dough/document/workbook.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { larderWith } from '../../src/dough/larder/usual-larder.js'
import { arrive } from '../../src/exchange/arriving/arrive.js'
import {
  formulaFromLink,
  linkOf,
  recipeScript,
  sheetFigures,
  writeFormulas,
  writeHtml,
  writeMarkdown,
  writePlainText,
  writeWorkbookFile,
} from '../../src/exchange/index.js'
import { randomOf } from '../random.js'
import { hostileValues } from './hostile-values.js'

/** What became of so many inputs. */
export interface FuzzCount {
  inputs: number
  read: number // of which something came
  refused: number // with a sentence
  formulas: number // opened, and written in a way
  readonly threw: string[] // what should never be: the input and the error
}

type Random = ReturnType<typeof randomOf>

const larder = larderWith([])

/** Small and with everything: what is changed a little is still mostly read. */
const loaf: Formula = {
  id: 'loaf',
  name: 'Brackwater loaf',
  note: 'cold',
  flourWeight: 1000,
  stages: [
    {
      id: 'levain',
      name: 'Levain',
      keepBack: 20,
      lines: [
        { id: 'a', ingredient: 'Ripe starter', amount: '20%', note: '' },
        { id: 'b', ingredient: 'Bread flour', amount: '100%', note: 'fresh' },
        { id: 'c', ingredient: 'Water', amount: '80%', note: '' },
      ],
      method: [{ id: 'm', does: 'Ripen', kind: 'wait', text: '5–7 h, at 24 °C', note: 'doubled' }],
    },
    {
      id: 'dough',
      name: 'Final dough',
      loss: 0.02,
      lines: [
        { id: 'd', ingredient: 'Bread flour', amount: '82%', note: '' },
        { id: 'e', ingredient: 'Rye', amount: '18%', note: '' },
        { id: 'f', ingredient: 'Water', amount: '69%', note: '' },
        { id: 'g', ingredient: 'Salt', amount: 'rye/9', note: '' },
        { id: 'h', ingredient: 'Levain', amount: '210 g', note: '' },
      ],
    },
  ],
  meanings: [{ ingredient: 'Rye', countsAs: { kind: 'flour' } }],
  keptSettings: [{ stage: '', setting: 'crust', amount: 'dark', note: '' }],
  holds: [{ reading: 'trueHydration', value: 0.72, line: 'f' }],
  batch: { make: 'pieces', pieces: [{ count: 6, weight: 900 }], loss: 0.02 },
  jottings: [{ id: 'j', name: 'per_loaf', text: 'dough_weight/6' }],
  states: [
    {
      id: 's',
      name: 'wetter',
      keptAt: '2026-05-01T08:00:00.000Z',
      formula: {
        id: 'loaf',
        name: 'Brackwater loaf',
        note: '',
        flourWeight: 900,
        stages: [{ id: 'dough', name: 'Final dough', lines: [] }],
        meanings: [],
        keptSettings: [],
      },
    },
  ],
}

const table =
  'Zutat;Menge;Prozent;Notiz\nMehl;1000 g;100;\nWasser;700 g;70;kalt\nSalz;20 g;2;\nSumme;1720 g;;\n'
const recipe =
  'Mill loaf\n\nFor the levain:\n50 g starter\n1 1/2 cups flour\n\nDough\n1 kg flour, sifted\n700 ml water\n2 tsp salt\n\n1. Mix 10 min.\n2. Bake at 230 °C for 45 minutes.\n'

const odd: readonly unknown[] = [
  null,
  -1,
  0,
  1e308,
  0.1,
  '',
  'x',
  true,
  [],
  {},
  [null],
  { kind: 'starter', hydration: -1 },
  ...hostileValues.slice(0, 37),
]
const signs = [
  ...'=+-*/%(){}[]<>,;:.\'"`|#\\\t\n\r 0123456789½²−×﻿\u0000\u202e',
  'é',
  '🥖',
  '\ud800',
  'g',
  'cup',
]

/** A text changed here and there. */
function changed(text: string, { below, pick }: Random): string {
  let now = text
  for (let times = 1 + below(4); times > 0; times--) {
    const [from, to] = [below(now.length + 1), below(now.length + 1)].sort((a, b) => a - b) as [
      number,
      number,
    ]
    const part = now.slice(from, Math.min(to, from + 40))
    const way = below(5)
    if (way === 0) now = now.slice(0, from) + now.slice(from + part.length)
    else if (way === 1) now = now.slice(0, from) + part + now.slice(from)
    else if (way === 2) now = now.slice(0, from) + pick(hostileValues.slice(0, -1)) + now.slice(from)
    else now = now.slice(0, from) + pick(signs).repeat(1 + below(3)) + now.slice(from + below(2))
  }
  return now
}

/** Plain data with one or two values of it others, or gone. */
function changedData(data: unknown, { below, pick }: Random): unknown {
  const copy = structuredClone(data)
  for (let times = 1 + below(2); times > 0; times--) {
    let at = copy as Record<string, unknown>
    for (;;) {
      const keys = Object.keys(at)
      if (keys.length === 0) break
      const key = pick(keys)
      const inner = at[key]
      if (typeof inner === 'object' && inner !== null && below(4) > 0) {
        at = inner as Record<string, unknown>
        continue
      }
      if (below(6) === 0) delete at[key]
      else at[key] = pick(odd)
      break
    }
  }
  return copy
}

const writers: readonly ((formula: Formula) => unknown)[] = [
  formula => writeFormulas([formula], { larder, figures: sheetFigures(larder) }),
  formula => writePlainText(openFormula(formula)),
  formula => writeMarkdown(openFormula(formula)),
  formula => writeHtml(openFormula(formula)),
  formula => recipeScript(openFormula(formula)),
  formula => writeWorkbookFile({ ...emptyWorkbook, formulas: [formula] }),
]

/** Opens formulas, reads all of their figures, and writes them in one of the ways. */
function use(formulas: readonly Formula[], count: FuzzCount, { pick }: Random): void {
  for (const formula of formulas) {
    const sheet = openFormula(formula)
    for (const problem of sheet.problems)
      if (!problem.message) throw new Error(`no sentence of ${problem.code}`)
    for (const stage of formula.stages) {
      sheet.stage(stage.id)
      for (const line of stage.lines) sheet.line(line.id)
    }
    pick(writers)(formula)
    count.formulas += 1
  }
}

/** Kinds of inputs, each with how many of a hundred it is. */
const kinds: readonly (readonly [share: number, run: (random: Random, count: FuzzCount) => unknown])[] = [
  [
    50,
    (random, count) => {
      const { below, pick } = random
      const words = ['salt', 'rye', '70', '1.5', '1,5', 'g', '%', 'cup', 'tsp', 'half', 'a', 'min(', ...signs]
      const text = Array.from({ length: 1 + below(12) }, () => pick(words)).join(pick(['', ' ']))
      const kept = amountAsKept(text, pick(['percent', 'weight'] as const), pick(['.', ','] as const))
      const amount = readAmount(kept)
      count[amount && 'problem' in amount ? 'refused' : 'read'] += 1
      if (below(20) > 0) return
      const [levain, final] = loaf.stages
      const lines = final!.lines.map(line => (line.id === 'g' ? { ...line, amount: kept } : line))
      use([{ ...loaf, stages: [levain!, { ...final!, lines }] }], count, random)
    },
  ],
  [20, (random, count) => take(JSON.stringify(changedData(bookData, random)), count, random)],
  [4, (random, count) => take(changed(texts.book, random), count, random)],
  [10, (random, count) => take(changed(texts.csv, random), count, random)],
  [5, (random, count) => take(changed(table, random), count, random)],
  [3, (random, count) => take(changed(recipe, random), count, random)],
  [2, (random, count) => take(changed(texts.plain, random), count, random)],
  [2, (random, count) => take(changed(texts.markdown, random), count, random)],
  [2, (random, count) => take(changed(texts.html, random), count, random)],
  [
    2,
    async (random, count) => {
      const data = changedData(loaf, random) as Formula
      const link = random.below(2)
        ? await linkOf(data, 'http://localhost/').catch(() => texts.link)
        : texts.link
      const sent = typeof link === 'string' ? link : texts.link
      const came = await formulaFromLink(
        `#formula=${random.below(2) ? changed(sent.slice(27), random) : sent.slice(27)}`,
      )
      if ('problem' in came) count.refused += 1
      else {
        count.read += 1
        use([came.formula], count, random)
      }
    },
  ],
]

const texts = {
  csv: writeFormulas([loaf], { larder }),
  plain: writePlainText(openFormula(loaf)),
  markdown: writeMarkdown(openFormula(loaf)),
  html: writeHtml(openFormula(loaf)),
  book: writeWorkbookFile({ ...emptyWorkbook, name: 'Mill', formulas: [loaf] }, '2026-05-01T08:00:00.000Z'),
  link: '',
}
const bookData: unknown = JSON.parse(texts.book)

function take(text: string, count: FuzzCount, random: Random): void {
  const { arrived } = arrive(text, { larder })
  if (arrived.as === 'refused' || (arrived.as === 'workbook' && !arrived.workbook)) {
    count.refused += 1
    return
  }
  count.read += 1
  use(arrived.as === 'workbook' ? arrived.workbook!.formulas : arrived.formulas, count, random)
}

/** Takes in so many inputs of all kinds, made from a seed, and uses what comes of them. */
export async function fuzz(seed: number, inputs: number): Promise<FuzzCount> {
  const random = randomOf(seed)
  const count: FuzzCount = { inputs: 0, read: 0, refused: 0, formulas: 0, threw: [] }
  texts.link ||= String(await linkOf(loaf, 'http://localhost/'))
  const bag = kinds.flatMap(([share, run], kind) => Array.from({ length: share }, () => [kind, run] as const))
  for (; count.inputs < inputs; count.inputs++) {
    const [kind, run] = random.pick(bag)
    try {
      await run(random, count)
    } catch (error) {
      const said = error instanceof Error ? (error.stack ?? error.message) : String(error)
      count.threw.push(`input ${count.inputs} of kind ${kind}, seed ${seed}: ${said}`)
    }
  }
  return count
}
