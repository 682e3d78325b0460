import { type Sentences, wording } from '../../engine/index.js'

/** Why no batch is made of all of an ingredient. */
export type AllOfDiagnostic =
  | { readonly code: 'allOfUnknown' | 'allOfNotTaken'; readonly ingredient: string }
  | { readonly code: 'keptBackTakesMore'; readonly ingredient: string; readonly weight: number }

export const allOfSentences: Sentences<AllOfDiagnostic> = {
  allOfUnknown: ({ ingredient }) => `There is no ${ingredient} in the formula to make all of.`,
  allOfNotTaken: ({ ingredient }) => `The dough takes no ${ingredient}.`,
  keptBackTakesMore: ({ ingredient, weight }) =>
    `What is kept back takes more than ${weight} g of ${ingredient} alone.`,
}

/** A diagnostic of such a batch with its sentence. */
export const allOfProblem = wording(allOfSentences)
