import {
  aboutSigns,
  aboutWords,
  halfWords,
  isHundred,
  measureWords,
  numberWords,
  partWords,
} from './kitchen-words.js'
import { halfMore, type NumberRead, numberAt, numberText } from './numbers.js'
import { bareMeasureAt, portionAt, portionStarts } from './portions.js'
import { isApostrophe, isGlued, type Token } from './tokens.js'
import { mostUnitWords, type UnitWord, unitTable } from './unit-words.js'

/** A number with what it counts. */
export interface Term {
  readonly number: NumberRead
  readonly unit: UnitWord | undefined // undefined: a bare number
  readonly minus?: true // to be taken away: `2 cups minus 2 tbsp`
}

/** How much, as a recipe says it: `1 lb 2 oz`, `650–680 ml`, `2 x 7 g`, `a handful`. */
export interface Quantity {
  readonly from: number // of its tokens
  readonly to: number
  readonly terms: readonly [Term, ...Term[]] // to be added up
  readonly upTo?: Term // the end of a range
  readonly times?: number // `2 x 400 g`
  readonly about: readonly string[] // heaped, scant, about
}

/** The share of what was made before that a quantity says: `all of the levain`. */
export const shareOf = ({ terms: [{ unit }] }: Quantity): number | 'rest' | undefined =>
  unit?.kind === 'share' ? unit.of : undefined

/** A number that is no amount: a time, a temperature, a count of loaves. */
export interface NoAmount {
  readonly noAmountTo: number
  readonly isWhen?: true // a time or a temperature
}

const caseUnits: Readonly<Record<string, UnitWord>> = {
  t: { kind: 'unit', unit: 'tsp', letter: true },
  T: { kind: 'unit', unit: 'tbsp', letter: true },
}

/** The unit that starts at a token, with the token after it. */
export function unitAt(
  tokens: readonly Token[],
  at: number,
): { readonly unit: UnitWord; readonly to: number } | undefined {
  const first = tokens[at]
  if (!first) return undefined
  if (first.text === '%') return { unit: { kind: 'unit', unit: '%' }, to: at + 1 }
  if (first.text === '#' && isGlued(first)) return { unit: { kind: 'unit', unit: 'lb' }, to: at + 1 }
  if ('°ºª'.includes(first.text)) return { unit: degrees, to: Math.min(at + 2, tokens.length) }
  if (first.kind !== 'word') return undefined
  const words: string[] = []
  const ends: number[] = []
  for (let i = at; i < tokens.length && words.length < mostUnitWords; ) {
    const token = tokens[i]!
    if (token.kind !== 'word') break
    words.push(token.key)
    const dot = tokens[i + 1]
    i += dot?.text === '.' && isGlued(dot) && token.key.length < 6 ? 2 : 1
    ends.push(i)
  }
  for (let count = words.length; count > 0; count--) {
    const to = ends[count - 1]!
    const unit =
      count === 1 && first.text.length === 1 && caseUnits[first.text]
        ? caseUnits[first.text]
        : unitTable.get(words.slice(0, count).join(' '))
    // `l’eau` and `d’huile` are no litre and no unit
    if (unit && (first.key.length > 3 || !isApostrophe(tokens[to]))) return { unit, to }
  }
  return undefined
}

const isAbout = (token: Token | undefined): boolean =>
  token !== undefined && (aboutSigns.has(token.text) || aboutWords.has(token.key))

/** What measures and counts are said to be, between number and unit: `1 heaped tbsp`. */
function unitAfter(tokens: readonly Token[], at: number, about: string[]) {
  let i = isHyphenGlued(tokens, at) ? at + 1 : at
  const direct = unitAt(tokens, i)
  if (direct) return direct
  const words: string[] = []
  while (isAbout(tokens[i]) && tokens[i]!.kind === 'word' && words.length < 3) words.push(tokens[i++]!.text)
  const unit = words.length > 0 ? unitAt(tokens, i) : undefined
  if (!unit || unit.unit.kind === 'not an amount') return undefined
  about.push(...words)
  return unit
}

/** `14-ounce`, `half-teaspoon`. */
const isHyphenGlued = (tokens: readonly Token[], at: number): boolean =>
  tokens[at]?.text === '-' && isGlued(tokens[at]) && isGlued(tokens[at + 1])

