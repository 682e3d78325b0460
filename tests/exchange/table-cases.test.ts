import assert from 'node:assert/strict'
import { test } from 'node:test'
import { type ForeignTable, guessTable, readTable } from '../../src/exchange/tables/index.js'
import { inWords, shown } from './notation'
import { foreignTables } from './table-cases'
import { doubtfulTables } from './table-cases-doubtful'
import { layoutTables } from './table-cases-layouts'
import { stageColumnTables } from './table-cases-stage-columns'

const asked = ({ guesses }: ForeignTable): string[] =>
  guesses
    .filter(({ ask }) => ask)
    .map(({ about, column }) => (column === undefined ? about : `${about} ${column + 1}`))

for (const { title, table, reads, totals = [], asks = [], told = [] } of [
  ...foreignTables,
  ...doubtfulTables,
  ...stageColumnTables,
  ...layoutTables,
]) {
  test(`a foreign table: ${title}`, () => {
    const guessed = guessTable(table)
    const read = readTable(guessed, guessed.mapping)
    assert.equal(read.formulas.map(shown).join('\n\n'), reads)
    assert.deepEqual(
      read.totals.map(({ sentence }) => sentence),
      totals,
    )
    assert.deepEqual(asked(guessed), asks)
    const said = read.problems.filter(({ severity }) => severity !== 'remark')
    assert.equal(said.length, told.length, said.map(({ message }) => message).join('\n'))
    told.forEach(([row, says], at) => {
      assert.equal(said[at]!.where.row, row)
      assert.match(said[at]!.message, says)
    })
    assert.deepEqual(
      read.rows.map(({ row }) => row),
      guessed.rows.map(({ row }) => row),
    )
  })
}

test('a row that goes into two stages says so of both, and a column can be left out', () => {
  const guessed = guessTable('Ingredient,Levain,Final dough\nBread flour,100,820\nWater,80,\nSalt,,20\n')
  assert.deepEqual(guessed.mapping.columns, ['ingredient', 'of a stage', 'of a stage'])
  const { rows } = readTable(guessed, guessed.mapping)
  assert.deepEqual(
    rows.map(({ became, stage, amount, why }) => [became, stage, amount, inWords(why)]),
    [
      ['headings', undefined, undefined, ''],
      ['line', 'Levain', '100 g', 'Also 820 g in Final dough.'],
      ['line', 'Levain', '80 g', ''],
      ['line', 'Final dough', '20 g', ''],
    ],
  )
  const otherwise = {
    ...guessed.mapping,
    columns: ['ingredient', 'leave out', 'grams'],
    stages: 'none',
  } as const
  const [formula] = readTable(guessed, otherwise).formulas
  assert.deepEqual(
    formula!.stages.map(stage => stage.lines.map(line => line.amount)),
    [['820 g', '', '20 g']],
  )
})
