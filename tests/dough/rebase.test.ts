import assert from 'node:assert/strict'
import { describe, test } from 'node:test'
import { type Formula, finalDoughOf } from '../../src/dough/document/formula.js'
import { larderOf } from '../../src/dough/document/larder.js'
import { readingNames } from '../../src/dough/document/reading-names.js'
import {
  applyChanges,
  emptyWorkbook,
  type Transaction,
  type Workbook,
} from '../../src/dough/document/workbook.js'
import { holdReading, Refusal } from '../../src/dough/edits/edits.js'
import { setBatch } from '../../src/dough/edits/fetched/batch-edits.js'
import { putJotting } from '../../src/dough/edits/fetched/jotting-edits.js'
import { changeStarter, writeInGrams, writeInPercentages } from '../../src/dough/edits/fetched/rebase.js'
import { type FormulaSheet, openFormula } from '../../src/dough/formula-sheet.js'
import { usualLarder } from '../../src/dough/larder/usual-larder.js'
import { near } from '../assert.js'
import { randomOf } from '../random.js'
import { formulaOf, lineOf, withStages, workedCheck } from './notation.js'

// A starter of 60 %, for the sums of the trade.
const firm = {
  ...usualLarder.find(i => i.name === 'Stiff starter')!,
  id: 'firm',
  name: 'Firm 60',
  otherNames: [],
}
const larder = larderOf([...usualLarder, { ...firm, countsAs: { kind: 'starter', hydration: 0.6 } }])
const open = (formula: Formula) => openFormula(formula, larder)

const edited = (formula: Formula, edit: (workbook: Workbook) => Transaction): Formula => {
  const workbook: Workbook = { ...emptyWorkbook, formulas: [formula] }
  return applyChanges(workbook, edit(workbook).changes).workbook.formulas[0]!
}
const amounts = (formula: Formula, stage = 'Final dough') =>
  formula.stages.find(s => s.name === stage)!.lines.map(l => `${l.ingredient} ${l.amount}`)
const at = (formula: Formula, stage: string, ingredient: string) => ({
  formula: formula.id,
  stage: formula.stages.find(s => s.name === stage)!.id,
  line: lineOf(formula, stage, ingredient).id,
})
const refuses = (work: () => unknown, why: RegExp) =>
  assert.throws(work, (error: unknown) => error instanceof Refusal && why.test(error.message))

/** Every weight, batch weight and reading is the same to twelve digits. */
function sameFigures(was: FormulaSheet, now: FormulaSheet, hint: string): void {
  for (const line of was.formula.stages.flatMap(s => s.lines)) {
    const [a, b] = [was.line(line.id), now.line(line.id)]
    near(b.weight, a.weight!, 1e-12, `${line.ingredient}, ${hint}`)
    near(b.batch, a.batch!, 1e-12, `${line.ingredient} in the batch, ${hint}`)
  }
  for (const name of readingNames) {
    const value = was.reading(name)
    if (value === undefined) assert.equal(now.reading(name), undefined, `${name}, ${hint}`)
    else near(now.reading(name), value, 1e-12, `${name}, ${hint}`)
  }
}

