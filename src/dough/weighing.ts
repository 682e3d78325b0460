import { type Scale, usualScale } from './batch.js'
import { isAsWritten } from './batch-cells.js'
import type { Formula, Line } from './formula.js'
import type { Outline, StagePlan } from './outline.js'
import { tidy } from './words.js'

/** A line as it is weighed. */
export interface Weighed {
  readonly grams: number // a whole number of the step
  readonly step: number // grams
  readonly mayBeOff: number // half a step over the weight wanted, fraction of 1
}

/** The step a scale has at a weight. */
export const stepAt = (grams: number, scale: Scale): number =>
  Math.abs(grams) < scale.fineBelow ? scale.fineStep : scale.step

/** The nearest whole number of steps, up to the precision of the step's own decimals. */
function toStep(grams: number, step: number, round: (x: number) => number = Math.round): number {
  return tidy(round(tidy(grams / step)) * step)
}

/**
 * Rounds what is to be weighed to the scale's steps. Where that would come to less than `atLeast` grams, the
 * heaviest lines, which notice it least, go up by steps, so that the last piece is never short. The total of a
 * stage is the sum of what is shown.
 */
export function weigh(grams: readonly number[], scale: Scale = usualScale, atLeast = 0): Weighed[] {
  const weighed = grams.map(wanted => {
    const step = stepAt(wanted, scale)
    return { grams: toStep(wanted, step), step, mayBeOff: wanted > 0 ? step / 2 / wanted : 0 }
  })
  const heaviest = grams.map((_, i) => i).sort((a, b) => grams[b]! - grams[a]!)
  for (const i of heaviest) {
    const short = atLeast - weighed.reduce((sum, w) => sum + w.grams, 0)
    if (short <= 1e-9 * atLeast || grams[i]! <= 0) break
    const { step } = weighed[i]!
    weighed[i] = { ...weighed[i]!, grams: tidy(weighed[i]!.grams + toStep(short, step, Math.ceil)) }
  }
  return weighed
}

/**
 * What a stage has to weigh at least: the dough that the pieces take, and of a build what the stages that take it
 * weigh of it (`taken`, grams) and what is kept back. 0 where nothing falls short: so much dough, a factor.
 */
export function enoughOf(
  plan: StagePlan,
  outline: Outline,
  weights: readonly number[],
  taken: number,
): number {
  const all = weights.reduce((sum, w) => sum + w, 0)
  if (plan.isFinal) return outline.formula.batch && 'pieces' in outline.formula.batch ? all : 0
  // A stage that is written too small stays so; only what rounding takes away is made up for.
  if (isAsWritten(outline)) return taken - all < plan.takenBy.length ? taken : 0
  const { loss = 0, keepBack = 0 } = plan.stage
  return keepBack === 'seed' ? all : taken / (1 - loss) + keepBack
}

/** The formula with every line at what is weighed of it, to read the dough as it will really be. */
export function asWeighed(outline: Outline, weighed: ReadonlyMap<string, Weighed>): Formula {
  const stages = outline.stages.map(plan => {
    const lines = plan.stage.lines.map(
      (line): Line => ({ ...line, amount: `${weighed.get(line.id)?.grams ?? 0} g` }),
    )
    return { ...plan.stage, lines, ferments: plan.ferments }
  })
  const { batch: _batch, holds: _holds, ...formula } = outline.formula
  return { ...formula, stages }
}
