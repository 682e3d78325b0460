import assert from 'node:assert/strict'
import { test } from 'node:test'
import { amountAsKept, readAmount } from '../../src/dough/amounts/amounts.js'
import { typedGrams, typedNumber, typedPart } from '../../src/dough/amounts/typed.js'
import { type Formula, finalDoughOf } from '../../src/dough/document/formula.js'
import { applyChanges, emptyWorkbook } from '../../src/dough/document/workbook.js'
import { enterAmount } from '../../src/dough/edits/edits.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { near } from '../assert.js'
import { randomOf } from '../random.js'
import { formulaOf, lineOf } from './notation.js'

const dough = () =>
  formulaOf(`
    Final dough:
      Bread flour = 1000 g
      Water = 1 g
      Salt = 1 g
      Egg = 1 g
      Butter = 1 g
      Cinnamon stick = 1 g
  `)

/** The formula after an amount was typed into a cell of a line of its final dough. */
function typed(text: string, ingredient: string, column: 'percent' | 'weight', decimal: '.' | ','): Formula {
  const formula = dough()
  const at = {
    formula: formula.id,
    stage: finalDoughOf(formula).id,
    line: lineOf(formula, 'Final dough', ingredient).id,
  }
  const workbook = { ...emptyWorkbook, formulas: [formula] }
  return applyChanges(workbook, enterAmount(workbook, at, column, text, decimal).changes).workbook
    .formulas[0]!
}

/** Grams as an exact fraction: `[1500, 1]`. */
type Grams = readonly [over: number, under?: number]
type Case = readonly [typed: string, grams: Grams, how?: string]

