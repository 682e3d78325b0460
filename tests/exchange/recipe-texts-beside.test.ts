import assert from 'node:assert/strict'
import { test } from 'node:test'
import { arrive } from '../../src/exchange/arriving/arrive.js'
import { readRecipe } from '../../src/exchange/recipe/index.js'
import { text } from './notation.js'
import { dough, list, stagesShown, type TextCase } from './texts-and-stages.js'

const cases: readonly TextCase[] = [
  [
    'what is needed to work with is no dough, where the ingredients have a heading of their own',
    `What you'll need\n- a 5 quart pot\n- a scale\n- 2 baskets, 9 inch\n\nIngredients\n${list}`,
    `Final dough: ${dough}`,
  ],
  [
    'what you need is the ingredients where no other list has them',
    `What you'll need\n${list}\n\nMethod\nMix all and bake for 40 minutes.`,
    `Final dough: ${dough}`,
  ],
  [
    'what you need is the ingredients where those of the top have a heading too',
    `You will need\n${list}\n\nIngredients for the topping\n20 g sesame seeds\n5 g honey`,
    `Topping: Sesame seeds 20 g, Honey 5 g`,
    `Final dough: ${dough}`,
  ],
  [
    'les ustensiles ne sont pas des ingrédients',
    text`
    INGRÉDIENTS
    400 g farine T65
    260 g eau
    8 g sel

    USTENSILES
    1 pierre à four
    2 torchons

    PRÉPARATION
    1 Mélanger le tout, cuire 30 min.`,
    'Final dough: Farine T65 400 g, Eau 260 g, Sel 8 g',
  ],
  ...[
    'Sujet : pain 100% seigle et miel',
    'Auteur : anne22 - Posté le 04/11 à 21:17',
    'anne_b   Member since 2014   Posts: 1,206',
    'Keeps 3 days. Toasts for 5.',
    'Overall hydration 68 %. Salt 2 %.',
    'EDIT: sorry, the salt should be 17 g, I was looking at another page.',
    'Division : 350 g (52 pièces)',
    'Ovens of the Hill - base 10 kg de farine',
    'My everyday 68% loaf, happy with it at last',
    'Hi Anna,',
  ].flatMap((row): TextCase[] => [
    [`“${row}” over a list is no line`, `Loaf\n\n${row}\n\n${list}`, `Final dough: ${dough}`],
    [`“${row}” below a list is no line`, `Loaf\n\n${list}\n\n${row}`, `Final dough: ${dough}`],
  ]),
  [
    'times of a mix below a list are no line',
    `${list}\n\nMix: 1st speed 4 min, 2nd speed 7 min, with the last 100 g of the water.`,
    `Final dough: ${dough}`,
  ],
  [
    'the overall formula, said once more by the stages, is no stage',
    text`
    Sticks

    Overall formula
    Bread flour 500 g
    Water 340 g
    Salt 10 g

    Poolish
    Bread flour 100 g
    Water 100 g

    Final dough
    Bread flour 400 g
    Water 240 g
    Poolish 200 g
    Salt 10 g`,
    'Poolish: Bread flour 100 g, Water 100 g',
    'Final dough: Bread flour 400 g, Water 240 g, Poolish 200 g, Salt 10 g',
  ],
  [
    'an overall formula that says something else is kept',
    text`
    Sticks

    Overall formula
    Bread flour 500 g
    Water 340 g
    Raisins 90 g

    Poolish
    Bread flour 100 g
    Water 100 g

    Final dough
    Bread flour 400 g
    Water 240 g
    Poolish 200 g`,
    'Overall formula: Bread flour 500 g, Water 340 g, Raisins 90 g',
    'Poolish: Bread flour 100 g, Water 100 g',
    'Final dough: Bread flour 400 g, Water 240 g, Poolish 200 g',
  ],
  [
    'a day over the heading of a list opens no method',
    text`
    DAY ONE

    Sponge
    100 g bread flour
    90 g whole milk

    Dough
    400 g bread flour
    the sponge
    10 g salt

    DAY TWO

    Divide, and bake for 30 minutes.`,
    'Sponge: Bread flour 100 g, Whole milk 90 g',
    'Dough: Bread flour 400 g, Sponge 190 g, Salt 10 g',
  ],
  [
    'boxes to tick, and degrees with another sign',
    '▢ 500 g bread flour\n▢ 1 large egg, room temperature\n▢ 300 g water, around 78ºF',
    'Final dough: Bread flour 500 g, Large egg 1 each, Water 300 g',
  ],
  [
    'une phrase qui fait une poolish en fait une étape',
    text`
    La veille au soir, une poolish avec 150 g de farine T65, 150 g d'eau et 1 g de levure fraîche, couverte.

    Le lendemain :
    350 g de farine T65
    180 g d'eau
    toute la poolish
    10 g de sel`,
    'Poolish: Farine T65 150 g, Eau 150 g, Levure fraîche 1 g',
    'Le lendemain: Farine T65 350 g, Eau 180 g, Poolish 301 g, Sel 10 g',
  ],
  [
    'a sentence that makes a sponge makes a stage of it',
    text`
    Make a sponge with 100 g of bread flour, 90 g of milk and 5 g of salt, and leave it overnight.

    Dough
    400 g bread flour
    the sponge`,
    'Sponge: Bread flour 100 g, Milk 90 g, Salt 5 g',
    'Dough: Bread flour 400 g, Sponge 195 g',
  ],
  [
    'a heading says no more than its name',
    `${list}\n\nFor the top you'll want\n20 g sesame seeds\n5 g honey`,
    'Top: Sesame seeds 20 g, Honey 5 g',
    `Final dough: ${dough}`,
  ],
  [
    'a scald from an earlier stage is no order',
    text`
    STAGE 1. SCALD
    Whole rye flour, 100 g
    Boiling water, 200 g

    STAGE 2. SPONGE
    Scald from stage 1, all of it
    Medium rye flour, 200 g

    STAGE 3. DOUGH
    All of the sponge
    Bread flour, 120 g`,
    'Scald: Whole rye flour 100 g, Water 200 g',
    'Sponge: Scald 300 g, Medium rye flour 200 g',
    'Dough: Sponge 500 g, Bread flour 120 g',
  ],
  [
    'so much of it is said of the line',
    '500 g bread flour\n340 g water, 25 g of it held back\n10 g salt',
    `Final dough: ${dough}`,
  ],
]

