import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Formula } from '../../src/dough/document/formula.js'
import { finalDoughOf } from '../../src/dough/document/formula.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { knownUnits } from '../../src/dough/lexicon/unit-words.js'
import { arrive } from '../../src/index.js'
import { near } from '../assert.js'
import { formulaOf } from '../dough/notation.js'

const weightIn = (formula: Formula, ingredient: string): number | undefined =>
  openFormula(formula).weight(finalDoughOf(formula).name, ingredient)

/** What an amount of an ingredient weighs as a baker types it, in a line of a recipe, and in a cell of a table. */
function threeWays(
  amount: string,
  ingredient: string,
): Record<'typed' | 'recipe' | 'table', number | undefined> {
  const sheet = openFormula(
    formulaOf(`
      Final dough:
        Bread flour = 1000 g
        ${ingredient} = 1 g
    `),
  )
  sheet.enter('Final dough', ingredient, amount.includes('%') ? 'percent' : 'weight', amount)
  const recipe = arrive(`1000 g Bread flour\n${amount} ${ingredient}\n`, { as: 'recipe' })
  const table = arrive(`Ingredient;Amount\nBread flour;1000 g\n${ingredient};${amount}\n`, { as: 'table' })
  return {
    typed: sheet.weight('Final dough', ingredient),
    recipe: weightIn(recipe.formulas[0]!, ingredient),
    table: weightIn(table.formulas[0]!, ingredient),
  }
}

for (const [words, meaning] of knownUnits) {
  if (words.length === 1 && words === '%') continue
  const unit = meaning.kind === 'unit' ? meaning.unit : 'each'
  const ingredient = unit === 'each' ? 'Egg' : unit === 'stick' ? 'Butter' : 'Water'
  test(`2 ${words} of ${ingredient} weigh the same wherever they are read`, () => {
    const { typed, recipe, table } = threeWays(`2 ${words}`, ingredient)
    assert.ok(typed !== undefined && typed > 0)
    near(recipe, typed, 1e-9 * typed, 'in a recipe')
    near(table, typed, 1e-9 * typed, 'in a table')
  })
}

/** Amount → grams by exact fractions, of water (1 g a ml; a teaspoon 4.929 g, a tablespoon 14.787, a cup 236.588). */
const amounts: readonly (readonly [amount: string, over: number, under: number])[] = [
  ['1,5 kg', 1500, 1],
  ['1.234,5 g', 2469, 2],
  ['70,5 %', 705, 1],
  ['2 dl', 200, 1],
  ['3 cl', 30, 1],
  ['1 lb 4 oz', 453592370 * 5, 1000000 * 4],
  ['1½ kg', 1500, 1],
  ['1 1/2 kg', 1500, 1],
  ['2 c. à s.', 14787, 500],
  ['2 EL', 14787, 500],
  ['2 Esslöffel', 14787, 500],
  ['1 cup 2 tbsp', 266162, 1000],
  ['half a cup', 59147, 500],
  ['eineinhalb Liter', 1500, 1],
  ['une demi-livre', 250, 1],
  ['ein Pfund', 500, 1],
  ['~20 g', 20, 1],
  ['ca. 20 g', 20, 1],
  ['a pinch', 3, 10],
]
for (const [amount, over, under] of amounts)
  test(`${amount} comes to ${over}/${under} g wherever it is read`, () => {
    for (const [where, grams] of Object.entries(threeWays(amount, 'Water')))
      near(grams, over / under, (1e-9 * over) / under, where)
  })
