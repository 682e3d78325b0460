import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Formula } from '../../src/dough/document/formula.js'
import { applyChanges, emptyWorkbook, type Workbook } from '../../src/dough/document/workbook.js'
import { writeInGrams, writeInPercentages } from '../../src/dough/edits/fetched/rebase.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import {
  formulaFromLink,
  linkOf,
  readFormulas,
  readHtml,
  readMarkdown,
  readPlainText,
  readWorkbookFile,
  writeFormulas,
  writeHtml,
  writeMarkdown,
  writePlainText,
  writeWorkbookFile,
} from '../../src/exchange/index.js'
import { formulaOf, lineOf, withStages } from './notation.js'
import { plainLarder } from './plain-larder.js'

/** A soaker of 150 g and a levain of 220 g, both whole in a dough of 2,040 g. */
const seeded = (soaker = 'all of it', levain = 'all of it', water = '90 g'): Formula =>
  formulaOf(`
    Soaker:
      linseed = 60 g
      water = ${water}
    Levain:
      starter = 40 g
      flour = 100 g
      water = 80 g
    Final dough:
      flour = 1000 g
      water = 650 g
      salt = 20 g
      Soaker = ${soaker}
      Levain = ${levain}`)
const open = (formula: Formula) => openFormula(formula, plainLarder)
const near = (actual: number | undefined, expected: number) =>
  assert.ok(
    Math.abs((actual ?? Number.NaN) - expected) <= 1e-9 * Math.max(1, expected),
    `${actual} is ${expected}`,
  )

test('a line takes all that its stage makes, and follows it', () => {
  const sheet = open(seeded())
  near(sheet.weight('Final dough', 'Soaker'), 150)
  near(sheet.weight('Final dough', 'Levain'), 220)
  near(sheet.reading('doughWeight'), 2040)
  near(sheet.reading('trueHydration'), (650 + 90 + 20 + 80) / (1000 + 20 + 100))
  sheet.enter('Soaker', 'water', 'weight', '120')
  near(sheet.weight('Final dough', 'Soaker'), 180)
  assert.equal(lineOf(sheet.formula, 'Final dough', 'Soaker').amount, 'all of it')
  assert.deepEqual(sheet.problems, [])
})

for (const typed of [
  'all',
  'All of it',
  'tout',
  'le tout',
  'all of the soaker',
  'the whole Soaker',
  'tout le soaker',
  'alles',
])
  test(`it is typed “${typed}” and kept so`, () => {
    const sheet = open(seeded('10 g'))
    sheet.enter('Final dough', 'Soaker', 'percent', typed)
    near(sheet.weight('Final dough', 'Soaker'), 150)
    const { amount, id } = lineOf(sheet.formula, 'Final dough', 'Soaker')
    assert.equal(amount, typed)
    assert.equal(sheet.line(id).typed, typed)
    assert.equal(sheet.line(id).typedIn, 'weight')
  })

test('it can be calculated with', () => {
  near(open(seeded('all_of_it/2')).weight('Final dough', 'Soaker'), 75)
  near(open(seeded('all_of_it - 20 g')).weight('Final dough', 'Soaker'), 130)
})

test('what others take of the stage and what is lost of it is not taken', () => {
  const shared = formulaOf(`
    Mother:
      starter = 40 g
      flour = 100 g
      water = 80 g
    Sour:
      rye = 100 g
      Mother = 50 g
    Final dough:
      flour = 500 g
      Sour = all of it
      Mother = all of it`)
  const sheet = open(withStages(shared, s => (s.name === 'Mother' ? { ...s, loss: 0.1 } : s)))
  near(sheet.weight('Final dough', 'Sour'), 150)
  near(sheet.weight('Final dough', 'Mother'), 220 * 0.9 - 50)
  sheet.enter('Sour', 'Mother', 'weight', '20')
  near(sheet.weight('Final dough', 'Mother'), 220 * 0.9 - 20)
})

test('a change of what is lost is followed', () => {
  const formula = seeded()
  const sheet = open(formula)
  sheet.update(withStages(formula, s => (s.name === 'Levain' ? { ...s, loss: 0.05 } : s)))
  near(sheet.weight('Final dough', 'Levain'), 209)
})

test('holds and the batch work with it', () => {
  const sheet = open(seeded())
  sheet.hold('trueHydration', 0.8, { stage: 'Final dough', ingredient: 'water' })
  near(sheet.weight('Final dough', 'water'), 0.8 * 1120 - 190)
  sheet.release('trueHydration')
  sheet.make({ make: 'dough', grams: 5100 })
  near(sheet.batchWeight('Final dough', 'Soaker'), 375)
  near(sheet.batchWeight('Soaker', 'linseed'), 150)
  near(sheet.batchWeight('Levain', 'water'), 200)
})

