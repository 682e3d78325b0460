import assert from 'node:assert/strict'
import { test } from 'node:test'
import '../../src/dough/cells/rare-cells-at-once.js'
import type { Formula, Line } from '../../src/dough/document/formula.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { allTouched, bothTouched, untouched } from '../../src/dough/sheet/touched.js'
import { formulaOf, lineOf, withStages, workedCheck } from './notation.js'

/** The formula with another text in one line; everything else in it the same objects. */
const withLine = (formula: Formula, id: string, fields: Partial<Line>): Formula =>
  withStages(formula, stage =>
    stage.lines.some(l => l.id === id)
      ? { ...stage, lines: stage.lines.map(l => (l.id === id ? { ...l, ...fields } : l)) }
      : stage,
  )

const idOf = (formula: Formula, stage: string, ingredient: string) => lineOf(formula, stage, ingredient).id
const finalOf = (formula: Formula) => formula.stages.at(-1)!.id

test('a typed amount touches its line, its stage and the readings that count it', () => {
  const formula = formulaOf(workedCheck)
  const sheet = openSheet(formula)
  const salt = idOf(formula, 'Final dough', 'salt')
  const touched = sheet.update(withLine(formula, salt, { amount: '24 g' }))
  assert.deepEqual([...touched.lines], [salt])
  assert.deepEqual([...touched.stages], [finalOf(formula)])
  assert.deepEqual([...touched.readings].sort(), ['doughWeight', 'salt'])
  assert.ok(!touched.all && !touched.structure)
})

test('a note touches its line and nothing that is worked out', () => {
  const formula = formulaOf(workedCheck)
  const salt = idOf(formula, 'Final dough', 'salt')
  const touched = openSheet(formula).update(withLine(formula, salt, { note: 'sea salt' }))
  assert.deepEqual([[...touched.lines], touched.readings.size], [[salt], 0])
})

test('where the base moves, every percentage of the stage is touched that comes of a weight', () => {
  const formula = formulaOf(`
    Final dough:
      bread flour = 800 g
      wholemeal spelt = 200 g
      water = 690 g
      salt = 2%`)
  const touched = openSheet(formula).update(
    withLine(formula, idOf(formula, 'Final dough', 'wholemeal spelt'), { amount: '150 g' }),
  )
  assert.equal(touched.lines.size, 4) // the salt by its weight
})

test('what is weighed of a levain goes up a step where more is taken, though it is written as before', () => {
  const formula = formulaOf(`
    Levain:
      ripe starter = 40.4 g
      bread flour = 100.4 g
      water = 80.4 g
    Final dough:
      bread flour = 1000 g
      levain = 110.5 g
      levain = 109 g`)
  const sheet = openSheet(formula)
  const levain = formula.stages[0]!.lines.map(l => l.id)
  const [, flour, water] = levain as [string, string, string]
  const weighed = () => levain.map(id => sheet.weighed(id)!.grams)
  assert.deepEqual(weighed(), [40, 101, 80]) // the 221.2 g that are written, 111 + 109 g being taken
  const late = formula.stages[1]!.lines[2]!.id
  const touched = sheet.update(withLine(formula, late, { amount: '110.5 g' }))
  assert.deepEqual(weighed(), [40, 101, 81]) // 111 + 111 g are taken, and 221 g would be a gram short
  assert.ok(touched.lines.has(water) && !touched.lines.has(flour))
  const back = sheet.update(formula)
  assert.deepEqual(weighed(), [40, 101, 80])
  assert.ok(back.lines.has(water) && !back.lines.has(flour))
})

test('why a reading has no number is touched by what changes the reason alone', () => {
  const formula = formulaOf(`
    Levain:
      water = 50 g
      bread flour =
    Final dough:
      water = 100 g
      levain = 20 g`)
  const sheet = openSheet(formula)
  assert.equal(sheet.readingProblem('listedHydration')?.message, 'There is no flour in the formula yet.')
  const touched = sheet.update(withLine(formula, idOf(formula, 'Levain', 'bread flour'), { amount: '50 g' }))
  assert.equal(
    sheet.readingProblem('listedHydration')?.message,
    'The final dough has no flour line of its own.',
  )
  assert.ok(touched.readings.has('listedHydration'))
})

test('a line without a name is 100 % of a stage without flour as soon as it has an amount', () => {
  const formula = formulaOf(`
    Final dough:
       =
      water = 50 g
      salt = 10%`)
  const sheet = openSheet(formula)
  const [nameless, , salt] = formula.stages[0]!.lines.map(l => l.id)
  assert.equal(sheet.line(salt!).weight, 5)
  const touched = sheet.update(withLine(formula, nameless!, { amount: '200 g' }))
  assert.equal(sheet.line(salt!).weight, 20)
  assert.ok(touched.lines.has(salt!))
})

