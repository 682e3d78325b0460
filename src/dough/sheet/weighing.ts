import { type Scale, usualScale } from '../document/batch.js'
import { tidy } from '../document/words.js'

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

/** A weight wanted, in grams, rounded to the scale's steps. */
export function rounded(wanted: number, scale: Scale): Weighed {
  const step = stepAt(wanted, scale)
  return { grams: toStep(wanted, step), step, mayBeOff: wanted > 0 ? step / 2 / wanted : 0 }
}

/**
 * Where what is weighed would come to less than enough, the heaviest line but for the seed, which notices it most
 * lightly, goes up by steps: its place, and what is weighed of it then.
 */
export function raised(
  wanted: readonly number[],
  weighed: readonly Weighed[],
  { grams, seed }: Enough,
): { readonly at: number; readonly weighed: Weighed } | undefined {
  const atLeast = seed.reduce((sum, i) => sum + weighed[i]!.grams, grams)
  const short = atLeast - weighed.reduce((sum, w) => sum + w.grams, 0)
  if (short <= 1e-9 * atLeast) return undefined
  let at = -1
  for (const [i, weight] of wanted.entries())
    if (weight > 0 && (at < 0 || weight > wanted[at]!) && !seed.includes(i)) at = i
  const heaviest = weighed[at]
  if (!heaviest) return undefined
  const more = toStep(short, heaviest.step, Math.ceil)
  return { at, weighed: { ...heaviest, grams: tidy(heaviest.grams + more) } }
}

/** Weighs on a scale, so that the last piece is never short where so much has to be enough. */
export function weigh(grams: readonly number[], scale: Scale = usualScale, enough?: Enough): Weighed[] {
  const weighed = grams.map(wanted => rounded(wanted, scale))
  const heaviest = enough && raised(grams, weighed, enough)
  if (heaviest) weighed[heaviest.at] = heaviest.weighed
  return weighed
}