/** `1,250`: thousands of grams and millilitres, decimals of larger units. */
function settled(number: NumberRead, unit: UnitWord | undefined): NumberRead {
  const small = unit === undefined || unit.kind !== 'unit' || unit.unit === 'g' || unit.unit === 'ml'
  return number.thousands && small ? { ...number, ...number.thousands } : number
}

/** `1 tasse 1/2 de lait`: the part of one that stands behind the measure. */
function halfBehind(tokens: readonly Token[], at: number): { value: number; to: number } | undefined {
  const part = tokens[at]?.kind === 'word' ? undefined : numberAt(tokens, at)
  return part && part.value < 1 && ['de', 'd'].includes(tokens[part.to]?.key ?? '') ? part : undefined
}

/** `2 (two) cups`: the number said again in parentheses is passed over. */
function saidOnce(tokens: readonly Token[], number: NumberRead | undefined): NumberRead | undefined {
  if (!number || tokens[number.to]?.text !== '(') return number
  const again = numberAt(tokens, number.to + 1)
  const close = again?.value === number.value && tokens[again.to]?.text === ')' ? again.to + 1 : undefined
  return close !== undefined && unitAt(tokens, close) ? { ...number, to: close } : number
}

function termAt(
  tokens: readonly Token[],
  at: number,
  about: string[],
): { term: Term; to: number } | undefined {
  let number = saidOnce(tokens, numberAt(tokens, at))
  if (!number) return undefined
  const joined = ['of', 'de'].includes(tokens[number.to]?.key ?? '')
  // `three quarters of a cup`, `a couple of tablespoons`
  const skip =
    joined && unitAt(tokens, number.to + 1) && (tokens[at]!.kind === 'word' || number.value < 1)
      ? number.to + 1
      : number.to
  const found = unitAfter(tokens, skip, about)
  if (!found)
    return number.article && !isPartOf(tokens, at)
      ? undefined
      : { term: { number: settled(number, undefined), unit: undefined }, to: number.to }
  let { to } = found
  if (isDegrees(tokens[skip]!, number)) return { term: { number, unit: degrees }, to }
  if (found.unit.kind !== 'not an amount')
    while (measureWords.has(tokens[to]?.key ?? '')) about.push(tokens[to++]!.text)
  number = settled(number, found.unit)
  const more = halfMore(tokens, to) ?? halfBehind(tokens, to)
  if (more && Number.isInteger(number.value)) {
    // `une cuillère et demie à café`: the measure goes on behind the half
    const value = number.value + more.value
    number = { value, text: numberText(value), to: number.to }
    to = more.to
    const rest =
      tokens[to]?.key === 'a' && found.unit.kind === 'unknown' && unitTable.get(`c a ${tokens[to + 1]?.key}`)
    if (rest) return { term: { number, unit: rest }, to: to + 2 }
  }
  return { term: { number, unit: found.unit }, to }
}

const degrees: UnitWord = { kind: 'not an amount', isWhen: true }

/** `24C` is warm; cups have a small letter, a space before it, or are few. */
const isDegrees = (unit: Token, { value }: NumberRead): boolean =>
  unit.text === 'C' && isGlued(unit) && value >= 15

/** `zest of a lemon`, `le jus d’une orange`: of one. */
function isPartOf(tokens: readonly Token[], at: number): boolean {
  const of = isApostrophe(tokens[at - 1]) ? at - 2 : at - 1
  return ['of', 'd'].includes(tokens[of]?.key ?? '') && partsOfPieces.has(tokens[of - 1]?.key ?? '')
}
const partsOfPieces = new Set(
  'yolk yolks white whites blanc jaune zest zests rind juice peel pulp seeds jus zeste zestes ecorce pulpe graines'.split(
    ' ',
  ),
)

const dashes = new Set(['-', '–', '—', '‑', '−'])
const rangeWords = new Set(['to', 'or', 'ou', 'à', 'a'])

/** The end of a range, where a range is written. */
function rangeEnd(tokens: readonly Token[], at: number, between: boolean, about: string[]) {
  const join = tokens[at]
  if (!join) return undefined
  const and = between && (join.key === 'and' || join.key === 'et')
  // `8/10 g`
  const slash = join.text === '/' && tokens[at - 1]?.kind === 'number' && tokens[at + 1]?.kind === 'number'
  if (!slash && !dashes.has(join.text) && !rangeWords.has(join.low) && !and) return undefined
  if (join.low === 'a' && tokens[at + 1]?.kind !== 'number') return undefined
  return termAt(tokens, at + 1, about)
}

