import assert from 'node:assert/strict'
import { test } from 'node:test'
import { mixingOf } from '../../src/day/mixing/mixing.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { near } from './near.js'
import { bread, saturday } from './notation.js'

const formula = bread(
  'Mill wheat',
  `Levain:
     Ripe starter 100 g
     Bread flour 50 g
     Water 50 g
     hands Mix: 5 min
     wait Ripen: 4 h at 24 °C
   Final dough:
     Bread flour 900 g
     Water 650 g
     Salt 18 g
     Levain 200 g
     hands Mix: 10 min
     wait Bulk: 4 h at 25 °C`,
)
const day = (more = {}) => {
  const { breads, ...rest } = saturday([[formula, 1]])
  return {
    ...rest,
    breads: [{ ...breads[0]!, batch: { make: 'as written' as const } }],
    kitchen: 21,
    ...more,
  }
}
const final = formula.stages[1]!
const mixing = (more = {}) =>
  mixingOf(day(more), 'b1', final.id, openSheet({ ...formula, batch: { make: 'as written' } }))!
const mix = (said: object) => ({ mixes: [{ bread: 'b1', stage: final.id, ...said }] })
const levain = final.lines[3]!.id
const levainAt = (celsius: number) => ({ lines: [{ line: levain, celsius }] })

test('flour and room 21, levain 24, wanted 25: water of 25.8 °C with a rise of 1, 18.5 with a rise of 5', () => {
  const one = mixing(mix({ rise: 1, ...levainAt(24) }))
  assert.equal(one.celsius.toFixed(1), '25.8')
  assert.equal(mixing(mix({ rise: 5, ...levainAt(24) })).celsius.toFixed(1), '18.5')
  assert.deepEqual([one.wanted, one.wantedSaid, one.riseSaid], [25, false, true])
  assert.equal(one.water, 650)
  // 4 × 25 − 21 − 21 − 24 − 4 × 1
  near(one.byFactors, 30)
})

test('in summer the water is too cold for the tap, and ice takes its place', () => {
  const { celsius, ice } = mixing({ kitchen: 30, tap: 20, ...mix({ wanted: 24, rise: 3, ...levainAt(28) }) })
  assert.equal(celsius.toFixed(1), '14.1')
  assert.deepEqual([ice!.ice.toFixed(0), ice!.water.toFixed(0)], ['39', '611'])
  const frozen = mixing({
    kitchen: 30,
    tap: 20,
    freezer: -18,
    ...mix({ wanted: 24, rise: 3, ...levainAt(28) }),
  })
  assert.ok(frozen.ice!.ice < ice!.ice, 'colder ice is less ice')
})

test('a levain is as warm as where its own last wait stands', () => {
  const part = (more: object) => mixing(more).parts.find(p => p.line === levain)!
  assert.deepEqual([part({}).celsius, part({}).said], [21, false])
  assert.equal(part({ proofer: 25 }).celsius, 25)
  assert.equal(part(mix(levainAt(27))).celsius, 27)
})

test('water that was measured tells what the dough will be', () => {
  const asked = mixing(mix({ rise: 1, ...levainAt(24) }))
  const { dough } = mixing(mix({ rise: 1, water: asked.celsius, ...levainAt(24) }))
  near(dough!, 25)
  assert.ok(mixing(mix({ rise: 1, water: asked.celsius + 4, ...levainAt(24) })).dough! > 26)
})

test('a stage without water has no water to warm', () => {
  const dry = bread('Dry', 'Final dough:\n Bread flour 100 g\n Salt 2 g')
  assert.equal(mixingOf(saturday([[dry, 1]]), 'b1', dry.stages[0]!.id, openSheet(dry)), undefined)
})
