import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { test } from 'node:test'
import { mixingsOf } from '../../src/day/mixing/day-mixings.js'
import { type Mixing, mixingRemarks } from '../../src/day/mixing/mixing.js'
import { Weights } from '../../src/day/plan/weigh-list.js'
import { doughTemperature } from '../../src/day/temperature/water.js'
import type { Day } from '../../src/dough/document/day.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { larderWith } from '../../src/dough/larder/usual-larder.js'
import { readFormulas } from '../../src/exchange/index.js'
import { randomOf } from '../random.js'
import { near } from './near.js'
import { bread, saturday } from './notation.js'

const example = (name: string): Formula =>
  readFormulas(readFileSync(`examples/${name}.csv`, 'utf8')).formulas[0]!

function mixings(formulas: readonly Formula[], more: Partial<Day> = {}) {
  const day = saturday(
    formulas.map(f => [f, 3]),
    more,
  )
  const weights = new Weights(formulas, larderWith([]))
  return mixingsOf(day, id => weights.sheet(day, id))
}
const part = ({ parts }: Mixing, name: string) => parts.find(p => p.ingredient === name)!

const wheat = (name: string, flour: number) =>
  bread(
    name,
    `Levain:
       Ripe starter 20 g
       Bread flour 90 g
       Water 90 g
       wait Ripen: 9 h, at 24 °C
     Final dough:
       Bread flour ${flour} g
       Whole wheat flour 100 g
       Water 650 g
       Salt 18 g
       Levain 200 g
       hands Mix: 10 min
       wait Bulk: 4 h, at 25 °C
       bake Bake: 45 min`,
  )

test('a stage that breads make together is mixed once, with the weights of both', () => {
  const [one, other] = [wheat('Mill wheat', 800), wheat('Country', 900)]
  const apart = mixings([one, other])
  const together = mixings([one, other], { together: ['levain'] })
  assert.deepEqual(
    together.map(m => [m.stageName, m.breads]),
    [
      ['Levain', ['b1', 'b2']],
      ['Final dough', ['b1']],
      ['Final dough', ['b2']],
    ],
  )
  near(together[0]!.mixing.water, apart[0]!.mixing.water + apart[2]!.mixing.water)
  near(together[0]!.mixing.celsius, apart[0]!.mixing.celsius)
})

test('a flour that was not measured is as warm as those that were, by weight; all else follows the room', () => {
  const formula = wheat('Mill wheat', 900)
  const { id, lines } = formula.stages[1]!
  const mix = (said: object) =>
    mixings([formula], { kitchen: 21, mixes: [{ bread: 'b1', stage: id, ...said }] })[1]!.mixing
  const measured = mix({ room: 18, lines: [{ line: lines[0]!.id, celsius: 14 }] })
  assert.deepEqual(
    measured.parts.map(p => [p.ingredient, p.celsius, p.said]),
    [
      ['Bread flour', 14, true],
      ['Whole wheat flour', 14, false],
      ['Salt', 18, false],
      ['Levain', 18, false],
    ],
  )
  assert.deepEqual([measured.room, measured.roomSaid], [18, true])
  // 4 × 25 − 18 − 14 − 18 − 4
  near(measured.byFactors, 46)
})

test('water poured on boiling is one of the things mixed, and a soaker without flour is none', () => {
  const scald = bread(
    'Scald',
    'Scald:\n Rye flour 100 g\n Boiling water 300 g\nFinal dough:\n Bread flour 500 g\n Water 200 g\n Scald 400 g\n Instant yeast 5 g',
  )
  assert.deepEqual(
    mixings([scald]).map(m => m.stageName),
    ['Final dough'],
  )
  const both = bread(
    'Both',
    'Final dough:\n Bread flour 500 g\n Water 200 g\n Boiling water 100 g\n Instant yeast 5 g',
  )
  const [{ mixing }] = mixings([both], { kitchen: 24 }) as [ReturnType<typeof mixings>[0]]
  assert.equal(part(mixing, 'Boiling water').celsius, 100)
  // mixed at 23 in a kitchen of 24: (23 − 24)(900 g + yeast) and (23 − 100)·4.185·100 g over 4.185·200 g
  assert.ok(mixing.celsius < -15)
  assert.deepEqual(
    mixingRemarks(mixing, 4).map(r => r.code),
    [],
    'ice alone can do it',
  )
  assert.ok(mixing.ice!.ice > 60)
})

