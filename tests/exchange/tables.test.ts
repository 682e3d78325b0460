import assert from 'node:assert/strict'
import { test } from 'node:test'
import { readFormulas } from '../../src/exchange/index.js'
import {
  guessTable,
  headingsKey,
  type Mapping,
  readTable,
  usualLimits,
} from '../../src/exchange/tables/index.js'
import { shown, told } from './notation'

const read = (text: string, changes: Partial<Mapping> = {}) => {
  const table = guessTable(text)
  return readTable(table, { ...table.mapping, ...changes })
}
const amountsOf = (text: string, changes: Partial<Mapping> = {}) =>
  read(text, changes).formulas.flatMap(f => f.stages.flatMap(s => s.lines.map(line => line.amount)))

const cells: readonly (readonly [cell: string, heading: string, amount: string])[] = [
  ['820', 'g', '820 g'],
  ['820 g', 'Amount', '820 g'],
  ['82%', 'Amount', '82%'],
  ['82 %', '%', '82%'],
  ['0.82', 'kg', '0.82 kg'],
  ['820 g', 'kg', '820 g'],
  ['1 025,5', 'g', '1025.5 g'],
  ["1'025.5", 'g', '1025.5 g'],
  ['1,234.5', 'g', '1234.5 g'],
  ['1.234,5', 'g', '1234.5 g'],
  ['1.000.000', 'g', '1000000 g'],
  ['1,00,000', 'g', ''],
  ['1.2E+3', 'g', '1200 g'],
  ['½ tsp', 'Amount', '1/2 tsp'],
  ['2½ tsp', 'Amount', '2 1/2 tsp'],
  ['2 1/2 cups', 'Amount', '2 1/2 cup'],
  ['21/2', 'g', '2 1/2 g'],
  ['11/2', 'cup', '1 1/2 cup'],
  ['5/2', 'g', '5/2 g'],
  ['1/0', 'g', ''],
  ['2 EL', 'Menge', '2 tbsp'],
  ['1,5 dl', 'Menge', '150 ml'],
  ['3 Stück', 'Menge', '3 each'],
  ['2 lb 3 oz', 'Weight', '2 lb + 3 oz'],
  ['12', 'oz', '12 oz'],
  ['1.5', 'Pounds', '1.5 lb'],
  ['650-680 ml', 'Amount', '665 ml'],
  ['10 to 12', 'g', '11 g'],
  ['ca. 20 g', 'Menge', '20 g'],
  ['٢٠ g', 'Amount', '20 g'],
  ['２０', 'g', '20 g'],
  ['70% + 20 g', 'Amount', '70% + 20 g'],
  ['0', 'g', '0 g'],
  ['–', 'g', ''],
  ['n/a', 'g', ''],
  ['a pinch', 'Amount', ''],
  ['-20', 'g', ''],
  ['1 stick', 'Amount', ''],
]
for (const [cell, heading, amount] of cells)
  test(`“${cell}” under ${heading} is ${amount || 'no amount, and said so'}`, () => {
    const { formulas, problems } = read(`Zutat\t${heading}\nHoney\t${cell}\nWater\t1 g`)
    const [line] = formulas[0]!.stages[0]!.lines
    assert.equal(line!.amount, amount)
    if (amount === '') assert.ok(problems.some(({ where }) => where.row === 2))
  })

test('of grams a number glued to the part behind it is read and asked about, of cups and spoons only read', () => {
  const saidOf = (cell: string, heading: string) =>
    told(read(`Zutat\t${heading}\nHoney\t${cell}\nWater\t1 g`).problems.filter(p => p.severity !== 'remark'))
  assert.deepEqual(saidOf('21/2', 'g'), [
    '2 warning: Row 2 has “21/2” for Honey, which is read as 2 1/2 g: a whole number and a part of one. Type it anew if that is not meant.',
  ])
  assert.match(saidOf('13/4 kg', 'Amount').join(), /^2 warning: Row 2 has “13\/4 kg” for Honey.* 1 3\/4 kg:/)
  for (const [cell, heading] of [
    ['11/2', 'cup'],
    ['11/2 tsp', 'Amount'],
    ['5/2', 'g'],
    ['2 1/2', 'g'],
  ] as const)
    assert.deepEqual(saidOf(cell, heading), [])
})

