import assert from 'node:assert/strict'
import { test } from 'node:test'
import { scaledWait } from '../../src/day/course/waits.js'
import { readStep } from '../../src/day/method/step-text.js'
import { dilutionFor, ripeningHours, timeFactor } from '../../src/day/temperature/growth.js'
import { iceFor, waterByFactors, waterTemperature } from '../../src/day/temperature/water.js'
import { near } from './near.js'
import { saturday } from './notation.js'

// Worked out with sixty decimal digits (Python's decimal), exponential and logarithm by series of their own.
const factors: readonly (readonly [written: number, stands: number, factor: number])[] = [
  [24, 18, 2.2338098868218115],
  [24, 20, 1.6226128169505076],
  [24, 26, 0.8804566444987182],
  [25, 21, 1.517488870696312],
  [25, 23, 1.1886645745208348],
  [26, 20, 1.8429218827399854],
  [26, 24, 1.1357742669650053],
  [27, 22, 1.4332200528073984],
  [28, 21, 1.6062832410222496],
  [28, 24, 1.1421295489808956],
  [22, 19, 1.533290884633107],
  [22, 25, 0.7502704723217692],
  [21, 24, 0.7110387009043538],
  [20, 26, 0.5426165967019929],
  [23, 17, 2.413590570980177],
  [24, 15, 3.8586595702556834],
  [26, 30, 1.1988990834833184],
  [25.5, 22.5, 1.293119978799462],
  [23.9, 27.2, 0.8542610300662881],
  [19, 16, 1.6848574058624872],
]
for (const [written, stands, factor] of factors)
  test(`what is written for ${written} °C takes ${factor.toFixed(3)} times as long at ${stands} °C`, () =>
    near(timeFactor(written, stands), factor, 1e-12))

// By the same: from and to scale alike, and each moves out by a tenth of what the middle moved. Minutes.
type Wait = readonly [
  written: number,
  stands: number,
  from: number,
  to: number,
  least: number,
  usual: number,
  most: number,
]
const waits: readonly Wait[] = [
  [24, 20, 180, 300, 277.1275994442792, 389.42707606812183, 501.7265526919645],
  [24, 27, 210, 270, 177.68164395127963, 206.85296815515858, 236.02429235903753],
  [25, 21, 90, 120, 131.1403652203568, 159.33633142311277, 187.53229762586875],
  [28, 22, 240, 360, 326.2770785657116, 423.25296937958797, 520.2288601934644],
  [22, 25, 480, 600, 346.64443221982475, 405.1460550537554, 463.647677887686],
  [26, 18, 60, 90, 140.69794880407179, 190.28278400581684, 239.8676192075619],
  [23, 21, 45, 75, 55.78870172942875, 76.59800266065962, 97.40730359189048],
  [24, 22, 720, 900, 870.340250922448, 1000.5721490566242, 1130.8040471908005],
]
for (const [written, stands, from, to, least, usual, most] of waits)
  test(`a wait of ${from} to ${to} min written for ${written} °C is ${least.toFixed(0)} to ${most.toFixed(0)} at ${stands} °C`, () => {
    const { length } = scaledWait(
      readStep(`${from}–${to} min at ${written} °C`),
      { least: from, usual: (from + to) / 2, most: to },
      saturday([], { kitchen: stands }),
    )
    near(length.least, least, 1e-12)
    near(length.usual, usual, 1e-12)
    near(length.most, most, 1e-12)
  })

