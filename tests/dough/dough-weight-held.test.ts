import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Formula } from '../../src/dough/document/formula.js'
import { applyChanges, emptyWorkbook } from '../../src/dough/document/workbook.js'
import { enterAmount } from '../../src/dough/edits/edits.js'
import { writeInGrams, writeInPercentages } from '../../src/dough/edits/fetched/rebase.js'
import { type FormulaSheet, openFormula } from '../../src/dough/formula-sheet.js'
import {
  readFormulas,
  readMarkdown,
  readPlainText,
  writeFormulas,
  writeMarkdown,
  writePlainText,
} from '../../src/exchange/index.js'
import { randomOf } from '../random.js'
import { formulaOf, lineOf, withStages, workedCheck } from './notation.js'
import { plainLarder } from './plain-larder.js'

const near = (actual: number | undefined, expected: number, said = '') =>
  assert.ok(
    Math.abs((actual ?? Number.NaN) - expected) <= 1e-9 * Math.max(1, Math.abs(expected)),
    `${actual} is ${expected} ${said}`,
  )
const open = (text: string) => openFormula(formulaOf(text), plainLarder)
const held = (text: string, grams: number): FormulaSheet => {
  const sheet = open(text)
  sheet.hold('doughWeight', grams)
  return sheet
}

const inPercentages = 'Final dough:\nflour = 80%\nrye = 20%\nwater = 70%\nsalt = 2%'
const inGrams = `
  Levain:
    starter = 40 g
    flour = 100 g
    water = 80 g
  Final dough:
    flour = 820 g
    rye = 180 g
    water = 690 g
    salt = 2*10 g + 1 g
    Levain = 210 g`

test('a dough in percentages is scaled by its flour', () => {
  const sheet = held(inPercentages, 2580)
  // 172 % are 2,580 g: 1,500 g of flour.
  near(sheet.weight('Final dough', 'flour'), 1200)
  near(sheet.weight('Final dough', 'rye'), 300)
  near(sheet.weight('Final dough', 'water'), 1050)
  near(sheet.weight('Final dough', 'salt'), 30)
  near(sheet.reading('totalFlour'), 1500)
  near(sheet.reading('trueHydration'), 0.7)
  assert.deepEqual(sheet.problems, [])
})

test('a dough in grams is scaled line by line, its earlier stages too, and all stays as typed', () => {
  const sheet = held(inGrams, 3842) // twice 1,921 g
  for (const [stage, ingredient, grams] of [
    ['Levain', 'starter', 80],
    ['Levain', 'water', 160],
    ['Final dough', 'flour', 1640],
    ['Final dough', 'salt', 42],
    ['Final dough', 'Levain', 420],
  ] as const)
    near(sheet.weight(stage, ingredient), grams, ingredient)
  near(sheet.stage(sheet.formula.stages[0]!.id).weight, 440)
  near(sheet.stage(sheet.formula.stages[0]!.id).taken, 420)
  near(sheet.reading('doughWeight'), 3842)
  assert.equal(lineOf(sheet.formula, 'Final dough', 'flour').amount, '820 g')
  const figures = sheet.line(lineOf(sheet.formula, 'Final dough', 'flour').id)
  assert.deepEqual([figures.typed, figures.plain, figures.typedIn], ['820 g', false, 'weight'])
  sheet.release('doughWeight')
  near(sheet.weight('Final dough', 'flour'), 820)
})

test('other holds are kept with it, those of weights too', () => {
  const sheet = held(inGrams, 2000)
  sheet.hold('trueHydration', 0.75, { stage: 'Final dough', ingredient: 'water' })
  sheet.hold('salt', 0.02, { stage: 'Final dough', ingredient: 'salt' })
  near(sheet.reading('trueHydration'), 0.75)
  near(sheet.reading('salt'), 0.02)
  near(sheet.reading('doughWeight'), 2000)
  near(sheet.weight('Final dough', 'flour')! / sheet.weight('Final dough', 'rye')!, 820 / 180)
  sheet.hold('totalWater', 900, { stage: 'Final dough', ingredient: 'water' })
  sheet.release('trueHydration')
  near(sheet.reading('totalWater'), 900)
  near(sheet.reading('doughWeight'), 2000)
})

