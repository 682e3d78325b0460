import type { ExpressionDiagnostic, Worded } from '../../engine/index.js'
import { asItIsWritten } from './words.js'

type InWords = (diagnostic: ExpressionDiagnostic) => Worded<ExpressionDiagnostic>

let inWords: InWords = diagnostic => ({ ...diagnostic, message: asItIsWritten })

/** Gives the sentences to all who ask from then on (`spoken-at-once.ts`). */
export const useExpressionWords = (words: InWords): void => {
  inWords = words
}

/** A diagnostic of expressions with its sentence, of few words until the sentences are there. */
export const expressionProblem: InWords = diagnostic => inWords(diagnostic)
