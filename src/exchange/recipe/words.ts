import type { CountsAs } from '../../dough/document/formula.js'
import { numberText } from '../../dough/lexicon/digits.js'
import { guessSentences, type WrittenGuess } from '../../dough/lexicon/guess-words.js'
import { type Sentences, wording } from '../../engine/index.js'
import { type ReasonOf, sentencesOf } from '../values/templates.js'

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

/** An earlier stage that was taken, or a share of it. */
interface Taken {
  readonly code: 'taken'
  readonly share: number | 'rest'
  readonly stage: string
  readonly grams: number // of the whole stage
  readonly before: number // grams taken by other lines, where the rest is meant
}

const rounded = (value: number): string => String(Number(value.toPrecision(3)))
const inGrams = (grams: number): string => `${numberText(Number(grams.toFixed(2)))} g`

function taken({ share, stage, grams, before }: Taken): string {
  const lines = `its lines add to ${inGrams(grams)}`
  if (share === 'rest' && before > 0)
    return `The rest of ${stage} was taken: ${lines}, ${inGrams(before)} of it taken before.`
  if (share === 'rest' || share === 1) return `All of ${stage} was taken: ${lines}.`
  return `${numberText(Number((share * 100).toFixed(1)))} % of ${stage} was taken: ${lines}.`
}

function alsoGiven({ typed, taken, more, grams, by, unknown }: Comparison): string {
  const also = `Also given as ${typed}`
  if (unknown) return `${also}, which the larder cannot compare; ${taken} was taken.`
  if (more === undefined) return `${also}; ${taken} was taken.`
  const weighs = grams === undefined ? '' : `, ${rounded(grams)} g by the larder’s ${by}`
  const much = `${rounded(Math.abs(more))} % ${more > 0 ? 'more' : 'less'}`
  return `${also}${weighs}: ${Math.abs(more) < 0.05 ? 'the same' : much}. ${taken} was taken.`
}

const lines = {
  ofEach: '{count} of {one} each: {read}.',
  ofAllTogether: '{one} was taken for all of {count} together.',
  nobodyKnows: 'How much {typed} is nobody can say: type an amount.',
  noUnit: 'No unit is given: taken as {read}.',
  notCounted: '“{typed}” stands in the note and was not counted.',
  notUnderstood: '“{typed}” was not understood.',
  eachOfSeveral: 'So much of each is meant: make a line of every one.',
  forUse: 'The text says it is for {purpose}: leave it out if it does not go into the dough.',
  noAmount: 'No amount is given for {ingredient}: type one.',
  whichYeast: 'Fresh, active dry and instant yeast differ: say which it is.',
  countsAs: '{ingredient} is not in the larder: it was taken to count as {kind:kind}.',
  starterWithin: '“{written}” within {stage} was taken as {as}, at 100 %.',
  takenByNoLine: 'No line names {stage}: it was taken to go into {into}.',
} as const

const said = {
  kind: (kind: CountsAs['kind']) => (kind === 'starter' ? 'a starter at 100 %' : kind),
}

/** What was guessed of a line or is to be asked about it, with its figures. */
export type LineReason = Comparison | Taken | WrittenGuess | ReasonOf<typeof lines, typeof said>

/** The sentence of each reason, by its code. */
export const lineSentences: Sentences<Exclude<LineReason, WrittenGuess>> = { ...sentencesOf(lines, said), alsoGiven, taken }

/** A reason of a line with its sentence. */
export const lineReason = wording<LineReason>({ ...guessSentences, ...lineSentences })

const advice = 'Write it as “20 g salt”, or leave it out.'
const rests = {
  amountsNotTaken: 'The amounts in it were not taken as lines.',
  noIngredient: `It has an amount and no ingredient. ${advice}`,
  nothingKnown: `It names no amount and no ingredient known. ${advice}`,
  tooLong: 'It is too long for a row of a recipe. Break it into several.',
  amountOfRow: 'It is the amount of row {row}.',
} as const

/** Why a row is no line, where that is to be said. */
export type RestReason = ReasonOf<typeof rests, typeof said>
export const restSentences: Sentences<RestReason> = sentencesOf(rests, said)

/** What is to be said of a row of which no line was made, with its sentence. */
export const restReason = wording<RestReason>(restSentences)

const recipes = {
  recipeRowNotUnderstood: 'Row {row}: {why}',
  recipeWithoutIngredient: 'No ingredient was found in this text. Write each with its amount: 500 g flour.',
} as const
export const recipeSentences: Sentences<ReasonOf<typeof recipes, typeof said>> = sentencesOf(recipes, said)

/** A problem of a whole recipe with its sentence. */
export const recipeProblem = wording(recipeSentences)
