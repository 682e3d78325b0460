import { articles } from '../../dough/amounts/number-words.js'
import { type Token, tokensOf } from '../../dough/amounts/text-tokens.js'
import type { Larder } from '../../dough/document/larder.js'
import type { Found, Part } from './found.js'
import { inlineStage } from './headings.js'
import { namesEarlierStage, noteStarts, verbs } from './kitchen-words.js'
import { ingredientNamed } from './larder-names.js'
import { bare, nameOf } from './name.js'
import type { RowQuantity } from './portions.js'
import { closingOf, type Row } from './row.js'
import { readSegment } from './segment.js'

/** Words that end a name in a sentence. */
const ends = new Set(
  'and et then puis into onto in on dans sur to until jusqu with avec over through together using is are was were goes go while so but mais every each chaque slowly gradually gently well again ensemble bien au aux alors'.split(
    ' ',
  ),
)
const sticky = new Set(["'", '’', '-', '%', '/'])

const endsName = (token: Token): boolean =>
  token.kind === 'mark'
    ? !sticky.has(token.text)
    : ends.has(token.key) || noteStarts.has(token.key) || (verbs.has(token.key) && token.key !== 'rub')

/** The token after the name that starts at one. */
function nameEnd(row: Row, from: number, to: number): number {
  const { tokens } = row
  let i = from
  while (i < to && i < from + 12 && !endsName(tokens[i]!)) i++
  return i
}

/** Where the name starts that ends before a parenthesis: `the bread flour (500 g)`. */
function nameStart(row: Row, to: number, after: number): number {
  const { tokens } = row
  let i = to
  const starts = new Set(['the', 'le', 'la', 'les', 'your', 'l', ...articles])
  while (i > after && i > to - 6 && !endsName(tokens[i - 1]!) && !starts.has(tokens[i - 1]!.key)) i--
  return i
}

/** The ingredients of a row's sentences, with the stage each sentence names. */
export function inProse(row: Row, larder: Larder): Part[] {
  if (row.quantities.length === 0) return []
  return sentencesOf(row).map(({ from, to }) => {
    const found = inSentence(row, larder, from, to)
    const inline = inlineStage(row, from, to)
    return inline ? { found, stage: inline.stage } : { found }
  })
}

/** The ingredients of a sentence, from a token up to another, that says what to do with them. */
function inSentence(row: Row, larder: Larder, start: number, end: number): Found[] {
  const { quantities, depths } = row
  const found: Found[] = []
  let behind = 0 // the token after the last ingredient
  quantities.forEach((quantity, at) => {
    if (quantity.from < Math.max(start, behind) || quantity.to > end) return
    const piece =
      depths[quantity.from]! > 0 ? inParentheses(row, quantity, behind) : afterAmount(row, at, larder)
    const line = piece && readSegment(row, piece, larder)
    if (!line || !(isStageShare(quantity, line) ?? (line.amount !== '' || line.known))) return
    found.push(line)
    behind = piece.to
  })
  return found
}

/** Of shares only those of a stage are lines of their own: `half of the water` was counted before. */
const isStageShare = (quantity: RowQuantity, line: Found): boolean | undefined =>
  quantity.share === undefined ? undefined : tokensOf(line.ingredient).some(t => namesEarlierStage(t.key))

function afterAmount(row: Row, at: number, larder: Larder) {
  const { tokens, quantities } = row
  const quantity = quantities[at]!
  let from = quantity.to
  let last = at + 1
  // a second measure of the same: `500 g (4 cups) of flour`, `1 cup / 240 ml water`
  for (;;) {
    const other: RowQuantity | undefined = quantities[last]
    const opens = tokens[from]?.text
    if (!other || (opens !== '(' && opens !== '/') || other.from > from + 2) break
    from = other.to + (opens === '(' && tokens[other.to]?.text === ')' ? 1 : 0)
    last++
  }
  const next = quantities[last]?.from ?? tokens.length
  const start = ['of', 'de', 'd', 'du'].includes(tokens[from]?.key ?? '') ? from + 1 : from
  const to = nameEnd(
    row,
    tokens[start]?.text === '’' || tokens[start]?.text === "'" ? start + 1 : start,
    next,
  )
  const name = bare(tokens.slice(from, to))
  if (name.length === 0) return undefined
  const { ingredient } = nameOf(name, larder)
  if (!quantity.terms[0].unit && !ingredientNamed(larder, ingredient)?.each) return undefined
  // `1 sachet of dry yeast (7 g)`
  if (tokens[to]?.text === '(' && (quantities[last]?.from ?? Infinity) <= to + 2) {
    const close = closingOf(tokens, to, Math.min(to + 30, tokens.length))
    while ((quantities[last]?.from ?? close) < close) last++
    const end = Math.min(close + 1, tokens.length)
    return { from: quantity.from, to: end, quantities: quantities.slice(at, last) }
  }
  return { from: quantity.from, to: withTemperature(row, to, next), quantities: quantities.slice(at, last) }
}

/** The remark in parentheses, or the temperature, that belongs to the ingredient before it. */
function withTemperature(row: Row, to: number, next: number): number {
  const { tokens } = row
  const end = tokens.slice(to, Math.min(next, to + 6)).findIndex(t => '°º'.includes(t.text))
  const at = ['at', 'à', '('].includes(tokens[to]?.low ?? '')
  if (!at || end < 0) return to
  const behind = to + end + 2
  return tokens[behind]?.text === ')' ? behind + 1 : behind
}

function inParentheses(row: Row, quantity: RowQuantity, behind: number) {
  const { tokens } = row
  const open = quantity.from - 1
  if (tokens[open]?.text !== '(' || !quantity.terms[0].unit) return undefined
  const from = nameStart(row, open, behind)
  const to = Math.min(closingOf(tokens, open, Math.min(open + 30, tokens.length)) + 1, tokens.length)
  return from < open ? { from, to, quantities: [quantity] } : undefined
}

/** The sentences of a row: where each starts, and the token after it. */
export function sentencesOf(row: Row): { from: number; to: number }[] {
  const sentences: { from: number; to: number }[] = []
  let from = 0
  row.tokens.forEach((token, i) => {
    const next = row.tokens[i + 1]
    // a row of dots leads from a name to its amount
    if (
      row.tokens[i - 1]?.text === '.' ||
      !'.!?;'.includes(token.text) ||
      !next?.gap ||
      !/^[\p{Lu}\d]/u.test(next.text)
    )
      return
    sentences.push({ from, to: i + 1 })
    from = i + 1
  })
  sentences.push({ from, to: row.tokens.length })
  return sentences
}
