import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import { test } from 'node:test'
import type { Formula, Step } from '../../src/dough/document/formula.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { readFormulas, recipeScript } from '../../src/exchange/index.js'
import { minutesOf } from '../../src/exchange/page/recipe-data.js'
import { type Arrivals, arrive } from '../../src/index.js'
import { randomOf } from '../random.js'
import { anyNames, anySteps } from './any-formula.js'
import { text } from './notation.js'

const method = ({ stages }: Formula) =>
  stages.map(({ method = [] }) => method.map(({ does, kind, text, note }) => [does, kind, text, note]))

/** A page of ours that has the markup of a formula, with other things about it. */
const pageOf = (formula: Formula) =>
  `<!doctype html><title>Brackwater Mill</title>${recipeScript(openFormula(formula))}<p>Our breads.</p>`

for (const name of readdirSync('examples').filter(file => file.endsWith('.csv')))
  test(`${name}: its own markup gives its method, its stages and what each takes`, () => {
    for (const formula of readFormulas(readFileSync(`examples/${name}`, 'utf8')).formulas) {
      const { formulas, arrived, problems } = arrive(pageOf(formula))
      assert.deepEqual([arrived.as, problems], ['recipe', []])
      assert.deepEqual(method(formulas[0]!), method(formula))
      const names = ({ stages }: Formula) =>
        stages.map(stage => [stage.name, ...stage.lines.map(line => line.ingredient.toLowerCase())])
      const count = ({ stages }: Formula) => stages.map(({ lines }) => lines.length)
      assert.deepEqual(count(formulas[0]!), count(formula))
      assert.equal(names(formulas[0]!)[0]![0], names(formula)[0]![0])
      assert.equal(formulas[0]!.name, formula.name)
      assert.equal(formulas[0]!.note, formula.note)
    }
  })

test('seed 17: whatever a method is, its own markup gives it back', () => {
  const { pick, below } = randomOf(17)
  const steps = (of: string): Step[] =>
    Array.from({ length: below(5) }, (_, i) => ({
      id: `${of} ${i}`,
      does: pick(['Mix', 'Bulk', 'Bake', '', pick(anyNames)]),
      kind: pick(['hands', 'wait', 'bake'] as const),
      text: pick([...anySteps, '45 min, at 230 °C, 6 at once', 'until done', pick(anyNames)]),
      note: pick(['', 'grown by half', 'dry gloves (the pots are hot)', pick(anyNames)]),
    }))
  for (let round = 0; round < 50; round++) {
    const names = ['Levain', 'Second build', 'Seed soaker', 'Method', '1. first'].slice(0, below(5))
    const stages = [...names, 'Final dough'].map(name => {
      const lines = Array.from({ length: below(3) }, (_, i) => ({
        ...{ id: `${name} line ${i}`, ingredient: pick(['Bread flour', 'Water', 'Salt']) },
        ...{ amount: pick(['100 g', '20 g']), note: '' },
      }))
      const made = steps(name)
      return { id: name, name, lines, ...(made.length && { method: made }) }
    })
    const formula: Formula = {
      ...{ id: 'f', name: 'Any', note: pick(['', 'An everyday loaf. Bake it dark.']), flourWeight: 1000 },
      ...{ stages, meanings: [], keptSettings: [] },
    }
    if (stages.every(({ lines }) => lines.length === 0) || stages.every(stage => !stage.method)) continue
    const [came] = arrive(pageOf(formula)).formulas
    const kept = stages.filter(stage => stage.method || stage.lines.length > 0) // the others say nothing
    assert.deepEqual(method(came!), method({ ...formula, stages: kept }), JSON.stringify(formula))
  }
})

/** Steps as `Stage | kind does: text ? codes`. */
const said = ({ steps }: Arrivals) =>
  steps.map(({ step: { kind, does, text }, stage, guesses }) => {
    const codes = guesses.length > 0 ? ` ? ${guesses.map(({ code }) => code).join(' ')}` : ''
    return `${stage} | ${kind} ${does}: ${text}${codes}`
  })
