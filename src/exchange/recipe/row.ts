import { quantityAt } from '../../dough/amounts/quantities.js'
import { type Token, tokensOf } from '../../dough/amounts/text-tokens.js'
import { portionAt, type RowQuantity } from './portions.js'

/** A row of recipe text, taken apart once. */
export interface Row {
  readonly text: string // exact
  readonly tokens: readonly Token[] // without bullet, number and mark-up
  readonly quantities: readonly RowQuantity[] // from left to right, none over another
  readonly starting: ReadonlyMap<number, RowQuantity> // by the token where they start
  readonly depths: readonly number[] // of parentheses, a token each
  readonly words: readonly Token[]
  readonly bulleted: boolean // a bullet, a box to tick
  readonly numbered: boolean
  readonly marked: boolean // as a heading: `## Dough`, `**Dough**`
  readonly colon: boolean // at its end
  readonly hasNoAmount: boolean // a time, a temperature or a count of loaves is in it
  readonly when: number | undefined // the token where the first time or temperature starts
}

const bullet = /^[\s|>]*(?:[-–—•*·▪◦‣●○■□☐☑✓✔–+»›→➤►▸]\s*(?=[\s\d¼-¾⅐-⅞\p{L}[(])|\[[ xX]?\]\s*)+/u
const number = /^\s*(?:\(?(?:\d{1,2}[.)]|[a-h]\))(?=\s)|(?:step|étape)\s+\d{1,2}\s*[:.)]?)\s*/i
const markUp = /^\s*#{1,6}\s+|^\s*(?:\*\*|__|==+)(?=\S)/
const endMarkUp = /[*_#=\s]+$/

export const isOpening = (token: Token | undefined): boolean => token?.text === '(' || token?.text === '['

/** Where the parenthesis opened at `open` closes, or the end when it never does. */
export function closingOf(tokens: readonly Token[], open: number, to: number): number {
  let depth = 0
  for (let i = open; i < to; i++) {
    const { text } = tokens[i]!
    if (text === '(' || text === '[') depth++
    else if ((text === ')' || text === ']') && --depth === 0) return i
  }
  return to
}

/** The text of tokens from, up to but not with, to. */
export const textOf = (row: Row, from: number, to: number): string =>
  from < to ? row.text.slice(row.tokens[from]!.at, row.tokens[to - 1]!.end) : ''

/** What is in a row, by one pass from left to right. */
export function rowOf(text: string): Row {
  let from = 0
  let heading = false
  const marked = markUp.exec(text)
  if (marked) {
    heading = true
    from = marked[0].length
  }
  const dot = marked ? null : bullet.exec(text)
  if (dot) from = dot[0].length
  const count = number.exec(text.slice(from, from + 20))
  if (count) from += count[0].length
  const end = heading ? text.length - (endMarkUp.exec(text.slice(-12))?.[0].length ?? 0) : text.length
  const blank = ' '.repeat(from)
  // a table's rules part its columns as tabs do
  const plain = blank + text.slice(from, Math.max(from, end)).replaceAll('|', '\t')
  const tokens = tokensOf(plain).filter(t => t.kind !== 'mark' || !'*_`'.includes(t.text))
  const quantities: RowQuantity[] = []
  let hasNoAmount = false
  let when: number | undefined
  for (let i = 0; i < tokens.length; ) {
    const found = portionAt(tokens, i) ?? quantityAt(tokens, i)
    if (found && 'terms' in found) quantities.push(found)
    else if (found) {
      hasNoAmount = true
      if (found.isWhen) when ??= i
    }
    const next = found ? ('terms' in found ? found.to : found.noAmountTo) : i
    i = Math.max(next, i + 1)
  }
  return {
    text,
    tokens,
    quantities,
    starting: new Map(quantities.map(q => [q.from, q])),
    depths: depthsOf(tokens),
    words: tokens.filter(t => t.kind === 'word'),
    bulleted: dot !== null && dot[0].trim() !== '',
    numbered: count !== null,
    marked: heading,
    colon: tokens.at(-1)?.text === ':',
    hasNoAmount,
    when,
  }
}

/** How many parentheses each token stands in; one that is never closed is none. The brackets stand outside. */
function depthsOf(tokens: readonly Token[]): number[] {
  const open: number[] = []
  const change = new Array<number>(tokens.length + 1).fill(0)
  tokens.forEach(({ text }, i) => {
    if (text === '(' || text === '[') open.push(i)
    const from = text === ')' || text === ']' ? open.pop() : undefined
    if (from === undefined) return
    change[from + 1]! += 1
    change[i]! -= 1
  })
  let depth = 0
  return tokens.map((_, i) => {
    depth += change[i]!
    return depth
  })
}
