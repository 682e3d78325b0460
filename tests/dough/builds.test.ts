import assert from 'node:assert/strict'
import { test } from 'node:test'
import { type Formula, finalDoughOf } from '../../src/dough/document/formula.js'
import {
  applyChanges,
  emptyWorkbook,
  type Transaction,
  type Workbook,
} from '../../src/dough/document/workbook.js'
import { arrivingBuilds } from '../../src/dough/edits/builds/arriving-builds.js'
import { keepAsBuild, letBuildGo, takeable, takeBuild } from '../../src/dough/edits/builds/build-edits.js'
import {
  addLine,
  enterAmount,
  enterIngredient,
  newLine,
  Refusal,
  renameStage,
} from '../../src/dough/edits/edits.js'
import { removeLines, removeStage, setFerments } from '../../src/dough/edits/fetched/row-edits.js'
import { duplicateFormula } from '../../src/dough/edits/fetched/shelf-edits.js'
import { followBuilds } from '../../src/dough/edits/following-builds.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { readFormulas, writeFormulas } from '../../src/exchange/index.js'
import { formulaOf } from './notation.js'

const bread = (name: string, stages: Readonly<Record<string, readonly string[]>>): Formula => {
  const line = (text: string) => text.replace(/^(.*?) (?=\S+( g)?$)/, '$1 = ')
  const text = Object.entries(stages).map(([stage, lines]) => [`${stage}:`, ...lines.map(line)].join('\n'))
  return { ...formulaOf(text.join('\n')), name }
}

const wheat = () =>
  bread('Wheat', {
    Levain: ['Ripe starter 20%', 'Bread flour 100%', 'Water 80%'],
    'Final dough': ['Bread flour 80%', 'Wholemeal spelt 20%', 'Water 70%', 'Salt 2%', 'Levain 20%'],
  })
const rolls = () =>
  bread('Rolls', {
    'Final dough': ['Bread flour 100%', 'Water 60%', 'Salt 2%', 'Levain 30%'],
  })
const shelf = (...formulas: Formula[]): Workbook => ({ ...emptyWorkbook, formulas })
const after = (workbook: Workbook, edit: Transaction): Workbook =>
  applyChanges(workbook, followBuilds(workbook, edit).changes).workbook

const stageOf = (workbook: Workbook, formula: string, stage: string) => {
  const of = workbook.formulas.find(f => f.name === formula)!
  const found = of.stages.find(s => s.name === stage)
  assert.ok(found, `${formula} has ${stage}`)
  return { of, stage: found, at: { formula: of.id, stage: found.id } }
}
const written = (workbook: Workbook, formula: string, stage: string) =>
  stageOf(workbook, formula, stage).stage.lines.map(l => `${l.ingredient} ${l.amount}`)
const lineAt = (workbook: Workbook, formula: string, stage: string, ingredient: string) => {
  const { stage: found, at } = stageOf(workbook, formula, stage)
  return { ...at, line: found.lines.find(l => l.ingredient === ingredient)!.id }
}

/** Wheat's levain is a build that the rolls take. */
function sharing(): Workbook {
  let now = shelf(wheat(), rolls())
  now = after(now, keepAsBuild(now, stageOf(now, 'Wheat', 'Levain').at))
  const from = takeable(now.formulas, now.formulas[1]!, 'levain')!
  return after(
    now,
    takeBuild(now, lineAt(now, 'Rolls', 'Final dough', 'Levain'), {
      formula: from.formula.id,
      stage: from.stage.id,
    }),
  )
}

test('a stage kept as a build is taken by its name, and then in both formulas', () => {
  const now = sharing()
  assert.deepEqual(
    now.formulas.map(f => f.stages.map(s => [s.name, s.build])),
    [
      [
        ['Levain', 'Levain'],
        ['Final dough', undefined],
      ],
      [
        ['Levain', 'Levain'],
        ['Final dough', undefined],
      ],
    ],
  )
  assert.deepEqual(written(now, 'Rolls', 'Levain'), written(now, 'Wheat', 'Levain'))
  // 30 % of 1000 g of a levain of 20 + 100 + 80 parts, its starter half flour: 165 g of flour, 135 g of water.
  const sheet = openFormula(now.formulas[1]!)
  assert.ok(Math.abs(sheet.reading('trueHydration')! - (600 + 135) / (1000 + 165)) < 1e-12)
})

test('a change of it in one formula is in all, and undone in all', () => {
  const before = sharing()
  const edit = followBuilds(
    before,
    enterAmount(before, lineAt(before, 'Rolls', 'Levain', 'Water'), 'percent', '100%'),
  )
  assert.match(edit.label, /; in Wheat too$/)
  const { workbook: now, inverse } = applyChanges(before, edit.changes)
  assert.deepEqual(written(now, 'Wheat', 'Levain'), ['Ripe starter 20%', 'Bread flour 100%', 'Water 100%'])
  assert.deepEqual(applyChanges(now, inverse).workbook, before)
})

