import assert from 'node:assert/strict'
import { test } from 'node:test'
import { allergensOf } from '../../src/dough/about/allergens.js'
import { applyChanges } from '../../src/dough/document/workbook.js'
import { enterIngredient } from '../../src/dough/edits/line-edits.js'
import { renameStage } from '../../src/dough/edits/stage-edits.js'
import { larderWith, usualLarder } from '../../src/dough/larder/usual-larder.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { formulaOf } from './notation.js'

/** The same letters, the accent within the letter or behind it. */
const whole = 'Crème brûlée'.normalize('NFC')
const apart = whole.normalize('NFD')
const flour = usualLarder.find(({ name }) => name === 'Bread flour')!
const own = { ...flour, id: 'own', name: whole, otherNames: ['Café'.normalize('NFC')] }

for (const [what, first, second] of [
  ['within the letters', whole, apart],
  ['behind the letters', apart, whole],
] as const)
  test(`an ingredient known with its accents ${what} is the same with them the other way`, () => {
    const larder = larderWith([{ ...own, name: first }])
    assert.equal(larder.find(second)?.id, 'own')
    const formula = formulaOf(`
      Café:
        ${first} = 50 g
        ${second} = 50 g
        Water = 1*${first.toLowerCase().replace(' ', '_')}
      Final dough:
        Flour = 100 g
        ${'Café'.normalize('NFD')} = 100 g
        Salt = 2 g`)
    const names = new Set(formula.stages.flatMap(s => s.lines.map(l => l.ingredient)))
    assert.equal(names.size, 6, 'as they are written, not one is the other')
    const sheet = openSheet({ ...formula, holds: [] }, larder)
    // The final dough takes the stage, written either way: 50 + 50 + 50 g of it are there, 100 g are taken.
    const final = formula.stages[1]!
    assert.equal(sheet.line(final.lines[1]!.id).is, 'stage')
    assert.equal(sheet.line(formula.stages[0]!.lines[0]!.id).is, 'flour')
    assert.equal(sheet.line(formula.stages[0]!.lines[1]!.id).is, 'flour')
    assert.ok(allergensOf(sheet))
  })

test('a stage renamed or a line written the other way stays what it is', () => {
  const formula = formulaOf(`
    ${whole}:
      Flour = 100 g
    Final dough:
      Flour = 100 g
      ${apart} = 100 g`)
  const workbook = { name: '', formulas: [formula], larder: [] }
  const at = { formula: formula.id, stage: formula.stages[0]!.id }
  const renamed = applyChanges(workbook, renameStage(workbook, at, 'Sponge')!.changes).workbook.formulas[0]!
  assert.equal(renamed.stages[1]!.lines[1]!.ingredient, 'Sponge')
  const line = { formula: formula.id, stage: formula.stages[1]!.id, line: formula.stages[1]!.lines[1]!.id }
  const written = enterIngredient(workbook, line, whole)
  const after = written ? applyChanges(workbook, written.changes).workbook : workbook
  assert.equal(openSheet(after.formulas[0]!, larderWith([])).line(line.line).is, 'stage')
})
