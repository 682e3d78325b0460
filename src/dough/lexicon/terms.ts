import { type DecimalMark, numberText, settled } from './digits.js'
import { aboutSigns, typedAboutWords } from './number-words.js'
import { isApostrophe, isGlued, type Token } from './text-tokens.js'
import { knownUnits, mostUnitWords, type UnitWord } from './unit-words.js'
import { sizeIn, weightUnits } from './units.js'
import { halfMore, numberAt, type WholeAt, type WrittenNumber } from './written-numbers.js'

/** A number with what it counts. */
export interface Term {
  readonly number: WrittenNumber
  readonly unit: UnitWord | undefined // undefined: a bare number
  readonly minus?: true // to be taken away: `2 cups minus 2 tbsp`
}

/** A term, and the token after it. */
export interface TermRead {
  readonly term: Term
  readonly to: number
}

/** The words terms are read with; a reader of recipes knows more of them. */
export interface Lexicon {
  readonly units: ReadonlyMap<string, UnitWord> // what words after a number can mean
  readonly about: ReadonlySet<string> // say how a number or a measure is meant: about, heaped, small
  readonly behind: ReadonlySet<string> // of these, what stands behind a measure as well: `2 tbsp heaped`
  readonly pieceParts: ReadonlySet<string> // of which one is meant: `zest of a lemon`
  readonly wholeAt?: WholeAt // longer numbers in words
}

/** How terms are read. */
export interface Reading extends Lexicon {
  readonly mark?: DecimalMark // the text's own, where a number alone does not tell; left out: its unit's size decides
}

/** Units whose size is known, and the words with which an amount is typed. */
export const typedLexicon: Lexicon = {
  units: knownUnits,
  about: typedAboutWords,
  behind: new Set(),
  pieceParts: new Set(),
}

/** Units of which nobody has thousands. */
const large = new Set<string>(['kg', 'oz', 'lb', 'l', 'tsp', 'tbsp', 'cup', 'fl oz', '%'])

/** `1,250`: thousands of grams and millilitres, decimals of larger units, unless the text's mark is known. */
function settledIn(number: WrittenNumber, unit: UnitWord | undefined, written: string, mark?: DecimalMark) {
  if (!number.other) return number
  const asThousands = mark ? !written.includes(mark) : !(unit?.kind === 'unit' && large.has(unit.unit))
  return settled(number, asThousands)
}

const letter = (unit: 'tsp' | 'tbsp'): UnitWord => ({ kind: 'unit', unit, guess: 'letter' })
const caseUnits: Readonly<Record<string, UnitWord>> = { t: letter('tsp'), T: letter('tbsp') }
const degrees: UnitWord = { kind: 'not an amount', isWhen: true }
const signs: Readonly<Record<string, UnitWord>> = {
  '%': { kind: 'unit', unit: '%' },
  '#': { kind: 'unit', unit: 'lb' },
  '°': degrees,
  º: degrees,
  ª: degrees,
}

/** The unit that starts at a token, with the token after it. */
export function unitAt(
  tokens: readonly Token[],
  at: number,
  { units }: Reading = typedLexicon,
): { readonly unit: UnitWord; readonly to: number } | undefined {
  const first = tokens[at]
  if (!first) return undefined
  const sign = first.kind === 'mark' ? signs[first.text] : undefined
  if (sign && (first.text !== '#' || isGlued(first)))
    return { unit: sign, to: Math.min(sign === degrees ? at + 2 : at + 1, tokens.length) }
  if (first.kind !== 'word') return undefined
  // `1 1/2 tea. salt`, and not two tea bags
  if (first.key === 'tea' && tokens[at + 1]?.text === '.' && isGlued(tokens[at + 1]))
    return { unit: { kind: 'unit', unit: 'tsp' }, to: at + 2 }
  const words: string[] = []
  const ends: number[] = []
  for (let i = at; words.length < mostUnitWords && tokens[i]?.kind === 'word'; ) {
    const { key } = tokens[i]!
    words.push(key)
    i += tokens[i + 1]?.text === '.' && isGlued(tokens[i + 1]) && key.length < 6 ? 2 : 1
    ends.push(i)
  }
  for (let count = words.length; count > 0; count--) {
    const to = ends[count - 1]!
    const unit =
      (count === 1 ? caseUnits[first.text] : undefined) ?? units.get(words.slice(0, count).join(' '))
    // `1 c. à …` of a spoon that is not known is no cup
    if (count === 1 && first.key === 'c' && tokens[to]?.low === 'à') return undefined
    // `l’eau` and `d’huile` are no litre and no unit
    if (unit && (first.key.length > 3 || !isApostrophe(tokens[to]))) return { unit, to }
  }
  return undefined
}

