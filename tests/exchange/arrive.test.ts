import { test } from 'node:test'
import { writeFormulas, writeWorkbookFile } from '../../src/exchange/index'
import { type Arrivals, arrive } from '../../src/index'
import { deepEqual, equal, match, ok } from '../assert'
import { randomOf } from '../random'
import { millWheat } from '../screens/breads'

/** Rows as text: what a line was read from, and what it came to. */
const shown = ({ rows }: Arrivals) =>
  rows.map(({ text, stage, ingredient, amount }) => `${text} → ${stage}: ${ingredient} ${amount}`)

test('a recipe arrives as one formula, each line beside its words, with what was guessed', () => {
  const came = arrive('Mill loaf\n\n900 g bread flour\n600 ml water\na pinch of salt\n')
  deepEqual(shown(came), [
    '900 g bread flour → Final dough: Bread flour 900 g',
    '600 ml water → Final dough: Water 600 ml',
    'a pinch of salt → Final dough: Salt 0.3 g',
  ])
  equal(came.arrived.as, 'recipe')
  equal(came.formulas.length, 1)
  const guessed = came.rows.filter(row => row.guesses.length > 0)
  deepEqual(
    guessed.map(row => row.ingredient),
    ['Salt'],
  )
  deepEqual(guessed[0]!.guesses, [
    {
      ...{ code: 'estimate', typed: 'a pinch', number: 1, unit: 'pinch', read: '0.3 g' },
      message: 'A pinch was taken as 0.3 g; weigh yours.',
    },
  ])
})

test('guesses carry the code and the figures of the reader they come from', () => {
  const guesses = (text: string) =>
    arrive(text).rows.flatMap(({ ingredient, guesses }) => guesses.map(one => ({ ingredient, ...one })))
  const [range, both] = guesses('Mill loaf\n\n600–650 ml water\n2 cups (260 g) bread flour\n')
  const { message, ...figures } = range!
  deepEqual(figures, {
    ...{ ingredient: 'Water', code: 'range', typed: '600–650 ml', number: 600, unit: 'ml' },
    ...{ low: '600 ml', high: '650 ml', read: '625 ml' },
  })
  match(message, /625 ml/)
  deepEqual([both!.code, both!.ingredient], ['alsoWeighed', 'Bread flour'])
  const [also] = guesses('Ingredient,Levain,Final dough\nBread flour,100,820\nWater,80,\nSalt,,20\n')
  deepEqual(also, {
    ...{ ingredient: 'Bread flour', code: 'alsoIn', amount: '820 g', hasAmount: true, stage: 'Final dough' },
    message: 'Also 820 g in Final dough.',
  })
})

test('a table arrives with its rows as they stand, and its decimal sign found out', () => {
  const came = arrive('Zutat;Menge\nWeizenmehl;1,5 kg\nWasser;1,05 kg\nSalz;30 g\n')
  equal(came.arrived.as, 'table')
  deepEqual(
    came.rows.map(({ text, ingredient, amount }) => [text, ingredient, amount]),
    [
      ['Weizenmehl\t1,5 kg', 'Weizenmehl', '1.5 kg'],
      ['Wasser\t1,05 kg', 'Wasser', '1.05 kg'],
      ['Salz\t30 g', 'Salz', '30 g'],
    ],
  )
})

test('the source of a page is read by its rows, and its tags are no words', () => {
  for (const text of [
    '<table><tr><td>Bread flour</td><td>500 g</td></tr><tr><td>Water</td><td>350 g</td></tr></table>',
    '<ul>\n<li>500 g <b>bread flour</b></li><li>350 g water</li>\n</ul>',
    '<p>500 g bread flour<br/>350 g water</p>',
  ])
    deepEqual(
      arrive(text).rows.map(({ ingredient, amount }) => `${ingredient} ${amount}`),
      ['Bread flour 500 g', 'Water 350 g'],
    )
  for (const [text, line] of [
    ['500 g <b>bread flour</b>', 'Bread flour 500 g'],
    ['<li>10 g de sel</li>', 'Sel 10 g'],
    ['<em>10 g</em> salt', 'Salt 10 g'],
  ] as const) {
    const { rows } = arrive(text)
    deepEqual(
      rows.map(({ ingredient, amount, guesses }) => [`${ingredient} ${amount}`, guesses]),
      [[line, []]],
    )
  }
})

test('what Tarebook wrote arrives as it left', () => {
  const bread = millWheat()
  const lines = bread.stages.flatMap(stage =>
    stage.lines.map(line => `${stage.name}: ${line.ingredient} ${line.amount}`),
  )
  for (const [text, as] of [
    [writeFormulas([bread]), 'formulas'],
    [writeWorkbookFile({ name: '', formulas: [bread], larder: [] }), 'workbook'],
  ] as const) {
    const came = arrive(text)
    equal(came.arrived.as, as)
    deepEqual(
      came.rows.map(({ stage, ingredient, amount }) => `${stage}: ${ingredient} ${amount}`),
      lines,
    )
    equal(came.formulas[0]!.name, bread.name)
    deepEqual(came.problems, [])
  }
})

test('bytes of a file arrive as their text does, with a remark where the encoding was guessed', () => {
  const text = 'Zutat;Menge\nBrötchenmehl;500 g\nWasser;350 g\n'
  const inUtf8 = arrive(new TextEncoder().encode(text))
  deepEqual(shown(inUtf8), shown(arrive(text)))
  equal(inUtf8.remark, undefined)
  const western = arrive(Uint8Array.from(text, character => character.charCodeAt(0)))
  deepEqual(shown(western), shown(inUtf8))
  match(western.remark!, /Windows-1252/)
})

test('what cannot be read is one problem with a code, and no formula', () => {
  const office = arrive(Uint8Array.of(0x50, 0x4b, 3, 4, 0, 0))
  deepEqual([office.formulas, office.rows, office.problems.map(p => p.code)], [[], [], ['notRead']])
  match(office.problems[0]!.message, /office program/)
})

test('the same text is read in another way, by what was found out before and without it alike', () => {
  const text = 'Flour,500 g\nWater,350 g\nSalt,10 g'
  const first = arrive(text)
  equal(first.arrived.as, 'table')
  const again = arrive(text, { as: 'recipe', earlier: first })
  deepEqual(shown(again), shown(arrive(text, { as: 'recipe' })))
  equal(again.arrived.as, 'recipe')
  deepEqual(shown(arrive(text, { earlier: again })), shown(first))
})

test('whatever arrives, nothing throws, and every row is of a formula (seed 43)', () => {
  const random = randomOf(43)
  const pieces =
    'Flour|Water|500 g|1,5|½|a pinch|;|,|\t|\n|\n\n|{|}|"|:|Dough|Levain|# |%|total|2 loaves|formula,stage|amount'.split(
      '|',
    )
  for (let i = 0; i < 130; i++) {
    const text = Array.from({ length: random.below(30) }, () => random.pick(pieces)).join(
      random.below(2) ? ' ' : '',
    )
    const came = arrive(text)
    const lines = came.formulas.flatMap(f => f.stages).flatMap(s => s.lines)
    for (const row of came.rows)
      ok(
        lines.some(line => line.ingredient === row.ingredient && line.amount === row.amount),
        `${JSON.stringify(text)}: ${row.ingredient} ${row.amount}`,
      )
    for (const problem of came.problems) ok(problem.message)
  }
})
