import assert from 'node:assert/strict'
import { describe, test } from 'node:test'
import { apart } from '../../src/day/trade/bread-matches.js'
import {
  batchOfCount,
  changeBreads,
  changeFormulas,
  commonCount,
  setOrders,
  timesBatch,
} from '../../src/day/trade/order-edits.js'
import { readOrders } from '../../src/day/trade/read-orders.js'
import type { Batch } from '../../src/dough/document/batch.js'
import { emptyWorkbook, type Workbook } from '../../src/dough/document/workbook.js'
import { History } from '../../src/storage/index.js'
import { bread, saturday } from './notation.js'

const shelf = [
  'Mill wheat',
  'Two-build rye',
  'Seeded spelt tin',
  'Poolish baguette',
  'Morning buns',
  'Held-back flatbread',
  'Rye 70',
  'Salt and pepper loaf',
  'Pain de mie',
].map((name, i) => ({ id: `f${i}`, name }))
const onDay = new Set(['f0', 'f1', 'f2'])

/** `12 Mill wheat` for each that is understood, `4 sourdoh?` for each that is asked, `!text` for what is not, `(name)` for who ordered. */
const read = (text: string, mark: '.' | ',' = '.'): string[] => {
  const { rows, unread, aside } = readOrders(text, shelf, { mark, isFirst: ({ id }) => onDay.has(id) })
  return [
    ...rows.map(({ count, formula, name }) => `${count} ${formula?.name ?? `${name}?`}`),
    ...unread.map(part => `!${part}`),
    ...aside.map(name => `(${name})`),
  ]
}

describe('orders as they are typed', () => {
  const cases: readonly (readonly [text: string, ...said: string[]])[] = [
    ['12 mill wheat, 8 rye', '12 Mill wheat', '8 Two-build rye'],
    ['mill wheat 12, rye 8', '12 Mill wheat', '8 Two-build rye'],
    ['12 mill wheat,8 rye', '12 Mill wheat', '8 Two-build rye'],
    ['12x mill wheat; 8 × rye', '12 Mill wheat', '8 Two-build rye'],
    ['12 MILL  WHEAT\n8 Rye\n', '12 Mill wheat', '8 Two-build rye'],
    ['- 12 mill wheat\n* 8 rye\n• 3 buns', '12 Mill wheat', '8 Two-build rye', '3 Morning buns'],
    ['mill wheat: 12', '12 Mill wheat'],
    ['Mill wheat – 12', '12 Mill wheat'],
    ['Mill wheat (12)', '12 Mill wheat'],
    ['Mill wheat x 12', '12 Mill wheat'],
    ['12 mill wheat and 8 rye', '12 Mill wheat', '8 Two-build rye'],
    ['12 mill wheat 8 rye', '12 Mill wheat', '8 Two-build rye'],
    ['12 loaves of rye', '12 Two-build rye'],
    ['2 salt and pepper loaf, 3 rye', '2 Salt and pepper loaf', '3 Two-build rye'],
    ['5 rye 70', '5 Rye 70'],
    ['rye 70 5', '5 Rye 70'],
    ['twelve mill wheat, eight rye', '12 Mill wheat', '8 Two-build rye'],
    ['a dozen baguettes', '12 Poolish baguette'],
    ['two dozen morning buns', '24 Morning buns'],
    ['half a dozen buns', '6 Morning buns'],
    ['2 dozen buns', '24 Morning buns'],
    ['3 pains de mie', '3 Pain de mie'],
    [
      'Café Anker: 12 mill wheat, 8 rye\nMrs Miller: 2 rye',
      '12 Mill wheat',
      '8 Two-build rye',
      '2 Two-build rye',
      '(Café Anker)',
      '(Mrs Miller)',
    ],
    ['0 rye', '0 Two-build rye'],
    ['12', '!12'],
    ['mill wheat', '!mill wheat'],
    ['-3 rye', '!-3 rye'],
    ['999999999 rye', '!999999999 rye'],
    ['12 sourdough', '12 sourdough?'],
    ['12 mil wheat', '12 Mill wheat'],
    ['12 mlil wheat', '12 mlil wheat?'],
    ['', ...[]],
    [' ,,; \n\t', ...[]],
  ]
  for (const [text, ...said] of cases) test(JSON.stringify(text), () => assert.deepEqual(read(text), said))
})