// The pound is 453.59237 g and has 16 oz; the teaspoon of water weighs 4.929 g, the tablespoon 14.787, the cup 236.588
// (the larder's water is 1 g a ml), the egg 50 g, 100 % are 1000 g.
const lb = 45359237
const cases: readonly Case[] = [
  // decimal signs that can only be that, in pages of either sign
  ['1,5 kg', [1500]],
  ['1.5 kg', [1500]],
  ['1,5 kg', [1500], ','],
  ['1.5 kg', [1500], ','],
  ['1.234,5 g', [2469, 2]],
  ['1.234,5 g', [2469, 2], ','],
  ['1,234.5 g', [2469, 2]],
  ['1,234.5 g', [2469, 2], ','],
  ['1 234,5 g', [2469, 2]],
  ['1’234,5 g', [2469, 2], ','],
  ['1.234.567,5 g', [2469135, 2]],
  ['0,125 g', [1, 8]],
  [',5 g', [1, 2]],
  ['.5 g', [1, 2], ','],
  ['12,75', [51, 4]],
  ['12.75', [51, 4], ','],
  ['70,5 %', [705]],
  ['70.5 %', [705], ','],
  ['70,5', [705], '%'],
  ['70.5', [705], ',%'],
  ['1,88%', [94, 5], '%'],
  ['1.88%', [94, 5], ',%'],
  ['2,5 % + 1.5 g', [53, 2]],
  ['(1,5 + 1,5)*2 g', [6]],
  ['min(1,5; 2) g', [3, 2], ','],
  ['min(1.5, 2) g', [3, 2]],
  ['max(10 g; 1,5 %)', [15], ','],
  // thousands by the page's own sign, of grams and millilitres
  ['1,000 g', [1000]],
  ['1.000 g', [1000], ','],
  ['1,000 g', [1], ','],
  ['1.000 g', [1]],
  ['1,250', [1250]],
  ['1.250', [1250], ','],
  ['1,000,000 mg', [1000]],
  ['1 000 g', [1000]],
  ['1,500 ml', [1500]],
  // weights
  ['500 g', [500]],
  ['500 Gramm', [500]],
  ['500 grammes', [500]],
  ['500 gr.', [500]],
  ['2 kilos', [2000]],
  ['1,2 Kilogramm', [1200]],
  ['250 mg', [1, 4]],
  ['1 lb', [lb, 100000]],
  ['2 pounds', [2 * lb, 100000]],
  ['1 lb 4 oz', [20 * lb, 1600000]],
  ['1lb4oz', [20 * lb, 1600000]],
  ['1 lb. 4 oz.', [20 * lb, 1600000]],
  ['1 lb, 4 oz', [20 * lb, 1600000]],
  ['1 lb and 4 oz', [20 * lb, 1600000]],
  ['1 pound 4 1/2 ounces', [41 * lb, 3200000]],
  ['1 kg 200 g', [1200]],
  ['12 ozs', [12 * lb, 1600000]],
  ['8 Unzen', [8 * lb, 1600000]],
  ['3 onces', [3 * lb, 1600000]],
  ['1/2 lb', [lb, 200000]],
  ['une livre', [500]],
  ['2 Pfund', [1000]],
  ['ein halbes Pfund', [250]],
  ['half a pound', [lb, 200000]],
  ['three quarters of a pound', [3 * lb, 400000]],
  // volumes of water
  ['2 dl', [200]],
  ['3 cl', [30]],
  ['25 centilitres', [250]],
  ['2 Deziliter', [200]],
  ['1/4 l', [250]],
  ['¼ l', [250]],
  ['1,5 litres', [1500]],
  ['1 1/2 Liter', [1500]],
  ['1½ l', [1500]],
  ['un demi-litre', [500]],
  ['un litre et demi', [1500]],
  ['anderthalb Liter', [1500]],
  ['dreiviertel Liter', [750]],
  ['ein halber Liter', [500]],
  ['1 l 5 dl', [1500]],
  ['2 tsp', [4929, 500]],
  ['2 teaspoons', [4929, 500]],
  ['2 TL', [4929, 500]],
  ['2 Teelöffel', [4929, 500]],
  ['2 Teeloeffel', [4929, 500]],
  ['2 c. à c.', [4929, 500]],
  ['2 càc', [4929, 500]],
  ['2 cuillères à café', [4929, 500]],
  ['2 cuilleres a cafe', [4929, 500]],
  ['2 t', [4929, 500]],
  ['2 tbs', [14787, 500]],
  ['2 tbsp', [14787, 500]],
  ['2 Tbsp.', [14787, 500]],
  ['2 tablespoons', [14787, 500]],
  ['2 T', [14787, 500]],
  ['2 EL', [14787, 500]],
  ['2 Esslöffel', [14787, 500]],
  ['zwei Esslöffel', [14787, 500]],
  ['2 c. à s.', [14787, 500]],
  ['deux cuillères à soupe', [14787, 500]],
  ['two tablespoons', [14787, 500]],
  ['1 dessertspoon', [4929, 500]],
  ['1 cup', [59147, 250]],
  ['1 c.', [59147, 250]],
  ['2 Tassen', [59147, 125]],
  ['une tasse', [59147, 250]],
  ['half a cup', [59147, 500]],
  ['½ cup', [59147, 500]],
  ['1/2 cup', [59147, 500]],
  ['2 1/4 cups', [532323, 1000]],
  ['2-1/4 cups', [532323, 1000]],
  ['2¼ cups', [532323, 1000]],
  ['one and a half cups', [177441, 500]],
  ['a cup and a half', [177441, 500]],
  ['eineinhalb Tassen', [177441, 500]],
  ['1 cup 2 tbsp', [266162, 1000]],
  ['1 cup plus 2 tbsp', [266162, 1000]],
  ['a third of a cup', [59147, 750]],
  ['1 pint', [59147, 125]],
  ['1 quart', [118294, 125]],
  ['8 fl oz', [295735 * 8, 10000]],
  ['8 fl. oz.', [295735 * 8, 10000]],
  ['1 fluid ounce', [295735, 10000]],
  // about, and as the kitchen says it
  ['~20 g', [20]],
  ['~20', [20]],
  ['≈ 20 g', [20]],
  ['about 20 g', [20]],
  ['ca. 1,5 kg', [1500], ','],
  ['env. 20 g', [20]],
  ['etwa 2 dl', [200]],
  ['about half a teaspoon', [4929, 2000]],
  ['2 heaped tsp', [4929, 500]],
  ['~70', [700], '%'],
  ['20 g water', [20]],
  ['2 dl Wasser', [200]],
  ['1 cup of water', [59147, 250]],
  // a pinch is taken as 0.3 g, of whatever
  ['a pinch', [3, 10], 'Salt'],
  ['pinch', [3, 10], 'Salt'],
  ['2 pinches', [3, 5], 'Salt'],
  ['une pincée', [3, 10], 'Salt'],
  ['1 Prise', [3, 10], 'Salt'],
  ['a pinch of salt', [3, 10], 'Salt'],
  ['1 Messerspitze', [3, 10], 'Salt'],
  ['1 Msp.', [3, 10], 'Cinnamon stick'],
  ['1 pinch + 2 g', [23, 10], 'Salt'],
  // counted
  ['3 eggs', [150], 'Egg'],
  ['3 large eggs', [150], 'Egg'],
  ['three eggs', [150], 'Egg'],
  ['3 œufs', [150], 'Egg'],
  ['3 Eier', [150], 'Egg'],
  ['3 each', [150], 'Egg'],
  ['3 pieces', [150], 'Egg'],
  ['3 Stück', [150], 'Egg'],
  ['ein Ei', [50], 'Egg'],
  ['an egg', [50], 'Egg'],
  ['half an egg', [25], 'Egg'],
  ['1½ eggs', [75], 'Egg'],
  ['a dozen eggs', [600], 'Egg'],
  ['half a dozen eggs', [300], 'Egg'],
  ['2 sticks', [2 * lb, 400000], 'Butter'],
  ['1 stick of butter', [lb, 400000], 'Butter'],
  // calculations stay what they are
  ['20 g + 2*salt', [22]],
  ['2 dl + 20 g', [220]],
  ['70% + 20 g', [720], '%'],
  ['= 1,5 kg / 2', [750]],
  ['max(2 tbs, 10 g)', [14787, 500]],
]

