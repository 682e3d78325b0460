import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import { test } from 'node:test'
import type { Formula, Stage, Step } from '../../src/dough/document/formula.js'
import { larderOf } from '../../src/dough/document/larder.js'
import { emptyWorkbook } from '../../src/dough/document/workbook.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { usualLarder } from '../../src/dough/larder/usual-larder.js'
import { Arrival } from '../../src/exchange/arriving/arriving.js'
import { formulaFromLink, linkOf } from '../../src/exchange/data/link.js'
import {
  readFormulas,
  readWorkbookFile,
  recipeMarkup,
  recipeScript,
  writeFormulas,
  writeHtml,
  writeMarkdown,
  writePlainText,
  writeWorkbookFile,
} from '../../src/exchange/index.js'
import { anyNames } from './any-formula.js'
import { text } from './notation.js'

const examples = readdirSync('examples')
  .filter(file => file.endsWith('.csv'))
  .flatMap(file => readFormulas(readFileSync(`examples/${file}`, 'utf8')).formulas)

const names = [
  'Fold, then wait',
  '“Turn” it',
  '"Turn" it: gently',
  'Mix (slow)',
  'Mix [wait]',
  'two\nlines',
  'two  spaces',
  ' Mix ',
  '2. Shape',
  '=Bake',
  '–',
  '',
  'Pétrir',
  '<b>Bulk</b> & more | less',
  '*Rest* _a_ `while`',
]
const texts = [
  '10 min',
  '=30 min',
  '1 h 30',
  '90 s',
  '2 d',
  '12–15 h, in the fridge',
  '3,5–4,5 h; à 25 °C',
  '45–60 min at 77 °F, 4 × 5 min every 30 min',
  '2 min each',
  '45 min, at 230 °C, 6 at once',
  '5 min, adds Salt, Water (2), "Honey, dark"',
  'until (nearly) doubled: 1 h',
  '1 h\n30',
  '',
]
const notes = [
  '',
  'grown by half',
  'a "dome", soft at the rim',
  'first\n\nthen (second)',
  '> cited',
  '– none',
]

/** Steps of every kind, each name, text and note beside several others. */
const hostileSteps: readonly Step[] = names.flatMap((does, i) =>
  texts.map((text, at) => ({
    id: `s${i}-${at}`,
    does,
    kind: (['hands', 'wait', 'bake'] as const)[(i + at) % 3]!,
    text,
    note: notes[(i * 2 + at) % notes.length]!,
  })),
)
let lines = 0
const line = (ingredient: string, amount: string) => ({ id: `l${++lines}`, ingredient, amount, note: '' })
const hostile: Formula = {
  id: 'hostile',
  name: 'All kinds, "of steps"',
  note: '',
  flourWeight: 1000,
  stages: [
    {
      id: 'one',
      name: 'Levain, old',
      lines: [line('Ripe starter', '20 g'), line('Bread flour', '100 g'), line('Water', '100 g')],
      method: hostileSteps.slice(0, 20),
    },
    { id: 'none', name: 'Soaker', lines: [line('Flaxseed', '40 g'), line('Water', '60 g')] },
    {
      id: 'two',
      name: 'Final dough',
      lines: [
        line('Bread flour', '100%'),
        line('Water', '60%'),
        line('Water', '10%'),
        line('Salt', '2%'),
        line('Honey, dark', '1%'),
        line('Levain, old', '200 g'),
        line('Soaker', '90 g'),
      ],
      method: hostileSteps.slice(20),
    },
  ],
  meanings: [],
  keptSettings: [],
}

const strange: Formula = {
  ...hostile,
  stages: hostile.stages.map(
    (stage, i): Stage =>
      i === 1
        ? stage
        : {
            ...stage,
            method: anyNames.map((does, at) => ({
              id: `s${i}-${at}`,
              does,
              kind: (['hands', 'wait', 'bake'] as const)[at % 3]!,
              text: anyNames[(at * 7 + i) % anyNames.length]!,
              note: anyNames[(at * 11 + i) % anyNames.length]!,
            })),
          },
  ),
}

const larder = larderOf(usualLarder)
const savedAt = '2026-12-05T09:00:00.000Z'
const arrived = (text: string) => new Arrival(text, larder).read()

