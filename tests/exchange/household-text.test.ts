import assert from 'node:assert/strict'
import { test } from 'node:test'
import { usualFractions } from '../../src/dough/about/household.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { readPlainText, writePlainText } from '../../src/exchange/index.js'
import { writeHousehold } from '../../src/exchange/text/household-text.js'
import { formulaOf } from '../dough/notation.js'

const sheet = openFormula(
  formulaOf(`
    Levain:
      Ripe starter = 40 g
      Bread flour = 100 g
      Water = 80 g
    Final dough:
      Bread flour = 1000 g
      Water = 690 g
      Salt = 21 g
      Levain = 210 g
  `),
)

for (const system of ['us', 'metric', 'imperial'] as const)
  test(`cups and spoons (${system}) stand beneath the plain text, weights first, and are passed over by its reader`, () => {
    const measures = writeHousehold(sheet, { system, fractions: usualFractions })
    assert.match(measures, /> Final dough\s+Water\s+690 g\s+[23]\b.* cups/)
    assert.match(measures, /> Final dough\s+Levain\s+210 g\s+weigh it/)
    assert.match(measures, /estimates/)
    assert.match(measures, /true hydration \d\d(\.\d+)? % instead of \d\d(\.\d+)? %\s+and\s+(> )?salt/)
    const text = `${writePlainText(sheet)}\n${measures}`
    const { formulas, problems } = readPlainText(`${text}\n\n${text}`)
    assert.deepEqual(problems, [])
    assert.equal(formulas.length, 2)
    for (const read of formulas) assert.equal(writePlainText(openFormula(read)), writePlainText(sheet))
  })
