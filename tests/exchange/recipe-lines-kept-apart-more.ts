import type { KeptApart } from './recipe-lines-kept-apart.js'

/**
 * More recipe lines kept apart: everyday lines, written by somebody who had not read the reader, before it was
 * last tuned, and read once when that was done: 65 of 67 were right. Do not make the reader fit them.
 *
 * Of each line to be found: a word of its ingredient, then its amount (empty when it is to be asked for), and
 * where something clearly belongs in the note, a part of that. A range is read as its middle, and a pinch is
 * 0.3 g, as in the first lines kept apart.
 */
export const moreLinesKeptApart: readonly KeptApart[] = [
  // British
  ['475g strong wholemeal bread flour', ['wholemeal', '475 g']],
  ['225g/8oz plain flour, plus extra for dusting', ['plain flour', '225 g', 'plus extra for dusting']],
  ['hand-hot water 310ml', ['water', '310 ml']],
  ['3 large free-range eggs, at room temperature', ['egg', '3 each', 'at room temperature']],
  ['85g unsalted butter, softened', ['butter', '85 g', 'softened']],
  ['2 x 7g sachets easy-bake yeast', ['yeast', '14 g']],
  ['1 x 397g tin condensed milk', ['condensed milk', '397 g']],
  ['2 – 3 tbsp cold milk', ['milk', '2.5 tbsp']],
  ['1 lb 10 oz strong white flour', ['flour', '1 lb + 10 oz']],
  ['5 fl oz double cream', ['cream', '5 fl oz']],
  ['2 tbsps caster sugar', ['caster sugar', '2 tbsp']],
  ['three tablespoons of melted lard', ['lard', '3 tbsp']],
  ['1½ kilos strong flour', ['flour', '1.5 kg']],
  ['100g mature cheddar, coarsely grated', ['cheddar', '100 g', 'coarsely grated']],
  ['6 soft dried apricots, chopped', ['apricot', '6 each', 'chopped']],
  ['1 egg, beaten, to glaze', ['egg', '1 each', 'to glaze']],
  ['vegetable oil, for the tin', ['oil', '', 'for the tin']],
  ['Fresh yeast: 15g (or 5g dried)', ['yeast', '15 g', 'or 5g dried']],
  // American and Canadian
  ['2 cups (240 g) all-purpose flour', ['flour', '240 g']],
  ['1 ½ tsp fine sea salt', ['salt', '1.5 tsp']],
  ['1/3 cup packed brown sugar', ['brown sugar', `${1 / 3} cup`]],
  ['3¾ cups bread flour, spooned and leveled', ['bread flour', '3.75 cup', 'spooned and leveled']],
  ['¾ cup + 2 tbsp water', ['water', '0.75 cup + 2 tbsp']],
  ['1 tablespoon plus 1 teaspoon sugar', ['sugar', '1 tbsp + 1 tsp']],
  ['Half a cup of molasses', ['molasses', '0.5 cup']],
  ['1 Tbsp. apple cider vinegar', ['vinegar', '1 tbsp']],
  ['4 oz. dark rye flour', ['rye', '4 oz']],
  ['1 1/2 pounds sweet potatoes, peeled', ['potato', '1.5 lb', 'peeled']],
  ['2 ripe bananas, mashed', ['banana', '2 each', 'mashed']],
  ['1 orange, zest only', ['orange', '1 each', 'zest only']],
  ['pinch of ground nutmeg', ['nutmeg', '0.3 g']],
  ['250 mL (1 cup) whole milk', ['milk', '250 ml']],
  // a baker's notebook and messages
  ['640 g water (71%)', ['water', '640 g']],
  ['Salt   18 g   1.8%', ['salt', '18 g']],
  ['Milk (scalded then cooled) – 260 g', ['milk', '260 g', 'scalded then cooled']],
  ['sunflower seeds 50g, toasted', ['sunflower', '50 g', 'toasted']],
  ['120-150g dried cranberries', ['cranberries', '135 g']],
  ['10 g salt + 3 g instant yeast', ['salt', '10 g'], ['yeast', '3 g']],
  [
    'Flour 1kg, water 700g, salt 20g, starter 200g',
    ['flour', '1 kg'],
    ['water', '700 g'],
    ['salt', '20 g'],
    ['starter', '200 g'],
  ],
  ['Mix 450 g flour with 300 g water and leave for 30 minutes.', ['flour', '450 g'], ['water', '300 g']],
  // French
  ['500 g de farine de blé T55', ['farine', '500 g']],
  ['30 cl d’eau tiède', ['eau', '300 ml']],
  ['2 c. à s. de miel liquide', ['miel', '2 tbsp']],
  ['1/2 c. à café de bicarbonate', ['bicarbonate', '0.5 tsp']],
  ['1 sachet (11 g) de levure chimique', ['levure', '11 g']],
  ['une pincée de cannelle', ['cannelle', '0.3 g']],
  ['3 œufs entiers, à température ambiante', ['œuf', '3 each', 'à température ambiante']],
  ['12,5 g de sel gris', ['sel', '12.5 g']],
  ['0,75 l de lait demi-écrémé', ['lait', '0.75 l']],
  ['Farine de seigle T130 : 250 g', ['seigle', '250 g']],
  ['de l’huile d’olive, pour le moule', ['huile', '', 'pour le moule']],
  ['75 g de beurre froid, coupé en dés', ['beurre', '75 g', 'coupé en dés']],
  [
    '1 kg de farine, plus un peu pour le plan de travail',
    ['farine', '1 kg', 'plus un peu pour le plan de travail'],
  ],
  ["100 g d'amandes effilées", ['amandes', '100 g']],
  ['2 à 3 cuillères à soupe d’eau froide', ['eau', '2.5 tbsp']],
  ['Eau 325 g (65 %)', ['eau', '325 g']],
  ['trois cuillères à soupe de lait en poudre', ['lait', '3 tbsp']],
  ['20g de levure de boulanger fraîche, émiettée', ['levure', '20 g', 'émiettée']],
  ['4 pommes, pelées et râpées', ['pommes', '4 each', 'pelées et râpées']],
  [
    'Mélangez 400 g de farine, 8 g de sel et 270 ml d’eau.',
    ['farine', '400 g'],
    ['sel', '8 g'],
    ['eau', '270 ml'],
  ],
]
