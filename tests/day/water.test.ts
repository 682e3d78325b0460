import assert from 'node:assert/strict'
import { test } from 'node:test'
import {
  doughTemperature,
  type HeatPart,
  iceFor,
  iceFrom,
  specificHeat,
  waterByFactors,
  waterTemperature,
} from '../../src/day/temperature/water.js'
import { randomOf } from '../random.js'
import { near } from './near.js'

/** `900 g at 21, heat 1.8; 200 g at 24, heat 2.9925` */
const parts = (text: string): HeatPart[] =>
  text.split('; ').map(part => {
    const [, grams, celsius, heat] = /^(\S+) g at (\S+), heat (\S+)$/.exec(part)!.map(Number)
    return { grams: grams!, celsius: celsius!, heat: heat! }
  })

const dough = '900 g at 21, heat 1.8; 200 g at 24, heat 2.9925; 18 g at 21, heat 0.84'
const summer = '900 g at 30, heat 1.8; 200 g at 28, heat 2.9925; 18 g at 30, heat 0.84'

// By exact fractions (Python's fractions): mixed + Σ m·c·(mixed − T) ÷ (4.185·W), printed to 17 digits.
const balances: readonly (readonly [
  of: string,
  water: number,
  wanted: number,
  rise: number,
  celsius: number,
])[] = [
  [dough, 650, 25, 1, 25.803275434243176],
  [dough, 650, 25, 5, 18.518842018196857],
  [summer, 650, 24, 3, 14.050057899090158],
  ['1000 g at 18, heat 1.8; 20 g at 18, heat 0.84', 700, 26, 2, 27.721044546850997],
  ['500 g at 12, heat 1.8; 500 g at 24, heat 1.8; 300 g at 5, heat 2.9925', 620, 25, 1.5, 33.71635449184877],
  [
    '1000 g at 22, heat 1.8; 250 g at 4, heat 3.85; 100 g at 4, heat 3.18; 150 g at 16, heat 2.3',
    300,
    24,
    2.5,
    40.14297092791716,
  ],
  [
    '2400 g at 19.5, heat 1.8; 620 g at 26, heat 2.74; 48 g at 19.5, heat 0.84',
    1600,
    25.5,
    0.8,
    27.756335722819593,
  ],
  ['750 g at 25, heat 1.8', 500, 24, 0, 23.35483870967742],
  ['800 g at 15, heat 1.8; 200 g at 30, heat 2.9925; 40 g at 20, heat 2.01', 560, 27, 1, 31.9431643625192],
  ['3000 g at 24, heat 1.8; 60 g at 24, heat 0.84; 900 g at 23, heat 2.9925', 1800, 23, 4, 13.95221027479092],
]
for (const [of, water, wanted, rise, celsius] of balances)
  test(`${water} g of water at ${celsius.toFixed(2)} °C bring ${of} to ${wanted} °C with a rise of ${rise}`, () =>
    near(waterTemperature(parts(of), water, wanted, rise), celsius))

test('the worked doughs want water of 25.8, 18.5 and 14.1 °C', () => {
  const [mild, warm, hot] = balances.map(([of, water, wanted, rise]) =>
    waterTemperature(parts(of), water, wanted, rise).toFixed(1),
  )
  assert.deepEqual([mild, warm, hot], ['25.8', '18.5', '14.1'])
})

test('from a 20 °C tap the third is 39 g of ice and 611 g of water', () => {
  const wanted = waterTemperature(parts(summer), 650, 24, 3)
  const { ice, water } = iceFor(650, 20, wanted)
  assert.equal(ice.toFixed(0), '39')
  assert.equal(water.toFixed(0), '611')
  near(ice + water, 650)
})

const byFactors: readonly (readonly [wanted: number, factors: number[], friction: number, water: number])[] =
  [
    [75, [71, 71, 71], 20, 67],
    [25, [21, 20], 3, 31],
    [24, [30, 30], 9, 3],
    [25, [21, 21, 24], 4, 30],
    [26, [18, 17, 26], 4, 39],
    [28, [22, 20], 0, 42],
    [24.5, [19.5, 18, 4], 6, 50.5],
  ]
for (const [wanted, factors, friction, water] of byFactors)
  test(`by factors ${factors.join(', ')} and friction ${friction}, water of ${water} ° for a dough of ${wanted}`, () =>
    near(waterByFactors(wanted, factors, friction), water))

const ices: readonly (readonly [water: number, tap: number, wanted: number, ice: number])[] = [
  [650, 20, 15, 32.5], // 650 × 5 ÷ 100
  [1000, 20, 0, 200],
  [900, 22, 12, (900 * 10) / 102],
  [500, 24, 10.8, (500 * 13.2) / 104],
  [500, 18, 18, 0],
  [500, 12, 20, 0],
]
for (const [water, tap, wanted, ice] of ices)
  test(`${ice.toFixed(1)} g of ice cool ${water} g from a tap of ${tap} °C to ${wanted} °C`, () =>
    near(iceFor(water, tap, wanted).ice, ice))

test('there is never more ice than water asked for', () => {
  assert.deepEqual(iceFor(300, 20, -90), { ice: 300, water: 0 })
  assert.deepEqual(iceFrom(-18, 300, 20, -200), { ice: 300, water: 0 })
})

test('seed 71: water at what the balance says makes the dough wanted, and ice from a freezer takes up what the water gives', () => {
  const { next } = randomOf(71)
  for (let round = 0; round < 300; round++) {
    const some = Array.from({ length: 1 + Math.floor(next() * 5) }, () => ({
      grams: 1 + next() * 3000,
      celsius: -2 + next() * 40,
      heat: 0.8 + next() * 3.4,
    }))
    const [water, wanted, rise] = [50 + next() * 3000, 18 + next() * 14, next() * 6]
    const celsius = waterTemperature(some, water, wanted, rise)
    near(doughTemperature(some, water, celsius, rise), wanted, 1e-9)

    const [freezer, tap] = [-25 + next() * 25, 10 + next() * 20]
    const cold = next() * tap
    const { ice, water: rest } = iceFrom(freezer, water, tap, cold)
    const taken = ice * (-freezer * specificHeat.ice + 334 + cold * specificHeat.water)
    near(taken, rest * specificHeat.water * (tap - cold), 1e-9)
    near(ice + rest, water)
  }
})
