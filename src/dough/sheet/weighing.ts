import { isAsWritten, seedLines } from '../cells/batch-cells.js'
import { type Scale, usualScale } from '../document/batch.js'
import type { Formula, Line } from '../document/formula.js'
import { tidy } from '../document/words.js'
import type { Outline, StagePlan } from '../outline/outline.js'

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

/** What a stage has to weigh at least: so many grams, and besides as much as is weighed of its seed. */
export interface Enough {
  readonly grams: number
  readonly seed: readonly number[] // the places of those lines, which are then weighed as they round
}

/**
 * Rounds what is to be weighed to the scale's steps. Where that would come to less than enough, the heaviest
 * lines, which notice it least, go up by steps, so that the last piece is never short. The total of a
 * stage is the sum of what is shown.
 */
export function weigh(grams: readonly number[], scale: Scale = usualScale, enough?: Enough): Weighed[] {
  const weighed = grams.map(wanted => {
    const step = stepAt(wanted, scale)
    return { grams: toStep(wanted, step), step, mayBeOff: wanted > 0 ? step / 2 / wanted : 0 }
  })
  if (!enough) return weighed
  const { seed } = enough
  const atLeast = seed.reduce((sum, i) => sum + weighed[i]!.grams, enough.grams)
  const heaviest = [...grams.keys()].filter(i => !seed.includes(i)).sort((a, b) => grams[b]! - grams[a]!)
  for (const i of heaviest) {
    const short = atLeast - weighed.reduce((sum, w) => sum + w.grams, 0)
    if (short <= 1e-9 * atLeast || grams[i]! <= 0) break
    const { step } = weighed[i]!
    weighed[i] = { ...weighed[i]!, grams: tidy(weighed[i]!.grams + toStep(short, step, Math.ceil)) }
  }
  return weighed
}

/**
 * What is enough of a stage: the dough that the pieces take, and of a build what the stages that take it weigh of
 * it (`taken`, grams) and what is kept back. Undefined where nothing falls short: so much dough, a factor.
 */
export function enoughOf(
  plan: StagePlan,
  outline: Outline,
  weights: readonly number[],
  taken: number,
): Enough | undefined {
  const all = weights.reduce((sum, w) => sum + w, 0)
  const atLeast = (grams: number, seed: readonly number[] = []): Enough => ({ grams, seed })
  if (plan.isFinal)
    return outline.formula.batch && 'pieces' in outline.formula.batch ? atLeast(all) : undefined
  // A stage that is written too small stays so; only what rounding takes away is made up for.
  if (isAsWritten(outline)) return taken - all < plan.takenBy.length ? atLeast(taken) : undefined
  const { loss = 0, keepBack = 0 } = plan.stage
  const needed = taken / (1 - loss)
  if (keepBack !== 'seed') return atLeast(needed + keepBack)
  return atLeast(
    needed,
    seedLines(plan).map(line => plan.lines.indexOf(line)),
  )
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
