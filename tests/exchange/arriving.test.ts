import { test } from 'node:test'
import { larderOf } from '../../src/dough/document/larder'
import { openFormula } from '../../src/dough/formula-sheet'
import { usualLarder } from '../../src/dough/larder/usual-larder'
import { arrivalFrom } from '../../src/exchange/arriving/arrival-source'
import { Arrival, type Arrived } from '../../src/exchange/arriving/arriving'
import { columnsToRemember } from '../../src/exchange/arriving/remembered-columns'
import { writeFormulas, writePlainText, writeWorkbookFile } from '../../src/exchange/index'
import { deepEqual, equal, match, ok } from '../assert'
import { millWheat } from '../screens/breads'
import { recipeTexts } from './recipe-texts'
import { foreignTables } from './table-cases'

const larder = larderOf(usualLarder)
const arrive = (text: string) => new Arrival(text, larder).read()
const amounts = (arrived: Arrived): string[] =>
  'formulas' in arrived
    ? arrived.formulas
        .flatMap(f => f.stages)
        .flatMap(s => s.lines)
        .map(l => l.amount)
    : []

for (const { title, table } of foreignTables)
  test(`what it is: a table (${title})`, () => equal(arrive(table).as, 'table'))
for (const [title, text] of Object.entries(recipeTexts))
  test(`what it is: a recipe (${title})`, () => equal(arrive(text).as, 'recipe'))

const others: readonly (readonly [what: string, text: string, as: Arrived['as']])[] = [
  ['a formula file', writeFormulas([millWheat()]), 'formulas'],
  [
    'a formula file with a column somebody added',
    'ingredient,amount,counts as,price\nBread flour,500 g,flour,2\n',
    'formulas',
  ],
  ['plain text as it is sent out', writePlainText(openFormula(millWheat())), 'formulas'],
  ['a workbook file', writeWorkbookFile({ name: '', formulas: [millWheat()], larder: [] }), 'workbook'],
  ['another JSON file', '{"name": "Loaf", "recipeIngredient": ["500 g flour"]}', 'workbook'],
  [
    'one line of prose',
    '1 kg strong white flour, 2 1/4 tsp fine sea salt, 650–680 ml lukewarm water, a pinch of yeast',
    'recipe',
  ],
  [
    'a list with remarks behind commas',
    '500 g flour, sifted\n350 g water, lukewarm\n10 g salt, fine',
    'recipe',
  ],
  ['a list without headings, cut by commas', 'Flour,500 g\nWater,350 g\nSalt,10 g', 'table'],
  ['a table that has no amounts', 'name;price\nflour;1,20\n', 'table'],
  [
    'a table with the breads and stages as headings between its rows',
    'Ingredient\tGrams\nMill rye\t\nLevain\t\nRye flour\t100\nWater\t100\nDough\t\nRye flour\t400\nLevain\t200\n',
    'table',
  ],
  ['nothing that is anything', 'hello', 'recipe'],
  ['nothing at all', '', 'recipe'],
]
for (const [what, text, as] of others) test(`what it is: ${as} (${what})`, () => equal(arrive(text).as, as))

test('what was read to find out what a text is is not read again', () => {
  for (const text of ['Flour,500 g\nWater,350 g', '500 g flour\n350 g water']) {
    const arrival = new Arrival(text, larder)
    const [first, again] = [arrival.read(), arrival.read()]
    ok('formulas' in first && 'formulas' in again && first.formulas[0] === again.formulas[0], text)
  }
})

test('it can be said to be something else, and back', () => {
  const arrival = new Arrival('Flour,500 g\nWater,350 g', larder)
  deepEqual(amounts(arrival.read()), ['500 g', '350 g'])
  equal(arrival.read({ as: 'recipe' }).as, 'recipe')
  equal(arrival.read({ as: 'workbook' }).as, 'workbook')
  deepEqual(amounts(arrival.read({ as: 'table' })), ['500 g', '350 g'])
})

test('amounts for several sizes of batch are read one size at a time', () => {
  const text =
    'Ingredient,1 loaf,6 loaves,20 loaves\nBread flour,500,3000,10000\nWater,350,2100,7000\nSalt,10,60,200'
  const arrival = new Arrival(text, larder)
  for (const [batch, read] of [
    ['500 g', '350 g', '10 g'],
    ['3000 g', '2100 g', '60 g'],
    ['10000 g', '7000 g', '200 g'],
  ].entries()) {
    const arrived = arrival.read({ batch })
    ok(arrived.as === 'table')
    deepEqual(arrived.batches, ['1 loaf', '6 loaves', '20 loaves'])
    deepEqual([arrived.batch, amounts(arrived)], [batch, read])
  }
})