for (const [what, recipe, ...stages] of cases)
  test(what, () => {
    const { formula, lines, rest } = readRecipe(recipe)
    assert.deepEqual(stagesShown(formula), stages)
    const rows = [...new Set([...lines, ...rest].map(({ row }) => row))]
    assert.deepEqual(
      rows.sort((a, b) => a - b),
      recipe.split('\n').map((_, at) => at + 1),
    )
  })

test('of amounts set aside it is said why', () => {
  const { rest } = readRecipe(
    'Sticks\n\nOverall formula\nFlour 500 g\nWater 300 g\n\nPoolish\nFlour 100 g\nWater 100 g\n\nDough\nFlour 400 g\nWater 200 g\nPoolish 200 g',
  )
  assert.deepEqual(
    rest.flatMap(({ text, why }) => (why ? [[text, why.code]] : [])),
    [
      ['Flour 500 g', 'saidBefore'],
      ['Water 300 g', 'saidBefore'],
    ],
  )
})

for (const row of ['400 ml buttermilk - or 350 if it is runny', 'flour - 6 c. to start, may need 7'])
  test(`another number is asked about: ${row}`, () => {
    const { lines } = readRecipe(`10 g salt\n${row}`)
    assert.equal(lines.length, 2)
    assert.ok(lines[1]!.guesses.some(({ code }) => code === 'notCounted'))
  })

test('a text in columns with an overall formula is no table of other stages', () => {
  const { arrived } = arrive(text`
    BAGUETTES
    Evening class

                     Overall formula
    Bread flour   1000 g     100 %
    Water          690 g      69 %
    Salt            20 g       2 %

    Night before: POOLISH
    Bread flour    300 g
    Water          300 g

    Class day: FINAL DOUGH
    Bread flour    700 g
    Water          390 g
    Poolish        600 g
    Salt            20 g`)
  assert.equal(arrived.as, 'recipe')
})

test('a line that the text corrects is asked about, the others are not', () => {
  const { lines, rest } = readRecipe(`${list}\n\nEDIT: sorry, the salt should be 12 g, not 10.`)
  assert.deepEqual(
    lines.map(({ ingredient, guesses }) => [ingredient, guesses.map(({ code }) => code)]),
    [
      ['Bread flour', []],
      ['Water', []],
      ['Salt', ['corrected']],
    ],
  )
  assert.equal(rest.at(-1)!.why?.code, 'amountsNotTaken')
})