test('lines come and go, are named otherwise and keep their ids', () => {
  let now = sharing()
  const ids = stageOf(now, 'Wheat', 'Levain').stage.lines.map(l => l.id)
  now = after(
    now,
    addLine(stageOf(now, 'Rolls', 'Levain').at, newLine({ ingredient: 'Rye flour', amount: '10%' })),
  )
  assert.deepEqual(written(now, 'Wheat', 'Levain').at(-1), 'Rye flour 10%')
  now = after(now, enterIngredient(now, lineAt(now, 'Rolls', 'Levain', 'Bread flour'), 'Whole wheat flour'))
  now = after(now, removeLines(now, [lineAt(now, 'Rolls', 'Levain', 'Rye flour')]))
  now = after(now, setFerments(now, stageOf(now, 'Rolls', 'Levain').at, true))
  assert.deepEqual(written(now, 'Wheat', 'Levain'), [
    'Ripe starter 20%',
    'Whole wheat flour 100%',
    'Water 80%',
  ])
  const { stage } = stageOf(now, 'Wheat', 'Levain')
  assert.deepEqual(
    stage.lines.map(l => l.id),
    ids,
  )
  assert.equal(stage.ferments, true)
})

test('its name in a formula, and what is kept back of it, are that formula’s own', () => {
  let now = sharing()
  now = after(now, renameStage(now, stageOf(now, 'Rolls', 'Levain').at, 'Young levain'))
  assert.deepEqual(written(now, 'Rolls', 'Final dough').at(-1), 'Young levain 30%')
  const { stage, at } = stageOf(now, 'Rolls', 'Young levain')
  const value = { ...stage, keepBack: 50 }
  now = after(now, { label: '', changes: [{ of: 'stage', formula: at.formula, id: at.stage, value }] })
  now = after(now, enterAmount(now, lineAt(now, 'Wheat', 'Levain', 'Water'), 'percent', '90%'))
  assert.equal(stageOf(now, 'Wheat', 'Levain').stage.keepBack, undefined)
  const young = stageOf(now, 'Rolls', 'Young levain').stage
  assert.equal(young.keepBack, 50)
  assert.equal(young.lines.at(-1)!.amount, '90%')
})

test('let go, a stage follows no more', () => {
  let now = sharing()
  now = after(now, letBuildGo(now, stageOf(now, 'Rolls', 'Levain').at))
  now = after(now, enterAmount(now, lineAt(now, 'Wheat', 'Levain', 'Water'), 'percent', '90%'))
  assert.equal(written(now, 'Rolls', 'Levain').at(-1), 'Water 80%')
})

test('another formula’s dough is taken with all that it takes, its names as they are free', () => {
  let now = shelf(
    wheat(),
    bread('Tin', {
      Levain: ['Rye starter 10%', 'Rye flour 100%', 'Water 100%'],
      'Final dough': ['Bread flour 100%', 'Water 60%', 'wheat 200 g', 'Levain 20%'],
    }),
  )
  const from = takeable(now.formulas, now.formulas[1]!, 'wheat')!
  now = after(
    now,
    takeBuild(now, lineAt(now, 'Tin', 'Final dough', 'wheat'), {
      formula: from.formula.id,
      stage: from.stage.id,
    }),
  )
  assert.deepEqual(
    now.formulas[1]!.stages.map(s => [s.name, s.build]),
    [
      ['Levain', undefined],
      ['Levain of Wheat', 'Levain'],
      ['wheat', 'Wheat'],
      ['Final dough', undefined],
    ],
  )
  assert.equal(written(now, 'Tin', 'wheat').at(-1), 'Levain of Wheat 20%')
  assert.deepEqual(
    now.formulas[0]!.stages.map(s => s.build),
    ['Levain', 'Wheat'],
  )
  // A stage that the first takes newly has to be a build; then the other has it as well.
  const add = addLine(
    { formula: now.formulas[0]!.id, stage: finalDoughOf(now.formulas[0]!).id },
    newLine({ ingredient: 'Honey', amount: '3%' }),
  )
  now = after(now, add)
  assert.equal(written(now, 'Tin', 'wheat').at(-1), 'Honey 3%')
})

test('what a build comes to take comes along', () => {
  let now = sharing()
  const soaker = {
    id: 'soak',
    name: 'Soaker',
    build: 'Soaker',
    lines: [newLine({ ingredient: 'Linseed', amount: '100 g' })],
  }
  now = after(now, {
    label: '',
    changes: [{ of: 'stage', formula: now.formulas[0]!.id, id: 'soak', value: soaker, index: 0 }],
  })
  now = after(
    now,
    addLine(stageOf(now, 'Wheat', 'Levain').at, newLine({ ingredient: 'Soaker', amount: '5%' })),
  )
  assert.deepEqual(
    now.formulas[1]!.stages.map(s => s.name),
    ['Soaker', 'Levain', 'Final dough'],
  )
  assert.deepEqual(written(now, 'Rolls', 'Levain'), written(now, 'Wheat', 'Levain'))
})

