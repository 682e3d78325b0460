import type { LinePlan, StagePlan } from '../../dough/outline/outline.js'
import { dilutionFor, isExtrapolated, ripeningHours, speedOf } from '../temperature/growth.js'
import { type FeedingProblem, feedingProblem } from './feeding-words.js'
import type { GramsOf } from './heats.js'

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
  readonly seedShare: number // of seed, flour and water, fraction of 1
  readonly before: { readonly dilution: number; readonly seedShare: number; readonly hours: number } // as it is now, at this temperature
  readonly weights: ReadonlyMap<string, number> // of the lines that change, by id
  readonly extrapolated: boolean // outside of the temperatures that growth was measured at
}

/** Flour and water in a gram of a seed. */
export interface SeedShares {
  readonly flour: number
  readonly water: number
}

/** A ripening that is known: so many hours at a temperature in °C. */
export interface Ripening {
  readonly hours: number
  readonly celsius: number
}

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

/** What a build weighs, and flour and water in all of it, the seed's included; undefined where a weight is not known. */
function weighed(
  { seed, flour, water }: BuildParts,
  gramsOf: GramsOf,
  sharesOf: (line: LinePlan) => SeedShares,
) {
  const grams = (lines: readonly LinePlan[]) =>
    lines.reduce((sum, { line }) => sum + (gramsOf(line.id) ?? Number.NaN), 0)
  const [seedNow, flourNow, waterNow] = [grams(seed), grams(flour), grams(water)]
  if (!(seedNow > 0 && flourNow >= 0 && waterNow >= 0)) return undefined
  const share = (of: keyof SeedShares) =>
    seed.reduce((sum, l) => sum + (gramsOf(l.line.id)! / seedNow) * sharesOf(l)[of], 0)
  const carried = { flour: share('flour'), water: share('water') } // by a gram of seed
  const fed = seedNow + flourNow + waterNow
  const [allFlour, allWater] = [flourNow + seedNow * carried.flour, waterNow + seedNow * carried.water]
  return { seedNow, flourNow, waterNow, fed, carried, ofFlour: allFlour / (allFlour + allWater) }
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
  gramsOf: GramsOf,
  sharesOf: (line: LinePlan) => SeedShares,
  written?: Ripening,
): Feeding | FeedingProblem {
  const parts = partsOfBuild(build)
  if (parts.seed.length === 0) return feedingProblem({ code: 'feedingWithoutSeed' })
  if (parts.flour.length === 0) return feedingProblem({ code: 'feedingWithoutFlour' })
  if (parts.water.length === 0) return feedingProblem({ code: 'feedingWithoutWater' })
  const now = weighed(parts, gramsOf, sharesOf)
  if (!now) return feedingProblem({ code: 'feedingWeightsUnknown' })
  const { seedNow, flourNow, waterNow, fed, carried, ofFlour } = now
  const dilutionNow = fed / seedNow
  const speed = written ? speedOf(written.hours, dilutionNow, written.celsius) : 1
  if (!Number.isFinite(speed) || speed <= 0) return feedingProblem({ code: 'feedingSpeedUnknown' })
  if (!Number.isFinite(ripeningHours(leastDilution, celsius, speed)))
    return feedingProblem({ code: 'feedingNothingGrows', celsius })
  const dilution = dilutionFor(hours, celsius, speed)
  // Where flour or water has to come from the seed alone, there can be no more of it.
  const other = 1 - carried.flour - carried.water
  const mostSeed = Math.min(
    (fed * ofFlour) / (carried.flour + other * ofFlour),
    (fed * (1 - ofFlour)) / (carried.water + other * (1 - ofFlour)),
  )
  const least = Math.max(leastDilution, fed / mostSeed)
  if (dilution < least)
    return feedingProblem({ code: 'feedingTooShort', hours: ripeningHours(least, celsius, speed) })
  const seedThen = fed / dilution
  const made = fed - seedThen * other // flour and water in all
  const weights = new Map<string, number>()
  const scale = (lines: readonly LinePlan[], before: number, then: number) => {
    for (const { line } of lines)
      weights.set(line.id, before > 0 ? (gramsOf(line.id)! * then) / before : then / lines.length)
  }
  scale(parts.seed, seedNow, seedThen)
  scale(parts.flour, flourNow, made * ofFlour - seedThen * carried.flour)
  scale(parts.water, waterNow, made * (1 - ofFlour) - seedThen * carried.water)
  return {
    hours,
    celsius,
    speed,
    speedKnown: written !== undefined,
    dilution,
    seedShare: 1 / dilution,
    before: {
      dilution: dilutionNow,
      seedShare: seedNow / fed,
      hours: ripeningHours(dilutionNow, celsius, speed),
    },
    weights,
    extrapolated: isExtrapolated(celsius),
  }
}
