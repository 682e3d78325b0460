import { text } from './notation.js'

/** Whole recipes of Brackwater Mill's kitchen, as they come in messages and notebooks. */
export const recipeTexts = {
  'a list with stages and a method': text`
    Saturday mill loaf

    Makes 2 loaves of 900 g

    For the levain (8 hours before):
    - 40 g ripe starter
    - 100 g strong white flour
    - 80 g water at 26 °C

    For the dough:
    - 820 g strong white flour
    - 180 g wholemeal spelt, freshly milled
    - 690 g lukewarm water
    - 21 g fine sea salt
    - all of the levain

    Method
    1. Mix the flours with 650 g of the water and rest for 30 minutes.
    2. Add the levain and the salt.
    Bake at 240 °C for 40 minutes.
    `,
  'prose alone': text`
    The night before, mix 20 g of ripe starter with 50 g rye flour and 50 g water.
    Next day add 450 g bread flour, 300 ml lukewarm water and 2 tsp salt, and knead for 10 minutes.
    Shape into 2 loaves of 400 g and bake at 230 °C for 35 minutes.
    `,
  'prose with the levain named': text`
    For the levain, mix 30 g starter with 60 g of wholemeal flour and 60 g of water. Leave it overnight. Stir 150 g of the levain into 330 g water, then add 500 g bread flour and 10 g salt.
    `,
  'markdown with a poolish': text`
    # Mill-pond baguette

    ## Poolish (the night before)
    * 300 g bread flour
    * 300 g water
    * a pinch of instant yeast

    ## Final dough
    * 700 g bread flour
    * 370–390 g water
    * the poolish
    * 20 g salt
    * 3 g instant yeast

    ## Method
    Fold 3 times in 90 minutes.
    `,
  'a soaker and a table': text`
    SEEDED TIN

    SOAKER
    Linseed\t60 g
    Sunflower seeds\t60 g
    Boiling water\t120 g

    DOUGH
    Ingredient\tWeight\t%
    Wholemeal flour\t600 g\t100 %
    Water\t420 g\t70 %
    Soaker\t240 g\t40 %
    Salt\t13 g\t2.2 %
    Dry yeast\t6 g\t1 %
    Total\t1279 g
    `,
  'the dough before its levain': text`
    Ingredients
    500 g bread flour
    330 g water
    100 g levain
    10 g salt
    Nigella
    flour for dusting

    Levain
    50 g bread flour
    50 g water
    10 g levain
    `,
  'French, a list': text`
    Pain du moulin

    Pour 2 pains

    Pour le levain :
    30 g de levain chef
    60 g de farine T80
    60 g d’eau tiède

    Pâte finale
    ☐ 850 g de farine T65
    ☐ 150 g de farine de seigle T130
    ☐ entre 680 et 700 g d’eau
    ☐ 20 g de sel fin
    ☐ 150 g de levain

    Préparation
    Mélanger la farine et 650 g d’eau, laisser reposer 30 minutes.
    Cuire 45 minutes à 240 °C.
    `,
  'French, prose': text`
    Dans un saladier, mélangez 500 g de farine T65, 10 g de sel et 1 sachet de levure sèche (7 g).
    Versez 32 cl d’eau tiède et pétrissez 10 minutes, puis ajoutez 50 g de beurre fondu et 2 œufs.
    Enfournez 35 minutes à 220 °C.
    `,
  'one row a stage': text`
    Two-line rye
    Levain: 20 g rye starter, 100 g whole rye flour, 100 g water
    Dough: 300 g whole rye flour, 220 g levain, 230 g hot water, 8 g salt
    Bulk 60 minutes; bake 50 minutes at 220 °C.
    `,
  'cups and spoons': text`
    Morning buns (makes 12)

    1/2 cup (120 ml) milk, warmed
    2 1/4 tsp active dry yeast
    3 cups (375 g) all-purpose flour, plus more for dusting
    1/4 cup sugar
    3/4 teaspoon salt
    1 stick butter, softened
    1 egg + 1 egg yolk
    nutmeg, to taste

    Filling:
    a handful of walnuts
    2 tablespoons brown sugar

    Notes
    Keeps for 2 days. Use 10 g more milk in winter.
    `,
  'headings in capitals and a hot soaker': text`
    BRACKWATER RYE

    LEVAIN (THE NIGHT BEFORE)
    25 g rye starter
    125 g whole rye flour
    125 g water at 30 °C

    HOT SOAKER
    80 g rye flour
    120 g boiling water
    6 g salt

    FINAL DOUGH
    300 g medium rye flour
    150 g bread flour
    260 g water
    all of the levain
    the soaker
    8 g salt

    METHOD
    Mix and rest for 40 minutes.
    Bake at 240 °C for 50 minutes.
    `,
  'markdown with the biga among the lines': text`
    ## Mill bloomer

    ### Biga

    - 300 g bread flour
    - 165 g water
    - 1 g instant yeast

    ### Dough

    - the biga
    - 700 g bread flour
    - 500 g water, divided
    - 20 g salt

    ### Method

    1. Fold twice.
    `,
  'French, a levain and a soaker taken whole': text`
    Pain de campagne du moulin

    Pour le levain :
    20 g de levain chef
    100 g de farine T80
    100 g d’eau tiède

    Pour le trempage :
    50 g de graines de lin
    75 g d’eau bouillante

    Pour la pâte :
    900 g de farine T65
    620 g d’eau à 22 °C
    tout le levain
    le trempage
    20 g de sel

    Étapes
    Pétrir 10 min. Pointage 2 h.
    Cuire 40 min à 240 °C.
    `,
  'a sponge, a glaze and a finish': text`
    Teatime plait

    For the sponge:
    150 g bread flour
    150 ml milk, warmed
    7 g fast-action yeast

    For the dough:
    All of the sponge
    350 g bread flour
    60 g caster sugar
    80 g butter, softened
    2 eggs
    1 tsp salt

    For the glaze:
    1 egg, beaten
    1 tbsp milk

    To finish:
    flaked almonds, for sprinkling

    Bake for 25 minutes at 190 °C.
    `,
  'two days, half of the levain': text`
    Two-day loaf

    Levain, day 1 (evening)
    ripe starter 30 g
    flour, wholemeal: 60 g
    water 60 g (28 °C)

    Day 2 – dough
    strong white flour 450 g
    water 300 g
    half of the levain
    salt 9 g

    Notes
    The rest of the levain goes back into the jar.
    `,
} as const
