import assert from 'node:assert/strict'
import { test } from 'node:test'
import { readFormulas } from '../../src/exchange/index.js'
import { readWell, shown, text, told } from './notation.js'

const hearth = text`
  Hearth loaf
  Levain:
    Ripe starter 20%
    Bread flour 100%
    Water 80%
  Final dough:
    Bread flour 82%
    Wholemeal spelt 18%
    Water 690 g (lukewarm)
    Salt 2 tsp
    Levain 210 g
`
const hearthFile = text`
  formula,stage,ingredient,amount,note
  Hearth loaf,Levain,Ripe starter,20%,
  Hearth loaf,Levain,Bread flour,100%,
  Hearth loaf,Levain,Water,80%,
  Hearth loaf,Final dough,Bread flour,82%,
  Hearth loaf,Final dough,Wholemeal spelt,18%,
  Hearth loaf,Final dough,Water,690 g,lukewarm
  Hearth loaf,Final dough,Salt,2 tsp,
  Hearth loaf,Final dough,Levain,210 g,
`

test('a file of formula, stage, ingredient and amount becomes a formula', () => {
  assert.equal(readWell(hearthFile).map(shown).join(), hearth)
})

for (const [how, file] of [
  ['separated by semicolons', hearthFile.replaceAll(',', ';')],
  ['separated by tabs', hearthFile.replaceAll(',', '\t')],
  ['with a byte-order mark', `\ufeff${hearthFile}`],
  ['with CRLF', hearthFile.replaceAll('\n', '\r\n')],
  ['with the line ends of an old Macintosh', hearthFile.replaceAll('\n', '\r')],
  ['put together from files with different line ends', hearthFile.replace('\n', '\r\n')],
  ['with blank rows', hearthFile.replaceAll('\n', '\n,,,,\n\n')],
  ['with every cell in quotation marks', hearthFile.replace(/[^,\n]+/g, '"$&"')],
  ['that names its delimiter in a line before', `sep=;\r\n${hearthFile.replaceAll(',', ';')}`],
  [
    'with headings in capitals and spaces around',
    hearthFile.replace('stage,ingredient', ' STAGE , Ingredient'),
  ],
] as const)
  test(`the same file ${how} reads the same`, () => {
    assert.equal(readWell(file).map(shown).join(), hearth)
  })

test('columns may come in any order', () => {
  const [formula] = readWell(text`
    Amount,INGREDIENT,Counts_As,Stage,Formula
    100%,Mill blend,flour,Final dough,Tin loaf
    65%,Water,,Final dough,Tin loaf
  `)
  assert.equal(
    shown(formula!),
    text`
      Tin loaf
      Mill blend is flour
      Final dough:
        Mill blend 100%
        Water 65%
    `,
  )
})

test('a file without formula and stage is one formula of one stage', () => {
  const file = text`
    ingredient,amount,setting
    Bread flour,100%,
    Oats,20%,
    ,no,ferments
    ,600 g,flour weight
  `
  assert.equal(
    readWell(file).map(shown).join(),
    text`
      Untitled formula
      flour weight: 600
      Final dough: does not ferment
        Bread flour 100%
        Oats 20%
    `,
  )
})

test('rows of two formulas may be mixed, and names match in any case', () => {
  const formulas = readWell(text`
    formula,stage,ingredient,amount
    Plain,Final dough,Bread flour,100%
    Rye,Final dough,Dark rye flour,100%
    PLAIN,final  dough,Water,65%
    Rye,Final dough,Water,80%
  `)
  assert.deepEqual(
    formulas.map(f => [f.name, f.stages.map(s => s.lines.length)]),
    [
      ['Plain', [2]],
      ['Rye', [2]],
    ],
  )
})

test('stages come in the order of first appearance, and the last is the final dough', () => {
  const [formula] = readWell(text`
    stage,ingredient,amount,setting
    Dough,,yes,ferments
    Levain,Water,80%,
    Dough,Water,60%,
    Levain,Bread flour,100%,
  `)
  assert.deepEqual(
    formula!.stages.map(s => [s.name, s.ferments]),
    [
      ['Levain', undefined],
      ['Dough', true],
    ],
  )
})

