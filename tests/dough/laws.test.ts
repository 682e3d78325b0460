import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Batch } from '../../src/dough/document/batch.js'
import { type Formula, finalDoughOf } from '../../src/dough/document/formula.js'
import { type ReadingName, readingNames } from '../../src/dough/document/reading-names.js'
import { naturalGiver } from '../../src/dough/edits/fetched/natural-giver.js'
import { type FormulaSheet, openFormula } from '../../src/dough/formula-sheet.js'
import { near } from '../assert.js'
import { randomOf } from '../random.js'
import { formulaOf } from './notation.js'
import { plainLarder } from './plain-larder.js'

type Random = ReturnType<typeof randomOf>

/** A bakeable formula: flours in grams, by percentage or mixed; a levain of one or two builds, in percentages or grams; a soaker now and then. */
function randomFormula(random: Random): Formula {
  const grams = (low: number, high: number) => `${Math.round(low + random.next() * (high - low))} g`
  const percent = (low: number, high: number) => `${(low + random.next() * (high - low)).toFixed(1)}%`
  const inPercent = random.below(2) === 0
  const first = random.below(2)
    ? `First:\n starter = ${grams(10, 40)}\n rye = ${grams(40, 120)}\n water = ${grams(40, 120)}\n`
    : ''
  const seed = first
    ? `first = ${inPercent ? percent(20, 60) : grams(40, 80)}`
    : `starter = ${inPercent ? percent(10, 60) : grams(20, 60)}`
  const levain = inPercent
    ? `flour = 100%\n water = ${percent(50, 110)}`
    : `flour = ${grams(80, 150)}\n water = ${grams(60, 150)}`
  const soaker = random.below(3) === 0 ? `Soaker:\n seeds = 100%\n water = ${percent(80, 150)}\n` : ''
  const flours = random.pick([
    `flour = 100%`,
    `flour = 80%\n spelt = 20%`,
    `flour = ${grams(600, 900)}\n spelt = ${grams(50, 300)}`,
    `flour = 70%\n spelt = ${grams(100, 300)}`,
  ])
  return formulaOf(`
    ${first}Levain:
      ${seed}
      ${levain}
    ${soaker}Final dough:
      ${flours}
      water = ${random.pick([percent(55, 80), grams(450, 800)])}
      ${soaker && `soaker = ${random.pick([percent(10, 30), grams(100, 300)])}`}
      salt = ${random.pick([percent(1.6, 2.4), grams(12, 25)])}
      oil = ${random.pick(['2%', '15 g', '0.03*water', '1.5*salt'])}
      milk = ${random.pick(['5%', '40 g'])}
      levain = ${random.pick([percent(10, 35), grams(100, 400)])}`)
}

/** Values that some dough has: the readings of another formula, near the present ones. */
const wanted = (random: Random, sheet: FormulaSheet, name: ReadingName) =>
  sheet.reading(name)! * (0.9 + random.next() * 0.25)

const holdable: readonly ReadingName[] = ['trueHydration', 'salt', 'prefermentedFlour', 'doughWeight']

const seed = 20261
test(`every held reading equals its value, and what was typed stays as typed (seed ${seed})`, () => {
  const random = randomOf(seed)
  let solved = 0
  for (let run = 0; run < 130; run++) {
    const formula = randomFormula(random)
    const sheet = openFormula(formula, plainLarder)
    const typed = JSON.stringify(formula.stages)
    const held = holdable.filter(() => random.below(2))
    const values = new Map(held.map(name => [name, wanted(random, sheet, name)]))
    for (const [name, value] of values) {
      const at = naturalGiver(sheet.formula, plainLarder, name)!
      const line = finalDoughOf(formula).lines.find(l => l.id === at.line)!
      sheet.hold(name, value, { stage: 'Final dough', ingredient: line.ingredient })
    }
    assert.equal(JSON.stringify(sheet.formula.stages), typed)
    if (sheet.problems.some(p => p.severity === 'error')) continue
    solved++
    for (const [name, value] of values) near(sheet.reading(name), value, 1e-9, `run ${run} ${name}`)
    retyped(sheet, run)
  }
  assert.ok(solved > 97, `only ${solved} of 130 had an answer`)
})

