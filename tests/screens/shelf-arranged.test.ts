import { test } from 'node:test'
import { arranged, type Order } from '../../components/shelf/arranged'
import { soughtIn } from '../../components/shelf/sought'
import type { Formula } from '../../src/dough/document/formula'
import { deepEqual, equal } from '../assert'
import { formulaOf } from '../dough/notation'

const bread = (name: string, group?: string): Formula => ({
  ...formulaOf('Final dough:\nBread flour = 100%'),
  id: name,
  name,
  ...(group !== undefined && { group }),
})
/** `Rye, Miche | Sweet: Bun` */
const told = (formulas: readonly Formula[], order: Order, times: Readonly<Record<string, unknown>> = {}) =>
  arranged(formulas, order, times, 'en')
    .map(({ group, formulas }) => `${group && `${group}: `}${formulas.map(f => f.name).join(', ')}`)
    .join(' | ')

const shelf = [
  bread('Tin 10', 'Tins'),
  bread('Rye'),
  bread('Tin 9', 'tins '),
  bread('Äpfel', 'Sweet'),
  bread('Bun', 'Sweet'),
  bread('Zopf', 'Sweet'),
]
const times = { Rye: 5, Bun: 3, Zopf: 4, 'Tin 9': 2, Äpfel: 'yesterday' }
for (const [order, wanted] of [
  ['added', 'Rye | Sweet: Äpfel, Bun, Zopf | Tins: Tin 10, Tin 9'],
  ['name', 'Rye | Sweet: Äpfel, Bun, Zopf | Tins: Tin 9, Tin 10'],
  ['opened', 'Rye | Sweet: Zopf, Bun, Äpfel | Tins: Tin 9, Tin 10'],
  ['changed', 'Rye | Sweet: Zopf, Bun, Äpfel | Tins: Tin 9, Tin 10'],
] as const)
  test(`groups stand by their names behind what is in none; within each the order is “${order}”`, () => {
    equal(told(shelf, order, times), wanted)
  })

test('a shelf without groups is one list in its order', () => {
  const plain = shelf.map(({ group: _group, ...formula }) => formula)
  equal(told(plain, 'name'), 'Äpfel, Bun, Rye, Tin 9, Tin 10, Zopf')
  equal(told([], 'name'), '')
})

const long = 'The night before, soak the old bread in warm water and squeeze it out with both hands'
const crumbs: Formula = {
  ...formulaOf('Soaker:\nStale crumbs = 50 g\nFinal dough:\nBread flour = 100%\nCrème fraîche = 10%'),
  name: 'Crumb loaf',
  note: long,
  group: 'Winter',
  states: [],
}
const [soaker, dough] = crumbs.stages
const method = [
  { id: 's', does: 'Bake', kind: 'bake', text: '40 min, at 230 °C', note: 'hollow when tapped' },
] as const
const looked: Formula = {
  ...crumbs,
  stages: [
    soaker!,
    { ...dough!, lines: [{ ...dough!.lines[0]!, note: 'sifted' }, ...dough!.lines.slice(1)], method },
  ],
}
for (const [sought, where] of [
  ['CRUMB L', ''],
  ['stale', 'Stale crumbs'],
  ['creme fraiche', 'Crème fraîche'],
  ['sifted', 'sifted'],
  ['soaker', 'Soaker'],
  ['230', 'Bake 40 min, at 230 °C'],
  ['tapped', 'hollow when tapped'],
  ['winter', 'Winter'],
  ['night', 'The night before, soak the old bread…'],
  ['squeeze', '…in warm water and squeeze it out with both hands'],
  ['caraway', undefined],
] as const)
  test(`“${sought}” is ${where === undefined ? 'not found' : where ? `found in “${where}”` : 'found in the name'}`, () => {
    deepEqual(
      soughtIn([bread('Other'), looked], sought).map(found => found.where),
      where === undefined ? [] : [where],
    )
  })

test('formulas with it in their names come first', () => {
  const spelt = { ...formulaOf('Final dough:\nSpelt = 100%'), name: 'Hearth loaf' }
  deepEqual(
    soughtIn([spelt, bread('Spelt tin')], 'spelt').map(({ formula }) => formula.name),
    ['Spelt tin', 'Hearth loaf'],
  )
})
