import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Formula } from '../../src/dough/document/formula.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { arrive } from '../../src/exchange/arriving/arrive.js'
import { withoutIds } from '../../src/exchange/data/new-ids.js'
import { writeSeveral, writeSeveralMarkdown } from '../../src/exchange/several/several.js'
import { readMarkdown } from '../../src/exchange/text/read-markdown.js'
import { readPlainText } from '../../src/exchange/text/read-plain-text.js'
import { formulaOf, workedCheck } from '../dough/notation.js'
import { randomOf } from '../random.js'
import { anyFormula } from './any-formula.js'

const mill: Formula = {
  ...formulaOf(workedCheck),
  name: 'Mill wheat',
  batch: { make: 'pieces', pieces: [{ count: 6, weight: 900 }], loss: 0.02, bakeLoss: 0.12 },
}
const rye: Formula = {
  ...formulaOf('Final dough:\n Dark rye flour = 500 g\n Water = 400 g\n Salt = 9 g'),
  name: 'Rye',
}
const sheets = [mill, rye].map(formula => openFormula(formula))

test('several formulas as plain text begin with what is made of each', () => {
  const text = writeSeveral(sheets, 'eu')
  // 6 · 900 ÷ 0.98
  assert.match(
    text,
    /^Batches:\n> Mill wheat {2}6 × 900 g, 2 % lost on the way, 12 % lost in baking {2}5510 g of dough\n> Rye {9}as written {2,}909 g of dough\n\n\nMill wheat\n═/,
  )
  assert.match(text, /Ingredient +% +Grams +Batch /)
})

test('as Markdown they begin with a table of it', () => {
  assert.match(
    writeSeveralMarkdown(sheets, 'eu'),
    /^\| Batches \| To make \| Dough \|\n\| --- \| --- \| ---: \|\n\| Mill wheat \| 6 × 900 g, 2 % lost on the way, 12 % lost in baking \| 5510 g of dough \|\n\| Rye \| as written \| 909 g of dough \|\n\n\n# Mill wheat\n/,
  )
})

test('one formula alone is written as it is', () => {
  assert.match(writeSeveral(sheets.slice(0, 1), 'eu'), /^Mill wheat\n═/)
  assert.match(writeSeveralMarkdown(sheets.slice(0, 1), 'eu'), /^# Mill wheat\n/)
})

for (const [what, write, read] of [
  ['plain text', writeSeveral, readPlainText],
  ['Markdown', writeSeveralMarkdown, readMarkdown],
] as const) {
  test(`several formulas of every kind come back as they were through ${what}, batches and all (seed 61)`, () => {
    const random = randomOf(61)
    for (let i = 0; i < 20; i++) {
      const formulas = [mill, anyFormula(random), anyFormula(random)]
      const text = write(
        formulas.map(formula => openFormula(formula)),
        'us',
      )
      const back = read(text)
      assert.deepEqual(back.problems, [], `round ${i}\n${text}`)
      assert.deepEqual(back.formulas.map(withoutIds), formulas.map(withoutIds), `round ${i}`)
    }
  })

  test(`such a ${what} is known for what it is when it arrives`, () => {
    const { arrived, formulas } = arrive(write(sheets, 'eu'))
    assert.equal(arrived.as, 'formulas')
    assert.deepEqual(
      formulas.map(({ name }) => name),
      ['Mill wheat', 'Rye'],
    )
  })
}

test('text before the first formula that is no list of batches is told as before', () => {
  const { problems } = readPlainText(`Hello\n> you\n\n${writeSeveral(sheets, 'eu')}`)
  assert.deepEqual(
    problems.map(({ code, where }) => [code, where.row]),
    [
      ['textBeforeTitle', 1],
      ['textBeforeTitle', 2],
    ],
  )
})
