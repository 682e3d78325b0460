import assert from 'node:assert/strict'
import { test } from 'node:test'
import { openFormula } from '../../src/dough/formula-sheet.js'
import type { ListName } from '../../src/dough/larder/allergen-lists.js'
import { larderWith, usualLarder } from '../../src/dough/larder/usual-larder.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { writeFormulas } from '../../src/exchange/csv/write-formulas.js'
import { writeHtml } from '../../src/exchange/text/html-table.js'
import { writeMarkdown } from '../../src/exchange/text/markdown.js'
import { writePlainText } from '../../src/exchange/text/plain-text.js'
import { readPlainText } from '../../src/exchange/text/read-plain-text.js'
import { formulaOf } from '../dough/notation.js'

const buns = {
  ...formulaOf(`
    Final dough:
      Bread flour = 100%
      Milk = 40%
      Mahleb = 1%
      Rye starter = 20%
  `),
  name: 'Buns',
  note: 'Bake in a hot pot.',
}

type Write = (list?: ListName, sheet?: FigureSheet) => string
const bunsSheet = openFormula(buns)
const writers: readonly (readonly [what: string, write: Write])[] = [
  ['plain text', (list, sheet = bunsSheet) => writePlainText(sheet, list).replace(/\n> /g, ' ')],
  ['Markdown', (list, sheet = bunsSheet) => writeMarkdown(sheet, list)],
  ['HTML', (list, sheet = bunsSheet) => writeHtml(sheet, list)],
]
for (const [what, write] of writers) {
  for (const [list, listed] of [
    ['us', 'the nine major allergens of the United States: wheat in Bread flour; milk in Milk.'],
    [
      'eu',
      'the fourteen allergens of the European Union: cereals containing gluten (wheat) in Bread flour; milk in Milk; cereals containing gluten (rye) in Rye starter.',
    ],
    [
      'canada',
      'the priority allergens of Canada: wheat in Bread flour; gluten source (wheat) in Bread flour; milk in Milk; gluten source (rye) in Rye starter.',
    ],
  ] as const)
    test(`${what} names the allergens of the list of ${list}`, () => {
      assert.ok(write(list).includes(`Listed, of ${listed}`), write(list))
    })

  test(`${what} says what is not known, what to mind, and that labels and law decide`, () => {
    const text = write()
    for (const said of [
      'Not known: Mahleb.',
      'It does not say that a bread suits anybody with an allergy.',
      'Your suppliers’ labels and local food law decide.',
      'Egg or milk: This dough contains egg or milk.',
      'Raw flour: Do not taste raw flour',
      'Heat: Hot pots',
      'follow your local food rules and your licence',
    ])
      assert.ok(text.includes(said), said)
    assert.doesNotMatch(text, /\bsafe\b|[- ]free\b/i)
  })
}

const { allergens: _allergens, ...rye } = usualLarder.find(i => i.name === 'Dark rye flour')!
const meal = { ...rye, id: 'meal', name: 'Rye flour', otherNames: [] }
const none = { us: [], eu: [], canada: [] }

for (const [what, write] of writers)
  for (const [own, said, isKnown] of [
    ['that nobody has said anything of', {}, false],
    ['with empty lists of before', { allergens: none }, false],
    ['said to be none of these', { allergens: none, noneListed: true }, true],
    ['of rye', { allergens: { ...none, eu: ['cereals containing gluten (rye)'] } }, true],
  ] as const)
    test(`${what} says ${isKnown ? 'nothing' : 'that it is not known'} of an own flour ${own}`, () => {
      const formula = formulaOf('Final dough:\n Rye flour = 100%\n Water = 80%')
      const text = write('eu', openFormula(formula, larderWith([{ ...meal, ...said }])))
      assert.equal(text.includes('Not known: Rye flour.'), !isKnown)
    })

test('a formula with nothing listed is not cleared by it', () => {
  const rice = formulaOf('Final dough:\n Rice flour = 100%\n Water = 90%')
  assert.match(
    writeMarkdown(openFormula(rice)),
    /Listed, of the fourteen .*: nothing the larder knows of\.\n\nThis is what the larder lists/,
  )
})

for (const name of [
  '=1+1',
  'x; =1+1',
  'Salt\n═══\nWater',
  'Readings:',
  '> Note:',
  '\u2028=1',
  'a'.repeat(300),
  '"',
])
  test(`an ingredient called ${JSON.stringify(name.slice(0, 20))} is the same after a text that speaks of it`, () => {
    const odd = formulaOf('Final dough:\n Bread flour = 100%\n Water = 60%')
    const [dough] = odd.stages
    const lines = dough!.lines.map((line, at) => (at === 1 ? { ...line, ingredient: name } : line))
    const formula = { ...odd, name: 'Odd', stages: [{ ...dough!, lines }] }
    const text = writePlainText(openFormula(formula))
    assert.match(text, /Not known/)
    for (const line of text.split(/\r\n?|\n/)) assert.doesNotMatch(line, /^[=+\-@]|[;\t]\s*'*[=+\-@]/)
    const { formulas, problems } = readPlainText(text)
    assert.deepEqual(problems, [])
    assert.equal(writeFormulas(formulas), writeFormulas([formula]))
  })
