import assert from 'node:assert/strict'
import { test } from 'node:test'
import { stagePlans } from '../../src/day/method/stage-steps.js'
import type { Formula, Stage, Step } from '../../src/dough/document/formula.js'
import { methodFollowing } from '../../src/dough/document/step-names.js'
import {
  applyChanges,
  emptyWorkbook,
  type Transaction,
  type Workbook,
} from '../../src/dough/document/workbook.js'
import { enterIngredient, moveLine, renameStage, together } from '../../src/dough/edits/edits.js'
import { enterCells } from '../../src/dough/edits/fetched/many-cells.js'
import {
  addStep,
  changeStep,
  moveStep,
  newStep,
  removeStep,
} from '../../src/dough/edits/fetched/method-edits.js'
import { removeLines, removeStage } from '../../src/dough/edits/fetched/row-edits.js'
import { randomOf } from '../random.js'
import { formulaOf } from './notation.js'

const workbookOf = (formula: Formula): Workbook => ({ ...emptyWorkbook, formulas: [formula] })
const start = () =>
  workbookOf(
    formulaOf(`
    Levain:
      ripe starter = 40 g
      bread flour = 100 g
      water = 80 g
    Final dough:
      bread flour = 820 g
      salt = 21 g
      levain = 210 g`),
  )
const at = ({ formulas: [formula] }: Workbook, stage: number) => ({
  formula: formula!.id,
  stage: formula!.stages[stage]!.id,
})
const method = ({ formulas: [formula] }: Workbook, stage: number) =>
  (formula!.stages[stage]!.method ?? []).map(({ does, text }) => (text ? `${does}: ${text}` : does))
const doing = (workbook: Workbook, transaction: Transaction | undefined) =>
  applyChanges(workbook, transaction!.changes)

test('steps are added, changed, moved and removed, and each is taken back', () => {
  let workbook = start()
  const steps = ['Mix', 'Bulk', 'Bake'].map(does => newStep(does, 'hands'))
  for (const step of steps) workbook = doing(workbook, addStep(workbook, at(workbook, 1), step)).workbook
  workbook = doing(
    workbook,
    addStep(workbook, at(workbook, 1), newStep('Rest', 'wait', '30 min'), 1),
  ).workbook
  assert.deepEqual(method(workbook, 1), ['Mix', 'Rest: 30 min', 'Bulk', 'Bake'])
  const place = { ...at(workbook, 1), step: steps[1]!.id }
  const edits = [
    changeStep(workbook, place, { text: '4 h', kind: 'wait' }),
    moveStep(workbook, place, -1),
    moveStep(workbook, place, 1),
    removeStep(workbook, place),
  ]
  const after = [
    ['Mix', 'Rest: 30 min', 'Bulk: 4 h', 'Bake'],
    ['Mix', 'Bulk', 'Rest: 30 min', 'Bake'],
    ['Mix', 'Rest: 30 min', 'Bake', 'Bulk'],
    ['Mix', 'Rest: 30 min', 'Bake'],
  ]
  for (const [i, edit] of edits.entries()) {
    const done = doing(workbook, edit)
    assert.deepEqual(method(done.workbook, 1), after[i])
    assert.deepEqual(applyChanges(done.workbook, done.inverse).workbook, workbook)
  }
  assert.equal(moveStep(workbook, { ...place, step: steps[0]!.id }, -1), undefined)
  assert.equal(changeStep(workbook, place, { does: 'Bulk' }), undefined)
  assert.throws(
    () => removeStep(workbook, { ...place, step: 'gone' }),
    /That step is no longer in the method/,
  )
})

test('a stage whose last step is removed has no method at all', () => {
  let workbook = start()
  const before = workbook
  const step = newStep('Mix', 'hands')
  workbook = doing(workbook, addStep(workbook, at(workbook, 0), step)).workbook
  workbook = doing(workbook, removeStep(workbook, { ...at(workbook, 0), step: step.id })).workbook
  assert.deepEqual(workbook, before)
})

