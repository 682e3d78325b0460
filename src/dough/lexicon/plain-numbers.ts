import { type DecimalMark, readDigits, settled } from './digits.js'

/** What was typed of an amount or a calculation, without the “=” with which other programs begin one. Alone or doubled it stays. */
export const typedText = (typed: string): string => typed.trim().replace(/^[=＝]\s*(?=[^=＝\s])/, '')

/** A number that could be read in two ways, as typed and as read. */
export interface Doubt {
  readonly typed: string
  readonly read: string
}

/** A doubt, and where its number begins in the text with plain numbers. */
export interface PlacedDoubt extends Doubt {
  readonly at: number
}

export interface PlainNumbers {
  readonly text: string // with decimal points, no thousands separators, and commas between arguments
  readonly doubts: readonly PlacedDoubt[]
  readonly signs: { readonly '.': number; readonly ',': number } // numbers that can only have this decimal mark
}

interface NumberReading {
  readonly read: string
  readonly sign?: DecimalMark
  readonly doubtful?: true
}

/** `1,5` `1.234,50` `1,000`: which mark is the decimal, and is there a doubt? */
function readNumber(typed: string, mark: DecimalMark): NumberReading {
  const number = readDigits(typed)
  if (!number) return { read: typed }
  const { text, other } = settled(number, !typed.includes(mark))
  const read = /^[.,]/.test(typed) ? text.slice(1) : text // `,5` stays `.5`
  if (!other) return number.mark ? { read, sign: number.mark } : { read }
  return mark === '.' && typed.includes('.') ? { read } : { read, doubtful: true }
}

/** Does the call opened at `from` separate its arguments by semicolons, as where the comma is decimal? */
function hasSemicolons(text: string, from: number): boolean {
  let depth = 0
  for (let i = from; i < text.length; i++) {
    if (text[i] === '(') depth++
    else if (text[i] === ')' && --depth === 0) return false
    else if (text[i] === ';' && depth === 1) return true
  }
  return false
}

const word = /[\p{L}\p{M}_][\p{L}\p{M}\p{N}_.]*/uy
// a space, an apostrophe or a no-break space between thousands, but not the mixed number `1 100/3`
const withGaps = /\d{1,3}(?:[ '’\u00a0\u2009\u202f]\d{3})+(?![\d/]|\s*\/)(?:[.,]\d+)?/y
const digits = /\d+(?:[.,]\d+)*|[.,]\d+/y
const digitsAmongArguments = /\d+(?:\.\d+)*|\.\d+/y

function matchAt(pattern: RegExp, text: string, at: number): string | undefined {
  pattern.lastIndex = at
  return pattern.exec(text)?.[0]
}

/**
 * An amount with its numbers written the one way Tarebook stores them: decimal point, nothing between
 * thousands. `mark` is the decimal mark of the text where a number alone does not tell. Between the
 * brackets of a call a comma separates arguments, unless semicolons do: `min(1,5; 2)` is `min(1.5, 2)`.
 * All that is not a number stays as typed.
 */
export function plainNumbers(text: string, mark: DecimalMark): PlainNumbers {
  const doubts: PlacedDoubt[] = []
  const signs = { '.': 0, ',': 0 }
  const brackets: { call: boolean; semicolons: boolean }[] = []
  let plain = ''
  let lastIsWord = false // what came before is a name, so that a bracket here opens its arguments
  for (let i = 0; i < text.length; ) {
    const name = matchAt(word, text, i)
    if (name) {
      plain += name
      i += name.length
      lastIsWord = true
      continue
    }
    const inside = brackets.at(-1)
    const separates = inside?.call === true && !inside.semicolons && mark === '.'
    const glued = /[\p{L}\p{N}.,]$/u.test(text.slice(Math.max(0, i - 2), i))
    const typed = glued
      ? undefined
      : (matchAt(withGaps, text, i) ?? matchAt(separates ? digitsAmongArguments : digits, text, i))
    if (typed) {
      const { read, sign, doubtful } = readNumber(
        typed.replace(/[^\d.,]/g, ''),
        inside?.semicolons ? ',' : mark,
      )
      if (sign && (!inside?.call || inside.semicolons)) signs[sign]++
      if (doubtful) doubts.push({ typed, read, at: plain.length })
      plain += read
      i += typed.length
      lastIsWord = false
      continue
    }
    const character = text[i]!
    if (character === '(')
      brackets.push({ call: lastIsWord, semicolons: lastIsWord && hasSemicolons(text, i) })
    if (character === ')') brackets.pop()
    if (character === ';' && inside?.semicolons) plain += /\s/.test(text[i + 1] ?? ' ') ? ',' : ', '
    else plain += character === '\u2212' ? '-' : character
    if (!/\s/.test(character)) lastIsWord = false
    i++
  }
  return { text: plain, doubts, signs }
}

/**
 * The text with a doubt kept: between the digits of its number stands `,`, as where the point is the decimal mark, so
 * that `readingsInDoubt` finds it again.
 */
export const inDoubt = ({ text }: PlainNumbers, { typed, read, at }: PlacedDoubt): string =>
  `${text.slice(0, at)}${typed.replace('.', ',')}${text.slice(at + read.length)}`

/** The two readings of the first number of a kept text that is in doubt: `1` and `1000` of `1,000 %`. */
export function readingsInDoubt(
  text: string,
): { typed: string; readings: readonly [string, string] } | undefined {
  const { typed = '' } = plainNumbers(text, '.').doubts[0] ?? {}
  const number = readDigits(typed)
  return number?.other && { typed, readings: [String(number.value), number.other.text] }
}
