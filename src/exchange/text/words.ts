import { type Sentences, wording } from '../../engine/index.js'
import { quoted } from '../csv/row.js'

/** What reading a text tells. `row` is a line of the text. */
export type TextDiagnostic =
  | { readonly code: 'textTooLong' | 'textWithoutFormula' }
  | { readonly code: 'textBaseNotFound'; readonly stage: string }
  | { readonly code: 'textGiverNotFound'; readonly row: number; readonly ingredient: string }
  | {
      readonly code: 'textBeforeTitle' | 'textNoLine' | 'textNoStep' | 'textNotUnderstood'
      readonly row: number
      readonly text: string
    }

export const textSentences: Sentences<TextDiagnostic> = {
  textTooLong: 'This text is too long to be a formula. Bring in a file instead.',
  textWithoutFormula: 'There is no formula in this text.',
  textBaseNotFound: ({ stage }) => `${stage} has no line of the name that is its base.`,
  textGiverNotFound: ({ row, ingredient }) =>
    `Line ${row} says that ${quoted(ingredient)} gives, but the final dough has no such line.`,
  textBeforeTitle: ({ row, text }) => `Line ${row} comes before any title and was left out: ${quoted(text)}.`,
  textNoLine: ({ row, text }) => `Line ${row} is not a line of a stage and was left out: ${quoted(text)}.`,
  textNoStep: ({ row, text }) =>
    `Line ${row} is not a step of a method and was left out: ${quoted(text)}. A step says what is done, hands, wait or bake, and its time.`,
  textNotUnderstood: ({ row, text }) => `Line ${row} is not understood and was left out: ${quoted(text)}.`,
}

/** A diagnostic of a text with its sentence. */
export const textProblem = wording(textSentences)

/** `Listed, of the European Union's list: milk in Butter.` */
export const listedSentence = (list: string, listed: readonly string[]): string =>
  `Listed, of ${list}: ${listed.length > 0 ? listed.join('; ') : 'nothing the larder knows of'}.`

/** `changes`: `true hydration 71.2 % instead of 70 %`. */
export const measuredSentence = (changes: readonly string[]): string =>
  `Measured so, the dough has ${changes.join(' and ')}.`
