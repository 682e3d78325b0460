import { type Sentences, type Worded, wording } from '../../engine/index.js'
import type { CountsAs, Hold } from '../document/formula.js'
import type { ReadingName } from '../document/reading-names.js'
import { grams, heldValue, holdWords, per100, readingWords } from '../document/words.js'

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
  | ({ readonly code: 'lineNotConfirmed' } & NamedLine)
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
  | ({
      readonly code: 'baseInOtherUnit'
      readonly isFlour: boolean
      readonly unit: '%' | 'g' // in which it is written, and the others are not
      readonly weight: number
      readonly share: number // of the base
      readonly base: number
      readonly sum: number | undefined // of all base lines, where the percentages are 100 % without those in grams
      readonly others: readonly string[] // amounts that may be meant instead
    } & NamedLine)
  | {
      readonly code: 'stageShort' | 'stageLeftOver'
      readonly stage: string
      readonly made: number
      readonly taken: number
    }
  // Of the whole.
  | { readonly code: 'holdWithoutLine'; readonly hold: Hold }
  | {
      readonly code: 'holdOutOfReach'
      readonly hold: Hold
      readonly ingredient: string // of the line that gives
      readonly nearest: number // how far it goes towards what it is held at, rounded to where it still goes
      readonly stay: readonly string[] // ingredients of lines that stay as they are
    }
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
const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
const here = ({ line, stage }: NamedLine): string => `${line || 'A line'} in ${stage}`

export const remarkSentences: Sentences<RemarkDiagnostic> = {
  lineWithoutFigure: ({ why, ...line }) => `${here(line)}: ${why.message}`,
  lineWithoutAmount: line => `${here(line)} has no amount yet.`,
  lineNotConfirmed: line => `${here(line)} was guessed. Look whether it is right.`,
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
  baseInOtherUnit: ({ isFlour, unit, weight, share, base, sum, ...line }) => {
    const lines = isFlour ? 'flours' : 'base lines'
    const own = unit === 'g' ? grams(weight) : per100(share)
    const its = `${here(line)} is ${own}, and the other ${lines} are in ${unit === 'g' ? 'percentages' : 'grams'}`
    if (sum !== undefined)
      return `${its}: ${unit === 'g' ? per100(share) : grams(weight)} on top, so the ${lines} add to ${per100(sum)} of ${grams(base)}.`
    if (unit === 'g') return `${its}: it is the ${per100(share)} that they leave, so 100 % is ${grams(base)}.`
    return `${its}: it is ${grams(weight)}, since 100 % is ${grams(base)} with it.`
  },
  stageShort: ({ stage, made, taken }) => `${asWritten(stage, made, taken)}: ${grams(taken - made)} short.`,
  stageLeftOver: ({ stage, made, taken }) =>
    `${asWritten(stage, made, taken)}. ${grams(made - taken)} is left.`,
  holdWithoutLine: ({ hold }) => `${holdWords(hold, 'A line')}, but the line that gave is gone. Release it.`,
  holdOutOfReach: ({ hold, ingredient, nearest, stay }) => {
    const far = hold.value > nearest ? 'at most' : 'at least'
    const lines = stay.length > 3 || stay.length === 0 ? 'the other lines' : listed(stay)
    const limit = heldValue({ ...hold, value: nearest })
    return `${capital(holdWords(hold, ingredient, 'cannot be'))}: ${far} ${limit} while ${lines} stay${stay.length === 1 ? 's' : ''}.`
  },
  batchNotWorkedOut: ({ why }) => `The batch cannot be worked out: ${why.message}`,
  restOfFlour: ({ ingredient, share }) =>
    `${ingredient} makes up the rest of the flour: ${per100(share)} of it, since a starter brings some of its own.`,
  meaningUnlikeLarder: ({ ingredient, countsAs }) => {
    const what = countsAs.kind === 'starter' ? `a starter at ${per100(countsAs.hydration)}` : countsAs.kind
    return `${ingredient} counts as ${what} in this formula, not as your larder has it.`
  },
  noFlour: 'There is no flour in this formula yet, so there are no percentages of flour.',
  readingUnusual: ({ reading, value, usual: [low, high] }) =>
    `${capital(readingWords[reading])} is ${per100(value)}; usual is ${per100(low)} to ${per100(high)}.`,
}

/** What is noticed with its sentence. */
export const remark: (diagnostic: RemarkDiagnostic) => Worded<RemarkDiagnostic> = wording(remarkSentences)
