import assert from 'node:assert/strict'
import { test } from 'node:test'
import { readFormulaData } from '../../src/dough/data/formula-data.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { formulaFromLink, linkOf } from '../../src/exchange/data/link.js'
import { readFormulas, writeFormulas } from '../../src/exchange/index.js'
import { writeHtml } from '../../src/exchange/text/html-table.js'
import { writeMarkdown } from '../../src/exchange/text/markdown.js'
import { writePlainText } from '../../src/exchange/text/plain-text.js'
import { readPlainText } from '../../src/exchange/text/read-plain-text.js'
import { randomOf } from '../random.js'
import { anyNames, anySteps } from './any-formula.js'
import { text, told } from './notation.js'

const file = text`
  formula,stage,ingredient,amount,note,counts as,setting
  Mill wheat,Levain,Ripe starter,40 g,,starter 100%,
  Mill wheat,Levain,Bread flour,100 g,,flour,
  Mill wheat,Levain,Water,80 g,,water,
  Mill wheat,Levain,Mix,10 min,,hands,step
  Mill wheat,Levain,Ripen,"8–10 h, at 24 °C",doubled and domed,wait,step
  Mill wheat,Final dough,Bread flour,820 g,,flour,
  Mill wheat,Final dough,Salt,21 g,,salt,
  Mill wheat,Final dough,Levain,210 g,,,
  Mill wheat,Final dough,Mix,=10 min,,hands,step
  Mill wheat,Final dough,Bulk,"3,5–4,5 h, 4 × 5 min every 30 min",,wait,step
  Mill wheat,Final dough,Mix,"5 min, adds Salt",,hands,step
  Mill wheat,Final dough,Bake,"45 min, at 230 °C, 6 at once",mind the steam,bake,step`

const methods = ({ stages }: Formula) =>
  stages.map(s => (s.method ?? []).map(({ kind, does, text, note }) => `${kind} ${does}: ${text} (${note})`))

test('steps are rows in their order, with what is done, its kind, its text as typed and its note', () => {
  const { formulas, problems } = readFormulas(file)
  assert.deepEqual(told(problems), [])
  assert.deepEqual(methods(formulas[0]!), [
    ['hands Mix: 10 min ()', 'wait Ripen: 8–10 h, at 24 °C (doubled and domed)'],
    [
      'hands Mix: =10 min ()',
      'wait Bulk: 3,5–4,5 h, 4 × 5 min every 30 min ()',
      'hands Mix: 5 min, adds Salt ()',
      'bake Bake: 45 min, at 230 °C, 6 at once (mind the steam)',
    ],
  ])
})

test('written, read and written again a method is the same, byte for byte', () => {
  const { formulas } = readFormulas(file)
  const written = writeFormulas(formulas)
  assert.match(written, /'=10 min/, 'no cell that leaves begins a formula of an office program')
  const again = readFormulas(written)
  assert.deepEqual(methods(again.formulas[0]!), methods(formulas[0]!))
  assert.equal(writeFormulas(again.formulas), written)
})

test('plain text shows a method beneath the lines of its stage, and it is read again', () => {
  const [formula] = readFormulas(file).formulas
  const written = writePlainText(openFormula(formula!))
  const [, shown] = /Levain {8}[^\n]*\n(Method {2}[\s\S]*?)\n\nReadings/.exec(written)!
  assert.equal(
    shown,
    text`
      Method  Kind   As typed                           Note
      Mix     hands  "\\u003d10 min"
      Bulk    wait   3,5–4,5 h, 4 × 5 min every 30 min
      Mix     hands  5 min, adds Salt
      Bake    bake   45 min, at 230 °C, 6 at once       mind the steam`,
  )
  const { formulas, problems } = readPlainText(written)
  assert.deepEqual(told(problems), [])
  assert.deepEqual(methods(formulas[0]!), methods(formula!))
  const { problems: damaged } = readPlainText(written.replace('Bulk    wait ', 'Bulk    sings'))
  assert.match(told(damaged).join(), /Line \d+ is not a step of a method and was left out: “Bulk {4}sings/)
})

test('Markdown and HTML number the steps of each stage', () => {
  const sheet = openFormula(readFormulas(file).formulas[0]!)
  assert.ok(
    writeMarkdown(sheet).includes(
      '\n\n1. Mix: 10 min\n2. Ripen: 8–10 h, at 24 °C (doubled and domed)\n\n## Final dough\n',
    ),
  )
  assert.ok(
    writeHtml(sheet).includes(
      '</table><ol><li>Mix: 10 min</li><li>Ripen: 8–10 h, at 24 °C (doubled and domed)</li></ol>',
    ),
  )
})

test('a link carries the method', async () => {
  const [formula] = readFormulas(file).formulas
  const link = await linkOf(formula!, 'https://mill.example/')
  assert.ok(typeof link === 'string')
  const arrived = await formulaFromLink(new URL(link).hash)
  assert.ok('formula' in arrived)
  assert.deepEqual(methods(arrived.formula), methods(formula!))
})

test('a step that is no hands, wait or bake is told with its row, and nothing else is lost', () => {
  const { formulas, problems } = readFormulas(
    file.replace('21 g,,salt', '22 g,,salt').replace('hands,step', 'sing,step'),
  )
  assert.deepEqual(told(problems), [
    '5 error: Row 5 is a step that counts as “sing” and was left out. Write hands, wait or bake under counts as.',
  ])
  assert.equal(methods(formulas[0]!)[0]!.length, 1)
})

test('seed 55: methods of any words go through CSV and the workbook file as they are', () => {
  const { pick, below } = randomOf(55)
  for (let round = 0; round < 70; round++) {
    const method = Array.from({ length: 1 + below(5) }, (_, i) => ({
      id: `s${i}`,
      does: pick(anyNames),
      kind: pick(['hands', 'wait', 'bake'] as const),
      text: pick([...anySteps, pick(anyNames)]),
      note: pick(['', pick(anyNames)]),
    }))
    const formula: Formula = {
      id: 'f',
      name: 'Any',
      note: '',
      flourWeight: 1000,
      stages: [
        {
          id: 'st',
          name: 'Final dough',
          lines: [{ id: 'l', ingredient: 'Bread flour', amount: '100%', note: '' }],
          method,
        },
      ],
      meanings: [],
      keptSettings: [],
    }
    const written = writeFormulas([formula])
    const { formulas, problems } = readFormulas(written)
    assert.deepEqual(problems, [], written)
    assert.equal(writeFormulas(formulas), written)
    assert.deepEqual(methods(formulas[0]!), methods(formula), written)
    assert.equal(
      readFormulaData(formula, () => assert.fail('nothing is left out')),
      formula,
    )
  }
})

test('of a workbook file a step that is none is left out and told', () => {
  const { formulas } = readFormulas(file)
  const [first, ...rest] = formulas[0]!.stages
  const told: unknown[] = []
  const damaged = {
    ...formulas[0]!,
    stages: [{ ...first!, method: [...first!.method!, { kind: 'sing' }, null] }, ...rest],
  }
  const read = readFormulaData(damaged, what => told.push(what))!
  assert.equal(read.stages[0]!.method!.length, 2)
  assert.deepEqual(told, [{ code: 'itemsUnreadable', listed: 'step', count: 2 }])
})
