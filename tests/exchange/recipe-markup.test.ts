import assert from 'node:assert/strict'
import { test } from 'node:test'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { recipeMarkup, recipeScript } from '../../src/exchange/text/recipe-markup.js'
import { formulaOf, workedCheck } from '../dough/notation.js'
import { randomOf } from '../random.js'
import { anyFormula } from './any-formula.js'

const mill = {
  ...formulaOf(workedCheck),
  name: 'Mill wheat',
  note: 'Mix until smooth. Fold twice, 30 min apart. Bake in a hot pot.',
}

/** The JSON that a browser would find in the script element. */
function inScript(html: string): Record<string, unknown> {
  const found = /^<script type="application\/ld\+json">\n([\s\S]*)\n<\/script>\n$/.exec(html)
  assert.ok(found)
  assert.doesNotMatch(found[1]!, /[<>&]/)
  return JSON.parse(found[1]!) as Record<string, unknown>
}

test('a formula is a schema.org Recipe with its stages and note as steps', () => {
  assert.deepEqual(recipeMarkup(openFormula(mill)), {
    '@context': 'https://schema.org',
    '@type': 'Recipe',
    name: 'Mill wheat',
    recipeYield: '1921 g of dough',
    recipeIngredient: [
      '40 g ripe starter, for Levain',
      '100 g bread flour, for Levain',
      '80 g water, for Levain',
      '820 g bread flour',
      '180 g wholemeal spelt',
      '690 g water',
      '21 g salt',
    ],
    recipeInstructions: [
      {
        '@type': 'HowToStep',
        name: 'Levain',
        text: 'Levain: weigh 40 g ripe starter, 100 g bread flour and 80 g water.',
      },
      {
        '@type': 'HowToStep',
        name: 'Final dough',
        text: 'Final dough: weigh 820 g bread flour, 180 g wholemeal spelt, 690 g water, 21 g salt and 210 g levain.',
      },
      { '@type': 'HowToStep', text: 'Mix until smooth.' },
      { '@type': 'HowToStep', text: 'Fold twice, 30 min apart.' },
      { '@type': 'HowToStep', text: 'Bake in a hot pot.' },
    ],
  })
})

test('a batch gives the yield and the weights', () => {
  const recipe = recipeMarkup(
    openFormula({ ...mill, batch: { make: 'pieces', pieces: [{ count: 6, weight: 900 }] } }),
  )
  assert.equal(recipe.recipeYield, '6 pieces of 900 g of dough')
  assert.equal(recipe.recipeIngredient.at(-1), '59 g salt')
})

test('lines of a note are steps, without their bullets and numbers', () => {
  const { recipeInstructions } = recipeMarkup(openFormula({ ...mill, note: '1. Mix. Rest.\n\n- Bake' }))
  assert.deepEqual(
    recipeInstructions.slice(2).map(step => step.text),
    ['Mix. Rest.', 'Bake'],
  )
})

test('a stage is mixed where no note says what to do: neither how much it makes nor a guess is a step', () => {
  const { recipeInstructions } = recipeMarkup(
    openFormula({
      ...mill,
      note: 'Makes 2 loaves.\nNot confirmed in Dough: Salt, 0.3 g, guessed from “a pinch of salt”',
    }),
  )
  assert.deepEqual(
    recipeInstructions.map(step => step.text),
    [
      'Levain: mix 40 g ripe starter, 100 g bread flour and 80 g water.',
      'Final dough: mix 820 g bread flour, 180 g wholemeal spelt, 690 g water, 21 g salt and 210 g levain.',
    ],
  )
})

test('times stand where a note states them, those of a step in a direction', () => {
  const [levain, dough] = mill.stages
  const [flour, ...others] = dough!.lines
  const timed = {
    ...mill,
    note: 'Proof 2 h 30. Shape. Bake at 240 °C for 40 min.\nTotal time: 18 h',
    stages: [levain!, { ...dough!, lines: [{ ...flour!, note: 'autolyse 1 hour' }, ...others] }],
  }
  const recipe = recipeMarkup(openFormula(timed))
  assert.equal(recipe.cookTime, 'PT40M')
  assert.equal(recipe.totalTime, 'PT18H')
  assert.equal(recipe.prepTime, undefined)
  const text =
    'Final dough: weigh 820 g bread flour (autolyse 1 hour), 180 g wholemeal spelt, 690 g water, 21 g salt and 210 g levain.'
  assert.deepEqual(recipe.recipeInstructions[1], {
    '@type': 'HowToStep',
    name: 'Final dough',
    text,
    itemListElement: [
      { '@type': 'HowToDirection', text },
      { '@type': 'HowToDirection', text: 'bread flour: autolyse 1 hour', performTime: 'PT1H' },
    ],
  })
  assert.deepEqual(
    recipe.recipeInstructions.map(step => step.itemListElement?.at(-1)?.performTime),
    [undefined, 'PT1H', undefined, undefined],
  )
  const inSentences = recipeMarkup(openFormula({ ...mill, note: 'Proof 2 h 30. Shape. Bake 40 min.' }))
  assert.deepEqual(
    inSentences.recipeInstructions.map(step => step.itemListElement?.at(-1)?.performTime),
    [undefined, undefined, 'PT2H30M', undefined, 'PT40M'],
  )
})

test('nothing in a formula ends the script element that holds it', () => {
  const name = '</script><script>alert(1)</script><!-- ]]>'
  const html = recipeScript(openFormula({ ...mill, name, note: name }))
  assert.equal(inScript(html).name, name)
  assert.equal(html.match(/<\/script/g)!.length, 1)
})

test('whatever a formula is made of, its markup is JSON with the properties of a Recipe (seed 61)', () => {
  const random = randomOf(61)
  for (let i = 0; i < 300; i++) {
    const recipe = inScript(recipeScript(openFormula(anyFormula(random))))
    assert.deepEqual(Object.keys(recipe), [
      '@context',
      '@type',
      'name',
      'recipeYield',
      'recipeIngredient',
      'recipeInstructions',
    ])
    assert.ok(
      Array.isArray(recipe.recipeIngredient) && recipe.recipeIngredient.every(t => typeof t === 'string'),
    )
    assert.ok(Array.isArray(recipe.recipeInstructions))
  }
})
