import assert from 'node:assert/strict'
import { test } from 'node:test'
import { textOf } from '../../src/exchange/arriving/file-text.js'
import {
  columnUses,
  type ForeignTable,
  guessTable,
  type Mapping,
  readTable,
  stageMarks,
} from '../../src/exchange/tables/index.js'
import { randomOf, rounds } from '../random'
import { inWords } from './notation'

type Random = ReturnType<typeof randomOf>

/** Every row is there once and in order, lines and formulas agree, and what is said are sentences. */
function holdsTogether(table: ForeignTable, mapping: Mapping): ReturnType<typeof readTable> {
  const read = readTable(table, mapping)
  const { formulas, rows, problems, totals, stopped } = read
  assert.equal(stopped, false)
  assert.deepEqual(
    rows.map(({ row }) => row),
    table.rows.map((_, at) => at + 1),
  )
  const lines = formulas.flatMap(({ stages }) => stages.flatMap(stage => stage.lines))
  if (!table.own) {
    const ofRows = rows.filter(({ became }) => became === 'line').length
    // what no line takes was added to the dough, and each such line is told
    const ofLines = ofRows + problems.filter(({ code }) => code === 'noLineTakes').length
    // with a column for each stage, or tables side by side, a row can be several lines
    const tables = mapping.columns.filter(use => use === 'ingredient').length
    if (mapping.columns.includes('of a stage') || tables > 1) assert.ok(ofLines <= lines.length)
    else assert.equal(ofLines, lines.length)
    const wrong = rows.filter(({ became }) => became === 'not understood')
    const told = new Set(problems.map(({ where }) => where.row))
    if (formulas.length > 0) for (const { row } of wrong) assert.ok(told.has(row), `row ${row} is told`)
  }
  for (const { row, became, why } of rows)
    if (became === 'not understood') assert.match(inWords(why), /^[A-Z].*\.$/s, `row ${row}`)
  for (const { sentence } of totals) assert.match(sentence, /^[A-Z].*\.$/s)
  for (const { message, where } of problems) {
    assert.match(message, /\.$/)
    if (where.row !== undefined) assert.ok(where.row >= 1 && where.row <= table.rows.length)
  }
  for (const { stages } of formulas) {
    assert.ok(stages.length > 0)
    assert.equal(new Set(stages.map(({ name }) => name.toLowerCase())).size, stages.length)
  }
  return read
}

/** Any mapping at all, as a baker may put it together. */
function anyMapping(random: Random, { mapping }: ForeignTable): Mapping {
  return {
    columns: mapping.columns.map(() => random.pick(columnUses)),
    headingRows: random.below(4),
    decimal: random.pick(['.', ',']),
    stages: random.pick(stageMarks),
    formulaName: random.pick(['', 'Mill wheat']),
  }
}

const names = (
  'Bread flour|Water|Salt|Levain|Ripe starter|Weizenmehl|Eau|Farine T65|Wasser|Eggs|Poolish|Final dough|Dough|Total|Total flour|' +
  'Summe|Hauptteig|Pâte finale|Notes|Hydration|Mill wheat|Rest an hour.|Levain (all of it)|Soaker:|1. Levain|Gesamtmehl|x'
).split('|')
const amounts = (
  '100|100%|1,000|1.000|1 000 g|0.3|82,5 %|20 g|1 kg|2 1/4 tsp|½|650–680 ml|a pinch|-|-5|#REF!|=B2*2|25 °C|3 h|1 lb 4 oz|1e3|' +
  '1.234,5|1,234.5|0|٣٠٠|２０ g|ca. 20 g|1.2.3|9999999999999|12 Stück'
).split('|')
const headings =
  'Ingredient|Zutat|Ingrédient|%|g|Weight (g)|Menge|kg|lb|oz|Stage|Stufe|Formula|Note|Unit|Price|Amount|Wat'.split(
    '|',
  )