const ingredients = ['500 g bread flour', '350 g water', '100 g levain', '10 g salt']
const recipe = (recipeInstructions: unknown, more: object = {}) => ({
  '@context': 'https://schema.org/',
  '@type': 'Recipe',
  name: 'Field loaf',
  recipeIngredient: ingredients,
  recipeInstructions,
  ...more,
})
const read = (instructions: unknown, more: object = {}) =>
  said(arrive(JSON.stringify(recipe(instructions, more)))).map(step => step.replace('Final dough | ', ''))

const step = (text: string, more: object = {}) => ({ '@type': 'HowToStep', text, ...more })

/** Instructions as pages have them, and the steps they come to. */
const cases: readonly (readonly [what: string, instructions: unknown, steps: readonly string[]])[] = [
  [
    'one text',
    'Mix the flour and the water and rest 30 minutes. Add the levain and the salt. Bake 45 minutes at 240 °C.',
    ['hands Mix: ', 'wait Rest: 30 min', 'hands Add: adds levain, Salt', 'bake Bake: 45 min, at 240 °C'],
  ],
  [
    'a text of several rows',
    '1. Mix.\n2. Rest 30 minutes.\r\n\r\n3. Shape.',
    ['hands Mix: ', 'wait Rest: 30 min', 'hands Shape: '],
  ],
  [
    'a text with tags',
    '<ol><li>Mix.</li><li>Rest 30&nbsp;minutes.</li></ol>',
    ['hands Mix: ', 'wait Rest: 30 min'],
  ],
  ['a list of texts', ['Mix.', 'Rest 30 minutes.'], ['hands Mix: ', 'wait Rest: 30 min']],
  [
    'a list of steps',
    [step('Mix.'), step('Rest &frac12; hour at 25&deg;C.')],
    ['hands Mix: ', 'wait Rest: 30 min, at 25 °C'],
  ],
  [
    'a list within a list',
    { '@type': 'ItemList', itemListElement: [step('Mix.'), [step('Rest 30 minutes.')]] },
    ['hands Mix: ', 'wait Rest: 30 min'],
  ],
  ['one step by itself', step('Knead 10 minutes.'), ['hands Knead: 10 min']],
  [
    'steps with a name that says what is done',
    [step('Leave it for 4 hours.', { name: 'Bulk fermentation' })],
    ['wait Bulk: 4 h'],
  ],
  ['steps with a number as name', [step('Rest 30 minutes.', { name: 'Step 1' })], ['wait Rest: 30 min']],
  ['steps of names only', [{ '@type': 'HowToStep', name: 'Rest 30 minutes.' }], ['wait Rest: 30 min']],
  // times beside the words
  [
    'a time that the words do not give',
    [step('Let the dough rest.', { performTime: 'PT45M' })],
    ['wait Rest: 45 min'],
  ],
  [
    'a time in a direction',
    [
      step('', {
        itemListElement: [{ '@type': 'HowToDirection', text: 'Let it rest.', performTime: 'PT45M' }],
      }),
    ],
    ['wait Rest: 45 min'],
  ],
  [
    'a time in a direction with the words of the step',
    [
      step('Let it rest.', {
        itemListElement: [{ '@type': 'HowToDirection', text: 'Let it rest.', performTime: 'P0DT1H' }],
      }),
    ],
    ['wait Rest: 1 h'],
  ],
  [
    'directions one after the other',
    [
      step('', {
        itemListElement: [
          { '@type': 'HowToDirection', text: 'Mix.', performTime: 'PT5M' },
          { '@type': 'HowToDirection', text: 'Let it rest.', performTime: 'PT1H' },
        ],
      }),
    ],
    ['hands Mix: 5 min', 'wait Rest: 1 h'],
  ],
  [
    'a time that the words give as well',
    [step('Rest 30 minutes.', { totalTime: 'PT30M' })],
    ['wait Rest: 30 min'],
  ],
  [
    'a time within a range of the words',
    [step('Bulk 3.5 to 4.5 hours.', { totalTime: 'PT4H' })],
    ['wait Bulk: 3.5–4.5 h'],
  ],
  [
    'another time than the words give',
    [step('Rest 30 minutes.', { totalTime: 'PT2H' })],
    ['wait Rest: 30 min ? severalTimes'],
  ],
  [
    'a time of work and waiting together',
    [step('Shape and let it proof.', { totalTime: 'PT1H' })],
    ['hands Shape: ', 'wait Proof: 1 h ? timeBeside'],
  ],
  [
    'a time of which the words give a part',
    [step('Knead 10 minutes and let it rise.', { totalTime: 'PT70M' })],
    ['hands Knead: 10 min', 'wait Rise: 1 h ? timeBeside'],
  ],
  [
    'a time of folds',
    [step('Fold four times, every half hour.', { totalTime: 'PT3H' })],
    ['wait Fold: 3 h, 4 × 5 min every 30 min ? foldMinutes'],
  ],
  [
    'a time where nothing is done',
    [step('Somewhere warm until doubled.', { performTime: 'PT6H' })],
    ['wait Rest: 6 h ? kindByTime'],
  ],
  ['a time that is none', [step('Rest 30 minutes.', { performTime: 'soon' })], ['wait Rest: 30 min']],
  // what is not done
  ['a tip', [step('Mix.'), { '@type': 'HowToTip', text: 'The dough should be soft.' }], ['hands Mix: ']],
]
for (const [what, instructions, steps] of cases)
  test(`instructions: ${what}`, () => assert.deepEqual(read(instructions), steps))

