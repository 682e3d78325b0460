import assert from 'node:assert/strict'
import { describe, test } from 'node:test'
import { alsoDone, settingsBeside } from '../../components/beside/beside-settings.js'
import { listedFew } from '../../components/beside/settings-words.js'
import type { Formula, Stage, Step } from '../../src/dough/document/formula.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { millWheat } from './breads.js'

const english = { language: 'en-GB', decimal: '.' } as const
const mill = millWheat()
const [levain, dough] = mill.stages as [Stage, Stage]
const withDough = (lines: Stage['lines']): Partial<Formula> => ({ stages: [levain, { ...dough, lines }] })
const withLevain = (fields: Partial<Stage>): Partial<Formula> => ({
  stages: [{ ...levain, ...fields }, dough],
})
const beside = (left: Partial<Formula>, right: Partial<Formula>) =>
  settingsBeside(openFormula({ ...mill, ...left }), openFormula({ ...mill, ...right }), english)

const water = dough.lines[2]!.id
const step = (does: string, kind: Step['kind'], text: string, note = ''): Step => ({
  id: does,
  does,
  kind,
  text,
  note,
})
const jotting = (text: string, name = 'tin', id = 'j') => ({ id, name, text })
const sixOf = (weight: number) => ({ make: 'pieces' as const, pieces: [{ count: 6, weight }] })
const inPercent = withDough(dough.lines.map((l, i) => ({ ...l, amount: `${[82, 18, 69, 2, 20][i]}%` })))

const cases: readonly (readonly [
  title: string,
  left: Partial<Formula>,
  right: Partial<Formula>,
  ...said: (readonly [what: string, left: string, right: string])[],
])[] = [
  ['nothing, where nothing differs', { batch: { make: 'as written' }, note: '' }, {}],
  ['how much is made', { batch: sixOf(900) }, {}, ['how much to make', '6 × 900 g', 'as written']],
  [
    'how much is made and lost, to the last digit',
    { batch: { ...sixOf(900.04), loss: 0.02 } },
    { batch: { ...sixOf(900.06), make: 'baked pieces', loss: 0.02, bakeLoss: 0.12 } },
    ['how much to make', '6 × 900.04 g, 2 % lost', '6 × 900.06 g baked, 2 % lost, 12 % lost in baking'],
  ],
  [
    'what is kept back and lost of a stage, and whether it ferments',
    withLevain({ keepBack: 'seed', ferments: false }),
    withLevain({ keepBack: 50, loss: 0.025 }),
    ['what is kept back of Levain', 'as much as its seed', '50 g'],
    ['whether Levain ferments', 'no', 'as its lines say'],
    ['what is lost of Levain', 'nothing', '2.5 %'],
  ],
  [
    'the method of each stage',
    withLevain({ method: [step('Mix', 'hands', '10 min'), step('Ripen', 'wait', '8–10 h', 'domed')] }),
    withLevain({ method: [step('Mix', 'hands', '10 min'), step('Ripen', 'wait', '8–11 h', 'domed')] }),
    [
      'the method of Levain',
      'Mix (hands) 10 min\nRipen (wait) 8–10 h: domed',
      'Mix (hands) 10 min\nRipen (wait) 8–11 h: domed',
    ],
  ],
  [
    'a method that only one has',
    { stages: [levain, { ...dough, method: [step('Bake', 'bake', '45 min')] }] },
    {},
    ['the method of Final dough', 'Bake (bake) 45 min', 'none'],
  ],
  [
    'no method that says the same with other ids',
    withLevain({ method: [step('Mix', 'hands', '10 min')] }),
    withLevain({ method: [{ ...step('Mix', 'hands', '10 min'), id: 'other' }] }),
  ],
  [
    'what is held, and which line gives for it',
    { holds: [{ reading: 'trueHydration', value: 0.7525, line: water }] },
    { holds: [{ reading: 'wholeDough', value: 0.78, line: water }] },
    ['the hold of true hydration', '75.25 %, Water gives', 'not held'],
    ['the hold of Water on all flour', 'not held', '78 %, Water gives'],
  ],
  [
    'jottings, by their names',
    { jottings: [jotting('21*11'), jotting('2 g', 'old', 'k')] },
    { jottings: [jotting('21*12'), jotting('dough_weight/6', 'per_loaf', 'l')] },
    ['the jotting tin', '21*11', '21*12'],
    ['the jotting old', '2 g', 'none'],
    ['the jotting per_loaf', 'none', 'dough_weight/6'],
  ],
  [
    'notes, of two lines of one ingredient too',
    {
      note: 'for Saturday',
      ...withDough(dough.lines.map(l => ({ ...l, ingredient: 'Water', note: l.ingredient }))),
    },
    withDough(dough.lines.map((l, i) => ({ ...l, ingredient: 'Water', note: i ? l.ingredient : 'warm' }))),
    ['the note', 'for Saturday', 'nothing'],
    ['the note on Water in Final dough', 'Bread flour', 'warm'],
  ],
  [
    'what 100 % flour weighs, where the flours are percentages',
    { ...inPercent, flourWeight: 1200 },
    inPercent,
    ['what 100 % flour weighs', '1,200 g', '1,000 g'],
  ],
  ['no weight of flour that counts for nothing', { flourWeight: 1200 }, {}],
  [
    'what an ingredient counts as',
    { meanings: [{ ingredient: 'Ripe starter', countsAs: { kind: 'starter', hydration: 1.25 } }] },
    {},
    ['what Ripe starter counts as', 'starter of 125 % hydration', 'what the larder says'],
  ],
]
describe('Besides the lines, two formulas differ in', () => {
  for (const [title, left, right, ...said] of cases) {
    test(title, () => {
      const pairs = beside(left, right)
      assert.deepEqual(
        pairs.map(p => [p.what, p.left, p.right].map(words => words.replaceAll('\u00a0', ' '))),
        said,
      )
    })
  }
})

const back: readonly (readonly [left: Partial<Formula>, right: Partial<Formula>, said: string])[] = [
  [{}, {}, ''],
  [{}, { batch: sixOf(900) }, 'changes how much to make'],
  [{}, { jottings: [jotting('1')] }, 'takes away the jotting tin'],
  [
    { note: 'wet', batch: sixOf(900) },
    { jottings: [jotting('1')] },
    'changes how much to make and the note, and takes away the jotting tin',
  ],
]
describe('Bringing a state back', () => {
  for (const [left, right, said] of back)
    test(said || 'does nothing besides, where nothing else differs', () =>
      assert.equal(alsoDone(beside(left, right)), said),
    )

  test('names a few things, and says how many more there are', () => {
    assert.equal(listedFew([...'abcde']), 'a, b, c, d and e')
    assert.equal(listedFew([...'abcdef']), 'a, b, c, d and 2 more')
  })
})
