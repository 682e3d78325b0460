import { ExpressionError } from './problem.js'

/** A piece of a typed text. `at` and `length` are UTF-16 offsets into that text. */
export interface Token {
  readonly kind: 'number' | 'fraction' | 'word' | 'symbol'
  readonly text: string // word: lower case, NFC; symbol: its plain form; otherwise as written
  readonly value: number // of a number or a fraction (½), otherwise 0
  readonly whole: boolean // a number written as digits only, so that it may stand in 2 1/2
  readonly point: number // where the decimal mark stands in the text, -1 for none
  readonly at: number
  readonly length: number
}

export type Decimal = '.' | ','

const mostCharacters = 512
const mostTokens = 256

/** A letter, mark or number that may go on a name; the fractions and small digits mean arithmetic. */
const nameCharacter = '(?![²³¹¼-¾⅐-⅟↉])[\\p{L}\\p{M}\\p{N}_]'
const nameStart = '[\\p{L}_]'
const word = `${nameStart}(?:${nameCharacter})*`
const grouped = "\\p{Nd}{1,3}(?:[\\u00a0\\u2009\\u202f'’]\\p{Nd}{3})+(?!\\p{Nd})"
const exponent = '(?:[eE][-+−–]?\\p{Nd}+)?'

// Marks that only steer the direction of the line come along with pasted text; they are passed over as spaces are.
const spaces = /[\s\u200b\u200e\u200f\u061c]+/uy
const words = new RegExp(`${word}(?:\\.${word})*`, 'uy')
const fractions = /[¼-¾⅐-⅞↉]/uy
const numbers = { '.': numberPattern('.．'), ',': numberPattern(',.．') }
const symbols = /[<>=!]=|=\u0338|./suy

function numberPattern(marks: string): RegExp {
  return new RegExp(`(?:(?:${grouped}|\\p{Nd}+)(?:[${marks}]\\p{Nd}+)?|[${marks}]\\p{Nd}+)${exponent}`, 'uy')
}

const plainForms = new Map([
  ...Array.from('×·✕⋅', c => [c, '*'] as const),
  ...Array.from('÷∕⁄', c => [c, '/'] as const),
  ...Array.from('−–', c => [c, '-'] as const),
  ['≤', '<='],
  ['≥', '>='],
  ['≠', '!='],
  ['=\u0338', '!='], // ≠ as two characters
])

/** Splits a text; refuses one that is too long. What the tokens mean together is not looked at here. */
export function tokensOf(text: string, decimal: Decimal): Token[] {
  if (text.length > mostCharacters) {
    throw new ExpressionError({ code: 'tooManyCharacters', most: mostCharacters }, mostCharacters, 1)
  }
  const tokens: Token[] = []
  let at = 0
  const take = (pattern: RegExp) => {
    pattern.lastIndex = at
    return pattern.exec(text)?.[0] ?? ''
  }
  const add = (
    kind: Token['kind'],
    written: string,
    length: number,
    value = 0,
    whole = false,
    point = -1,
  ) => {
    tokens.push({ kind, text: written, value, whole, point, at, length })
  }

  for (;;) {
    if (mayBeSpace(text, at)) at += take(spaces).length
    if (at >= text.length) return tokens
    if (tokens.length >= mostTokens) {
      throw new ExpressionError({ code: 'tooManyParts', most: mostTokens }, at, 1)
    }
    const first = text[at]!
    const number = /[^a-z_()+*/%]/.test(first) ? take(numbers[decimal]) : ''
    const name = number || first < '@' ? '' : take(words)
    let length = number.length || name.length || 1
    if (number) {
      const { value, whole, point } = readNumber(number, at, decimal)
      add('number', number, length, value, whole, point)
    } else if (name) add('word', name.toLowerCase().normalize('NFC'), length)
    else if (first === '²' || first === '³') {
      add('symbol', '^', 1)
      add('number', first, 1, first === '²' ? 2 : 3)
    } else if (take(fractions)) add('fraction', first, 1, readFraction(first))
    else {
      const symbol = take(symbols)
      length = symbol.length
      add('symbol', plainForms.get(symbol) ?? halfWidth(symbol), length)
    }
    at += length
  }
}

/** Asked first because patterns cost: most characters of most texts are plain letters, digits and signs. */
const mayBeSpace = (text: string, at: number): boolean => !(text[at]! > ' ' && text[at]! <= '~')

function readNumber(written: string, at: number, decimal: Decimal) {
  if (decimal === '.' && /^[\d.]+$/.test(written)) {
    const point = written.indexOf('.')
    return { value: Number(written), whole: point < 0, point: point < 0 ? -1 : at + point }
  }
  const mark = written.search(/[.,．]/)
  const plain = Array.from(written.replace(/[\u00a0\u2009\u202f'’]/g, ''), asciiDigit).join('')
  if (decimal === ',' && /^[1-9]\d{0,2}\.\d{3}$/.test(plain)) {
    const [thousands, rest] = plain.split('.')
    throw new ExpressionError(
      { code: 'numberInTwoWays', typed: written, readings: [`${thousands}${rest}`, `${thousands},${rest}`] },
      at,
      written.length,
    )
  }
  const value = Number(plain.replace(',', '.'))
  if (!Number.isFinite(value)) {
    throw new ExpressionError({ code: 'numberTooLarge', typed: written }, at, written.length)
  }
  return { value, whole: /^\d+$/.test(plain), point: mark < 0 ? -1 : at + mark }
}

/** A decimal digit of any script as 0–9: Unicode keeps each script's ten digits in a row, zero first. */
function asciiDigit(character: string): string {
  if (character === '−' || character === '–') return '-'
  if (character === '．') return '.'
  if (character < '\u0080') return character
  const code = character.codePointAt(0)!
  let before = 0
  while (/\p{Nd}/u.test(String.fromCodePoint(code - before - 1))) before++
  return String(before % 10)
}

function readFraction(character: string): number {
  const [over, under] = character.normalize('NFKD').split('⁄') as [string, string]
  return Number(over) / Number(under)
}

/** The full-width signs of East Asian keyboards as their plain ones. */
function halfWidth(symbol: string): string {
  return symbol >= '！' && symbol <= '～' ? String.fromCharCode(symbol.charCodeAt(0) - 0xfee0) : symbol
}

/**
 * A name that expressions can use for an ingredient: `Bread flour` is `bread_flour`, `T65 – bio` is
 * `t65_bio`, `00 flour` is `_00_flour`. A name so made stays itself.
 */
export function nameFor(words: string): string {
  const kept = words
    .toLowerCase()
    .replace(/['’]/g, '')
    .normalize('NFC')
    .replace(new RegExp(`(?:(?!${nameCharacter}).)+`, 'gsu'), '_')
    .replace(/_+/g, '_')
    .replace(/^_|_$/g, '')
  return /^\p{L}/u.test(kept) && !joiningWords.has(kept) ? kept : `_${kept}`
}

/** The words that join conditions, and so cannot be names. */
export const joiningWords: ReadonlySet<string> = new Set(['and', 'or', 'not'])