const sort = (unit: UnitWord | undefined): string => {
  if (unit?.kind === 'unit' || unit?.kind === 'converted') {
    if (unit.unit === '%') return '%'
    return ['g', 'kg', 'oz', 'lb'].includes(unit.unit) ? 'weight' : 'volume'
  }
  return unit?.kind ?? 'bare'
}
const sizes: Readonly<Record<string, number>> = {
  kg: 4,
  lb: 3,
  oz: 2,
  g: 1,
  l: 4,
  cup: 3,
  'fl oz': 2.5,
  tbsp: 2,
  tsp: 1,
  ml: 0,
}
const sizeOf = (unit: UnitWord | undefined): number => (unit?.kind === 'unit' ? (sizes[unit.unit] ?? 0) : 0)

/** `1 lb 2 oz`, `1 cup plus 2 tbsp`: what is to be added to a term. */
function moreTerms(tokens: readonly Token[], first: Term, at: number, about: string[]) {
  const terms: [Term, ...Term[]] = [first]
  let to = at
  for (;;) {
    const takes = ['minus', 'less', 'moins'].includes(tokens[to]?.key ?? '')
    const join = takes || ['plus', '+', 'and', 'et', '&'].includes(tokens[to]?.key ?? '')
    const next = termAt(tokens, join ? to + 1 : to, about)
    const last = terms.at(-1)!
    if (!next?.term.unit || sort(next.term.unit) !== sort(last.unit)) break
    if (!['weight', 'volume'].includes(sort(last.unit))) break
    const adds = ['plus', '+'].includes(tokens[to]!.key)
    if (adds ? isRemarkAt(tokens, next.to) : sizeOf(next.term.unit) >= sizeOf(last.unit)) break
    if (join && !adds && namelessAt(tokens, next.to)) break
    terms.push(takes ? { ...next.term, minus: true } : next.term)
    to = next.to
  }
  return { terms, to }
}

/** `500 g plus 50 g for dusting`: what is for something else is not added. */
const isRemarkAt = (tokens: readonly Token[], at: number): boolean =>
  ['for', 'pour'].includes(tokens[at]?.key ?? '')

/** Nothing that could be a name follows: the amount may belong to something else. */
const namelessAt = (tokens: readonly Token[], at: number): boolean =>
  tokens[at] === undefined || tokens[at].kind === 'mark'

const starts = new Set([
  ...numberWords.keys(),
  ...halfWords,
  ...partWords.keys(),
  ...aboutWords,
  ...portionStarts,
  ...unitTable.keys(),
  ...['entre', 'between', 'de', 'from'],
])
/** Asked first because most tokens start no amount. */
const mayStart = ({ kind, key, text }: Token): boolean =>
  kind === 'word'
    ? starts.has(key) || starts.has(key.split('-')[0]!) || isHundred(key)
    : kind !== 'mark' || aboutSigns.has(text)

/** What is counted off: `day 1`, `étape 2`. */
const counters = new Set('day jour step etape stage phase part partie'.split(' '))

