import { numberText } from '../../dough/amounts/written-numbers.js'
import type { Purpose } from './purposes.js'
import type { LineReason, RestReason } from './reasons.js'

/** What an ingredient is for, in the words of the screen. */
const purposes: Readonly<Record<Purpose, string>> = {
  glazing: 'for glazing',
  dusting: 'for dusting',
  greasing: 'for greasing',
  top: 'for the top',
  finish: 'for the finish',
  serving: 'for serving',
  work: 'for the work on it',
  tin: 'for the tin',
  tray: 'for the tray',
  basket: 'for what the dough lies in',
  bench: 'for the bench',
}

/** Measures that are smaller in America than in Britain. */
const inAmerica: Readonly<Record<string, string>> = {
  pint: 'A pint was read as the US pint of 2 cups; the imperial pint is 568 ml.',
  quart: 'A quart was read as the US quart of 4 cups; the imperial quart is 1137 ml.',
  gallon: 'A gallon was read as the US gallon of 16 cups; the imperial gallon is 4.546 l.',
}
const estimates: Readonly<Record<string, string>> = { pinch: 'pinch', 'knife tip': 'knife’s tip' }
const gramsOfEstimate = 0.3

const rounded = (value: number, digits = 3): string => String(Number(value.toPrecision(digits)))
const inGrams = (grams: number): string => `${numberText(Number(grams.toFixed(2)))} g`

function taken({ share, stage, grams, before }: LineReason & { code: 'taken' }): string {
  const lines = `its lines add to ${inGrams(grams)}`
  if (share === 'rest' && before > 0)
    return `The rest of ${stage} was taken: ${lines}, ${inGrams(before)} of it taken before.`
  if (share === 'rest' || share === 1) return `All of ${stage} was taken: ${lines}.`
  return `${numberText(Number((share * 100).toFixed(1)))} % of ${stage} was taken: ${lines}.`
}

function alsoGiven(reason: LineReason & { code: 'also given' }): string {
  const { typed, taken, more, grams, by, unknown } = reason
  const also = `Also given as ${typed}`
  if (unknown) return `${also}, which the larder cannot compare; ${taken} was taken.`
  if (more === undefined) return `${also}; ${taken} was taken.`
  const weighs = grams === undefined ? '' : `, ${rounded(grams)} g by the larder’s ${by}`
  const differs =
    Math.abs(more) < 0.05 ? 'the same' : `${rounded(Math.abs(more))} % ${more > 0 ? 'more' : 'less'}`
  return `${also}${weighs}: ${differs}. ${taken} was taken.`
}

/** The sentence on what was guessed of a line, or is to be asked. */
export function lineWords(reason: LineReason): string {
  switch (reason.code) {
    case 'two readings':
      return `“${reason.typed}” was read as ${reason.read}.`
    case 'range':
      return `${reason.typed} is a range: its middle, ${reason.read}, was taken.`
    case 'times':
      return `${reason.typed}: ${numberText(reason.times)} times ${reason.one}.`
    case 'of each':
      return `${reason.count} of ${reason.one} each: ${reason.read}.`
    case 'of all together':
      return `${reason.one} was taken for all of ${reason.count} together.`
    case 'converted':
      return `Converted to ${reason.read}.`
    case 'letter':
      return reason.unit === 'tsp' ? '“t” was read as a teaspoon.' : '“T” was read as a tablespoon.'
    case 'us measure':
      return inAmerica[reason.unit] ?? `It was read as the US measure, ${reason.read}.`
    case 'metric pound':
      return 'A “livre” was read as 500 g.'
    case 'other cup':
      return 'A “tasse” was read as a US cup of 237 ml; others are of 250 ml.'
    case 'stick':
      return `A stick of butter is 4 oz, so this is ${reason.read}.`
    case 'estimate': {
      const what = estimates[reason.unit] ?? reason.unit
      const all = reason.number === 1 ? '' : `, so this is ${reason.read}`
      return `A ${what} was taken as ${gramsOfEstimate} g${all}; weigh yours.`
    }
    case 'unknown measure':
      return `How much ${reason.typed} is nobody can say: type an amount.`
    case 'no unit':
      return `No unit is given: taken as ${reason.read}.`
    case 'also given':
      return alsoGiven(reason)
    case 'not counted':
      return `“${reason.typed}” stands in the note and was not counted.`
    case 'not understood':
      return `“${reason.text}” was not understood.`
    case 'each of several':
      return 'So much of each is meant: make a line of every one.'
    case 'for use':
      return `The text says it is ${purposes[reason.purpose]}: leave it out if it does not go into the dough.`
    case 'no amount':
      return `No amount is given for ${reason.ingredient}: type one.`
    case 'which yeast':
      return 'Fresh, active dry and instant yeast differ: say which it is.'
    case 'counts as': {
      const kind = reason.kind === 'starter' ? 'a starter at 100 %' : reason.kind
      return `${reason.ingredient} is not in the larder: it was taken to count as ${kind}.`
    }
    case 'starter within':
      return `“${reason.written}” within ${reason.stage} was taken as ${reason.as}, at 100 %.`
    case 'taken':
      return taken(reason)
    case 'taken by its weight':
      return `“${reason.written}” was taken as ${reason.stage}, which weighs as much.`
    case 'taken by no line':
      return `No line names ${reason.stage}: it was taken to go into ${reason.into}.`
  }
}

/** The sentence on a row of which no line was made. */
export function restWords(reason: RestReason): string {
  const advice = 'Write it as “20 g salt”, or leave it out.'
  switch (reason.code) {
    case 'amounts not taken':
      return 'The amounts in it were not taken as lines.'
    case 'no ingredient':
      return `It has an amount and no ingredient. ${advice}`
    case 'nothing known':
      return `It names no amount and no ingredient known. ${advice}`
    case 'too long':
      return 'It is too long for a row of a recipe. Break it into several.'
    case 'amount of a row':
      return `It is the amount of row ${reason.row}.`
  }
}

/** The problem of a text in which nothing was found. */
export const nothingFound = 'No ingredient was found in this text. Write each with its amount: 500 g flour.'