for (const [text, [over, under = 1], how = ''] of cases) {
  const decimal = how.startsWith(',') ? ',' : '.'
  const column = how.endsWith('%') ? 'percent' : 'weight'
  const ingredient = /^[A-Z]/.test(how) ? how : 'Water'
  test(`${text} typed of ${ingredient} where ${decimal} is the decimal sign comes to ${over}/${under} g`, () => {
    const sheet = openFormula(typed(text, ingredient, column, decimal))
    near(sheet.weight('Final dough', ingredient), over / under, 1e-9 * (over / under))
  })
}

/** Typed → what is kept of it, where something of it could have been lost. */
const kept: readonly (readonly [
  typed: string,
  column: 'percent' | 'weight',
  decimal: '.' | ',',
  kept: string,
])[] = [
  ['~20 g', 'weight', '.', '~20 g'],
  ['1 lb 4 oz', 'weight', '.', '1 lb 4 oz'],
  ['a pinch', 'weight', '.', 'a pinch'],
  ['3 eggs', 'weight', '.', '3 eggs'],
  ['1,5 c. à s.', 'weight', ',', '1.5 c. à s.'],
  ['70,5', 'percent', '.', '70.5%'],
  ['~70', 'percent', '.', '~70%'],
  ['1,000', 'percent', '.', '1,000%'],
  ['1.000', 'percent', ',', '1,000%'],
  ['1.000 kg', 'weight', ',', '1,000 kg'],
  ['whatever it takes', 'weight', '.', 'whatever it takes'],
]
for (const [text, column, decimal, expected] of kept)
  test(`of ${text} in the ${column} column ${expected} is kept where ${decimal} is the decimal sign`, () => {
    assert.equal(amountAsKept(text, column, decimal), expected)
    assert.equal(amountAsKept(expected, column, '.'), expected)
  })

