import { type Sentences, wording } from '../../engine/index.js'

/** Why all of a stage cannot be taken. Stages and ingredients go by their names. */
export type AllTakenDiagnostic =
  | { readonly code: 'allOfNoStage'; readonly ingredient: string }
  | { readonly code: 'allTakenTwice'; readonly taken: string; readonly stage: string }
  | { readonly code: 'allOfAnySize'; readonly stage: string }

export const allTakenSentences: Sentences<AllTakenDiagnostic> = {
  allOfNoStage: ({ ingredient }) =>
    `All of it is what a stage makes, and ${ingredient || 'this line'} is no stage of this formula. Write a weight such as 90 g, or a percentage.`,
  allTakenTwice: ({ taken, stage }) =>
    `All of ${taken} is taken in ${stage} as well. Write a weight in one of the two lines.`,
  allOfAnySize: ({ stage }) =>
    `All of ${stage} is taken, and ${stage} is in percentages: so its weight is not known. Write one of its lines in grams, or a weight here.`,
}

/** A diagnostic of what is taken with its sentence. */
export const allTakenProblem = wording(allTakenSentences)
