import { type Sentences, wording } from '../../engine/index.js'

/** Why an amount is not understood, besides what an expression can get wrong. */
export type AmountDiagnostic =
  | { readonly code: 'amountInTwoWays'; readonly typed: string; readonly readings: readonly [string, string] }
  | { readonly code: 'amountSaysYesOrNo'; readonly typed: string }
  | { readonly code: 'unknownMeasure'; readonly number: string; readonly word: string }
  | { readonly code: 'notAnAmount'; readonly typed: string }

/** Of what is not understood, until the sentences that say why are there. */
export const asItIsWritten = 'This cannot be worked out as it is written.'

export const amountSentences: Sentences<AmountDiagnostic> = {
  amountInTwoWays: ({ readings: [decimal, thousands] }) =>
    `This number can be read in two ways: type ${decimal} or ${thousands}, whichever is meant.`,
  amountSaysYesOrNo: ({ typed }) => `${typed} says yes or no; an amount is a weight or a percentage.`,
  unknownMeasure: ({ number, word }) =>
    `${number} ${word}: ${word} is not a unit known here. Write g, kg, oz, lb, ml, dl, tsp, tbsp, cup or each, such as 90 g; to multiply write ${number}*${word}.`,
  notAnAmount: ({ typed }) =>
    `${typed} is not understood: write an amount such as 90 g, 20 %, 2 1/2 tsp, 1 lb 4 oz or 3 each; for a calculation put +, -, * or / in between.`,
}

/** A diagnostic of this room with its sentence. */
export const amountProblem = wording(amountSentences)