test('what a line takes in proportion to others, of another stage or all of it follows', () => {
  const sheet = held(
    `
    Soaker:
      seeds = 100 g
      water = 100 g
    Final dough:
      flour = 1000 g
      water = 600 g
      salt = 0.02*flour
      oil = soaker.weight/10
      Soaker = all of it`,
    3680,
  )
  // As written 1,000 + 600 + 20 + 20 + 200 = 1,840 g.
  for (const [ingredient, grams] of [
    ['flour', 2000],
    ['salt', 40],
    ['oil', 40],
    ['Soaker', 400],
  ] as const)
    near(sheet.weight('Final dough', ingredient), grams, ingredient)
})

test('jottings speak of what is scaled, and a weight in them stays what it is', () => {
  const formula: Formula = {
    ...formulaOf(inGrams),
    jottings: [
      { id: 'j1', name: 'per loaf', text: 'dough_weight/4' },
      { id: 'j2', name: 'tin', text: '900 g' },
      { id: 'j3', name: 'left', text: 'dough_weight - 2*tin' },
      { id: 'j4', name: 'bran', text: 'flour/41 + rye/18' },
    ],
  }
  const sheet = openFormula(formula, plainLarder)
  sheet.hold('doughWeight', 3842)
  near(sheet.jotting('j1').value, 960.5)
  near(sheet.jotting('j2').value, 900)
  near(sheet.jotting('j3').value, 2042)
  near(sheet.jotting('j4').value, 1640 / 41 + 360 / 18)
})

test('the batch makes so many times what is scaled', () => {
  const sheet = held(inGrams, 3842)
  near(sheet.batchWeight('Levain', 'starter'), 80)
  sheet.make({ make: 'factor', factor: 3 })
  near(sheet.batchWeight('Final dough', 'flour'), 4920)
  near(sheet.batchWeight('Levain', 'starter'), 40 * 6 * (210 / 220))
  sheet.make({ make: 'dough', grams: 1921 })
  near(sheet.batchWeight('Final dough', 'flour'), 820)
  sheet.make({ make: 'flour', grams: 1114.545454545454 })
  near(sheet.batchWeight('Final dough', 'flour'), 820)
  sheet.update(withStages(sheet.formula, s => (s.name === 'Levain' ? { ...s, keepBack: 50 } : s)))
  sheet.make({ make: 'as written' })
  near(sheet.batchWeight('Final dough', 'flour'), 1640)
  near(sheet.stage(sheet.formula.stages[0]!.id).build, 470)
})

const after = (
  sheet: FormulaSheet,
  edit: (w: { formulas: Formula[] }) => { changes: readonly never[] } | unknown,
) => {
  const workbook = { ...emptyWorkbook, formulas: [sheet.formula] }
  const { changes } = edit(workbook as never) as { changes: never[] }
  return openFormula(applyChanges(workbook, changes).workbook.formulas[0]!, plainLarder)
}

test('typing a weight lets it go, a percentage does not', () => {
  const sheet = held(inPercentages, 2580)
  const { id: stage } = sheet.formula.stages[0]!
  const type = (text: string) =>
    after(sheet, workbook =>
      enterAmount(
        workbook as never,
        { formula: sheet.formula.id, stage, line: lineOf(sheet.formula, 'Final dough', 'salt').id },
        'weight',
        text,
      ),
    )
  near(type('2.5%').reading('doughWeight'), 2580)
  near(type('0.025*flour').reading('doughWeight'), 2580)
  assert.equal(type('20').formula.holds?.length, 0)
  near(type('20').weight('Final dough', 'salt'), 20)
})

test('a named line still gives alone, and takes the place of all', () => {
  const sheet = held(inGrams, 2000)
  sheet.hold('doughWeight', 2021, { stage: 'Final dough', ingredient: 'water' })
  near(sheet.weight('Final dough', 'water'), 790)
  near(sheet.weight('Final dough', 'flour'), 820)
  assert.equal(sheet.formula.holds?.length, 1)
})

