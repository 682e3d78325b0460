import assert from 'node:assert/strict'
import { test } from 'node:test'
import { bestPaged, paged } from '../../components/handout/pages.js'

const formula = (...heights: number[]) => ({ heights, isFormula: true })
const other = (...heights: number[]) => ({ heights, isFormula: false })

/** Pages as `0.0 0.1 | 1.0`. */
const said = (parts: readonly ReturnType<typeof formula>[], put = paged) =>
  put(parts, 100, 5)
    .map(page => page.map(([part, block]) => `${part}.${block}`).join(' '))
    .join(' | ')

for (const [title, parts, pages] of [
  ['two formulas that fit whole share a page', [formula(20, 20), formula(30, 30)], '0.0 0.1 1.0 1.1'],
  ['one that does not fit whole begins a page', [formula(20, 40), formula(30, 30)], '0.0 0.1 | 1.0 1.1'],
  [
    'what opens a handout has the first formula beneath it where that fits',
    [other(20), formula(60), formula(30)],
    '0.0 1.0 | 2.0',
  ],
  [
    'one that fits no page begins one, and goes on between its blocks',
    [other(20), formula(60, 30, 50, 40), formula(5)],
    '0.0 | 1.0 1.1 | 1.2 1.3 | 2.0',
  ],
  ['what closes it stands wherever there is room', [formula(60, 60), other(30)], '0.0 | 0.1 1.0'],
  ['a block higher than a page has one to itself', [formula(10, 140, 10)], '0.0 | 0.1 | 0.2'],
] as const)
  test(title, () => {
    assert.equal(said(parts as never), pages)
  })

for (const [title, parts, pages] of [
  [
    'what closes it stands with what opens it where that takes no more pages',
    [other(20), formula(85), formula(85), other(30)],
    '0.0 3.0 | 1.0 | 2.0',
  ],
  [
    'it comes last where it would need a page more for that',
    [other(20), formula(70), formula(60), other(30)],
    '0.0 1.0 | 2.0 3.0',
  ],
  [
    'one bread by itself begins the first page, and what closes it follows',
    [formula(60, 60, 20), other(10)],
    '0.0 | 0.1 0.2 1.0',
  ],
] as const)
  test(title, () => {
    assert.equal(said(parts as never, bestPaged), pages)
  })
