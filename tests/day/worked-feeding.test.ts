import assert from 'node:assert/strict'
import { test } from 'node:test'
import { feedStage, hoursInChain } from '../../src/day/mixing/fed-build.js'
import type { Feeding } from '../../src/day/mixing/feeding.js'
import { ripeningHours } from '../../src/day/temperature/growth.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { near } from './near.js'
import { bread } from './notation.js'

/* Drawn at random and worked out to forty digits (Python's decimal: exponential and logarithm by its own series). */

const levain = (
  hydration: number,
  seed: number,
  flour: number,
  water: number,
  written: string,
  more = '',
) => ({
  ...bread(
    'Mill wheat',
    `${more}
     Levain:
       ${more ? 'First build' : 'Seed'} ${seed} g
       Bread flour ${flour} g
       Water ${water} g
       hands Mix: 5 min
       wait Ripen: ${written}
     Final dough:
       Bread flour 1000 g
       Levain ${flour} g`,
  ),
  meanings: [{ ingredient: 'Seed', countsAs: { kind: 'starter', hydration: hydration / 100 } as const }],
})

const feedings: readonly (readonly [
  hydration: number, // of the seed, per cent
  seed: number,
  flour: number,
  water: number,
  writtenHours: number,
  writtenCelsius: number,
  hours: number,
  celsius: number,
  dilution: number,
  seedThen: number,
  flourThen: number,
  waterThen: number,
])[] = [
  [80, 140, 470, 376, 6.5, 28, 15, 19, 7.84983189695, 125.607785357, 477.995674802, 382.396539841],
  [100, 70, 450, 225, 10.5, 23, 8, 23, 6.55230494909, 113.700446757, 428.149776622, 203.149776622],
  [80, 120, 410, 410, 4.5, 26, 9.5, 19, 7.58472848677, 123.933243179, 407.8148649, 408.25189192],
  [125, 110, 140, 98, 5.5, 20, 9.5, 21, 7.17027814895, 48.5336820652, 167.318363527, 132.147954408],
  [100, 40, 330, 231, 4.5, 26, 4, 20, 4.37781073079, 137.283230582, 281.358384709, 182.358384709],
  [80, 180, 540, 378, 8, 24, 13.5, 26.5, 24.7252912154, 44.4079703828, 615.328905343, 438.263124274],
  [125, 185, 320, 160, 8, 24, 14, 18.5, 3.12173710085, 213.022422618, 307.545589947, 144.431987434],
  [125, 105, 120, 84, 8.5, 28, 9, 23, 2.61232642058, 118.285371065, 114.095390638, 76.6192382974],
  [125, 150, 460, 460, 9.5, 25, 8.5, 21, 3.64334519565, 293.686143514, 396.139491772, 380.174364715],
  [100, 140, 440, 440, 9.5, 23, 10.5, 19.5, 4.39716416354, 231.967686915, 394.016156543, 394.016156543],
  [100, 130, 530, 371, 8, 23, 12, 23, 18.9600085333, 54.3776126572, 567.811193671, 408.811193671],
  [80, 100, 300, 240, 4, 21, 6, 16.5, 4.20298352932, 152.272783259, 270.959564856, 216.767651885],
  [125, 80, 200, 120, 10, 20, 9, 21, 5.25204761614, 76.1607718046, 201.706323642, 122.132904553],
  [50, 180, 560, 392, 9, 22, 5.5, 25, 4.7516360437, 238.233734569, 521.177510288, 372.588755144],
  [80, 125, 400, 280, 5, 26, 7, 24, 9.20380010428, 87.4638726264, 420.853404096, 296.682723277],
  [125, 95, 570, 570, 5.5, 27, 4, 22.5, 4.62864166729, 266.816938699, 493.636916134, 474.546145167],
  [125, 145, 520, 364, 9, 20, 7.5, 19.5, 4.89451534241, 210.235320152, 491.006524377, 327.758155471],
  [125, 70, 410, 328, 8.5, 25, 9, 16.5, 2.83477529811, 285.031409911, 314.430484484, 208.538105605],
  [100, 110, 170, 170, 9.5, 22, 13.5, 27.5, 12.4743401, 36.0740525264, 206.962973737, 206.962973737],
  [80, 165, 510, 255, 4.5, 25, 9, 16.5, 3.38846380868, 274.46065607, 449.188524406, 206.350819524],
]
for (const [hydration, seed, flour, water, h, c, hours, celsius, dilution, ...then] of feedings)
  test(`${seed} : ${flour} : ${water}, ripe in ${h} h at ${c} °C, wants ${then[0].toFixed(1)} g of seed at ${hydration} % to be ripe in ${hours} h at ${celsius} °C`, () => {
    const formula = levain(hydration, seed, flour, water, `${h} h, at ${c} °C`)
    const fed = feedStage(openSheet(formula), formula.stages[0]!.id, hours, celsius) as Feeding
    near(fed.dilution, dilution)
    const weights = formula.stages[0]!.lines.map(line => fed.weights.get(line.id)!)
    for (const [i, weight] of weights.entries()) near(weight, then[i]!)
    near(ripeningHours(fed.dilution, celsius, fed.speed), hours)
  })