/** The amount that starts at a token, or a number that is none. `before` it words like `about` may stand. */
export function quantityAt(tokens: readonly Token[], from: number): Quantity | NoAmount | undefined {
  if (!mayStart(tokens[from]!)) return undefined
  if (tokens[from]!.kind === 'number' && counters.has(tokens[from - 1]?.key ?? ''))
    return { noAmountTo: from + 1 }
  const said = portionAt(tokens, from)
  if (said) return { from, to: said.to, terms: [said], about: [] }
  const measure = bareMeasureAt(tokens, from, isAbout)
  if (measure) return { from, to: measure.portion.to, terms: [measure.portion], about: measure.about }
  const about: string[] = []
  let at = from
  while (isAbout(tokens[at]) && about.length < 4 && numberFollows(tokens, afterDot(tokens, at))) {
    about.push(tokens[at]!.text)
    at = afterDot(tokens, at)
  }
  const between = ['entre', 'between', 'de', 'from'].includes(tokens[at]?.key ?? '')
  if (between && tokens[at + 1]?.kind === 'number') at++
  let first = termAt(tokens, at, about)
  if (!first) return undefined
  const times = timesAt(tokens, first)
  if (times) {
    const inner = termAt(tokens, times, about)
    if (inner?.term.unit && inner.term.unit.kind !== 'not an amount')
      return { from, to: inner.to, terms: [inner.term], times: first.term.number.value, about }
  }
  if (isClock(tokens, first.to)) return { noAmountTo: first.to + 2, isWhen: true }
  const tins = tinsAt(tokens, at, about)
  if (tins) return { from, to: tins.to, terms: [tins.term], times: tins.times, about }
  const end = rangeEnd(tokens, first.to, between || at > from, about)
  for (const one of [end, first])
    if (one?.term.unit?.kind === 'not an amount') return noAmount(tokens, one.to, one.term.unit)
  if (isRange(first.term, end?.term)) {
    const unit = first.term.unit ?? end!.term.unit
    first = { term: { number: settled(first.term.number, unit), unit }, to: end!.to }
    return {
      from,
      to: end!.to,
      terms: [first.term],
      upTo: { ...end!.term, unit: end!.term.unit ?? unit },
      about,
    }
  }
  const { terms, to } = first.term.unit
    ? moreTerms(tokens, first.term, first.to, about)
    : { terms: [first.term] as const, to: first.to }
  // `de 5 g` that is no range
  return { from: between && about.length === 0 ? at : from, to, terms, about }
}

/** The token after a word, and after the dot that may cut it short: `approx. 300 g`. */
const afterDot = (tokens: readonly Token[], at: number): number =>
  tokens[at + 1]?.text === '.' && isGlued(tokens[at + 1]) ? at + 2 : at + 1

const numberFollows = (tokens: readonly Token[], at: number): boolean => {
  let i = at
  while (isAbout(tokens[i]) && i < at + 3) i = afterDot(tokens, i)
  return numberAt(tokens, i) !== undefined || ['entre', 'between'].includes(tokens[i]?.key ?? '')
}

/** `2 x 400 g`, `2 sachets de 7 g`, `1 400 g tin`: where the amount of one starts. */
function timesAt(tokens: readonly Token[], { term, to }: { term: Term; to: number }): number | undefined {
  const next = tokens[to]
  if (term.unit === undefined || term.unit.kind === 'not an amount') {
    if (next && (next.text === '×' || next.key === 'x' || next.text === '*')) return to + 1
    if (term.unit && ['x', '×'].includes(tokens[to - 1]!.key)) return to
  }
  const ofThese = term.unit?.kind === 'unknown' && ['of', 'de'].includes(next?.key ?? '')
  return ofThese && tokens[to + 1]?.kind === 'number' ? to + 1 : undefined
}

/** A time or the like, with what is tied to it: `1h30`. */
function noAmount(tokens: readonly Token[], at: number, unit: { isWhen?: true }): NoAmount {
  const tied = tokens[at]?.kind === 'number' && isGlued(tokens[at])
  return { noAmountTo: tied ? at + 1 : at, ...(unit.isWhen ? { isWhen: true } : {}) }
}

/** `8:30`: a time of the day. */
const isClock = (tokens: readonly Token[], at: number): boolean =>
  tokens[at]?.text === ':' &&
  isGlued(tokens[at]) &&
  isGlued(tokens[at + 1]) &&
  /^[0-5]\d$/.test(tokens[at + 1]?.text ?? '')

/** `1 400 g tin`, `one 7-gram packet`: no thousand and four hundred, but one of 400 g. */
function tinsAt(tokens: readonly Token[], at: number, about: string[]) {
  if (tokens[at + 1]?.kind !== 'number') return undefined
  const count = numberAt([tokens[at]!], 0)
  if (!count || !Number.isInteger(count.value)) return undefined
  const inner = termAt(tokens, at + 1, about)
  const isTin = inner?.term.unit && unitAt(tokens, inner.to)?.unit.kind === 'unknown'
  return isTin ? { times: count.value, ...inner } : undefined
}

const sameUnit = (a: UnitWord | undefined, b: UnitWord | undefined): boolean =>
  a === undefined || b === undefined || sort(a) === sort(b)

function isRange(first: Term, end: Term | undefined): boolean {
  if (!end || end.unit?.kind === 'not an amount' || !sameUnit(first.unit, end.unit)) return false
  const less = first.number.value < end.number.value
  return less || (first.unit !== undefined && end.unit !== undefined && sizeOf(first.unit) < sizeOf(end.unit))
}
