import assert from 'node:assert/strict'
import { test } from 'node:test'
import { stepsOf } from '../../src/day/method/stage-steps.js'

/** Lines of a stage, its steps, and which lines go in at each, by their places; `?` before a name that is none. */
const cases: readonly (readonly [lines: string, steps: readonly string[], added: readonly string[]])[] = [
  ['Flour | Water | Salt', ['10 min', '5 min, adds Salt'], ['0 1', '2']],
  ['Flour | Water | Salt', ['', 'adds water', 'adds SALT, flour'], ['', '1', '2 0']],
  ['Water | Flour | Water', ['adds Water', 'adds Water (2)'], ['1 0', '2']],
  ['Water | Flour | Water', ['adds Water (2)', 'adds Water'], ['1 2', '0']],
  ['Water | Flour | Water', ['adds Water', 'adds Water'], ['1 0', '2']],
  ['Water | Flour | Water', ['', 'adds Water, Water (2)'], ['1', '0 2']],
  ['Water | Water', ['adds Water (2)', 'adds Water (2)'], ['0 1', '?Water (2)']],
  ['Water | Water', ['adds Water (3)'], ['0 1 ?Water (3)']],
  ['Water (2) | Water | Water', ['adds Water (2)', 'adds Water (2)'], ['1 0', '2']],
  ['Flour | Butter, soft | Salt', ['', 'adds Butter, soft, Salt', '5 min'], ['0', '1 2', '']],
  ['Flour | Butter,soft', ['', 'adds Butter, soft'], ['0', '1']],
  ['Flour | Butter', ['', 'adds Butter, soft'], ['0', '1 ?soft']],
]
for (const [names, texts, added] of cases)
  test(`${texts.map(text => `“${text}”`).join(', then ')} of ${names}`, () => {
    const lines = names
      .split(' | ')
      .map((ingredient, at) => ({ id: `${at}`, ingredient, amount: '', note: '' }))
    const method = texts.map((text, at) => ({
      id: `s${at}`,
      does: 'Mix',
      kind: 'hands' as const,
      text,
      note: '',
    }))
    const steps = stepsOf({ id: 's', name: 'Dough', lines, method }, 0)
    assert.deepEqual(
      steps.map(step =>
        [...step.lines.map(({ id }) => id), ...step.missing.map(name => `?${name}`)].join(' '),
      ),
      added,
    )
  })
