import assert from 'node:assert/strict'
import { test } from 'node:test'
import { readRecipe } from '../../src/exchange/recipe/index.js'
import { shown, text } from './notation.js'
import { recipeTexts } from './recipe-texts.js'

/** What is read of each whole recipe: the formula, then the rows of which no line was made. */
const expected: Readonly<Record<keyof typeof recipeTexts, string>> = {
  'a list with stages and a method': text`
    Saturday mill loaf
    note: Makes 2 loaves of 900 g
    Levain: 8 hours before
    Levain: ferments
      Ripe starter 40 g
      Strong white flour 100 g
      Water 80 g (at 26 °C)
    Dough:
      Strong white flour 820 g
      Wholemeal spelt 180 g (freshly milled)
      Water 690 g (lukewarm)
      Fine sea salt 21 g
      Levain 220 g
      1. hands Mix “Mix the flours with 650 g of the water”
      2. wait Rest: 30 min
      3. hands Add: adds Levain, Fine sea salt “Add the levain and the salt.”
      4. bake Bake: 40 min, at 240 °C
    row 1 heading
    row 3 note
    row 5 heading
    row 10 heading
    row 17 heading
    row 18 step
    row 19 step
    row 20 step
    `,
  'prose alone': text`
    Untitled formula
    rye flour is flour
    Final dough:
      Ripe starter 20 g
      rye flour 50 g
      Water 50 g
      Bread flour 450 g
      Water 300 ml (lukewarm)
      Salt 2 tsp
      1. hands Mix “The night before, mix 20 g of ripe starter with 50 g rye flour and 50 g water.”
      2. hands Add and knead: 10 min, adds Bread flour, Water (2), Salt “Next day add 450 g bread flour, 300 ml lukewarm water and 2 tsp salt, and knead for 10 minutes.”
      3. hands Shape “Shape into 2 loaves of 400 g”
      4. bake Bake: 35 min, at 230 °C
    row 3 step
    `,
  'prose with the levain named': text`
    Untitled formula
    Levain: ferments
      Starter 30 g
      Wholemeal flour 60 g
      Water 60 g
      1. hands Mix “For the levain, mix 30 g starter with 60 g of wholemeal flour and 60 g of water.”
      2. wait Rest: 8–12 h
    Final dough:
      Levain 150 g
      Water 330 g
      Bread flour 500 g
      Salt 10 g
      1. hands Mix “Stir 150 g of the levain into 330 g water”
      2. hands Add: adds Bread flour, Salt “then add 500 g bread flour and 10 g salt.”
    `,
  'markdown with a poolish': text`
    Mill-pond baguette
    note: Poolish: the night before
    Poolish: ferments
      Bread flour 300 g
      Water 300 g
      Instant yeast 0.3 g
    Final dough:
      Bread flour 700 g
      Water 380 g (370–390 g as written)
      Poolish 600.3 g
      Salt 20 g
      Instant yeast 3 g
      1. wait Fold: 1 h 30, 3 × 5 min every 30 min
    row 1 heading
    row 3 heading
    row 8 heading
    row 15 heading
    row 16 step
    `,
  'a soaker and a table': text`
    Seeded tin
    note: Total	1279 g
    Soaker:
      Linseed 60 g
      Sunflower seeds 60 g
      Water 120 g (Boiling)
    Dough:
      Wholemeal flour 600 g (100 %)
      Water 420 g (70 %)
      Soaker 240 g (40 %)
      Salt 13 g (2.2 %)
      Dry yeast 6 g (1 %)
    row 1 heading
    row 3 heading
    row 8 heading
    row 9 heading
    row 15 note
    `,
  'the dough before its levain': text`
    Untitled formula
    flour is flour
    Levain: ferments
      Bread flour 50 g
      Water 50 g
      Ripe starter 10 g (levain)
    Final dough:
      Bread flour 500 g
      Water 330 g
      Levain 100 g
      Salt 10 g
      Nigella
      flour  (for dusting)
    row 1 heading
    row 9 heading
    `,
  'French, a list': text`
    Pain du moulin
    note: Pour 2 pains
    farine T80 is flour
    Levain: ferments
      Ripe starter 30 g (levain chef)
      farine T80 60 g
      Eau 60 g (tiède)
    Pâte finale:
      Farine T65 850 g
      Farine de seigle T130 150 g
      Eau 690 g (entre 680 et 700 g as written)
      Sel fin 20 g
      Levain 150 g
      1. hands Mélanger “Mélanger la farine et 650 g d’eau”
      2. wait Repos: 30 min
      3. bake Cuire: 45 min, à 240 °C
    row 1 heading
    row 3 note
    row 5 heading
    row 10 heading
    row 17 heading
    row 18 step
    row 19 step
    `,
  'French, prose': text`
    Untitled formula
    Final dough:
      Farine T65 500 g
      Sel 10 g
      levure sèche 7 g (1 sachet)
      Eau 320 ml (tiède)
      Beurre 50 g (fondu)
      Œufs 2 each
      1. hands Mélanger “Dans un saladier, mélangez 500 g de farine T65, 10 g de sel et 1 sachet de levure sèche (7 g).”
      2. hands Verser et pétrir: 10 min, ajoute Eau “Versez 32 cl d’eau tiède et pétrissez 10 minutes”
      3. hands Ajouter: ajoute Beurre, Œufs “puis ajoutez 50 g de beurre fondu et 2 œufs.”
      4. bake Cuire: 35 min, à 220 °C
    row 3 step
    `,
  'one row a stage': text`
    Two-line rye
    Levain: ferments
      Rye starter 20 g
      Whole rye flour 100 g
      Water 100 g
    Dough:
      Whole rye flour 300 g
      Levain 220 g
      Water 230 g (hot)
      Salt 8 g
      1. wait Bulk: 1 h
      2. bake Bake: 50 min, at 220 °C
    row 1 heading
    row 4 note
    `,
  'cups and spoons': text`
    Morning buns
    note: makes 12
    Keeps for 2 days. Use 10 g more milk in winter.
    Filling:
      Walnuts  (a handful)
      Brown sugar 2 tbsp
    Final dough:
      Milk 120 ml (1/2 cup as written, warmed)
      Active dry yeast 2 1/4 tsp
      All-purpose flour 375 g (3 cups as written, plus more for dusting)
      Sugar 1/4 cup
      Salt 3/4 tsp
      Butter 4 oz (softened)
      Egg 1 each
      Egg yolk 1 each
      nutmeg  (to taste)
    row 1 heading
    row 12 heading
    row 16 heading
    row 17 note
    `,
  'headings in capitals and a hot soaker': text`
    Brackwater rye
    note: Levain: THE NIGHT BEFORE
    rye flour is flour
    Levain: ferments
      Rye starter 25 g
      Whole rye flour 125 g
      Water 125 g (at 30 °C)
    Hot soaker:
      rye flour 80 g
      Water 120 g (boiling)
      Salt 6 g
    Final dough:
      Medium rye flour 300 g
      Bread flour 150 g
      Water 260 g
      Levain 275 g
      Hot soaker 206 g
      Salt 8 g
      1. hands Mix
      2. wait Rest: 40 min
      3. bake Bake: 50 min, at 240 °C
    row 1 heading
    row 3 heading
    row 8 heading
    row 13 heading
    row 21 heading
    row 22 step
    row 23 step
    `,
  'markdown with the biga among the lines': text`
    Mill bloomer
    Biga: ferments
      Bread flour 300 g
      Water 165 g
      Instant yeast 1 g
    Dough:
      Biga 466 g
      Bread flour 700 g
      Water 500 g (divided)
      Salt 20 g
      1. hands Fold “Fold twice.”
    row 1 heading
    row 3 heading
    row 9 heading
    row 16 heading
    row 18 step
    `,
  'French, a levain and a soaker taken whole': text`
    Pain de campagne du moulin
    farine T80 is flour
    Levain: ferments
      Ripe starter 20 g (levain chef)
      farine T80 100 g
      Eau 100 g (tiède)
    Trempage:
      Graines de lin 50 g
      Eau 75 g (bouillante)
    Pâte:
      Farine T65 900 g
      Eau 620 g (à 22 °C)
      Levain 220 g
      Trempage 125 g
      Sel 20 g
      1. hands Pétrir: 10 min
      2. wait Pointage: 2 h
      3. bake Cuire: 40 min, à 240 °C
    row 1 heading
    row 3 heading
    row 8 heading
    row 12 heading
    row 19 heading
    row 20 step
    row 21 step
    `,
  'a sponge, a glaze and a finish': text`
    Teatime plait
    Sponge: ferments
      Bread flour 150 g
      Milk 150 ml (warmed)
      Fast-action yeast 7 g
    Glaze:
      Egg 1 each (beaten)
      Milk 1 tbsp
    To finish:
      Almonds  (flaked, for sprinkling)
    Dough:
      Sponge 311.7 g
      Bread flour 350 g
      Caster sugar 60 g
      Butter 80 g (softened)
      Eggs 2 each
      Salt 1 tsp
      1. bake Bake: 25 min, at 190 °C
    row 1 heading
    row 3 heading
    row 8 heading
    row 16 heading
    row 20 heading
    row 23 step
    `,
  'two days, half of the levain': text`
    Two-day loaf
    note: Levain: day 1 (evening)
    The rest of the levain goes back into the jar.
    Levain: ferments
      Ripe starter 30 g
      Wholemeal flour 60 g
      Water 60 g (28 °C)
    Dough:
      Strong white flour 450 g
      Water 300 g
      Levain 75 g (half of the)
      Salt 9 g
    row 1 heading
    row 3 heading
    row 8 heading
    row 14 heading
    row 15 note
    `,
}

