import { test } from 'node:test'
import {
  doughTemperature,
  type HeatPart,
  iceFor,
  iceFrom,
  waterByFactors,
  waterTemperature,
} from '../../src/day/temperature/water.js'
import { near } from './near.js'

/*
 * Doughs drawn at random and worked out with exact fractions (Python's fractions), by the balances as they are written in the
 * trade: what the parts give off is what the water takes up.
 */

type Dough = readonly [
  flour: number,
  flourCelsius: number,
  levain: number,
  levainCelsius: number,
  levainHydration: number, // per cent
  salt: number,
  room: number,
  cold: string, // something from the fridge
  water: number,
  wanted: number,
  rise: number,
  celsius: number, // the water has to have
  measured: number, // the water has
  dough: number, // has then
]
const doughs: readonly Dough[] = [
  [2600, 19, 1120, 21, 100, 10, 16, '260 g at 5, heat 3.18', 1820, 22, 5, 15.3147032179, 27, 27.3995449995],
  [1000, 26, 830, 31, 50, 75, 30, '400 g at 4, heat 2.3', 700, 21.5, 0, 17.0633811231, 42.5, 30.972827296],
  [1250, 9, 430, 12, 100, 22, 32, '310 g at 5, heat 3.18', 687.5, 25, 2, 44.9772277615, 37, 21.9060083975],
  [1400, 19, 700, 7, 50, 24, 16, '', 1092, 26.5, 6, 26.7129859388, 7.5, 16.6638985603],
  [
    2600,
    32,
    1120,
    19,
    100,
    33,
    19.5,
    '310 g at 4, heat 3.85',
    1690,
    26.5,
    4.5,
    19.8518801298,
    24.5,
    28.5136954709,
  ],
  [
    2400,
    30,
    880,
    13.5,
    50,
    57,
    22,
    '290 g at 4, heat 3.85',
    1440,
    22.5,
    1.5,
    20.5319958848,
    42,
    31.8788035417,
  ],
  [1800, 21, 870, 11.5, 60, 74, 23, '350 g at 4, heat 2.3', 1170, 22, 0.5, 29.4762526933, 16.5, 16.400849378],
  [
    3650,
    18,
    170,
    20.5,
    80,
    24,
    31.5,
    '260 g at 4, heat 2.3',
    2007.5,
    26.5,
    6,
    23.6030874365,
    17.5,
    23.3104498718,
  ],
  [550, 16, 970, 6.5, 100, 23, 24, '', 330, 23, 6, 39.688079722, 16.5, 16.9498729004],
  [
    3900,
    31.5,
    730,
    5.5,
    50,
    53,
    30.5,
    '140 g at 5, heat 3.18',
    2730,
    20,
    3.5,
    9.50085076214,
    20.5,
    26.0331799903,
  ],
  [
    3450,
    20,
    430,
    30,
    100,
    14,
    29,
    '250 g at 5, heat 3.18',
    2242.5,
    28,
    5.5,
    24.6002169717,
    38,
    35.1094694276,
  ],
  [
    2750,
    30.5,
    640,
    30.5,
    50,
    33,
    29,
    '190 g at 4, heat 2.3',
    1650,
    28.5,
    4.5,
    19.0228014916,
    3,
    20.5861690737,
  ],
  [
    2300,
    21.5,
    1000,
    21,
    100,
    71,
    31,
    '150 g at 4, heat 2.3',
    1380,
    25.5,
    2.5,
    26.1639707028,
    13.5,
    20.0060236891,
  ],
  [
    2000,
    17,
    1060,
    18,
    100,
    43,
    23,
    '100 g at 4, heat 3.85',
    1300,
    27.5,
    1,
    39.3575213675,
    7.5,
    13.7810374974,
  ],
  [550, 21, 500, 10, 60, 68, 30.5, '', 357.5, 27, 3, 38.3431636464, 34, 25.3297617625],
  [1600, 33, 950, 29, 125, 54, 13, '230 g at 4, heat 2.3', 880, 29, 0, 29.6600304116, 5, 20.0133812789],
  [400, 26.5, 420, 7, 100, 18, 18, '', 260, 28.5, 3, 46.3116211745, 20.5, 19.3814978231],
  [1300, 18, 410, 28, 80, 70, 27, '', 910, 24, 3, 20.5953628212, 3.5, 15.1778684915],
  [
    3200,
    32.5,
    300,
    28,
    100,
    65,
    12.5,
    '490 g at 4, heat 3.85',
    2240,
    23.5,
    0.5,
    20.5687030637,
    4,
    14.8581767349,
  ],
  [3850, 29, 280, 12, 60, 26, 15, '230 g at 4, heat 3.85', 2695, 23, 2.5, 17.1519247777, 22.5, 26.0356132557],
]

function partsOf([
  flour,
  flourCelsius,
  levain,
  levainCelsius,
  hydration,
  salt,
  room,
  cold,
]: Dough): HeatPart[] {
  const [, grams, celsius, heat] = /^(\S+) g at (\S+), heat (\S+)$/.exec(cold) ?? []
  return [
    { grams: flour, celsius: flourCelsius, heat: 1.8 },
    { grams: levain, celsius: levainCelsius, heat: (180 + hydration * 4.185) / (100 + hydration) },
    { grams: salt, celsius: room, heat: 0.84 },
    ...(grams ? [{ grams: Number(grams), celsius: Number(celsius), heat: Number(heat) }] : []),
  ]
}

