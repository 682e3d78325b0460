import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import { test } from 'node:test'
import { clockText, localOf } from '../../src/day/course/clock.js'
import { stagePlans } from '../../src/day/method/stage-steps.js'
import { openDay } from '../../src/day/plan/open-day.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { readFormulas } from '../../src/exchange/index.js'
import { saturday } from './notation.js'

const examples = readdirSync('examples')
  .filter(f => f.endsWith('.csv'))
  .flatMap(f => readFormulas(readFileSync(`examples/${f}`, 'utf8')).formulas)

const day = (formulas: readonly Formula[], more = {}) => {
  const { breads, ...rest } = saturday(formulas.map(f => [f, 2]))
  return { ...rest, kitchen: 22, asleep: [{ from: '22:30', until: '5:30' }], breads, ...more }
}

for (const formula of examples) {
  test(`every step of ${formula.name} is understood, and adds only lines that are there`, () => {
    for (const { stage, steps } of stagePlans(formula, 0.15)) {
      assert.ok(steps.length > 0, `${stage.name} has a method`)
      for (const { step, read, length, missing } of steps) {
        assert.deepEqual([...read.notRead, ...missing], [], `${step.does}: ${step.text}`)
        assert.ok(length && length.usual > 0, step.does)
      }
      const added = steps.flatMap(s => s.lines)
      assert.deepEqual(new Set(added), new Set(stage.lines), `${stage.name}: every line goes in once`)
    }
  })

  test(`${formula.name} can be ready by noon by a baker who sleeps, or it is said by when`, () => {
    const noon = openDay(day([formula], { ready: '12:00' }), [formula])
    const [later] = noon.later
    const ready = later && clockText(localOf(later.time, 'UTC').minutes)
    const sheet = ready ? openDay(day([formula], { ready }), [formula]) : noon
    assert.equal(sheet.conflictSentence, '')
    assert.deepEqual(
      sheet.remarks.filter(r => r.code !== 'scaled'),
      [],
    )
  })
}

test('dough with egg or milk stands warm no longer than two hours at a time', () => {
  const buns = examples.find(f => f.name === 'Morning buns')!
  for (const { isFinal, steps } of stagePlans(buns, 0.15))
    for (const { read, length, step } of steps)
      if (isFinal && step.kind === 'wait' && !read.inFridge && step.does !== 'Cool')
        assert.ok(length!.most <= 120, step.does)
})

const called = (name: string) => examples.find(f => f.name === name)!

test('every bread is baked in an oven whose temperature is said', () => {
  for (const formula of examples) {
    const final = stagePlans(formula, 0.15).at(-1)!
    const baking = final.steps.filter(({ step }) => step.kind === 'bake')
    assert.ok(baking.length > 0, formula.name)
    for (const { read } of baking)
      assert.ok(read.celsius! >= 180 && read.celsius! <= 260, `${formula.name}: ${read.celsius} °C`)
  }
})

test('the wheat’s levain is mixed in the morning and its dough in the afternoon, for a morning or a noon', () => {
  const wheat = called('Mill wheat')
  for (const ready of ['9:00', '12:00']) {
    const { breads, ...rest } = saturday([[wheat, 2]])
    const asleep = [{ from: '22:30', until: '5:30' }]
    const { moments } = openDay({ ...rest, breads, kitchen: 22, asleep, ready }, [wheat])
    const at = (stage: number) =>
      moments.find(({ name }) => name.split(' ')[2] === wheat.stages[stage]!.method![0]!.id)!.local
    const [levain, dough] = [at(0), at(1)].map(local => local.slice(0, 13))
    assert.match(levain!, /^2026-12-04T0[5-9]$/)
    assert.match(dough!, /^2026-12-04T1[2-5]$/)
  }
})

test('the poolish is used whole, but for what no scale shows', () => {
  const sheet = openFormula(called('Poolish baguette'))
  const { weight, taken } = sheet.stage(sheet.formula.stages[0]!.id)
  assert.ok(Math.abs(weight! - taken!) < 1, `${weight} g, of which ${taken} g are taken`)
})