test('sections are stages, with their steps in their order, also where stages stand among the ingredients', () => {
  const section = (name: string, ...steps: unknown[]) => ({
    '@type': 'HowToSection',
    name,
    itemListElement: steps,
  })
  const came = arrive(
    JSON.stringify({
      '@graph': [
        { '@type': 'WebPage', name: 'A page' },
        recipe(
          [
            section('Levain', step('Mix all.'), step('Leave to ripen.', { performTime: 'PT8H' })),
            section(
              'For the dough',
              step('Mix the flour and the water.'),
              step('Add the levain and the salt.'),
            ),
            section('Baking', step('Bake 45 minutes at 240 °C.')),
          ],
          {
            '@type': ['Thing', 'Recipe'],
            recipeIngredient: [
              'For the levain:',
              '20 g ripe starter',
              '50 g bread flour',
              '50 g water',
              'For the dough:',
              ...ingredients,
            ],
          },
        ),
      ],
    }),
  )
  assert.deepEqual(said(came), [
    'Levain | hands Mix: ',
    'Levain | wait Ripen: 8 h',
    'Dough | hands Mix: ',
    'Dough | hands Add: adds Levain, Salt',
    'Dough | bake Bake: 45 min, at 240 °C',
  ])
  assert.deepEqual(
    came.rows.map(({ stage, ingredient, amount }) => `${stage}: ${amount} ${ingredient}`),
    [
      'Levain: 20 g Ripe starter',
      'Levain: 50 g Bread flour',
      'Levain: 50 g Water',
      'Dough: 500 g Bread flour',
      'Dough: 350 g Water',
      'Dough: 100 g Levain',
      'Dough: 10 g Salt',
    ],
  )
  assert.equal(came.formulas[0]!.note, '')
})

test('a French recipe arrives with French steps', () => {
  const came = arrive(
    JSON.stringify(
      recipe(
        [
          step('Mélanger la farine et l’eau.'),
          step('Laisser reposer.', { performTime: 'PT30M' }),
          step('Ajouter le levain et le sel.'),
        ],
        { recipeIngredient: ['500 g de farine T65', '350 g d’eau', '100 g de levain', '10 g de sel'] },
      ),
    ),
  )
  assert.deepEqual(said(came), [
    'Final dough | hands Mélanger: ',
    'Final dough | wait Repos: 30 min',
    'Final dough | hands Ajouter: ajoute levain, Sel',
  ])
})

