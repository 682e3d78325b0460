import assert from 'node:assert/strict'
import { test } from 'node:test'
import Papa from 'papaparse'
import { type Formula, newId, type Stage } from '../../src/dough/document/formula.js'
import { larderOf } from '../../src/dough/document/larder.js'
import { usualLarder } from '../../src/dough/larder/usual-larder.js'
import { readFormulas, type WriteOptions, writeFormulas } from '../../src/exchange/index.js'
import { formulaOf } from '../dough/notation.js'
import { readWell, shown, told } from './notation.js'

const loaf = formulaOf(`
  Levain:
    Ripe starter = 20%
    Bread flour = 100%
    Water = 80%
  Final dough:
    Bread flour = 100%
    Water = 68%
    Mill salt = 2 tsp
    Levain = 20%
    Caraway seeds =
`)
const meanings = [{ ingredient: 'Mill salt', countsAs: { kind: 'salt' } }] as const

test('a formula is written with headings, CRLF and what each ingredient counts as', () => {
  assert.equal(
    writeFormulas([{ ...loaf, meanings }]),
    [
      'formula,stage,ingredient,amount,note,counts as,setting,grams,percent,whole dough percent',
      'Test,Levain,Ripe starter,20%,,starter 100%,,,,',
      'Test,Levain,Bread flour,100%,,flour,,,,',
      'Test,Levain,Water,80%,,water,,,,',
      'Test,Final dough,Bread flour,100%,,flour,,,,',
      'Test,Final dough,Water,68%,,water,,,,',
      'Test,Final dough,Mill salt,2 tsp,,salt,,,,',
      'Test,Final dough,Levain,20%,,,,,,',
      'Test,Final dough,Caraway seeds,,,other,,,,',
      '',
    ].join('\r\n'),
  )
})

test('figures are written for readers without the noise of doubles, and not where they would be read', () => {
  const figures: WriteOptions['figures'] = formula => {
    const lines = formula.stages.flatMap(s => s.lines)
    return id => {
      const at = lines.findIndex(l => l.id === id)
      return { grams: (0.1 + 0.2) * 10 ** at, percent: 0.7 * (1 + 1e-15), wholeDough: 1 / 3 }
    }
  }
  const written = writeFormulas([loaf], { figures })
  const rows = Papa.parse<string[]>(written.trim()).data.slice(1)
  assert.deepEqual(
    rows.map(cells => cells.slice(7)),
    [
      ...['0.3', '3', '30', '300', '3000', '30000', '300000'].map(grams => [grams, '70', '33.3333']),
      ['', '', ''], // the caraway has no amount yet, and does not get one by being written
    ],
  )
  const { formulas } = readFormulas(written)
  assert.equal(writeFormulas(formulas, { figures }), written)
})

test('the larder that is given says what an ingredient counts as', () => {
  const mine = {
    ...usualLarder[0]!,
    id: 'mine',
    name: 'Mill salt',
    otherNames: [],
    countsAs: { kind: 'salt' } as const,
  }
  const larder = larderOf([...usualLarder, mine])
  const written = writeFormulas([loaf], { larder })
  assert.match(written, /Mill salt,2 tsp,,salt/)
  assert.deepEqual(readFormulas(written).formulas[0]!.meanings, meanings)
  assert.deepEqual(readFormulas(written, larder).formulas[0]!.meanings, [])
})

test('what has no name, or the same name, still comes back apart', () => {
  const formula: Formula = {
    ...formulaOf(`
      :
        Water = 10%
        = 20 g
        =
      Levain:
      Levain:
        Salt = 1
    `),
    name: ' ',
  }
  const written = writeFormulas([formula, formula])
  const { formulas } = readFormulas(written)
  assert.deepEqual(
    formulas.map(shown).join('\n').split('\n'),
    ['Untitled formula', 'Untitled formula (2)'].flatMap(name => [
      name,
      'Stage 1:',
      '  Water 10%',
      '  Unnamed ingredient 20 g',
      'Levain:',
      'Levain (2):',
      '  Salt 1 g',
    ]),
  )
  assert.equal(writeFormulas(formulas), written)
})

test('nothing to write is a file of headings', () => {
  assert.deepEqual(told(readFormulas(writeFormulas([])).problems), [
    '- warning: This file has headings but no rows.',
  ])
})

for (const nasty of [
  '=1+1',
  '+1',
  '-1',
  '@x',
  '\t=1',
  '\r=1',
  '\n=1',
  ' =1',
  "'=1",
  "''@",
  '＝1+1',
  '"=1"',
  '=1",=2',
  '\u00a0=1',
  'soft;=1',
  "soft;'=1",
  'a\t=1',
  '- fold\n- shape\r\n\n= done',
  ";;''\t\t=",
])
  test(`no cell starts a formula in an office program when a text is ${JSON.stringify(nasty)}`, () => {
    const stage: Stage = {
      id: newId(),
      name: nasty,
      lines: [{ id: newId(), ingredient: nasty, amount: nasty, note: nasty }],
    }
    const formula: Formula = {
      id: newId(),
      name: nasty,
      note: nasty,
      flourWeight: 1000,
      stages: [stage],
      meanings: [],
      keptSettings: [{ stage: nasty, setting: nasty, amount: nasty, note: nasty }],
      group: nasty,
    }
    const written = writeFormulas([formula])
    // a program of another locale cuts at semicolons and line breaks too
    for (const cells of Papa.parse<string[]>(written).data)
      for (const cell of cells)
        for (const part of [cell, ...cell.split(/[;\t\r\n]/)])
          assert.doesNotMatch(part, /^\s*[=+\-@＝＋－＠]|^[\t\r\n]/)
    const again = readFormulas(written).formulas
    assert.deepEqual(
      shown(again[0]!),
      shown({ ...formula, stages: [{ ...stage, lines: [{ ...stage.lines[0]!, amount: nasty.trim() }] }] }),
    )
    assert.equal(again[0]!.group, nasty)
    assert.equal(writeFormulas(again), written)
  })

test('empty amounts, notes and twice the same ingredient come back', () => {
  const formula = formulaOf(`
    Final dough:
      Bread flour = 100%
      Water = 65%
      Salt =
      Water = 8%
  `)
  assert.equal(
    readWell(writeFormulas([formula]))
      .map(shown)
      .join(),
    shown(formula),
  )
})