type Build = readonly [seed: number, flour: number, hours: number, celsius: number]
const twice: readonly (readonly [
  first: Build,
  second: Build,
  hours: number, // in all
  celsius: number,
  each: readonly [number, number],
  shares: readonly [number, number], // of seed
])[] = [
  [
    [110, 250, 9.5, 20],
    [120, 220, 6, 24],
    14,
    17,
    [6.91423549479, 7.08576450521],
    [0.389492548027, 0.420513169366],
  ],
  [
    [65, 310, 7, 27],
    [75, 170, 4, 23],
    18,
    23,
    [12.4389604132, 5.56103958684],
    [0.0430125998812, 0.105336052994],
  ],
  [
    [45, 120, 7.5, 26],
    [75, 260, 6.5, 22],
    12,
    27,
    [7.41781463595, 4.58218536405],
    [0.155432824797, 0.123796064189],
  ],
  [
    [50, 270, 9, 25],
    [115, 350, 8, 28],
    17.5,
    26.5,
    [9.01642940795, 8.48357059205],
    [0.0729122848235, 0.125828989345],
  ],
  [
    [105, 390, 7.5, 28],
    [115, 220, 10, 22],
    20,
    25,
    [10.2824522989, 9.71754770108],
    [0.0696556867471, 0.143417494526],
  ],
  [
    [40, 370, 5.5, 27],
    [40, 100, 10, 24],
    13.5,
    25,
    [5.25891807796, 8.24108192204],
    [0.0687273395501, 0.196019789429],
  ],
  [
    [45, 210, 6.5, 27],
    [80, 180, 8, 27],
    22,
    20,
    [9.86206896552, 12.1379310345],
    [0.14288757221, 0.237529294494],
  ],
  [
    [95, 190, 5.5, 26],
    [100, 320, 9, 27],
    18.5,
    23,
    [6.92464026608, 11.5753597339],
    [0.198406418185, 0.13373079505],
  ],
  [
    [100, 120, 5.5, 28],
    [110, 280, 4, 22],
    10,
    26,
    [6.59853468485, 3.40146531515],
    [0.247389386578, 0.123394277492],
  ],
  [
    [80, 100, 6.5, 24],
    [70, 110, 6.5, 25],
    18.5,
    21.5,
    [8.89853751055, 9.60146248945],
    [0.275207947778, 0.230921042164],
  ],
  [
    [60, 190, 6, 20],
    [95, 220, 7, 23],
    15,
    24.5,
    [5.51797693886, 9.48202306114],
    [0.0541764407374, 0.0816698246165],
  ],
  [
    [90, 210, 8, 22],
    [85, 170, 7.5, 27],
    11.5,
    24.5,
    [4.90688900865, 6.59311099135],
    [0.237385248363, 0.262032671877],
  ],
  [
    [65, 80, 7.5, 27],
    [110, 230, 5, 25],
    12.5,
    21,
    [7.7161423961, 4.7838576039],
    [0.404970888959, 0.314016598566],
  ],
  [
    [35, 330, 8, 28],
    [20, 200, 6.5, 24],
    18.5,
    19,
    [10.8099238892, 7.69007611076],
    [0.136731312903, 0.132034572828],
  ],
  [
    [120, 270, 7, 20],
    [65, 340, 10, 24],
    19,
    22.5,
    [5.72630956952, 13.2736904305],
    [0.149895702404, 0.0648939801935],
  ],
  [
    [45, 370, 9, 28],
    [75, 110, 5.5, 22],
    12,
    24,
    [8.37314593132, 3.62685406868],
    [0.0916637311671, 0.308420191076],
  ],
  [
    [105, 110, 5.5, 23],
    [100, 220, 7, 26],
    21.5,
    18.5,
    [8.29328822309, 13.2067117769],
    [0.376709073185, 0.240201505939],
  ],
  [
    [120, 260, 8, 23],
    [55, 80, 6.5, 24],
    22,
    18,
    [11.6089823034, 10.3910176966],
    [0.274961115932, 0.343422240136],
  ],
  [
    [100, 100, 9.5, 25],
    [80, 150, 10, 23],
    25.5,
    21.5,
    [13.5238471736, 11.9761528264],
    [0.332627263914, 0.209815046746],
  ],
  [
    [110, 380, 6.5, 25],
    [25, 260, 7.5, 22],
    20,
    18,
    [10.7198560262, 9.28014397382],
    [0.21904859217, 0.109458025426],
  ],
]
for (const [[s1, f1, h1, c1], [s2, f2, h2, c2], hours, celsius, each, shares] of twice)
  test(`${hours} h at ${celsius} °C through two builds are ${each[0].toFixed(2)} and ${each[1].toFixed(2)} h, with ${(shares[0] * 100).toFixed(2)} and ${(shares[1] * 100).toFixed(2)} % of seed`, () => {
    const first = `First build:
       Seed ${s1} g
       Bread flour ${f1} g
       Water ${f1} g
       wait Ripen: ${h1} h, at ${c1} °C`
    const formula = levain(100, s2, f2, f2, `${h2} h, at ${c2} °C`, first)
    const sheet = openSheet(formula)
    const ids = formula.stages.slice(0, 2).map(({ id }) => id)
    const apart = hoursInChain(sheet, ids, hours, celsius)
    assert.equal(apart.length, 2)
    for (const [i, id] of ids.entries()) {
      near(apart[i]!, each[i]!)
      near((feedStage(sheet, id, apart[i]!, celsius) as Feeding).seedShare, shares[i]!)
    }
  })
