import assert from 'node:assert/strict'
import { describe, test } from 'node:test'
import type { Formula, Stage } from '../../src/dough/document/formula.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { growsInStep } from '../work.js'

type Lines = readonly (readonly [ingredient: string, amount: string])[]

const range = (count: number) => [...Array(count).keys()]

const stageOf = (name: string, lines: Lines): Stage => ({
  id: name,
  name,
  lines: lines.map(([ingredient, amount], i) => ({ id: `${name} ${i}`, ingredient, amount, note: '' })),
})

const formulaOf = (stages: readonly Stage[], more: Partial<Formula> = {}): Formula => ({
  id: 'formula',
  name: 'Brackwater loaf',
  note: '',
  flourWeight: 1000,
  stages,
  meanings: [],
  keptSettings: [],
  ...more,
})

const dough = (lines: Lines, more?: Partial<Formula>) => formulaOf([stageOf('Final dough', lines)], more)

/** A thousand grams of flour, and seeds each held at a thousandth of it. */
const seedsHeld = (count: number) =>
  dough([['Bread flour', '1000 g'], ...range(count).map(i => [`Seed ${i}`, '5%'] as const)], {
    holds: range(count).map(i => ({
      reading: 'wholeDough',
      value: 0.001,
      line: `Final dough ${i + 1}`,
    })),
  })

const jotted = (count: number, text: (i: number) => string) =>
  dough([['Bread flour', '1000 g']], {
    jottings: range(count).map(i => ({ id: `jotting ${i}`, name: `j${i}`, text: text(i) })),
  })

const chainOfJottings = (count: number) => jotted(count, i => (i === count - 1 ? '7 g' : `j${i + 1}*1`))

const chainOfLines = (count: number) =>
  dough(range(count).map(i => [`x${i}`, i === count - 1 ? '7 g' : `x${i + 1}*1`] as const))

const twoNames = (count: number) => dough(range(count).map(i => [i % 2 ? 'a' : 'b', 'a+b+1%'] as const))

/** A hundred lines of one name, and others that add them up. */
const addedUp = (namings: number) =>
  dough([
    ...range(100).map(() => ['a', '1%'] as const),
    ...range(namings / 100).map(i => [`b${i}`, 'a*2'] as const),
  ])

const shapes: readonly (readonly [title: string, size: number, make: (size: number) => Formula])[] = [
  ['lines that add up all others by two names', 500, twoNames],
  ['holds of whole-dough shares', 150, seedsHeld],
  ['jottings that each take the next', 3000, chainOfJottings],
  ['jottings that each take the next, few enough to be worked out', 250, chainOfJottings],
  [
    'jottings that take sixty others in circles',
    150,
    size =>
      jotted(size, i =>
        range(60)
          .map(k => `j${(7 * i + 13 * k) % size}`)
          .join('+'),
      ),
  ],
  ['jottings that nobody understands', 400, size => jotted(size, i => `what ever ${i} this is`)],
  ['lines that each take the next', 1000, chainOfLines],
  ['lines that take what is not there', 400, size => dough(range(size).map(i => [`x${i}`, `zz${i}+1`]))],
  [
    'stages whose lines take what is not there',
    90,
    size => formulaOf(range(size).map(i => stageOf(`Stage ${i}`, [['Water', 'zz+1']]))),
  ],
  [
    'stages that each take the one before, last first',
    400,
    size =>
      formulaOf(
        range(size).map(i => stageOf(`Stage ${i}`, [[i < size - 1 ? `Stage ${i + 1}` : 'Rye', '50%']])),
      ),
  ],
  [
    'meanings of ingredients',
    400,
    size =>
      dough(
        range(size).map(i => [`x${i}`, '1%']),
        { meanings: range(size).map(i => ({ ingredient: `x${i}`, countsAs: { kind: 'flour' } })) },
      ),
  ],
]

