import type { ReadingName } from '../document/reading-names.js'

/** Ranges usual in bread, fractions of 1: said as usual, never as right or wrong. Trade knowledge. */
export const usualRanges: Partial<Record<ReadingName, readonly [number, number]>> = {
  trueHydration: [0.58, 0.85],
  moistureHydration: [0.5, 0.85],
  salt: [0.016, 0.024],
  prefermentedFlour: [0.05, 0.4],
}
