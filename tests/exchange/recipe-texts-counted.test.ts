import { text } from './notation.js'
import { dough, list, type TextCase, testArrivals } from './texts-and-stages.js'

const cases: readonly TextCase[] = [
  ...[
    ['1- Mix everything', '2- 2 h rise', '3- 6 rounds of 140 gr, rest 20', '4- bake at 240C 18 min'],
    ['1 Mix the flour and 340 g water', '2 Add 10 g salt', '3 Rise 2 hrs. Shape.', '4 Bake 40 mins'],
    ['1', 'Mix flour and water.', '2', 'Add 10 g salt and 340 g water.', '3', 'Bake for 40 minutes.'],
  ].map(
    (steps): TextCase => [
      `“${steps.at(-1)}” and what is counted with it are steps`,
      `Mill rounds\n\n${list}\n\n${steps.join('\n')}`,
      `Final dough: ${dough}`,
    ],
  ),
  [
    'ingredients that are counted are lines',
    'Mill loaf\n\n1. 500 g bread flour\n2. 340 g water\n3. 10 g salt\n\nMix and bake 40 minutes.',
    `Final dough: ${dough}`,
  ],
  [
    'a row whose figures are all facts is no line, whatever it begins with',
    `MILL MICHE\nMill miche — total flour 500 g, hydration 68 %, prefermented flour 15 %\n\n${list}`,
    `Final dough: ${dough}`,
  ],
  [
    'a dash behind a heading is as good as a colon',
    text`
    MILL RINGS

    Dough -
    bread flour, 500 g
    water, 340 g
    salt, 10 g

    Bath -
    water, 3 l
    honey, 20 g`,
    'Bath: water 3 l, honey 20 g',
    'Dough: bread flour 500 g, water 340 g, salt 10 g',
  ],
  [
    'a heading may stand in brackets',
    text`
    Mill buns

    [Loaf]
    bread flour: 500g
    water: 340g
    salt: 10g

    [Crust]
    sugar: 60g
    butter: 40g`,
    'Crust: Sugar 60 g, Butter 40 g',
    `Loaf: ${dough}`,
  ],
  [
    'a long remark in brackets leaves a heading one',
    text`
    Mill slipper

    Poolish (stir this together on the evening before you bake, and leave it where it is warm)
    100 g bread flour
    100 g water

    Dough
    400 g bread flour
    all of the poolish
    8 g salt`,
    'Poolish: Bread flour 100 g, Water 100 g',
    'Dough: Bread flour 400 g, Poolish 200 g, Salt 8 g',
  ],
  [
    'stages that are counted are taken by their number',
    text`
    Brackwater rye

    Stage 1 (Freshening) 5 hrs @ 26C
    20 g rye starter
    40 g rye flour
    40 g water

    Stage 2 (Basic) 8 hrs @ 24C
    All of stage 1
    100 g rye flour
    80 g water

    Final dough
    All of stage 2 minus 20 g
    250 g rye flour
    10 g salt`,
    'Stage 1: Rye starter 20 g, rye flour 40 g, Water 40 g',
    'Stage 2: Stage 1 100 g, rye flour 100 g, Water 80 g',
    'Final dough: Stage 2 260 g, rye flour 250 g, Salt 10 g',
  ],
  [
    'doughs that are counted are stages',
    text`
    Brackwater crown

    1st dough (evening)
    200 g bread flour
    90 g water

    2nd dough (morning)
    1st dough, all
    100 g bread flour
    6 g salt`,
    '1st dough: Bread flour 200 g, Water 90 g',
    '2nd dough: 1st dough 290 g, Bread flour 100 g, Salt 6 g',
  ],
  [
    'two lists that stand side by side are read one beside the other',
    text`
    2 cups rye flour            1 tbsp honey
    3 cups bread flour          2 tbsp butter
    2 tsp salt                  1 cup water

    Mix and bake 40 minutes.`,
    'Final dough: rye flour 2 cup, Honey 1 tbsp, Bread flour 3 cup, Butter 2 tbsp, Salt 2 tsp, Water 1 cup',
  ],
  ...['Total flour 500 g, hydration 68%, prefermented flour 12%', 'Loss in oven ≈ 12 %'].map(
    (row): TextCase => [`“${row}” is no line`, `Mill loaf\n\n${row}\n\n${list}`, `Final dough: ${dough}`],
  ),
  [
    'an article before a piece counts nothing that is told',
    `I keep a piece back for the next bake.\n\n${list}`,
    `Final dough: ${dough}`,
  ],
  [
    'a column of parts stands before that of the ingredients',
    text`
    Component	Ingredient	Qty	Unit
    Dough	Bread flour	500	g
    Dough	Water	340	g
    Dough	Salt	10	g
    Glaze	Milk	50	ml
    Glaze	Honey	10	g`,
    'Glaze: Milk 50 ml, Honey 10 g',
    `Dough: ${dough}`,
  ],
  [
    'the frame of a sheet is none of its cells',
    text`
    Sheet1
    	A	B	C
    1		grams	%
    2	Bread flour	500	100
    3	Water	340	68
    4	Salt	10	2`,
    `Final dough: ${dough}`,
  ],
  [
    'columns of stages may end with what they come to',
    text`
    MILL LOAF

    	Levain	Final Dough	Total Formula
    Bread flour	100 g	400 g	500 g
    Water	100 g	240 g	340 g
    Salt		10 g	10 g
    Levain		200 g	`,
    'Levain: Bread flour 100 g, Water 100 g',
    'Final Dough: Bread flour 400 g, Water 240 g, Salt 10 g, Levain 200 g',
  ],
]

testArrivals(cases)
