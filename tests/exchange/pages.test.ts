import assert from 'node:assert/strict'
import { test } from 'node:test'
import { exampleFormulas } from '../../src/app/example-files.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { arrive } from '../../src/exchange/arriving/arrive.js'
import { withoutIds } from '../../src/exchange/data/new-ids.js'
import { writeFormulas } from '../../src/exchange/index.js'
import { writeHtml } from '../../src/exchange/text/html-table.js'
import { writeMarkdown } from '../../src/exchange/text/markdown.js'
import { writePlainText } from '../../src/exchange/text/plain-text.js'
import { isOwnHtml, readHtml } from '../../src/exchange/text/read-html.js'
import { isOwnMarkdown, readMarkdown } from '../../src/exchange/text/read-markdown.js'
import { randomOf } from '../random.js'
import { anyFormula } from './any-formula.js'
import { told } from './notation.js'

for (const [name, seed, write, isOwn, read] of [
  ['Markdown', 81, writeMarkdown, isOwnMarkdown, readMarkdown],
  ['HTML', 82, writeHtml, isOwnHtml, readHtml],
] as const)
  test(`formulas of every kind come back as they were, through ${name} (seed ${seed})`, () => {
    const random = randomOf(seed)
    for (let i = 0; i < 70; i++) {
      const formula: Formula = anyFormula(random)
      const written = write(openFormula(formula))
      assert.ok(isOwn(written), `round ${i}\n${written}`)
      const { formulas, problems } = read(written)
      assert.deepEqual(told(problems), [], `round ${i}\n${written}`)
      assert.deepEqual(formulas.map(withoutIds), [withoutIds(formula)], `round ${i}\n${written}`)
      assert.equal(write(openFormula(formulas[0]!)), written, `round ${i}`)
    }
  })

const examples = exampleFormulas()

for (const [name, write] of [
  ['Markdown', writeMarkdown],
  ['HTML', writeHtml],
  ['plain text', writePlainText],
] as const)
  test(`a formula that was sent out as ${name} arrives as that formula, its method included`, () => {
    for (const formula of examples) {
      const { arrived, formulas, problems } = arrive(write(openFormula(formula)))
      assert.equal(arrived.as, 'formulas')
      assert.deepEqual(told([...problems]), [])
      assert.equal(writeFormulas(formulas), writeFormulas([formula]))
    }
  })

test('several formulas in one text of Markdown or HTML are read one by one', () => {
  for (const write of [writeMarkdown, writeHtml]) {
    const text = examples.map(formula => write(openFormula(formula))).join('\n\n')
    assert.deepEqual(
      arrive(text).formulas.map(({ name }) => name),
      examples.map(({ name }) => name),
    )
  }
})

test('an amount that is changed in the Markdown is the one that is read', () => {
  const written = writeMarkdown(openFormula(examples[0]!)).replace(
    /^(\| Water \| [^|]*\| [^|]*\|) [^|]* (\|.*)$/m,
    '$1 66% $2',
  )
  const [{ stages } = { stages: [] }] = arrive(written).formulas
  assert.equal(stages[0]!.lines.find(({ ingredient }) => ingredient === 'Water')!.amount, '66%')
})

test('a row that is no line is told with its row of the Markdown, and nothing else is lost', () => {
  const written = writeMarkdown(openFormula(examples[0]!))
  const row = written
    .split('\n')
    .findIndex(line => line.startsWith('* Make') || line.startsWith('## Allergens'))
  const { formulas, problems } = arrive(
    written.replace('## Allergens', '| Setting | As typed |\n| --- | --- |\n| Sing | loud |\n\n## Allergens'),
  )
  assert.equal(formulas.length, 1)
  assert.deepEqual(
    problems.map(({ code, where }) => [code, where.row]),
    [['textNotUnderstood', row + 3]],
  )
})

test('a recipe in Markdown or HTML of somebody else is none of Tarebook’s', () => {
  for (const text of [
    '# Loaf\n\n## Dough\n\n| Ingredient | % | Note |\n| --- | --- | --- |\n| Flour | 100 | |\n',
    '<h2>Loaf</h2><table><tr><th>Ingredient</th><th>Weight</th></tr><tr><td>Flour</td><td>500 g</td></tr></table>',
    '# Loaf\n- 500 g flour\n- 300 g water',
  ])
    assert.notEqual(arrive(text).arrived.as, 'formulas', text)
})