/** With every hold let go and the weights typed, the dough is the same. */
function retyped(sheet: FormulaSheet, run: number): void {
  const before = readingNames.map(name => sheet.reading(name))
  const { holds: _holds, ...bare } = sheet.formula
  const stages = bare.stages.map(s => ({
    ...s,
    lines: s.lines.map(l => ({
      ...l,
      amount: `${sheet.line(l.id).weight!.toPrecision(17).replace(/e.*/, '')} g`,
    })),
  }))
  const typed = openFormula({ ...bare, stages }, plainLarder)
  for (const [i, name] of readingNames.entries())
    if (before[i] !== undefined) near(typed.reading(name), before[i]!, 1e-9, `run ${run} ${name} retyped`)
}

const batchSeed = 20262
test(`a batch changes no percentage and no reading; its builds make what is taken and kept (seed ${batchSeed})`, () => {
  const random = randomOf(batchSeed)
  for (let run = 0; run < 100; run++) {
    const formula = randomFormula(random)
    const kept = random.pick([0, 25, 60])
    const loss = random.pick([0, 0.02, 0.05])
    const stages = formula.stages.map(s => (s.name === 'Levain' ? { ...s, keepBack: kept, loss } : s))
    const sheet = openFormula({ ...formula, stages }, plainLarder)
    const before = readingNames.map(name => sheet.reading(name))
    const percents = formula.stages.flatMap(s => s.lines).map(l => sheet.line(l.id).percent)
    const batch: Batch = random.pick([
      {
        make: 'pieces',
        pieces: [{ count: 1 + random.below(20), weight: 100 + random.below(900) }],
        loss: 0.02,
      },
      { make: 'dough', grams: 500 + random.below(9000) },
      { make: 'flour', grams: 500 + random.below(9000) },
      { make: 'all of', ingredient: 'water', grams: 2000 + random.below(3000) },
      { make: 'factor', factor: 0.1 + random.next() * 9 },
    ])
    sheet.make(batch)
    assert.deepEqual(
      readingNames.map(name => sheet.reading(name)),
      before,
    )
    assert.deepEqual(
      formula.stages.flatMap(s => s.lines).map(l => sheet.line(l.id).percent),
      percents,
    )
    const k = sheet.batchWeight('Final dough', 'salt')! / sheet.weight('Final dough', 'salt')!
    const total = (stage: string) =>
      formula.stages.find(s => s.name === stage)!.lines.reduce((sum, l) => sum + sheet.line(l.id).batch!, 0)
    near(total('Final dough'), sheet.reading('doughWeight')! * k, 1e-9, `run ${run}`)
    near(
      total('Levain'),
      sheet.batchWeight('Final dough', 'levain')! / (1 - loss) + kept,
      1e-9,
      `run ${run} levain`,
    )
    if (batch.make === 'dough') near(total('Final dough'), batch.grams, 1e-9)
    if (batch.make === 'flour') near(sheet.reading('totalFlour')! * k, batch.grams, 1e-9)
    if (batch.make === 'all of') {
      const water = formula.stages.flatMap(s => s.lines).filter(l => l.ingredient === 'water')
      near(
        water.reduce((sum, l) => sum + sheet.line(l.id).batch!, 0),
        batch.grams,
        1e-9,
        `run ${run} all of water`,
      )
    }
  }
})

const weighSeed = 20263
test(`what is weighed adds to the dough as weighed, as near to what is wanted as whole grams come (seed ${weighSeed})`, () => {
  const random = randomOf(weighSeed)
  for (let run = 0; run < 70; run++) {
    const sheet = openFormula(randomFormula(random), plainLarder)
    const pieces = { count: 1 + random.below(12), weight: 50 + random.below(1000) }
    sheet.make({ make: 'pieces', pieces: [pieces] })
    const final = finalDoughOf(sheet.formula).lines.map(l => sheet.weighed(l.id)!.grams)
    const sum = final.reduce((total, g) => total + g, 0)
    near(sheet.weighedReading('doughWeight'), sum, 1e-9, `run ${run}`)
    assert.ok(
      Math.abs(sum - pieces.count * pieces.weight) <= 0.5 + 1e-9,
      `run ${run}: ${sum} g for ${pieces.count} × ${pieces.weight} g`,
    )
  }
})