test('a problem that names another line is touched when that is called otherwise', () => {
  const formula = formulaOf(`
    Final dough:
      bread flour = 100%
      salt = some
      water = 20 * salt`)
  const sheet = openSheet(formula)
  const water = idOf(formula, 'Final dough', 'water')
  assert.match(sheet.line(water).problem!.message, /^salt in Final dough: /)
  const touched = sheet.update(withStages(formula, stage => ({ ...stage, name: 'Dough' })))
  assert.match(sheet.line(water).problem!.message, /^salt in Dough: /)
  assert.ok(touched.lines.has(water))
})

test('a circle that names a hold is touched when that holds another value', () => {
  const held = (value: number): Formula => ({
    ...formula,
    jottings: [{ id: 'j', name: 'double', text: '2 * water' }],
    holds: [{ reading: 'trueHydration', value, line: water }],
  })
  const formula = formulaOf(`
    Final dough:
      bread flour = double
      water =`)
  const [flour, water] = formula.stages[0]!.lines.map(l => l.id) as [string, string]
  const sheet = openSheet(held(0.75))
  for (const [value, words] of [
    [0.7, /true hydration held at 70 %/],
    [0.65, /true hydration held at 65 %/],
    [0.6, /true hydration held at 60 %/],
  ] as const) {
    const touched = sheet.update({ ...sheet.formula, holds: [{ ...sheet.formula.holds![0]!, value }] })
    assert.match(sheet.line(flour).problem!.message, words)
    assert.match(sheet.jotting('j').problem!.message, words)
    assert.ok(touched.lines.has(flour) && touched.jottings.has('j'))
  }
})

test('lines that move, come or go are a change of structure, also from one stage to the next', () => {
  const formula = formulaOf(workedCheck)
  const [levain, final] = formula.stages as [Formula['stages'][0], Formula['stages'][0]]
  const moved = {
    ...formula,
    stages: [
      { ...levain, lines: levain.lines.slice(0, 2) },
      { ...final, lines: [levain.lines[2]!, ...final.lines] },
    ],
  }
  const touched = openSheet(formula).update(moved)
  assert.ok(touched.structure && !touched.all)
  assert.ok(touched.lines.has(levain.lines[2]!.id))
})

test('another formula, larder or scale may touch anything', () => {
  const formula = formulaOf(workedCheck)
  const sheet = openSheet(formula)
  assert.equal(sheet.update(formula), untouched)
  assert.ok(sheet.update({ ...formula, id: 'another' }).all)
  assert.ok(sheet.update(sheet.formula, { ...sheet.larder }).all)
  assert.ok(sheet.update(sheet.formula, sheet.larder, { step: 5, fineStep: 1, fineBelow: 10 }).all)
})

test('two updates together touch what each of them touches', () => {
  const formula = formulaOf(workedCheck)
  const sheet = openSheet(formula)
  const [salt, water] = ['salt', 'water'].map(i => idOf(formula, 'Final dough', i)) as [string, string]
  const first = sheet.update(withLine(formula, salt, { amount: '24 g' }))
  const then = sheet.update(withLine(sheet.formula, water, { amount: '700 g' }))
  assert.deepEqual([...bothTouched(first, then).lines].sort(), [salt, water].sort())
  assert.equal(bothTouched(untouched, first), first)
  assert.ok(bothTouched(first, allTouched).all && bothTouched(allTouched, then).all)
})

test('an update that cannot be leaves the sheet as it was, to go on from', () => {
  const formula = formulaOf(workedCheck)
  const sheet = openSheet(formula)
  const salt = idOf(formula, 'Final dough', 'salt')
  const impossible: Formula = {
    ...withLine(formula, salt, { amount: '30 g' }),
    batch: { make: 'factor', factor: Number.POSITIVE_INFINITY },
  }
  assert.throws(() => sheet.update(impossible), RangeError)
  assert.equal(sheet.formula, formula)
  assert.equal(sheet.line(salt).weight, 21)
  assert.equal(sheet.line(salt).typed, '21')
  sheet.update(withLine(formula, salt, { amount: '24 g' }))
  assert.equal(sheet.line(salt).weight, 24)
  assert.equal(sheet.reading('doughWeight'), 820 + 180 + 690 + 24 + 210)
})

test('two lines of one id are planned together: the later one has the figures, whichever is typed in', () => {
  const line = (ingredient: string, amount: string): Line => ({ id: 'twin', ingredient, amount, note: '' })
  const formula = formulaOf(workedCheck)
  const twins = (amount: string): Formula =>
    withStages(formula, stage =>
      stage.name === 'Levain'
        ? stage
        : { ...stage, lines: [...stage.lines, line('honey', amount), line('malt', '5 g')] },
    )
  const sheet = openSheet(twins('10 g'))
  sheet.update(twins('7 g'))
  assert.equal(sheet.line('twin').weight, 5)
})