describe('Writing a formula in grams', () => {
  test('keeps every weight, whatever the amounts were', () => {
    const formula = formulaOf(`
      Levain:
        ripe starter = 20%
        bread flour = 100%
        water = 100%
      Final dough:
        bread flour = 90%
        whole rye flour = 10%
        water = 70% + 20 g
        salt = 2 tsp
        oil = 2*salt
        levain = 20%`)
    const sheet = open(formula)
    const now = edited(formula, () => writeInGrams(sheet))
    sameFigures(sheet, open(now), 'in grams')
    for (const line of now.stages.flatMap(s => s.lines)) assert.match(line.amount, /^[\d.]+ g$/)
    assert.deepEqual(amounts(now).slice(0, 3), ['bread flour 900 g', 'whole rye flour 100 g', 'water 720 g'])
  })

  test('leaves the other stages alone when it is for one', () => {
    const formula = formulaOf(
      'Poolish:\n flour = 100%\n water = 100%\nFinal dough:\n flour = 100%\n poolish = 40%',
    )
    const [poolish] = formula.stages
    const now = edited(formula, () => writeInGrams(open(formula), poolish!.id))
    assert.deepEqual(amounts(now, 'Poolish'), ['flour 200 g', 'water 200 g'])
    assert.deepEqual(amounts(now), ['flour 100%', 'poolish 40%'])
  })

  test('changes nothing where all is in grams', () => {
    assert.deepEqual(writeInGrams(open(formulaOf(workedCheck))).changes, [])
  })

  test('lets lines that give go on giving', () => {
    let formula = formulaOf('Final dough:\n flour = 100%\n water = 70%\n salt = 2%')
    formula = edited(formula, w => holdReading(w, at(formula, 'Final dough', 'water'), 'trueHydration', 0.75))
    const now = edited(formula, () => writeInGrams(open(formula)))
    assert.deepEqual(amounts(now), ['flour 1000 g', 'water 70%', 'salt 20 g'])
    sameFigures(open(formula), open(now), 'with a hold')
    assert.deepEqual(now.holds, formula.holds)
  })

  test('is refused, in words, where a line has no weight or a stage is for nothing', () => {
    refuses(
      () => writeInGrams(open(formulaOf('Final dough:\n flour = 100%\n oil = what'))),
      /oil has no weight/,
    )
    const idle = formulaOf('Poolish:\n flour = 100%\n water = 100%\nFinal dough:\n flour = 100%')
    refuses(() => writeInGrams(open(idle)), /No stage takes Poolish yet/)
  })
})

describe('Writing a formula in percentages', () => {
  test('keeps every weight, and sets the flour weight', () => {
    const formula = formulaOf(
      'Final dough:\n bread flour = 450 g\n whole rye flour = 50 g\n water = 350 g\n salt = 10 g',
    )
    const now = edited(formula, () => writeInPercentages(open(formula)))
    assert.deepEqual(amounts(now), ['bread flour 90%', 'whole rye flour 10%', 'water 70%', 'salt 2%'])
    assert.equal(now.flourWeight, 500)
    sameFigures(open(formula), open(now), 'in percentages')
  })

  test('keeps the base of a stage in grams of which something is left over', () => {
    const formula = formulaOf(workedCheck)
    const now = edited(formula, () => writeInPercentages(open(formula)))
    assert.deepEqual(amounts(now, 'Levain'), ['ripe starter 40%', 'bread flour 100 g', 'water 80%'])
    sameFigures(open(formula), open(now), 'with 10 g left')
  })

  test('writes a stage made to measure wholly in percentages', () => {
    const formula = formulaOf(workedCheck.replace('levain = 210 g', 'levain = 220 g'))
    const now = edited(formula, () => writeInPercentages(open(formula)))
    assert.deepEqual(amounts(now, 'Levain'), ['ripe starter 40%', 'bread flour 100%', 'water 80%'])
    sameFigures(open(formula), open(now), 'made to measure')
  })

  test('changes nothing the second time', () => {
    const formula = formulaOf('Final dough:\n flour = 1000 g\n water = 700 g')
    const now = edited(formula, () => writeInPercentages(open(formula)))
    assert.deepEqual(writeInPercentages(open(now)).changes, [])
  })

  test('is refused where there is no base, and passes over a stage with nothing in it', () => {
    refuses(
      () => writeInPercentages(open(formulaOf('Final dough:\n flour = 0 g\n water = 70 g'))),
      /Final dough has no flour or base to take percentages of/,
    )
    const formula = formulaOf('Poolish:\nFinal dough:\n flour = 500 g')
    assert.deepEqual(amounts(edited(formula, () => writeInPercentages(open(formula)))), ['flour 100%'])
  })

  test('is refused, with the hold named, where the flour that gives would not follow any more', () => {
    let formula = formulaOf('Final dough:\n bread flour = 1000 g\n water = 700 g\n salt = 20 g')
    formula = edited(formula, w =>
      holdReading(w, at(formula, 'Final dough', 'bread flour'), 'trueHydration', 0.7),
    )
    refuses(
      () => writeInPercentages(open(formula)),
      /bread flour, which gives.*true hydration held at 70 %\. Release/,
    )
    const now = edited(formula, () => writeInGrams(open(formula)))
    sameFigures(open(formula), open(now), 'in grams it goes on')
  })
})

