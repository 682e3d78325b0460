import assert from 'node:assert/strict'
import { test } from 'node:test'
import { type ForeignTable, guessTable, readTable } from '../../src/exchange/foreign/index.js'
import { foreignTables } from './foreign-tables'
import { doubtfulTables } from './foreign-tables-doubtful'
import { shown } from './notation'

const asked = ({ guesses }: ForeignTable): string[] =>
  guesses
    .filter(({ ask }) => ask)
    .map(({ about, column }) => (column === undefined ? about : `${about} ${column + 1}`))

for (const { title, table, reads, totals = [], asks = [], told = [] } of [
  ...foreignTables,
  ...doubtfulTables,
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
