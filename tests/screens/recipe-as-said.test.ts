import assert from 'node:assert/strict'
import { test } from 'node:test'
import { type LineSaid, methodShown, recipeFormula } from '../../components/bring-in/recipes/recipe-draft.js'
import { readRecipe } from '../../src/exchange/index.js'
import { text } from '../exchange/notation.js'

const recipe = text`
  Field loaf

  Levain
  20 g ripe starter
  50 g bread flour
  50 g water

  Dough
  1000 g bread flour
  680 g water
  120 g levain
  22 g salt
  20 g malt

  Method
  1. Mix the flour and the water and rest 40 minutes.
  2. Work in the levain, the salt and the malt for 5 minutes.
  3. Bulk ferment 4 hours.
  4. Bake 45 minutes at 240 °C.`

const { formula, lines, steps } = readRecipe(recipe)
const lineOf = (ingredient: string) => formula.stages.at(-1)!.lines.find(l => l.ingredient === ingredient)!

/** What the steps of the dough say, as they are shown and as they are added, once something was said of its lines. */
function said(of: Readonly<Record<string, LineSaid>>) {
  const said = new Map(Object.entries(of).map(([ingredient, what]) => [lineOf(ingredient).id, what]))
  const shown = methodShown(formula.stages.at(-1)!, new Map(), said)
  const added = recipeFormula(formula, lines, said, '', steps).stages.at(-1)!.method!
  assert.deepEqual(
    added.map(step => step.text),
    shown.map(step => step.text),
  )
  return shown.map(({ text }) => text)
}

test('a line that is left out of a recipe is added by none of its steps', () => {
  const texts = ['', '40 min', '5 min, adds Levain, Salt, malt', '4 h', '45 min, at 240 °C']
  const others = (adding: string) => texts.with(2, adding)
  assert.deepEqual(said({}), texts)
  assert.deepEqual(said({ malt: { isOut: true } }), others('5 min, adds Levain, Salt'))
  assert.deepEqual(said({ Levain: { isOut: true } }), others('5 min, adds Salt, malt'))
  assert.deepEqual(
    said({ Levain: { isOut: true }, Salt: { isOut: true }, malt: { isOut: true } }),
    others('5 min'),
  )
})

test('one that is called otherwise is so in its steps', () => {
  assert.equal(said({ Salt: { ingredient: 'Sea salt' } })[2], '5 min, adds Levain, Sea salt, malt')
  assert.equal(
    said({ Salt: { ingredient: 'Sea salt' }, malt: { isOut: true } })[2],
    '5 min, adds Levain, Sea salt',
  )
})
