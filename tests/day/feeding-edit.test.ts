import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { test } from 'node:test'
import { scaledWait } from '../../src/day/course/waits.js'
import { lengthOf, readStep } from '../../src/day/method/step-text.js'
import { chainTo, feedStage, isFed, ripeRange, stageOf } from '../../src/day/mixing/fed-build.js'
import type { Feeding } from '../../src/day/mixing/feeding.js'
import { feedBuilds, readingsChanged, sheetWith } from '../../src/day/mixing/feeding-edit.js'
import { withLength } from '../../src/day/mixing/step-rewriting.js'
import { ripeningHours } from '../../src/day/temperature/growth.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { applyChanges, emptyWorkbook } from '../../src/dough/document/workbook.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { readFormulas } from '../../src/exchange/index.js'
import { randomOf } from '../random.js'
import { near } from './near.js'
import { bread, saturday } from './notation.js'

const example = (name: string): Formula =>
  readFormulas(readFileSync(`examples/${name}.csv`, 'utf8')).formulas[0]!

const grams = (seed: number, flour: number, water: number, step = '8–10 h, at 24 °C') =>
  bread(
    'Mill wheat',
    `Levain:
       Ripe starter ${seed} g
       Bread flour ${flour} g
       Water ${water} g
       hands Mix: 10 min
       wait Ripen: ${step}
     Final dough:
       Bread flour 1000 g
       Water 680 g
       Levain 300 g
       hands Mix: 10 min`,
  )

/** Feeds one stage and gives the formula as it is then, and as it is when that is taken back. */
function fed(formula: Formula, stage: number, hours: number, celsius: number) {
  const sheet = openSheet(formula)
  const id = formula.stages[stage]!.id
  const feeding = feedStage(sheet, id, hours, celsius) as Feeding
  assert.ok(!('code' in feeding), `${hours} h at ${celsius} °C`)
  const transaction = feedBuilds(sheet, [{ stage: id, feeding }])
  const { workbook, inverse } = applyChanges({ ...emptyWorkbook, formulas: [formula] }, transaction.changes)
  const after = workbook.formulas[0]!
  const back = applyChanges(workbook, inverse).workbook.formulas[0]!
  return { sheet, id, feeding, transaction, after, back, afterSheet: openSheet(after) }
}
const amounts = (formula: Formula, stage = 0) => formula.stages[stage]!.lines.map(l => l.amount)
const hydration = (sheet: ReturnType<typeof openSheet>, stage: Formula['stages'][number], ofSeed: number) => {
  const [seed, flour, water] = stage.lines.map(l => sheet.line(l.id).weight!) as [number, number, number]
  return (water + (seed * ofSeed) / (1 + ofSeed)) / (flour + seed / (1 + ofSeed))
}

test('fed for 12 h at 20 °C, a levain of 9 h at 24 has 136 g of seed in 780, and its step the time that this takes at 24', () => {
  const formula = grams(100, 340, 340)
  const { feeding, after, back, transaction, afterSheet, id } = fed(formula, 0, 12, 20)
  assert.equal(feeding.dilution.toFixed(3), '5.733')
  assert.equal(transaction.label, 'Feed Levain for 12 h')
  assert.deepEqual(amounts(after), ['136 g', '322 g', '322 g'])
  assert.equal(afterSheet.stage(id).weight, 780)
  // 12 h × y(20) ÷ y(24) = 443.7 min; 8 h as much shorter: 394.4, to five minutes 395, and 2 × 443.7 − 395 = 492.5, to five 490
  assert.equal(after.stages[0]!.method![1]!.text, '6 h 35–8 h 10, at 24 °C')
  assert.deepEqual(back, formula)
})

test('what was fed is fed for that: asked again it wants the same seed', () => {
  const { afterSheet, id, feeding } = fed(grams(100, 340, 340), 0, 12, 20)
  const again = feedStage(afterSheet, id, 12, 20) as Feeding
  near(again.before.hours, 12, 0.005)
  near(again.seedShare, feeding.seedShare, 0.01)
})

test('percentages stay percentages of the flour, and undoing gives the formula back', () => {
  const formula = example('mill-wheat')
  const { after, back, sheet, afterSheet, feeding } = fed(formula, 0, 12, 20)
  const [seed, ...rest] = amounts(after)
  assert.deepEqual(rest.slice(0, 2), ['70%', '30%'])
  assert.match(seed!, /^\d+(\.\d+)?%$/)
  near(hydrationOf(afterSheet, after), hydrationOf(sheet, formula), 2e-4)
  near(afterSheet.reading('trueHydration')!, sheet.reading('trueHydration')!, 1e-4)
  assert.deepEqual(back, formula)
  assert.notEqual(feeding.weights.size, 0)
})
function hydrationOf(sheet: ReturnType<typeof openSheet>, formula: Formula): number {
  const [seed, one, two, water] = formula.stages[0]!.lines.map(l => sheet.line(l.id).weight!)
  return (water! + seed! / 2) / (one! + two! + seed! / 2)
}

test('weight and hydration are kept, and with them every reading of the dough', () => {
  const { sheet, transaction } = fed(grams(100, 340, 340), 0, 12, 20)
  assert.deepEqual(
    readingsChanged(sheet, sheetWith(sheet, transaction)).map(({ reading }) => reading),
    ['trueHydration', 'prefermentedFlour'],
  )
  const stiff = bread(
    'Stiff',
    `Levain:
       Ripe starter 100 g
       Bread flour 100 g
       Water 20 g
       wait Ripen: 5 h, at 24 °C
     Final dough:
       Bread flour 1000 g
       Water 600 g
       Levain 220 g`,
  )
  const changed = fed(stiff, 0, 9, 22)
  for (const { before, after } of readingsChanged(changed.sheet, changed.afterSheet))
    near(after!, before!, 1e-3)
})

