import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import { test } from 'node:test'
import { allergensOf, cautionsOf } from '../../src/dough/about/allergens.js'
import {
  allergenSentence,
  householdSentence,
  type NotKnown,
  notKnownSentence,
} from '../../src/dough/about/words.js'
import type { Ingredient } from '../../src/dough/document/larder.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { larderWith, usualLarder } from '../../src/dough/larder/usual-larder.js'
import { readFormulas } from '../../src/exchange/index.js'
import { formulaOf } from './notation.js'

const notKnownOf = (ingredient: string, isStarter = false): NotKnown => ({ ingredient, isStarter })

const buns = formulaOf(`
  Levain:
    Rye starter = 30 g
    Bread flour = 100 g
    Water = 50 g
  Final dough:
    Bread flour = 100%
    Levain = 18%
    Milk = 46%
    Eggs = 2 each
    Walnuts = 10%
    Ground cardamom = 3 g
`)

test('a formula lists what its ingredients are listed under, through its stages and starters', () => {
  const { us, eu, canada, notKnown } = allergensOf(openFormula(buns))
  assert.deepEqual(us, [
    { entry: 'wheat', ingredients: ['Bread flour'] },
    { entry: 'milk', ingredients: ['Milk'] },
    { entry: 'egg', ingredients: ['Eggs'] },
    { entry: 'tree nuts (walnut)', ingredients: ['Walnuts'] },
  ])
  assert.deepEqual(
    eu.map(a => a.entry),
    ['cereals containing gluten (rye)', 'cereals containing gluten (wheat)', 'milk', 'eggs', 'nuts (walnut)'],
  )
  assert.deepEqual(eu[0]!.ingredients, ['Rye starter'])
  assert.ok(canada.some(a => a.entry === 'gluten source (rye)'))
  assert.deepEqual(notKnown, [{ ingredient: 'Ground cardamom', isStarter: false }])
  assert.equal(notKnownSentence(notKnown), 'Not known: Ground cardamom.')
})

test('a starter that nobody has said the flour of is not known', () => {
  const formula = formulaOf('Final dough:\n Rice flour = 100%\n House starter = 20%\n Old starter = 5%', {
    meanings: [{ ingredient: 'Old starter', countsAs: { kind: 'starter', hydration: 1 } }],
  })
  const starter = usualLarder.find(i => i.name === 'Ripe starter')!
  const house = {
    ...starter,
    id: 'house',
    name: 'House starter',
    otherNames: [],
    allergens: { us: [], eu: [], canada: [] },
  }
  const { notKnown } = allergensOf(openFormula(formula, larderWith([house])))
  assert.deepEqual(notKnown, [
    { ingredient: 'House starter', isStarter: true },
    { ingredient: 'Old starter', isStarter: true },
  ])
  assert.equal(
    notKnownSentence(notKnown),
    'Not known: House starter, of which the flour it is fed with is not known; Old starter, of which the flour it is fed with is not known.',
  )
})

const none = { us: [], eu: [], canada: [] }
const usual = (name: string) => usualLarder.find(i => i.name === name)!
/** An ingredient of the baker's own, of which nobody has said anything. */
const ownOf = (name: string): Ingredient => {
  const { allergens: _allergens, ...own } = { ...usual(name), id: 'own', name: 'Hill meal', otherNames: [] }
  return own
}
const meal = ownOf('Dark rye flour')
const starter = ownOf('Ripe starter')
const { allergens: rye } = usual('Dark rye flour')

for (const [what, own, said] of [
  ['an own flour nobody has said anything of', meal, notKnownOf('Hill meal')],
  [
    'an own flour with empty lists, from an older workbook',
    { ...meal, allergens: none },
    notKnownOf('Hill meal'),
  ],
  ['an own flour said to be none of these', { ...meal, allergens: none, noneListed: true }, ''],
  [
    'an own flour said to be none of these, without its lists',
    { ...meal, noneListed: true },
    notKnownOf('Hill meal'),
  ],
  ['an own flour with rye ticked', { ...meal, allergens: rye }, 'cereals containing gluten (rye)'],
  [
    'an own flour with mustard ticked, that one list names not',
    { ...meal, allergens: { ...none, eu: ['mustard'] } },
    'mustard',
  ],
  [
    'something of its own that is no flour',
    { ...meal, countsAs: { kind: 'other' } },
    notKnownOf('Hill meal'),
  ],
  ['a changed rice flour', { ...usual('Rice flour'), name: 'Hill meal', cup: 150 }, ''],
  [
    'a changed rye flour',
    { ...usual('Dark rye flour'), name: 'Hill meal', cup: 150 },
    'cereals containing gluten (rye)',
  ],
  [
    'a changed rye flour with its rye unticked before',
    { ...usual('Dark rye flour'), name: 'Hill meal', allergens: none },
    notKnownOf('Hill meal'),
  ],
  ['an own starter nobody has said the flour of', starter, notKnownOf('Hill meal', true)],
  ['an own starter of rye', { ...starter, allergens: rye }, 'cereals containing gluten (rye)'],
  ['an own starter said to be fed with none of these', { ...starter, allergens: none, noneListed: true }, ''],
] as readonly (readonly [string, Ingredient, string | NotKnown])[])
  test(`${what} ${typeof said !== 'string' ? 'is not known' : said ? `lists ${said}` : 'lists nothing'}`, () => {
    const formula = formulaOf('Final dough:\n Water = 100 g\n Hill meal = 20 g')
    const { eu, notKnown } = allergensOf(openFormula(formula, larderWith([own])))
    assert.deepEqual([...eu.map(a => a.entry), ...notKnown], said ? [said] : [])
  })

