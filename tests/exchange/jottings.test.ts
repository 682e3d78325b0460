import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Formula } from '../../src/dough/document/formula.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { readFormulas, writeFormulas } from '../../src/exchange/index.js'
import { formulaOf } from '../dough/notation.js'

const loaf = (...jottings: readonly string[]): Formula => ({
  ...formulaOf('Final dough:\n Bread flour = 100%\n Water = tin/2\n Salt = 2%'),
  jottings: jottings.map((jotting, at) => {
    const [name = '', text = ''] = jotting.split(' = ')
    return { id: `j${at}`, name, text }
  }),
})
const said = ({ jottings = [] }: Formula) => jottings.map(j => `${j.name} = ${j.text}`)
const head = 'formula,stage,ingredient,amount,setting'

test('jottings are settings of the formula, and come back byte for byte, names and order as they were', () => {
  const all = [
    'tin = 21*11*10*0.52',
    'Half = tin/2 + 1.5',
    'least = min(1.5, 2, tin)',
    'dry = true_hydration < 65%',
    'minus = -5 g + 2*dough_weight',
    'empty = ',
    'odd = who, "knows"; 1,5?',
    'très_long = 1 200 g',
  ]
  const written = writeFormulas([loaf(...all)])
  assert.match(written, /\r\nTest,,,21\*11\*10\*0\.52,,,jotting tin,/)
  const { formulas, problems } = readFormulas(written)
  assert.deepEqual(problems, [])
  assert.deepEqual(said(formulas[0]!).slice(0, 6), all.slice(0, 6))
  assert.equal(writeFormulas(formulas), written)
  assert.equal(openFormula(formulas[0]!).weight('Final dough', 'Water'), 600.6)
})

test('kept states do not go into the file', () => {
  const formula = loaf('tin = 5')
  const states = [{ id: 's', name: 'before', keptAt: '2025-11-24T07:42:00.000Z', formula }]
  assert.equal(writeFormulas([{ ...formula, states }]), writeFormulas([formula]))
})

test('a file of decimal commas is read as it means', () => {
  const { formulas, problems } = readFormulas(
    [
      'formula;stage;ingredient;amount;setting',
      'Roggen;;;"min(1,5; 2)*0,52";jotting Form',
      'Roggen;Teig;Bread flour;100%;',
      'Roggen;Teig;Water;70,5%;',
    ].join('\n'),
  )
  assert.deepEqual(problems, [])
  assert.deepEqual(said(formulas[0]!), ['Form = min(1.5, 2)*0.52'])
})

for (const [setting, why] of [
  ['jotting water', /has a jotting that cannot be used: water is a name of Tarebook's own.*It is kept\./],
  ['jotting bread flour', /Bread flour is an ingredient of this formula.*It is kept\./],
  ['jotting cup', /cup is a unit.*It is kept\./],
] as const) {
  test(`“${setting}” cannot be, which is said, and it is kept`, () => {
    const text = [head, `Loaf,,,5,${setting}`, 'Loaf,Dough,Bread flour,100%,'].join('\n')
    const { formulas, problems } = readFormulas(text)
    assert.match(problems[0]!.message, why)
    assert.equal(problems[0]!.where.row, 2)
    assert.deepEqual(said(formulas[0]!), [])
    const written = writeFormulas(formulas)
    assert.match(written, new RegExp(`Loaf,,,5,,,${setting},`))
    assert.equal(writeFormulas(readFormulas(written).formulas), written)
  })
}

test('a second jotting of one name is told of, and one of a stage is not taken for the formula’s', () => {
  const text = [
    head,
    'Loaf,,,5,jotting tin',
    'Loaf,,,6,jotting TIN',
    'Loaf,Dough,,7,jotting x',
    'Loaf,Dough,Bread flour,100%,',
  ]
  const { formulas, problems } = readFormulas(text.join('\n'))
  assert.deepEqual(said(formulas[0]!), ['tin = 5'])
  assert.match(problems[0]!.message, /Row 3 sets “jotting TIN” a second time/)
  assert.match(problems[1]!.message, /Row 4 sets “jotting x” of a stage.*It is kept/)
})
