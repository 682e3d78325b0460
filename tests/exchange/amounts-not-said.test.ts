import assert from 'node:assert/strict'
import { test } from 'node:test'
import { usualFractions } from '../../src/dough/about/household.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { sheetFigures } from '../../src/exchange/csv/sheet-figures.js'
import { writeFormulas } from '../../src/exchange/index.js'
import { recipeMarkup } from '../../src/exchange/markup/recipe-markup.js'
import { writeHousehold } from '../../src/exchange/text/household-text.js'
import { writeHtml } from '../../src/exchange/text/html-table.js'
import { writeMarkdown } from '../../src/exchange/text/markdown.js'
import { writePlainText } from '../../src/exchange/text/plain-text.js'
import { formulaOf } from '../dough/notation.js'

const bread = formulaOf(`
  Final dough:
    Bread flour = 500 g
    Water = 350 g
    Sunflower seeds =
`)
const batch = { make: 'pieces', pieces: [{ count: 2, weight: 900 }] } as const

for (const [which, formula] of [
  ['as written', bread],
  ['in a batch', { ...bread, batch }],
] as const) {
  const sheet = openFormula(formula)
  for (const [where, text] of [
    ['a plain text', writePlainText(sheet)],
    ['Markdown', writeMarkdown(sheet)],
    ['HTML', writeHtml(sheet)],
    ['recipe markup', JSON.stringify(recipeMarkup(sheet).recipeIngredient)],
    ['cups and spoons', writeHousehold(sheet, { system: 'us', fractions: usualFractions })],
    ['CSV', writeFormulas([formula], { figures: sheetFigures() })],
  ] as const)
    test(`${where} leaves the amount open that was never said, ${which}`, () => {
      assert.ok(where === 'cups and spoons' || text.includes('Sunflower seeds'), text)
      const row = text.split(/\n|<tr>|","/).find(r => r.includes('Sunflower seeds')) ?? ''
      assert.doesNotMatch(row.replace(/<[^>]*>/g, ' '), /\b0\b/)
    })
}
