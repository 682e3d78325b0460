import { type DecimalMark, type Digits, numberText, plain, readDigits } from './digits.js'
import { articles, dozens, halfWords, numberWords, partWords } from './number-words.js'
import { isApostrophe, isGlued, type Token } from './text-tokens.js'

/** A number as Tarebook writes it, and the tokens that write it. */
export interface WrittenNumber extends Digits {
  readonly text: string // as of digits, or a fraction: `2 1/4`, `1/2`
  readonly to: number // the token after it
  readonly article?: true // only `a`, `un`: a number where a measure follows
  readonly whole?: true // digits alone
}

const fractionOf = (sign: string): readonly [number, number] => {
  const [over, under] = sign.normalize('NFKD').split('⁄')
  return [Number(over), Number(under)]
}
const fractions = new Map(Array.from('¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞', sign => [sign, fractionOf(sign)]))

const isSlash = (token: Token | undefined) => token?.text === '/' || token?.text === '⁄'
const isHyphen = (token: Token | undefined) => token?.text === '-' || token?.text === '‑'
const smallAt = (token: Token | undefined): number | undefined =>
  token?.kind === 'number' && /^\d{1,3}$/.test(token.text) ? Number(token.text) : undefined

/** What kitchens divide by; `8/10 g` is a range. */
const parts = new Set([2, 3, 4, 5, 6, 8, 16])

type Fraction = readonly [over: number, under: number, to: number]

/** `1/2` or `½` at a place: over, under, and the token after. */
function fractionAt(tokens: readonly Token[], at: number): Fraction | undefined {
  const first = tokens[at]
  const sign = first?.kind === 'fraction' ? fractions.get(first.text) : undefined
  if (sign) return [...sign, at + 1]
  const slash = tokens[at + 1]
  if (!isSlash(slash)) return undefined
  const [over, under] = [smallAt(first), smallAt(tokens[at + 2])]
  if (over === undefined || under === undefined) return undefined
  const close = isGlued(slash) && isGlued(tokens[at + 2])
  const usual = parts.has(under) && over > 0 && over < 16
  return usual && (close || slash!.text === '⁄') ? [over, under, at + 3] : undefined
}

export const ands = new Set(['and', 'et', 'und', '&'])
const threes = new Set(['three', 'trois', 'drei'])

