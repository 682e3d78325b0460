import { test } from 'node:test'
import { scaledWait } from '../../src/day/course/waits.js'
import { readStep } from '../../src/day/method/step-text.js'
import { dilutionFor, ripeningHours } from '../../src/day/temperature/growth.js'
import { near } from './near.js'
import { saturday } from './notation.js'

/* Drawn at random and worked out to forty digits (Python's decimal: exponential and logarithm by its own series). */

const waits: readonly (readonly [
  written: number,
  real: number,
  least: number,
  most: number,
  factor: number,
  leastThen: number,
  usualThen: number,
  mostThen: number,
])[] = [
  [27, 28, 150, 225, 1.01586060098, 152.081703879, 190.473862685, 228.86602149],
  [27, 18, 120, 150, 2.59176543425, 289.523018748, 349.888333624, 410.2536485],
  [16.5, 14.5, 720, 1080, 1.46182532483, 1010.94995464, 1315.64279234, 1620.33563005],
  [25, 28, 120, 240, 0.944720602159, 112.371443098, 170.049708389, 227.727973679],
  [22.5, 18.5, 240, 360, 1.76471724853, 400.590622191, 529.415174559, 658.239726927],
  [22.5, 18, 240, 360, 1.91881284294, 432.950697017, 575.643852882, 718.337008746],
  [22, 27, 150, 187, 0.697729562213, 99.5661774552, 117.567431233, 135.568685011],
  [28.5, 19.5, 45, 90, 1.95069248688, 81.363987623, 131.671742864, 181.979498105],
  [19.5, 20.5, 720, 1080, 0.861549315283, 607.854945379, 775.394383755, 942.93382213],
  [29, 22, 150, 300, 1.32507093822, 191.446544623, 298.140961099, 404.835377576],
  [25, 16.5, 480, 960, 3.13993702055, 1353.09430439, 2260.7546548, 3168.41500521],
  [24.5, 16, 480, 720, 3.32418639657, 1456.15828656, 1994.51183794, 2532.86538932],
  [25, 20, 60, 75, 1.75078838274, 99.9794813809, 118.178215835, 136.376950289],
  [21, 22, 600, 750, 0.878327803736, 518.783808994, 592.871267522, 666.95872605],
  [27.5, 28.5, 45, 67, 1.03847461852, 46.5158999697, 58.1545786371, 69.7932573045],
  [17.5, 23, 45, 90, 0.452520342522, 16.6679277255, 30.5451231202, 44.4223185149],
  [20.5, 27, 600, 900, 0.571430424248, 310.715536367, 428.572818186, 546.430100004],
  [25, 26, 180, 360, 0.950006833787, 169.651414594, 256.501845123, 343.352275651],
  [21.5, 25.5, 45, 56, 0.684241830665, 29.1963036248, 34.5542124486, 39.9121212724],
  [17.5, 28.5, 480, 720, 0.368651278557, 139.071690421, 221.190767134, 303.309843848],
]
for (const [written, real, least, most, factor, ...then] of waits)
  test(`${least}–${most} min written for ${written} °C take ${factor.toFixed(3)} times as long at ${real} °C`, () => {
    const read = readStep(`${least} min–${most} min, at ${written} °C`)
    const scaled = scaledWait(read, read.length!, saturday([], { kitchen: real, fridge: 3 }))
    near(scaled.factor, factor)
    near(scaled.length.least, then[0])
    near(scaled.length.usual, then[1])
    near(scaled.length.most, then[2])
  })

const ripenings: readonly (readonly [
  seed: number,
  flour: number,
  water: number,
  celsius: number,
  speed: number,
  hours: number,
])[] = [
  [150, 80, 64, 16, 1.25, 6.46838061865],
  [170, 480, 384, 16, 1.1, 24.3571031987],
  [45, 360, 450, 19.5, 0.9, 19.3594678487],
  [55, 210, 168, 14, 1, 38.2849058661],
  [85, 80, 48, 22.5, 1, 3.23076873427],
  [195, 220, 132, 30, 0.9, 3.13968352614],
  [160, 420, 525, 24.5, 0.8, 5.78698315572],
  [150, 420, 252, 14.5, 1, 27.4344908616],
  [70, 200, 200, 30, 0.9, 7.0328823689],
  [10, 400, 240, 27, 1.25, 19.4591944566],
  [110, 110, 66, 20, 1.25, 5.97994867359],
  [190, 550, 687.5, 15, 0.8, 24.4815333575],
  [80, 530, 318, 26, 0.9, 7.900430625],
  [185, 170, 85, 22, 1.1, 3.4377525937],
  [50, 70, 56, 24.5, 1, 4.19586586598],
  [110, 170, 102, 28.5, 1.25, 4.83203191674],
  [60, 450, 450, 15.5, 0.9, 36.2239061965],
  [35, 340, 272, 19, 1, 23.027866766],
  [15, 290, 232, 15.5, 1, 53.5063284293],
  [25, 340, 170, 25.5, 0.8, 9.25154900422],
]
for (const [seed, flour, water, celsius, speed, hours] of ripenings)
  test(`${seed} : ${flour} : ${water} is ripe after ${hours.toFixed(2)} h at ${celsius} °C with a speed of ${speed}, and the other way round`, () => {
    const dilution = (seed + flour + water) / seed
    near(ripeningHours(dilution, celsius, speed), hours)
    near(dilutionFor(hours, celsius, speed), dilution)
  })
