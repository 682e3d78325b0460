import type { Factor } from '../../src/day/mixing/mixing.js'
import { listed } from '../../src/engine/index.js'

/** Of the water of a day's mixings. Figures come as they are shown, with their unit. */
export const waterWords = {
  heading: 'Water',
  none: 'No dough or build of this day takes water by weight yet. Add a bread, or give its lines amounts.',
  of: (stage: string, breads: readonly string[]) => `${stage} of ${listed(breads)}`,
  short: (liquid: 'water' | 'milk', celsius: string) => (liquid === 'milk' ? `milk ${celsius}` : celsius),
  numbers: (of: string) => `Temperatures of ${of}`,
  byBalance: (liquid: 'water' | 'milk') => `for the ${liquid}, by heat balance`,
  byFactors: 'by factors, to compare',
  wanted: 'Dough wanted',
  rise: 'Rise in mixing',
  room: 'Room',
  tap: 'Tap',
  measured: (liquid: 'water' | 'milk') => (liquid === 'milk' ? 'Milk, measured' : 'Water, measured'),
  dough: 'The dough will have',
  field: (what: string, of: string, how: string) => `${what} in ${of}, °C, ${how}`,
  typed: 'typed',
  follows: 'follows',
  notYet: 'not measured yet',
  release: 'Release',
  releaseThis: (what: string) => `Release ${what}: let it follow again`,
  ice: (ice: string, water: string, tap: string, freezer: string | undefined) =>
    freezer === undefined
      ? `From a tap of ${tap}: ${ice} of it as ice, ${water} of water.`
      : `From a tap of ${tap}: ${ice} of it as ice from a freezer of ${freezer}, ${water} of water.`,
  working: 'Working',
  notCelsius: 'Write a temperature, such as 24 or 75 °F.',
} as const

const factorWords: Readonly<Record<Factor['of'], string>> = {
  room: 'room',
  flour: 'flour',
  preferment: 'levain',
}

/** A factor in the working: `flour 21 °C`. */
export const factorSaid = (of: Factor['of'], celsius: string): string => `${factorWords[of]} ${celsius}`

/** How the water's temperature came about. Figures as they are shown. */
export const waterWorking = {
  byFactors: (
    n: number,
    wanted: string,
    factors: readonly string[],
    friction: string,
    rise: string,
    water: string,
  ) =>
    `By factors: ${n} × ${wanted} − ${factors.join(' − ')} − friction ${friction} (${n} × ${rise}) = ${water}`,
  mixed: (mixed: string, wanted: string, rise: string) =>
    `By heat balance: it is mixed at ${mixed}, the ${wanted} wanted less the rise of ${rise}. To reach that, each of these takes up or gives off:`,
  columns: ['goes in', 'weight', 'heat, kJ/(kg·K)', 'from', 'kJ'],
  table: (of: string) => `Heat balance of ${of}`,
  water: (of: {
    liquid: string
    grams: string
    heat: string
    takesUp: boolean // what goes in; otherwise it gives off
    kilojoules: string
    apart: string
    celsius: string
  }) =>
    `All together that ${of.takesUp ? 'takes up' : 'gives off'} ${of.kilojoules}. ${of.grams} of ${of.liquid} at ${of.heat} kJ/(kg·K) ${of.takesUp ? 'give' : 'take up'} as much by being ${of.apart} ${of.takesUp ? 'warmer' : 'cooler'} than that: ${of.celsius}`,
  ice: (water: string, tap: string, wanted: string) => `Ice: ${water} × (${tap} − ${wanted}) ÷ (${tap} + 80)`,
  iceFrom: (freezer: string) =>
    `Ice: what it takes up on its way from ${freezer}, 1.958 kJ/(kg·K), in melting, 334 kJ/kg, and as water, is what the tap's water gives off.`,
  limits:
    'The rule of factors counts everything alike, so it misjudges a large or cold levain; the balance counts each by its weight.',
} as const

/** Of the waits of a day in which something ferments. Figures as they are shown. */
export const waitWords = {
  heading: 'What ripens and rises',
  none: 'Nothing ferments on this day yet.',
  title: (step: string, stage: string, breads: readonly string[]) => `${step}: ${stage} of ${listed(breads)}`,
  lookFor: (look: string) => `Look for: ${look}.`,
  between: (bounds: string, from: string, until: string, planned: string) =>
    `${bounds}, so between ${from} and ${until}; planned until ${planned}.`,
  asWritten: 'as written',
  scaled: (bounds: string, written: string, real: string, factor: string, out: string) =>
    `Written ${bounds} for ${written}; at ${real} it takes ${factor} times as long, give or take ${out}.`,
  unknown: (written: string, real: string) =>
    `Written for ${written}; how long it takes at ${real} is not known. Go by the dough.`,
  guess: 'Outside 14–30 °C this is only a guess: go by the dough.',
  cautions: 'To keep in mind',
} as const
