import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { test } from 'node:test'
import { openFormula, type ReadingName, readFormulas } from '../../src/index'

const readme = readFileSync('README.md', 'utf8')
const csv = /```csv\n([\s\S]*?)```/.exec(readme)![1]!

const written: readonly (readonly [words: string, reading: ReadingName])[] = [
  ['listed hydration', 'listedHydration'],
  ['true hydration', 'trueHydration'],
  ['salt', 'salt'],
  ['prefermented flour', 'prefermentedFlour'],
  ['dough weight', 'doughWeight'],
]

test('the CSV example of the README is understood to the last row', () => {
  const { formulas, problems } = readFormulas(csv)
  assert.deepEqual(problems, [])
  assert.equal(formulas.length, 1)
  const lines = formulas[0]!.stages.flatMap(stage => stage.lines)
  assert.equal(lines.length, csv.trim().split('\n').length - 1)
})

for (const [words, reading] of written) {
  test(`the README's ${words} is what its CSV example comes to`, () => {
    const shown = new RegExp(`^\\| ${words} \\|.*\\| ([\\d.,]+) (%|g) \\|$`, 'm').exec(readme)
    assert.ok(shown, `the README has a row for ${words}`)
    const [, number, unit] = shown
    const digits = number!.split('.')[1]?.length ?? 0
    const value = openFormula(readFormulas(csv).formulas[0]!).reading(reading)!
    assert.equal((value * (unit === '%' ? 100 : 1)).toFixed(digits), number!.replaceAll(',', ''))
  })
}
