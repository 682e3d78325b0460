import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import { test } from 'node:test'
import type { ReadingName } from '../../src/dough/document/reading-names.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { sheetFigures, writeFormulas } from '../../src/exchange/index.js'
import { exampleReadings } from '../dough/example-readings.js'
import { formulaOf } from '../dough/notation.js'
import { readWell, shown } from './notation.js'

test('every example has its readings worked out', () => {
  const files = readdirSync('examples').filter(f => f.endsWith('.csv'))
  assert.deepEqual(files.sort(), exampleReadings.map(({ file }) => file).sort())
})

for (const { file, ...exact } of exampleReadings) {
  const csv = readFileSync(`examples/${file}`, 'utf8')

  test(`${file} reads without a problem, and again once written`, () => {
    const formulas = readWell(csv)
    assert.equal(formulas.length, 1)
    const written = writeFormulas(formulas)
    assert.deepEqual(readWell(written).map(shown), formulas.map(shown))
    assert.equal(writeFormulas(readWell(written)), written)
    const figures = sheetFigures()
    const withFigures = writeFormulas(formulas, { figures })
    assert.equal(writeFormulas(readWell(withFigures), { figures }), withFigures)
  })

  test(`${file} comes to what exact fractions say`, () => {
    const sheet = openFormula(readWell(csv)[0]!)
    assert.deepEqual(
      sheet.problems.filter(p => p.severity === 'error').map(p => p.message),
      [],
    )
    for (const [reading, [above, below]] of Object.entries(exact)) {
      const value = sheet.reading(reading as ReadingName)
      assert.ok(value !== undefined && Math.abs(value / (above / below) - 1) < 1e-12, `${reading}: ${value}`)
    }
  })
}

// water as an ingredient: 690 g + 210 × 80 ÷ 220, over 1,114.545 g of flour
test('the figures of the sheet stand beside the amounts in a file', () => {
  const formula = formulaOf(`
    Levain:
      Ripe starter = 40 g
      Bread flour = 100 g
      Water = 80 g
    Final dough:
      Bread flour = 820 g
      Wholemeal spelt = 180 g
      Water = 690 g
      Salt = 21 g
      Levain = 210 g
  `)
  assert.deepEqual(
    writeFormulas([formula], { figures: sheetFigures() })
      .trim()
      .split('\r\n')
      .slice(-3)
      .map(row => row.split(',').slice(2)),
    [
      ['Water', '690 g', '', 'water', '', '690', '69', '68.7602'],
      ['Salt', '21 g', '', 'salt', '', '21', '2.1', '1.88418'],
      ['Levain', '210 g', '', '', '', '210', '21', ''],
    ],
  )
})
