import assert from 'node:assert/strict'
import { test } from 'node:test'
import { readRecipe } from '../../src/exchange/recipe/index.js'
import { inWords } from './notation.js'

const withRow = (row: string): string =>
  [
    'Levain',
    '50 g ripe starter',
    '100 g bread flour',
    '100 g water',
    '',
    'Dough',
    '500 g bread flour',
    row,
    '300 g water',
  ].join('\n')

/** A row among the lines of a dough whose levain adds to 250 g: what the dough takes of it. */
const rows: readonly (readonly [row: string, amount: string, note?: string])[] = [
  ['all of the levain', '250 g'],
  ['All the levain', '250 g'],
  ['ALL LEVAIN', '250 g'],
  ['all your levain, ripe and bubbly', '250 g', 'ripe and bubbly'],
  ['All of the levain from last night', '250 g', 'from last night'],
  ['the whole levain', '250 g'],
  ['the levain', '250 g'],
  ['your levain', '250 g'],
  ['Levain', '250 g'],
  ['Levain (all of it)', '250 g'],
  ['levain: all', '250 g'],
  ['- all of the levain', '250 g'],
  ['all of the levain (250 g)', '250 g'],
  ['150 g of the levain', '150 g'],
  ['half of the levain', '125 g', 'half of the'],
  ['1/2 of the levain', '125 g', '1/2 of the'],
  ['50 % of the levain', '125 g', '50 % of the'],
  ['two thirds of the levain', '166.67 g', 'two thirds of the'],
  ['the rest of the levain', '250 g', 'the rest of the'],
  ['the remaining levain', '250 g', 'the remaining'],
  ['all of the sponge', '250 g', 'sponge'],
  ['tout le levain', '250 g'],
  ['Tout le levain.', '250 g'],
  ['toute la quantité de levain', '250 g'],
  ['la totalité du levain', '250 g'],
  ['levain : tout', '250 g'],
  ['la moitié du levain', '125 g', 'la moitié du'],
  ['le reste du levain', '250 g', 'le reste du'],
]
for (const [row, amount, note = ''] of rows)
  test(`${JSON.stringify(row)} among the lines of a dough takes ${amount} of its levain and opens no stage`, () => {
    const { formula } = readRecipe(withRow(row))
    assert.deepEqual(
      formula.stages.map(s => s.name),
      ['Levain', 'Dough'],
    )
    const read = formula.stages[1]!.lines.map(l => [l.ingredient, l.amount, l.note])
    const around = [
      ['Bread flour', '500 g', ''],
      ['Water', '300 g', ''],
    ]
    assert.deepEqual(read, [around[0], ['Levain', amount, note], around[1]])
  })

test('a share stands between blank rows too', () => {
  const { formula } = readRecipe(withRow('\nall of the levain\n'))
  assert.deepEqual(
    formula.stages.map(s => s.name),
    ['Levain', 'Dough'],
  )
})

test('the rest of a stage is what the lines before left, wherever they stand', () => {
  const { lines } = readRecipe(`${withRow('100 g of the levain')}

Topping
the rest of the levain
1 tbsp sesame seeds`)
  const rest = lines.find(l => l.source === 'the rest of the levain')!
  assert.equal(rest.amount, '150 g')
  assert.match(inWords(rest.guesses), /The rest of Levain was taken: its lines add to 250 g, 100 g of it/)
})

test('a share of what has no stage, or cannot be weighed, is asked for', () => {
  for (const row of ['all of the soaker', 'half the butter', 'le reste de l’eau', 'all of the levain']) {
    const { lines, rest } = readRecipe(row)
    assert.deepEqual([lines.length, rest.length, lines[0]!.amount], [1, 0, ''])
    assert.match(inWords(lines[0]!.guesses), /type one/)
  }
})

test('a share in a sentence takes the stage; one of an ingredient counts nothing twice', () => {
  const { lines } = readRecipe(
    'For the levain, mix 30 g starter with 60 g of wholemeal flour and 60 g of water. Stir all of the levain into 330 g water, add half of the water to 500 g bread flour and wait.',
  )
  assert.deepEqual(
    lines.map(l => `${l.ingredient} ${l.amount}`),
    [
      'Starter 30 g',
      'Wholemeal flour 60 g',
      'Water 60 g',
      'Levain 150 g',
      'Water 330 g',
      'Bread flour 500 g',
    ],
  )
})

test('what is marked as a heading opens a stage, whatever it says', () => {
  const { formula } = readRecipe(withRow('10 g salt\n\n## The rest of the dough\n20 g butter'))
  assert.ok(formula.stages.some(s => s.name === 'Rest of the dough'))
})

/** Rows of times and temperatures under the lines of a levain, the step each is, and how the dough takes it. */
const whens: readonly (readonly [row: string, step: string, taking: string])[] = [
  ['8-10 hours at 22 °C', 'wait Rest: 8–10 h, at 22 °C', 'all of the levain'],
  ['12 h at 24 °C', 'wait Rest: 12 h, at 24 °C', 'all of the levain'],
  ['2 hours bulk at 25 °C', 'wait Bulk: 2 h, at 25 °C', 'all of the levain'],
  ['450 °F for 20 min', 'bake Bake: 20 min, at 450 °F', 'all of the levain'],
  ['Rest 30', '', 'all of the levain'],
  ['Overnight at 18 °C', 'wait Rest: 8–12 h, at 18 °C', 'all of the levain'],
  ['8 à 10 heures à 22 °C', 'wait Repos: 8–10 h, à 22 °C', 'la totalité du levain'],
  ['30 min de repos', 'wait Repos: 30 min', 'la totalité du levain'],
  ['12-16 Std. bei 26 °C', '', 'all of the levain'],
]
for (const [row, step, taking] of whens)
  test(`${JSON.stringify(row)} under a levain is ${step ? 'a step of it' : 'in the note'}, and ${taking} is all of it`, () => {
    const { formula } = readRecipe(
      ['Levain', '20 g ripe starter', '50 g water', row, '', 'Dough', '500 g bread flour', taking].join('\n'),
    )
    assert.equal(formula.note, step ? '' : row)
    assert.deepEqual(
      formula.stages.map(({ method = [] }) =>
        method.map(({ kind, does, text }) => `${kind} ${does}: ${text}`),
      ),
      [step ? [step] : [], []],
    )
    assert.deepEqual(
      formula.stages.map(s => s.lines.map(l => `${l.ingredient} ${l.amount}`)),
      [
        ['Ripe starter 20 g', 'Water 50 g'],
        ['Bread flour 500 g', 'Levain 70 g'],
      ],
    )
  })
