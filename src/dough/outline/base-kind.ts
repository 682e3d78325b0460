import type { Split } from './linear-parts.js'
import type { LinePlan, StagePlan } from './outline.js'

type Splits = ReadonlyMap<LinePlan, Split>

/** Whether a stage's base is not set by its own lines. */
export const isFree = (stage: StagePlan, splits: Splits): boolean =>
  stage.base.every(l => splits.get(l)!.fixed === 'none' && splits.get(l)!.by.size === 0)

/** Whether some base lines of a stage are in percentages and others have weights of their own. */
export const isMixed = ({ base }: StagePlan, splits: Splits): boolean =>
  base.some(l => splits.get(l)!.slope !== 'none') && base.some(l => splits.get(l)!.fixed !== 'none')

/**
 * Whether the base lines in percentages are 100 % or more by themselves, so that those in grams leave the base
 * open: it is chosen as if they were not there, and they come on top. Percentages that are calculated are not looked at.
 */
export const isFilled = (stage: StagePlan, splits: Splits): boolean =>
  isMixed(stage, splits) &&
  stage.base.every(l => splits.get(l)!.by.size === 0) &&
  stage.base.reduce(
    (sum, { amount }) =>
      amount && 'plain' in amount && amount.plain && amount.typedIn === 'percent'
        ? sum + Number(amount.typed)
        : sum,
    0,
  ) >= 100