for (const dough of doughs) {
  const [flour, , levain, , hydration, , , , water, wanted, rise, celsius, measured, warm] = dough
  test(`${flour} g of flour, ${levain} g of levain at ${hydration} %, ${water} g of water: ${celsius.toFixed(2)} °C for a dough of ${wanted} °C; water of ${measured} °C makes ${warm.toFixed(2)} °C`, () => {
    near(waterTemperature(partsOf(dough), water, wanted, rise), celsius)
    near(doughTemperature(partsOf(dough), water, measured, rise), warm)
  })
}

const factored: readonly (readonly [
  wanted: number,
  factors: number[],
  rise: number,
  friction: number, // n times the rise
  water: number,
])[] = [
  [19, [30.0, 26.0], 0, 0, 1.0],
  [26.5, [30.5, 15.0, 17.0], 4, 16, 27.5],
  [21, [21.5, 14.0, 23.5], 0.5, 2, 23.0],
  [25.5, [7.0, 25.0], 2.25, 6.75, 37.75],
  [19, [25.0, 9.0], 4.75, 14.25, 8.75],
  [30, [14.0, 14.0], 4.75, 14.25, 47.75],
  [26, [17.0, 20.0], 1, 3, 38.0],
  [29, [24.5, 30.0, 10.0], 3, 12, 39.5],
  [26, [4.0, 29.0, 22.0], 2.75, 11, 38.0],
  [20.5, [9.5, 16.5], 2.25, 6.75, 28.75],
  [21, [7.5, 12.5], 4.5, 13.5, 29.5],
  [28.5, [23.5, 29.5, 17.5], 5, 20, 23.5],
  [28, [32.5, 12.5], 2.25, 6.75, 32.25],
  [28, [15.5, 6.5], 1.5, 4.5, 57.5],
  [30, [12.0, 31.5], 1.5, 4.5, 42.0],
  [26, [30.0, 26.0], 1.5, 4.5, 17.5],
  [23.5, [15.5, 14.0, 17.5], 5.5, 22, 25.0],
  [26, [16.0, 14.5], 4.25, 12.75, 34.75],
  [30, [32.5, 9.0, 11.5], 2.5, 10, 57.0],
  [21.5, [23.0, 18.5, 4.5], 1.25, 5, 35.0],
]
for (const [wanted, factors, rise, friction, water] of factored)
  test(`a dough of ${wanted} °C, factors ${factors.join(', ')} and a rise of ${rise}: water of ${water} °C`, () => {
    near((factors.length + 1) * rise, friction)
    near(waterByFactors(wanted, factors, friction), water)
  })

const iced: readonly (readonly [
  water: number,
  tap: number,
  wanted: number,
  freezer: number,
  melting: number, // grams of ice at 0 °C by the rule of the trade
  frozen: number, // grams of it from the freezer, by heat balance
])[] = [
  [2900, 13, 7.5, -6, 171.505376344, 166.813069001],
  [860, 21.5, 6, -12, 131.330049261, 124.668946876],
  [1820, 9, 3.5, -18, 112.471910112, 102.951396995],
  [3030, 21, -2, -18, 690.0, 638.009511538],
  [3480, 24, -3.5, -24, 920.192307692, 831.902532445],
  [2300, 15.5, -6, 0, 517.80104712, 518.839589588],
  [2040, 26, -1.5, -18, 529.245283019, 491.112928665],
  [3710, 9, -0.5, -18, 396.011235955, 362.489709001],
  [3930, 24, 4, -24, 755.769230769, 683.255371475],
  [2970, 19, 1.5, -12, 525.0, 497.734324765],
  [870, 19, -1.5, -6, 180.151515152, 175.513682121],
  [3870, 9, -2, -6, 478.314606742, 464.656780026],
  [1160, 16, 8, -12, 96.6666666667, 91.4978230959],
  [990, 11.5, 3, 0, 91.9672131148, 92.1597503451],
  [2690, 9, -0.5, -6, 287.134831461, 278.935964613],
  [3650, 18.5, 6, -18, 463.197969543, 427.479170701],
  [1030, 18, 2, -18, 168.163265306, 155.13457827],
  [1280, 18, 10, 0, 104.489795918, 104.694012166],
  [2810, 13, 3, 0, 302.150537634, 302.772878825],
  [3300, 24.5, 4.5, -24, 631.578947368, 571.24302905],
]
for (const [water, tap, wanted, freezer, melting, frozen] of iced)
  test(`${water} g of water from a tap of ${tap} °C, wanted at ${wanted} °C: ${melting.toFixed(1)} g of it as ice; from a freezer of ${freezer} °C ${frozen.toFixed(1)} g`, () => {
    near(iceFor(water, tap, wanted).ice, melting)
    near(iceFrom(freezer, water, tap, wanted).ice, frozen)
    near(iceFrom(freezer, water, tap, wanted).water, water - frozen)
  })