for (const [what, recipe] of Object.entries(recipeTexts) as [keyof typeof recipeTexts, string][])
  test(`${what} is read whole`, () => {
    const { formula, rest } = readRecipe(recipe)
    const others = rest.filter(r => r.as !== 'blank').map(r => `row ${r.row} ${r.as}`)
    assert.equal(
      [shown(formula), ...others].join('\n').replace(/ +$/gm, ''),
      expected[what].replace(/\n+$/, ''),
    )
  })

test('amounts in the steps of a recipe that has a list are not taken, and that is said', () => {
  const { lines, rest } = readRecipe('500 g bread flour\n350 g water\n\nMix with 300 g of the water.')
  assert.equal(lines.length, 2)
  assert.deepEqual(rest.at(-1), {
    row: 4,
    text: 'Mix with 300 g of the water.',
    as: 'step',
    why: { code: 'amountsNotTaken', message: 'The amounts in it were not taken as lines.' },
    inMethod: true,
  })
})

test('a row that is not understood is a problem with its row', () => {
  const { rest, problems } = readRecipe('500 g bread flour\n\n350 g\n10 g salt')
  assert.deepEqual(
    rest.map(r => [r.row, r.as]),
    [
      [2, 'blank'],
      [3, 'not understood'],
    ],
  )
  assert.deepEqual(
    problems.map(p => [p.where.row, p.message]),
    [[3, 'Row 3: It has an amount and no ingredient. Write it as “20 g salt”, or leave it out.']],
  )
})