/** Whether a token says how a number is meant: `~`, `about`, `heaped`. */
export const isAbout = (token: Token | undefined, { about }: Lexicon): boolean =>
  token !== undefined && (aboutSigns.has(token.text) || about.has(token.key))

/** The token after a word, and after the dot that may cut it short: `approx. 300 g`. */
export const afterDot = (tokens: readonly Token[], at: number): number =>
  tokens[at + 1]?.text === '.' && isGlued(tokens[at + 1]) ? at + 2 : at + 1

/** Words like `about` before a number, into `about`; the token after them. */
export function skipAbout(tokens: readonly Token[], from: number, about: string[], lexicon: Lexicon): number {
  let at = from
  while (isAbout(tokens[at], lexicon) && about.length < 4) {
    about.push(tokens[at]!.text)
    at = afterDot(tokens, at)
  }
  return at
}

/** `14-ounce`, `half-teaspoon`. */
const isHyphenGlued = (tokens: readonly Token[], at: number): boolean =>
  tokens[at]?.text === '-' && isGlued(tokens[at]) && isGlued(tokens[at + 1])

/** What measures and counts are said to be, between number and unit: `1 heaped tbsp`. */
function unitAfter(tokens: readonly Token[], at: number, about: string[], reading: Reading) {
  let i = isHyphenGlued(tokens, at) ? at + 1 : at
  const direct = unitAt(tokens, i, reading)
  if (direct) return direct
  const words: string[] = []
  while (isAbout(tokens[i], reading) && tokens[i]!.kind === 'word' && words.length < 3) {
    words.push(tokens[i]!.text)
    i = afterDot(tokens, i)
  }
  const unit = words.length > 0 ? unitAt(tokens, i, reading) : undefined
  if (!unit || unit.unit.kind === 'not an amount') return undefined
  about.push(...words)
  return unit
}

/** `1 tasse 1/2 de lait`: the part of one that stands behind the measure. */
function halfBehind(tokens: readonly Token[], at: number): { value: number; to: number } | undefined {
  const part = tokens[at]?.kind === 'word' ? undefined : numberAt(tokens, at)
  const isPart = part !== undefined && part.value < 1 && !part.mark
  return isPart && (!tokens[part.to] || ['de', 'd'].includes(tokens[part.to]!.key)) ? part : undefined
}

/** `2 (two) cups`: the number said again in parentheses is passed over. */
function saidOnce(tokens: readonly Token[], number: WrittenNumber | undefined, reading: Reading) {
  if (!number || tokens[number.to]?.text !== '(') return number
  const again = numberAt(tokens, number.to + 1, reading.wholeAt)
  const close = again?.value === number.value && tokens[again.to]?.text === ')' ? again.to + 1 : undefined
  return close !== undefined && unitAt(tokens, close, reading) ? { ...number, to: close } : number
}

/**
 * The number that starts at a token with its unit, words between and behind them into `about`: `2 heaped tsp`,
 * `a cup and a half`, `70 %`. Undefined where none does, or where an article is followed by no measure.
 */
