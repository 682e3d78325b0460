import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Formula } from '../../src/dough/document/formula.js'
import { emptyWorkbook } from '../../src/dough/document/workbook.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { larderWith } from '../../src/dough/larder/usual-larder.js'
import { isHere } from '../../src/exchange/data/same-formula.js'
import {
  formulaFromLink,
  linkOf,
  readPlainText,
  readWorkbookFile,
  writeFormulas,
  writePlainText,
  writeWorkbookFile,
} from '../../src/exchange/index.js'
import { formulaOf } from '../dough/notation.js'
import { readWell } from './notation.js'

const plain = formulaOf(`
  Final dough:
    Bread flour = 500 g
    Salt = 2 1/4 tsp
`)
const words = ['500 g strong white flour', '2¼ tsp fine sea salt, “heaped”']
const bread: Formula = {
  ...plain,
  name: 'Plain loaf',
  stages: plain.stages.map(stage => ({
    ...stage,
    lines: stage.lines.map((line, at) => ({ ...line, source: words[at]! })),
  })),
}
const sources = (formula: Formula) => formula.stages.flatMap(stage => stage.lines.map(line => line.source))

test('the words a line was read from go along in a workbook file, to the byte', () => {
  const at = '2026-11-26T12:00:00Z'
  const file = writeWorkbookFile({ ...emptyWorkbook, formulas: [bread] }, at)
  const { workbook, problems } = readWorkbookFile(file)
  assert.deepEqual(problems, [])
  assert.deepEqual(sources(workbook!.formulas[0]!), words)
  assert.equal(writeWorkbookFile(workbook!, at), file)
})

test('they go along in a link', async () => {
  const link = await linkOf(bread, 'https://mill.example/')
  assert.ok(typeof link === 'string')
  const came = await formulaFromLink(new URL(link).hash)
  assert.ok('formula' in came)
  assert.deepEqual(sources(came.formula), words)
})

test('a CSV file and a text have no place for them, and what comes back is the same formula all the same', () => {
  const larder = larderWith([])
  for (const came of [
    readWell(writeFormulas([bread]))[0]!,
    readPlainText(writePlainText(openFormula(bread))).formulas[0]!,
  ]) {
    assert.deepEqual(sources(came), [undefined, undefined])
    assert.ok(isHere(bread, came, larder))
  }
})
