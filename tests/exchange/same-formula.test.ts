import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import { test } from 'node:test'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { larderWith, usualLarder } from '../../src/dough/larder/usual-larder.js'
import { isHere } from '../../src/exchange/data/same-formula.js'
import {
  formulaFromLink,
  linkOf,
  readPlainText,
  writeFormulas,
  writePlainText,
} from '../../src/exchange/index.js'
import { readWell } from './notation.js'

const larder = larderWith([])
const files = readdirSync('examples').filter(file => file.endsWith('.csv'))

for (const file of files)
  test(`${file} comes back the same by file and by link, and not once a line has changed`, async () => {
    const [formula] = readWell(readFileSync(`examples/${file}`, 'utf8'))
    assert.ok(isHere(formula!, readWell(writeFormulas([formula!]))[0]!, larder))
    const link = await linkOf(formula!, 'https://mill.example/')
    assert.ok(typeof link === 'string')
    const came = await formulaFromLink(new URL(link).hash)
    assert.ok('formula' in came && isHere(formula!, came.formula, larder))
    const [first, ...stages] = formula!.stages
    const [line, ...lines] = first!.lines
    const changed = {
      ...formula!,
      stages: [{ ...first!, lines: [{ ...line!, amount: '1 g' }, ...lines] }, ...stages],
    }
    assert.ok(!isHere(formula!, changed, larder))
  })

test('a formula comes back the same by its text', () => {
  const [formula] = readWell(
    'formula,stage,ingredient,amount\nHill loaf,Final dough,Bread flour,500 g\nHill loaf,Final dough,Water,70%\n',
  )
  const [came] = readPlainText(writePlainText(openFormula(formula!))).formulas
  assert.ok(isHere(formula!, came!, larder))
})

test('kept states, and meanings that the larder has itself, are no difference; other meanings are', () => {
  const [formula] = readWell('ingredient,amount,counts as\nHill meal,500 g,\nWater,70%,\n')
  const own = {
    ...usualLarder[0]!,
    id: 'hill',
    name: 'Hill meal',
    otherNames: [],
    countsAs: { kind: 'flour' } as const,
  }
  const meant = { ...formula!, meanings: [{ ingredient: 'Hill meal', countsAs: own.countsAs }] }
  assert.ok(!isHere(formula!, meant, larder))
  assert.ok(isHere(formula!, meant, larderWith([own])))
  const { states: _, ...state } = formula!
  const kept = {
    ...formula!,
    states: [{ id: 's', name: 'Before', keptAt: '2026-01-01T00:00:00Z', formula: state }],
  }
  assert.ok(isHere(kept, formula!, larder))
})
