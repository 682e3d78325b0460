import type { LinePlan, StagePlan } from '../../dough/outline/outline.js'
import { dilutionFor, isExtrapolated, ripeningHours, speedOf } from '../temperature/growth.js'

/** A build with what goes into it: grams. */
export interface BuildParts {
  readonly seed: readonly LinePlan[] // starters and fermenting stages
  readonly flour: readonly LinePlan[]
  readonly water: readonly LinePlan[]
  readonly rest: readonly LinePlan[]
}

/** How a build has to be fed to be ripe in time. Weights in grams, of the build as it stands. */
export interface Feeding {
  readonly hours: number // from feeding to ripe
  readonly celsius: number
  readonly speed: number // this levain's own factor; 1 where its step says no time
  readonly speedKnown: boolean // it was told by the step's own time
  readonly dilution: number
  readonly seedShare: number // of the build, fraction of 1
  readonly before: { readonly dilution: number; readonly seedShare: number; readonly hours: number } // as it is now, at this temperature
  readonly weights: ReadonlyMap<string, number> // of the lines that change, by id
  readonly extrapolated: boolean
}

/** Why a build cannot be fed for a time. */
export type FeedingProblem =
  | { readonly code: 'no seed' }
  | { readonly code: 'no flour' }
  | { readonly code: 'weights not known' }
  | { readonly code: 'too short'; readonly hours: number } // even fed with no more than its own weight it takes longer
  | { readonly code: 'seed too small for its hydration'; readonly hours: number } // its flour or water alone would be more than the build's

const leastDilution = 2 // as much fed as there is seed: less is outside of what ripening times were published for

/** The lines of a build by what they are in it. */
export function partsOfBuild({ lines }: StagePlan): BuildParts {
  const isSeed = (l: LinePlan) => l.source?.ferments === true || l.countsAs?.kind === 'starter'
  const isFlour = (l: LinePlan) => l.countsAs?.kind === 'flour'
  const isWater = (l: LinePlan) => l.countsAs?.kind === 'water'
  return {
    seed: lines.filter(isSeed),
    flour: lines.filter(isFlour),
    water: lines.filter(isWater),
    rest: lines.filter(l => l.line.ingredient && !isSeed(l) && !isFlour(l) && !isWater(l)),
  }
}

/**
 * Feeds a build so that it is ripe after `hours` at a temperature in °C: the seed becomes what the dilution asks for, and
 * flour and water make up for it, so that the build's weight and hydration stay as they are. `gramsOf` gives the weights,
 * `sharesOf` the flour and water in a gram of the seed. `written` is the build's own ripening as its method has it, which
 * tells how fast this levain is.
 */
export function feedFor(
  build: StagePlan,
  hours: number,
  celsius: number,
  gramsOf: (line: string) => number | undefined,
  sharesOf: (line: LinePlan) => { readonly flour: number; readonly water: number },
  written?: { readonly hours: number; readonly celsius: number },
): Feeding | FeedingProblem {
  const { seed, flour, water, rest } = partsOfBuild(build)
  if (seed.length === 0) return { code: 'no seed' }
  if (flour.length === 0) return { code: 'no flour' }
  const grams = (lines: readonly LinePlan[]) =>
    lines.reduce<number | undefined>((sum, l) => {
      const more = gramsOf(l.line.id)
      return sum === undefined || more === undefined ? undefined : sum + more
    }, 0)
  const [seedNow, flourNow, waterNow, restNow] = [seed, flour, water, rest].map(grams)
  if (
    seedNow === undefined ||
    flourNow === undefined ||
    waterNow === undefined ||
    restNow === undefined ||
    !(seedNow > 0)
  )
    return { code: 'weights not known' }
  const fed = seedNow + flourNow + waterNow
  const dilutionNow = fed / seedNow
  const speed = written ? speedOf(written.hours, dilutionNow, written.celsius) : 1
  const dilution = dilutionFor(hours, celsius, speed)
  if (!Number.isFinite(dilution) || dilution < leastDilution)
    return { code: 'too short', hours: ripeningHours(leastDilution, celsius, speed) }
  const seedThen = fed / dilution
  const carried = seed.reduce(
    (sum, l) => {
      const part = gramsOf(l.line.id)! / seedNow
      const { flour: f, water: w } = sharesOf(l)
      return { flour: sum.flour + part * f, water: sum.water + part * w }
    },
    { flour: 0, water: 0 },
  )
  const more = seedNow - seedThen // what flour and water make up for
  const flourThen = flourNow + more * carried.flour
  const waterThen = waterNow + more * carried.water
  if (flourThen <= 0 || waterThen < 0)
    return {
      code: 'seed too small for its hydration',
      hours: ripeningHours(fed / (seedNow + flourNow), celsius, speed),
    }
  const weights = new Map<string, number>()
  const scale = (lines: readonly LinePlan[], now: number, then: number) => {
    for (const { line } of lines)
      weights.set(line.id, now > 0 ? (gramsOf(line.id)! * then) / now : then / lines.length)
  }
  scale(seed, seedNow, seedThen)
  scale(flour, flourNow, flourThen)
  scale(water, waterNow, waterThen)
  return {
    hours,
    celsius,
    speed,
    speedKnown: written !== undefined,
    dilution,
    seedShare: seedThen / fed,
    before: {
      dilution: dilutionNow,
      seedShare: seedNow / fed,
      hours: ripeningHours(dilutionNow, celsius, speed),
    },
    weights,
    extrapolated: isExtrapolated(celsius),
  }
}