// By the same decimals.
const ripe: readonly (readonly [dilution: number, celsius: number, speed: number, hours: number])[] = [
  [2.5, 21, 1, 3.8874850942276735],
  [3.2, 25, 1.1, 3.999618486406297],
  [4, 19, 0.95, 8.944424668589203],
  [5.5, 23, 1, 7.123446427910001],
  [6.4, 27, 1.2, 7.423726727869457],
  [7, 17, 0.85, 17.17327615001636],
  [8.2, 24.5, 1.05, 8.40807472882883],
  [9, 22, 1.3, 14.097073313115095],
  [10, 20.5, 1, 13.986807996603943],
  [12, 26, 0.9, 8.026565349620233],
  [13.5, 18.5, 1, 21.94595475567591],
  [16, 25, 1.15, 12.235535990736572],
  [18, 23.5, 0.75, 9.44978570344065],
  [22, 21.5, 1, 17.071919126087227],
  [25, 28, 1.4, 16.640595622289343],
  [30, 24, 1, 14.43156829086558],
  [40, 19.5, 0.8, 22.103854162960996],
  [3, 29, 1, 3.374876880392996],
  [4.8, 16, 1.1, 20.454579822469746],
  [6, 14.5, 1, 29.245209628247913],
]
for (const [dilution, celsius, speed, hours] of ripe)
  test(`thinned ${dilution} times at ${celsius} °C and speed ${speed} a build is ripe after ${hours.toFixed(2)} h, and back`, () => {
    near(ripeningHours(dilution, celsius, speed), hours, 1e-12)
    near(dilutionFor(hours, celsius, speed), dilution, 1e-11)
  })

// By exact fractions (Python's fractions): mixed + Σ m·c·(mixed − T) ÷ (4.185·W), mixed = wanted − rise.
type Balance = readonly [of: string, water: number, wanted: number, rise: number, celsius: number]
const balances: readonly Balance[] = [
  [
    '2230 g at 4.5, heat 1.8; 360 g at 9, heat 2.9925; 38 g at 16, heat 0.84',
    1590,
    22.5,
    4.5,
    27.610324384031017,
  ],
  ['460 g at 9.5, heat 1.8; 250 g at 8, heat 2.9925', 1780, 26.5, 3.5, 26.006977165639725],
  ['1070 g at 10.5, heat 1.8; 260 g at 13, heat 2.9925', 1000, 23.5, 4, 24.850376344086023],
  ['1330 g at 13.5, heat 1.8; 510 g at 8.5, heat 2.9925', 870, 22.5, 2.5, 29.094333209739215],
  ['410 g at 6, heat 1.8; 500 g at 19, heat 2.9925; 38 g at 26.5, heat 0.84', 650, 22, 2, 24.271949269368623],
  ['2230 g at 29, heat 1.8', 1270, 24.5, 3, 15.835788671577344],
  ['2710 g at 23.5, heat 1.8', 700, 22.5, 6, 4.844086021505376],
  ['2760 g at 20.5, heat 1.8; 640 g at 13, heat 2.9925', 290, 25, 0.5, 59.02131998516871],
  ['2140 g at 8.5, heat 1.8; 400 g at 6.5, heat 2.9925', 990, 27, 2.5, 44.57602910828717],
  [
    '1300 g at 27, heat 1.8; 660 g at 6.5, heat 2.9925; 23 g at 30, heat 0.84',
    840,
    25.5,
    5,
    23.986704215736474,
  ],
  [
    '1140 g at 29.5, heat 1.8; 470 g at 8, heat 2.9925; 65 g at 7, heat 0.84; 80 g at 17, heat 3.85',
    950,
    23,
    3.5,
    18.77232912029177,
  ],
  ['2720 g at 19, heat 1.8; 420 g at 8.5, heat 2.9925', 480, 25, 4, 33.69545250896057],
  ['2950 g at 19.5, heat 1.8; 700 g at 20, heat 2.9925', 1120, 22.5, 6, 11.537202380952381],
  [
    '570 g at 26.5, heat 1.8; 670 g at 14.5, heat 2.9925; 62 g at 19, heat 0.84',
    1600,
    28,
    2,
    29.421262320788532,
  ],
  [
    '1800 g at 24.5, heat 1.8; 490 g at 27.5, heat 2.9925; 67 g at 26, heat 0.84',
    1350,
    24.5,
    2.5,
    19.099003053232444,
  ],
  ['1250 g at 19, heat 1.8; 150 g at 9, heat 2.9925', 1770, 28, 4.5, 25.745534900674322],
  [
    '1940 g at 27, heat 1.8; 300 g at 23.5, heat 2.9925; 56 g at 24, heat 0.84; 80 g at 8, heat 3.85',
    480,
    24.5,
    1,
    19.780605336519315,
  ],
  [
    '1390 g at 18.5, heat 1.8; 530 g at 22.5, heat 2.9925; 53 g at 4, heat 0.84; 310 g at 7.5, heat 2.01',
    1960,
    26,
    2.5,
    26.539739229024942,
  ],
  ['1940 g at 20, heat 1.8', 1060, 26.5, 2, 28.042300669507],
  [
    '1060 g at 15.5, heat 1.8; 230 g at 22, heat 2.9925; 69 g at 23, heat 0.84',
    430,
    24.5,
    5,
    22.67215553888472,
  ],
]
for (const [of, water, wanted, rise, celsius] of balances)
  test(`${of}: ${water} g of water at ${celsius.toFixed(2)} °C for ${wanted} °C with a rise of ${rise}`, () => {
    const parts = of.split('; ').map(part => {
      const [, grams, at, heat] = /^(\S+) g at (\S+), heat (\S+)$/.exec(part)!.map(Number)
      return { grams: grams!, celsius: at!, heat: heat! }
    })
    near(waterTemperature(parts, water, wanted, rise), celsius, 1e-12)
  })