test('the second build of the rye takes less of the first, and the first is made smaller', () => {
  const formula = example('two-build-rye')
  const { after, afterSheet, sheet } = fed({ ...formula, batch: { make: 'factor', factor: 2 } }, 1, 12, 26)
  assert.match(amounts(after, 1)[0]!, /^\d+(\.\d+)? g$/)
  const first = formula.stages[0]!.id
  const parts = (s: typeof sheet) => s.line(formula.stages[1]!.lines[0]!.id).batch!
  near(afterSheet.stage(first).build! / sheet.stage(first).build!, parts(afterSheet) / parts(sheet), 1e-9)
  assert.deepEqual(
    chainTo(sheet, formula.stages[1]!.id).map(plan => plan.stage.name),
    ['First build', 'Second build'],
  )
})

test('only builds that take a seed with flour are fed', () => {
  const sheet = openSheet(example('two-build-rye'))
  const names = sheet.workedOut.outline.stages.filter(isFed).map(plan => plan.stage.name)
  assert.deepEqual(names, ['First build', 'Second build'])
  const poolish = openSheet(example('poolish-baguette'))
  assert.deepEqual(poolish.workedOut.outline.stages.filter(isFed), [])
})

test('a seed that is thinner than its build, and a build without a line of water, are told', () => {
  // At most 60 g of water: 120 g of a starter at 100 % in 260 g with 60 g of water and 200 g of flour
  const stiff = bread(
    'Stiff',
    'Levain:\n Ripe starter 20 g\n Bread flour 190 g\n Water 50 g\n wait Ripen: 8 h, at 24 °C\nFinal dough:\n Bread flour 900 g\n Levain 260 g',
  )
  const sheet = openSheet(stiff)
  const told = feedStage(sheet, stiff.stages[0]!.id, 1, 24)
  assert.ok('code' in told && told.code === 'feedingTooShort')
  const { speed } = feedStage(sheet, stiff.stages[0]!.id, 8, 24) as Feeding
  near(told.hours, ripeningHours(260 / 120, 24, speed))
  const dry = bread(
    'Dry',
    'Levain:\n Ripe starter 20 g\n Bread flour 100 g\nFinal dough:\n Bread flour 900 g\n Levain 120 g',
  )
  const without = feedStage(openSheet(dry), dry.stages[0]!.id, 8, 24)
  assert.ok('code' in without && without.code === 'feedingWithoutWater')
  const hot = feedStage(sheet, stiff.stages[0]!.id, 8, 36)
  assert.ok('code' in hot && hot.code === 'feedingNothingGrows')
})

for (const [text, least, usual, most, expected] of [
  ['5–7 h, at 24 °C', 390, 450, 510, '6.5–8.5 h, at 24 °C'],
  ['9 h at 24 °C', 445, 445, 445, '7 h 25 at 24 °C'],
  ['=9 h, in the fridge', 600, 600, 600, '=10 h, in the fridge'],
  ['at 24 °C, 8–10 h', 395, 444, 493, 'at 24 °C, 6 h 35–8 h 15'],
  ['45–60 min at 28 °C', 30, 40, 50, '30–50 min at 28 °C'],
  ['3.5–4.5 h, at 24 °C, 4 × 5 min every 30 min', 240, 270, 300, '4–5 h, at 24 °C, 4 × 5 min every 30 min'],
  ['1 d, at 18 °C, adds Water (2)', 1800, 1800, 1800, '30 h, at 18 °C, adds Water (2)'],
  ['12 à 15 h à 20 °C', 600, 660, 720, '10–12 h à 20 °C'],
  ['until it has doubled', 60, 60, 60, 'until it has doubled'],
] as const)
  test(`“${text}” of ${usual} min becomes “${expected}”`, () =>
    assert.equal(withLength(text, { least, usual, most }), expected))

test('seed 31: fed anew, a build weighs what it did at its hydration, its step takes that long on the day, and undoing gives it back', () => {
  const { next } = randomOf(31)
  let done = 0
  for (let round = 0; round < 50; round++) {
    const draw = (from: number, to: number) => Number((from + next() * (to - from)).toFixed(1))
    const formula = grams(
      draw(20, 150),
      draw(100, 500),
      draw(60, 500),
      `${draw(4, 7)}–${draw(8, 12)} h, at ${draw(20, 27)} °C`,
    )
    const [hours, celsius] = [draw(4, 14), draw(17, 28)]
    const id = formula.stages[0]!.id
    if ('code' in feedStage(openSheet(formula), id, hours, celsius)) continue
    const { sheet, afterSheet, after, back, feeding } = fed(formula, 0, hours, celsius)
    done += 1
    near(afterSheet.stage(id).weight!, sheet.stage(id).weight!, 1e-9)
    near(hydration(afterSheet, after.stages[0]!, 1), hydration(sheet, formula.stages[0]!, 1), 3e-3)
    assert.deepEqual(back, formula)
    const step = after.stages[0]!.method![1]!
    const read = readStep(step.text)
    const scaled = scaledWait(read, lengthOf(step, read, 0.15)!, saturday([], { kitchen: celsius }))
    near(scaled.length.usual, hours * 60, 0.02)
    const range = ripeRange(stageOf(sheet, id).stage, feeding)
    near(range.usual, hours * 60)
    near(range.least, scaled.length.least, 0.03)
    near(range.most, scaled.length.most, 0.03)
  }
  assert.ok(done > 20, `${done} could be fed`)
})
