/**
 * The grammar of amounts, one for recipes' lines, cells of tables and what a baker types. From below:
 *
 * - text-tokens: `tokensOf(text)`, words, numbers and marks with their offsets; `folded(word)`, how words are looked up
 * - number-words, unit-words, kitchen-measures: the lexicon as data, English, French, German
 * - written-numbers: `numberAt(tokens, at)`, `readDigits(text)`, with the other reading of `1,250`
 * - terms: `termAt`, a number with its unit; `unitAt`; `sumFrom`, `1 lb 4 oz`
 * - quantities (here): `quantityAt`, `quantitiesIn`, `measuresIn` for what stands in brackets or behind a slash,
 *   `wholeAmount` for a text that is nothing but an amount
 * - figures: `figureOf(quantity, bare)`, the amount in units Tarebook writes, its grams, and what was guessed, by code
 *
 * What differs between readers is given by them: what a bare number is (`bare`), the decimal mark of a text (`mark` of a
 * `Reading`), and how sure they want to be. All of it takes time in proportion to the text's length.
 */
import { beginsCardinal } from './cardinals.js'
import type { DecimalMark } from './digits.js'
import { kitchenLexicon, loneMeasures } from './kitchen-measures.js'
import { aboutSigns, dozens, halfWords, numberWords, partWords } from './number-words.js'
import {
  isOneSystem,
  type Reading,
  sizeOf,
  skipAbout,
  sortOf,
  sumFrom,
  type Term,
  type TermRead,
  termAt,
  unitAt,
} from './terms.js'
import { isApostrophe, isGlued, type Token, tokensOf } from './text-tokens.js'
import type { UnitWord } from './unit-words.js'

/** How much, as it is said: `1 lb 2 oz`, `650–680 ml`, `2 x 7 g`, `a pinch`. */
export interface Quantity {
  readonly from: number // of its tokens
  readonly to: number // the token after it
  readonly terms: readonly [Term, ...Term[]] // to be added up; a unit of kind `unknown` is a measure nobody knows
  readonly upTo?: Term // the end of a range that begins with the term
  readonly times?: number // `2 x 400 g`
  readonly about: readonly string[] // as written: heaped, scant, about, ~
}

/** A number that is no amount: a time, a temperature, a count of loaves. */
export interface NoAmount {
  readonly noAmountTo: number // the token after it
  readonly isWhen?: true // a time or a temperature
}

/** Every word of the kitchen, and no decimal mark of the text's own. */
const kitchen: Reading = kitchenLexicon
const keyAt = (tokens: readonly Token[], at: number): string => tokens[at]?.key ?? ''

const dashes = new Set(['-', '–', '—', '‑', '−'])
const rangeWords = new Set(['to', 'or', 'ou', 'à', 'a', 'bis', 'oder'])
const ands = new Set(['and', 'et', 'und'])
const betweens = new Set(['entre', 'between', 'zwischen', 'de', 'from', 'von'])

/** The end of a range, where a range is written. */
function rangeEnd(tokens: readonly Token[], at: number, between: boolean, about: string[], reading: Reading) {
  const join = tokens[at]
  if (!join) return undefined
  // `8/10 g`
  const slash = join.text === '/' && tokens[at - 1]?.kind === 'number' && tokens[at + 1]?.kind === 'number'
  const isWord = rangeWords.has(join.low) || (between && ands.has(join.key))
  if (!slash && !dashes.has(join.text) && !isWord) return undefined
  return join.low === 'a' && tokens[at + 1]?.kind !== 'number'
    ? undefined
    : termAt(tokens, at + 1, about, reading)
}

function isRange(first: Term, end: Term | undefined): end is Term {
  if (!end || end.unit?.kind === 'not an amount') return false
  if (first.unit && end.unit && sortOf(first.unit) !== sortOf(end.unit)) return false
  // `500 ml – 2 cups` is one amount said twice
  const areUnits = first.unit?.kind === 'unit' && end.unit?.kind === 'unit'
  if (areUnits && !isOneSystem(first.unit, end.unit!)) return false
  const isLarger = first.unit !== undefined && sizeOf(first.unit) < sizeOf(end.unit)
  return first.number.value < end.number.value || isLarger
}

/** Nothing that could be a name follows: the amount may belong to something else. */
const isNameless = (tokens: readonly Token[], at: number): boolean =>
  tokens[at] === undefined || tokens[at].kind === 'mark'

