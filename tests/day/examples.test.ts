import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import { test } from 'node:test'
import { clockText, localOf } from '../../src/day/course/clock.js'
import { stagePlans } from '../../src/day/method/stage-steps.js'
import { openDay } from '../../src/day/plan/open-day.js'
import type { Formula } from '../../src/dough/document/formula.js'
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
