import { type Sentences, wording } from '../../engine/index.js'
import { grams } from '../document/words.js'

/** Why a cell of a formula has no number. Stages go by their names, weights are grams. */
export type CellDiagnostic =
  | { readonly code: 'nothingJotted' | 'takesACircle' | 'rareNotFetched' }
  | { readonly code: 'amountBelowNothing'; readonly weight: number }
  | { readonly code: 'takenBelowGrams'; readonly stage: string }

export const cellSentences: Sentences<CellDiagnostic> = {
  nothingJotted: 'Nothing is written.',
  takesACircle: 'It takes a stage that is made of itself.',
  rareNotFetched: 'What works this out could not be fetched. Load the page again when there is a network.',
  amountBelowNothing: ({ weight }) =>
    `This comes to ${grams(weight)}, which is below 0. Write an amount above 0.`,
  takenBelowGrams: ({ stage }) => `Later stages take less of ${stage} than its lines in grams weigh alone.`,
}

/** A diagnostic of a formula's cells with its sentence. */
export const cellProblem = wording(cellSentences)
