import assert from 'node:assert/strict'
import { test } from 'node:test'
import { keptOf } from '../../components/batch/weighed-shown.js'
import { usualScale } from '../../src/dough/document/batch.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { weigh } from '../../src/dough/weighed/weighing.js'
import { near } from '../assert.js'
import { randomOf } from '../random.js'
import { formulaOf, lineOf, withStages, workedCheck } from './notation.js'

test('weights are rounded to the scale, finer where they are light', () => {
  assert.deepEqual(
    weigh([820.4, 9.96, 9.94, 0.06]).map(w => w.grams),
    [820, 10, 9.9, 0.1],
  )
})

test('what rounding leaves over goes to the line that it changes least in proportion', () => {
  const weighed = (of: readonly number[]) =>
    weigh(of, usualScale, { grams: of.reduce((sum, g) => sum + g, 0), seed: [] }).map(w => w.grams)
  // 1,001.2 g: 500 + 300 + 200 are a gram short, which is 6 in 5,004 of the flour and more of the others.
  assert.deepEqual(weighed([500.4, 300.4, 200.4]), [501, 300, 200])
  // 301.8 g: 101 + 101 + 101 are a gram over.
  assert.deepEqual(weighed([100.6, 100.7, 100.5]), [101, 101, 100])
  // 33.4 g three times are 100.2 g.
  assert.deepEqual(weighed([33.4, 33.4, 33.4]), [34, 33, 33])
  // What is light is weighed as it rounds; the rest comes as near as whole grams can: 3.3 + 1,000 for 1,002.9.
  assert.deepEqual(weighed([3.26, 999.64]), [3.3, 1000])
})

const seed = 41
test(`what is weighed comes as near to what is wanted as the scale can, in whole steps (seed ${seed})`, () => {
  const random = randomOf(seed)
  for (let run = 0; run < 700; run++) {
    const scale = {
      step: random.pick([1, 2, 5, 10]),
      fineStep: random.pick([0.01, 0.1, 0.5, 1]),
      fineBelow: random.pick([0, 10, 50]),
    }
    const wanted = Array.from(
      { length: 1 + random.below(8) },
      () => 0.01 + random.next() * random.pick([1, 20, 2000]),
    )
    const total = (of: readonly number[]) => of.reduce((sum, g) => sum + g, 0)
    const weighed = weigh(wanted, scale, { grams: total(wanted), seed: [] })
    const step = Math.max(...weighed.map(w => w.step))
    const over = total(weighed.map(w => w.grams)) - total(wanted)
    assert.ok(Math.abs(over) <= step / 2 + 1e-6, `run ${run}: ${over} g over`)
    for (const { grams, step } of weighed) near(grams / step, Math.round(grams / step), 1e-9)
    // Each line that took a step was changed less by it than any other of that step would have been.
    const plain = weigh(wanted, scale)
    const taken = weighed.map((w, i) => Math.sign(w.grams - plain[i]!.grams))
    const way = taken.find(t => t !== 0) ?? 0
    const off = (i: number, steps: number) =>
      Math.abs(weighed[i]!.grams + steps * step - wanted[i]!) / wanted[i]!
    for (const [i, took] of taken.entries())
      for (const j of took ? weighed.keys() : [])
        if (weighed[j]!.step === step) assert.ok(off(i, 0) <= off(j, way) + 1e-9, `run ${run}: ${i}, ${j}`)
  }
})

test('the readings as weighed stand beside those as written', () => {
  const sheet = openFormula(formulaOf(workedCheck))
  sheet.make({ make: 'pieces', pieces: [{ count: 1, weight: 450 }] })
  // k = 450/1921: flour 192.09, spelt 42.17, water 161.63, salt 4.919, levain 49.19: within half a gram of 450 g.
  const grams = (stage: string, ingredient: string) =>
    sheet.weighed(lineOf(sheet.formula, stage, ingredient).id)!.grams
  assert.deepEqual(
    ['bread flour', 'wholemeal spelt', 'water', 'salt', 'levain'].map(i => grams('Final dough', i)),
    [192, 42, 162, 4.9, 49],
  )
  // Levain of 49.19 g: starter 8.94, flour 22.36, water 17.89 → 8.9 + 22 + 18 for the 49 g that go in.
  assert.deepEqual(
    ['ripe starter', 'bread flour', 'water'].map(i => grams('Levain', i)),
    [8.9, 22, 18],
  )
  const [flour, water] = [22 + 8.9 / 2, 18 + 8.9 / 2].map(x => (x * 49) / 48.9)
  near(sheet.weighedReading('trueHydration'), (162 + water!) / (234 + flour!))
  near(sheet.weighedReading('doughWeight'), 449.9)
  near(sheet.reading('trueHydration'), (690 * 220 + 100 * 210) / (1000 * 220 + 120 * 210))
})

