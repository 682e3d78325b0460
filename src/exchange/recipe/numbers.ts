import { cardinalAt } from './cardinals.js'
import { articles, dozens, halfWords, partWords } from './kitchen-words.js'
import { isApostrophe, isGlued, type Token } from './tokens.js'

/** A number as Tarebook writes it, and the tokens that write it. */
export interface NumberRead {
  readonly value: number
  readonly text: string // decimal point: `650`, `2 1/4`, `0.5`
  readonly to: number // the token after it
  readonly article?: true // only `a`, `un`: a number where a measure follows
  readonly whole?: true // digits alone
  readonly thousands?: { readonly value: number; readonly text: string } // the other reading of `1,250`
}

const asciiFraction: Readonly<Record<string, readonly [number, number]>> = {
  '¼': [1, 4],
  '½': [1, 2],
  '¾': [3, 4],
}

function fractionOf(character: string): readonly [number, number] {
  const plain = asciiFraction[character]
  if (plain) return plain
  const [over, under] = character.normalize('NFKD').split('⁄')
  return [Number(over), Number(under)]
}

const tidy = (value: number): string => String(Number(value.toPrecision(12)))

/** A decimal number as its text; `1,250` can be one and a quarter or a thousand and more: both are given. */
function digits(raw: string): Omit<NumberRead, 'to'> | undefined {
  const plain = (text: string) => ({ value: Number(text), text })
  if (raw.length > 15) return undefined
  if (!raw.includes('.') && !raw.includes(',')) return { ...plain(raw), whole: true }
  if (/^\.\d+$/.test(raw)) return plain(`0${raw}`)
  const marks = raw.replace(/\d/g, '')
  const last = marks.at(-1)!
  const at = raw.lastIndexOf(last)
  const [before, after] = [raw.slice(0, at), raw.slice(at + 1)]
  if (marks.length === 1) {
    const decimal = plain(`${before}.${after}`)
    return after.length === 3 && /^[1-9]\d{0,2}$/.test(before)
      ? { ...decimal, thousands: plain(before + after) }
      : decimal
  }
  if (/^\d{1,3}([.,])\d{3}(\1\d{3})*$/.test(raw)) return plain(raw.replace(/[.,]/g, ''))
  if (/^\d{1,3}([.,]\d{3})+$/.test(before) && !before.includes(last))
    return plain(`${before.replace(/[.,]/g, '')}.${after}`)
  return undefined
}

const isSlash = (token: Token | undefined) => token?.text === '/' || token?.text === '⁄'
const isHyphen = (token: Token | undefined) => token?.text === '-' || token?.text === '‑'
const wholeAt = (token: Token | undefined): number | undefined =>
  token?.kind === 'number' && /^\d{1,3}$/.test(token.text) ? Number(token.text) : undefined

/** What kitchens divide by; `8/10 g` is a range. */
const parts = new Set([2, 3, 4, 5, 6, 8, 16])

/** `1/2` or `½` at a place: over, under, and the token after. */
function fractionAt(tokens: readonly Token[], at: number): readonly [number, number, number] | undefined {
  const first = tokens[at]
  if (first?.kind === 'fraction') return [...fractionOf(first.text), at + 1] as const
  const over = wholeAt(first)
  const slash = tokens[at + 1]
  const under = wholeAt(tokens[at + 2])
  if (over === undefined || under === undefined || !isSlash(slash)) return undefined
  const close = isGlued(slash) && isGlued(tokens[at + 2])
  const usual = parts.has(under) && over > 0 && over < 16
  return usual && (close || slash!.text === '⁄') ? [over, under, at + 3] : undefined
}

/** `half`, `a quarter`, `three quarters` behind a whole number: `one and a half`, `un et demi`. */
function andPart(tokens: readonly Token[], at: number): readonly [number, number, number] | undefined {
  let i = at
  if (!['and', 'et', '&'].includes(tokens[i]?.key ?? '')) return undefined
  const fraction = fractionAt(tokens, ++i)
  if (fraction) return fraction[0] < fraction[1] ? fraction : undefined
  let over = 1
  if (articles.has(tokens[i]?.key ?? '') || tokens[i]?.key === 'one') i++
  else if (tokens[i]?.key === 'three' || tokens[i]?.key === 'trois') {
    over = 3
    i++
  }
  if (isHyphen(tokens[i])) i++
  const word = tokens[i]?.key ?? ''
  if (halfWords.has(word) && over === 1) return [1, 2, i + 1]
  const under = partWords.get(word)
  return under ? [over, under, i + 1] : undefined
}

/** `and a half` behind a measure: `a cup and a half`, `un litre et demi`. The half, and the token after. */
export function halfMore(tokens: readonly Token[], at: number): { value: number; to: number } | undefined {
  const part = andPart(tokens, at)
  return part && { value: part[0] / part[1], to: part[2] }
}

const mixed = (
  value: number,
  text: string,
  [over, under, to]: readonly [number, number, number],
): NumberRead => ({
  value: value + over / under,
  text: value === 0 && text === '' ? `${over}/${under}` : `${text} ${over}/${under}`,
  to,
})