test('what is too large, or no text, is refused with a sentence', () => {
  const few = { ...usualLimits, characters: 100, rows: 3, columns: 2, cell: 9 }
  const refusedAs = (text: string, limits = few) => {
    const table = guessTable(text, undefined, {}, limits)
    const { formulas, problems } = readTable(table, table.mapping)
    assert.deepEqual(formulas, [])
    assert.deepEqual(told(problems), [`- error: ${table.refused}`])
    return table.refused
  }
  assert.equal(
    refusedAs('x'.repeat(101)),
    'This table has 101 characters; 100 are the most that is read at once. Bring it in by parts.',
  )
  assert.match(refusedAs('a,1\nb,2\nc,3\nd,4')!, /^This table has 4 rows; 3 are the most/)
  assert.match(refusedAs('a,b,c')!, /^This table has 3 columns; 2 are the most/)
  assert.match(refusedAs('Water,\0')!, /null bytes/)
  assert.match(refusedAs('a,'.repeat(10_000), usualLimits)!, /^This table has 10,001 columns/)
})

test('a cell that is too long loses its row and nothing else', () => {
  const { formulas, rows } = read(`Ingredient;g\nWater;70\nSalt${'.'.repeat(2000)};2\nHoney;3`)
  assert.deepEqual(
    formulas[0]!.stages[0]!.lines.map(({ ingredient }) => ingredient),
    ['Water', 'Honey'],
  )
  assert.match(rows[2]!.why![0]!.message, /^Row 3 has a cell of 2,004 characters; 2,000 are the most\.$/)
})

test('a quotation mark that is never closed loses what follows, with the row where it opens', () => {
  const { formulas, rows, problems } = read('Ingredient,g\nWater,70\n"Salt,2\nHoney,3')
  assert.deepEqual(amountsOf('Ingredient,g\nWater,70\n"Salt,2\nHoney,3'), ['70 g'])
  assert.equal(formulas.length, 1)
  assert.deepEqual(
    rows.map(({ became }) => became),
    ['headings', 'line', 'not understood'],
  )
  assert.match(told(problems).join(), /3 error: Row 3 opens a quotation mark that is never closed/)
})

test('nothing at all, and text that is no table, are said to be so', () => {
  for (const text of ['', '\n\n', '\ufeff']) {
    const { rows, problems } = read(text)
    assert.ok(rows.every(({ became }) => became === 'blank'))
    assert.equal(problems.length, 1)
  }
  const { rows, problems } = read('Take 500 g of flour.\nAdd water.')
  assert.deepEqual(
    rows.map(({ became }) => became),
    ['not understood', 'not understood'],
  )
  assert.match(
    problems[0]!.message,
    /^Nothing separates names from amounts in this text, so it is not a table/,
  )
})

test('a formula file of Tarebook goes to its own reader, unchanged', () => {
  const own =
    'formula,stage,ingredient,amount,setting\nMill wheat,Levain,Water,80 g,\nMill wheat,Levain,,no,ferments\nMill wheat,Final dough,Levain,80 g,\n'
  const table = guessTable(own)
  assert.equal(table.own, true)
  const { formulas, rows, problems } = readTable(table, table.mapping)
  const direct = readFormulas(own)
  assert.deepEqual(formulas.map(shown), direct.formulas.map(shown))
  assert.deepEqual(told(problems), told(direct.problems))
  assert.deepEqual(
    rows.map(({ became }) => became),
    ['headings', 'line', 'setting', 'line'],
  )
  assert.equal(guessTable('ingredient,amount\nWater,80 g\n').own, true)
  assert.equal(guessTable('ingredient,amount\nLevain,\nWater,80 g\nTotal,80 g\n').own, false)
  assert.equal(guessTable('ingredient,amount,note\nWater,69,5\n').own, false)
})

test('a guess that the baker corrects is followed', () => {
  const text = 'Bread flour\t1.025\t500\nWater\t690\t345'
  assert.deepEqual(amountsOf(text), ['1025 g', '690 g'])
  assert.deepEqual(amountsOf(text, { decimal: '.' }), ['1.025 g', '690 g'])
  assert.deepEqual(amountsOf(text, { columns: ['ingredient', 'leave out', 'grams'] }), ['500 g', '345 g'])
  assert.deepEqual(amountsOf(text, { columns: ['ingredient', 'leave out', 'percent'] }), ['500%', '345%'])
  assert.deepEqual(amountsOf(text, { columns: ['ingredient', 'ounces', 'leave out'] }), ['1025 oz', '690 oz'])
  assert.deepEqual(amountsOf(text, { headingRows: 1 }), ['690 g'])
  assert.equal(read(text, { formulaName: 'Mill wheat' }).formulas[0]!.name, 'Mill wheat')
  const blank = 'Bread flour\t500\nWater\t300\n\nBread flour\t100\nWater\t80'
  assert.equal(read(blank).formulas[0]!.stages.length, 2)
  assert.equal(read(blank, { stages: 'none' }).formulas[0]!.stages.length, 1)
  assert.match(
    read(text, { columns: ['note', 'grams', 'note'] }).problems[0]!.message,
    /which column holds the ingredients/,
  )
})