// By exact fractions: n·wanted − the factors − friction.
const byFactors: readonly (readonly [
  wanted: number,
  factors: readonly number[],
  friction: number,
  water: number,
])[] = [
  [22, [6.5, 8], 8.5, 43],
  [23.5, [22, 19.5], 8.5, 20.5],
  [28, [6, 16.5, 10], 10, 69.5],
  [23, [26, 22.5], 2, 18.5],
  [27, [5.5, 12.5], 8.5, 54.5],
  [26.5, [27.5, 12.5], 11.5, 28],
  [23.5, [7.5, 26.5], 6, 30.5],
  [27.5, [23.5, 20], 0.5, 38.5],
  [28, [25.5, 20.5, 22.5], 9, 34.5],
  [24.5, [15, 7.5], 9, 42],
  [27.5, [10.5, 16.5, 10], 9, 64],
  [24.5, [16, 29.5], 9.5, 18.5],
  [23.5, [17.5, 7.5], 3, 42.5],
  [24, [12.5, 14, 30], 1, 38.5],
]
for (const [wanted, of, friction, water] of byFactors)
  test(`by factors ${of.join(', ')} and friction ${friction}, water of ${water} °C for ${wanted} °C`, () =>
    assert.equal(waterByFactors(wanted, of, friction), water))

// By exact fractions: W·(tap − wanted) ÷ (tap + 80).
const ices: readonly (readonly [water: number, tap: number, wanted: number, ice: number])[] = [
  [2570, 29.5, 11.5, 30840 / 73],
  [1560, 14, 2.5, 8970 / 47],
  [230, 20.5, 16, 690 / 67],
  [2570, 29, 2.5, 68105 / 109],
  [1910, 27.5, 19.5, 6112 / 43],
  [400, 22, 5, 200 / 3],
  [2510, 23.5, 5, 92870 / 207],
  [1060, 17.5, 1.5, 6784 / 39],
  [760, 14, 8, 2280 / 47],
  [520, 22, 3, 4940 / 51],
  [1690, 16.5, 7, 32110 / 193],
  [2350, 12.5, 12, 470 / 37],
  [1560, 16.5, 12.5, 12480 / 193],
  [1630, 20.5, 1, 21190 / 67],
  [1220, 10, 6.5, 427 / 9],
  [480, 22, 15.5, 520 / 17],
  [910, 10.5, 3.5, 12740 / 181],
  [2370, 13.5, 9.5, 18960 / 187],
  [210, 13.5, 12, 630 / 187],
  [1210, 16, 10.5, 6655 / 96],
]
for (const [water, tap, wanted, ice] of ices)
  test(`${ice.toFixed(1)} g of ${water} g of water from a tap of ${tap} °C are ice, to have ${wanted} °C`, () => {
    const mixed = iceFor(water, tap, wanted)
    near(mixed.ice, ice, 1e-12)
    near(mixed.water, water - ice, 1e-12)
  })
