import assert from 'node:assert/strict'
import { test } from 'node:test'
import {
  dilutionFor,
  growthRate,
  isExtrapolated,
  ripeningHours,
  speedOf,
  timeFactor,
} from '../../src/day/temperature/growth.js'
import { near } from './near.js'

// Worked out with forty decimal digits (Python's decimal), exponential and power by its own series.
const rates: readonly (readonly [celsius: number, rate: number])[] = [
  [4, 0.00830269553946],
  [8, 0.0213245267267],
  [12, 0.0515075431146],
  [14, 0.0777166586061],
  [16, 0.114398869677],
  [18, 0.163428058318],
  [20.5, 0.242039180528],
  [22, 0.295535351815],
  [24, 0.365067212454],
  [26.5, 0.420813791617],
  [27, 0.423567192535],
  [28, 0.416954050708],
  [30, 0.345845577272],
  [33, 0.119559472499],
  [35, 0.00871260236282],
  [35.9, 0.00000937521469236],
]
for (const [celsius, rate] of rates)
  test(`yeast grows at ${rate} an hour at ${celsius} °C`, () => near(growthRate(celsius), rate, 1e-11))

test('nothing grows from 35.99 °C up, and no time is long enough there', () => {
  for (const celsius of [35.99, 36, 60]) assert.equal(growthRate(celsius), 0)
  assert.equal(timeFactor(24, 38), Number.POSITIVE_INFINITY)
  assert.equal(ripeningHours(5, 40), Number.POSITIVE_INFINITY)
})

test('growth is fastest at 27 to 28 °C and about half of that at 20 and 32', () => {
  const best = Math.max(...[26, 26.5, 27, 27.5, 28, 28.5].map(growthRate))
  assert.ok(growthRate(27) > 0.99 * best)
  near(growthRate(20) / best, 0.5, 0.1)
  near(growthRate(32) / best, 0.5, 0.1)
})

const factors: readonly (readonly [written: number, real: number, factor: string])[] = [
  [24, 22, '1.235'],
  [24, 27, '0.862'],
]
for (const [written, real, factor] of factors)
  test(`a wait written for ${written} °C takes ${factor} times as long at ${real} °C`, () =>
    assert.equal(timeFactor(written, real).toFixed(3), factor))

test('a wait at the temperature it was written for takes as long as written, in a fridge too', () => {
  for (const celsius of [4, 24, 38]) assert.equal(timeFactor(celsius, celsius), 1)
})

test('below 14 and above 30 °C it is an extrapolation', () => {
  assert.deepEqual([13.9, 14, 22, 30, 30.1].map(isExtrapolated), [true, false, false, false, true])
})

// Natural logarithms to forty digits by the same other method.
const ripe: readonly (readonly [dilution: number, celsius: number, speed: number, hours: number])[] = [
  [3, 22, 1, 4.471951274],
  [5, 22, 1, 7.434739892],
  [11, 22, 1, 12.00779258],
  [7.8, 24, 1, 8.106635097],
  [2, 26, 1, 1.511236391],
  [21, 18, 0.9, 25.64677524],
  [4.4, 20, 1.25, 10.99011473],
  [9.5, 27, 1, 7.78491231],
  [15, 16, 1.1, 39.23466969],
  [6, 24, 0.8, 5.499802083],
]
for (const [dilution, celsius, speed, hours] of ripe) {
  test(`a build thinned ${dilution} times is ripe after ${hours} h at ${celsius} °C, speed ${speed}`, () =>
    near(ripeningHours(dilution, celsius, speed), hours, 1e-9))
  test(`to be ripe after ${hours} h at ${celsius} °C, speed ${speed}, a build is thinned ${dilution} times`, () =>
    near(dilutionFor(hours, celsius, speed), dilution, 1e-8))
}

test('1:1:1, 1:2:2 and 1:5:5 are ripe after 4.5, 7.4 and 12.0 h at 22 °C', () => {
  assert.deepEqual(
    [3, 5, 11].map(dilution => ripeningHours(dilution, 22).toFixed(1)),
    ['4.5', '7.4', '12.0'],
  )
})

test('a levain of 9 h at 24 °C thinned 7.8 times takes 14.6 h at 20 °C', () => {
  const speed = speedOf(9, 7.8, 24)
  assert.equal(speed.toFixed(3), '1.110')
  assert.equal(ripeningHours(7.8, 20, speed).toFixed(1), '14.6')
})

test('fed at 19:30 to be ripe at 7:30 in a kitchen of 20 °C, that levain is thinned 5.733 times: 17.44 % seed', () => {
  const dilution = dilutionFor(12, 20, speedOf(9, 7.8, 24))
  assert.equal(dilution.toFixed(3), '5.733')
  assert.equal((100 / dilution).toFixed(2), '17.44')
})

test('a build that is hardly thinned is ripe at once, never before it is made', () => {
  assert.equal(ripeningHours(1, 24), 0)
  assert.equal(ripeningHours(1.2, 24), 0)
})
