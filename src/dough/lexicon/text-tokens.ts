import { folded, isPlain } from './folded.js'

/** A piece of a row of text; `at` and `end` are offsets into that row. */
export interface Token {
  readonly kind: 'number' | 'fraction' | 'word' | 'mark'
  readonly text: string // as written, but for digits of other scripts, which are 0–9
  readonly low: string // lower case, NFC
  readonly key: string // lower case without accents, for looking words up
  readonly at: number
  readonly end: number
  readonly gap: boolean // white space stands before it
  readonly wide: boolean // … a tab, or three spaces and more: another column
}

const number = /[.,]?\d+(?:[.,]\d+)*(?:[eE][+-]?\d{1,3}(?![\p{L}\d]))?/uy
const fraction = /[¼-¾⅐-⅞]/
const word = /\p{L}[\p{L}\p{M}\d]*(?:-\p{L}[\p{L}\p{M}]*)*/uy
const letters = /\p{L}[\p{L}\p{M}]*(?:-\p{L}[\p{L}\p{M}]*)*/uy
const nothing = /^[\s\p{M}\u200b\u200e\u200f\u061c]$/u // between tokens; marks that go with no letter are passed over

/** Before a hyphen these are numbers of their own: `demi-litre`, `half-teaspoon`. */
const halves = /^(demie?|half|quart|quarter|(?:one|two|three)(?=-(?:hal|quarter|third|eighth)))-/i
/** French words of one letter that an apostrophe ties to the next: `d’eau`. */
const apostrophes = new Set(["'", '’', '‘', '´'])

/** `.25 oz`, `,25 oz`: a decimal number without its nought. */
const isBareDecimal = (row: string, at: number): boolean =>
  (row[at] === '.' || row[at] === ',') &&
  /\d/.test(row[at + 1] ?? '') &&
  (at === 0 || (row[at] === '.' && /[\s(~≈]/.test(row[at - 1]!)))

const zeros = Array.from('٠۰०০０', zero => zero.charCodeAt(0))
/** Arabic and other digits and full-width signs, as the rest of the world's keyboards have them; as long as it was. */
export const withPlainDigits = (text: string): string =>
  isPlain(text)
    ? text
    : text
        .replace(/[٠-٩۰-۹०-९০-৯０-９]/g, digit => {
          const code = digit.charCodeAt(0)
          return String(code - zeros.find(zero => code >= zero && code <= zero + 9)!)
        })
        .replace(/[％٪]/g, '%')
        .replace(/[٫．]/g, '.')
        .replaceAll('−', '-')

function tokenOf(kind: Token['kind'], row: string, before: number, at: number, end: number): Token {
  const text = row.slice(at, end)
  const isSimple = kind !== 'word' || isPlain(text)
  const low = (isSimple ? text : text.normalize('NFC')).toLowerCase()
  return {
    kind,
    text,
    low,
    key: isSimple ? low : folded(text),
    at,
    end,
    gap: at > before,
    wide: at - before >= 3 || (at > before && row.slice(before, at).includes('\t')),
  }
}

const endOf = (pattern: RegExp, row: string, at: number): number => {
  pattern.lastIndex = at
  return pattern.test(row) ? pattern.lastIndex : at
}

/** The words, numbers and marks of a row, from left to right. */
export function tokensOf(written: string): Token[] {
  const row = withPlainDigits(written)
  const tokens: Token[] = []
  let before = 0
  const add = (kind: Token['kind'], at: number, end: number): number => {
    tokens.push(tokenOf(kind, row, before, at, end))
    before = end
    return end
  }
  for (let at = 0; at < row.length; ) {
    const character = row[at]!
    if (character === ' ') {
      at++
      continue
    }
    if ((character >= '0' && character <= '9') || isBareDecimal(row, at)) {
      at = add('number', at, endOf(number, row, at))
      continue
    }
    // `1lb2oz`, `1h30`
    const afterNumber = tokens.at(-1)?.kind === 'number' && before === at
    const end = endOf(afterNumber ? letters : word, row, at)
    if (end > at) {
      const half = row.slice(at, at + 8).includes('-') ? halves.exec(row.slice(at, end))?.[1] : undefined
      if (half) add('mark', add('word', at, at + half.length), at + half.length + 1)
      at = half ? add('word', at + half.length + 1, end) : add('word', at, end)
      continue
    }
    const whole = String.fromCodePoint(row.codePointAt(at)!)
    if (nothing.test(whole)) at += whole.length
    else at = add(fraction.test(whole) ? 'fraction' : 'mark', at, at + whole.length)
  }
  return tokens
}

export const isApostrophe = (token: Token | undefined): boolean =>
  token !== undefined && apostrophes.has(token.text)

/** Does this token follow the one before it without a space? */
export const isGlued = (token: Token | undefined): boolean => token !== undefined && !token.gap
