export const tallyWords = {
  tally: 'Tally',
  mainReadings: 'Main readings',
  held: 'held',
  hold: 'Hold',
  holdThis: (reading: string): string => `Hold ${reading}`,
  noFigure: '– No figure',
  how: (reading: string): string => `How ${reading} is worked out`,
  /** The name of a figure that opens its working. */
  howFigure: (shown: string, reading: string): string => `${shown}: how ${reading} is worked out`,
  notKnown: 'Not known yet.',
} as const

/** Hydrations beside the one that leads. */
export const besideWords = {
  trueHydration: 'True',
  listedHydration: 'Listed',
  hydrationWithoutSoakers: 'Without soakers',
} as const

/** The readings in a strip at the foot of a narrow page. */
export const stripWords = {
  trueHydration: 'True hydration',
  moistureHydration: 'Moisture',
  salt: 'Salt',
  prefermentedFlour: 'Prefermented',
} as const

/** Where a reading stands to its usual range, which comes with its unit. */
export const rangeWords = {
  below: (usual: string): string => `▼ below the usual ${usual}`,
  within: (usual: string): string => `usual ${usual}`,
  above: (usual: string): string => `▲ above the usual ${usual}`,
} as const

/** A reading of the batch as it is weighed, with its unit. */
export const weighedWords = (value: string, unit: '%' | 'g'): string =>
  `${unit === '%' ? 'as weighed' : 'in the batch'} ${value}\u00a0${unit}`

/** Of a hold. `reading` is its name within a sentence. */
export const heldWords = {
  /**
   * `True hydration held at 75 %, Water gives`; beneath the reading without its name. Here it begins the sentence. Without an
   * ingredient every line gives.
   */
  held: (reading: string | undefined, value: string, ingredient: string | undefined): string =>
    `${reading === undefined ? 'Held' : `${reading} held`} at ${value}, ${ingredient === undefined ? 'every line in proportion' : `${ingredient || 'a line'} gives`}`,
  change: 'Change',
  changeThis: (reading: string): string => `Change the hold on ${reading}`,
  release: 'Release',
  releaseThis: (reading: string): string => `Release ${reading}`,
} as const
