// work is counted from here on
import { test } from 'node:test'
import { readRecipe } from '../../src/exchange/recipe/index.js'
import { growsInStep } from '../work.js'
import { recipeLines } from './recipe-lines.js'
import { recipeTexts } from './recipe-texts.js'

const rows = {
  'lines of many styles': recipeLines.filter((_, at) => at % 4 === 0).map(([text]) => text),
  'lines of one style': ['500 g bread flour (sifted), lukewarm'],
  'whole recipes': Object.values(recipeTexts).flatMap(text => text.split('\n')),
  'headings without lines': ['Levain:', '', 'For the dough'],
  'names and amounts on rows of their own': ['Bread flour', '500 g'],
  'takings of a stage': ['Levain', '20 g starter', '', 'Dough', '100 g levain', 'the rest of the levain', ''],
  sentences: ['Mix 20 g of salt with 500 g flour and knead it for 10 minutes until smooth.'],
  'short rows': ['a', '(', '1'],
}
for (const [what, some] of Object.entries(rows))
  test(`twice as many rows of ${what} are twice the work to read`, () => {
    const count = Math.max(some.length, 240)
    growsInStep(
      times =>
        void readRecipe(Array.from({ length: count * times }, (_, i) => some[i % some.length]!).join('\n')),
      2,
    )
  })