test('it leaves and comes back, as a file and as text', () => {
  const { formula } = held(inGrams, 2000)
  for (const back of [
    readFormulas(writeFormulas([formula])).formulas[0]!,
    readPlainText(writePlainText(openFormula(formula, plainLarder))).formulas[0]!,
    readMarkdown(writeMarkdown(openFormula(formula, plainLarder))).formulas[0]!,
  ])
    assert.deepEqual(back.holds, [{ reading: 'doughWeight', value: 2000, line: '' }])
  const csv = writeFormulas([formula])
  assert.equal(writeFormulas(readFormulas(csv).formulas), csv)
})

test('writing anew changes no weight of a scaled dough', () => {
  for (const write of [writeInGrams, writeInPercentages]) {
    const sheet = held(inGrams, 2500)
    const now = after(sheet, () => write(sheet))
    for (const stage of sheet.formula.stages)
      for (const { ingredient } of stage.lines)
        near(
          now.weight(stage.name, ingredient),
          sheet.weight(stage.name, ingredient)!,
          `${write.name} ${ingredient}`,
        )
  }
})

test('its working says that all is scaled', () => {
  const sheet = held(inGrams, 3842)
  const working = sheet.working(sheet.cell('Final dough', 'flour', 'weight')!)
  assert.equal(working.words, 'typed: 820 g; all is scaled so that the dough weighs 3,842 g')
  assert.equal(working.figures, '820 g × 2 = 1,640 g')
  assert.match(sheet.working('doughWeight').figures, /= 3,842 g$/)
})

const seed = 77
test(`whatever the dough is made of, it weighs what it is held at and every proportion stays (seed ${seed})`, () => {
  const random = randomOf(seed)
  for (let run = 0; run < 100; run++) {
    const unit = () => random.pick([' g', '%'])
    const number = () => 1 + random.below(4000) / 16
    const levain = unit()
    const formula = formulaOf(`
      Levain:
        starter = ${number()}${levain}
        flour = ${levain === '%' ? 100 : number()}${levain}
        water = ${number()}${levain}
      Final dough:
        flour = ${random.pick(['100%', '80%', '640 g'])}
        ${random.pick(['rye = 20%', 'rye = 90 g', 'seeds = 12%'])}
        water = ${number()}${unit()}
        salt = ${random.pick(['2%', '19 g', '0.02*flour', '1 tsp'])}
        Levain = ${levain === '%' ? `${number()}${unit()}` : random.pick(['all of it', '20%', '130 g'])}`)
    const sheet = openFormula(formula, plainLarder)
    const weights = () => formula.stages.flatMap(s => s.lines.map(l => sheet.line(l.id).weight!))
    const ratios = () => (['trueHydration', 'salt', 'prefermentedFlour'] as const).map(r => sheet.reading(r)!)
    const [before, said] = [weights(), ratios()]
    const dough = sheet.reading('doughWeight')!
    const wanted = 100 + random.below(5000)
    sheet.hold('doughWeight', wanted)
    near(sheet.reading('doughWeight'), wanted, `run ${run}`)
    for (const [i, weight] of weights().entries())
      near(weight, (before[i]! * wanted) / dough, `run ${run}, line ${i}`)
    for (const [i, ratio] of ratios().entries()) near(ratio, said[i]!, `run ${run}`)
    const anew = openFormula(sheet.formula, plainLarder)
    assert.deepEqual(
      formula.stages.flatMap(s => s.lines.map(l => anew.line(l.id).weight)),
      weights(),
    )
  }
})

test('the worked check, held at 2,000 g', () => {
  const sheet = openFormula(formulaOf(workedCheck))
  sheet.hold('doughWeight', 2000)
  near(sheet.weight('Final dough', 'water'), (690 * 2000) / 1921)
  near(sheet.reading('prefermentedFlour'), 25200 / 245200)
})