test('what the recipe says of itself is its note, and its baking time is that of baking where nothing else is said', () => {
  const more = {
    description: 'A loaf &amp; a half.',
    recipeYield: ['2', '2 loaves'],
    prepTime: 'PT20M',
    cookTime: 'PT45M',
  }
  const came = arrive(JSON.stringify(recipe([step('Mix.'), step('Bake at 240 °C until dark.')], more)))
  assert.deepEqual(said(came).at(-1), 'Final dough | bake Bake: 45 min, at 240 °C ? bakingBeside')
  assert.equal(
    came.formulas[0]!.note,
    'A loaf & a half.\nYield: 2 loaves\nPrep time: 20 min\nBaking time: 45 min',
  )
  const twice = [step('Bake covered at 240 °C.'), step('Bake uncovered for 20 minutes.')]
  assert.ok(!read(twice, more).join().includes('bakingBeside'))
})

const durations: readonly (readonly [written: unknown, minutes: number | undefined])[] = [
  ['PT30M', 30],
  ['PT1H30M', 90],
  ['P1DT2H', 1560],
  ['P0Y0M0DT0H45M0S', undefined], // years and months are no time of a step
  ['P0DT0H45M0.000S', 45],
  ['PT90S', 1.5],
  ['PT1.5H', 90],
  ['PT1,5H', 90],
  ['P1W', 10080],
  [' pt20m ', 20],
  ['PT0M', undefined],
  ['P', undefined],
  ['30 min', undefined],
  [30, undefined],
  [null, undefined],
  [{ '@type': 'Duration', duration: 'PT20M' }, 20],
]
for (const [written, minutes] of durations)
  test(`the duration ${JSON.stringify(written)} is ${minutes ?? 'none'}`, () =>
    assert.equal(minutesOf(written), minutes))

test('of a page with the data of a recipe that is read, also where line ends stand in its texts', () => {
  const data = JSON.stringify(recipe('Mix.|Rest 30 minutes.')).replace('|', '\n')
  const page = text`
    <html><head><script>var a = "<li>"</script><script type="application/ld+json">{"@type": "WebSite"}</script>
    <script type='application/ld+json'>BROKEN {</script>
    <script type="application/ld+json" class="x">DATA</script></head>
    <body><h1>Not this</h1><ul><li>1 kg sand</li></ul></body></html>`
  const came = arrive(page.replace('DATA', data))
  assert.equal(came.formulas[0]!.name, 'Field loaf')
  assert.deepEqual(said(came), ['Final dough | hands Mix: ', 'Final dough | wait Rest: 30 min'])
  assert.equal(came.rows.length, 4)
})

test('data that is no recipe, or odd, is told or read as far as it goes, and never throws', () => {
  const odd: readonly unknown[] = [
    { '@type': 'Recipe' },
    recipe(null),
    recipe(7),
    recipe([null, 7, {}, [], { '@type': 'HowToStep' }, { '@type': 'HowToSection' }]),
    recipe({ '@type': 'HowToSection', itemListElement: 'Mix.' }),
    { ...recipe('Mix.'), name: ['a', 'b'], recipeIngredient: { a: 1 }, recipeYield: { b: 2 }, totalTime: [] },
    JSON.parse('{"@type":"Recipe","__proto__":{"recipeInstructions":"x"},"constructor":{"name":"y"}}'),
    Array.from({ length: 50 }).reduce(
      inner => ({ '@type': 'HowToSection', name: 'a', itemListElement: [inner] }),
      'Mix.',
    ),
    { '@graph': Array.from({ length: 20 }).reduce(inner => ({ '@graph': [inner] }), recipe('Mix.')) },
  ]
  for (const one of odd) {
    const came = arrive(JSON.stringify(one))
    assert.ok(came.problems.length > 0 || came.formulas.length > 0, JSON.stringify(one).slice(0, 200))
    arrive(JSON.stringify([recipe(one)]))
    arrive(JSON.stringify(recipe([one, one])))
  }
})
