import assert from 'node:assert/strict'
import { test } from 'node:test'
import { eventWords } from '../../src/day/plan/words.js'

for (const [does, time, load, said] of [
  ['Bulk', undefined, undefined, 'Bulk'],
  ['Bulk', 1, undefined, 'Bulk, first fold'],
  ['Bulk', 4, undefined, 'Bulk, fourth fold'],
  ['Bulk', 12, undefined, 'Bulk, fold 12'],
  ['First rise', 2, undefined, 'First rise, second fold'],
  ['Bench rest', 1, undefined, 'Bench rest, first fold'],
  ['Pointage', 3, undefined, 'Pointage, third fold'],
  ['Première levée', 1, undefined, 'Première levée, first fold'],
  ['Ripen', 1, undefined, 'Ripen, first time'],
  ['Fold', 2, undefined, 'Fold, second time'],
  ['', 2, undefined, 'Wait, second time'],
  ['Bake', undefined, { number: 2, of: 3, pieces: 6 }, 'Bake, load 2'],
  ['Bake', undefined, { number: 1, of: 1, pieces: 6 }, 'Bake'],
] as const)
  test(`a time of the day is called ${said}`, () =>
    assert.equal(eventWords({ step: { id: 's', kind: 'wait', does, text: '', note: '' }, time, load }), said))