/** Digits grouped by spaces or apostrophes, `1 000`, `1'250`: whole, and the token after. */
function grouped(tokens: readonly Token[], at: number): { text: string; to: number } | undefined {
  let text = tokens[at]!.text
  if (!/^[1-9]\d{0,2}$/.test(text)) return undefined
  let i = at + 1
  for (;;) {
    const tied = isApostrophe(tokens[i]) && isGlued(tokens[i]) && isGlued(tokens[i + 1])
    const next = tokens[tied ? i + 1 : i]
    if (next?.kind !== 'number' || !/^\d{3}(?:[.,]\d+)?$/.test(next.text) || next.wide) break
    text += next.text.replace(',', '.')
    i = tied ? i + 2 : i + 1
    if (text.includes('.') || text.length > 13) break
  }
  return i > at + 1 && text.length < 13 ? { text, to: i } : undefined
}

/** `½ a nutmeg`: the article is no part of the name. */
function ofOneThing(tokens: readonly Token[], number: NumberRead): NumberRead {
  const isArticle =
    ['a', 'an'].includes(tokens[number.to]?.low ?? '') && tokens[number.to + 1]?.kind === 'word'
  return isArticle ? { ...number, to: number.to + 1 } : number
}

function inDigits(tokens: readonly Token[], at: number): NumberRead | undefined {
  const fraction = fractionAt(tokens, at)
  if (fraction) return ofOneThing(tokens, mixed(0, '', fraction))
  const first = tokens[at]!
  if (first.kind !== 'number' || /^0\d/.test(first.text)) return undefined
  const groups = grouped(tokens, at)
  if (groups) return { value: Number(groups.text), text: groups.text, to: groups.to }
  const read = digits(first.text)
  if (!read) return undefined
  if (read.whole) {
    const many = dozenAt(tokens, at + 1, read.value)
    if (many) return many
    const next = isHyphen(tokens[at + 1]) && isGlued(tokens[at + 1]) ? at + 2 : at + 1
    const part = fractionAt(tokens, next)
    if (part && part[0] < part[1]) return mixed(read.value, read.text, part)
    const more = andPart(tokens, at + 1)
    if (more) return mixed(read.value, read.text, more)
  }
  return { ...read, to: at + 1 }
}

/** So many quarters, thirds or eighths, with the `of a` behind them: `three quarters of a cup`. */
function partAt(tokens: readonly Token[], at: number, over: number): NumberRead | undefined {
  const under = partWords.get(tokens[at]?.key ?? '')
  if (!under || over >= under) return undefined
  const of = isHyphen(tokens[at + 1]) ? at + 2 : at + 1
  const isOf = ['of', 'de', 'd'].includes(tokens[of]?.key ?? '')
  const ofOne = isOf ? (isApostrophe(tokens[of + 1]) ? of + 2 : of + 1) : of
  const to = articles.has(tokens[ofOne]?.key ?? '') ? ofOne + 1 : ofOne
  return { value: over / under, text: `${over}/${under}`, to }
}

/** So many dozens; the word may stand alone. */
function dozenAt(tokens: readonly Token[], at: number, times: number): NumberRead | undefined {
  const many = dozens.get(tokens[at]?.key ?? '')
  return many === undefined ? undefined : { value: many * times, text: tidy(many * times), to: at + 1 }
}

function inWords(tokens: readonly Token[], at: number): NumberRead | undefined {
  const key = tokens[at]!.key
  const skipJoin = (i: number) => (isHyphen(tokens[i]) ? i + 1 : i)
  if (halfWords.has(key)) {
    const to = skipJoin(at + 1)
    const dozen = dozenAt(tokens, to, 1 / 2)
    if (dozen) return dozen
    const ofOne = tokens[to]?.key === 'of' ? to + 1 : to
    const article = articles.has(tokens[ofOne]?.key ?? '')
    const halfOfOne = article ? dozenAt(tokens, ofOne + 1, 1 / 2) : undefined
    if (halfOfOne) return halfOfOne
    return { value: 0.5, text: '1/2', to: article ? ofOne + 1 : to }
  }
  const part = partAt(tokens, at, 1)
  if (part) return part
  const dozen = dozenAt(tokens, at, 1)
  if (dozen) return dozen
  const whole = cardinalAt(tokens, at)
  if (whole === undefined || tokens[at]!.low === 'à') return undefined
  const { value } = whole
  const next = skipJoin(whole.to)
  const after = tokens[next]?.key ?? ''
  const many = dozenAt(tokens, next, value)
  if (many) return many
  const parts = value > 0 ? partAt(tokens, next, value) : undefined
  if (parts) return parts
  if (articles.has(key) && halfWords.has(after)) return inWords(tokens, next)
  if (key === 'a' && after === 'couple') return { value: 2, text: '2', to: next + 1 }
  const more = andPart(tokens, whole.to)
  if (more) return mixed(value, String(value), more)
  return {
    value,
    text: String(value),
    to: whole.to,
    ...(articles.has(key) ? { article: true as const } : {}),
  }
}

/** The number that starts at a token, in digits, fractions or words, of English or French. */
export function numberAt(tokens: readonly Token[], at: number): NumberRead | undefined {
  const token = tokens[at]
  if (!token || token.kind === 'mark') return undefined
  return token.kind === 'word' ? inWords(tokens, at) : inDigits(tokens, at)
}

/** A number worked out, as Tarebook writes it. */
export const numberText = tidy
