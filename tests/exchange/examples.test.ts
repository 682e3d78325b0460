import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import { test } from 'node:test'
import type { ReadingName } from '../../src/dough/figures.js'
import { openFormula } from '../../src/dough/sheet.js'
import { writeFormulas } from '../../src/exchange/index.js'
import { exampleReadings } from '../dough/example-readings.js'
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