test('settings are used or kept, and a base may be marked before or after its line', () => {
  const { formulas, problems } = readFormulas(text`
    formula,stage,ingredient,amount,setting,note
    Seeded,,,"For the Saturday oven,
    in two tins",note,
    Seeded,,,1.2 kg,Flour Weight,
    Seeded,Soaker,,Sunflower seeds,base,
    Seeded,Soaker,Sunflower seeds,60 g,,
    Seeded,Soaker,Flaxseed,40 g,,toasted
    Seeded,Soaker,Flaxseed,,base,
    Seeded,Soaker,,NO,ferments,
    Seeded,,,warm,room,for Sunday
  `)
  assert.deepEqual(told(problems), ['9 remark: Row 9 sets “room”, which is not known here. It is kept.'])
  assert.equal(
    formulas.map(shown).join(),
    text`
      Seeded
      note: For the Saturday oven,
      in two tins
      flour weight: 1200
      kept:  | room | warm | for Sunday
      Soaker: does not ferment
        *Sunflower seeds 60 g
        *Flaxseed 40 g (toasted)
    `,
  )
})

test('counts as becomes a meaning only where the larder says otherwise or does not know', () => {
  const { formulas, problems } = readFormulas(text`
    stage,ingredient,amount,counts as
    Levain,Water,50%,water
    Levain,Firm mother,20%,starter 45%
    Levain,Bread flour,100%,Flour
    Final dough,Wheat germ,5%,flour
    Final dough,Levain,20%,
  `)
  assert.deepEqual(told(problems), [
    '5 remark: Row 5: Wheat germ counts as flour in this formula, unlike in your larder. The formula keeps its own meaning.',
  ])
  assert.deepEqual(formulas[0]!.meanings, [
    { ingredient: 'Firm mother', countsAs: { kind: 'starter', hydration: 0.45 } },
    { ingredient: 'Wheat germ', countsAs: { kind: 'flour' } },
  ])
})

test('without an amount, grams or percent are taken', () => {
  const [formula] = readWell(text`
    ingredient,grams,percent,amount
    Bread flour,500,100,
    Water,,65.5,
    Salt,10,2,1.8%
    Seeds,,,
  `)
  assert.deepEqual(
    formula!.stages[0]!.lines.map(l => l.amount),
    ['500 g', '65.5%', '1.8%', ''],
  )
})

test('a cell that was made harmless to office programs reads as it was', () => {
  const [formula] = readWell(text`
    ingredient,amount,note
    Water,'-20 g + 1 kg,'=1+1
    Salt,2%,''+
    'Nduja,3%,'s evenings
  `)
  assert.deepEqual(
    formula!.stages[0]!.lines.map(l => [l.ingredient, l.amount, l.note]),
    [
      ['Water', '-20 g + 1 kg', '=1+1'],
      ['Salt', '2%', "'+"],
      ["'Nduja", '3%', "'s evenings"],
    ],
  )
})

test('an empty formula or stage is that of the row above, with a remark', () => {
  const { formulas, problems } = readFormulas(text`
    formula,stage,ingredient,amount
    Rye,Build,Rye starter,10%
    ,,Dark rye flour,100%
    ,,Water,100%
    ,Dough,Build,30%
    ,,Dark rye flour,100%
  `)
  assert.equal(formulas.length, 1)
  assert.deepEqual(
    formulas[0]!.stages.map(s => s.lines.length),
    [3, 2],
  )
  assert.deepEqual(told(problems), [
    '3 remark: Row 3 (and 3 more) names no formula: taken as part of the formula above, or of “Untitled formula” where there is none.',
    '3 remark: Row 3 (and 2 more) names no stage: taken as part of the stage above, or of “Final dough” where there is none.',
  ])
})

test('a hundred thousand rows are read', () => {
  const file = `formula,stage,ingredient,amount\n${Array.from({ length: 1e5 }, (_, i) => `Loaf ${i % 997},Final dough,Bread flour,${i} g`).join('\n')}`
  const { formulas, problems } = readFormulas(file)
  assert.equal(formulas.length, 997)
  assert.equal(
    formulas.reduce((n, f) => n + f.stages[0]!.lines.length, 0),
    1e5,
  )
  assert.equal(problems.length, 0)
})
