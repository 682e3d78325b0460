import type { FigureName, TasteName } from '../../src/day/bench/bake.js'
import type { Measure } from '../../src/day/learning/series.js'

export const figureWords: Readonly<Record<FigureName, { readonly name: string; readonly unit: string }>> = {
  flour: { name: 'Flour', unit: '°C' },
  water: { name: 'Water', unit: '°C' },
  room: { name: 'Room', unit: '°C' },
  dough: { name: 'Dough', unit: '°C' },
  oven: { name: 'Oven', unit: '°C' },
  rise: { name: 'Rise', unit: '%' },
  pH: { name: 'pH', unit: '' },
  raw: { name: 'Piece raw', unit: 'g' },
  baked: { name: 'Piece baked', unit: 'g' },
}

export const tasteWords: Readonly<
  Record<TasteName, { readonly name: string; readonly ends: readonly [string, string] }>
> = {
  sour: { name: 'Sour', ends: ['mild', 'sour'] },
  open: { name: 'Open', ends: ['close', 'open'] },
  dark: { name: 'Dark', ends: ['pale', 'dark'] },
  high: { name: 'High', ends: ['flat', 'high'] },
  keeps: { name: 'Keeps', ends: ['a day', 'long'] },
}

/** Of a bake that is looked at. */
export const bakeWords = {
  days: 'Days',
  all: 'All bakes',
  besides: 'Beside',
  formula: 'the formula as it stood',
  bakeOf: (date: string, clock: string): string => `the bake of ${date}, ${clock}`,
  steps: 'Times',
  step: 'Step',
  began: 'Began',
  took: 'Took',
  tookThere: 'Took there',
  written: 'Written',
  planned: (clock: string): string => `planned ${clock}`,
  weights: 'Weights, g',
  ingredient: 'Ingredient',
  wentIn: 'Went in',
  wentInThere: 'Went in there',
  wanted: 'Wanted',
  figures: 'Measured',
  atStep: (step: string, stage: string): string => [step, stage].filter(Boolean).join(', '),
  figuresAfterwards: 'Measured between steps, or written down afterwards',
  print: 'Print this bake',
  withPlans: 'What was written and wanted beside it',
  howItWas: 'How it was',
  verdict: 'Verdict on the bake',
  verdictHint: 'How it was, in your own words',
  note: 'Note on the bake',
  noteHint: 'A note',
  taste: (name: string, value: number): string => `${name}, ${value} of 5`,
  again: 'Bake it like that day: keep it as a state of the formula',
  state: (date: string): string => `as baked on ${date}`,
  keptAsState: (name: string, state: string): string =>
    `Kept with ${name}, “${state}”: bring it back from its kept states.`,
  keptAsFormula: (name: string): string => `${name} is a formula on the shelf again, as it was baked.`,
  remove: 'Delete this bake',
  sure: 'Delete it for good, with its photographs? This cannot be undone.',
  keep: 'Keep it',
  removed: (name: string): string => `Deleted the bake of ${name}.`,
  noNumber: (typed: string): string => `“${typed}” is not a number. Write one like 25.5.`,
} as const

/** What is measured over several bakes. */
export const measureWords = {
  figure: (figure: FigureName): string => figureWords[figure].name,
  taste: (taste: TasteName): string => tasteWords[taste].name,
  rise: (stage: string): string => `Rise in mixing: ${stage}`,
  speed: (stage: string): string => `How slow the levain is, f: ${stage}`,
  bakeLoss: 'Lost in baking',
  loss: 'Lost in mixing and shaping',
  took: (stage: string, step: string): string => `${step} took: ${stage}`,
  tasteOf: (value: string): string => `${value} of 5`,
} as const satisfies Record<Measure['of'] | 'tasteOf', unknown>

/** Of the page of a formula's bakes. */
export const bakesOfWords = {
  title: (name: string): string => `Bakes of ${name}`,
  measured: 'Measured',
  nothing: 'These bakes have no measurements to draw yet.',
  drawn: (name: string, count: number, low: string, high: string): string =>
    `${name} over ${count === 1 ? 'one bake' : `${count} bakes`}, from ${low} to ${high}`,
  range: (low: string, high: string, middle: string): string =>
    `The middle is ${middle}; the band is where eight of ten bakes lie, ${low} to ${high}.`,
  table: (name: string): string => `${name}, bake by bake`,
  date: 'Bake',
  value: 'Measured',
  bakes: 'All its bakes',
  out: 'To take along',
  csv: 'As a table: one row a bake (CSV)',
  csvSteps: 'As a table: one row a step (CSV)',
  downloaded: (file: string): string => `Downloaded ${file}.`,
  ofBread: (name: string): string => `All bakes of ${name}`,
} as const