test('only what goes in with the water is mixed: salt and water worked in later are not', () => {
  const [biga, final] = mixings([example('held-back-flatbread')])
  assert.equal(biga!.stageName, 'Biga')
  assert.deepEqual(
    final!.mixing.parts.map(p => p.ingredient),
    ['Bread flour', 'Semolina', 'Biga'],
  )
})

test('where there is no water it is the milk that is brought to a temperature, by its own heat', () => {
  const buns = mixings([example('morning-buns')], { kitchen: 22 })
  const { mixing } = buns.find(m => m.isFinal)!
  assert.equal(mixing.liquid, 'milk')
  assert.ok(mixing.waterHeat > 3.7 && mixing.waterHeat < 4)
  assert.equal(mixing.ice, undefined)
  assert.equal(part(mixing, 'Egg').celsius, 4)
  assert.ok(!mixing.parts.some(p => p.ingredient === 'Butter'), 'butter is worked in later')
  const cold = mixings([example('morning-buns')], { kitchen: 35, fridge: 6 }).find(m => m.isFinal)!
  assert.deepEqual(
    mixingRemarks(cold.mixing, 6).map(r => r.code),
    cold.mixing.celsius < 6 ? ['milkColderThanFridge'] : [],
  )
})

for (const [what, kitchen, said, codes] of [
  ['in a warm kitchen', 24, {}, []],
  ['at −10 °C', -10, {}, ['waterTooWarmForLevain']],
  ['at −50 °C', -50, { wanted: 32 }, ['waterAboveBoiling']],
  ['in the heat of an oven, wanted frozen', 100, { wanted: -10 }, ['iceIsNotEnough', 'levainTooWarm']],
] as const)
  test(`a dough with levain ${what}: ${codes.join(', ') || 'nothing to say'}`, () => {
    const formula = wheat('Mill wheat', 900)
    const mixes = [{ bread: 'b1', stage: formula.stages[1]!.id, ...said }]
    const { mixing } = mixings([formula], { kitchen, mixes })[1]!
    assert.deepEqual(
      mixingRemarks(mixing, 4).map(r => r.code),
      codes,
    )
  })

test('seed 44: whatever is said of a mixing, its parts at their temperatures and the water worked out make the dough wanted', () => {
  const { next } = randomOf(44)
  const formulas = ['mill-wheat', 'two-build-rye', 'morning-buns', 'seeded-spelt-tin'].map(example)
  for (let round = 0; round < 25; round++) {
    const draw = (from: number, to: number) => from + next() * (to - from)
    const mixes = formulas.flatMap((formula, i) =>
      formula.stages.map(stage => ({
        bread: `b${i + 1}`,
        stage: stage.id,
        ...(next() < 0.5 && { wanted: draw(18, 32) }),
        ...(next() < 0.5 && { rise: draw(0, 6) }),
        ...(next() < 0.5 && { room: draw(8, 35) }),
        water: draw(2, 45),
        lines: stage.lines.filter(() => next() < 0.3).map(l => ({ line: l.id, celsius: draw(0, 35) })),
      })),
    )
    const all = mixings(formulas, { mixes, kitchen: draw(12, 32), proofer: draw(24, 32) })
    assert.equal(all.length, 9)
    for (const { mixing } of all) {
      const { parts, water, waterHeat, celsius, wanted, rise, measured, dough } = mixing
      // Added up by itself: heat given off is heat taken up.
      const given = parts.reduce((sum, p) => sum + p.grams * p.heat * (wanted - rise - p.celsius), 0)
      near(given, water * waterHeat * (celsius - wanted + rise), 1e-9)
      near(doughTemperature(parts, (water * waterHeat) / 4.185, measured!, rise), dough!)
      // A degree more of the water is its part of all heat more in the dough.
      const all = parts.reduce((sum, p) => sum + p.grams * p.heat, water * waterHeat)
      near(dough! - wanted, ((measured! - celsius) * water * waterHeat) / all, 1e-6)
    }
  }
})
