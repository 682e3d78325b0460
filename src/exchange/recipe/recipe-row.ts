import { type Portion, portionAt } from '../../dough/lexicon/portions.js'
import { quantityAt } from '../../dough/lexicon/quantities.js'
import { isOneSystem, sizeOf, sortOf } from '../../dough/lexicon/terms.js'
import type { Token } from '../../dough/lexicon/text-tokens.js'
import { printedTokens } from '../values/printed-tokens.js'
import { namesEarlierStage } from '../values/stage-kinds.js'
import type { SaidUnit } from '../values/written-weights.js'

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
  readonly bareUnit?: SaidUnit // that the text says its bare numbers have
}

const bullet = /^[\s|>]*(?:[-–—•*·▪◦‣●○■□▢▫◻⬜❏❑☐☑✓✔–+»›→➤►▸]\s*(?=[\s\d¼-¾⅐-⅞\p{L}[(])|\[[ xX]?\]\s*)+/u
const number =
  /^\s*(?:\(?(?:\d{1,2}[.)]|[a-h]\)|(?:[a-h]|i{1,3}|iv)\.(?!\s?à))(?=\s)|(?:step|étape)\s+\d{1,2}\s*[:.)–—-]?|\d{1,2}(?::\d{1,2}){1,2}\s*[–—,-]\s+(?=\d))\s*/i
const markUp =
  /^\s*#{1,6}\s+|^\s*\[(?=\p{L}[^[\]]*\]\s*$)|^\s*(\*\*|__|==+)(?=\S.*\S\s?\1[\s:]*$)|^\s*\*\s(?=.*\S\s?\*$)/u
const isEmphasised = (text: string): boolean => /^\s*([*_])[^\s*_].*\1\s*$/.test(text)
const endMarkUp = /[*_#=\s]+$/
const endBracket = /\]\s*$/

export const isOpening = (token: Token | undefined): boolean => token?.text === '(' || token?.text === '['
const isClosing = ({ text }: Token): boolean => text === ')' || text === ']'

/** Where the parenthesis opened at a token closes, or the end when it does not before it. */
export const closingOf = ({ closes }: Row, open: number, to: number): number =>
  Math.min(closes.get(open) ?? to, to)

/** The text of tokens from, up to but not with, to. */
export const textOf = (row: Row, from: number, to: number): string =>
  from < to ? row.text.slice(row.tokens[from]!.at, row.tokens[to - 1]!.end) : ''

const numberWords = new Set(['no', 'nr', 'num', 'n', 'numero', 'nº', 'n°'])
const numberSigns = new Set(['.', '°', 'º', '#', '№'])
/** `Recipe No. 12`, `recette n° 5`, `#14`: which of several it is, and not how much. */
function isNumbered(tokens: readonly Token[], at: number): boolean {
  const [sign, word] = [tokens[at - 1], tokens[at - 2]]
  if (sign?.text === '#' || sign?.text === '№') return !tokens[at]!.gap && word?.kind === 'word'
  if (sign && numberSigns.has(sign.text)) return !sign.gap && numberWords.has(word?.key ?? '')
  return sign !== undefined && ['nr', 'numero', 'nº'].includes(sign.key)
}

const mostBetween = 6 // tokens from an amount to the next of its unit
/** `a tablespoonful of lard and two of molasses`: a number behind an amount that is of something too has its unit. */
function ofUnitBefore(tokens: readonly Token[], one: Portion, before: Portion | undefined): Portion {
  const [{ number, unit, ...more }, ...others] = one.terms
  const [of, name] = tokens.slice(one.to, one.to + 2)
  const isOf = of?.key === 'of' && name?.kind === 'word' && !notStuff.has(name.key)
  const isJoined = ['and', ',', ';', '&'].includes(tokens[one.from - 1]?.key ?? '')
  if (unit || others.length > 0 || !before || before.share !== undefined || !isOf || !isJoined) return one
  const given = before.terms.at(-1)!.unit
  const isNear = one.from - before.to <= mostBetween && tokens[before.to]?.key === 'of'
  return given?.kind === 'unit' && isNear ? { ...one, terms: [{ ...more, number, unit: given }] } : one
}
const notStuff = new Set(['the', 'these', 'those', 'them', 'it', 'each', 'which', 'this', 'that', 'your'])