describe('a formula with too much in it', () => {
  for (const [title, size, make] of shapes)
    test(`twice as many ${title} are at most a tenth more than twice the work`, () => {
      growsInStep(count => {
        const formula = make(count)
        const sheet = openFormula(formula)
        assert.ok(sheet.problems)
        for (const stage of formula.stages) {
          sheet.stage(stage.id)
          for (const line of stage.lines) sheet.line(line.id)
        }
        for (const { id } of formula.jottings ?? []) sheet.jotting(id)
      }, size)
    })

  const limits: readonly (readonly [what: string, most: number, make: (count: number) => Formula])[] = [
    ['lines', 5000, count => dough(range(count).map(i => [`x${i}`, '1 g']))],
    ['stages', 200, count => formulaOf(range(count).map(i => stageOf(`Stage ${i}`, [['Rye', '5 g']])))],
    ['holds', 40, seedsHeld],
    ['jottings', 1000, chainOfJottings],
    // 100 lines of one name, and 200 that add them up: 20,000.
    ['namings', 20_000, addedUp],
  ]
  for (const [what, most, make] of limits)
    test(`is worked out with ${most} ${what}, and shown without figures with more`, () => {
      assert.deepEqual(
        openFormula(make(most)).problems.filter(p => p.severity === 'error'),
        [],
      )
      const more = what === 'namings' ? most + 100 : most + 1
      const formula = make(more)
      const sheet = openFormula(formula)
      const [problem, ...others] = sheet.problems
      assert.deepEqual(others, [])
      assert.deepEqual(problem, {
        code: 'tooMuch',
        what,
        count: more,
        most,
        message: problem!.message,
        where: { formula: 'formula' },
        severity: 'error',
      })
      assert.match(problem!.message, /Take some out, or make two formulas of it\./)
      const { lines } = formula.stages[0]!
      const figures = sheet.line(lines[0]!.id)
      assert.equal(figures.weight, undefined)
      assert.equal(figures.problem!.code, 'tooMuch')
      assert.equal(
        `${figures.typed}${figures.typedIn === 'percent' ? '%' : ''}`.replace(/\D/g, ''),
        lines[0]!.amount.replace(/\D/g, ''),
      )
      assert.equal(sheet.reading('doughWeight'), undefined)
      assert.match(sheet.readingProblem('doughWeight')!.message, /up to/)
    })

  test('forty seeds held at a thousandth of a thousand grams of flour weigh a gram each', () => {
    const sheet = openSheet(seedsHeld(40))
    for (const i of range(40)) assert.ok(Math.abs(sheet.line(`Final dough ${i + 1}`).weight! - 1) < 1e-9)
  })

  test('a thousand jottings, and five thousand lines, that each take the next come to what the last is', () => {
    assert.equal(openSheet(chainOfJottings(1000)).jotting('jotting 0').value, 7)
    assert.equal(openSheet(chainOfLines(5000)).line('Final dough 0').weight, 7)
  })

  for (const [title, small, large] of [
    ['names in amounts', addedUp(2000), addedUp(20_100)],
    ['holds', seedsHeld(10), seedsHeld(60)],
    ['jottings', chainOfJottings(10), chainOfJottings(1500)],
  ] as const)
    test(`reads as it did once too many ${title} are taken out again`, () => {
      const sheet = openFormula(small)
      const before = sheet.problems
      assert.ok(sheet.update(large))
      assert.deepEqual(
        sheet.problems.map(p => p.code),
        ['tooMuch'],
      )
      sheet.update(small)
      assert.deepEqual(sheet.problems, before)
      assert.equal(sheet.reading('doughWeight'), openFormula(small).reading('doughWeight'))
    })

  test('an amount typed into it can be the one too many, and undone', () => {
    const few = dough([
      ...range(150).map(() => ['a', '1 g'] as const),
      ...range(150).map(i => [`b${i}`, i < 133 ? 'a' : '2 g'] as const),
    ])
    const [stage] = few.stages
    const last = stage!.lines.at(-1)!
    const many = {
      ...few,
      stages: [{ ...stage!, lines: stage!.lines.map(l => (l === last ? { ...l, amount: 'a*3' } : l)) }],
    }
    const sheet = openSheet(few)
    assert.equal(sheet.line(last.id).weight, 2) // 133 × 150 lines are named
    sheet.update(many)
    assert.equal(sheet.line(last.id).problem?.code, 'tooMuch') // 134 × 150
    sheet.update(few)
    assert.equal(sheet.line(last.id).weight, 2)
  })

  test('a circle of a thousand lines is told in a sentence of a dozen', () => {
    const circle = dough(range(1000).map(i => [`x${i}`, `x${(i + 1) % 1000}*1`] as const))
    const { message } = openFormula(circle).problems.find(p => p.severity === 'error')!
    assert.ok(message.length < 1000, message)
    assert.match(message, /\d+ more/)
  })
})
