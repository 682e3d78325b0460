import assert from 'node:assert/strict'
import { test } from 'node:test'
import { arrive } from '../../src/exchange/arriving/arrive.js'
import { text } from './notation.js'
import { dough, list, type TextCase, testArrivals } from './texts-and-stages.js'

const cases: readonly TextCase[] = [
  [
    'of a stage that is counted some may be kept, with a word on what for',
    text`
    Mill rye

    Stage 1 (evening) 8 h @ 24C
    100 g rye flour
    100 g water
    20 g rye starter

    Stage 2 (morning) 3 h @ 28C
    All of stage 1 minus 20 g for the jar in the fridge
    300 g rye flour
    200 g water
    8 g salt`,
    'Stage 1: rye flour 100 g, Water 100 g, Rye starter 20 g',
    'Stage 2: Stage 1 200 g, rye flour 300 g, Water 200 g, Salt 8 g',
  ],
  [
    'steps with their numbers on rows of their own repeat amounts of a list in two rows each',
    text`
    Mill rounds

    Bread flour
    500 g
    Water
    340 g
    Salt
    10 g

    1
    Mix flour and water. Rest 30 minutes.
    2
    Add 10 g salt. Knead 5 minutes.`,
    `Final dough: ${dough}`,
  ],
  ...['All weights in grams.', '(all g)', 'Ingredients (g)', 'Ingredient\tGrams\t%'].map(
    (said): TextCase => [
      `under “${said}” a bare number is of grams`,
      `Mill rye\n\n${said}\nRye flour 200\nRye culture 20\nWater 160`,
      'Final dough: Rye flour 200 g, Rye culture 20 g, Water 160 g',
    ],
  ),
  [
    'few eggs among grams are counted',
    'Mill buns\nall in grams\n\nflour 400\nmilk 200\neggs 2\nbutter 60',
    'Final dough: flour 400 g, Milk 200 g, Eggs 2 each, Butter 60 g',
  ],
  [
    'who tells of grams may tell them in a sentence',
    'For the mill loaf: 500 bread flour, 340 water, 10 salt. All in grams. Mix, rest, shape, bake.',
    `Final dough: ${dough}`,
  ],
  ...['1:2:2 – ', '1:5 - '].map(
    (ratio): TextCase => [
      `“${ratio}” before an amount is a ratio`,
      `Mill loaf\n\nLevain\n${ratio}20 g starter\n40 g bread flour\n40 g water\n\nDough\n${list}\nall of the levain`,
      'Levain: Starter 20 g, Bread flour 40 g, Water 40 g',
      `Dough: ${dough}, Levain 100 g`,
    ],
  ),
  [
    'an amount behind a name and a colon may be spoken of',
    text`
    Mill loaf

    Bread flour: 500 g
    Water: 340 g to begin, then up to 30 g more
    Salt: 10 g`,
    `Final dough: ${dough}`,
  ],
  ...(
    [
      ['Finish', 'Finish'],
      ['To finish', 'To finish'],
      ['For finishing', 'Finishing'],
      ['Finishing', 'Finishing'],
    ] as const
  ).map(
    ([heading, name]): TextCase => [
      `“${heading}” is a heading over lines`,
      `Mill buns\n\nDough\n${list}\n\n${heading}\n60 g butter, melted\n40 g sugar\n\nKnead, rest, shape and bake.`,
      `${name}: Butter 60 g, Sugar 40 g`,
      `Dough: ${dough}`,
    ],
  ),
  [
    'what a sentence says again of an amount is no further line',
    'Take a pound of bread flour and half an ounce of salt. Mix with ten ounces of water. The half ounce of salt matters, so weigh it.',
    'Final dough: Bread flour 1 lb, Salt 1/2 oz, Water 10 oz',
  ],
  [
    'a number behind a measure is of the same measure',
    'Warm half a pint of milk with one tablespoonful of butter and two of honey. Stir in three cups of bread flour and one teaspoonful of salt.',
    'Final dough: Milk 1 cup, Butter 1 tbsp, Honey 2 tbsp, Bread flour 3 cup, Salt 1 tsp',
  ],
  [
    'a quart is a measure in English',
    'Mill rusks\n\na quart of milk\ntwo quarts of water\none-fourth cup butter\nthree-fourths cup honey',
    'Final dough: Milk 4 cup, Water 8 cup, Butter 1/4 cup, Honey 3/4 cup',
  ],
  [
    'old measures and pieces nobody can weigh are asked for, and not lost',
    'Mill rusks\n\n500 g bread flour\nhalf a yeast-cake\na gill of milk\n1 vanilla pod\ntwo tea-cups of sugar',
    'Final dough: Bread flour 500 g, yeast, Milk, vanilla pod 1 each, Sugar',
  ],
  [
    'as much as is needed is asked for',
    'Rub 60 g of butter into 500 g of bread flour and wet it with as much milk as will make a soft dough.',
    'Final dough: Butter 60 g, Bread flour 500 g, Milk',
  ],
  [
    'what goes on the bread may first be met in the method',
    `Mill rolls\n\n${list}\n\nMethod\nKnead, rest and shape.\nEgg wash: 1 egg, 1 tbsp milk\nBake at 200 °C for 20 min.`,
    'Egg wash: Egg 1 each, Milk 1 tbsp',
    `Final dough: ${dough}`,
  ],
  [
    'what a heading above has is not met again in the method',
    `Mill rolls\n\nDough\n${list}\n\nEgg wash\n1 egg\n1 tbsp milk\n\nMethod\nKnead, rest and shape.\nEgg wash: 1 egg, 1 tbsp milk\nBake at 200 °C for 20 min.`,
    'Egg wash: Egg 1 each, Milk 1 tbsp',
    `Dough: ${dough}`,
  ],
  [
    'a list may say of how many ingredients it is',
    `Mill loaf\n\n• Only 3 ingredients that everybody has\n\n${list}`,
    `Final dough: ${dough}`,
  ],
  [
    'cells count by size and by ea',
    'Ingredient\tQty\tUnit\nBread flour\t500\tg\nEgg\t2\tlarge\nLemon\t3\tea\nSalt\t10\tg',
    'Final dough: Bread flour 500 g, Egg 2 each, Lemon 3 each, Salt 10 g',
  ],
  [
    'dots in the middle of a row part its ingredients, and what is said in brackets gives no order',
    'Levain\nBread flour 50 g · Water 50 g · Rye starter 10 g\n\nDough\nBread flour 450 g · Water 300 g · Salt 10 g · Levain 100 g (keep 10 g for the jar)',
    'Levain: Bread flour 50 g, Water 50 g, Rye starter 10 g',
    'Dough: Bread flour 450 g, Water 300 g, Salt 10 g, Levain 100 g',
  ],
  [
    'a stage named with its article stands by itself before amounts',
    'Mill rye\n\nsour: 80 g rye flour, 80 g water\ndough: the sour, 300 g bread flour, 200 g water, 8 g salt, tsp caraway',
    'Sour: rye flour 80 g, Water 80 g',
    'Dough: Sour 160 g, Bread flour 300 g, Water 200 g, Salt 8 g, Caraway 1 tsp',
  ],
  [
    'a tin is no ingredient',
    'Take a pound of bread flour and two teaspoons of salt. Mix with ten ounces of water, rest, and bake in a 2 lb tin.',
    'Final dough: Bread flour 1 lb, Salt 2 tsp, Water 10 oz',
  ],
  ...['Balls at 280 g', 'Rolls @ 90 g'].map(
    (row): TextCase => [`“${row}” is no line`, `Mill rounds\n\n${list}\n${row}`, `Final dough: ${dough}`],
  ),
  [
    'stages may be counted in French',
    'Pain de fête\n\n1er impasto (soir)\n200 g de farine\n100 g de beurre\n\n2e impasto (matin)\nla totalité du 1er impasto\n150 g de sucre\n5 g de sel',
    '1er impasto: farine 200 g, Beurre 100 g',
    '2e impasto: 1er impasto 300 g, Sucre 150 g, Sel 5 g',
  ],
  [
    'what is for the top stands in a list of its own',
    `Mill flat bread\n\nDough\n${list}\n\nTo top: flaky salt, 3 tbsp olive oil, 100 g walnuts`,
    'To top: Salt, Olive oil 3 tbsp, Walnuts 100 g',
    `Dough: ${dough}`,
  ],
  [
    'a single ingredient behind the name of what it is for',
    'Mill rolls\nDETREMPE: bread flour 1000 g, milk 500 g, salt 20 g\nTOURAGE: butter 500 g',
    'Tourage: Butter 500 g',
    'Detrempe: Bread flour 1000 g, Milk 500 g, Salt 20 g',
  ],
  [
    'what may be left out says so before its amount',
    'Mühlenbrot\n\n500 g bread flour\n340 g water\n10 g salt\nevtl. 5 g honey',
    `Final dough: ${dough}, Honey 5 g`,
  ],
  [
    'a dough for bread has its ingredients behind its name',
    'Gâteau du moulin\nPâte à pain : 300 g de farine, 180 g d’eau, 6 g de sel\nBeurre 100 g',
    'Pâte à pain: farine 300 g, Eau 180 g, Sel 6 g, Beurre 100 g',
  ],
  [
    'what is written short, pinches behind names, tips of yeast, and a state behind a yeast',
    'Mill rolls\n\n3 cups bread flour\n2 lg. eggs\nsugar pinch\n1 tbsp active dry yeast dissolved\nune pointe de levure',
    'Final dough: Bread flour 3 cup, Large egg 2 each, Sugar 0.3 g, Active dry yeast 1 tbsp, levure',
  ],
  [
    'what is for use without an amount ends a list',
    `${list.replaceAll('\n', ', ')}, semolina for dusting`,
    `Final dough: ${dough}, Semolina`,
  ],
  [
    'what goes on a bread may have no amounts',
    `Mill rounds\n\nDough\n${list}\n\nTopping: sesame seeds, poppy seeds`,
    'Topping: Sesame seeds, Poppy seeds',
    `Dough: ${dough}`,
  ],
  [
    'a number between two columns that gaps hold apart is of the nearer',
    'Mill    white      kg\nBread flour      25\nWater          17.5\nSalt            0.5',
    'Final dough: Bread flour 25 kg, Water 17.5 kg, Salt 0.5 kg',
  ],
  ...['\tkg', 'Mill white (kg)', 'Mill white\tkg', 'all weights in kg'].map(
    (said): TextCase => [
      `“${said}” over numbers is their unit`,
      `${said}\nBread flour\t25\nWater\t17.5\nSalt\t0.5`,
      'Final dough: Bread flour 25 kg, Water 17.5 kg, Salt 0.5 kg',
    ],
  ),
  [
    'a letter behind the name of a product is no measure',
    'Product: Mill white\tCode: 12\tRev C\nIngredient\t%\tkg\nBread flour\t100\t25.0\nWater\t70\t17.5\nSalt\t2\t0.5',
    'Final dough: Bread flour 25.0 kg, Water 17.5 kg, Salt 0.5 kg',
  ],
  ...['Total: 860 g → 2 × 430 g', 'temp - 450'].map(
    (row): TextCase => [
      `“${row}” below a list is no line`,
      `Mill loaf\n\n${list}\n${row}`,
      `Final dough: ${dough}`,
    ],
  ),
  [
    'ounces may be said of all numbers of a list',
    'Mill white\n\nIngredients (oz)\nBread flour 25\nWater 17.5\nSalt 0.5',
    'Final dough: Bread flour 25 oz, Water 17.5 oz, Salt 0.5 oz',
  ],
  [
    'a table may lie across, a stage in each row',
    'Mill rye\n\n\tRye flour\tWater\tMore\nFreshening\t20 g\t30 g\t10 g rye starter\nDough\t400 g\t260 g\tall of freshening; 9 g salt',
    'Freshening: Rye flour 20 g, Water 30 g, Rye starter 10 g',
    'Dough: Rye flour 400 g, Water 260 g, Freshening 60 g, Salt 9 g',
  ],
]

testArrivals(cases)

test('of a table that lies across each row may be a bread', () => {
  const { formulas } = arrive(
    'Bread,Bread flour,Water,Salt,Honey\nMill loaf,1000,700,20,0\nSweet mill loaf,500,300,9,40',
  )
  assert.deepEqual(
    formulas.map(({ name, stages }) => [
      name,
      ...stages.flatMap(({ lines }) => lines.map(({ ingredient, amount }) => `${ingredient} ${amount}`)),
    ]),
    [
      ['Mill loaf', 'Bread flour 1000 g', 'Water 700 g', 'Salt 20 g', 'Honey 0 g'],
      ['Sweet mill loaf', 'Bread flour 500 g', 'Water 300 g', 'Salt 9 g', 'Honey 40 g'],
    ],
  )
})