test('a mapping is found again by its headings, whatever the rows and their case', () => {
  const key = (text: string) => headingsKey(guessTable(text))
  assert.equal(key('Zutat;Menge\nMehl;100'), key('zutat ;MENGE\nSalz;2\nWasser;70'))
  assert.notEqual(key('Zutat;Menge\nMehl;100'), key('Zutat;Gramm\nMehl;100'))
  assert.equal(key('Water\t70 g'), key('Salt\t2 g'))
  assert.notEqual(key('Water\t70 g'), key('Water\t70 g\tcold'))
})

test('reading tells how far it is, and stops when asked', () => {
  const text = `Ingredient;g\n${Array.from({ length: 9000 }, (_, i) => `Water;${i}`).join('\n')}`
  const done: number[] = []
  const table = guessTable(text)
  readTable(table, table.mapping, undefined, { progress: (at, of) => done.push(at / of) })
  assert.ok(done.length > 5)
  assert.deepEqual(
    done,
    [...done].sort((a, b) => a - b),
  )
  assert.equal(done.at(-1), 1)
  let asked = 0
  const stopped = readTable(table, table.mapping, undefined, { stopped: () => ++asked > 3 })
  assert.equal(stopped.stopped, true)
  assert.deepEqual(stopped.formulas, [])
  assert.match(stopped.problems[0]!.message, /^Reading was stopped/)
  const unguessed = guessTable(text, undefined, { stopped: () => true })
  assert.equal(unguessed.stopped, true)
  assert.equal(readTable(unguessed, unguessed.mapping).stopped, true)
})

test('a formula of more lines than are kept is told and not made; one beside it is', () => {
  const row = (formula: string) => `${formula};Flour;1 g`
  const text = [
    'Formula;Ingredient;Amount',
    ...Array(5000).fill(row('Great')),
    row('Small'),
    row('Great'),
  ].join('\n')
  const { formulas, rows, problems } = read(text)
  assert.deepEqual(
    formulas.map(({ name, stages }) => [name, stages[0]!.lines.length]),
    [['Small', 1]],
  )
  assert.match(problems[0]!.message, /^Great has 5,001 lines; a formula holds at most 5,000\./)
  assert.equal(problems.length, 1)
  assert.equal(rows.length, 5003)
  assert.deepEqual(rows[5001], { ...rows[5001], became: 'line', formula: 'Small' })
  for (const at of [1, 5000, 5002]) {
    const { became, text: said, why } = rows[at]!
    assert.deepEqual([became, said], ['not understood', 'Great | Flour | 1 g'])
    assert.deepEqual(
      why!.map(({ code }) => code),
      ['lineOfTooMany'],
    )
  }
})

test('weights are kept beside percentages unless those of the final dough say more', () => {
  const rounded = 'Ingredient,Percent,Grams\nBread flour,100,1000\nWater,68.25,683\nSalt,2.05,21\n'
  assert.deepEqual(amountsOf(rounded), ['100%', '68.25%', '2.05%'])
  // 2.05 % of 1000 g is 20.5 g: with the weight in tenths neither says more, and the weight stays
  const exact = 'Ingredient,Percent,Grams\nBread flour,100,1000\nWater,68.25,682.5\nSalt,2.05,20.5\n'
  assert.deepEqual(amountsOf(exact), ['1000 g', '682.5 g', '20.5 g'])
  const withoutOne = 'Ingredient,Percent,Grams\nBread flour,100,1000\nWater,68.25,683\nSalt,2.05,\n'
  assert.deepEqual(amountsOf(withoutOne), ['1000 g', '683 g', '2.05%'])
})

const remarksOf = (text: string): string[] =>
  read(text).problems.flatMap(({ severity, message }) => (severity === 'remark' ? [message] : []))