describe('Writing random formulas in grams and in percentages keeps every weight and reading', () => {
  for (const seed of [1, 2, 3, 4, 5, 6, 7, 8]) {
    test(`seed ${seed}`, () => {
      const random = randomOf(seed)
      for (let n = 0; n < 15; n++) {
        const formula = randomFormula(random)
        const sheet = open(formula)
        const hint = `formula ${n}: ${formula.stages.flatMap(s => [s.name, ...s.lines.map(l => `${l.ingredient} ${l.amount}`)]).join('; ')}`
        const inGrams = edited(formula, () => writeInGrams(sheet))
        sameFigures(sheet, open(inGrams), `in grams, ${hint}`)
        const inPercentages = edited(formula, () => writeInPercentages(sheet))
        sameFigures(sheet, open(inPercentages), `in percentages, ${hint}`)
        const andBack = edited(inPercentages, () => writeInGrams(open(inPercentages)))
        sameFigures(sheet, open(andBack), `there and back, ${hint}`)
        const stage = random.pick(formula.stages)
        const one = edited(formula, () => random.pick([writeInGrams, writeInPercentages])(sheet, stage.id))
        sameFigures(sheet, open(one), `${stage.name} alone, ${hint}`)
      }
    })
  }
})

/** One or two builds and a dough, by grams or by percentages, with a hold, a jotting or a batch now and then. */
function randomFormula(random: ReturnType<typeof randomOf>): Formula {
  const between = (low: number, high: number) => (low + random.next() * (high - low)).toFixed(random.below(3))
  const stage = (percentages: boolean, size: number, parts: readonly (readonly [string, number])[]) =>
    parts.map(([name, share]) => {
      const percent = name.endsWith('flour') ? share : Number(between(share * 0.5, share * 1.5))
      return `${name} = ${percentages ? `${percent}%` : `${((percent / 100) * size).toFixed(1)} g`}`
    })
  const rye = random.below(50)
  const lines = [
    'First:',
    ...stage(random.below(2) === 0, 40, [
      ['whole rye flour', 100],
      ['water', 90],
      ['ripe starter', 20],
    ]),
    'Levain:',
    ...stage(random.below(2) === 0, 200, [
      ['bread flour', 100],
      ['water', 80],
      ['first', 30],
    ]),
    'Final dough:',
    ...stage(random.below(2) === 0, random.pick([500, 1000, 1750]), [
      ['bread flour', 100 - rye],
      ['whole rye flour', rye],
      ['water', 70],
      ['salt', 2],
      ['levain', 25],
    ]),
    ...(random.below(2) ? ['oil = 2*salt'] : []),
  ]
  let formula = formulaOf(lines.join('\n'), { flourWeight: random.pick([1000, 820, 3333]) })
  if (random.below(2))
    formula = edited(formula, w =>
      holdReading(w, at(formula, 'Final dough', 'water'), 'trueHydration', 0.6 + random.next() * 0.3),
    )
  if (random.below(3) === 0)
    formula = edited(formula, w =>
      holdReading(w, at(formula, 'Final dough', 'salt'), 'salt', 0.015 + random.next() * 0.01),
    )
  if (random.below(2))
    formula = edited(formula, w =>
      setBatch(w, formula.id, {
        make: 'pieces',
        pieces: [{ count: 1 + random.below(9), weight: 850 }],
        loss: 0.02,
      }),
    )
  if (random.below(2))
    formula = edited(formula, w =>
      putJotting(w, formula.id, { id: 'j', name: 'tin', text: 'dough_weight/6' }),
    )
  return random.below(2)
    ? withStages(formula, s => (s.name === 'Levain' ? { ...s, keepBack: 50 } : s))
    : formula
}

