import assert from 'node:assert/strict'
import { test } from 'node:test'
import { type Formula, type Line, newId, type Stage } from '../../src/dough/document/formula.js'
import { readingNames } from '../../src/dough/document/reading-names.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { randomOf } from '../random.js'

const ingredients = [
  'Bread flour',
  'Wholemeal spelt',
  'Water',
  'Salt',
  'Ripe starter',
  'Egg',
  'Butter',
  'moon dust',
  '',
  'Levain',
  'Soaker',
  'Final dough',
]
const amounts = [
  '',
  '10%',
  '70%',
  '100%',
  '20 g',
  '200 g',
  '2 tsp',
  '1 each',
  '2*salt',
  '50% + 5 g',
  'min(salt, 10 g)',
  'levain.water',
  'water/2',
  '0.1*flour',
  'what?',
  '3',
]

/** Random edits of a formula: lines retyped, renamed, added, removed, moved; stages added, renamed, removed. */
function edited(formula: Formula, random: ReturnType<typeof randomOf>): Formula {
  const stages = formula.stages.map(s => ({ ...s, lines: [...s.lines] }))
  const stage = random.pick(stages)
  const at = random.below(stage.lines.length + 1)
  const line = (): Line => ({
    id: newId(),
    ingredient: random.pick(ingredients),
    amount: random.pick(amounts),
    note: '',
  })
  switch (random.below(8)) {
    case 0:
    case 1:
    case 2:
      if (stage.lines[at]) stage.lines[at] = { ...stage.lines[at]!, amount: random.pick(amounts) }
      break
    case 3:
      if (stage.lines[at]) stage.lines[at] = { ...stage.lines[at]!, ingredient: random.pick(ingredients) }
      break
    case 4:
      stage.lines.splice(at, 0, line())
      break
    case 5:
      stage.lines.splice(at, 1)
      break
    case 6:
      stages.splice(random.below(stages.length), 0, {
        id: newId(),
        name: random.pick(['Levain', 'Soaker', 'Poolish']),
        lines: [line(), line()],
      })
      break
    case 7:
      if (stages.length > 1) stages.splice(random.below(stages.length), 1)
      return { ...formula, stages, flourWeight: random.pick([500, 1000, 1234]) }
  }
  return { ...formula, stages }
}

const seed = 20261124
test(`a sheet that followed 350 edits shows what a fresh one shows (seed ${seed})`, () => {
  const random = randomOf(seed)
  const line = (ingredient: string, amount: string): Line => ({ id: newId(), ingredient, amount, note: '' })
  const stage = (name: string, ...lines: Line[]): Stage => ({ id: newId(), name, lines })
  for (let run = 0; run < 7; run++) {
    let formula: Formula = {
      id: newId(),
      name: 'Random',
      note: '',
      flourWeight: 1000,
      meanings: [],
      keptSettings: [],
      stages: [
        stage('Levain', line('Ripe starter', '20%'), line('Bread flour', '100%'), line('Water', '80%')),
        stage(
          'Final dough',
          line('Bread flour', '100%'),
          line('Water', '70%'),
          line('Salt', '2%'),
          line('Levain', '20%'),
        ),
      ],
    }
    const sheet = openFormula(formula)
    for (let step = 0; step < 50; step++) {
      formula = edited(formula, random)
      sheet.update(formula)
      const fresh = openFormula(formula)
      for (const name of readingNames) {
        assert.equal(sheet.reading(name), fresh.reading(name), `run ${run} step ${step} ${name}`)
        assert.equal(sheet.readingProblem(name) === undefined, fresh.readingProblem(name) === undefined)
      }
      for (const s of formula.stages) {
        assert.deepEqual(
          { ...sheet.stage(s.id), problem: '' },
          { ...fresh.stage(s.id), problem: '' },
          `run ${run} step ${step}`,
        )
        for (const l of s.lines) {
          const [a, b] = [sheet.line(l.id), fresh.line(l.id)]
          assert.deepEqual(
            { ...a, problem: !a.problem },
            { ...b, problem: !b.problem },
            `run ${run} step ${step} ${l.amount}`,
          )
        }
      }
      // Of circles that share lines, each sheet may spell another one; all else must be said alike.
      const said = (of: typeof sheet) => of.problems.filter(p => p.severity !== 'error').map(p => p.message)
      assert.deepEqual(said(sheet), said(fresh))
    }
  }
})
