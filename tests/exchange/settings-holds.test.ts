import assert from 'node:assert/strict'
import { test } from 'node:test'
import { type Formula, finalDoughOf, type Hold } from '../../src/dough/document/formula.js'
import { readingWords } from '../../src/dough/document/words.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { readFormulas, writeFormulas } from '../../src/exchange/index.js'
import { formulaOf } from '../dough/notation.js'
import { readWell, shown, told } from './notation.js'

const loaf = formulaOf(`
  Levain:
    Ripe starter = 40 g
    Bread flour = 100 g
    Water = 80 g
  Final dough:
    Bread flour = 820 g
    Water = 600 g
    Salt = 21 g
    Levain = 210 g
    Water = 90 g
`)
const lines = finalDoughOf(loaf).lines
const [flour, water, salt, levain, held] = lines
const holding = (...holds: readonly Hold[]): Formula => ({ ...loaf, holds })
const holdRows = (csv: string) => csv.split('\r\n').filter(row => row.includes(',hold '))

test('holds are written with the line that gives, a second line of an ingredient as (2)', () => {
  const formula = holding(
    { reading: 'trueHydration', value: 0.75, line: held!.id },
    { reading: 'salt', value: 0.02, line: salt!.id },
    { reading: 'doughWeight', value: 2000, line: flour!.id },
    { reading: 'wholeDough', value: 0.1 + 0.2, line: water!.id },
    { reading: 'prefermentedFlour', value: 0.15, line: levain!.id },
  )
  const written = writeFormulas([formula])
  assert.deepEqual(holdRows(written), [
    'Test,,Water (2),75%,,,hold true hydration,,,',
    'Test,,Salt,2%,,,hold salt,,,',
    'Test,,Bread flour,2000 g,,,hold dough weight,,,',
    'Test,,Water,30%,,,hold whole dough,,,',
    'Test,,Levain,15%,,,hold prefermented flour,,,',
  ])
  const [again] = readWell(written)
  assert.equal(
    shown(again!),
    shown({ ...formula, holds: formula.holds!.map(h => (h.line === water!.id ? { ...h, value: 0.3 } : h)) }),
  )
  assert.equal(writeFormulas([again!]), written)
})

for (const [reading, words] of Object.entries(readingWords))
  test(`${words} can be held by a file`, () => {
    const hold = { reading: reading as Hold['reading'], value: 0.0188, line: salt!.id }
    const [formula] = readWell(writeFormulas([holding(hold)]))
    assert.deepEqual(formula!.holds, [{ ...hold, line: finalDoughOf(formula!).lines[2]!.id }])
  })

test('several lines may each hold a share of the whole dough', () => {
  const [formula] = readWell(
    writeFormulas([
      holding(
        { reading: 'wholeDough', value: 0.02, line: salt!.id },
        { reading: 'wholeDough', value: 0.78, line: water!.id },
      ),
    ]),
  )
  assert.deepEqual(
    formula!.holds!.map(h => [h.reading, h.value]),
    [
      ['wholeDough', 0.02],
      ['wholeDough', 0.78],
    ],
  )
})

test('a reading held by a file has its value', () => {
  const hold: Hold = { reading: 'trueHydration', value: 0.75, line: held!.id }
  const [formula] = readWell(writeFormulas([holding(hold)]))
  assert.ok(Math.abs(openFormula(formula!).reading('trueHydration')! - 0.75) < 1e-12)
})

test('a line called Water (2) is not the second water', () => {
  const named = { ...held!, ingredient: 'Water (2)' }
  const third = { ...held!, id: 'third' }
  const stages = [loaf.stages[0]!, { ...finalDoughOf(loaf), lines: [...lines.slice(0, 4), named, third] }]
  for (const line of [water!.id, named.id, 'third']) {
    const formula = { ...loaf, stages, holds: [{ reading: 'salt', value: 0.02, line } as const] }
    assert.equal(shown(readWell(writeFormulas([formula]))[0]!), shown(formula))
  }
})

test('a hold whose line is gone is not written, and a line that only gives is', () => {
  const blank = { id: 'blank', ingredient: '', amount: '', note: '' }
  const stages = [{ ...finalDoughOf(loaf), lines: [...lines, blank] }]
  const formula: Formula = {
    ...loaf,
    stages,
    holds: [
      { reading: 'salt', value: 0.02, line: 'gone' },
      { reading: 'totalWater', value: 700, line: 'blank' },
    ],
  }
  const written = writeFormulas([formula])
  assert.deepEqual(holdRows(written), ['Test,,Unnamed ingredient,700 g,,,hold total water,,,'])
  assert.equal(writeFormulas(readWell(written)), written)
})

const bread =
  'formula,stage,ingredient,amount,setting\nLoaf,,Salt,2%,hold salt\nLoaf,Levain,Seed,1 g,\nLoaf,Dough,Salt,,\nLoaf,Dough,Water,60%,\n'
for (const [row, problem] of [
  [
    'Seed,75%,hold true hydration',
    'says that Seed gives, but the final dough has no such line. Name one of its ingredients.',
  ],
  [
    'Water (2),75%,hold true hydration',
    'says that Water (2) gives, but the final dough has no such line. Name one of its ingredients.',
  ],
  [
    'salt,75%,Hold True Hydration',
    'says that salt gives, but it gives for another reading already. Let another line give.',
  ],
  [',75%,hold true hydration', 'does not say which line of the final dough gives. Name its ingredient.'],
  ['Water,wet,hold true hydration', 'has “wet” for “hold true hydration”. Write a percentage, like 75%.'],
  ['Water,0.75,hold true hydration', 'has “0.75” for “hold true hydration”. Write a percentage, like 75%.'],
  ['Water,75%,hold dough weight', 'has “75%” for “hold dough weight”. Write a weight, like 2000 g.'],
  ['Water,75%,hold stickiness', 'holds “stickiness”, which is not a reading known here.'],
] as const)
  test(`of ${row} is said what is wrong, and it is kept`, () => {
    const { formulas, problems } = readFormulas(`${bread}Loaf,,${row}\n`)
    assert.deepEqual(told(problems), [`6 warning: Row 6 ${problem} It is kept.`])
    const [ingredient, amount, setting] = row.split(',')
    assert.deepEqual(formulas[0]!.keptSettings, [
      { stage: '', setting, amount, note: '', ...(ingredient ? { ingredient } : {}) },
    ])
    assert.equal(formulas[0]!.holds!.length, 1)
    const written = writeFormulas(formulas)
    assert.equal(writeFormulas(readFormulas(written).formulas), written)
  })

test('a reading is held once: the first row stands', () => {
  const { formulas, problems } = readFormulas(`${bread}Loaf,,Water,3%,hold salt\n`)
  assert.deepEqual(told(problems), [
    '6 error: Row 6 sets “hold salt” a second time. The first stands; take one away.',
  ])
  assert.equal(formulas[0]!.holds!.length, 1)
})
