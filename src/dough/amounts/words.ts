import { type Sentences, wording } from '../../engine/index.js'
import type { AmountGuess } from './figures.js'
import { numberText } from './written-numbers.js'

/** Why an amount or a jotting is not understood, besides what an expression can get wrong. */
export type AmountDiagnostic =
  | { readonly code: 'amountInTwoWays'; readonly typed: string; readonly readings: readonly [string, string] }
  | { readonly code: 'amountSaysYesOrNo'; readonly typed: string }
  | { readonly code: 'unknownMeasure'; readonly number: string; readonly word: string }
  | { readonly code: 'notAnAmount'; readonly typed: string }
  // Names of jottings.
  | { readonly code: 'jottingWithoutName' }
  | { readonly code: 'jottingNameTaken'; readonly name: string; readonly by: 'jotting' | 'Tarebook' | 'unit' }
  | { readonly code: 'jottingNamedLike'; readonly name: string; readonly what: 'ingredient' | 'stage' }

export const amountSentences: Sentences<AmountDiagnostic> = {
  amountInTwoWays: ({ readings: [decimal, thousands] }) =>
    `This number can be read in two ways: type ${decimal} or ${thousands}, whichever is meant.`,
  amountSaysYesOrNo: ({ typed }) => `${typed} says yes or no; an amount is a weight or a percentage.`,
  unknownMeasure: ({ number, word }) =>
    `${number} ${word}: ${word} is no unit that is known here. Write g, kg, oz, lb, ml, dl, tsp, tbsp, cup or each, such as 90 g; to multiply write ${number}*${word}.`,
  notAnAmount: ({ typed }) =>
    `${typed} is not understood: write an amount such as 90 g, 20 %, 2 1/2 tsp, 1 lb 4 oz or 3 each; for a calculation put +, -, * or / in between.`,
  jottingWithoutName: () => 'A jotting needs a name, such as per_loaf.',
  jottingNameTaken: ({ name, by }) =>
    by === 'jotting'
      ? `There is a jotting called ${name} already.`
      : by === 'unit'
        ? `${name} is a unit; choose another name.`
        : `${name} is a name of Tarebook's own; choose another.`,
  jottingNamedLike: ({ name, what }) =>
    `${name} is ${what === 'stage' ? 'a stage' : 'an ingredient'} of this formula; choose another name.`,
}

/** A diagnostic of this room with its sentence. */
export const amountProblem = wording(amountSentences)

/** What was guessed of an amount as somebody else wrote it. */
export type WrittenGuess = AmountGuess & {
  readonly typed: string
  readonly number: number
  readonly unit: string // '' for none
  readonly read: string // as Tarebook writes it
}

/** Measures that are smaller in America than in Britain. */
const inAmerica: Readonly<Record<string, string>> = {
  pint: 'A pint was read as the US pint of 2 cups; the imperial pint is 568 ml.',
  quart: 'A quart was read as the US quart of 4 cups; the imperial quart is 1137 ml.',
  gallon: 'A gallon was read as the US gallon of 16 cups; the imperial gallon is 4.546 l.',
}

export const guessSentences: Sentences<WrittenGuess> = {
  'two readings': ({ typed, read }) => `“${typed}” was read as ${read}.`,
  range: ({ typed, read }) => `${typed} is a range: its middle, ${read}, was taken.`,
  times: ({ typed, times, one }) => `${typed}: ${numberText(times)} times ${one}.`,
  converted: ({ read }) => `Converted to ${read}.`,
  letter: ({ unit }) => (unit === 'tsp' ? '“t” was read as a teaspoon.' : '“T” was read as a tablespoon.'),
  'us measure': ({ unit, read }) => inAmerica[unit] ?? `It was read as the US measure, ${read}.`,
  'metric pound': () => 'A “livre” was read as 500 g.',
  'other cup': () => 'A “tasse” was read as a US cup of 237 ml; others are of 250 ml.',
  stick: ({ read }) => `A stick of butter is 4 oz, so this is ${read}.`,
  estimate: ({ unit, number, read }) =>
    `A ${unit === 'knife tip' ? 'knife’s tip' : unit} was taken as 0.3 g${number === 1 ? '' : `, so this is ${read}`}; weigh yours.`,
  'unknown measure': ({ typed }) => `How much ${typed} is nobody can say: type an amount.`,
}