const refused = (code: string) => (error: unknown) => error instanceof Refusal && error.problem.code === code

test('what cannot be a build says why not', () => {
  const base = sharing()
  const own = newLine({ ingredient: 'Soaker', amount: '5%' })
  const soaker = { id: 'soak', name: 'Soaker', lines: [newLine({ ingredient: 'Linseed', amount: '100 g' })] }
  const with_ = after(base, {
    label: '',
    changes: [{ of: 'stage', formula: base.formulas[0]!.id, id: 'soak', value: soaker, index: 0 }],
  })
  assert.throws(
    () => after(with_, addLine(stageOf(with_, 'Wheat', 'Levain').at, own)),
    refused('takesWhatIsNone'),
  )

  const spoken = shelf(
    bread('Wheat', {
      Levain: ['Bread flour 100%', 'Water 2*bread_flour', 'Salt dough_weight/50'],
      'Final dough': ['Levain 100%'],
    }),
  )
  assert.throws(() => keepAsBuild(spoken, stageOf(spoken, 'Wheat', 'Levain').at), refused('namesOfItsOwn'))

  let round = shelf(wheat(), bread('Tin', { 'Final dough': ['Bread flour 100%', 'Water 60%', 'Wheat 20%'] }))
  const from = takeable(round.formulas, round.formulas[1]!, 'Wheat')!
  round = after(
    round,
    takeBuild(round, lineAt(round, 'Tin', 'Final dough', 'Wheat'), {
      formula: from.formula.id,
      stage: from.stage.id,
    }),
  )
  round = after(
    round,
    addLine(stageOf(round, 'Wheat', 'Final dough').at, newLine({ ingredient: 'Tin', amount: '10%' })),
  )
  const tin = takeable(round.formulas, round.formulas[0]!, 'Tin')!
  assert.throws(
    () =>
      takeBuild(round, lineAt(round, 'Wheat', 'Final dough', 'Tin'), {
        formula: tin.formula.id,
        stage: tin.stage.id,
      }),
    refused('takesItself'),
  )
})

test('a hold whose line goes with a build is let go', () => {
  let now = sharing()
  const from = takeable(now.formulas, now.formulas[1]!, 'Wheat')!
  now = after(now, enterIngredient(now, lineAt(now, 'Rolls', 'Final dough', 'Levain'), 'Wheat'))
  now = after(now, removeStage(now, stageOf(now, 'Rolls', 'Levain').at))
  now = after(
    now,
    takeBuild(now, lineAt(now, 'Rolls', 'Final dough', 'Wheat'), {
      formula: from.formula.id,
      stage: from.stage.id,
    }),
  )
  const hold = {
    reading: 'salt' as const,
    value: 0.02,
    line: lineAt(now, 'Wheat', 'Final dough', 'Salt').line,
  }
  now = after(now, {
    label: '',
    changes: [{ of: 'fields', formula: now.formulas[0]!.id, value: { holds: [hold] } }],
  })
  now = after(now, removeLines(now, [lineAt(now, 'Rolls', 'Wheat', 'Salt')]))
  assert.deepEqual(now.formulas[0]!.holds, [])
  assert.ok(!written(now, 'Wheat', 'Final dough').includes('Salt 2%'))
})

test('a copy of a formula follows as well', () => {
  let now = sharing()
  now = after(now, duplicateFormula(now, now.formulas[0]!.id))
  now = after(now, enterAmount(now, lineAt(now, 'Rolls', 'Levain', 'Water'), 'percent', '85%'))
  assert.deepEqual(
    now.formulas.map(f => f.stages[0]!.lines.at(-1)!.amount),
    ['85%', '85%', '85%'],
  )
})

test('builds go through a CSV file, and those that differ from what is here become a formula’s own', () => {
  const now = sharing()
  const csv = writeFormulas(now.formulas)
  const { formulas } = readFormulas(csv)
  assert.deepEqual(
    formulas.map(f => f.stages.map(s => s.build)),
    now.formulas.map(f => f.stages.map(s => s.build)),
  )
  assert.equal(writeFormulas(formulas), csv)

  const same = arrivingBuilds(now.formulas, formulas)
  assert.equal(same.apart.size, 0)
  const changed = after(now, enterAmount(now, lineAt(now, 'Wheat', 'Levain', 'Water'), 'percent', '95%'))
  const differ = arrivingBuilds(changed.formulas, formulas)
  assert.deepEqual([...differ.apart.values()], [['Levain'], ['Levain']])
  assert.ok(differ.formulas.every(f => f.stages.every(s => s.build === undefined)))
  // Nothing here: the first that arrives is what those after it are compared with.
  const [one, two] = formulas as [Formula, Formula]
  const other = { ...two, stages: changed.formulas[1]!.stages }
  assert.deepEqual([...arrivingBuilds([], [one, other]).apart], [[two.id, ['Levain']]])
})