for (const [line, kind, said] of [
  ['Hill meal', { kind: 'flour' }, [notKnownOf('Hill meal')]],
  ['Hill meal', { kind: 'water' }, [notKnownOf('Hill meal')]],
  ['Rice flour', { kind: 'flour' }, []],
  ['Rice flour', { kind: 'starter', hydration: 1 }, [notKnownOf('Rice flour', true)]],
] as const)
  test(`${line} that a formula counts as ${kind.kind} states no allergens by that`, () => {
    const formula = formulaOf(`Final dough:\n Water = 100 g\n ${line} = 100 g`, {
      meanings: [{ ingredient: line, countsAs: kind }],
    })
    for (const larder of [larderWith([]), larderWith([meal])])
      assert.deepEqual(allergensOf(openFormula(formula, larder)).notKnown, said)
  })

test('everything in the usual larder is stated', () => {
  assert.ok(larderWith([]).ingredients.every(i => i.allergens))
})

const plain = formulaOf('Final dough:\n Bread flour = 100%\n Water = 65%\n Salt = 2%')
const noted = (note: string) => ({ ...plain, note })
const withLine = (line: string) => formulaOf(`Final dough:\n Bread flour = 100%\n Water = 60%\n ${line}`)

for (const [what, formula, expected] of [
  ['flour, water and salt', plain, ['rawFlour']],
  ['nothing', formulaOf('Final dough:'), []],
  ['milk', withLine('Milk = 5%'), ['perishable', 'rawFlour']],
  ['egg yolks', withLine('Yolks = 5%'), ['perishable', 'rawFlour']],
  ['butter', withLine('Butter = 5%'), ['rawFlour']],
  ['a pot in the note', noted('Bake in a hot pot.'), ['rawFlour', 'heat']],
  ['a lid in the note', noted('Take the lid off after 20 min'), ['rawFlour', 'heat']],
  ['steam in the note', noted('with STEAM'), ['rawFlour', 'heat']],
  ['tins in the note', noted('two tins'), ['rawFlour', 'heat']],
  ['a stone in the note', noted('on the stone'), ['rawFlour', 'heat']],
  ['stone-ground flour in the note', noted('stone-ground, not potent'), ['rawFlour']],
  ['une cocotte in the note', noted('Cuire en cocotte'), ['rawFlour', 'heat']],
  ['garlic alone', withLine('Garlic = 2%'), ['rawFlour']],
  [
    'garlic and oil',
    formulaOf('Final dough:\n Bread flour = 100%\n Garlic = 2%\n Olive oil = 3%'),
    ['rawFlour', 'inOil'],
  ],
  ['herbs in oil in the note', noted('brush with rosemary in oil'), ['rawFlour', 'inOil']],
] as const)
  test(`the cautions for ${what} are ${expected.join(', ') || 'none'}`, () => {
    assert.deepEqual(
      cautionsOf(openFormula(formula)).map(c => c.code),
      expected,
    )
  })

test('the rule for perishable dough has its hours and degrees', () => {
  const [perishable] = cautionsOf(openFormula(withLine('Milk = 5%')))
  assert.match(perishable!.message, /2 hours.*4 and 60 °C.*1 hour.*32 °C.*5 °C/)
})

test('no sentence clears a bread for anybody', () => {
  const sheets = [
    ...readdirSync('examples')
      .filter(f => f.endsWith('.csv'))
      .map(f => readFormulas(readFileSync(`examples/${f}`, 'utf8')).formulas[0]!),
    buns,
    noted('garlic in oil, pot'),
  ].map(formula => openFormula(formula))
  const sentences = [
    allergenSentence,
    householdSentence,
    ...sheets.flatMap(sheet => cautionsOf(sheet).map(c => c.message)),
    ...sheets.map(sheet => notKnownSentence(allergensOf(sheet).notKnown)),
    readFileSync('src/dough/about/allergens.ts', 'utf8'),
    readFileSync('src/dough/about/words.ts', 'utf8'),
  ]
  for (const sentence of sentences)
    assert.doesNotMatch(sentence, /\bsafe(?:ly|ty)?\b|free from|free of|-free\b|suitable for|contains no/i)
  assert.match(allergenSentence, /suppliers’ labels and local food law decide/)
})
