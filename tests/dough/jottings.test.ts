import assert from 'node:assert/strict'
import { describe, test } from 'node:test'
import { jottingAsKept } from '../../src/dough/amounts/jotting-names.js'
import { type Formula, finalDoughOf } from '../../src/dough/document/formula.js'
import {
  applyChanges,
  emptyWorkbook,
  type Transaction,
  type Workbook,
} from '../../src/dough/document/workbook.js'
import { enterAmount, enterIngredient, Refusal, renameStage } from '../../src/dough/edits/edits.js'
import { putJotting, removeJotting } from '../../src/dough/edits/fetched/jotting-edits.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { near } from '../assert.js'
import { formulaOf, lineOf, workedCheck } from './notation.js'

/** The same formula with jottings, each `name = text`. */
const jotted = (formula: Formula, ...jottings: string[]): Formula => ({
  ...formula,
  jottings: jottings.map((jotting, at) => {
    const [name = '', text = ''] = jotting.split(' = ')
    return { id: `j${at}`, name, text }
  }),
})
const loaf = () => formulaOf(workedCheck)
const shelf = (formula: Formula): Workbook => ({ ...emptyWorkbook, formulas: [formula] })
const edited = (formula: Formula, edit: (workbook: Workbook) => Transaction | undefined): Formula => {
  const workbook = shelf(formula)
  return applyChanges(workbook, edit(workbook)?.changes ?? []).workbook.formulas[0]!
}
const saidOf = (formula: Formula, at = 0) => openFormula(formula).jotting(`j${at}`)
const amountOf = (formula: Formula, ingredient: string) => lineOf(formula, 'Final dough', ingredient).amount
const at = (formula: Formula, ingredient: string) => ({
  formula: formula.id,
  stage: finalDoughOf(formula).id,
  line: lineOf(formula, 'Final dough', ingredient).id,
})

describe('The value of a jotting', () => {
  // Exact fractions: all water is 8640/11 g and all flour 12260/11 g, since 210 of 220 g of levain go in.
  const cases: readonly (readonly [text: string, value: number, measures: string, said: string])[] = [
    ['21*11*10*0.52', 30030 / 25, 'number', '1,201.2'],
    ['dough_weight/6', 1921 / 6, 'weight', '320.2 g'],
    ['total_water/total_flour', 8640 / 12260, 'number', '0.704731'],
    ['levain_on_flour*100', 21, 'number', '21'],
    ['salt_on_flour', 21 / (12260 / 11), 'number', '0.018842'],
    ['true_hydration - 70%', 8640 / 12260 - 7 / 10, 'number', '0.004731'],
    ['2%', 1 / 50, 'number', '0.02'],
    ['water/10 + 5 g', 74, 'weight', '74 g'],
    ['levain.water', 80, 'weight', '80 g'],
    ['levain.flour', 120, 'weight', '120 g'],
    ['levain.bread_flour/levain.weight', 5 / 11, 'number', '0.454545'],
    ['min(bread_flour, 500 g)', 500, 'weight', '500 g'],
    ['2 oz', 56.69904625, 'weight', '56.7 g'],
    ['salt > 20 g', 1, 'truth', 'yes'],
    ['true_hydration > 75%', 0, 'truth', 'no'],
  ]
  for (const [text, value, measures, said] of cases) {
    test(`${text} is ${said}`, () => {
      const figures = saidOf(jotted(loaf(), `x = ${text}`))
      assert.equal(figures.problem, undefined)
      if (value) near(figures.value, value, 1e-12)
      else assert.equal(figures.value, 0)
      assert.equal(figures.measures, measures)
      assert.equal(figures.said, said)
    })
  }

  test('follows when a line changes', () => {
    const formula = jotted(loaf(), 'per_loaf = dough_weight/6')
    const sheet = openFormula(formula)
    sheet.enter('Final dough', 'water', 'weight', '700')
    near(sheet.jotting('j0').value, 1931 / 6, 1e-12)
  })

  test('may be another jotting’s, in whatever order they stand', () => {
    const formula = jotted(loaf(), 'per_dozen = 12*per_loaf', 'per_loaf = dough_weight/6')
    near(saidOf(formula).value, 2 * 1921, 1e-12)
    assert.equal(saidOf(formula).measures, 'weight')
  })

  test('shows its working, and leads on to what it was worked out from', () => {
    const sheet = openFormula(jotted(loaf(), 'per_loaf = dough_weight/6', 'half = per_loaf/2 + 1 g'))
    const { title, words, figures, sources } = sheet.working('jotting j1')
    assert.equal(title, 'half')
    assert.equal(words, 'jotted: per_loaf/2 + 1 g')
    assert.equal(figures, '320.2 g/2 + 1 g = 161.1 g')
    assert.deepEqual(
      sources.map(s => [s.words, s.figure, s.how, s.cell]),
      [['per_loaf', '320.2 g', 'dough_weight/6', 'jotting j0']],
    )
    assert.equal(sheet.working('jotting j0').sources[0]!.cell, 'doughWeight')
  })
})