test('a text without an ingredient says so', () => {
  const { formula, problems } = readRecipe('Dear baker,\n\nthank you.')
  assert.equal(formula.stages.length, 1)
  assert.equal(
    problems[0]!.message,
    'No ingredient was found in this text. Write each with its amount: 500 g flour.',
  )
})

/** A first row over lines, and whether it names the bread or a stage. */
const firstRows: readonly (readonly [row: string, is: 'the bread' | 'a stage', name: string])[] = [
  ['Plain sourdough', 'the bread', 'Plain sourdough'],
  ['# Rye sourdough', 'the bread', 'Rye sourdough'],
  ['Poolish baguette', 'the bread', 'Poolish baguette'],
  ['Pain au levain', 'the bread', 'Pain au levain'],
  ['Seeded loaf', 'the bread', 'Seeded loaf'],
  ['Wholemeal spelt', 'the bread', 'Wholemeal spelt'],
  ['Levain', 'a stage', 'Levain'],
  ['Poolish', 'a stage', 'Poolish'],
  ['Bread dough', 'a stage', 'Bread dough'],
  ['Pâte à pain', 'a stage', 'Pâte à pain'],
  ['Hauptteig', 'a stage', 'Hauptteig'],
  ['Brühstück', 'a stage', 'Brühstück'],
  ['Plain sourdough:', 'a stage', 'Plain sourdough'],
  ['For the sourdough', 'a stage', 'Sourdough'],
]
for (const [row, is, name] of firstRows)
  test(`${JSON.stringify(row)} alone over the ingredients names ${is}`, () => {
    const { formula, lines } = readRecipe(`${row}\n\n500 g bread flour\n350 g water`)
    const isBread = is === 'the bread'
    assert.deepEqual(
      [formula.name, formula.stages.map(s => s.name), lines.length],
      isBread ? [name, ['Final dough'], 2] : ['Untitled formula', [name], 2],
    )
  })