test('a step that is a large part of an amount is remarked on', () => {
  const coarse = { step: 1, fineStep: 1, fineBelow: 0 }
  const formula = formulaOf(
    'Dough:\n Bread flour = 200 g\n Water = 140 g\n Salt = 4 g\n Instant yeast = 0.4 g',
  )
  const said = openFormula(formula, undefined, coarse).problems.map(p => p.message)
  assert.ok(
    said.includes(
      '0.4 g of Instant yeast on a scale of 1 g steps could be off by 125 %: use a finer scale, or dilute it.',
    ),
    said.join('\n'),
  )
})

test('a build in percentages is weighed to what is taken of it, whatever rounding takes away', () => {
  const sheet = openFormula(
    formulaOf(
      'Levain:\n Ripe starter = 25%\n Bread flour = 70%\n Whole wheat flour = 30%\n Water = 70%\nDough:\n Bread flour = 1600 g\n Levain = 352 g',
    ),
  )
  // 352 g of 195 parts: 45.13, 126.36, 54.15, 126.36 → 45 + 126 + 54 + 126 = 351, and one gram more.
  const weighed = sheet.formula.stages[0]!.lines.map(l => sheet.weighed(l.id)!.grams)
  assert.deepEqual(weighed, [45, 127, 54, 126])
})

const kept = 43
test(`as much kept back as the seed is the seed's own weight, weighed as well (seed ${kept})`, () => {
  const random = randomOf(kept)
  const grams = () => 1 + random.below(4000) / 8
  for (let run = 0; run < 130; run++) {
    const loss = random.pick([0, 0, 0.02, 0.1])
    const levain = `Levain:\n Ripe starter = ${grams()} g\n Bread flour = ${grams()} g\n Water = ${grams()} g`
    const formula = formulaOf(`${levain}\nDough:\n Bread flour = 1000 g\n Levain = ${grams()} g`)
    const sheet = openFormula(
      withStages(formula, s => (s.name === 'Levain' ? { ...s, loss, keepBack: 'seed' } : s)),
      undefined,
      { step: random.pick([1, 2, 5]), fineStep: random.pick([0.1, 1]), fineBelow: random.pick([0, 10, 50]) },
    )
    sheet.make({ make: 'pieces', pieces: [{ count: 1 + random.below(9), weight: 300 + random.below(900) }] })
    const [build, dough] = sheet.formula.stages
    // build = needed ÷ (1 − loss) + keep-back, with the seed that part of the build which it is as written.
    const [seed, ...rest] = build!.lines.map(l => sheet.line(l.id).weight!)
    const needed = sheet.batchWeight('Dough', 'Levain')! / (1 - loss)
    const part = seed! / rest.reduce((sum, w) => sum + w, seed!)
    near(sheet.batchWeight('Levain', 'Ripe starter'), (part * needed) / (1 - part), 1e-9, `run ${run}`)
    near(sheet.stage(build!.id).build! - needed, sheet.batchWeight('Levain', 'Ripe starter')!, 1e-9)

    const [starter, ...others] = build!.lines.map(l => sheet.weighed(l.id)!.grams)
    const taken = sheet.weighed(dough!.lines[1]!.id)!.grams / (1 - loss)
    const made = others.reduce((sum, g) => sum + g, starter!)
    const step = Math.max(...build!.lines.slice(1).map(l => sheet.weighed(l.id)!.step))
    assert.ok(
      Math.abs(made - taken - starter!) <= step / 2 + 1e-6,
      `run ${run}: ${made} g made, ${taken} g taken, ${starter} g of seed`,
    )
    assert.equal(keptOf(sheet, build!), starter, `run ${run}`)
  }
})

test('a seed that is the heaviest line is weighed as it rounds, and another line makes up what is short', () => {
  const sheet = openFormula(
    withStages(
      formulaOf(
        'Levain:\n Ripe starter = 200.4 g\n Bread flour = 100.4 g\n Water = 50.4 g\nDough:\n Bread flour = 900 g\n Levain = 150.8 g',
      ),
      s => (s.name === 'Levain' ? { ...s, keepBack: 'seed' } : s),
    ),
  )
  // 151 g go in and 200 g are kept; 200 + 100 + 50 would be a gram short of both.
  assert.deepEqual(
    sheet.formula.stages[0]!.lines.map(l => sheet.weighed(l.id)!.grams),
    [200, 101, 50],
  )
})
