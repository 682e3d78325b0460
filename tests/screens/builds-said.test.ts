import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { test } from 'node:test'
import { buildWords } from '../../components/batch/weighed-shown.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { readFormulas } from '../../src/exchange/index.js'

const flatbread = readFormulas(readFileSync('examples/held-back-flatbread.csv', 'utf8')).formulas[0]!
const english = { language: 'en', decimal: '.' } as const

/** What is said of its biga, of which the dough takes all. */
function saidOf(keepBack: number): string {
  const stages = flatbread.stages.map(stage =>
    stage.name === 'Biga' && keepBack ? { ...stage, keepBack } : stage,
  )
  const batch = { make: 'pieces' as const, pieces: [{ count: 11, weight: 300 }] }
  const sheet = openFormula({ ...flatbread, stages, batch })
  return buildWords(sheet, stages.find(({ name }) => name === 'Biga')!, english).join(', ')
}

// 439 + 241 + 2.6 g are made, and the dough weighs 683 g of it: less than the step of a gram apart
test('of a build that is all taken, what is made is said, and no fraction of a step of the scale', () => {
  assert.equal(saidOf(0), '682.6 g made')
})

test('of one that is kept back in part, all is said', () => {
  assert.match(saidOf(50), /^73\d\.?\d* g made, 683\.?0? g taken, 50\.?0? g kept back$/)
})
