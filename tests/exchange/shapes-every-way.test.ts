import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Batch } from '../../src/dough/document/batch.js'
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
  writeFormulas,
  writeHtml,
  writeMarkdown,
  writePlainText,
  writeWorkbookFile,
} from '../../src/exchange/index.js'
import { formulaOf, workedCheck } from '../dough/notation.js'

const batch: Batch = {
  make: 'pieces',
  pieces: [
    { count: 3, weight: 852, name: 'round tin' },
    { count: 2, weight: 500, name: '*bâtard* | <b>long</b>, 1,5' },
  ],
  bakeLoss: 0.12,
}
const formula = { ...formulaOf(workedCheck), batch }
const sheet = openFormula(formula)
const arrived = (text: string): Batch | undefined => {
  const came = new Arrival(text, larderOf(usualLarder)).read()
  return 'formulas' in came ? came.formulas[0]?.batch : undefined
}

test('the names of shapes are in the file, the CSV and the link', async () => {
  assert.deepEqual(
    readWorkbookFile(writeWorkbookFile({ ...emptyWorkbook, formulas: [formula] })).workbook!.formulas[0]!
      .batch,
    batch,
  )
  assert.deepEqual(readFormulas(writeFormulas([formula])).formulas[0]!.batch, batch)
  const link = await linkOf(formula, 'https://example.org/')
  const read = await formulaFromLink(String(link).replace(/^[^#]*/, ''))
  assert.ok('formula' in read)
  assert.deepEqual(read.formula.batch, batch)
})

test('and in what people read, from which they are read again', () => {
  for (const text of [writePlainText(sheet), writeMarkdown(sheet), writeHtml(sheet)])
    assert.deepEqual(arrived(text), batch)
  assert.match(writeHtml(sheet), /3 × 852 g \(round tin\)/)
  assert.match(JSON.stringify(recipeMarkup(sheet)), /3 pieces of 852 g of dough, round tin/)
})
