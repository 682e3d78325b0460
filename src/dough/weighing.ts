import { type Scale, usualScale } from './batch.js'
import type { Formula, Line } from './formula.js'
import type { Outline } from './outline.js'
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
 * Rounds what is to be weighed to the scale's steps so that together it is not less than it was: where
 * rounding took something away, the heaviest lines, which notice it least, go up a step. The total of a
 * stage is the sum of what is shown, so that the last piece is never short; nor is it below `atLeast` grams,
 * what the stages that take it weigh of it.
 */
export function weigh(grams: readonly number[], scale: Scale = usualScale, atLeast = 0): Weighed[] {
  const weighed = grams.map(wanted => {
    const step = stepAt(wanted, scale)
    return { grams: toStep(wanted, step), step, mayBeOff: wanted > 0 ? step / 2 / wanted : 0 }
  })
  const wanted = Math.max(
    atLeast,
    grams.reduce((sum, g) => sum + g, 0),
  )
  const heaviest = grams.map((_, i) => i).sort((a, b) => grams[b]! - grams[a]!)
  for (const i of heaviest) {
    const short = wanted - weighed.reduce((sum, w) => sum + w.grams, 0)
    if (short <= 1e-9 * wanted || grams[i]! <= 0) break
    const { step } = weighed[i]!
    weighed[i] = { ...weighed[i]!, grams: tidy(weighed[i]!.grams + toStep(short, step, Math.ceil)) }
  }
  return weighed
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
