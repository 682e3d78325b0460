import type { Worded } from '../../engine/index.js'
import { tidy } from '../document/words.js'
import { cellOf } from '../outline/names.js'
import type { LinePlan, StagePlan } from '../outline/outline.js'
import { numberIn, type WorkedOut } from '../sheet/worked-out.js'
import { remark } from './remark-words.js'

type Unit = '%' | 'g'

/** Whether some base lines of a stage are in percentages and others have weights of their own. */
export const isMixed = ({ plan: { splits } }: WorkedOut, { base }: StagePlan): boolean =>
  base.some(l => splits.get(l)!.slope !== 'none') && base.some(l => splits.get(l)!.fixed !== 'none')

/** Whether the percentages are 100 % by themselves, so that base lines in grams come on top. */
export const isFilled = (seen: WorkedOut, stage: StagePlan): boolean =>
  isMixed(seen, stage) &&
  stage.base.reduce((sum, line) => sum + (numberIn(seen, cellOf.slope(line)) ?? 0), 0) >= 1 - 1e-12

/** In what a line is written: a percentage, or a weight by whatever measure; undefined where it follows or has nothing. */
function unitOf({ plan }: WorkedOut, line: LinePlan): Unit | undefined {
  const split = plan.splits.get(line)!
  if (!line.amount || 'problem' in line.amount || line.gives || line.source) return undefined
  if (split.slope !== 'none') return split.fixed === 'none' ? '%' : undefined
  return split.fixed === 'none' || split.by.size ? undefined : 'g'
}

/** The unit in which most lines of a stage are written; of two alike that of the first base line. */
function usualUnit(seen: WorkedOut, stage: StagePlan): Unit {
  const units = stage.lines.map(line => unitOf(seen, line)).filter(unit => unit !== undefined)
  const percentages = units.filter(unit => unit === '%').length * 2 - units.length
  if (percentages !== 0) return percentages > 0 ? '%' : 'g'
  return stage.base.map(line => unitOf(seen, line)).find(unit => unit !== undefined) ?? 'g'
}

/** A number of at most four digits, as a baker would have typed it. */
const short = (value: number): string => `${value >= 1000 ? Math.round(value) : Number(value.toPrecision(4))}`

/**
 * What it means that base lines of a stage are written in grams and others in percentages: said of those that are not
 * written as most lines of it are, each with the amounts that may have been meant.
 */
export function baseInTwoUnits(seen: WorkedOut, stage: StagePlan): readonly (readonly [LinePlan, Worded])[] {
  const base = numberIn(seen, cellOf.base(stage))
  if (!isMixed(seen, stage) || !base) return []
  const usual = usualUnit(seen, stage)
  const weightOf = (line: LinePlan) => numberIn(seen, cellOf.weight(line)) ?? 0
  const sum = stage.base.reduce((total, line) => total + weightOf(line), 0) / base
  return stage.base.flatMap(line => {
    const unit = unitOf(seen, line)
    const weight = weightOf(line)
    if (!unit || unit === usual || !weight) return []
    const { plain, typed } = line.amount as Exclude<LinePlan['amount'], undefined | { problem: Worded }>
    const asTyped = plain ? [Number(typed)] : []
    const others =
      unit === 'g'
        ? [...asTyped.filter(number => number <= 100), (weight / base) * 100].map(n => `${short(n)}%`)
        : [...asTyped, weight].map(n => `${short(n)} g`)
    const told = remark({
      code: 'baseInOtherUnit',
      line: line.line.ingredient,
      stage: stage.stage.name,
      isFlour: stage.baseIsFlour,
      unit,
      weight,
      share: weight / base,
      base,
      sum: isFilled(seen, stage) ? tidy(sum) : undefined,
      others: [...new Set(others)],
    })
    return [[line, told] as const]
  })
}