/** The amounts of tokens, and the numbers that are none. */
function amountsIn(tokens: readonly Token[]) {
  const quantities: Portion[] = []
  let hasNoAmount = false
  let when: number | undefined
  for (let i = 0; i < tokens.length; ) {
    if (tokens[i]!.kind === 'number' && isNumbered(tokens, i)) {
      hasNoAmount = true
      i++
      continue
    }
    const found = portionAt(tokens, i, namesEarlierStage) ?? quantityAt(tokens, i)
    let to = i + 1
    if (found && 'terms' in found) {
      quantities.push(ofUnitBefore(tokens, found, quantities.at(-1)))
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

const mostSizes = 6
const larger = 1.15 // by what a batch is larger than the one before, at least

/** The places of the amounts of a row that are each for another batch: `Water: 200 ml / 280 ml / 350 ml`, `250 g (single), 500 g (double)`. */
function sizesIn({ quantities, tokens, depths }: Row): readonly Portion[] {
  const sizes = quantities.filter(q => q.terms[0].unit?.kind === 'unit' && q.terms[0].unit.unit !== '%')
  const isNext = (q: Portion, i: number) => {
    const before = sizes[i - 1]
    if (!before) return true
    const [a, b] = [before.terms[0], q.terms[0]]
    const isAlike = sortOf(a.unit) === sortOf(b.unit) && isOneSystem(a.unit, b.unit!)
    const between = tokens.slice(before.to, q.from)
    const isNamed = between.some((t, n) => t.kind === 'word' && depths[before.to + n] === 0)
    return isAlike && !isNamed && b.number.value * sizeOf(b.unit) > a.number.value * sizeOf(a.unit) * larger
  }
  return sizes.length > 1 && sizes.length <= mostSizes && sizes.every(isNext) ? sizes : []
}

/** How many batches the rows of a text give amounts for, side by side: 1 of most. */
export function batchesOf(rows: readonly Row[]): number {
  const counts = rows.filter(row => row.quantities.length > 0).map(row => sizesIn(row).length)
  const several = counts.filter(count => count > 1)
  const usual = several.toSorted((a, b) => a - b)[several.length >> 1] ?? 1
  const isSo = several.length > 2 && several.filter(count => count === usual).length > counts.length * 0.6
  return isSo ? usual : 1
}

/** A row with the amounts of one of several batches alone. */
export function rowOfBatch(row: Row, batch: number, of: number): Row {
  const sizes = sizesIn(row)
  // `One pizza / two pizzas` over them
  const isOver = row.tokens.filter(t => t.text === '/').length === of - 1 && sizes.length === 0
  if (of > 1 && isOver) return { ...rowOf(''), text: row.text }
  if (of < 2 || sizes.length !== of) return row
  const blank = row.text.split('')
  for (const { from, to } of sizes.toSpliced(batch, 1))
    blank.fill(' ', row.tokens[from]!.at, row.tokens[to - 1]!.end)
  return { ...rowOf(blank.join('')), text: row.text }
}

/** What is in a row, by one pass from left to right. */
export function rowOf(text: string): Row {
  const mark = markUp.exec(text)
  const dot = mark || isEmphasised(text) ? null : bullet.exec(text)
  const opening = (mark ?? dot)?.[0].length ?? 0
  const count = number.exec(text.slice(opening, opening + 20))
  const from = opening + (count?.[0].length ?? 0)
  const end = mark
    ? text.length - ((mark[0].endsWith('[') ? endBracket : endMarkUp).exec(text.slice(-12))?.[0].length ?? 0)
    : text.length
  // a table's rules part its columns as tabs do
  const inner = text.slice(from, Math.max(from, end)).replaceAll('|', '\t')
  const tokens = printedTokens(' '.repeat(from) + inner)
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
    colon: tokens.at(-1)?.text === ':' || isDash(tokens),
  }
}

/** `Dough -` is written as `Dough:` is. */
function isDash(tokens: readonly Token[]): boolean {
  const last = tokens.at(-1)
  return tokens.length > 1 && last?.gap === true && '–—-'.includes(last.text)
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