/** `half`, `a quarter`, `three quarters` behind a whole number: `one and a half`, `un et demi`. */
function andPart(tokens: readonly Token[], at: number): Fraction | undefined {
  let i = at
  if (!ands.has(tokens[i]?.key ?? '')) return undefined
  const fraction = fractionAt(tokens, ++i)
  if (fraction) return fraction[0] < fraction[1] ? fraction : undefined
  let over = 1
  if (articles.has(tokens[i]?.key ?? '') || tokens[i]?.key === 'one') i++
  else if (threes.has(tokens[i]?.key ?? '')) {
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

const mixed = (value: number, text: string, [over, under, to]: Fraction): WrittenNumber => ({
  value: value + over / under,
  text: text === '' ? `${over}/${under}` : `${text} ${over}/${under}`,
  to,
})

/** Digits grouped by spaces or apostrophes, `1 000`, `1'250`: whole, and the token after. */
function groups(tokens: readonly Token[], at: number): WrittenNumber | undefined {
  let text = tokens[at]!.text
  if (tokens[at + 1]?.kind !== 'number' && !isApostrophe(tokens[at + 1])) return undefined
  if (!/^[1-9]\d{0,2}$/.test(text)) return undefined
  let i = at + 1
  let mark: DecimalMark | undefined
  while (!mark && text.length < 13) {
    const tied = isApostrophe(tokens[i]) && isGlued(tokens[i]) && isGlued(tokens[i + 1])
    const next = tokens[tied ? i + 1 : i]
    if (next?.kind !== 'number' || !/^\d{3}(?:[.,]\d+)?$/.test(next.text) || next.wide) break
    mark = /[.,]/.exec(next.text)?.[0] as DecimalMark | undefined
    text += next.text.replace(',', '.')
    i = tied ? i + 2 : i + 1
  }
  // `Flour 500 100` without a unit are two columns
  if (tokens[at]!.text.length === 3 && text.length === 6 && !mark && tokens[i]?.kind !== 'word')
    return undefined
  // `1 100/3` is a mixed number
  if (i === at + 1 || text.length > 18 || (isSlash(tokens[i]) && isGlued(tokens[i]))) return undefined
  return { ...plain(text), ...(mark ? { mark } : {}), to: i }
}

/** `½ a nutmeg`: the article is no part of the name. */
function ofOneThing(tokens: readonly Token[], number: WrittenNumber): WrittenNumber {
  const isArticle =
    ['a', 'an'].includes(tokens[number.to]?.low ?? '') && tokens[number.to + 1]?.kind === 'word'
  return isArticle ? { ...number, to: number.to + 1 } : number
}

function inDigits(tokens: readonly Token[], at: number): WrittenNumber | undefined {
  const fraction = fractionAt(tokens, at)
  if (fraction) return ofOneThing(tokens, mixed(0, '', fraction))
  const first = tokens[at]!
  if (first.kind !== 'number' || (first.text[0] === '0' && /^0\d/.test(first.text))) return undefined
  const grouping = groups(tokens, at)
  if (grouping) return grouping
  const read = readDigits(first.text)
  if (!read) return undefined
  if (!/^\d+$/.test(first.text)) return { ...read, to: at + 1 }
  // `1-1/2`, and `1 – 1/2`, which is no range: the half is less than one
  const isTied = isHyphen(tokens[at + 1]) ? isGlued(tokens[at + 1]) : tokens[at + 1]?.text === '–'
  const next = isTied ? at + 2 : at + 1
  const part = fractionAt(tokens, next) ?? andPart(tokens, at + 1)
  if (part && part[0] < part[1]) return mixed(read.value, read.text, part)
  return dozenAt(tokens, at + 1, read.value) ?? { ...read, whole: true, to: at + 1 }
}

/** So many quarters, thirds or eighths, with the `of a` behind them: `three quarters of a cup`. */
function partAt(tokens: readonly Token[], at: number, over: number): WrittenNumber | undefined {
  const under = partWords.get(tokens[at]?.key ?? '')
  if (!under || over >= under) return undefined
  const of = isHyphen(tokens[at + 1]) ? at + 2 : at + 1
  const isOf = ['of', 'de', 'd'].includes(tokens[of]?.key ?? '')
  const ofOne = isOf ? (isApostrophe(tokens[of + 1]) ? of + 2 : of + 1) : of
  const to = articles.has(tokens[ofOne]?.key ?? '') ? ofOne + 1 : ofOne
  return { value: over / under, text: `${over}/${under}`, to }
}

/** So many dozens; the word may stand alone. */
function dozenAt(tokens: readonly Token[], at: number, times: number): WrittenNumber | undefined {
  const many = dozens.get(tokens[at]?.key ?? '')
  return many === undefined ? undefined : { ...plain(numberText(many * times)), to: at + 1 }
}

function inWords(tokens: readonly Token[], at: number, wholeAt: WholeAt): WrittenNumber | undefined {
  const key = tokens[at]!.key
  const skipJoin = (i: number) => (isHyphen(tokens[i]) ? i + 1 : i)
  if (halfWords.has(key)) {
    const to = skipJoin(at + 1)
    const ofOne = tokens[to]?.key === 'of' ? to + 1 : to
    const article = articles.has(tokens[ofOne]?.key ?? '')
    const dozen = dozenAt(tokens, to, 1 / 2) ?? (article ? dozenAt(tokens, ofOne + 1, 1 / 2) : undefined)
    return dozen ?? { value: 0.5, text: '1/2', to: article ? ofOne + 1 : to }
  }
  const one = partAt(tokens, at, 1) ?? dozenAt(tokens, at, 1) ?? inOneWord(key, at)
  if (one) return one
  const whole = wholeAt(tokens, at)
  if (whole === undefined || tokens[at]!.low === 'à') return undefined
  const { value } = whole
  const next = skipJoin(whole.to)
  const after = tokens[next]?.key ?? ''
  const many = dozenAt(tokens, next, value) ?? (value > 0 ? partAt(tokens, next, value) : undefined)
  if (many) return many
  if (articles.has(key) && halfWords.has(after)) return inWords(tokens, next, wholeAt)
  if (key === 'a' && after === 'couple') return { value: 2, text: '2', to: next + 1 }
  const more = andPart(tokens, whole.to)
  if (more) return mixed(value, String(value), more)
  return { ...plain(String(value)), to: whole.to, ...(articles.has(key) ? { article: true } : {}) }
}

/** `anderthalb`, `zweieinhalb`, `dreiviertel`. */
function inOneWord(key: string, at: number): WrittenNumber | undefined {
  if (key === 'dreiviertel') return { value: 0.75, text: '3/4', to: at + 1 }
  if (!key.endsWith('halb')) return undefined
  const [, before] = /^(ander|\p{L}{3,8}?)(?:t|ein)halb$/u.exec(key) ?? []
  const whole = before === 'ander' ? 1 : numberWords.get(before ?? '')
  return whole ? mixed(whole, String(whole), [1, 2, at + 1]) : undefined
}

/** Reads a whole number in words. */
export type WholeAt = (tokens: readonly Token[], at: number) => { value: number; to: number } | undefined

/** One of a dozen words; recipes write longer numbers. */
const oneWordAt: WholeAt = (tokens, at) => {
  const value = numberWords.get(tokens[at]!.key)
  return value === undefined ? undefined : { value, to: at + 1 }
}

type Known = WeakMap<readonly Token[], (WrittenNumber | null)[]>
const known = new Map<WholeAt, Known>()

/** The number that starts at a token, in digits, fractions or words of English, French or German. */
export function numberAt(
  tokens: readonly Token[],
  at: number,
  wholeAt: WholeAt = oneWordAt,
): WrittenNumber | undefined {
  const token = tokens[at]
  if (!token || token.kind === 'mark') return undefined
  // Asked several times of one token: as an amount, the end of a range, one of several.
  const lists: Known = known.get(wholeAt) ?? new WeakMap()
  known.set(wholeAt, lists)
  const numbers = lists.get(tokens) ?? []
  if (numbers.length === 0) lists.set(tokens, numbers)
  if (numbers[at] === undefined)
    numbers[at] = (token.kind === 'word' ? inWords(tokens, at, wholeAt) : inDigits(tokens, at)) ?? null
  return numbers[at] ?? undefined
}
