import { type Sentences, type Worded, wording } from '../../engine/index.js'
import type { CountsAs, Hold } from '../document/formula.js'
import type { ReadingName } from '../document/reading-names.js'
import { grams, holdWords, per100, readingWords } from '../document/words.js'

/** A line by its ingredient, '' for none, and the name of its stage. */
export interface NamedLine {
  readonly line: string
  readonly stage: string
}

/**
 * What a sheet notices. Lines and stages go by their names; weights are grams and all else fractions of 1. `why` is another
 * room's reason, where that says it all.
 */
export type RemarkDiagnostic =
  // Of lines.
  | ({ readonly code: 'lineWithoutFigure'; readonly why: Worded } & NamedLine)
  | ({ readonly code: 'lineWithoutAmount' } & NamedLine)
  | { readonly code: 'lineWithoutIngredient'; readonly stage: string }
  | { readonly code: 'ingredientUnknown'; readonly ingredient: string }
  | {
      readonly code: 'scaleTooCoarse'
      readonly ingredient: string
      readonly weight: number
      readonly step: number
      readonly mayBeOff: number
    }
  | { readonly code: 'hydrationNotANumber'; readonly ingredient: string }
  // Of stages.
  | { readonly code: 'emptyStageTaken' | 'stageNotTaken'; readonly stage: string }
  | { readonly code: 'takenBeforeMixed'; readonly stage: string; readonly taken: string }
  | { readonly code: 'baseNotWhole'; readonly stage: string; readonly isFlour: boolean; readonly sum: number }
  | {
      readonly code: 'stageShort' | 'stageLeftOver'
      readonly stage: string
      readonly made: number
      readonly taken: number
    }
  // Of the whole.
  | { readonly code: 'holdWithoutLine'; readonly hold: Hold }
  | { readonly code: 'batchNotWorkedOut'; readonly why: Worded }
  | { readonly code: 'restOfFlour'; readonly ingredient: string; readonly share: number }
  | { readonly code: 'meaningUnlikeLarder'; readonly ingredient: string; readonly countsAs: CountsAs }
  | { readonly code: 'noFlour' }
  | {
      readonly code: 'readingUnusual'
      readonly reading: ReadingName
      readonly value: number
      readonly usual: readonly [low: number, high: number]
    }

const asWritten = (stage: string, made: number, taken: number): string =>
  `${stage} as written makes ${grams(made)} and ${grams(taken)} is taken`
const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
const here = ({ line, stage }: NamedLine): string => `${line || 'A line'} in ${stage}`

export const remarkSentences: Sentences<RemarkDiagnostic> = {
  lineWithoutFigure: ({ why, ...line }) => `${here(line)}: ${why.message}`,
  lineWithoutAmount: line => `${here(line)} has no amount yet.`,
  lineWithoutIngredient: ({ stage }) => `A line of ${stage} has an amount but no ingredient.`,
  ingredientUnknown: ({ ingredient }) =>
    `${ingredient} is not in the larder: only its weight is counted. Say what it counts as.`,
  scaleTooCoarse: ({ ingredient, weight, step, mayBeOff }) =>
    `${grams(weight)} of ${ingredient || 'a line'} on a scale of ${grams(step)} steps could be off by ${per100(mayBeOff)}: use a finer scale, or dilute it.`,
  hydrationNotANumber: ({ ingredient }) => `The hydration of ${ingredient} is not a percentage.`,
  emptyStageTaken: ({ stage }) => `${stage} has nothing in it yet, so no flour or water of it is counted.`,
  stageNotTaken: ({ stage }) => `No later stage takes ${stage} yet.`,
  takenBeforeMixed: ({ stage, taken }) =>
    `${stage} takes ${taken}, which is mixed after it. Move ${taken} earlier.`,
  baseNotWhole: ({ stage, isFlour, sum }) =>
    `The ${isFlour ? 'flours' : 'base lines'} of ${stage} add to ${per100(sum)}, not 100 %.`,
  stageShort: ({ stage, made, taken }) => `${asWritten(stage, made, taken)}: ${grams(taken - made)} short.`,
  stageLeftOver: ({ stage, made, taken }) =>
    `${asWritten(stage, made, taken)}. ${grams(made - taken)} is left.`,
  holdWithoutLine: ({ hold }) => `${holdWords(hold, 'A line')}, but the line that gave is gone. Release it.`,
  batchNotWorkedOut: ({ why }) => `The batch cannot be worked out: ${why.message}`,
  restOfFlour: ({ ingredient, share }) =>
    `${ingredient} makes up the rest of the flour: ${per100(share)} of it, since a starter brings some of its own.`,
  meaningUnlikeLarder: ({ ingredient, countsAs }) => {
    const what = countsAs.kind === 'starter' ? `a starter at ${per100(countsAs.hydration)}` : countsAs.kind
    return `${ingredient} counts as ${what} in this formula, not as your larder has it.`
  },
  noFlour: 'There is no flour in this formula yet, so nothing can be said per flour.',
  readingUnusual: ({ reading, value, usual: [low, high] }) =>
    `${capital(readingWords[reading])} is ${per100(value)}; usual is ${per100(low)} to ${per100(high)}.`,
}

/** What is noticed with its sentence. */
export const remark: (diagnostic: RemarkDiagnostic) => Worded<RemarkDiagnostic> = wording(remarkSentences)
