import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Formula } from '../../src/dough/document/formula.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { larderWith, usualLarder } from '../../src/dough/larder/usual-larder.js'
import { withoutIds } from '../../src/exchange/data/new-ids.js'
import { writePlainText } from '../../src/exchange/text/plain-text.js'
import { isPlainText, readPlainText } from '../../src/exchange/text/read-plain-text.js'
import { formulaOf, lineOf } from '../dough/notation.js'
import { randomOf } from '../random.js'
import { anyFormula } from './any-formula.js'
import { text, told } from './notation.js'

const mill = formulaOf(`
  Levain:
    Ripe starter = 40 g
    Bread flour = 100 g
    Water = 80 g
  Final dough:
    Bread flour = 820 g
    Wholemeal spelt = 180 g
    Water = 690 g
    Salt = 2%
    Levain = 210 g
    Caraway seeds = 2 tsp
`)
const bread: Formula = {
  ...mill,
  stages: mill.stages.map(stage => ({
    ...stage,
    lines: stage.lines.map(line => (line.ingredient === 'Levain' ? { ...line, note: 'fed twice' } : line)),
  })),
  name: 'Mill wheat',
  note: 'Mix until smooth.\n\n- fold twice\n- rest',
  batch: { make: 'pieces', pieces: [{ count: 6, weight: 900 }], loss: 0.02 },
  holds: [{ reading: 'trueHydration', value: 0.75, line: lineOf(mill, 'Final dough', 'Water').id }],
}

test('a formula is written as text with its columns in line', () => {
  assert.equal(
    writePlainText(openFormula(bread)),
    `${text`
      Mill wheat
      ══════════

      Note:
      > Mix until smooth.
      >
      > - fold twice
      > - rest

      Levain
      ──────
      Weighs: 220 g as written, 586 g in the batch, 83.33 % hydration, ferments
      Ingredient          %  Grams  Batch  As typed  Note
      Ripe starter   40.0 %   40 g  107 g  40 g
      Bread flour   100.0 %  100 g  266 g  100 g
      Water          80.0 %   80 g  213 g  80 g

      Final dough
      ───────────
      Weighs: 1974.7 g as written, 5510 g in the batch, 75 % hydration
      Ingredient             %    Grams   Batch  As typed  Note
      Bread flour      82.00 %  820.0 g  2288 g  820 g
      Wholemeal spelt  18.00 %  180.0 g   502 g  180 g
      Water            74.05 %  740.5 g  2066 g  690 g
      Salt              2.00 %   20.0 g    56 g  2%
      Levain           21.00 %  210.0 g   586 g  210 g     fed twice
      Caraway seeds     0.42 %    4.2 g    12 g  2 tsp

      Readings:
      > True hydration          75 %  75.01 % as weighed
      > Listed hydration     74.05 %  74.05 % as weighed
      > Moisture hydration   75.04 %  75.05 % as weighed
      > Salt                  1.79 %  1.8 % as weighed
      > Prefermented flour   10.28 %  10.27 % as weighed
      > Levain on flour         21 %  21 % as weighed
      > Total flour         1114.5 g  3109.5 g as weighed
      > Total water          835.9 g  2332.5 g as weighed
      > Dough weight        1974.7 g  5510 g as weighed
      > Fat                   0.05 %  0.06 % as weighed

      Make: 6 × 900 g
      Loss: 2%
      Hold true hydration: 75%  Water  gives

      Allergens and cautions:
      > Listed, of the fourteen allergens of the European Union: cereals
      > containing gluten (wheat) in Ripe starter, Bread flour, Wholemeal spelt.
      > This is what the larder lists for these ingredients, and nothing more.
      > It does not say that a bread suits anybody with an allergy. A starter
      > carries the flour it is fed with, and flour dust settles everywhere.
      > Your suppliers’ labels and local food law decide.
      > Raw flour: Do not taste raw flour, dough or starter: flour is not
      > treated to kill germs, and heating it at home does not reliably do so.
      > For bread made for others or for sale, follow your local food rules and
      > your licence.
    `}\n`,
  )
})