/** Kept → the code of its problem, with its figures, and the column that shows it. */
const problems: readonly (readonly [
  kept: string,
  code: string,
  shown: string,
  figures?: readonly string[],
])[] = [
  ['1,000%', 'amountInTwoWays', 'percent 1,000', ['1', '1000']],
  ['1,250 kg', 'amountInTwoWays', 'weight 1,250 kg', ['1.25', '1250']],
  ['2,500% + 20 g', 'amountInTwoWays', 'weight 2,500% + 20 g', ['2.5', '2500']],
  ['2 handfuls', 'unknownMeasure', 'weight 2 handfuls'],
  ['whatever it takes', 'notAnAmount', 'weight whatever it takes'],
  ['3 eggs', 'unknownMeasure', 'weight 3 eggs'],
  ['20 g > 10 g', 'amountSaysYesOrNo', 'weight 20 g > 10 g'],
  ['8–10 g', 'numberAmongWeights', 'weight 8–10 g'],
]
for (const [text, code, shown, readings] of problems)
  test(`${text} is a problem, ${code}, whose sentence says what to write`, () => {
    const read = readAmount(text)
    assert.ok(read && 'problem' in read)
    assert.equal(read.problem.code, code)
    assert.equal(`${read.typedIn} ${read.typed}`, shown)
    if (readings) assert.deepEqual('readings' in read.problem && read.problem.readings, readings)
    if (code === 'unknownMeasure' || code === 'notAnAmount')
      assert.match(read.problem.message, /such as 90 g/)
    if (readings) for (const reading of readings) assert.ok(read.problem.message.includes(reading))
  })

test('eggs are counted on their own line only', () => {
  assert.ok('problem' in readAmount('3 eggs', undefined, ['Water', 'Eau'])!)
  assert.ok('expression' in readAmount('3 eggs', undefined, ['Large egg'])!)
  assert.ok('expression' in readAmount('3 eggs', undefined, ['Ei', 'Eggs'])!)
})

/** Fields of numbers: typed, with the sign of the page → grams. */
const weights: readonly (readonly [typed: string, decimal: '.' | ',', grams: number | undefined])[] = [
  ['900', '.', 900],
  ['1,2 kg', '.', 1200],
  ['1.2 kg', ',', 1200],
  ['1 lb 4 oz', '.', (20 * lb) / 1600000],
  ['½ kg', '.', 500],
  ['2 Pfund', ',', 1000],
  ['1,500', '.', 1500],
  ['1,500 g', '.', 1500],
  ['1 cup', '.', undefined],
  ['10 %', '.', undefined],
  ['a lot', '.', undefined],
  ['', '.', undefined],
]
for (const [text, decimal, grams] of weights)
  test(`a weight typed as ${JSON.stringify(text)} is ${grams ?? 'none'} where ${decimal} is the decimal sign`, () => {
    const read = typedGrams(text, decimal)
    if (grams === undefined) assert.equal(read, undefined)
    else near(read, grams, 1e-9 * grams)
  })

test('a part of a whole is a number with or without its sign', () => {
  assert.equal(typedPart('2,5 %', '.'), 0.025)
  assert.equal(typedPart('2.5', ','), 0.025)
  assert.equal(typedPart('', '.'), 0)
  assert.equal(typedPart('2 g', '.'), undefined)
})

test('whatever is typed, nothing throws, and what is kept reads as what was typed (seed 42)', () => {
  const random = randomOf(42)
  const pieces =
    '1|2,5|1.000|1,000|0|½|/|-|–| |  |g|kg|lb|oz|cups|c. à s.|EL|Prise|pinch|a|half|ein|und|(|)|min(|;|,|.|*|+|~|≈|%|of|egg|eggs|٣|５|\u200b|\u202f|=|?|:|²|e3'.split(
      '|',
    )
  for (let i = 0; i < 3000; i++) {
    const text = Array.from({ length: 1 + random.below(8) }, () => random.pick(pieces)).join(
      random.below(2) ? ' ' : '',
    )
    const [decimal, column] = [random.pick(['.', ','] as const), random.pick(['percent', 'weight'] as const)]
    const once = amountAsKept(text, column, decimal)
    readAmount(once, undefined, ['Egg'])
    typedNumber(text, decimal)
    typedGrams(text, decimal)
    const read = readAmount(once)
    if (read && 'expression' in read) assert.equal(amountAsKept(once, column, '.'), once, `${text} → ${once}`)
  }
})
