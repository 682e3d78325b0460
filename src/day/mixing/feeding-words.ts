import { listed, type Sentences, wording } from '../../engine/index.js'
import { lengthText } from '../course/clock.js'

/** Why a build cannot be fed for a time. */
export type FeedingDiagnostic =
  | { readonly code: 'feedingWithoutSeed' | 'feedingWithoutFlour' | 'feedingWithoutWater' }
  | { readonly code: 'feedingWeightsUnknown' | 'feedingSpeedUnknown' }
  | { readonly code: 'feedingTooShort'; readonly hours: number } // with as much seed as can be it takes so long
  | { readonly code: 'feedingNothingGrows'; readonly celsius: number }

export const feedingSentences: Sentences<FeedingDiagnostic> = {
  feedingWithoutSeed: 'No starter and no earlier build goes in, so there is no seed to work out.',
  feedingWithoutFlour: 'No flour goes in beside the seed, so it is not fed.',
  feedingWithoutWater:
    'No water goes in, so it cannot make up for the seed. Give it a water line, even of 0 g.',
  feedingWeightsUnknown: 'Not all of its weights are known. Give each line an amount.',
  feedingSpeedUnknown:
    'With this much seed, or at this temperature, its own time does not show how fast this levain is. Look at the time and the temperature of its last wait.',
  feedingTooShort: ({ hours }) =>
    `Even with as much seed as can go in it takes ${lengthText(hours * 60)}. Feed earlier, take it later, or keep it warmer.`,
  feedingNothingGrows: ({ celsius }) =>
    `At ${Number(celsius.toFixed(1))} °C the yeasts of a levain do not grow. Let it stand cooler.`,
}

/** Why a build cannot be fed for a time, with its sentence. */
export const feedingProblem = wording(feedingSentences)
export type FeedingProblem = ReturnType<typeof feedingProblem>

/** What feeding is called when it is told and when it is undone. */
export const feedingLabel = (builds: readonly string[], hours: number): string =>
  `Feed ${listed(builds)} for ${lengthText(hours * 60)}`
