import type { DecimalMark } from '../lexicon/digits.js'
import {
  isAbout,
  type Reading,
  skipAbout,
  sumFrom,
  type Term,
  type TermRead,
  termAt,
  typedLexicon,
  unitAt,
} from '../lexicon/terms.js'
import { isApostrophe, type Token, tokensOf } from '../lexicon/text-tokens.js'
import { isEstimate } from '../lexicon/unit-words.js'
import { numberAt } from '../lexicon/written-numbers.js'
import { allOfIt } from './all-of-it.js'
import type { Spoken } from './spoken-reader.js'

const linking = new Set(['of', 'de', 'd', 'du', 'des', 'the', 'von'])
const stem = (word: string): string => (word.length > 3 ? word.replace(/(?:es|er|en|[sxen])$/, '') : word)

/** Whether all words from a token on are the ingredient's own, whatever their number: `3 eggs` of Large egg. */
function isNamed(tokens: readonly Token[], from: number, names: readonly string[]): boolean {
  const own = new Set(names.flatMap(name => tokensOf(name).map(token => stem(token.key))))
  const rest = tokens
    .slice(from)
    .filter(t => !linking.has(t.key) && !isApostrophe(t) && !isAbout(t, typedLexicon))
  return rest.length > 0 && rest.every(token => own.has(stem(token.key)))
}

/** `pinch`, `Prise`: an estimate needs no number. */
function loneAt(tokens: readonly Token[], at: number, reading: Reading) {
  const found = unitAt(tokens, at, reading)
  return isEstimate(found?.unit) && found
    ? { term: { number: { value: 1, text: '1', to: at }, unit: found.unit }, to: found.to }
    : undefined
}

/** `an egg`: an article counts what is named behind it. */
function oneAt(tokens: readonly Token[], at: number): TermRead | undefined {
  const number = numberAt(tokens, at)
  return number && { term: { number, unit: undefined }, to: number.to }
}

const all = new Set(['all', 'whole', 'entire', 'tout', 'toute', 'ganz', 'ganze', 'ganzer', 'alles'])
const it = new Set(['of', 'the', 'it', 'le', 'la', 'l', 'de', 'der', 'die', 'das', 'den', 'davon'])

/** `all of the levain`, `the whole soaker`, `tout le levain`: `names` are those of what the line is of. */
function saysAll(tokens: readonly Token[], names: readonly string[]): boolean {
  const at = tokens.findIndex(token => !it.has(token.key))
  if (!all.has(tokens[at]?.key ?? '')) return false
  const rest = tokens.slice(at + 1).filter(token => !it.has(token.key) && !isApostrophe(token))
  return rest.length === 0 || isNamed(rest, 0, names)
}

const written = ({ number, unit, minus }: Term, at: number): string => {
  const sign = at === 0 ? '' : minus ? ' - ' : ' + '
  return `${sign}${number.text}${unit?.kind === 'unit' ? ` ${unit.unit}` : unit ? ' each' : ''}`
}

/**
 * An amount as it is said: `1 lb 4 oz`, `half a cup`, `~20 g`, `2 c. à s.`, `a pinch`, and `3 eggs` on a line of eggs,
 * whose `names` are the ingredient's. `mark` decides where a number alone does not tell. Undefined for anything else.
 */
export function readSpoken(
  text: string,
  mark: DecimalMark,
  names: readonly string[] = [],
): Spoken | undefined {
  if (text.length > 200) return undefined
  const tokens = tokensOf(text)
  const reading: Reading = { ...typedLexicon, mark }
  if (saysAll(tokens, names)) return { text: allOfIt, isBare: false }
  const about: string[] = []
  const at = skipAbout(tokens, 0, about, reading)
  const first = loneAt(tokens, at, reading) ?? termAt(tokens, at, about, reading) ?? oneAt(tokens, at)
  if (!first || first.term.unit?.kind === 'not an amount') return undefined
  const { terms, to } = first.term.unit
    ? sumFrom(tokens, first, about, reading)
    : { terms: [first.term] as const, to: first.to }
  const end = tokens[to]?.text === '.' ? to + 1 : to
  const { unit } = first.term
  const isNamedToo = end < tokens.length && isNamed(tokens, end, names)
  // `half` alone may be anything's name
  const isAlone = end === tokens.length && (unit !== undefined || tokens[at]?.kind !== 'word')
  if (!isNamedToo && !isAlone) return undefined
  const counted: readonly [Term] | undefined =
    unit || !isNamedToo ? undefined : [{ ...first.term, unit: { kind: 'each', word: '' } }]
  return { text: (counted ?? terms).map(written).join(''), isBare: !unit && !counted }
}
