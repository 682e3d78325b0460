import { cardinalAt } from '../../dough/lexicon/cardinals.js'
import { tokensOf } from '../../dough/lexicon/text-tokens.js'
import type { SaidLength, Span } from './lengths.js'

/** Hands that come again, as a sentence says it: four sets of folds every half hour. */
export interface SaidFolds extends Span {
  readonly times: number | undefined // not said
  readonly every: number | undefined // minutes; not said
  readonly minutes: number | undefined // each time; not said
  readonly isRepeated: boolean // of what a sentence before says
}

const number = String.raw`(\d{1,2}|one|two|three|four|five|six|seven|eight|a\s+couple\s+of|une?|deux|trois|quatre|cinq|sept|huit)`
const counted = new RegExp(
  String.raw`\b${number}\s*(?:x\s*)?(?:[-\s]\s*)?(?:(?:sets?|rounds?|series|sequences?|lots?)\s+(?:of\s+|de\s+|d')?)?(?:(?:gentle|good|coil|letter|bowl|stretch(?:es)?)[-\s]+(?:(?:and|&|n)\s+)?)*(?:folds?|foldings?|s\s*&\s*f(?!\w)|turns?|stretch(?:es)?(?:\s+(?:and|&)\s+folds?)?|rabats?|plis?|tours?(?!\s+de\s+main)|pliages?)\b`,
  'g',
)
const timesSaid = new RegExp(
  String.raw`\b(?:(once|twice|thrice)|${number}\s*(?:more\s+|further\s+|other\s+)?(?:times|fois)|(?:another\s+)${number}\s+times)\b`,
  'g',
)
const verb =
  /\bs\s*&\s*f\b|\b(?:(?:stretch|coil)[-\s]+(?:(?:and|&)[-\s]+)?)?fold(?:s|ing)?\b(?!\s+(?:in|into|it\s+in|through)\b)|\bturns?\b(?=.{0,20}\b(?:every|times)\b)|\btours\b(?=.{0,30}\b(?:toutes|tous|espaces|minutes)\b)|\brabat(?:s|tre|tez)?\b|\bpli(?:s|er|ez|age|ages)\b|\brepeat\b|\brepete[rz]?\b/
const repeating = /\brepeat\b|\brepete[rz]?\b/

const numbers: Readonly<Record<string, number>> = { once: 1, twice: 2, thrice: 3 }

function numberOf(text: string): number {
  if (/^a\s+couple/.test(text)) return 2
  if (/^\d/.test(text)) return Number(text)
  return numbers[text] ?? cardinalAt(tokensOf(text), 0)?.value ?? 1
}

const isMore = /\b(?:more|further|encore|de\s+plus|another)\b/

/** The folds that a sentence says; undefined where it says none that come again. */
export function foldsIn(plain: string, lengths: readonly SaidLength[]): SaidFolds | undefined {
  const named = verb.exec(plain)
  if (!named) return undefined
  const many = [...plain.matchAll(counted)][0]
  const times = [...plain.matchAll(timesSaid)].find(({ index }) => index > named.index - 30)
  const every = lengths.find(({ use }) => use === 'every')
  if (!many && !times && !every) return undefined
  const isRepeated = repeating.test(named[0])
  const word = many ? many[1]! : times && (times[1] ?? times[2] ?? times[3]!)
  const count = word === undefined ? undefined : numberOf(word)
  if (count === 1 && !every && !isRepeated) return undefined
  const extra = isRepeated && times && isMore.test(plain.slice(times.index, times.index + 40)) ? 1 : 0
  const spans = [named, many, times].flatMap(match =>
    match ? [{ from: match.index, to: match.index + match[0].length }] : [],
  )
  const each = lengths.find(({ each: of }) => of)
  return {
    times: count === undefined ? undefined : count + extra,
    every: every && (every.least + every.most) / 2,
    minutes: each?.least,
    isRepeated,
    from: Math.min(...spans.map(({ from }) => from)),
    to: Math.max(...spans.map(({ to }) => to)),
  }
}