/** Each form in which a formula leaves, and what it is when it has come back. */
const ways: Readonly<Record<string, (formula: Formula) => unknown | Promise<unknown>>> = {
  CSV: formula => readFormulas(writeFormulas([formula])).formulas[0],
  'workbook file': formula =>
    readWorkbookFile(writeWorkbookFile({ ...emptyWorkbook, formulas: [formula] })).workbook?.formulas[0],
  link: async formula => {
    const link = await linkOf(formula, 'https://mill.example/')
    assert.ok(typeof link === 'string', 'it fits into a link')
    const came = await formulaFromLink(new URL(link).hash)
    return 'formula' in came ? came.formula : came
  },
  'plain text': formula => formulaIn(arrived(writePlainText(openFormula(formula)))),
  Markdown: formula => formulaIn(arrived(writeMarkdown(openFormula(formula)))),
  HTML: formula => formulaIn(arrived(writeHtml(openFormula(formula)))),
  'recipe markup': formula => formulaIn(arrived(recipeScript(openFormula(formula)))),
  'recipe markup without its script': formula =>
    formulaIn(arrived(JSON.stringify(recipeMarkup(openFormula(formula))))),
}

const formulaIn = (came: ReturnType<typeof arrived>): Formula | undefined =>
  'formulas' in came ? came.formulas[0] : undefined

const methodsOf = (formula: Formula) =>
  formula.stages
    .filter(({ method }) => method?.length)
    .map(({ name, method }) => ({ name, steps: method!.map(({ id: _, ...said }) => said) }))

for (const [way, there] of Object.entries(ways))
  for (const formula of [...examples, hostile, strange])
    test(`the method of ${formula.name}${formula === strange ? ', in words of every kind,' : ''} comes back by ${way}`, async () => {
      const back = (await there(formula)) as Formula
      assert.deepEqual(methodsOf(back), methodsOf(formula))
    })

for (const formula of [...examples, hostile, strange])
  test(`sent out and brought back in, ${formula.name} is the same byte for byte as CSV and as a workbook file`, () => {
    const csv = writeFormulas([formula])
    assert.equal(writeFormulas(readFormulas(csv).formulas), csv)
    const file = writeWorkbookFile({ ...emptyWorkbook, formulas: [formula] }, savedAt)
    assert.equal(writeWorkbookFile(readWorkbookFile(file).workbook!, savedAt), file)
  })

const french = text`
  Pain de l’étang

  Levain
  20 g de levain chef
  50 g de farine T65
  50 g d’eau

  Pâte
  500 g de farine T65
  350 g d’eau
  10 g de sel
  120 g de levain

  Préparation
  1. Pour le levain, mélanger le chef, la farine et l’eau ; laisser fermenter 8 à 10 heures à 24 °C.
  2. Mélanger la farine, l’eau et le levain, couvrir et laisser reposer 30 minutes.
  3. Ajouter le sel et pétrir 5 minutes.
  4. Pointage 3 à 4 heures avec quatre rabats toutes les 30 minutes.
  5. Façonner, puis une nuit au frigo.
  6. Cuire 25 minutes à couvert à 240 °C, puis 20 minutes à découvert.`

test('a recipe in French comes with its method beside its words, what is guessed marked, and leaves and comes back the same', () => {
  const came = arrived(french)
  assert.ok(came.as === 'recipe')
  const [formula] = came.formulas
  const methods = formula.stages.map(s => [
    s.name,
    ...(s.method ?? []).map(({ kind, does, text }) => `${kind} ${does}: ${text}`),
  ])
  assert.deepEqual(methods, [
    ['Levain', 'hands Mélanger: ', 'wait Fermenter: 8–10 h, à 24 °C'],
    [
      'Pâte',
      'hands Mélanger: ',
      'wait Repos: 30 min',
      'hands Ajouter et pétrir: 5 min, ajoute Sel',
      'wait Pointage: 3–4 h, 4 × 5 min toutes les 30 min',
      'hands Façonner: ',
      'wait Froid: 8–12 h, au frigo',
      'bake Cuire couvert: 25 min, à 240 °C',
      'bake Cuire à découvert: 20 min, à 240 °C',
    ],
  ])
  const steps = new Map(formula.stages.flatMap(s => s.method ?? []).map(step => [step.id, step.does]))
  const marked = came.steps.flatMap(({ stepId, source, guesses }) =>
    guesses.length ? [`${steps.get(stepId)}, “${source}”: ${guesses.map(({ code }) => code).join(' ')}`] : [],
  )
  assert.deepEqual(marked, [
    'Pointage, “Pointage 3 à 4 heures avec quatre rabats toutes les 30 minutes.”: foldMinutes',
    'Froid, “puis une nuit au frigo.”: overnight',
    'Cuire à découvert, “puis 20 minutes à découvert.”: heatFromBefore',
  ])
  const csv = writeFormulas([formula])
  assert.equal(writeFormulas(readFormulas(csv).formulas), csv)
  const file = writeWorkbookFile({ ...emptyWorkbook, formulas: [formula] }, savedAt)
  assert.equal(writeWorkbookFile(readWorkbookFile(file).workbook!, savedAt), file)
})
