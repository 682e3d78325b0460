import assert from 'node:assert/strict'
import { test } from 'node:test'
import { type LineSaid, recipeFormula } from '../../components/bring-in/recipes/recipe-draft.js'
import type { Line } from '../../src/dough/document/formula.js'
import { isUnconfirmed } from '../../src/dough/document/words.js'
import { readRecipe } from '../../src/exchange/index.js'
import { arrive } from '../../src/index.js'
import { text } from '../exchange/notation.js'

/** Texts whose doubtful lines are known by hand: a range, a pinch, an unsaid unit, a stage that no line takes. */
const recipes: readonly (readonly [recipe: string, doubtful: readonly string[]])[] = [
  [
    text`
      Mill loaf

      500 g bread flour
      340 g water
      10 g salt`,
    [],
  ],
  [
    text`
      Gate loaf

      500 g bread flour
      330-350 g water
      a pinch of instant yeast
      10 g salt`,
    ['Water', 'Instant yeast'],
  ],
  [
    text`
      Weir loaf

      Soaker
      80 g sunflower seeds
      80 g water

      Dough
      500 g bread flour
      300 g water
      10 g salt`,
    ['Soaker'],
  ],
]

const doubtfulIn = (lines: readonly Line[]) =>
  lines.flatMap(({ ingredient, note }) => (isUnconfirmed(note) ? [ingredient] : []))

for (const [recipe, doubtful] of recipes) {
  const { formula, lines } = readRecipe(recipe)
  const linesAdded = (said: ReadonlyMap<string, LineSaid>) =>
    recipeFormula(formula, lines, said, '').stages.flatMap(stage => stage.lines)

  test(`${formula.name}: what was guessed and not confirmed is marked on its line, and nothing else`, () => {
    const added = linesAdded(new Map())
    assert.deepEqual(doubtfulIn(added), doubtful)
    for (const { note, source } of added)
      if (isUnconfirmed(note))
        assert.ok(!source || note.endsWith(`Not confirmed: read from “${source}”`), note)
    assert.equal(recipeFormula(formula, lines, new Map(), '').note, formula.note)
  })

  test(`${formula.name}: what was said to be right is not marked`, () => {
    const right = new Map(lines.map(({ id }) => [id, { isRight: true }]))
    assert.deepEqual(doubtfulIn(linesAdded(right)), [])
  })
}

test('a long row is quoted by its beginning', () => {
  const row = `330-350 g water ${'that stood in the mill race overnight '.repeat(5)}`
  const { formula, lines } = readRecipe(`Race loaf\n\n500 g bread flour\n${row}\n10 g salt`)
  const added = recipeFormula(formula, lines, new Map(), '').stages.flatMap(stage => stage.lines)
  const note = added.find(line => isUnconfirmed(line.note))!.note
  const quoted = /read from “(.*)”$/.exec(note)![1]!
  assert.equal(quoted.length, 121)
  assert.ok(row.startsWith(quoted.slice(0, -1)) && quoted.endsWith('…'), quoted)
})

/** The lines of a pasted table as they are added, with what each is marked with. */
function tableAdded(table: string): string[] {
  const { formulas } = arrive(table)
  const lines = formulas.flatMap(formula => formula.stages.flatMap(stage => stage.lines))
  return lines.flatMap(({ ingredient, note }) => (isUnconfirmed(note) ? [`${ingredient}: ${note}`] : []))
}

test('a stage of a table that no line takes is marked on the line that was added for it', () => {
  const table =
    'Stage;Ingredient;Weight g\nSoaker;Oats;80\n;Water;120\nDough;Bread flour;500\n;Water;320\n;Salt;10'
  assert.deepEqual(tableAdded(table), ['Soaker: Not confirmed: added, as no line took it'])
})

test('a number of a table whose sign is doubtful is marked on its line', () => {
  const table = 'Ingredient;Weight g\nBread flour;1,000\nWater;690\nSalt;21'
  assert.deepEqual(tableAdded(table), ['Bread flour: Not confirmed: read from “1,000”'])
})
