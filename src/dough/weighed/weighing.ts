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

/** A weight wanted, in grams, rounded to the nearest of the scale's steps, up to the precision of the step's own decimals. */
export function rounded(wanted: number, scale: Scale): Weighed {
  const step = stepAt(wanted, scale)
  const grams = tidy(Math.round(tidy(wanted / step)) * step)
  return { grams, step, mayBeOff: wanted > 0 ? step / 2 / wanted : 0 }
}

/** What the lines of a stage are to come to: so many grams, and besides as much as is weighed of its seed. */
export interface Aim {
  readonly grams: number
  readonly seed: readonly number[] // the places of those lines, which are then weighed as they round
}

/**
 * Lines weighed so that together they come as near to the aim as the scale can: what rounding each has left over goes, a
 * step at a time, to the line that it changes least in proportion to what is wanted of it. The steps are those of the
 * lines that are weighed in the coarsest; by place, only those of another weight than they round to.
 */
export function evened(
  wanted: readonly number[],
  weighed: readonly Weighed[],
  { grams, seed }: Aim,
): ReadonlyMap<number, Weighed> {
  const aim = seed.reduce((sum, i) => sum + weighed[i]!.grams, grams)
  const taking = wanted.flatMap((weight, i) => (weight > 0 && !seed.includes(i) ? [i] : []))
  const step = taking.reduce((most, i) => Math.max(most, weighed[i]!.step), 0)
  const lines = taking.filter(i => weighed[i]!.step === step)
  const left = weighed.reduce((rest, w) => rest - w.grams, aim)
  const steps = step > 0 ? Math.round(tidy(left / step)) : 0
  const other = new Map<number, Weighed>()
  if (steps === 0 || !Number.isFinite(steps)) return other
  const by = Math.sign(steps) * step
  let missing = Math.abs(steps)
  if (missing > lines.length) {
    // More than rounding leaves: in proportion first, in whole steps.
    const all = lines.reduce((sum, i) => sum + wanted[i]!, 0)
    const shares = lines.map(i => Math.floor((missing * wanted[i]!) / all))
    for (const [k, i] of lines.entries())
      if (shares[k]) other.set(i, { ...weighed[i]!, grams: tidy(weighed[i]!.grams + shares[k] * by) })
    missing = Math.min(lines.length, missing - shares.reduce((sum, share) => sum + share, 0))
  }
  const off = ({ grams }: Weighed, i: number) => Math.abs(grams + by - wanted[i]!) / wanted[i]!
  const offs = lines.map(i => off(other.get(i) ?? weighed[i]!, i)) // what one more step would make of each
  for (; missing > 0; missing--) {
    let least = 0
    for (const [k, much] of offs.entries()) if (much < offs[least]! - 1e-12) least = k
    const at = lines[least]!
    const now = other.get(at) ?? weighed[at]!
    const next = { ...now, grams: tidy(now.grams + by) }
    other.set(at, next)
    offs[least] = off(next, at)
  }
  return other
}

/** Weighs on a scale: each line as it rounds, and together as near to the aim as can be where there is one. */
export function weigh(grams: readonly number[], scale: Scale = usualScale, aim?: Aim): Weighed[] {
  const weighed = grams.map(wanted => rounded(wanted, scale))
  const other = aim && evened(grams, weighed, aim)
  return weighed.map((line, i) => other?.get(i) ?? line)
}
