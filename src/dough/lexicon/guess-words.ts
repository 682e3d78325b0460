import type { Sentences } from '../../engine/index.js'
import { numberText } from './digits.js'
import type { AmountGuess } from './written-figures.js'

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

/** Apart from the room’s other words, since the page that a baker starts with reads no text of others. */
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
  'unknown measure': ({ typed }) => `What ${typed} weighs is not known: type an amount.`,
}
