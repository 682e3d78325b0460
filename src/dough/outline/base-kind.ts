import { compile } from '../../engine/index.js'
import type { Half, Split } from './linear-parts.js'
import type { LinePlan, StagePlan } from './outline.js'

type Splits = ReadonlyMap<LinePlan, Split>

/** Whether a stage's base is not set by its own lines. */
export const isFree = (stage: StagePlan, splits: Splits): boolean =>
  stage.base.every(l => splits.get(l)!.fixed === 'none' && splits.get(l)!.by.size === 0)

/** Whether some base lines of a stage are in percentages and others have weights of their own. */
export const isMixed = ({ base }: StagePlan, splits: Splits): boolean =>
  base.some(l => splits.get(l)!.slope !== 'none') && base.some(l => splits.get(l)!.fixed !== 'none')

/** What a slope comes to where it is a number as it is written: 0.8 for `80%`. */
function written(slope: 'none' | Half): number {
  if (slope === 'none' || 'problem' in slope) return 0
  return slope.terms.reduce((sum, { expression, times }) => {
    if (times || expression.names.length) return sum
    const { numbers } = expression
    return sum + compile(expression)(Float64Array.from(numbers), Int32Array.from(numbers.keys()), 0)
  }, 0)
}

/**
 * Whether the base lines in percentages are 100 % or more by themselves, so that those in grams leave the base
 * open: it is chosen as if they were not there, and they come on top.
 */
export const isFilled = (stage: StagePlan, splits: Splits): boolean =>
  isMixed(stage, splits) &&
  stage.base.every(l => splits.get(l)!.by.size === 0) &&
  stage.base.reduce((sum, l) => sum + written(splits.get(l)!.slope), 0) >= 1 - 1e-12
