import { type Portion, portionAt } from '../../dough/lexicon/portions.js'
import { quantityAt } from '../../dough/lexicon/quantities.js'
import type { Token } from '../../dough/lexicon/text-tokens.js'
import { printedTokens } from '../values/printed-tokens.js'
import { namesEarlierStage } from '../values/stage-kinds.js'

/** A row of recipe text, taken apart once. */
export interface Row {
  readonly text: string // exact
  readonly tokens: readonly Token[] // without bullet, number and mark-up
  readonly quantities: readonly Portion[] // from left to right, none over another
  readonly starting: ReadonlyMap<number, Portion> // by the token where they start
  readonly closes: ReadonlyMap<number, number> // by the token where a parenthesis opens, where it closes
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
const number = /^\s*(?:\(?(?:\d{1,2}[.)]|[a-h]\))(?=\s)|(?:step|étape)\s+\d{1,2}\s*[:.)–—-]?)\s*/i
const markUp = /^\s*#{1,6}\s+|^\s*(?:\*\*|__|==+)(?=\S)|^\s*\*\s(?=.*\S\s?\*$)/
const endMarkUp = /[*_#=\s]+$/

export const isOpening = (token: Token | undefined): boolean => token?.text === '(' || token?.text === '['
const isClosing = ({ text }: Token): boolean => text === ')' || text === ']'

/** Where the parenthesis opened at a token closes, or the end when it does not before it. */
export const closingOf = ({ closes }: Row, open: number, to: number): number =>
  Math.min(closes.get(open) ?? to, to)

/** The text of tokens from, up to but not with, to. */
export const textOf = (row: Row, from: number, to: number): string =>
  from < to ? row.text.slice(row.tokens[from]!.at, row.tokens[to - 1]!.end) : ''

/** The amounts of tokens, and the numbers that are none. */
function amountsIn(tokens: readonly Token[]) {
  const quantities: Portion[] = []
  let hasNoAmount = false
  let when: number | undefined
  for (let i = 0; i < tokens.length; ) {
    const found = portionAt(tokens, i, namesEarlierStage) ?? quantityAt(tokens, i)
    let to = i + 1
    if (found && 'terms' in found) {
      quantities.push(found)
      to = found.to
    } else if (found) {
      hasNoAmount = true
      if (found.isWhen) when ??= i
      to = found.noAmountTo
    }
    i = Math.max(to, i + 1)
  }
  return { quantities, hasNoAmount, when }
}

/** What is in a row, by one pass from left to right. */
export function rowOf(text: string): Row {
  const mark = markUp.exec(text)
  const dot = mark ? null : bullet.exec(text)
  const opening = (mark ?? dot)?.[0].length ?? 0
  const count = number.exec(text.slice(opening, opening + 20))
  const from = opening + (count?.[0].length ?? 0)
  const end = mark ? text.length - (endMarkUp.exec(text.slice(-12))?.[0].length ?? 0) : text.length
  // a table's rules part its columns as tabs do
  const inner = text.slice(from, Math.max(from, end)).replaceAll('|', '\t')
  // … and tags of HTML are blanks
  const plain = ' '.repeat(from) + inner.replace(/<\/?\p{L}[^<>]*>/gu, tag => ' '.repeat(tag.length))
  const tokens = printedTokens(plain)
  const amounts = amountsIn(tokens)
  return {
    text,
    tokens,
    ...amounts,
    starting: new Map(amounts.quantities.map(q => [q.from, q])),
    ...parenthesesIn(tokens),
    words: tokens.filter(t => t.kind === 'word'),
    bulleted: dot !== null && dot[0].trim() !== '',
    numbered: count !== null,
    marked: mark !== null,
    colon: tokens.at(-1)?.text === ':',
  }
}

/** Where parentheses close, and how many each token stands in; one that is never closed is none. The brackets stand outside. */
function parenthesesIn(tokens: readonly Token[]) {
  const open: number[] = []
  const closes = new Map<number, number>()
  tokens.forEach((token, i) => {
    const from = isClosing(token) ? open.pop() : undefined
    if (from !== undefined) closes.set(from, i)
    if (isOpening(token)) open.push(i)
  })
  const ends = new Set(closes.values())
  let depth = 0
  const depths = tokens.map((_, i) => {
    if (ends.has(i)) depth--
    return closes.has(i) ? depth++ : depth
  })
  return { closes, depths }
}
