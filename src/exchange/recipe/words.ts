import type { CountsAs } from '../../dough/document/formula.js'
import { numberText } from '../../dough/lexicon/digits.js'
import { guessSentences, type WrittenGuess } from '../../dough/lexicon/guess-words.js'
import { type Sentences, wording } from '../../engine/index.js'
import type { Purpose } from './kitchen-words.js'

/** A second measure beside the one that is taken. */
export interface Comparison {
  readonly code: 'alsoGiven'
  readonly typed: string
  readonly taken: string
  readonly agrees: boolean // so nearly that nothing is to be confirmed
  readonly more?: number // per cent that it is more than what is taken
  readonly grams?: number // what it weighs …
  readonly by?: string // … by this ingredient of the larder
  readonly unknown?: true // the larder cannot compare the two
}

/** What was guessed of a line or is to be asked about it, with its figures; `words.ts` has the sentences. */
export type LineReason =
  | Comparison
  | WrittenGuess
  | { readonly code: 'nobodyKnows' | 'notCounted' | 'notUnderstood'; readonly typed: string }
  | { readonly code: 'noUnit'; readonly read: string }
  | { readonly code: 'ofEach'; readonly count: string; readonly one: string; readonly read: string }
  | { readonly code: 'ofAllTogether'; readonly count: string; readonly one: string }
  | { readonly code: 'eachOfSeveral' | 'whichYeast' }
  | { readonly code: 'forUse'; readonly purpose: Purpose }
  | { readonly code: 'noAmount'; readonly ingredient: string }
  | { readonly code: 'countsAs'; readonly ingredient: string; readonly kind: CountsAs['kind'] }
  | { readonly code: 'starterWithin'; readonly written: string; readonly stage: string; readonly as: string }
  | {
      readonly code: 'taken'
      readonly share: number | 'rest'
      readonly stage: string
      readonly grams: number // of the whole stage
      readonly before: number // grams taken by other lines, where the rest is meant
    }
  | { readonly code: 'takenByNoLine'; readonly stage: string; readonly into: string }

/** Why a row is no line, where that is to be said. */
export type RestReason =
  | { readonly code: 'amountsNotTaken' | 'noIngredient' | 'nothingKnown' | 'tooLong' }
  | { readonly code: 'amountOfRow'; readonly row: number }

/** What is wrong with a recipe. `row` is 1-based, `why` a sentence on it. */
export type RecipeDiagnostic =
  | { readonly code: 'recipeRowNotUnderstood'; readonly row: number; readonly why: string }
  | { readonly code: 'recipeWithoutIngredient' }

type Of<Code> = Extract<LineReason, { readonly code: Code }>

const rounded = (value: number): string => String(Number(value.toPrecision(3)))
const inGrams = (grams: number): string => `${numberText(Number(grams.toFixed(2)))} g`

function taken({ share, stage, grams, before }: Of<'taken'>): string {
  const lines = `its lines add to ${inGrams(grams)}`
  if (share === 'rest' && before > 0)
    return `The rest of ${stage} was taken: ${lines}, ${inGrams(before)} of it taken before.`
  if (share === 'rest' || share === 1) return `All of ${stage} was taken: ${lines}.`
  return `${numberText(Number((share * 100).toFixed(1)))} % of ${stage} was taken: ${lines}.`
}

function alsoGiven({ typed, taken, more, grams, by, unknown }: Of<'alsoGiven'>): string {
  const also = `Also given as ${typed}`
  if (unknown) return `${also}, which the larder cannot compare; ${taken} was taken.`
  if (more === undefined) return `${also}; ${taken} was taken.`
  const weighs = grams === undefined ? '' : `, ${rounded(grams)} g by the larder’s ${by}`
  const much = `${rounded(Math.abs(more))} % ${more > 0 ? 'more' : 'less'}`
  return `${also}${weighs}: ${Math.abs(more) < 0.05 ? 'the same' : much}. ${taken} was taken.`
}

/** The sentence of each reason, by its code. */
export const lineSentences: Sentences<Exclude<LineReason, WrittenGuess>> = {
  ofEach: ({ count, one, read }) => `${count} of ${one} each: ${read}.`,
  ofAllTogether: ({ count, one }) => `${one} was taken for all of ${count} together.`,
  nobodyKnows: ({ typed }) => `How much ${typed} is nobody can say: type an amount.`,
  noUnit: ({ read }) => `No unit is given: taken as ${read}.`,
  alsoGiven: alsoGiven,
  notCounted: ({ typed }) => `“${typed}” stands in the note and was not counted.`,
  notUnderstood: ({ typed }) => `“${typed}” was not understood.`,
  eachOfSeveral: () => 'So much of each is meant: make a line of every one.',
  forUse: ({ purpose }) =>
    `The text says it is for ${purpose}: leave it out if it does not go into the dough.`,
  noAmount: ({ ingredient }) => `No amount is given for ${ingredient}: type one.`,
  whichYeast: () => 'Fresh, active dry and instant yeast differ: say which it is.',
  countsAs: ({ ingredient, kind }) =>
    `${ingredient} is not in the larder: it was taken to count as ${kind === 'starter' ? 'a starter at 100 %' : kind}.`,
  starterWithin: ({ written, stage, as }) => `“${written}” within ${stage} was taken as ${as}, at 100 %.`,
  taken,
  takenByNoLine: ({ stage, into }) => `No line names ${stage}: it was taken to go into ${into}.`,
}

/** A reason of a line with its sentence. */
export const lineReason = wording<LineReason>({ ...guessSentences, ...lineSentences })

const advice = 'Write it as “20 g salt”, or leave it out.'
export const restSentences: Sentences<RestReason> = {
  amountsNotTaken: () => 'The amounts in it were not taken as lines.',
  noIngredient: () => `It has an amount and no ingredient. ${advice}`,
  nothingKnown: () => `It names no amount and no ingredient known. ${advice}`,
  tooLong: () => 'It is too long for a row of a recipe. Break it into several.',
  amountOfRow: ({ row }) => `It is the amount of row ${row}.`,
}

/** What is to be said of a row of which no line was made, with its sentence. */
export const restReason = wording(restSentences)

export const recipeSentences: Sentences<RecipeDiagnostic> = {
  recipeRowNotUnderstood: ({ row, why }) => `Row ${row}: ${why}`,
  recipeWithoutIngredient: () =>
    'No ingredient was found in this text. Write each with its amount: 500 g flour.',
}

/** A problem of a whole recipe with its sentence. */
export const recipeProblem = wording(recipeSentences)
