import type { CountsAs } from '../../dough/document/formula.js'
import { numberText } from '../../dough/lexicon/digits.js'
import { guessSentences, type WrittenGuess } from '../../dough/lexicon/guess-words.js'
import { type Sentences, wording } from '../../engine/index.js'
import { type ReasonOf, sentencesOf } from '../values/templates.js'

const rounded = (value: number): string => String(Number(value.toPrecision(3)))

/** How figures are said. */
const said = {
  rounded,
  grams: (grams: number) => `${numberText(Number(grams.toFixed(2)))} g`,
  per100: (share: number) => `${numberText(Number((share * 100).toFixed(1)))} %`,
  kind: (kind: CountsAs['kind']) => (kind === 'starter' ? 'a starter at 100 %' : kind),
  more: (more: number) =>
    Math.abs(more) < 0.05 ? 'the same' : `${rounded(Math.abs(more))} % ${more > 0 ? 'more' : 'less'}`,
}

const lines = {
  ofEach: '{count} of {one} each: {read}.',
  ofAllTogether: '{one} was taken for all of {count} together.',
  nobodyKnows: 'What {typed} weighs is not known: type an amount.',
  cupOrSpoon: '“{typed}” was read as a cup, a tasse; it may be a teaspoon.',
  spoonOrCup: '“{typed}” was read as a teaspoon; it may be a cup, a tasse.',
  portion: '{typed} of yeast was taken as {read}, as most shops sell it; weigh yours.',
  doubtfulPart: '“{typed}” was taken as {read}: a whole number and a part of one.',
  noUnit: 'No unit is given: taken as {read}.',
  notCounted: '“{typed}” stands in the note and was not counted.',
  notUnderstood: '“{typed}” was not understood.',
  eachOfSeveral: 'So much of each is meant: make a line of every one.',
  forUse: 'The text says it is for {purpose}: leave it out if it does not go into the dough.',
  labelled: '“{label}” stands before it: leave it out if it does not go into the dough.',
  noAmount: 'No amount is given for {ingredient}: type one.',
  writtenShort: 'What {ingredient} is short for is not known: write it in full.',
  whichYeast: 'Fresh, active dry and instant yeast differ: say which it is.',
  countsAs: '{ingredient} is not in the larder: it was taken to count as {kind:kind}.',
  starterWithin: '“{written}” within {stage} was taken as {as}, at 100 %.',
  alsoGiven: 'Also given as {typed}; {taken} was taken.',
  alsoNotCompared: 'Also given as {typed}, which the larder cannot compare; {taken} was taken.',
  alsoMeasured: 'Also given as {typed}: {more:more}. {taken} was taken.',
  alsoWeighed:
    'Also given as {typed}, {grams:rounded} g by the larder’s {by}: {more:more}. {taken} was taken.',
  allTaken: 'All of {stage} was taken: its lines add to {grams:grams}.',
  allButTaken: 'All of {stage} but {kept:grams} was taken: its lines add to {grams:grams}.',
  restTaken:
    'The rest of {stage} was taken: its lines add to {grams:grams}, {before:grams} of it taken before.',
  shareTaken: '{share:per100} of {stage} was taken: its lines add to {grams:grams}.',
  corrected: 'The text says something else of {ingredient} further on: “{typed}”.',
  perhapsTaken: '“{like}” was taken to be {stage}, which no other line takes.',
  takenByNoLine: 'No line names {stage}: it was taken to go into {into}.',
} as const

/** What was guessed of a line or is to be asked about it, with its figures. */
export type LineReason = WrittenGuess | ReasonOf<typeof lines, typeof said>

/** The sentence of each reason, by its code. */
export const lineSentences: Sentences<Exclude<LineReason, WrittenGuess>> = sentencesOf(lines, said)

/** A reason of a line with its sentence. */
export const lineReason = wording<LineReason>({ ...guessSentences, ...lineSentences })

const advice = 'Write it as “20 g salt”, or leave it out.'
const rests = {
  amountsNotTaken: 'The amounts in it were not taken as lines.',
  noIngredient: `It has an amount and no ingredient. ${advice}`,
  nothingKnown: `It names no amount and no ingredient known. ${advice}`,
  tooLong: 'It is too long for a row of a recipe. Break it into several.',
  saidBefore: 'It says once more what the stages hold: theirs were taken.',
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