const starts = new Set([
  ...[...halfWords, ...partWords.keys(), ...dozens.keys(), ...kitchen.about, ...betweens],
  ...kitchen.units.keys(),
])
const glued = /halb|dreiviertel/
const mayBegin = (word: string): boolean => starts.has(word) || beginsCardinal(word)
/** Asked first because most tokens start no amount. */
const mayStart = ({ kind, key, text }: Token): boolean =>
  kind === 'word'
    ? mayBegin(key) || (key.includes('-') && mayBegin(key.split('-', 1)[0]!)) || glued.test(key)
    : kind !== 'mark' || aboutSigns.has(text)

/** What is counted off: `day 1`, `étape 2`. */
const counters = new Set('day jour tag step etape schritt stage phase part partie teil'.split(' '))

/** The amount that starts at a token, or a number that is none. `before` it words like `about` may stand. */
export function quantityAt(
  tokens: readonly Token[],
  from: number,
  reading = kitchen,
): Quantity | NoAmount | undefined {
  if (!mayStart(tokens[from]!)) return undefined
  if (tokens[from]!.kind === 'number' && counters.has(keyAt(tokens, from - 1)))
    return { noAmountTo: from + 1 }
  const about: string[] = []
  let at = skipAbout(tokens, from, about, reading)
  const measure = loneMeasureAt(tokens, from, at, reading)
  if (measure) return { from, to: measure.to, terms: [measure.term], about }
  const between = betweens.has(keyAt(tokens, at))
  if (between && tokens[at + 1]?.kind === 'number') at++
  const first = termAt(tokens, at, about, reading)
  if (!first) return undefined
  // `half-white flour` is no half of anything
  if (keyAt(tokens, at) === 'half' && keyAt(tokens, first.to - 1) === '-' && !first.term.unit)
    return undefined
  const several = severalAt(tokens, at, first, about, reading)
  if (several) return { from, ...several }
  if (isClock(tokens, first.to)) return { noAmountTo: first.to + 2, isWhen: true }
  const words: string[] = []
  const end = rangeEnd(tokens, first.to, between || at > from, words, reading)
  for (const one of [end, first])
    if (one?.term.unit?.kind === 'not an amount') return noAmount(tokens, one.to, one.term.unit)
  if (end && isRange(first.term, end.term)) {
    const unit = first.term.unit ?? end.term.unit
    const upTo = { ...end.term, unit: end.term.unit ?? unit }
    return { from, to: end.to, terms: [{ ...first.term, unit }], upTo, about: [...about, ...words] }
  }
  // `500 g plus 50 g for dusting`: what is for something else is not added
  const belongs = (to: number, isPlus: boolean) =>
    isPlus
      ? !['for', 'pour', 'zum'].includes(keyAt(tokens, to))
      : keyAt(tokens, first.to) === ','
        ? from === 0 || tokens[to] === undefined // `1 lb, 9 oz water`, but of `flour 1 lb, 9 oz water` two
        : !isNameless(tokens, to)
  const sum = first.term.unit
    ? sumFrom(tokens, first, about, reading, belongs)
    : { terms: [first.term] as const, to: first.to }
  // `3/4 cup plus 2 tbsp to 1 1/8 cups`
  const last = sum.terms.length > 1 ? rangeEnd(tokens, sum.to, false, words, reading) : undefined
  if (last && isRange(first.term, last.term))
    return { from, to: last.to, terms: sum.terms, upTo: last.term, about: [...about, ...words] }
  // `de 5 g` that is no range
  return { from: between && about.length === 0 ? at : from, about, ...sum }
}

/** All amounts of a text from left to right, none within another. */
export function quantitiesIn(tokens: readonly Token[], reading = kitchen): Quantity[] {
  const found: Quantity[] = []
  for (let at = 0; at < tokens.length; ) {
    const quantity = quantityAt(tokens, at, reading)
    if (quantity && 'terms' in quantity) found.push(quantity)
    at = quantity ? Math.max(at + 1, 'terms' in quantity ? quantity.to : quantity.noAmountTo) : at + 1
  }
  return found
}

/** `2 x 400 g`, `2 sachets de 7 g`, `1 400 g tin`, `one 7-gram packet`: how many, and the amount of one. */
function severalAt(tokens: readonly Token[], at: number, first: TermRead, about: string[], reading: Reading) {
  const { number, unit } = first.term
  const oneAt = (from: number, times: number) => {
    const words: string[] = []
    const one = termAt(tokens, from, words, reading)
    if (!one?.term.unit || one.term.unit.kind === 'not an amount') return undefined
    return { to: one.to, terms: [one.term] as const, times, about: [...about, ...words] }
  }
  const times = timesAt(tokens, first)
  const multiplied = times === undefined ? undefined : oneAt(times, number.value)
  if (multiplied || tokens[at + 1]?.kind !== 'number' || unit?.kind === 'not an amount') return multiplied
  const { kind, text, key } = tokens[at]!
  const count = kind === 'number' ? Number(text) : numberWords.get(key)
  const tin = Number.isInteger(count) ? oneAt(at + 1, count!) : undefined
  return tin && unitAt(tokens, tin.to, reading)?.unit.kind === 'unknown' ? tin : undefined
}