test('a text that came by mail, with other line ends and blanks behind, is read all the same', () => {
  const mailed = writePlainText(openFormula(bread)).replaceAll('\n', '  \r\n')
  assert.ok(isPlainText(mailed))
  const { formulas, problems } = readPlainText(mailed)
  assert.deepEqual(told(problems), [])
  assert.deepEqual(formulas.map(withoutIds), [withoutIds(bread)])
})

test('several formulas in one text are read one by one', () => {
  const two = writePlainText(openFormula(bread)) + writePlainText(openFormula({ ...mill, name: 'Other' }))
  assert.deepEqual(
    readPlainText(two).formulas.map(f => f.name),
    ['Mill wheat', 'Other'],
  )
})

test('what an ingredient of the baker’s own counts as goes along', () => {
  const own = {
    ...usualLarder[0]!,
    id: 'mill-salt',
    name: 'Mill salt',
    otherNames: [],
    countsAs: { kind: 'salt' },
  } as const
  const formula = formulaOf('Final dough:\n Bread flour = 100%\n Mill salt = 2%')
  const { formulas } = readPlainText(writePlainText(openFormula(formula, larderWith([own]))))
  assert.deepEqual(formulas[0]!.meanings, [{ ingredient: 'Mill salt', countsAs: { kind: 'salt' } }])
})

test('formulas of every kind come back as they were, through text (seed 11)', () => {
  const random = randomOf(11)
  for (let i = 0; i < 80; i++) {
    const formula = anyFormula(random)
    const written = writePlainText(openFormula(formula))
    const { formulas, problems } = readPlainText(written)
    assert.deepEqual(told(problems), [], `round ${i}\n${written}`)
    assert.deepEqual(formulas.map(withoutIds), [withoutIds(formula)], `round ${i}\n${written}`)
    assert.equal(writePlainText(openFormula(formulas[0]!)), written, `round ${i}`)
  }
})

test('no line and no cell of the text starts a formula in an office program (seed 12)', () => {
  const random = randomOf(12)
  for (let i = 0; i < 50; i++)
    for (const line of writePlainText(openFormula(anyFormula(random))).split(/\r\n?|\n/)) {
      assert.doesNotMatch(line, /^\s*[=+\-@＝＋－＠]|^[\t\r]|[;\t]\s*[=+\-@]/)
      assert.doesNotMatch(line, /[\0\t]/)
    }
})

for (const [what, given, expected] of [
  ['nothing', '', ['1 There is no formula in this text.']],
  [
    'a letter',
    'Dear baker,\n\nbread',
    [
      '1 Line 1 comes before any title and was left out: “Dear baker,”.',
      '3 Line 3 comes before any title and was left out: “bread”.',
    ],
  ],
  [
    'a line that says nothing known',
    'Loaf\n═══\n\nColour: brown',
    ['4 Line 4 is not understood and was left out: “Colour: brown”.'],
  ],
  [
    'a row without its cells',
    'Loaf\n═══\n\nDough\n───\nIngredient  %  Grams  As typed  Note\nWater',
    ['7 Line 7 is not a line of a stage and was left out: “Water”.'],
  ],
  [
    'a hold on nothing',
    'Loaf\n═══\n\nHold salt: 2%  Salt  gives',
    ['4 Line 4 says that “Salt” gives, but the final dough has no such line.'],
  ],
] as const)
  test(`${what} is told, not thrown`, () => {
    assert.deepEqual(
      readPlainText(given).problems.map(p => `${p.where.row} ${p.message}`),
      expected,
    )
  })

test('damaged texts never throw (seed 13)', () => {
  const random = randomOf(13)
  for (let i = 0; i < 50; i++) {
    const lines = writePlainText(openFormula(anyFormula(random))).split('\n')
    for (let n = random.below(4); n >= 0; n--)
      lines.splice(random.below(lines.length), 1, random.pick(['', '"', '>', '═══', '───', lines[0]!]))
    for (const formula of readPlainText(lines.join('\n')).formulas) openFormula(formula).problems
  }
})
