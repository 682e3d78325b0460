import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Stage } from '../../src/dough/document/formula.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { type RecipeMarkup, recipeMarkup, recipeScript } from '../../src/exchange/markup/recipe-markup.js'
import { bread } from '../day/notation.js'
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

/** What stands among the instructions, of which none is a section. */
const stepsOf = ({ recipeInstructions }: RecipeMarkup) =>
  recipeInstructions.map(step => {
    assert.ok(step['@type'] === 'HowToStep')
    return step
  })

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
  const recipe = recipeMarkup(openFormula({ ...mill, note: '1. Mix. Rest.\n\n- Bake' }))
  assert.deepEqual(
    stepsOf(recipe)
      .slice(2)
      .map(step => step.text),
    ['Mix. Rest.', 'Bake'],
  )
})

test('a stage is mixed where no note says what to do: how much it makes is no step', () => {
  const recipe = recipeMarkup(
    openFormula({
      ...mill,
      note: 'Makes 2 loaves.',
    }),
  )
  assert.deepEqual(
    stepsOf(recipe).map(step => step.text),
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
    stepsOf(recipe).map(step => step.itemListElement?.at(-1)?.performTime),
    [undefined, 'PT1H', undefined, undefined],
  )
  const inSentences = recipeMarkup(openFormula({ ...mill, note: 'Proof 2 h 30. Shape. Bake 40 min.' }))
  assert.deepEqual(
    stepsOf(inSentences).map(step => step.itemListElement?.at(-1)?.performTime),
    [undefined, undefined, 'PT2H30M', undefined, 'PT40M'],
  )
})

const withMethods = {
  ...bread(
    'Mill wheat',
    `
    Levain:
      Ripe starter 40 g
      Bread flour 100 g
      hands Mix: 10 min
      wait Ripen: 8–10 h, at 24 °C
    Final dough:
      Bread flour 900 g
      Water 600 g
      Levain 140 g
      Salt 20 g
      hands Mix: 10 min
      wait Rest: 30 min
      hands Add: 90 s, adds Salt
      wait Bulk: 3.5–4.5 h, 2 × 5 min every 30 min
      hands Shape: 2 min each
      bake Bake: 20 min
      bake Uncover: 25 min
      wait Cool: until cold`,
  ),
  note: 'An everyday loaf. Bake for 50 min. Prep: 12 min',
}
const twelve = { make: 'pieces', pieces: [{ count: 12, weight: 130 }] } as const

test('a method is sections of steps, each with its time where it is one, and the note describes the bread', () => {
  const recipe = recipeMarkup(openFormula(withMethods))
  assert.equal(recipe.description, 'An everyday loaf. Bake for 50 min. Prep: 12 min')
  const step = (name: string, text: string, performTime?: string, additionalType?: string) => ({
    '@type': 'HowToStep',
    name,
    text,
    ...(additionalType && { additionalType }),
    ...(performTime && { itemListElement: [{ '@type': 'HowToDirection', text, performTime }] }),
  })
  assert.deepEqual(recipe.recipeInstructions, [
    {
      '@type': 'HowToSection',
      name: 'Levain',
      itemListElement: [
        step('Levain', 'Levain: weigh 40 g Ripe starter and 100 g Bread flour.'),
        step('Mix', 'Mix: 10 min', 'PT10M'),
        step('Ripen', 'Ripen: 8–10 h, at 24 °C'),
      ],
    },
    {
      '@type': 'HowToSection',
      name: 'Final dough',
      itemListElement: [
        step('Final dough', 'Final dough: weigh 900 g Bread flour, 600 g Water, 140 g Levain and 20 g Salt.'),
        step('Mix', 'Mix: 10 min', 'PT10M'),
        step('Rest', 'Rest: 30 min', 'PT30M'),
        step('Add', 'Add: 90 s, adds Salt', 'PT1M30S'),
        step('Bulk', 'Bulk: 3.5–4.5 h, 2 × 5 min every 30 min'),
        step('Shape', 'Shape: 2 min each'),
        step('Bake', 'Bake: 20 min', 'PT20M'),
        step('Uncover', 'Uncover: 25 min', 'PT25M', 'bake'),
        step('Cool', 'Cool: until cold', undefined, 'wait'),
      ],
    },
  ])
})

// Hands: 10 + 10 + 1.5 + 2 × 5 + 12 × 2 = 55.5 min. Baking: 20 + 25. In all, the levain taken at the first mixing:
// 10 + 540, then 10 + 30 + 1.5 + 240 + 24 + 45 = 350.5, with 60 to cool: 960.5 min.
for (const [what, formula, prepTime, cookTime, totalTime] of [
  ['of pieces that are counted', { ...withMethods, batch: twelve }, 'PT55M30S', 'PT45M', undefined],
  ['of pieces that are not', withMethods, undefined, 'PT45M', undefined],
  [
    'that says the time of every step',
    { ...withMethods, batch: twelve, stages: cooled(withMethods.stages, '1 h') },
    'PT55M30S',
    'PT45M',
    'PT16H30S',
  ],
  [
    'in which the levain is taken at the third step',
    {
      ...withMethods,
      batch: twelve,
      stages: cooled(withMethods.stages, '1 h', 'adds Salt, Levain'),
    },
    'PT55M30S',
    'PT45M',
    'PT15H20M30S',
  ],
  [
    'of loads that do not go in together',
    { ...withMethods, batch: twelve, stages: cooled(withMethods.stages, '1 h', 'adds Salt', ', 6 at once') },
    'PT55M30S',
    'PT45M',
    undefined,
  ],
] as const)
  test(`times by the method ${what} stand before those of notes`, () => {
    const recipe = recipeMarkup(openFormula(formula))
    assert.deepEqual([recipe.prepTime, recipe.cookTime, recipe.totalTime], [prepTime, cookTime, totalTime])
  })

/** The stages with a time for cooling, and other words on what is added and on the oven. */
function cooled(stages: readonly Stage[], time: string, adds = 'adds Salt', oven = ''): Stage[] {
  return stages.map(stage => ({
    ...stage,
    method: stage.method!.map(step => ({
      ...step,
      text: (step.does === 'Cool' ? time : step.text)
        .replace('adds Salt', adds)
        .replace('25 min', `25 min${oven}`),
    })),
  }))
}

test('nothing in a formula ends the script element that holds it', () => {
  const name = '</script><script>alert(1)</script><!-- ]]>'
  const html = recipeScript(openFormula({ ...mill, name, note: name }))
  assert.equal(inScript(html).name, name)
  assert.equal(html.match(/<\/script/g)!.length, 1)
})

test('whatever a formula is made of, its markup is JSON with the properties of a Recipe (seed 61)', () => {
  const random = randomOf(61)
  for (let i = 0; i < 100; i++) {
    const formula = anyFormula(random)
    const recipe = inScript(recipeScript(openFormula(formula)))
    const byMethod = ['description', 'prepTime', 'cookTime', 'totalTime']
    const hasMethod = formula.stages.some(({ method }) => method)
    const keys = Object.keys(recipe).filter(key => !hasMethod || !byMethod.includes(key))
    assert.deepEqual(keys, [
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
