import { type Sentences, wording } from '../../../engine/index.js'
import type { Hold } from '../../document/formula.js'
import { holdWords } from '../../document/words.js'
import { Refusal } from '../words.js'

/** Why amounts cannot be written anew. Lines, stages and starters go by their names, '' for a line without one. */
export type RebaseDiagnostic =
  | { readonly code: 'lineWithoutWeight' | 'weightWouldChange'; readonly line: string }
  | { readonly code: 'holdWouldChange'; readonly line: string; readonly hold: Hold }
  | { readonly code: 'nothingTaken' | 'stageWithoutBase' | 'doughWouldChange'; readonly stage: string }
  | { readonly code: 'notAStarter' | 'starterUnknown' | 'starterGives'; readonly ingredient: string }
  | { readonly code: 'stageWithoutWater'; readonly stage: string }
  | {
      readonly code: 'tooLittleWater'
      readonly starter: string
      readonly stage: string
      readonly water: string
    }

export const rebaseSentences: Sentences<RebaseDiagnostic> = {
  lineWithoutWeight: ({ line }) => `${line || 'A line'} has no weight, so nothing can be written for it.`,
  weightWouldChange: ({ line }) =>
    `Then ${line || 'a line'} would not weigh the same, since it depends on what would change. Give it a weight in grams first.`,
  holdWouldChange: ({ line, hold }) => {
    const name = line || 'a line'
    return `Then ${name}, which gives, would no longer follow from the rest: ${holdWords(hold, name)}. Release that hold first.`
  },
  nothingTaken: ({ stage }) =>
    `No stage takes ${stage} yet, so its lines have no weights. Write ${stage} as an ingredient of a later stage first.`,
  stageWithoutBase: ({ stage }) => `${stage} has no flour or base to take percentages of.`,
  doughWouldChange: ({ stage }) =>
    `Then the dough would not stay the same: another amount in ${stage} depends on the starter or the water. Write ${stage} in grams first.`,
  notAStarter: ({ ingredient }) => `${ingredient} is not a starter.`,
  starterUnknown: ({ ingredient }) => `${ingredient} is not a starter in the larder.`,
  starterGives: ({ ingredient }) => `${ingredient} gives for a hold; release it first.`,
  stageWithoutWater: ({ stage }) => `${stage} has no water line that could take up the difference.`,
  tooLittleWater: ({ starter, stage, water }) =>
    `${starter} brings more water than ${stage} has: ${water} would weigh less than 0 g.`,
}

const rebaseProblem = wording(rebaseSentences)

export function refuseRebase(diagnostic: RebaseDiagnostic): never {
  throw new Refusal(rebaseProblem(diagnostic))
}

/** What writing anew is called when it is told and when it is undone. */
export const rebaseLabels = {
  inGrams: (name: string) => `Write ${name} in grams`,
  inPercentages: (name: string) => `Write ${name} in percentages`,
  changeStarter: (from: string, to: string) => `Change ${from} to ${to}, the dough staying the same`,
} as const