describe('A jotting in an amount', () => {
  test('that is a weight is that weight', () => {
    const formula = jotted(loaf(), 'tenth = total_flour/10')
    const sheet = openFormula(edited(formula, w => enterAmount(w, at(formula, 'salt'), 'weight', 'tenth')))
    near(sheet.weight('Final dough', 'salt'), 12260 / 110, 1e-12)
  })

  test('that is a plain number counts as grams in the weight column', () => {
    const formula = jotted(loaf(), 'tin = 21*11*10*0.52')
    for (const [text, grams] of [
      ['tin', 1201.2],
      ['tin/2', 600.6],
      ['(2*tin) g', 2402.4],
    ] as const) {
      const sheet = openFormula(edited(formula, w => enterAmount(w, at(formula, 'water'), 'weight', text)))
      near(sheet.weight('Final dough', 'water'), grams, 1e-12, text)
    }
  })

  test('that is a plain number counts as per cent in the percentage column', () => {
    const formula = edited(jotted(loaf(), 'wet = 70 + 5'), w =>
      enterAmount(w, at(w.formulas[0]!, 'water'), 'percent', 'wet'),
    )
    const sheet = openFormula(formula)
    near(sheet.weight('Final dough', 'water'), 750, 1e-12)
    const { typedIn, typed } = sheet.line(lineOf(formula, 'Final dough', 'water').id)
    assert.deepEqual([typedIn, typed], ['percent', 'wet'])
  })

  test('goes with weights and percentages by what it measures', () => {
    const formula = jotted(loaf(), 'each = 2 g', 'many = 6', 'share = 2%')
    for (const [text, grams] of [
      ['many*each + 1 g', 13],
      ['share*flour', 245.2 / 11],
      ['2% + each', 22],
    ] as const) {
      const sheet = openFormula(edited(formula, w => enterAmount(w, at(formula, 'salt'), 'weight', text)))
      near(sheet.weight('Final dough', 'salt'), grams, 1e-12, text)
    }
    const sheet = openFormula(edited(formula, w => enterAmount(w, at(formula, 'salt'), 'weight', 'each + 5')))
    assert.match(sheet.line(at(formula, 'salt').line).problem!.message, /each \+ 5: give the 5 a unit/)
  })

  test('keeps its meaning when an ingredient of that name comes in, and that is said', () => {
    const formula = jotted(
      formulaOf('Final dough:\n flour = 100%\n salt = 2*oil\n water = 70%'),
      'oil = 10 g',
    )
    const sheet = openFormula(formula)
    sheet.enter('Final dough', 'oil', 'weight', '50')
    near(sheet.weight('Final dough', 'salt'), 20, 1e-12)
    assert.match(sheet.jotting('j0').problem!.message, /oil is an ingredient as well/)
  })
})

describe('A jotting that does not come out', () => {
  const cases: readonly (readonly [jotting: string, problem: RegExp])[] = [
    ['x = dough_wieght/6 + 5', /^Nothing here is called dough_wieght\.$/],
    ['x = poolish.water', /^No stage is called poolish\.$/],
    ['x = levain.rye', /^Nothing in Levain is called rye\.$/],
    ['x = 2 tsp', /A tsp of what\? Write it in grams/],
    ['x = salt + 5', /salt \+ 5: give the 5 a unit/],
    ['x = salt*water', /weight times a weight/],
    ['x = (2', /never closed/],
    ['x = ', /Nothing is written/],
    ['x = 1/0', /./],
  ]
  for (const [jotting, problem] of cases) {
    test(`${jotting} says ${problem}`, () => {
      const { value, said, problem: why } = saidOf(jotted(loaf(), jotting))
      assert.deepEqual([value, said], [undefined, '–'])
      assert.match(why!.message, problem)
    })
  }

  test('because two go in a circle says the circle, and all else still computes', () => {
    const sheet = openFormula(jotted(loaf(), 'a = 2*b', 'b = a + 1 g', 'c = 7'))
    for (const id of ['j0', 'j1']) {
      const { code, message } = sheet.jotting(id).problem!
      assert.equal(code, 'figuresInCircle')
      assert.match(message, /b is worked out from a is worked out from b: they wait for each other/)
    }
    assert.equal(sheet.jotting('j2').value, 7)
    near(sheet.reading('trueHydration'), 8640 / 12260, 1e-12)
  })

  test('because its amount speaks of it says the circle through the line', () => {
    const formula = jotted(loaf(), 'per_loaf = dough_weight/6')
    const sheet = openFormula(edited(formula, w => enterAmount(w, at(formula, 'salt'), 'weight', 'per_loaf')))
    for (const { problem } of [sheet.jotting('j0'), sheet.line(at(formula, 'salt').line)]) {
      assert.equal(problem!.code, 'figuresInCircle')
      assert.match(problem!.message, /per_loaf.*they wait for each other/)
    }
  })

  test('says where it went wrong to the amount that uses it', () => {
    const formula = jotted(loaf(), 'x = no_such/2')
    const sheet = openFormula(edited(formula, w => enterAmount(w, at(formula, 'salt'), 'weight', 'x')))
    assert.match(sheet.line(at(formula, 'salt').line).problem!.message, /^x: Nothing here is called no_such/)
  })

  test('of two with one name the first is meant, and the second says so', () => {
    const sheet = openFormula(jotted(loaf(), 'x = 1', 'X = 2'))
    assert.equal(sheet.jotting('j0').value, 1)
    assert.match(sheet.jotting('j1').problem!.message, /another jotting of this name/)
  })
})