test('a column read otherwise changes the lines, and is remembered for the same headings', () => {
  const text = 'Zutat;Menge;Heute\nMehl;500;600\nWasser;350;420\n'
  const guess = arrive(text)
  ok(guess.as === 'table')
  const mapping = { ...guess.look.mapping, columns: ['ingredient', 'leave out', 'grams'] as const }
  const read = new Arrival(text, larder).read({ as: 'table', mapping })
  deepEqual(amounts(read), ['600 g', '420 g'])
  const remembered = { [guess.look.key]: columnsToRemember(mapping) }
  const again = new Arrival(text.replace('600', '700'), larder, remembered).read()
  ok(again.as === 'table' && again.look.isRemembered)
  deepEqual(amounts(again), ['700 g', '420 g'])
  for (const damaged of [
    null,
    3,
    {},
    { columns: ['ingredient'] },
    { columns: ['x', 'y', 'z'], stages: 'none' },
  ]) {
    const asGuessed = new Arrival(text, larder, { [guess.look.key]: damaged }).read()
    ok(asGuessed.as === 'table' && !asGuessed.look.isRemembered, JSON.stringify(damaged))
    deepEqual(amounts(asGuessed), ['500 g', '350 g'])
  }
})

test('the first rows are shown with what became of each, and all are counted', () => {
  const arrived = arrive('Zutat;Menge\nMehl;500\n???;\nWasser;350\nSumme;850\n')
  ok(arrived.as === 'table')
  deepEqual(
    arrived.look.first.map(({ cells, read }) => `${cells[0]}: ${read.became}`),
    ['Mehl: line', '???: note', 'Wasser: line', 'Summe: total'],
  )
  equal(arrived.look.counts.line, 2)
})

const hostile: readonly (readonly [string, string, RegExp])[] = [
  ['ten thousand columns', `${'a,'.repeat(10_000)}\n`.repeat(3), /columns/],
  ['more than five million characters', 'Flour,500 g\n'.repeat(500_000), /characters/],
  ['a long text that is no recipe', 'word '.repeat(60_000), /longer than any recipe/],
]
for (const [what, text, why] of hostile)
  test(`${what} are refused in a sentence`, () => {
    const arrived = arrive(text)
    ok(arrived.as === 'refused')
    match(arrived.why, why)
  })

test('deep JSON is a problem in a sentence, and no workbook', () => {
  const arrived = arrive(
    `{"format": "tarebook workbook file", "version": 1, "formulas": ${'['.repeat(50_000)}`,
  )
  ok(arrived.as === 'workbook' && !arrived.workbook)
  equal(arrived.problems.length, 1)
})

test('bytes are decoded, with a remark or a refusal where they need one', () => {
  const bytes = Uint8Array.from('ingredient,amount\nMéteil,500 g\n', c => c.charCodeAt(0))
  const western = arrivalFrom({ bytes }, larder, {})
  ok('arrival' in western)
  match(western.remark ?? '', /not in UTF-8/)
  ok('refusal' in arrivalFrom({ bytes: new Uint8Array([0x50, 0x4b, 3, 4]) }, larder, {}))
})

test('a formula of more lines than are kept is told, and those beside it are there', () => {
  const line = 'Great,Final dough,Bread flour,1 g'
  const rows = Array.from({ length: 5001 }, () => line)
  const arrived = new Arrival(
    ['formula,stage,ingredient,amount', ...rows, 'Small,Final dough,Water,1 g'].join('\n'),
    larder,
  ).read()
  ok('formulas' in arrived)
  deepEqual(
    arrived.formulas.map(f => f.name),
    ['Small'],
  )
  match(arrived.problems[0]!.message, /^Great has 5,001 lines; a formula holds at most 5,000\./)
})

test('a recipe of more stages than are kept is refused with a sentence', () => {
  const text = Array.from({ length: 201 }, (_, i) => `Soaker ${i + 1}:\n${i + 1} g salt\n`).join('\n')
  const arrived = new Arrival(text, larder).read({ as: 'recipe' })
  ok(arrived.as === 'refused')
  match(arrived.why, /has \d+ stages; a formula holds at most 200\./)
})

for (const [what, text] of [
  ['of more rows', '1 g salt\n'.repeat(2001)],
  ['of more words and signs', '½'.repeat(10_001)],
  ['of more characters', 'a'.repeat(200_001)],
] as const)
  test(`a text ${what} than any recipe has is refused before it is read`, () => {
    const arrived = new Arrival(text, larder).read()
    ok(arrived.as === 'refused')
    match(arrived.why, /^That is longer than any recipe/)
  })