test('its stage may give way to a hold elsewhere without a circle', () => {
  const sheet = open(seeded())
  sheet.hold('prefermentedFlour', 0.2, { stage: 'Final dough', ingredient: 'Levain' })
  // 120/220 of it is flour: x·120/220 = 0.2·(1000 + x·120/220)
  near(sheet.weight('Final dough', 'Levain'), (0.2 * 1000) / (0.8 * (120 / 220)))
  assert.equal(lineOf(sheet.formula, 'Final dough', 'Levain').amount, 'all of it')
})

const said = (formula: Formula): string[] => open(formula).problems.map(p => p.code)

test('of a stage in percentages nothing says how much all of it is, until one of its lines is in grams', () => {
  const formula = formulaOf(`
    Soaker:
      linseed = 100%
      water = 150%
    Final dough:
      flour = 100%
      water = 65%
      Soaker = all of it`)
  const sheet = open(formula)
  assert.ok(
    sheet.problems.some(p =>
      p.message.includes('so its weight is not known. Write one of its lines in grams'),
    ),
  )
  sheet.enter('Soaker', 'linseed', 'weight', '60')
  near(sheet.weight('Final dough', 'Soaker'), 150)
  sheet.enter('Soaker', 'linseed', 'percent', '100')
  assert.equal(sheet.weight('Final dough', 'Soaker'), undefined)
})

test('a line of no stage, and two lines of one stage, are told about', () => {
  assert.ok(said(formulaOf('Final dough:\nflour = 100%\nwater = all of it')).includes('lineWithoutFigure'))
  const twice = formulaOf(`
    Soaker:
      linseed = 60 g
    Levain:
      flour = 100 g
      Soaker = all of it
    Final dough:
      flour = 100%
      Soaker = all of it
      Levain = all of it`)
  const sheet = open(twice)
  assert.match(sheet.problems[0]!.message, /All of Soaker is taken in (?:Levain|Final dough) as well/)
  sheet.enter('Levain', 'Soaker', 'weight', '25')
  near(sheet.weight('Final dough', 'Soaker'), 35)
  near(sheet.weight('Final dough', 'Levain'), 125)
})

test('its working has the weight of the stage', () => {
  const sheet = open(seeded())
  const working = sheet.working(sheet.cell('Final dough', 'Soaker', 'weight')!)
  assert.equal(working.words, 'typed: all of it')
  assert.equal(working.figures, '150 g = 150 g')
  assert.deepEqual(
    working.sources.map(s => `${s.words} ${s.figure}`),
    ['Soaker 150 g'],
  )
})

test('writing anew changes no weight', () => {
  for (const write of [writeInGrams, writeInPercentages]) {
    const sheet = open(seeded())
    const workbook: Workbook = { ...emptyWorkbook, formulas: [sheet.formula] }
    const after = open(applyChanges(workbook, write(sheet).changes).workbook.formulas[0]!)
    for (const [stage, ingredient] of [
      ['Final dough', 'Soaker'],
      ['Levain', 'water'],
      ['Soaker', 'linseed'],
    ] as const)
      near(after.weight(stage, ingredient), sheet.weight(stage, ingredient)!)
  }
})

test('it leaves as it was typed and comes back so, by every way', async () => {
  const formula = seeded('tout', 'all of the levain')
  const csv = writeFormulas([formula])
  const workbook = { ...emptyWorkbook, formulas: [formula] }
  const sheet = openSheet(formula)
  const link = String(await linkOf(formula, 'https://example.org/'))
  const opened = await formulaFromLink(new URL(link).hash)
  assert.ok('formula' in opened)
  const back = [
    opened.formula,
    readFormulas(csv).formulas[0]!,
    readWorkbookFile(writeWorkbookFile(workbook)).workbook!.formulas[0]!,
    readPlainText(writePlainText(sheet)).formulas[0]!,
    readMarkdown(writeMarkdown(sheet)).formulas[0]!,
    readHtml(writeHtml(sheet)).formulas[0]!,
  ]
  for (const read of back) {
    assert.equal(lineOf(read, 'Final dough', 'Soaker').amount, 'tout')
    assert.equal(lineOf(read, 'Final dough', 'Levain').amount, 'all of the levain')
  }
  assert.equal(writeFormulas(readFormulas(csv).formulas), csv)
})
