import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Batch } from '../../src/dough/document/batch.js'
import { labelOf } from '../../src/dough/label/label.js'
import type { ListName } from '../../src/dough/larder/allergen-lists.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { type LabelBlocks, labelBlocks } from '../../src/exchange/label/label-blocks.js'
import { labelHtml } from '../../src/exchange/label/label-html.js'
import { labelText } from '../../src/exchange/label/label-text.js'
import { american, european } from '../../src/exchange/label/rounding.js'
import { formulaOf, workedCheck } from '../dough/notation.js'

const batch: Batch = { make: 'pieces', pieces: [{ count: 6, weight: 900 }], bakeLoss: 0.13 }

const blocksFor = (
  way: ListName,
  text = workedCheck,
  made: Batch = batch,
  name = 'Mill wheat',
): LabelBlocks => labelBlocks(labelOf(openSheet({ ...formulaOf(text), name, batch: made }), way))

// Each side of every limit of the two rules, as they are printed.
for (const [rule, say, figures] of [
  [
    'EU, energy',
    european.energy,
    [
      [0.4, '0'],
      [979.5, '980'],
      [980.49, '980'],
    ],
  ],
  [
    'EU, fat and the like',
    european.nutrient,
    [
      [0, '0 g'],
      [0.5, '<0.5 g'],
      [0.51, '0.5 g'],
      [1.25, '1.3 g'],
      [9.94, '9.9 g'],
      [9.96, '10 g'],
      [45.5, '46 g'],
    ],
  ],
  [
    'EU, saturates',
    european.saturates,
    [
      [0.1, '<0.1 g'],
      [0.11, '0.1 g'],
      [3.44, '3.4 g'],
      [11.6, '12 g'],
    ],
  ],
  [
    'EU, salt',
    european.salt,
    [
      [0, '0 g'],
      [0.0125, '<0.01 g'],
      [0.013, '0.01 g'],
      [0.994, '0.99 g'],
      [0.996, '1.0 g'],
      [1.2271, '1.2 g'],
    ],
  ],
  [
    'US, calories',
    american.calories,
    [
      [4.9, '0'],
      [5, '5'],
      [47.4, '45'],
      [50, '50'],
      [51, '50'],
      [55, '60'],
      [236.25, '240'],
    ],
  ],
  [
    'US, fat',
    american.fat,
    [
      [0.49, '0 g'],
      [0.5, '0.5 g'],
      [1.19, '1 g'],
      [1.25, '1.5 g'],
      [4.9, '5 g'],
      [22.9, '23 g'],
    ],
  ],
  [
    'US, sodium',
    american.sodium,
    [
      [4.9, '0 mg'],
      [7.4, '5 mg'],
      [137.6, '140 mg'],
      [141, '140 mg'],
      [490.87, '490 mg'],
    ],
  ],
  [
    'US, carbohydrate and the like',
    american.nutrient,
    [
      [0.49, '0 g'],
      [0.5, 'less than 1 g'],
      [0.99, 'less than 1 g'],
      [1, '1 g'],
      [48.117, '48 g'],
    ],
  ],
] as const)
  test(`${rule}: figures are rounded as the rule has it`, () => {
    assert.deepEqual(
      figures.map(([value]) => say(value)),
      figures.map(([, said]) => said),
    )
  })

test('in Europe a label names allergens in capitals where it is plain text, and in bold where it is a page', () => {
  const label = blocksFor('eu')
  const text = labelText([label])
  assert.match(
    text,
    /^Mill wheat\n\nIngredients: Bread flour \(WHEAT\), Water, Wholemeal spelt \(WHEAT\), Salt\n/i,
  )
  assert.match(text, /\nNet weight: 783 g\n/)
  assert.match(
    text,
    /\nNutrition in 100 g of bread:\nEnergy {2,}980 kJ \/ 231 kcal\nFat {2,}1\.2 g\nCarbohydrate {2,}46 g\n/,
  )
  assert.match(
    text,
    / of which sugars {2,}0\.9 g\nFibre {2,}2\.5 g\nProtein {2,}8\.3 g\nSalt {2,}1\.2 g\nCalculated, not analysed/,
  )
  assert.match(
    labelHtml([label]),
    /<strong>Ingredients:<\/strong> bread flour \(<strong>wheat<\/strong>\), Water/i,
  )
})

test('in the United States a statement follows the list, and figures are those of 21 CFR 101.9', () => {
  const text = labelText([blocksFor('us')])
  assert.match(
    text,
    /Ingredients: Bread flour, Water, Wholemeal spelt, Salt\n\nContains: Wheat\n\nNet weight: 27\.6 oz \(783 g\)\n/i,
  )
  assert.match(text, /Calories {2,}240\nTotal Fat {2,}1 g\nSodium {2,}490 mg\nTotal Carbohydrate {2,}48 g\n/)
  assert.match(text, / Dietary Fiber {2,}2 g\n +Total Sugars +less than 1 g\nProtein {2,}8 g\n/)
  assert.match(text, /no Nutrition Facts panel/)
})

test('in Canada figures are given plainly, without the form of its table', () => {
  const text = labelText([blocksFor('canada')])
  assert.match(text, /Contains: Wheat\n/)
  assert.match(text, /Calories {2,}236\nFat {2,}1\.2 g\nCarbohydrate {2,}48\.1 g\n +Fibre {2,}2\.5 g\n/)
  assert.match(text, /in French as well/)
})

for (const way of ['eu', 'us', 'canada'] as const)
  test(`every label says that figures are calculated, who goes before and who decides: ${way}`, () => {
    const said = labelText([blocksFor(way)]).replace(/\s+/g, ' ')
    assert.match(said, /Calculated, not analysed/)
    assert.match(said, /What a supplier prints of an ingredient goes before/)
    assert.match(said, /Local food law decides/)
    assert.doesNotMatch(said, /\bfree\b|source of|\bhigh in\b|\bsafe\b/i)
  })

test('a bread without all its figures has no table, and says what lacks them', () => {
  const text = labelText([blocksFor('eu', 'Final dough:\n Emmer flour = 500 g\n Water = 300 g')])
  assert.doesNotMatch(text, /kJ/)
  assert.match(
    text.replace(/\s+/g, ' '),
    /No nutrition, because what is in it is not recorded: Emmer flour\./,
  )
})

for (const odd of ['=1+1', '<img src=x onerror=alert(1)>', 'a; =cmd()', '"quoted" & co', '@mill'])
  test(`an ingredient and a bread called ${odd} are text on a label`, () => {
    const label = blocksFor('eu', `Final dough:\n Bread flour = 500 g\n Water = 300 g`, batch, odd)
    const withOdd = { ...label, ingredients: [...label.ingredients, { text: `, ${odd}`, isAllergen: false }] }
    for (const line of labelText([withOdd]).split('\n'))
      assert.doesNotMatch(line, /^[=+\-@]|[;\t]\s*'*[=+\-@]/)
    assert.doesNotMatch(labelHtml([withOdd]), /<img|& co/)
  })