describe('Putting and taking jottings', () => {
  test('a name is kept so that amounts can use it', () => {
    for (const [typed, kept] of [
      ['per loaf', 'per_loaf'],
      [' Tin ', 'Tin'],
      ['½ loaf', 'loaf'],
      ['très long', 'très_long'],
      ['2nd', '_2nd'],
    ] as const) {
      const { jottings } = edited(loaf(), w =>
        putJotting(w, w.formulas[0]!.id, { id: 'a', name: typed, text: '1' }),
      )
      assert.equal(jottings![0]!.name, kept)
    }
  })

  for (const [name, why] of [
    ['  ', /needs a name/],
    ['???', /needs a name/],
    ['base', /name of Tarebook's own/],
    ['Salt', /name of Tarebook's own/],
    ['dough weight', /name of Tarebook's own/],
    ['cup', /is a unit/],
    ['bread flour', /bread flour is an ingredient of this formula/],
    ['Levain', /Levain is a stage|levain is an ingredient/],
    ['TIN', /There is a jotting called TIN already/],
  ] as const) {
    test(`“${name}” is refused: ${why}`, () => {
      const workbook = shelf(jotted(loaf(), 'tin = 1'))
      assert.throws(
        () => putJotting(workbook, workbook.formulas[0]!.id, { id: 'new', name, text: '2' }),
        (error: unknown) => error instanceof Refusal && why.test(error.message),
      )
    })
  }

  test('a new name is taken along into amounts and other jottings, and into nothing else', () => {
    let formula = jotted(loaf(), 'x = 2 g', 'y = 3*x + levain.water')
    formula = edited(formula, w => enterAmount(w, at(formula, 'salt'), 'weight', '2*x + 1 g'))
    const renamed = edited(formula, w =>
      putJotting(w, formula.id, { ...formula.jottings![0]!, name: 'pinch' }),
    )
    assert.equal(amountOf(renamed, 'salt'), '2*pinch + 1 g')
    assert.deepEqual(
      renamed.jottings!.map(j => `${j.name} = ${j.text}`),
      ['pinch = 2 g', 'y = 3*pinch + levain.water'],
    )
    near(openFormula(renamed).weight('Final dough', 'salt'), 5, 1e-12)
  })

  test('a new name of an ingredient or a stage is taken along into jottings', () => {
    const formula = jotted(loaf(), 'x = 2*salt', 'y = levain.water + levain', 'z = levain.bread_flour')
    const salted = edited(formula, w => enterIngredient(w, at(formula, 'salt'), 'sea salt'))
    assert.equal(salted.jottings![0]!.text, '2*sea_salt')
    const [levain] = formula.stages
    const staged = edited(formula, w =>
      renameStage(w, { formula: formula.id, stage: levain!.id }, 'Wild yeast'),
    )
    assert.equal(staged.jottings![1]!.text, 'wild_yeast.water + wild_yeast')
    const line = { formula: formula.id, stage: levain!.id, line: levain!.lines[1]!.id }
    assert.equal(edited(formula, w => enterIngredient(w, line, 'rye')).jottings![2]!.text, 'levain.rye')
  })

  test('one taken away is missed by name, and undo brings it back', () => {
    let formula = jotted(loaf(), 'x = 2 g')
    formula = edited(formula, w => enterAmount(w, at(formula, 'salt'), 'weight', 'x'))
    const workbook = shelf(formula)
    const transaction = removeJotting(workbook, formula.id, 'j0')!
    assert.equal(transaction.label, 'Remove x')
    const { workbook: without, inverse } = applyChanges(workbook, transaction.changes)
    const sheet = openFormula(without.formulas[0]!)
    assert.match(sheet.line(at(formula, 'salt').line).problem!.message, /Nothing in Final dough is called x/)
    assert.deepEqual(applyChanges(without, inverse).workbook, workbook)
  })

  test('a text is kept with decimal points', () => {
    assert.equal(jottingAsKept(' min(0,5; 2) * 3,25 ', ','), 'min(0.5, 2) * 3.25')
    assert.equal(jottingAsKept('2,5%', ','), '2.5%')
    assert.equal(jottingAsKept('= dough_weight/6', '.'), 'dough_weight/6')
    assert.equal(jottingAsKept('who knows?', ','), 'who knows?')
  })

  test('names to use are those of the dough, the jottings, the readings and the stages', () => {
    const names = openFormula(jotted(loaf(), 'tin = 1')).usableNames
    for (const name of ['wholemeal_spelt', 'tin', 'dough_weight', 'salt_on_flour', 'flour', 'levain.water'])
      assert.ok(names.includes(name), name)
    assert.equal(new Set(names).size, names.length)
  })
})
