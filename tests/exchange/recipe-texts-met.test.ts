import assert from 'node:assert/strict'
import { test } from 'node:test'
import { readRecipe } from '../../src/exchange/recipe/index.js'
import { text } from './notation.js'
import { stagesShown, type TextCase } from './texts-and-stages.js'

const cases: readonly TextCase[] = [
  [
    'a stage is taken under another of its names where the weight is its own',
    text`
    Biga
    200 g bread flour
    120 g water

    Dough
    500 g bread flour
    320 g mature pre-dough
    10 g salt`,
    'Biga: Bread flour 200 g, Water 120 g',
    'Dough: Bread flour 500 g, Biga 320 g, Salt 10 g',
  ],
  [
    'all of the above is what stands above',
    text`
    Rye sour
    150 g whole rye flour
    150 g water
    15 g rye starter

    Final dough
    rye sour (all of the above)
    350 g bread flour
    9 g salt`,
    'Rye sour: Whole rye flour 150 g, Water 150 g, Rye starter 15 g',
    'Final dough: Rye sour 315 g, Bread flour 350 g, Salt 9 g',
  ],
  [
    'a soaker that no line names goes into the dough',
    text`
    Soaker:
    60 g linseed
    90 g water

    Dough:
    500 g bread flour
    320 g water
    10 g salt`,
    'Soaker: Linseed 60 g, Water 90 g',
    'Dough: Soaker 150 g, Bread flour 500 g, Water 320 g, Salt 10 g',
  ],
  [
    'un levain qu’aucune ligne ne nomme va dans la pâte',
    text`
    Pour le levain :
    30 g de levain chef
    60 g de farine T65
    60 g d’eau

    Pour la pâte :
    500 g de farine T65
    320 g d’eau
    10 g de sel`,
    'Levain: Ripe starter 30 g, Farine T65 60 g, Eau 60 g',
    'Pâte: Levain 150 g, Farine T65 500 g, Eau 320 g, Sel 10 g',
  ],
  [
    'a topping that no line names is asked about by nobody',
    text`
    Dough:
    500 g bread flour
    320 g water

    Topping:
    20 g sesame seeds`,
    'Topping: Sesame seeds 20 g',
    'Dough: Bread flour 500 g, Water 320 g',
  ],
  [
    'a heading may have figures',
    text`
    Pour un kilo de pain

    600 g de farine T65
    400 g d’eau
    12 g de sel`,
    'Final dough: Farine T65 600 g, Eau 400 g, Sel 12 g',
  ],
  [
    'a heading may say how much the stage comes to',
    text`
    Soaker: 1 lb, 8 oz
    8 oz rye chops
    1 lb water

    Dough: 3 lb
    2 lb bread flour
    1 lb water
    1 lb soaker`,
    'Soaker: Rye chops 8 oz, Water 1 lb',
    'Dough: Bread flour 2 lb, Water 1 lb, Soaker 1 lb',
  ],
  [
    'a line of a stage’s name and its weight is a line among lines like it',
    text`
    Levain: 200 g
    Bread flour: 500 g
    Water: 300 g`,
    'Final dough: Levain 200 g, Bread flour 500 g, Water 300 g',
  ],
  [
    'a heading needs no colon before a blank row',
    text`
    Mill rye

    Poolish

    100 g bread flour
    100 g water

    Final mix

    400 g bread flour
    200 g poolish
    8 g salt`,
    'Poolish: Bread flour 100 g, Water 100 g',
    'Final mix: Bread flour 400 g, Poolish 200 g, Salt 8 g',
  ],
  [
    'a heading of no known kind stands before a blank row',
    text`
    Mill rye
    400 g bread flour
    200 g water

    Oil and herbs

    20 g olive oil
    5 g thyme`,
    'Oil and herbs: Olive oil 20 g, thyme 5 g',
    'Final dough: Bread flour 400 g, Water 200 g',
  ],
  [
    'a heading among lines needs neither colon nor blank row',
    text`
    Pain du moulin
    Pour le levain
    50 g de farine T65
    50 g d’eau
    Dorure (facultatif)
    1 œuf
    pour le pain
    500 g de farine T65
    100 g de levain`,
    'Levain: Farine T65 50 g, Eau 50 g',
    'Dorure: Oeuf 1 each',
    'Pain: Farine T65 500 g, Levain 100 g',
  ],
  [
    'ingredients of one sort, and those of a stage, are headings',
    text`
    Mill rolls
    Ingredients (night sponge)
    100 g bread flour
    60 g water
    Dry ingredients
    400 g bread flour
    9 g salt
    Wet ingredients
    220 g milk
    160 g night sponge`,
    'Night sponge: Bread flour 100 g, Water 60 g',
    'Dry ingredients: Bread flour 400 g, Salt 9 g',
    'Wet ingredients: Milk 220 g, Night sponge 160 g',
  ],
  [
    'a share behind a heading is none of a line',
    text`
    Levain 20%
    100 g bread flour
    100 g water
    Dough 80%
    800 g bread flour
    500 g water
    200 g levain`,
    'Levain: Bread flour 100 g, Water 100 g',
    'Dough: Bread flour 800 g, Water 500 g, Levain 200 g',
  ],
  [
    'steps and stars mark headings, and how many loaves is no name',
    text`
    * Poolish *
    100 g bread flour
    100 g water
    Step 2 – Dough for 2 loaves (1.1 kg)
    500 g bread flour
    300 g water
    200 g poolish`,
    'Poolish: Bread flour 100 g, Water 100 g',
    'Dough: Bread flour 500 g, Water 300 g, Poolish 200 g',
  ],
  [
    'ingrédients pour tant de pains',
    text`
    Ingrédients pour 8 petits pains
    500 g de farine T65
    300 g de lait`,
    'Final dough: Farine T65 500 g, Lait 300 g',
  ],
  [
    'a heading may begin with what was done to the stage',
    text`
    Mill loaf
    Mature levain
    50 g bread flour
    50 g water
    Soaked seeds
    30 g linseed
    40 g water
    Dough
    500 g bread flour
    100 g mature levain`,
    'Mature levain: Bread flour 50 g, Water 50 g',
    'Soaked seeds: Linseed 30 g, Water 40 g',
    'Dough: Soaked seeds 70 g, Bread flour 500 g, Mature levain 100 g',
  ],
  [
    'stages that are counted are stages of their own',
    text`
    Build 1
    20 g rye starter
    40 g water
    Build 2:
    60 g build 1
    100 g water
    Dough
    160 g build 2
    500 g bread flour`,
    'Build 1: Rye starter 20 g, Water 40 g',
    'Build 2: Build 1 60 g, Water 100 g',
    'Dough: Build 2 160 g, Bread flour 500 g',
  ],
  [
    'days over amounts are stages',
    text`
    Day 1
    100 g bread flour
    100 g water
    Day 2
    500 g bread flour
    300 g water`,
    'Day 1: Bread flour 100 g, Water 100 g',
    'Day 2: Bread flour 500 g, Water 300 g',
  ],
  [
    'jours sur des quantités',
    text`
    Jour 1
    100 g de farine T65
    100 g d’eau
    Jour 2
    500 g de farine T65
    Jour 3
    Cuire 40 minutes.`,
    'Jour 1: Farine T65 100 g, Eau 100 g',
    'Jour 2: Farine T65 500 g',
  ],
  [
    'what stands above is taken first in the dough below',
    text`
    Preferment
    100 g bread flour
    60 g water

    Final dough
    preferment (above)
    500 g bread flour`,
    'Preferment: Bread flour 100 g, Water 60 g',
    'Final dough: Preferment 160 g, Bread flour 500 g',
  ],
  [
    'names and amounts stand on rows of their own',
    text`
    Bread flour
    500 g
    Water
    350 g
    Fine sea salt
    10 g`,
    'Final dough: Bread flour 500 g, Water 350 g, Fine sea salt 10 g',
  ],
  [
    'amounts stand on rows over their names',
    text`
    500 g
    Bread flour
    350 g
    Water
    10 g
    Salt`,
    'Final dough: Bread flour 500 g, Water 350 g, Salt 10 g',
  ],
  [
    'noms et quantités sur des lignes à part',
    text`
    Pour la pâte :
    Farine T65
    500 g
    Eau
    35 cl
    Sel fin
    2 c. à café`,
    'Pâte: Farine T65 500 g, Eau 350 ml, Sel fin 2 tsp',
  ],
  [
    'asides among the lines are no lines',
    text`
    500 g potatoes
    cut into four pieces
    500 g bread flour
    300 g water
    reserved`,
    'Final dough: Potatoes 500 g, Bread flour 500 g, Water 300 g',
  ],
]

for (const [what, recipe, ...stages] of cases)
  test(what, () => {
    const { formula } = readRecipe(recipe)
    assert.deepEqual(stagesShown(formula), stages)
  })

test('what no line takes goes into the dough, and the line that was added says so', () => {
  const { lines } = readRecipe(
    'Soaked seeds\n30 g linseed\n40 g water\nDough\n500 g bread flour\n300 g water',
  )
  assert.deepEqual(
    lines.flatMap(({ ingredient, amount, source, guesses }) =>
      guesses.map(({ code }) => [code, ingredient, amount, source]),
    ),
    [
      ['takenByNoLine', 'Soaked seeds', '70 g', 'Soaked seeds'],
      ['allTaken', 'Soaked seeds', '70 g', 'Soaked seeds'],
    ],
  )
})
