import assert from 'node:assert/strict'
import { test } from 'node:test'
import { type EachMakes, forClass, peopleOfDay } from '../../src/dough/about/class-batch.js'
import type { Batch } from '../../src/dough/document/batch.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { formulaOf, lineOf, workedCheck } from './notation.js'

const shapes: Batch = {
  make: 'pieces',
  pieces: [
    { count: 6, weight: 900 },
    { count: 12, weight: 85 },
  ],
  loss: 0.02,
}

for (const [title, batch, makes, each, all] of [
  [
    'a piece of each shape',
    shapes,
    'piece',
    {
      ...shapes,
      pieces: [
        { count: 1, weight: 900 },
        { count: 1, weight: 85 },
      ],
    },
    {
      ...shapes,
      pieces: [
        { count: 11, weight: 900 },
        { count: 11, weight: 85 },
      ],
    },
  ],
  [
    'the whole batch',
    shapes,
    'batch',
    shapes,
    {
      ...shapes,
      pieces: [
        { count: 66, weight: 900 },
        { count: 132, weight: 85 },
      ],
    },
  ],
  // (6 · 900 + 12 · 85) ÷ 0.98 ÷ 11
  [
    'a part of it that is no whole piece',
    shapes,
    'share',
    { make: 'dough', grams: 6420 / 0.98 / 11, loss: 0.02 },
    shapes,
  ],
  ['what is written', undefined, 'batch', { make: 'as written' }, { make: 'factor', factor: 11 }],
  [
    'what is written, where there are no pieces',
    undefined,
    'piece',
    { make: 'as written' },
    { make: 'factor', factor: 11 },
  ],
  [
    'a weight of flour',
    { make: 'flour', grams: 500 },
    'batch',
    { make: 'flour', grams: 500 },
    { make: 'flour', grams: 5500 },
  ],
] as const)
  test(`eleven people make ${title}`, () => {
    const formula = formulaOf(workedCheck)
    const made = forClass(batch ? { ...formula, batch } : formula, 11, makes as EachMakes)
    const { grams: found, ...foundBatch } = made.each.batch as { grams?: number }
    const { grams, ...wanted } = each as { grams?: number }
    assert.deepEqual(foundBatch, wanted)
    assert.ok(Math.abs((found ?? 0) - (grams ?? 0)) < 1e-9)
    assert.deepEqual(made.all.batch, all)
  })

test('all together weigh eleven times what each weighs', () => {
  const formula = formulaOf(workedCheck)
  for (const makes of ['piece', 'batch', 'share'] as const) {
    const { each, all } = forClass({ ...formula, batch: shapes }, 11, makes)
    const [one, many] = [openFormula(each), openFormula(all)]
    const water = lineOf(formula, 'Final dough', 'water').id
    const ratio = many.line(water).batch! / one.line(water).batch!
    assert.ok(Math.abs(ratio - 11) < 1e-9, `${makes}: ${ratio}`)
  }
})

const bread = (...counts: number[]) => ({
  id: `of ${counts}`,
  formula: `of ${counts}`,
  batch: { make: 'pieces' as const, pieces: counts.map(count => ({ count, weight: 80 })) },
})

for (const [title, day, people] of [
  ['as was said', { people: 11, breads: [bread(66), bread(8)] }, 11],
  ['as many as each bread has pieces', { breads: [bread(11), bread(11)] }, 11],
  ['the fewest pieces, where the others are so many times that', { breads: [bread(66), bread(11)] }, 11],
  ['nobody knows, where pieces do not come out', { breads: [bread(12), bread(8)] }, undefined],
  ['nobody knows, of one piece', { breads: [bread(1), bread(6)] }, undefined],
  [
    'nobody knows, without pieces',
    { breads: [{ ...bread(), batch: { make: 'dough' as const, grams: 900 } }] },
    undefined,
  ],
  ['all shapes of a bread counted', { breads: [bread(5, 6), bread(22)] }, 11],
] as const)
  test(`a day is for people: ${title}`, () => {
    assert.equal(peopleOfDay(day), people)
  })

test('66 buns for eleven are six each, and eleven loaves one', () => {
  const { each, all } = forClass({ ...formulaOf(workedCheck), batch: bread(66).batch }, 11, 'share')
  assert.deepEqual([each.batch, all.batch], [bread(6).batch, bread(66).batch])
})
