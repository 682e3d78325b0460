export type DecimalMark = '.' | ','

/** A number that could be read in two ways, as typed and as read. */
export interface Doubt {
  readonly typed: string
  readonly read: string
}

export interface PlainNumbers {
  readonly text: string // with decimal points, no thousands separators, and commas between arguments
  readonly doubts: readonly Doubt[]
  readonly signs: { readonly '.': number; readonly ',': number } // numbers that can only have this decimal mark
}

interface NumberReading {
  readonly read: string
  readonly sign?: DecimalMark
  readonly doubtful?: true
}

const grouped = /^\d{1,3}(?:[.,]\d{3})+$/

/** `1,5` `1.234,50` `1,000`: which mark is the decimal, and is there a doubt? */
function readNumber(typed: string, mark: DecimalMark): NumberReading {
  const marks = typed.replace(/\d/g, '')
  if (marks === '') return { read: typed }
  const last = marks.at(-1) as DecimalMark
  const other: DecimalMark = last === ',' ? '.' : ','
  const at = typed.lastIndexOf(last)
  const before = typed.slice(0, at)
  const after = typed.slice(at + 1)
  if (marks.length === 1) {
    if (after.length !== 3 || !/^[1-9]\d{0,2}$/.test(before))
      return { read: `${before}.${after}`, sign: last }
    if (last !== mark) return { read: before + after, doubtful: true }
    return mark === ',' ? { read: `${before}.${after}`, doubtful: true } : { read: typed }
  }
  if (!marks.includes(other)) {
    // `1.000.000`: a mark that comes twice cannot be the decimal
    return grouped.test(typed) ? { read: typed.replaceAll(last, ''), sign: other } : { read: typed }
  }
  return grouped.test(before) && !before.includes(last)
    ? { read: `${before.replaceAll(other, '')}.${after}`, sign: last }
    : { read: typed }
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
  const doubts: Doubt[] = []
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
      if (doubtful) doubts.push({ typed, read })
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

const bareNumber = /^(?:\d+(?:\.\d+)?|\.\d+|(?:\d+ )?\d+\/\d+|\d*\s?[¼½¾⅐-⅞])$/

/** The amount of a line as Tarebook stores it: plain numbers, and grams where no unit is given. */
export function plainAmount(text: string, mark: DecimalMark): PlainNumbers & { readonly bare: boolean } {
  const plain = plainNumbers(text.trim(), mark)
  const bare = bareNumber.test(plain.text)
  return { ...plain, text: bare ? `${plain.text} g` : plain.text, bare }
}