describe('orders as they are pasted from a table', () => {
  const cases: readonly (readonly [text: string, ...said: string[]])[] = [
    ['Mill wheat\t12\nTwo-build rye\t8\nMill wheat\t3', '12 Mill wheat', '8 Two-build rye', '3 Mill wheat'],
    ['12\tMill wheat\r\n8\trye\r\n', '12 Mill wheat', '8 Two-build rye'],
    ['Bread\tNumber\nMill wheat\t12', '12 Mill wheat', '(Bread)', '(Number)'],
    ['Mill wheat;12\nrye;8', '12 Mill wheat', '8 Two-build rye'],
    ['Mill wheat,12\nrye,8', '12 Mill wheat', '8 Two-build rye'],
    ['"Mill wheat",12', '12 Mill wheat'],
    ['Café Anker\tMill wheat\t12\nCafé Anker\trye\t4', '12 Mill wheat', '4 Two-build rye', '(Café Anker)'],
    ['Mill wheat\t\n\t12', '!Mill wheat', '!12'],
    ['Mill wheat | 12', '12 Mill wheat'],
  ]
  for (const [text, ...said] of cases) test(JSON.stringify(text), () => assert.deepEqual(read(text), said))

  test('numbers go by the baker’s own decimal sign', () => {
    assert.deepEqual(read('1,5 rye', ','), ['1.5 Two-build rye'])
    assert.deepEqual(read('1,200 buns'), ['1200 Morning buns'])
  })
})

test('a name of the day goes before one of the shelf, and of two that have the words both are offered', () => {
  const all = [
    { id: 'a', name: 'Light rye' },
    { id: 'b', name: 'Dark rye' },
  ]
  const first = (...ids: string[]) =>
    readOrders('3 rye', all, { mark: '.', isFirst: ({ id }) => ids.includes(id) }).rows[0]!
  assert.equal(first('b').formula?.id, 'b')
  assert.equal(first().formula, undefined)
  assert.deepEqual(
    first().near.map(({ id }) => id),
    ['a', 'b'],
  )
})

test('near names are offered for a slip of the hand, the nearest first, and none for something else', () => {
  const near = (text: string) => readOrders(text, shelf, { mark: '.' }).rows[0]!.near.map(({ name }) => name)
  assert.equal(near('3 mlil wheat')[0], 'Mill wheat')
  assert.equal(near('3 poolish bagutte')[0], 'Poolish baguette')
  assert.equal(near('3 morning bnus')[0], 'Morning buns')
  assert.deepEqual(near('3 croissant'), [])
  assert.equal(apart('wheat', 'whaet'), 1)
  assert.equal(apart('wheat', 'waet'), 2)
  assert.equal(apart('rye', 'ryee'), 1)
  assert.equal(apart('', 'rye'), 3)
})

test('long and hostile texts are read in step with their length, and nothing of them is lost', () => {
  for (const text of [
    '12 '.repeat(5000),
    ','.repeat(20_000),
    '(((('.repeat(5000),
    `${'a '.repeat(3000)}12`,
    '=1+1\t12',
    '٣ rye',
    '12 \u202erye',
  ]) {
    const { rows, unread, aside } = readOrders(text, shelf, { mark: '.' })
    if (/[\p{L}\p{N}]/u.test(text))
      assert.ok(rows.length + unread.length + aside.length > 0, text.slice(0, 20))
  }
})

const pieces = (count: number, weight = 900): Batch => ({ make: 'pieces', pieces: [{ count, weight }] })

function withDay(): { workbook: Workbook; ids: readonly string[] } {
  const dough = 'Final dough:\n Bread flour 600 g\n Water 400 g'
  const formulas = [
    { ...bread('Mill wheat', dough), batch: pieces(3) },
    { ...bread('Rye', dough), batch: { ...pieces(2, 850), bakeLoss: 0.12 } as Batch },
    bread('Buns', dough),
  ]
  const day = saturday([[formulas[0]!, 6]])
  return { workbook: { ...emptyWorkbook, formulas, days: [day] }, ids: formulas.map(({ id }) => id) }
}