for (const [what, lines, remarks] of [
  [
    'of each stage’s own flour, all agreeing',
    'Levain,Flour,100,100\nLevain,Water,80,80\nFinal dough,Flour,100,700\nFinal dough,Levain,20,140',
    [
      'Untitled formula gives percentages and weights. The weights are read; the percentages agree with them.',
    ],
  ],
  [
    'with a total that differs',
    'Final dough,Flour,100,700\nFinal dough,Water,70,490\nFinal dough,Total,183,1190',
    ['Untitled formula gives percentages and weights. The weights are read.'],
  ],
  [
    'of the whole flour',
    'Levain,Flour,12.5,100\nLevain,Water,12.5,100\nFinal dough,Flour,87.5,700\nFinal dough,Water,57.5,460\nFinal dough,Levain,25,200',
    [
      'Untitled formula gives percentages and weights. The weights are read; the percentages agree with them.',
      'The percentages of Untitled formula are of the whole flour in the file and are shown anew on each stage’s own flour, the weights unchanged.',
    ],
  ],
  [
    'of the final dough’s flour',
    'Levain,Flour,20,100\nLevain,Water,20,100\nFinal dough,Flour,100,500\nFinal dough,Levain,40,200',
    [
      'Untitled formula gives percentages and weights. The weights are read; the percentages agree with them.',
      'The flour of Levain is 20 % in the file; its percentages are shown anew on the stage’s own flour, the weights unchanged.',
    ],
  ],
] as const)
  test(`of percentages ${what}, it is said what becomes of them`, () => {
    assert.deepEqual(remarksOf(`Stage,Ingredient,%,g\n${lines}\n`), remarks)
  })

test('totals by their many names are compared with what they total', () => {
  const totals = (last: string) =>
    read(
      `Stage;Ingredient;g\nLevain;Ripe starter;40\nLevain;Bread flour;100\nLevain;Water;80\nFinal dough;Bread flour;1000\nFinal dough;Water;690\nFinal dough;Levain;210\n${last}`,
    ).totals.map(({ sentence }) => sentence)
  const agrees = (name: string, weight: string) =>
    `The file says ${name} ${weight}, and its lines add to that.`
  assert.deepEqual(totals(';Total;1900'), [agrees('Final dough', '1,900 g')])
  assert.deepEqual(totals(';Dough;1900'), [agrees('Final dough', '1,900 g')])
  assert.deepEqual(totals('Levain;Total;220'), [agrees('Levain', '220 g')])
  assert.deepEqual(totals(';Total levain;220'), [agrees('Levain', '220 g')])
  // everything once: 40 + 100 + 80 + 1000 + 690
  assert.deepEqual(totals(';Grand total;1910'), [agrees('Untitled formula', '1,910 g')])
  assert.deepEqual(totals(';Total flour;1100'), [agrees('total flour', '1,100 g')])
  // the starter is half flour, half water
  assert.deepEqual(totals(';Gesamtmehl;1120'), [agrees('total flour', '1,120 g')])
  assert.deepEqual(totals(';Total water;800'), ['The file says total water 800 g; its lines add to 770 g.'])
  assert.deepEqual(totals(';Summe;1901'), [
    'The file says Final dough 1,901 g; its lines add to 1,900 g, which rounding explains.',
  ])
  assert.deepEqual(totals(';Total seeds;90'), [
    'The file says Total seeds 90 g; it was not compared, for it is not known what Total seeds adds up.',
  ])
  // what goes in to taste weighs nothing here, and hides no total that is wrong
  assert.deepEqual(totals('Final dough;Bread spice;to taste\n;Total;1900'), [
    agrees('Final dough', '1,900 g'),
  ])
  assert.deepEqual(totals('Final dough;Bread spice;to taste\n;Total;2900'), [
    'The file says Final dough 2,900 g; its lines add to 1,900 g.',
  ])
})

test('names are read as recipes have them: turned round, warm, with a remark', () => {
  const linesOf = (text: string) =>
    read(text).formulas[0]!.stages[0]!.lines.map(({ ingredient, amount, note }) =>
      [ingredient, amount, note].filter(Boolean).join(' | '),
    )
  assert.deepEqual(
    linesOf(
      'Ingredient;g\nFlour, Bread;500\nlukewarm water;300\nButter, Unsalted;50\nSalt (fine);10\nHill meal, sifted;5',
    ),
    [
      'Bread flour | 500 g',
      'Water | 300 g | lukewarm',
      'Unsalted butter | 50 g',
      'Fine salt | 10 g',
      'Hill meal, sifted | 5 g',
    ],
  )
  assert.deepEqual(linesOf('Ingrédient;g\nbeurre, doux;60\nEau tiède (28 °C);300\nSel 2,1;9'), [
    'Beurre doux | 60 g',
    'Eau | 300 g | tiède, 28 °C',
    'Sel 2,1 | 9 g',
  ])
})