test('steps that add a line follow its renaming, and that of a stage it takes', () => {
  let workbook = start()
  const step = newStep('Mix', 'hands', '5 min, adds salt, Levain, at 25 °C')
  workbook = doing(workbook, addStep(workbook, at(workbook, 1), step)).workbook
  const salt = { ...at(workbook, 1), line: workbook.formulas[0]!.stages[1]!.lines[1]!.id }
  workbook = doing(workbook, enterIngredient(workbook, salt, 'sea salt')).workbook
  assert.deepEqual(method(workbook, 1), ['Mix: 5 min, adds sea salt, Levain, at 25 °C'])
  workbook = doing(workbook, renameStage(workbook, at(workbook, 0), 'Rye levain')).workbook
  assert.deepEqual(method(workbook, 1), ['Mix: 5 min, adds sea salt, Rye levain, at 25 °C'])
  assert.equal(workbook.formulas[0]!.stages[1]!.lines[1]!.ingredient, 'sea salt')
  assert.equal(workbook.formulas[0]!.stages[1]!.lines[2]!.ingredient, 'Rye levain')
})

/** `bread flour, water, water` become `bread flour, milk, water`: each name stands in for the one above it; `–` is gone. */
const followed: readonly (readonly [lines: string, now: string, text: string, after: string, left?: true])[] =
  [
    // a line is called otherwise
    ['Salt', 'Sea salt', 'adds Salt', 'adds Sea salt'],
    ['Salt', 'Sea salt', 'adds salt', 'adds Sea salt'],
    ['Salt | Water', 'Sea salt | Water', '5 min,adds Salt ,Water', '5 min,adds Sea salt ,Water'],
    ['Sel | Eau', 'Sel | Lait', 'ajoute Sel, Eau', 'ajoute Sel, Lait'],
    ['Salt', 'Sea salt', 'Salt, 5 min', 'Salt, 5 min'],
    ['Salt', 'Sea salt', '1,5 h, adds Salt', '1,5 h, adds Sea salt'],
    ['Salt', '', 'adds Salt', 'adds Salt'], // its name is being typed anew
    ['Butter', 'Butter, soft', 'adds Butter, 5 min', 'adds Butter, soft, 5 min'],
    ['Butter, soft | Salt', 'Oil | Salt', 'adds Butter, soft, Salt', 'adds Oil, Salt'],
    // of two lines of one name
    ['Water | Water', 'Milk | Water', 'adds Water (2)', 'adds Water'],
    ['Water | Water', 'Water | Milk', 'adds Water (2)', 'adds Milk'],
    ['Water | Water', 'Water | Milk', 'adds Water', 'adds Water'],
    ['Water | Milk', 'Milk | Milk', 'adds Milk', 'adds Milk (2)'],
    ['Water | Water', '– | Water', 'adds Water (2)', 'adds Water'],
    ['Water | Water', '– | Water', 'adds Water', '', true],
    ['Water | Water | Water', 'Water | – | Water', 'adds Water (3), Water', 'adds Water (2), Water'],
    ['Water | Water (2)', 'Milk | Water (2)', 'adds Water (2)', 'adds Water (2)'], // which is its own name
    // a line is gone
    ['Salt', '–', '5 min, adds Salt', '5 min', true],
    ['Salt | Water', '– | Water', '5 min, adds Salt, Water', '5 min, adds Water', true],
    ['Salt | Water', '– | Water', 'adds Water, Salt, 5 min', 'adds Water, 5 min', true],
    ['Salt', '–', 'adds Salt, at 25 °C', 'at 25 °C', true],
    ['Salt', '–', 'adds Salt; 5 min', '5 min', true],
    ['Salt', '–', 'adds Salt, Sand', 'adds Sand', true], // Sand was never there, and is still asked about
    ['Salt', '–', 'adds Salt', '', true],
  ]
for (const [lines, now, text, after, isLeft] of followed)
  test(`“${text}” of ${lines} is “${after}” once they are ${now || 'without a name'}`, () => {
    const named = (names: string) =>
      names.split(' | ').flatMap((ingredient, at) => {
        const line = { id: `l${at}`, ingredient, amount: '', note: '' }
        return ingredient === '–' ? [] : [line]
      })
    const step = newStep('Mix', 'hands', text)
    const stage = { id: 's', name: 'Dough', lines: named(lines), method: [step] }
    const { method, left } = methodFollowing(stage, named(now))
    assert.equal(method[0]!.text, after)
    assert.deepEqual(left, isLeft ? [step] : [])
    if (after === text) assert.equal(method, stage.method)
  })