test('orders set how much of each bread of a day is baked, and bake what was not on it, in one edit that is undone as one', () => {
  const { workbook, ids } = withDay()
  const history = new History(workbook)
  history.apply(
    setOrders(
      workbook,
      'day',
      new Map([
        [ids[0]!, { count: 12 }],
        [ids[1]!, { count: 8 }],
        [ids[2]!, { count: 24, weight: 85 }],
      ]),
    )!,
  )
  assert.deepEqual(
    history.workbook.days![0]!.breads.map(({ formula, batch }) => [formula, batch]),
    [
      [ids[0], pieces(12)],
      [ids[1], { ...pieces(8, 850), bakeLoss: 0.12 }],
      [ids[2], pieces(24, 85)],
    ],
  )
  history.undo()
  assert.deepEqual(history.workbook, workbook)
  assert.equal(setOrders(workbook, 'day', new Map([[ids[0]!, { count: 6 }]])), undefined)
})

test('a bread of several shapes is ordered in their proportion, in whole pieces', () => {
  const shapes: Batch = {
    make: 'pieces',
    loss: 0.02,
    pieces: [
      { count: 2, weight: 900, name: 'round' },
      { count: 1, weight: 500, name: 'tin' },
    ],
  }
  const counts = (count: number) => {
    const batch = batchOfCount(shapes, undefined, { count })!
    return 'pieces' in batch ? batch.pieces.map(({ count, name }) => `${count} ${name}`).join(', ') : ''
  }
  assert.equal(counts(12), '8 round, 4 tin')
  assert.equal(counts(10), '7 round, 3 tin') // 6.67 and 3.33
  assert.equal(counts(1), '1 round')
  assert.equal(batchOfCount({ make: 'as written' }, undefined, { count: 3 }), undefined)
})

test('eleven in place of eight: pieces stay whole and go up, weights go in proportion', () => {
  assert.deepEqual(timesBatch(pieces(8), 11 / 8), pieces(11))
  assert.deepEqual(timesBatch(pieces(4), 11 / 8), pieces(6)) // 5.5
  assert.deepEqual(timesBatch(pieces(16), 11 / 8), pieces(22))
  assert.deepEqual(timesBatch(pieces(11), 8 / 11), pieces(8))
  assert.deepEqual(timesBatch({ make: 'dough', grams: 4000, loss: 0.02 }, 11 / 8), {
    make: 'dough',
    grams: 5500,
    loss: 0.02,
  })
  assert.deepEqual(timesBatch(undefined, 11 / 8), { make: 'factor', factor: 1.375 })
  assert.deepEqual(timesBatch({ make: 'factor', factor: 2 }, 11 / 8), { make: 'factor', factor: 2.75 })
})

test('all breads of a day, or several formulas of the shelf, are changed in one edit', () => {
  const { workbook, ids } = withDay()
  const history = new History(workbook)
  history.apply(changeBreads(workbook, 'day', { from: 6, to: 11 })!)
  assert.deepEqual(history.workbook.days![0]!.breads[0]!.batch, pieces(11))
  assert.equal(history.workbook.days![0]!.people, 11)
  history.apply(changeFormulas(history.workbook, [ids[0]!, ids[2]!], { from: 3, to: 6 })!)
  assert.deepEqual(
    history.workbook.formulas.map(({ batch }) => batch),
    [pieces(6), { ...pieces(2, 850), bakeLoss: 0.12 }, { make: 'factor', factor: 2 }],
  )
  history.undo()
  history.undo()
  assert.deepEqual(history.workbook, workbook)
  assert.equal(changeBreads(workbook, 'day', { from: 8, to: 8 }), undefined)
  assert.equal(commonCount([pieces(8), pieces(8)]), 8)
  assert.equal(commonCount([pieces(8), pieces(4)]), undefined)
  assert.equal(commonCount([undefined]), undefined)
})
