import assert from 'node:assert/strict'
import { test } from 'node:test'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { type CellName, workingText } from '../../src/dough/workings/working.js'
import { near } from '../assert.js'
import { formulaOf, withStages, workedCheck } from './notation.js'

const saidOf = (sheet: ReturnType<typeof openFormula>, cell: CellName) => {
  const { words, figures, sources } = sheet.working(cell)
  return [words, figures, ...sources.map(s => `${s.words}: ${s.figure}${s.how && ` (${s.how})`}`)]
}

test('true hydration shows the water and flour of the dough and what the levain carried', () => {
  assert.deepEqual(saidOf(openFormula(formulaOf(workedCheck)), 'trueHydration'), [
    'all water ÷ all flour',
    '785.5 g ÷ 1,114.5 g = 70.5 %',
    'water in Final dough: 690 g',
    'water carried by Levain: 95.5 g (210 g × 100 g ÷ 220 g)',
    'bread flour in Final dough: 820 g',
    'wholemeal spelt in Final dough: 180 g',
    'flour carried by Levain: 114.5 g (210 g × 120 g ÷ 220 g)',
  ])
})

test('a working is followed down to what was typed', () => {
  const sheet = openFormula(formulaOf(workedCheck))
  const carried = sheet.working('trueHydration').sources.find(s => s.words === 'water carried by Levain')!
  assert.deepEqual(saidOf(sheet, carried.cell!), [
    'what each line of Levain brings',
    '20 g + 80 g = 100 g, of 220 g in all',
    'water in ripe starter: 20 g (40 g × 100 ÷ 200)',
    'water in Levain: 80 g',
  ])
  const starter = sheet.working(carried.cell!).sources[0]!
  assert.deepEqual(saidOf(sheet, starter.cell!), ['typed: 40 g', '40 g'])
})

test('amounts show what they were worked out from', () => {
  const sheet = openFormula(
    formulaOf('Final dough:\n bread flour = 100%\n salt = 2%\n oil = 2*salt + 5 g\n honey = 2 tbsp'),
  )
  assert.deepEqual(saidOf(sheet, sheet.cell('Final dough', 'salt', 'weight')!), [
    'typed: 2% of the flour of Final dough',
    '2% of 1,000 g = 20 g',
    'flour of Final dough: 1,000 g (100 % there)',
  ])
  assert.deepEqual(saidOf(sheet, sheet.cell('Final dough', 'oil', 'weight')!), [
    'typed: 2*salt + 5 g',
    '2*20 g + 5 g = 45 g',
    'salt in Final dough: 20 g',
  ])
  assert.deepEqual(saidOf(sheet, sheet.cell('Final dough', 'honey', 'weight')!), [
    'typed: 2 tbsp',
    '2 tbsp = 42 g',
    'a tbsp of honey: 21 g (from the larder, an estimate)',
  ])
  assert.deepEqual(saidOf(sheet, sheet.cell('Final dough', 'oil', 'percent')!).slice(0, 2), [
    'its weight ÷ the flour of Final dough',
    '45 g ÷ 1,000 g = 4.5 %',
  ])
})

test('a line that gives shows its hold, the equation and what is solved with it', () => {
  const sheet = openFormula(formulaOf(workedCheck))
  sheet.hold('trueHydration', 0.75, { stage: 'Final dough', ingredient: 'water' })
  sheet.hold('salt', 0.02, { stage: 'Final dough', ingredient: 'salt' })
  assert.deepEqual(saidOf(sheet, sheet.cell('Final dough', 'water', 'weight')!).slice(0, 2), [
    'water gives, so that true hydration is 75 %, solved together with salt held at 2 %',
    '740.5 g + 95.5 g = 75 % × 1,114.5 g',
  ])
})

test('a batch shows its factor, and a build what is needed and kept back', () => {
  const sheet = openFormula(
    withStages(formulaOf(workedCheck), s => (s.name === 'Levain' ? { ...s, keepBack: 50 } : s)),
  )
  sheet.make({ make: 'pieces', pieces: [{ count: 6, weight: 900 }], loss: 0.02 })
  assert.equal(
    saidOf(sheet, sheet.cell('Final dough', 'water', 'batch')!)[1],
    '690 g × 2.8684 = 1,979.2 g; in steps of 1 g: 1,979 g',
  )
  const [levain, dough] = sheet.formula.stages
  assert.equal(saidOf(sheet, `stage ${levain!.id} build`)[1], '602.4 g + 50 g = 652.4 g')
  assert.equal(saidOf(sheet, `stage ${dough!.id} build`)[1], '6 × 900 g ÷ 98 % = 5,510.2 g')
})

test('every number of a sheet has a working whose value is the number, or says why there is none', () => {
  const sheet = openFormula(formulaOf(`${workedCheck}\n oil = what\n egg = 2 each`))
  const names = [
    'trueHydration',
    'listedHydration',
    'moistureHydration',
    'salt',
    'prefermentedFlour',
    'levainOnFlour',
    'totalFlour',
    'totalWater',
    'doughWeight',
    'egg',
  ] as const
  for (const name of names) {
    const working = sheet.working(name)
    if (working.problem) assert.equal(sheet.reading(name), undefined)
    else near(working.value, sheet.reading(name)!, 1e-15)
  }
  for (const line of sheet.formula.stages.flatMap(s => s.lines)) {
    const { weight, percent, wholeDough, batch } = sheet.line(line.id)
    for (const [what, value] of Object.entries({ weight, percent, wholeDough, batch })) {
      if (what === 'wholeDough' && value === undefined) continue
      const working = sheet.working(`line ${line.id} ${what as 'weight'}`)
      if (value === undefined) assert.ok(working.problem, `${line.ingredient} ${what}`)
      else near(working.value, value, 1e-12, `${line.ingredient} ${what}`)
    }
  }
})

test('a working can be copied as text, and an unknown cell is refused', () => {
  const sheet = openFormula(formulaOf(workedCheck))
  assert.match(
    workingText(sheet.working('salt')),
    /^Salt\nall salt ÷ all flour\n21 g ÷ 1,114\.5 g = 1\.88 %\n {2}salt in Final dough: 21 g/,
  )
  assert.throws(() => sheet.working('line nowhere weight'), RangeError)
})
