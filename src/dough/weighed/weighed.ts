import type { Scale } from '../document/batch.js'
import type { Formula } from '../document/formula.js'
import type { LinePlan, Outline } from '../outline/outline.js'
import type { Weighed } from './weighing.js'

/** What is weighed of every line of a batch. */
export interface WeighedLines {
  readonly isKnown: boolean
  of(line: LinePlan): Weighed | undefined
  /** To be told which lines have another weight in the batch: gives all lines of which another may be weighed. */
  follow(lines: readonly LinePlan[]): Iterable<LinePlan>
}

/** What weighs a batch; `weighed-batch.ts` has the one there is. */
export interface Weighing {
  /** `wanted` gives the grams of a line in the batch. */
  readonly batch: (
    outline: Outline,
    scale: Scale,
    wanted: (line: LinePlan) => number | undefined,
  ) => WeighedLines
  /** The formula with every line at what is weighed of it; what is as in `before` is the same object. */
  readonly formula: (outline: Outline, weighed: WeighedLines, before: Formula | undefined) => Formula
}

/** Undefined until it is given: a page begins without it where no formula has a batch. */
export let weighing: Weighing | undefined

/** Gives it to all sheets from then on. */
export const useWeighing = (given: Weighing): void => {
  weighing = given
}
