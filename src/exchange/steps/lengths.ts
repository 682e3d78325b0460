import { cardinalAt } from '../../dough/lexicon/cardinals.js'
import { type Token, tokensOf } from '../../dough/lexicon/text-tokens.js'

/** A part of a sentence, by its places. */
export interface Span {
  readonly from: number
  readonly to: number
}

/** How a length is meant: of what is done, between two times, before or after something else, or within a longer one. */
export type LengthUse = 'length' | 'every' | 'after' | 'ahead' | 'within'

/** A length of time that a sentence says. Minutes. */
export interface SaidLength extends Span {
  readonly least: number
  readonly most: number
  readonly use: LengthUse
  readonly bound?: 'least' | 'most' // `at least`, `up to`
  readonly each?: true // of every piece
  readonly further?: true // `another`, `more`
  readonly unitCarried?: true // a number whose unit stands at an earlier one
  readonly words?: 'night' | 'few' // no number at all
}

interface Taken {
  readonly value: number
  readonly to: number
}

const fractions: Readonly<Record<string, number>> = { '½': 0.5, '¼': 0.25, '¾': 0.75, '⅓': 1 / 3, '⅔': 2 / 3 }
const units: readonly (readonly [unit: RegExp, minutes: number])[] = [
  [/[\s-]*(?:seconde?s?|secs?\.?|s)(?![\p{L}'])/uy, 1 / 60],
  [/[\s-]*(?:minutes?|mins?\.?(?!\p{L})|mn\.?|')(?![\p{L}\d])/uy, 1],
  [/[\s-]*(?:hours?|hrs?\.?|heures?|h)(?!\p{L})/uy, 60],
  [/[\s-]*(?:days?|jours?|d|j)(?![\p{L}'])/uy, 24 * 60],
]
const halves: readonly (readonly [words: RegExp, minutes: number])[] = [
  [/(?:an?\s+)?half(?:\s+an|-an)?[\s-]+hours?(?!\p{L})|(?:une\s+)?demi[e]?[\s-]heures?(?!\p{L})/uy, 30],
  [/three[\s-]quarters?\s+of\s+an\s+hour|(?:3|trois)\s*(?:\/\s*4|quarts)\s+d'heure/uy, 45],
  [/(?:a\s+)?quarter(?:\s+of\s+an)?[\s-]hour|(?:un\s+)?quart\s+d'heure/uy, 15],
]
const nights = /overnight|(?:all|through|during|for)\s+(?:the\s+)?night|(?:toute\s+)?(?:la|une)\s+nuit/uy
const few = /(?:a\s+few|several|some)\s+(?:minutes|hours)|quelques\s+(?:minutes|heures)/uy

const at = (pattern: RegExp, plain: string, from: number): number | undefined => {
  pattern.lastIndex = from
  return pattern.test(plain) ? pattern.lastIndex : undefined
}

const digits = /(\d+(?:[.,]\d+)?)?(?:\s?([½¼¾⅓⅔])|\s+([1-3])\/([2-4])(?!\d))?/y
const parted = /([1-3])\/([2-4])(?!\d)/y
const andHalf = /\s+(?:and\s+a\s+half|et\s+demie?)(?!\p{L})/uy
const andQuarter = /\s+(?:and\s+a\s+quarter|et\s+quart)(?!\p{L})/uy
const dash = /\s*(?:-|\s(?:to|or|a|ou)(?!\p{L})|\/(?=\d))\s*/uy
const andSign = /\s+(?:and|et)\s+/uy

/** Reads the lengths of one sentence. */
class LengthReader {
  readonly #tokens: readonly Token[]
  readonly #starts: ReadonlyMap<number, number>

  constructor(readonly plain: string) {
    this.#tokens = tokensOf(plain)
    this.#starts = new Map(this.#tokens.map((token, i) => [token.at, i]))
  }

  count(from: number): Taken | undefined {
    const { plain } = this
    parted.lastIndex = from
    const part = parted.exec(plain)
    if (part) return { value: Number(part[1]) / Number(part[2]), to: parted.lastIndex }
    digits.lastIndex = from
    const [found = '', whole, sign, over, under] = digits.exec(plain) ?? []
    if (found.trim() !== '') {
      const value =
        Number((whole ?? '0').replace(',', '.')) +
        (sign ? fractions[sign]! : over ? Number(over) / Number(under) : 0)
      return { value, to: from + found.length }
    }
    const token = this.#starts.get(from)
    const said = token === undefined ? undefined : cardinalAt(this.#tokens, token)
    return said && { value: said.value, to: this.#tokens[said.to - 1]!.end }
  }

  /** A number, and a half of one where that follows. */
  #halved(from: number): Taken | undefined {
    const count = this.count(from)
    if (!count) return undefined
    const to = at(andHalf, this.plain, count.to)
    return to === undefined ? count : { value: count.value + 0.5, to }
  }

  unit(from: number): Taken | undefined {
    for (const [unit, value] of units) {
      const to = at(unit, this.plain, from)
      if (to !== undefined) return { value, to }
    }
    return undefined
  }

  /** `1 h 30`, `an hour and a half`, `half an hour`: minutes. */
  time(from: number): Taken | undefined {
    const { plain } = this
    for (const [words, value] of halves) {
      const to = at(words, plain, from)
      if (to !== undefined) return { value, to }
    }
    const count = this.#halved(from)
    const unit = count && this.unit(count.to)
    if (!unit) return undefined
    const value = count.value * unit.value
    if (unit.value < 60) return { value, to: unit.to }
    const half = at(andHalf, plain, unit.to)
    if (half !== undefined) return { value: value + unit.value / 2, to: half }
    const quarter = at(andQuarter, plain, unit.to)
    if (quarter !== undefined) return { value: value + unit.value / 4, to: quarter }
    const next = at(/\s*(?:and\s+|et\s+)?(?=\d)/uy, plain, unit.to)
    const more = next === undefined ? undefined : this.count(next)
    const smaller = more && this.unit(more.to)
    if (more && smaller && smaller.value < unit.value)
      return { value: value + more.value * smaller.value, to: smaller.to }
    const isBare =
      more && !smaller && /^\d\d(?![\d%°]|\s*(?:[°%x×-]|[cf]\b|k?g\b|ml\b))/.test(plain.slice(next))
    return isBare && unit.value === 60 && more.value < 60
      ? { value: value + more.value, to: more.to }
      : { value, to: unit.to }
  }

  /** A time, or from one to another. */
  length(from: number): (Span & { least: number; most: number }) | undefined {
    const { plain } = this
    const isBetween = /(?:between|entre)\s+$/.test(plain.slice(Math.max(0, from - 10), from))
    const first = this.time(from)
    const low = first ?? this.#halved(from)
    if (!low) return undefined
    const between = at(isBetween ? andSign : dash, plain, low.to)
    const high = between === undefined ? undefined : this.time(between)
    if (!high) return first && { from, to: first.to, least: first.value, most: first.value }
    const unit = first ? 1 : this.#unitOf(between!)
    const [a, b] = [low.value * unit, high.value]
    return { from, to: high.to, least: Math.min(a, b), most: Math.max(a, b) }
  }

  #unitOf(from: number): number {
    const count = this.#halved(from)
    return (count && this.unit(count.to)?.value) ?? 1
  }
}

const every = /(?:\bevery|\beach|\btoutes\s+les|\btous\s+les|\bchaque)\s+(?:about\s+)?/y
const bareUnit = /(half[\s-]hour|demi[e]?[\s-]heures?|hours?|heures?)(?!\p{L})/uy
const about = String.raw`\s*(?:(?:about|around|approx(?:imately|\.)?|roughly|some|environ|env\.|~|the|les|la|a|an|further|another|de|d')\s*)*$`
const beforeIt = (words: string): RegExp => new RegExp(String.raw`\b(?:${words})${about}`)
const usesBefore: readonly (readonly [words: RegExp, use: LengthUse])[] = [
  [beforeIt("after|apres|au\\s+bout\\s+d[e']"), 'after'],
  [beforeIt('first|last|next|premieres?|premiers?|dernieres?|derniers?|over|over\\s+the|within'), 'within'],
  [beforeIt("every|intervals?\\s+of|intervalles?\\s+d[e']|espaces?\\s+d[e']"), 'every'],
]
const usesAfter: readonly (readonly [words: RegExp, use: LengthUse])[] = [
  [/^[\s,-]*(?:apart|intervals?|d'intervalle|d'ecart|between|entre\s+(?:chaque|les|eux|elles))/, 'every'],
  [/^[\s,]*(?:before|beforehand|ahead|earlier|in\s+advance|avant|plus\s+tot|a\s+l'avance|old)/, 'ahead'],
  [/^[\s,]*(?:later|plus\s+tard)/, 'after'],
]
const atLeast = beforeIt('at\\s+least|minimum(?:\\s+of)?|min\\.|no\\s+less\\s+than|au\\s+moins|minimum\\s+de')
const atMost = beforeIt(
  "up\\s+to|at\\s+most|no\\s+more\\s+than|no\\s+longer\\s+than|maximum(?:\\s+of)?|max\\.|jusqu'a|au\\s+plus|au\\s+maximum",
)
const orMore = /^\s*(?:or\s+(?:more|longer)|minimum|at\s+least|ou\s+plus|au\s+moins|\+)/
const orLess = /^\s*(?:at\s+(?:the\s+)?most|maximum|au\s+plus|au\s+maximum)/
const forEach = /^\s*(?:each|apiece|per\s+(?:piece|loaf|bun|side)|chacune?|par\s+(?:piece|pain))\b/
const further = /\b(?:another|a\s+further|further|encore)\s*$/
const more = /^\s*(?:more|longer|further|de\s+plus|supplementaires?|encore)\b/
const bareFurther =
  /\b(?:then|and|puis|et)\s+(?:for\s+)?(?:another\s+|a\s+further\s+|pendant\s+|encore\s+)?(\d{1,3})(?=\s*(?:more\b|longer\b|uncovered|without|with\s+the\s+lid|a\s+decouvert|sans\s+(?:le\s+)?couvercle|de\s+plus|at\s+\d|a\s+\d{3}))/g

/** The lengths of time that a sentence says, in their order, each with how it is meant. */
export function lengthsIn(plain: string): SaidLength[] {
  const reader = new LengthReader(plain)
  const found: SaidLength[] = []
  for (let from = 0; from < plain.length; from++) {
    if (!/[\p{L}\d½¼¾⅓⅔]/u.test(plain[from]!) || (from > 0 && /[\p{L}\d.,:/]/u.test(plain[from - 1]!)))
      continue
    const said = lengthAt(reader, plain, from)
    if (!said) continue
    found.push(said)
    from = said.to - 1
  }
  return withBare(plain, found)
}

function lengthAt(reader: LengthReader, plain: string, from: number): SaidLength | undefined {
  const interval = at(every, plain, from)
  if (interval !== undefined) {
    const length = reader.length(interval)
    const bare = length ? undefined : at(bareUnit, plain, interval)
    if (length) return { ...length, from, use: 'every' }
    if (bare === undefined) return undefined
    const minutes = /half|demi/.test(plain.slice(interval, bare)) ? 30 : 60
    return { from, to: bare, least: minutes, most: minutes, use: 'every' }
  }
  const night = at(nights, plain, from)
  if (night !== undefined)
    return { from, to: night, least: 8 * 60, most: 12 * 60, use: 'length', words: 'night' }
  const vague = at(few, plain, from)
  if (vague !== undefined) return { from, to: vague, least: 0, most: 0, use: 'length', words: 'few' }
  const length = reader.length(from)
  if (!length || length.most <= 0 || length.most > 60 * 24 * 60) return undefined
  const [before, after] = [plain.slice(Math.max(0, from - 40), from), plain.slice(length.to, length.to + 40)]
  const isFor = /\b(?:for|pendant)\s+(?:about\s+|another\s+)?$/.test(before)
  const use =
    usesBefore.find(([words]) => words.test(before))?.[1] ??
    usesAfter.find(([words, of]) => words.test(after) && !(isFor && of === 'ahead'))?.[1]
  const bound =
    atLeast.test(before) || orMore.test(after)
      ? 'least'
      : atMost.test(before) || orLess.test(after)
        ? 'most'
        : undefined
  return {
    ...length,
    use: use ?? 'length',
    ...(bound && { bound }),
    ...(forEach.test(after) && { each: true as const }),
    ...((further.test(before) || more.test(after)) && { further: true as const }),
  }
}

/** `25 minutes covered, then 20 uncovered`: a number that has the unit of the one before. */
function withBare(plain: string, found: SaidLength[]): SaidLength[] {
  for (const match of plain.matchAll(bareFurther)) {
    const to = match.index + match[0].length
    const from = to - match[1]!.length
    const before = found.findLast(one => one.to <= match.index && one.use === 'length' && !one.words)
    if (!before || found.some(one => one.from < to && from < one.to)) continue
    const minutes = Number(match[1]) * (before.most >= 180 ? 60 : 1)
    if (minutes > 0)
      found.push({ from, to, least: minutes, most: minutes, use: 'length', further: true, unitCarried: true })
  }
  return found.sort((a, b) => a.from - b.from)
}
