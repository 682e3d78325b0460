import type { RecipeLineCase } from './recipe-lines.js'

/** Amounts that may not go into the dough, measures of one letter, and words of German kitchens. */
export const linesOfPurposes: readonly RecipeLineCase[] = [
  [
    '1 egg, beaten, for glazing',
    'Egg | 1 each | beaten, for glazing ? The text says it is for glazing: leave it out',
  ],
  ['1 egg yolk, to glaze', 'Egg yolk | 1 each | to glaze ? it is for glazing'],
  ['rice flour for dusting 20 g', 'Rice flour | 20 g | for dusting ? it is for dusting'],
  ['For dusting: 20 g rice flour', 'Rice flour | 20 g | For dusting ? it is for dusting'],
  ['10 g butter for the tin', 'Butter | 10 g | for the tin ? it is for the tin'],
  ['butter (for the tin) 10 g', 'Butter | 10 g | for the tin ? it is for the tin'],
  ['20 g butter, to serve', 'Butter | 20 g | to serve ? it is for serving'],
  ['To serve: 20 g butter', 'Butter | 20 g | To serve ? it is for serving'],
  ['20 g sesame seeds for sprinkling', 'Sesame seeds | 20 g | for sprinkling ? it is for the top'],
  ['1 jaune d’œuf pour dorer', 'Jaune d’œuf | 1 each | pour dorer ? it is for glazing'],
  ['Pour dorer : 1 œuf', 'Oeuf | 1 each | Pour dorer ? it is for glazing'],
  ['1 œuf pour la dorure', 'Oeuf | 1 each | pour la dorure ? it is for glazing'],
  ['10 g de beurre pour le moule', 'Beurre | 10 g | pour le moule ? it is for the tin'],
  [
    '20 g de farine T65 pour le plan de travail',
    'Farine T65 | 20 g | pour le plan de travail ? for the bench',
  ],
  ['asdf 42t', 'asdf | | 42t ? What 42t weighs is not known: type an amount'],
  ['42t qwxz', 'qwxz | 42 tsp | ? “t” was read as a teaspoon'],
  ['1 t salt', 'Salt | 1 tsp |'],
  ['salt 1 t', 'Salt | 1 tsp |'],
  ['42t'],
  ['2 EL Olivenöl', 'Olivenöl | 2 tbsp |'],
  ['1 TL Salz', 'Salz | 1 tsp |'],
  ['1 Prise Salz', 'Salz | 0.3 g | ? A pinch'],
  ['2 Stück Eier', 'Eier | 2 each |'],
  ['1 Würfel Hefe', 'Hefe | 42 g | 1 Würfel ? taken as 42 g, as most shops sell it; weigh yours'],
  ['1 Würfel Hefe (42 g)', 'Hefe | 42 g | 1 Würfel'],
  ['12 Stunden bei 20 °C'],
]

/** Lines with an amount of which nothing says that it may not go into the dough. */
export const ofTheDough: readonly string[] = [
  '500 g bread flour, plus 50 g for dusting',
  '500 g bread flour, plus extra for dusting',
  '140 g grated cheese, half for the top',
  '330 g water for the soaker',
  '2 œufs + 1 pour la dorure',
  '10 g salt to taste',
]