export function termAt(
  tokens: readonly Token[],
  at: number,
  about: string[],
  reading: Reading = typedLexicon,
): TermRead | undefined {
  const number = saidOnce(tokens, numberAt(tokens, at, reading.wholeAt), reading)
  if (!number) return undefined
  // `three quarters of a cup`, `a couple of tablespoons`
  const joined = ['of', 'de'].includes(tokens[number.to]?.key ?? '')
  const isPart = tokens[at]!.kind === 'word' || number.value < 1
  const skip = joined && isPart && unitAt(tokens, number.to + 1, reading) ? number.to + 1 : number.to
  const found = unitAfter(tokens, skip, about, reading)
  const settledTo = (unit: UnitWord | undefined) => settledIn(number, unit, tokens[at]!.text, reading.mark)
  if (!found)
    return number.article && !isPartOf(tokens, at, reading)
      ? undefined
      : { term: { number: settledTo(undefined), unit: undefined }, to: number.to }
  let { to } = found
  if (isDegrees(tokens[skip]!, number)) return { term: { number, unit: degrees }, to }
  if (found.unit.kind !== 'not an amount')
    for (const end = to + 3; to < end && reading.behind.has(tokens[to]?.key ?? ''); to++)
      about.push(tokens[to]!.text)
  const more = halfMore(tokens, to) ?? halfBehind(tokens, to)
  if (!more || !Number.isInteger(number.value))
    return { term: { number: settledTo(found.unit), unit: found.unit }, to }
  const value = number.value + more.value
  const whole = { value, text: numberText(value), to: number.to }
  // `une cuillère et demie à café`: the measure goes on behind the half
  const rest =
    tokens[more.to]?.key === 'a' && found.unit.kind === 'unknown'
      ? reading.units.get(`c a ${tokens[more.to + 1]?.key}`)
      : undefined
  return rest
    ? { term: { number: whole, unit: rest }, to: more.to + 2 }
    : { term: { number: whole, unit: found.unit }, to: more.to }
}

/** `24C` is warm; cups have a small letter, a space before it, or are few. */
const isDegrees = (unit: Token, { value }: WrittenNumber): boolean =>
  unit.text === 'C' && isGlued(unit) && value >= 15

/** `zest of a lemon`, `le jus d’une orange`: of one. */
function isPartOf(tokens: readonly Token[], at: number, { pieceParts }: Lexicon): boolean {
  const of = isApostrophe(tokens[at - 1]) ? at - 2 : at - 1
  return ['of', 'd'].includes(tokens[of]?.key ?? '') && pieceParts.has(tokens[of - 1]?.key ?? '')
}

/** Grams or millilitres in one of a unit; 0 of what is counted and of per cents. */
export const sizeOf = (unit: UnitWord | undefined): number =>
  (unit?.kind === 'unit' ? sizeIn(unit.unit) : undefined) ?? 0

/** What terms must have in common to be added or to be the ends of a range: `weight`, `volume`, `%`, … */
export function sortOf(unit: UnitWord | undefined): string {
  if (unit?.kind !== 'unit') return unit?.kind ?? 'bare'
  return unit.unit === '%' ? '%' : unit.unit in weightUnits || unit.unit === 'stick' ? 'weight' : 'volume'
}

const metric = new Set(['g', 'kg', 'mg', 'ml', 'cl', 'dl', 'l'])
/** Both metric, or neither: of `1 lb 450 g` the second is the first said otherwise. */
export const isOneSystem = (a: UnitWord | undefined, b: UnitWord): boolean =>
  a?.kind === 'unit' && b.kind === 'unit' && metric.has(a.unit) === metric.has(b.unit)

const joins = new Set(['plus', '+', 'and', 'et', 'und', '&'])
const takings = new Set(['minus', 'less', 'moins'])

/**
 * `1 lb 2 oz`, `1 cup plus 2 tbsp`: what is to be added to the first term. `belongs` says whether what follows a join
 * that is not a sum by itself (`and`, `minus`) is of the same amount, given the token after the next term.
 */
export function sumFrom(
  tokens: readonly Token[],
  first: TermRead,
  about: string[],
  reading: Reading = typedLexicon,
  belongs: (to: number, isPlus: boolean) => boolean = () => true,
): { readonly terms: readonly [Term, ...Term[]]; readonly to: number } {
  const terms: [Term, ...Term[]] = [first.term]
  let { to } = first
  for (;;) {
    const word = tokens[to]?.key ?? ''
    const takes = takings.has(word)
    const join = takes || joins.has(word) || (word === ',' && tokens[to + 2] !== undefined)
    const words: string[] = []
    const next = termAt(tokens, join ? to + 1 : to, words, reading)
    const last = terms.at(-1)!
    if (!next?.term.unit || sortOf(next.term.unit) !== sortOf(last.unit)) break
    if (!['weight', 'volume'].includes(sortOf(last.unit))) break
    const isPlus = word === 'plus' || word === '+'
    const isLess = sizeOf(next.term.unit) < sizeOf(last.unit) && isOneSystem(last.unit, next.term.unit)
    if (!isPlus && !isLess) break
    if (join && !belongs(next.to, isPlus)) break
    about.push(...words)
    terms.push(takes ? { ...next.term, minus: true } : next.term)
    to = next.to
  }
  return { terms, to }
}
