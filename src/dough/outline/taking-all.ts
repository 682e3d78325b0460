import type { Worded } from '../../engine/index.js'
import type { Meant } from './meant.js'
import type { LinePlan, Outline, StagePlan } from './outline.js'
import type { Split } from './split.js'

/** What writes the cell of an amount that is all of a stage. */
interface Writing {
  compute(
    name: string,
    words: string,
    how: string,
    of: readonly string[],
    fn: (values: readonly number[]) => number,
  ): void
}

/** What is known of amounts that are all of a stage; `all-taken.ts` has the one there is. */
export interface TakingAll {
  readonly meant: (line: LinePlan) => Meant
  /** Why a stage makes no amount of its own, of which all could be taken. */
  readonly isOfAnySize: (stage: StagePlan, splits: ReadonlyMap<LinePlan, Split>) => Worded | undefined
  /** Writes the cell of all that a line takes, and gives its name. */
  readonly write: (out: Writing, line: LinePlan) => string
  /** The lines of such amounts that hang on others, on stages that came apart otherwise, or on what is lost of any. */
  readonly hanging: (
    outline: Outline,
    on: {
      readonly amounts: readonly LinePlan[]
      readonly stages: readonly StagePlan[]
      readonly losses: boolean
    },
  ) => readonly LinePlan[]
}

export let takingAll: TakingAll | undefined

/** Gives it to all formulas from then on: a page begins without it where none is written so. */
export const useTakingAll = (known: TakingAll): void => {
  takingAll = known
}