/** A dough with Water twice, and a step that adds each line but the flour. */
const watered = () => {
  const stages = `
    Soaker:
      seeds = 50 g
      milk = 60 g
    Final dough:
      bread flour = 820 g
      water = 500 g
      salt = 21 g
      water = 40 g
      soaker = 110 g`
  let workbook = workbookOf(formulaOf(stages))
  for (const [does, text] of [
    ['Mix', '5 min, adds water'],
    ['Work in', 'adds salt, water (2), 4 min'],
    ['Fold in', 'adds soaker'],
  ] as const)
    workbook = doing(workbook, addStep(workbook, at(workbook, 1), newStep(does, 'hands', text))).workbook
  return workbook
}
const lineOf = (workbook: Workbook, stage: number, line: number) => ({
  ...at(workbook, stage),
  line: workbook.formulas[0]!.stages[stage]!.lines[line]!.id,
})
const texts = ({ formulas: [formula] }: Workbook) =>
  formula!.stages.map(({ method = [] }) => method.map(({ text }) => text).join(' | '))

/** Edits of the watered dough, with what they are called and what its steps say then. */
const edits: readonly (readonly [
  string,
  edit: (workbook: Workbook) => Transaction | undefined,
  label: string,
  texts: string,
])[] = [
  [
    'a line is removed',
    w => removeLines(w, [lineOf(w, 1, 2)]),
    'Remove salt; no longer added at Work in',
    '5 min, adds water | adds water (2), 4 min | adds soaker',
  ],
  [
    'the first of two lines of a name is removed',
    w => removeLines(w, [lineOf(w, 1, 1)]),
    'Remove water; no longer added at Mix',
    '5 min | adds salt, water, 4 min | adds soaker',
  ],
  [
    'several lines are removed',
    w => removeLines(w, [lineOf(w, 1, 1), lineOf(w, 1, 2), lineOf(w, 1, 3)]),
    'Remove 3 lines; no longer added at Mix, Work in',
    '5 min | 4 min | adds soaker',
  ],
  [
    'a line that no step names is removed',
    w => removeLines(w, [lineOf(w, 1, 0)]),
    'Remove bread flour',
    '5 min, adds water | adds salt, water (2), 4 min | adds soaker',
  ],
  [
    'a line is moved above another of its name',
    w => {
      const up = doing(w, moveLine(w, lineOf(w, 1, 3), -1)).workbook
      return together('Move water up', [
        moveLine(w, lineOf(w, 1, 3), -1)!,
        moveLine(up, lineOf(up, 1, 2), -1)!,
      ])
    },
    'Move water up',
    '5 min, adds water (2) | adds salt, water, 4 min | adds soaker',
  ],
  [
    'a line is called otherwise',
    w => enterIngredient(w, lineOf(w, 1, 3), 'milk'),
    'Change water to milk',
    '5 min, adds water | adds salt, milk, 4 min | adds soaker',
  ],
  [
    'a line is called as another is',
    w => enterIngredient(w, lineOf(w, 1, 0), 'water'),
    'Change bread flour to water',
    '5 min, adds water (2) | adds salt, water (3), 4 min | adds soaker',
  ],
  [
    'several are called otherwise at once',
    w =>
      enterCells(
        w,
        w.formulas[0]!.id,
        [2, 3].map(line => ({
          stage: w.formulas[0]!.stages[1]!.id,
          line: w.formulas[0]!.stages[1]!.lines[line]!.id,
          cells: [{ column: 'ingredient', text: `my ${line}` }],
        })),
        '.',
        'Paste',
      ),
    'Paste',
    '5 min, adds water | adds my 2, my 3, 4 min | adds soaker',
  ],
  [
    'the stage that a line takes is called otherwise',
    w => renameStage(w, at(w, 0), 'Seed soaker'),
    'Rename Soaker to Seed soaker',
    '5 min, adds water | adds salt, water (2), 4 min | adds Seed soaker',
  ],
  [
    'the stage that a line takes is removed: the line stays, and is added still',
    w => removeStage(w, at(w, 0)),
    'Remove Soaker',
    '5 min, adds water | adds salt, water (2), 4 min | adds soaker',
  ],
]
for (const [name, edit, label, after] of edits)
  test(`${name}: steps add what they added, which the label says where it is less, and one undo takes it back`, () => {
    const before = watered()
    const transaction = edit(before)!
    const done = doing(before, transaction)
    assert.equal(transaction.label, label)
    assert.equal(texts(done.workbook).at(-1), after)
    assert.deepEqual(applyChanges(done.workbook, done.inverse).workbook, before)
  })

