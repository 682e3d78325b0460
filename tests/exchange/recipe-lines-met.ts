import type { RecipeLineCase } from './recipe-lines.js'

/** Lines in the ways of other kitchens' pages: glued, starred, measured twice, turned round. */
export const linesMet: readonly RecipeLineCase[] = [
  // two measures of one amount side by side are one amount
  ['2 cups 474ml water', 'Water | 474 ml | 2 cups as written = Also given as 2 cups: 0.174 % less'],
  ['3 1/2 oz 100 g butter', 'Butter | 100 g | 3 1/2 oz as written = Also given as'],
  ['1 lb 450 g bread flour', 'Bread flour | 450 g | 1 lb as written = Also given as'],
  ['8 oz 225 g strong flour', 'Strong flour | 225 g | 8 oz as written = Also given as'],
  ['1 tbsp 15 ml olive oil', 'Olive oil | 15 ml | 1 tbsp as written ? Also given as'],
  ['1 tasse 237 ml de lait', 'Lait | 237 ml | 1 tasse as written = Also given as'],
  // … but of one system the smaller is more of the same
  ['1 lb 4 oz strong flour', 'Strong flour | 1 lb + 4 oz |'],
  ['1 kg 250 g bread flour', 'Bread flour | 1 kg + 250 g |'],
  // a whole number glued to its part of one
  ['11/2 cups milk', 'Milk | 1 1/2 cup |'],
  ['21/4 tsp salt', 'Salt | 2 1/4 tsp |'],
  ['13/4 tasse de lait', 'Lait | 1 3/4 cup | ? was read as'],
  ['3/4 cup milk', 'Milk | 3/4 cup |'],
  // stars, footnotes and what is glued
  ['Salt* 10 g', 'Salt | 10 g |'],
  ['Water† 335* g', 'Water | 335 g |'],
  ['335* g water', 'Water | 335 g |'],
  ['500 g** bread flour', 'Bread flour | 500 g |'],
  ['Yeast0.5%', 'Yeast | 0.5% | ? say which it is'],
  ['Salt2%', 'Salt | 2% |'],
  ['Water350g', 'Water | 350 g |'],
  ['Sel fin‡ : 20 g', 'Sel fin | 20 g |'],
  ['10g* de sel', 'Sel | 10 g |'],
  // ranges of one unit
  ['3 to 6 oz grated cheese', 'cheese | 4.5 oz | 3 to 6 oz as written, grated ? is a range'],
  ['2 à 3 cl d’huile d’olive', 'Huile d’olive | 25 ml | 2 à 3 cl as written ? is a range'],
  // a per cent that is of a name
  ['500 g 100% whole rye flour', 'Whole rye flour | 500 g | 100%'],
  ['300 g 100 % rye starter', 'Rye starter | 300 g | 100 %'],
  // one or the other, and names turned round
  ['3 cups all-purpose or bread flour', 'All-purpose flour | 3 cup | or bread flour'],
  ['500 g all-purpose or bread flour', 'All-purpose flour | 500 g | or bread flour'],
  ['500 g Flour, Bread', 'Bread flour | 500 g |'],
  ['Flour, Bread 500 g', 'Bread flour | 500 g |'],
  ['Butter, Unsalted 60 g', 'Unsalted butter | 60 g |'],
  ['60 g Butter, Unsalted', 'Unsalted butter | 60 g |'],
  ['500 g de farine T65 ou T80', 'Farine T65 | 500 g | ou T80'],
  ['60 g de beurre ou de margarine', 'Beurre | 60 g | ou de margarine'],
  // French measures in full
  ['2 cuillères à table de miel', 'Miel | 2 tbsp |'],
  ['1 cuillère à table d’huile d’olive', 'Huile d’olive | 1 tbsp |'],
  ['4 cuillère(s) à soupe de sucre', 'Sucre | 4 tbsp |'],
  ['1 cuillère(s) à café de sel', 'Sel | 1 tsp |'],
  ['2 c.à s de sucre', 'Sucre | 2 tbsp |'],
  ['1 c.à c de sel', 'Sel | 1 tsp |'],
  ['1 c à table de miel', 'Miel | 1 tbsp |'],
  ['1 cuillère à thé de sel', 'Sel | 1 tsp |'],
  // asides make no lines of their own
  ['1 kg potatoes, cut into four pieces', 'Potatoes | 1 kg | cut into four pieces'],
  [
    '500 g apples, peeled, to yield about 4 cups',
    'apples | 500 g | peeled, to yield about 4 cups ? stands in',
  ],
  ['200 g water, reserved', 'Water | 200 g | reserved'],
  ['100 g de beurre, coupé en quatre morceaux', 'Beurre | 100 g | coupé en quatre morceaux'],
  ['cut into four pieces'],
  ['to yield about 4 cups'],
  ['reserved'],
  ['coupé en quatre morceaux'],
]
