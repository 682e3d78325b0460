import assert from 'node:assert/strict'
import { test } from 'node:test'
import { hasNotes, ownSizeOf } from '../../src/dough/about/own-size.js'
import type { Batch } from '../../src/dough/document/batch.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { formulaOf, workedCheck } from './notation.js'

// 820 + 180 + 690 + 21 + 210 g
for (const [title, batch, size] of [
  ['as it is written', undefined, undefined],
  ['as written, and said so', { make: 'as written' }, undefined],
  ['just as much, in pieces', { make: 'pieces', pieces: [{ count: 2, weight: 960.5 }] }, undefined],
  ['less', { make: 'pieces', pieces: [{ count: 1, weight: 900 }] }, 1921],
  ['more, with what is lost of it', { make: 'dough', grams: 5400, loss: 0.02 }, 1921],
] as const)
  test(`the size a formula is written for is told where a batch is of another: ${title}`, () => {
    const formula = { ...formulaOf(workedCheck), ...(batch && { batch: batch as Batch }) }
    assert.equal(ownSizeOf(openFormula(formula)), size)
  })

test('notes are those of a formula, its lines and its steps', () => {
  const none = formulaOf(workedCheck)
  const [first, ...others] = none.stages
  const [line, ...rest] = first!.lines
  const step = { id: 's', kind: 'hands' as const, does: 'Divide', text: '10 min', note: 'five pieces' }
  assert.equal(hasNotes(none), false)
  assert.equal(hasNotes({ ...none, note: ' \n' }), false)
  assert.equal(hasNotes({ ...none, note: 'Bake dark.' }), true)
  assert.equal(hasNotes({ ...none, stages: [{ ...first!, method: [step] }, ...others] }), true)
  const lines = [{ ...line!, note: 'ripe' }, ...rest]
  assert.equal(hasNotes({ ...none, stages: [{ ...first!, lines }, ...others] }), true)
})
