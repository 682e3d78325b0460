import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { ReadingName } from '../../src/dough/document/reading-names.js'
import { type FormulaSheet, openFormula } from '../../src/dough/formula-sheet.js'
import { outOfReach, reachOf } from '../../src/dough/remarks/reach.js'
import { randomOf } from '../random.js'
import { formulaOf, workedCheck } from './notation.js'
import { plainLarder } from './plain-larder.js'

type Held = readonly [ReadingName, number, string]

const mill = workedCheck
  .replaceAll('ripe starter', 'starter')
  .replaceAll('bread flour', 'flour')
  .replaceAll('wholemeal spelt', 'spelt')

function holding(text: string, ...holds: readonly Held[]): FormulaSheet {
  const sheet = openFormula(formulaOf(text), plainLarder)
  for (const [reading, value, ingredient] of holds)
    sheet.hold(reading, value, { stage: 'Final dough', ingredient })
  return sheet
}
const giver = ({ workedOut: { outline } }: FormulaSheet, ingredient: string) =>
  outline.giving.find(l => l.line.ingredient === ingredient)!
const near = (actual: number | undefined, expected: number, said = '') =>
  assert.ok(
    actual === expected ||
      Math.abs((actual ?? Number.NaN) - expected) <= 1e-9 * Math.max(1, Math.abs(expected)),
    `${actual} is ${expected} ${said}`,
  )

interface Case {
  readonly title: string
  readonly text?: string
  readonly holds: readonly Held[] // the first cannot be
  readonly least: number
  readonly most: number
  readonly said: string
}

// The levain of 220 g has 120 g of flour and 100 g of water; the dough takes 210 g of it.
const cases: readonly Case[] = [
  {
    title: 'without any water of its own the dough has that of the levain',
    holds: [['trueHydration', 0.05, 'water']],
    least: 21000 / 245200,
    most: Number.POSITIVE_INFINITY,
    said: 'True hydration cannot be 5 %: at least 8.57 % while flour, spelt and levain stay.',
  },
  {
    title: 'with ever more levain the hydration is its own',
    holds: [['trueHydration', 0.95, 'levain']],
    least: 690 / 1000,
    most: 100 / 120,
    said: 'True hydration cannot be 95 %: at most 83.3 % while flour, spelt and water stay.',
  },
  {
    title: 'with ever more levain all flour is fermented but for nothing',
    holds: [['prefermentedFlour', 1.2, 'levain']],
    least: 0,
    most: 1,
    said: 'Prefermented flour cannot be 120 %: at most 100 % while flour and spelt stay.',
  },
  {
    title: 'without flour of its own the most hydration is reached',
    holds: [['trueHydration', 3, 'flour']],
    // (690 + 2100/22) ÷ (180 + 2520/22)
    least: 0,
    most: (690 * 22 + 2100) / (180 * 22 + 2520),
    said: 'True hydration cannot be 300 %: at most 266.6 % while spelt, water and levain stay.',
  },
  {
    title: 'a dough weighs at least what does not give',
    holds: [['doughWeight', 1000, 'water']],
    least: 820 + 180 + 21 + 210,
    most: Number.POSITIVE_INFINITY,
    said: 'Dough weight cannot be 1,000 g: at least 1,231 g while flour, spelt, salt and levain stay.'.replace(
      'flour, spelt, salt and levain',
      'the other lines',
    ),
  },
  {
    // Water x, levain y with 12y/22 of flour: dough 1021 + x + y = 1900; flour 1000 + 12y/22; water x + 10y/22.
    // The least is at x = 0, y = 879: 879·10/22 ÷ (1000 + 879·12/22); the most at y = 0: 879 ÷ 1000.
    title: 'another hold that is kept takes part',
    holds: [
      ['trueHydration', 0.9, 'water'],
      ['doughWeight', 1900, 'levain'],
    ],
    least: 8790 / (22000 + 879 * 12),
    most: 0.879,
    said: 'True hydration cannot be 90 %: at most 87.9 % while levain stays.',
  },
]

for (const { title, text = mill, holds, least, most, said } of cases)
  test(title, () => {
    const sheet = holding(text, ...holds)
    const [, , ingredient] = holds[0]!
    const reach = reachOf(sheet.workedOut, giver(sheet, ingredient))!
    near(reach.least, least, 'at least')
    near(reach.most, most, 'at most')
    assert.equal(outOfReach(sheet.workedOut)?.line, giver(sheet, ingredient))
    const problems = sheet.problems.filter(p => p.severity === 'error').map(p => p.message)
    assert.ok(problems.includes(said), problems.join('\n'))
  })

test('what is within reach is not told about', () => {
  const sheet = holding(
    mill,
    ['trueHydration', 0.75, 'water'],
    ['salt', 0.02, 'salt'],
    ['prefermentedFlour', 0.15, 'levain'],
  )
  assert.equal(outOfReach(sheet.workedOut), undefined)
  for (const line of sheet.workedOut.outline.giving) {
    const { least, most } = reachOf(sheet.workedOut, line)!
    assert.ok(least <= line.gives!.value && line.gives!.value <= most)
  }
})

const seed = 91
test(`a reading is held wherever it reaches, and nowhere else (seed ${seed})`, () => {
  const random = randomOf(seed)
  const readings = [
    'trueHydration',
    'salt',
    'prefermentedFlour',
    'totalFlour',
    'totalWater',
    'doughWeight',
    'listedHydration',
  ] as const
  let within = 0
  for (let run = 0; run < 130; run++) {
    const amount = () => `${1 + random.below(900)}${random.pick([' g', ' g', '%'])}`
    const text = `
      Levain:
        starter = ${1 + random.below(90)} g
        flour = ${1 + random.below(90)} g
        water = ${1 + random.below(90)} g
      Final dough:
        flour = ${random.pick(['60%', '700 g'])}
        rye = ${random.pick(['40%', '10%', '150 g'])}
        water = ${amount()}
        salt = ${random.pick(['2%', '15 g', '0.02*flour'])}
        levain = ${amount()}`
    const lines = ['flour', 'rye', 'water', 'salt', 'levain'].filter(() => random.below(2) === 0)
    const free = [...readings]
    const holds = lines.slice(0, 3).map((line): Held => {
      const reading = free.splice(random.below(free.length), 1)[0]!
      const isWeight = /Weight|total/.test(reading)
      return [reading, isWeight ? 200 + random.below(3000) : random.below(120) / 100, line]
    })
    if (holds.length === 0) continue
    const sheet = holding(text, ...holds)
    const given = giver(sheet, holds[0]![2])
    const reach = given && reachOf(sheet.workedOut, given)
    if (!reach) continue
    const [reading, , ingredient] = holds[0]!
    const { least, most } = reach
    const tries = [
      [least * 0.99 + Math.min(most, least + 1) * 0.01, true],
      [least - 0.01 * Math.max(0.1, least), false],
      [most + 0.01 * most, false],
    ] as const
    for (const [value, isReached] of tries) {
      if (!(value >= 0 && value < 1e6) || (isReached && most - least < 1e-6)) continue
      sheet.hold(reading, value, { stage: 'Final dough', ingredient })
      const now = sheet.reading(reading)
      if (isReached) near(now, value, `run ${run} ${JSON.stringify(holds)} ${least} ${most}`)
      else
        assert.ok(
          now === undefined || sheet.weight('Final dough', ingredient) === undefined,
          `run ${run}: ${reading} ${value}, ${least} to ${most}`,
        )
      within += 1
    }
  }
  assert.ok(within > 97, `${within} tried`)
})