describe('Changing a starter while the dough stays the same', () => {
  const withStarter = (starter: string, water: string, flour = '120 g') =>
    formulaOf(`
      Levain:
        Firm 60 = ${starter}
        bread flour = ${flour}
        water = ${water}
      Final dough:
        bread flour = 1000 g
        water = 650 g
        salt = 20 g
        levain = 200 g`)

  test('80 g at 60 % and 70 g of water are 100 g at 100 % and 50 g of water', () => {
    const formula = withStarter('80 g', '70 g')
    const now = edited(formula, () =>
      changeStarter(open(formula), at(formula, 'Levain', 'Firm 60'), 'Ripe starter'),
    )
    assert.deepEqual(amounts(now, 'Levain'), ['Ripe starter 100 g', 'bread flour 120 g', 'water 50 g'])
    for (const name of readingNames) {
      const value = open(formula).reading(name)
      if (value) near(open(now).reading(name), value, 1e-12, name)
    }
  })

  test('and back again', () => {
    const formula = withStarter('80 g', '70 g')
    const there = edited(formula, () =>
      changeStarter(open(formula), at(formula, 'Levain', 'Firm 60'), 'Ripe starter'),
    )
    const back = edited(there, () =>
      changeStarter(open(there), at(there, 'Levain', 'Ripe starter'), 'Firm 60'),
    )
    assert.deepEqual(amounts(back, 'Levain'), amounts(formula, 'Levain'))
  })

  test('amounts in percentages stay in percentages', () => {
    const formula = withStarter('16%', '70%', '100%')
    const now = edited(formula, () =>
      changeStarter(open(formula), at(formula, 'Levain', 'Firm 60'), 'Ripe starter'),
    )
    assert.deepEqual(amounts(now, 'Levain'), ['Ripe starter 20%', 'bread flour 100%', 'water 66%'])
    near(open(now).reading('trueHydration'), open(formula).reading('trueHydration')!, 1e-12)
  })

  test('water that gives follows by itself', () => {
    let formula = formulaOf('Final dough:\n bread flour = 900 g\n Firm 60 = 160 g\n water = 600 g')
    formula = edited(formula, w => holdReading(w, at(formula, 'Final dough', 'water'), 'trueHydration', 0.7))
    const now = edited(formula, () =>
      changeStarter(open(formula), at(formula, 'Final dough', 'Firm 60'), 'Ripe starter'),
    )
    assert.deepEqual(amounts(now), ['bread flour 900 g', 'Ripe starter 200 g', 'water 600 g'])
    near(open(now).weight('Final dough', 'water'), open(formula).weight('Final dough', 'water')! - 40, 1e-12)
  })

  test('the heavier of two waters takes up the difference, and amounts that name the starter follow its name', () => {
    const formula = formulaOf(
      'Final dough:\n bread flour = 900 g\n Firm 60 = 160 g\n warm water = 20 g\n water = 600 g\n salt = 20 g',
    )
    const now = edited(formula, () =>
      changeStarter(open(formula), at(formula, 'Final dough', 'Firm 60'), 'Ripe starter'),
    )
    assert.deepEqual(amounts(now).slice(1, 4), ['Ripe starter 200 g', 'warm water 20 g', 'water 560 g'])
  })

  const refusals: readonly (readonly [text: string, to: string, why: RegExp])[] = [
    ['bread flour = 900 g; Firm 60 = 160 g', 'Ripe starter', /has no water line/],
    ['bread flour = 900 g; Firm 60 = 160 g; water = 30 g', 'Ripe starter', /water would weigh less than 0 g/],
    ['bread flour = 900 g; Firm 60 = 160 g; water = 300 g', 'Honey', /Honey is not a starter/],
    ['bread flour = 900 g; water = 300 g; Firm 60 = what', 'Ripe starter', /Firm 60 has no weight/],
    [
      'bread flour = 900 g; Firm 60 = 160 g; water = 300 g; oil = firm_60/8',
      'Ripe starter',
      /oil would not weigh the same/,
    ],
  ]
  for (const [text, to, why] of refusals) {
    test(`${text} to ${to} is refused: ${why}`, () => {
      const formula = formulaOf(`Final dough:\n${text.replaceAll('; ', '\n')}`)
      refuses(() => changeStarter(open(formula), at(formula, 'Final dough', 'Firm 60'), to), why)
    })
  }

  test('a line that gives, or is no starter, is refused', () => {
    let formula = formulaOf('Final dough:\n bread flour = 900 g\n Firm 60 = 160 g\n water = 300 g')
    refuses(
      () => changeStarter(open(formula), at(formula, 'Final dough', 'water'), 'Ripe starter'),
      /water is not a starter/,
    )
    formula = edited(formula, w =>
      holdReading(w, at(formula, 'Final dough', 'Firm 60'), 'prefermentedFlour', 0.1),
    )
    refuses(
      () => changeStarter(open(formula), at(formula, 'Final dough', 'Firm 60'), 'Ripe starter'),
      /gives for a hold/,
    )
    assert.equal(finalDoughOf(formula).lines.length, 3)
  })
})
