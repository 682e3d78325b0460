import type { ReadingName } from '../document/reading-names.js'

/** Ranges usual in bread, fractions of 1: said as usual, never as right or wrong. Trade knowledge. */
export const usualRanges: Partial<Record<ReadingName, readonly [number, number]>> = {
  trueHydration: [0.58, 0.85],
  moistureHydration: [0.5, 0.85],
  salt: [0.016, 0.024],
  prefermentedFlour: [0.05, 0.4],
}

/** Whether a soaker's water is in the dough, so that its hydration without it is another. */
export const hasSoaker = (sheet: { reading(name: ReadingName): number | undefined }): boolean =>
  sheet.reading('hydrationWithoutSoakers') !== sheet.reading('trueHydration')

export type Hydration = 'trueHydration' | 'moistureHydration'

const much = 0.05 // of the flour

/** The hydration that says most of a dough: where milk, egg or butter bring much of its water, the trade's alone says little. */
export const leadingHydration = (read: (name: Hydration) => number | undefined): Hydration =>
  read('moistureHydration')! - read('trueHydration')! >= much ? 'moistureHydration' : 'trueHydration'