function anyTable(random: Random): string {
  const width = 1 + random.below(5)
  const delimiter = random.pick([',', ';', '\t', '|', '   '])
  const cell = (of: readonly string[]) => {
    const said = random.below(6) === 0 ? '' : random.pick(of)
    return said.includes(delimiter) && random.below(4) ? `"${said}"` : said
  }
  const row = (of: (column: number) => string) =>
    Array.from({ length: width }, (_, c) => of(c)).join(delimiter)
  const lines = random.below(3) ? [row(() => cell(headings))] : []
  const named = random.below(width)
  for (let i = random.below(25); i > 0; i--) {
    const kind = random.below(10)
    if (kind === 0) lines.push(random.pick(['', '  ', row(() => '')]))
    else if (kind === 1) lines.push(row(c => (c === named ? cell(names) : '')))
    else if (kind === 2)
      lines.push(random.pick(['---', 'sep=;', '"', random.pick(names), row(() => cell(headings))]))
    else lines.push(row(c => (c === named ? cell(names) : cell(random.below(8) ? amounts : names))))
  }
  return (random.below(8) ? '' : '\ufeff') + lines.join(random.pick(['\n', '\r\n', '\r']))
}

test('random tables: no row is lost, whatever the mapping (seed 91)', () => {
  const random = randomOf(91)
  let lines = 0
  let totals = 0
  let lost = 0
  const tables = rounds(600)
  for (let i = 0; i < tables; i++) {
    const table = guessTable(anyTable(random))
    const read = holdsTogether(table, table.mapping)
    holdsTogether(table, anyMapping(random, table))
    lines += read.rows.filter(({ became }) => became === 'line').length
    lost += read.rows.filter(({ became }) => became === 'not understood').length
    totals += read.totals.length
  }
  assert.ok(
    lines > 1.75 * tables && totals > 0.06 * tables && lost > 0.17 * tables,
    `${lines} lines, ${totals} totals, ${lost} lost`,
  )
})

test('random bytes and characters are refused with a sentence or read row by row (seed 92)', () => {
  const random = randomOf(92)
  const pieces = [
    ...',;\t|"\n\r \'=-',
    '\r\n',
    '""',
    '\ud800',
    '\ufffd',
    '🥖',
    'é',
    '%',
    '1',
    '2,5',
    'g',
    'Water',
    'Total',
    '\u2028',
    '__proto__',
  ]
  for (let i = 0; i < rounds(700); i++) {
    const text = Array.from({ length: random.below(60) }, () => random.pick(pieces)).join('')
    const table = guessTable(text)
    holdsTogether(table, table.mapping)
  }
  for (let i = 0; i < rounds(150); i++) {
    const file = textOf(Uint8Array.from({ length: random.below(400) }, () => random.below(256)))
    const table = guessTable('text' in file ? file.text : String.fromCharCode(random.below(32)).repeat(9))
    if (table.refused !== undefined) assert.match(table.refused, /^[A-Z].*\.$/)
    holdsTogether(table, table.mapping)
  }
})

test('a correct table comes through every notation whole (seed 93)', () => {
  const random = randomOf(93)
  const flours = ['Bread flour', 'Whole wheat flour', 'Dark rye flour']
  for (let i = 0; i < rounds(150); i++) {
    const comma = random.below(2) === 1
    const delimiter = comma ? random.pick([';', '\t', '|']) : random.pick([',', ';', '\t', '|'])
    const said = (n: number) => (comma ? String(n).replace('.', ',') : String(n))
    const weight = () => (random.below(9000) + 1000) / random.pick([1, 10, 100])
    const levain = ['Ripe starter', random.pick(flours), 'Water'].map(name => ({ name, grams: weight() }))
    const dough = [...flours, 'Water', 'Salt', 'Levain'].map(name => ({ name, grams: weight() }))
    const byColumn = random.below(2) === 1
    const rows = (stage: string, lines: readonly { name: string; grams: number }[]) => [
      ...(byColumn ? [] : [[stage, '']]),
      ...lines.map(({ name, grams }) => (byColumn ? [stage, name, said(grams)] : [name, said(grams)])),
    ]
    const table = [
      byColumn ? ['Stage', 'Ingredient', 'Grams'] : ['Ingredient', 'Grams'],
      ...rows('Levain', levain),
      ...rows('Final dough', dough),
    ]
    const text = table.map(cells => cells.join(delimiter)).join('\n')
    const guessed = guessTable(text)
    const { formulas } = readTable(guessed, guessed.mapping)
    const read = formulas.flatMap(f =>
      f.stages.map(s => [s.name, s.lines.map(l => [l.ingredient, l.amount])]),
    )
    const amount = (grams: number) => `${grams} g`
    assert.deepEqual(
      read,
      [
        ['Levain', levain.map(({ name, grams }) => [name, amount(grams)])],
        ['Final dough', dough.map(({ name, grams }) => [name, amount(grams)])],
      ],
      text,
    )
  }
})