test('a line that is moved into the stage before goes in there at the first step, and at no step of its old stage', () => {
  let workbook = watered()
  const first = newStep('Soak', 'hands', '')
  workbook = doing(workbook, addStep(workbook, at(workbook, 0), first)).workbook
  const before = workbook
  let said = ''
  for (const _ of 'four') {
    const { id } = before.formulas[0]!.stages[1]!.lines[2]! // salt
    const stage = workbook.formulas[0]!.stages.findIndex(({ lines }) => lines.some(line => line.id === id))
    const move = moveLine(workbook, { ...at(workbook, stage), line: id }, -1)!
    workbook = doing(workbook, move).workbook
    said ||= move.label.split('; ')[1] ?? ''
  }
  const [soaker, dough] = stagePlans(workbook.formulas[0]!, 0)
  assert.equal(said, 'no longer added at Work in')
  assert.ok(soaker!.steps[0]!.lines.some(({ ingredient }) => ingredient === 'salt'))
  assert.deepEqual(dough!.steps[1]!.missing, [])
})

test('a stage and its method go together, and come back together', () => {
  const before = watered()
  const done = doing(before, removeStage(before, at(before, 1)))
  assert.deepEqual(texts(done.workbook), [''])
  assert.deepEqual(applyChanges(done.workbook, done.inverse).workbook, before)
})

test('seed 91: whatever is done to the lines, each step adds those that it added and that are still in its stage', () => {
  const random = randomOf(91)
  const names = ['Water', 'Salt', 'Butter, soft', 'Oil', 'water']
  /** The lines that each step adds, by its own words: `Water (2)` the second, a name alone the first not yet named. */
  const added = ({ lines, method = [] }: Stage) => {
    const named = new Set<string>()
    return method.map(({ text }) => {
      const [, list = ''] = /adds (.*)$/.exec(text) ?? []
      const wanted = list.replaceAll('Butter, soft', 'Butter; soft').split(', ').filter(Boolean)
      return wanted.map(name => {
        const plain = name.replace(';', ',').toLowerCase()
        const [, bare, count] = /^(.*) \((\d)\)$/.exec(plain) ?? []
        const called = (as = '') => lines.filter(({ ingredient }) => ingredient.toLowerCase() === as)
        const one = [...called(plain), called(bare)[Number(count) - 1]].find(l => l && !named.has(l.id))
        if (one) named.add(one.id)
        return one?.id
      })
    })
  }
  for (let round = 0; round < 130; round++) {
    let lines = Array.from({ length: 2 + random.below(4) }, (_, i) => ({
      id: `l${i}`,
      ingredient: random.pick(names),
      amount: '',
      note: '',
    }))
    const before: Stage = { id: 's', name: 'Dough', lines, method: [] }
    const steps: Step[] = []
    for (const line of random.below(2) ? lines : lines.toReversed()) {
      if (random.below(3) === 0) continue
      const forms = [line.ingredient, ...[1, 2, 3].map(n => `${line.ingredient} (${n})`)]
      steps.push(newStep('Mix', 'hands', `5 min, adds ${random.pick(forms)}`))
    }
    const stage = { ...before, method: steps }
    for (let edit = 0; edit < 3; edit++) {
      const at = random.below(lines.length || 1)
      const one = lines[at]
      if (!one) break
      const kind = random.below(3)
      if (kind === 0) lines = lines.toSpliced(at, 1)
      else if (kind === 1) lines = lines.with(at, { ...one, ingredient: random.pick(names) })
      else lines = lines.toSpliced(at, 1).toSpliced(random.below(lines.length), 0, one)
    }
    const { method } = methodFollowing(stage, lines)
    const left = new Set(lines.map(({ id }) => id))
    const wanted = added(stage).map(ids => ids.filter(id => id !== undefined && left.has(id)))
    const missing = added(stage).flat().includes(undefined) // what named no line may name one now
    const got = added({ ...stage, lines, method: [...method] }).map(ids => ids.filter(Boolean))
    if (!missing) assert.deepEqual(got, wanted, JSON.stringify({ stage, lines, method }))
  }
})
