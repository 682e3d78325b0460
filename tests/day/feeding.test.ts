import assert from 'node:assert/strict'
import { test } from 'node:test'
import { type Feeding, feedFor } from '../../src/day/mixing/feeding.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { randomOf } from '../random.js'
import { near } from './near.js'
import { bread } from './notation.js'

const levain = (seed: number, flour: number, water: number) =>
  bread(
    'Mill wheat',
    `Levain:
       Ripe starter ${seed} g
       Bread flour ${flour} g
       Water ${water} g
     Final dough:
       Bread flour 1000 g
       Levain ${(seed + flour + water) / 2} g`,
  )

function feed(
  formula: ReturnType<typeof levain>,
  hours: number,
  celsius: number,
  written?: { hours: number; celsius: number },
) {
  const sheet = openSheet(formula)
  const build = sheet.workedOut.outline.stages[0]!
  const gramsOf = (line: string) => sheet.line(line).weight
  return feedFor(build, hours, celsius, gramsOf, () => ({ flour: 0.5, water: 0.5 }), written)
}
const weightsOf = ({ weights }: Feeding) => [...weights.values()]

test('fed at 19:30 for 7:30 at 20 °C: 17.44 % seed, the weight and hydration of the build kept', () => {
  const fed = feed(levain(100, 340, 340), 12, 20, { hours: 9, celsius: 24 }) as Feeding
  assert.equal(fed.dilution.toFixed(3), '5.733')
  assert.equal((fed.seedShare * 100).toFixed(2), '17.44')
  assert.equal(fed.speed.toFixed(3), '1.110')
  assert.equal(fed.before.hours.toFixed(1), '14.6')
  // 780 ÷ 5.7334… seed; flour and water make up half each (Python, 30 digits)
  const [seed, flour, water] = weightsOf(fed)
  near(seed!, 136.043865122792, 1e-12)
  near(flour!, 321.978067438604, 1e-12)
  near(water!, 321.978067438604, 1e-12)
})

test('seed 20: whatever is asked, weight and hydration of the build stay, and it is ripe in that time', () => {
  const { next } = randomOf(20)
  let told = 0
  for (let round = 0; round < 120; round++) {
    const [seed, flour, water] = [10 + next() * 200, 50 + next() * 400, 50 + next() * 400]
    const [hours, celsius] = [2 + next() * 14, 15 + next() * 14]
    const fed = feed(levain(seed, flour, water), hours, celsius, { hours: 4 + next() * 8, celsius: 24 })
    if ('code' in fed) {
      told += 1
      continue
    }
    const [s, f, w] = weightsOf(fed) as [number, number, number]
    near(s + f + w, seed + flour + water, 1e-9)
    near((w + s / 2) / (f + s / 2), (water + seed / 2) / (flour + seed / 2), 1e-9)
    near(s * fed.dilution, s + f + w, 1e-9)
    near((fed.hours / fed.before.hours) * Math.max(1e-9, fed.before.hours), hours, 1e-9)
  }
  assert.ok(told < 60, `${told} were told why not`)
})

test('a build without a seed or without flour, or a time too short, is told', () => {
  const none = bread(
    'None',
    'Soaker:\n Water 100 g\n Bread flour 50 g\nFinal dough:\n Bread flour 100 g\n Soaker 150 g',
  )
  const told = feed(none, 8, 20)
  assert.ok('code' in told && told.code === 'feedingWithoutSeed')
  const short = feed(levain(100, 20, 20), 0.2, 18, { hours: 9, celsius: 24 })
  assert.ok('code' in short && short.code === 'feedingTooShort' && short.hours > 0.2)
})