/** Where the amount of one starts behind a count. */
function timesAt(tokens: readonly Token[], { term: { unit }, to }: TermRead): number | undefined {
  const next = tokens[to]
  if (unit === undefined || unit.kind === 'not an amount') {
    if (next && (next.text === '×' || next.key === 'x' || next.text === '*')) return to + 1
    if (unit && ['x', '×'].includes(keyAt(tokens, to - 1))) return to
  }
  const ofThese = unit?.kind === 'unknown' && ['of', 'de', 'a', 'mit', 'von'].includes(next?.key ?? '')
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

/** Amounts that stand where a new thing may start. */
const opens = new Set(['and', 'et', 'und', 'plus', 'with', 'avec', 'mit', 'de', 'or', 'ou', 'oder'])
const mayOpen = (before: Token | undefined): boolean =>
  before === undefined || before.kind === 'mark' || opens.has(before.key)

const spoons = new Set(['tsp', 'tbsp', 'teaspoon', 'tablespoon'])

/** A measure that needs no number: `pinch of salt`, `handful of seeds`, `Prise Salz`, `pinch` alone. */
function loneMeasureAt(
  tokens: readonly Token[],
  from: number,
  at: number,
  reading: Reading,
): TermRead | undefined {
  const word = tokens[at]
  const mayBe = mayOpen(tokens[from - 1])
  if (word?.kind !== 'word' || !(mayBe || tokens[at + 1] === undefined)) return undefined
  const found = unitAt(tokens, at, reading)
  const unit: UnitWord | undefined = found?.unit
  const isPinch = unit?.kind === 'unit' && unit.guess === 'estimate'
  // `salt, tsp caraway`
  const isSpoon = from > 0 && spoons.has(word.key) && !reading.units.has(keyAt(tokens, found?.to ?? at))
  if (!found || (!isPinch && !isSpoon && unit?.kind !== 'unknown')) return undefined
  const after = tokens[found.to]
  const ofIt =
    after?.key === 'of' || after?.key === 'de' || (after?.key === 'd' && isApostrophe(tokens[found.to + 1]))
  const isName = after?.kind === 'word' && (isPinch || isSpoon || loneMeasures.has(word.key))
  const isAlone = isPinch && after === undefined // `sugar pinch`
  return (mayBe && (ofIt || isName)) || isAlone
    ? { term: { number: { value: 1, text: '1', to: at }, unit }, to: found.to }
    : undefined
}

const between = new Set(['(', '[', ')', ']', '/', '=', ',', ';', 'or', 'ou', 'oder'])
const longestCell = 200 // characters

/** A text that begins with an amount, as a cell holds it. */
export interface Measures {
  readonly quantities: readonly [Quantity, ...Quantity[]] // the same in several measures: `2 cups (474 ml)`, `4 cups / 540 g`
  readonly to: number // the token after them
}

/**
 * The amounts that tokens begin with, `mark` the decimal sign where a number alone does not tell; undefined where they begin
 * with none, or with a time or the like.
 */
export function measuresIn(tokens: readonly Token[], mark?: DecimalMark): Measures | undefined {
  const reading = mark ? { ...kitchen, mark } : kitchen
  const first = tokens[0] && quantityAt(tokens, 0, reading)
  if (!first || !('terms' in first)) return undefined
  const quantities: [Quantity, ...Quantity[]] = [first]
  let { to } = first
  for (let at = to; at < tokens.length; at++) {
    if (between.has(tokens[at]!.key)) continue
    const next = quantityAt(tokens, at, reading)
    if (!next || !('terms' in next) || !next.terms[0].unit) break
    quantities.push(next)
    to = next.to
    at = to - 1
  }
  while ([')', ']', '.'].includes(keyAt(tokens, to))) to++
  return { quantities, to }
}

/** The amount of a text of at most 200 characters that is nothing but one. */
export function wholeAmount(text: string): Quantity | undefined {
  const tokens = text.length > longestCell ? [] : tokensOf(text)
  const { quantities = [], to } = measuresIn(tokens) ?? {}
  return to === tokens.length && quantities.length === 1 ? quantities[0] : undefined
}
