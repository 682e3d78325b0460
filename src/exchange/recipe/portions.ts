import { numberWords } from '../../dough/amounts/number-words.js'
import type { Quantity } from '../../dough/amounts/quantities.js'
import { isApostrophe, type Token } from '../../dough/amounts/text-tokens.js'
import { numberAt } from '../../dough/amounts/written-numbers.js'
import { above, namesEarlierStage } from './kitchen-words.js'

/** An amount of a row: one of the shared grammar's, or a share of what was made before. */
export interface RowQuantity extends Quantity {
  readonly share?: number | 'rest' // of an earlier stage: all of the levain
}

/** What a phrase says of how much: a share, or nothing that anybody can weigh. */
interface Portion {
  readonly share?: number | 'rest'
  readonly alone?: true // nothing needs to follow that says of what: `remaining levain`, `enough water`
}

const table = (rows: readonly (readonly [words: string, value: Portion])[]): ReadonlyMap<string, Portion> =>
  new Map(rows.flatMap(([words, value]) => words.split('|').map(word => [word, value] as const)))

/** Shares of what was made before. */
const shares = table([
  ['all|whole|the whole|entire|the entire|every bit|tout|toute|tous|toutes', { share: 1 }],
  ['la totalite|totalite|l integralite|integralite|l ensemble', { share: 1 }],
  ['half|a half|one half|la moitie|moitie|une moitie', { share: 1 / 2 }],
  ['a third|one third|un tiers|le tiers', { share: 1 / 3 }],
  ['two thirds|deux tiers|les deux tiers', { share: 2 / 3 }],
  ['a quarter|one quarter|un quart|le quart', { share: 1 / 4 }],
  ['three quarters|trois quarts|les trois quarts', { share: 3 / 4 }],
  ['the rest|rest|the remainder|remainder|what is left|whatever is left', { share: 'rest' }],
  ['le reste|reste|le restant|ce qui reste|ce qu il reste', { share: 'rest' }],
  ['the remaining|remaining', { share: 'rest', alone: true }],
])

/** The same behind a name: `levain (all of it)`, `levain : tout`. */
const wholes = table([
  [
    'all|all of it|the lot|the whole lot|the whole thing|everything|all of the above|all the above',
    { share: 1 },
  ],
  ['tout|le tout|en entier|en totalite', { share: 1 }],
])

/** As much as something else, or as it takes. */
const vague = table([
  ['the same weight|same weight|the same amount|same amount|the same quantity|same quantity', {}],
  ['the same volume|an equal weight|equal weight|an equal amount|equal amounts|an equal quantity', {}],
  ['equal quantities|equal parts|plenty|lots|a lot|a bit|a touch|a hint|a generous amount|a good amount', {}],
  ['as much|le meme poids|meme poids|la meme quantite|meme quantite|autant|un soupcon|un nuage|beaucoup', {}],
  ['enough|just enough|quelques|assez|suffisamment|plusieurs|several|extra|additional', { alone: true }],
])
const mostWords = 4

const definite = new Set(
  'the your our my this that these those du des le la les l votre notre ce cette'.split(' '),
)
const isOf = (token: Token | undefined): boolean => token?.key === 'of' || token?.key === 'de'

/** Words that may open any of them: most tokens do not. */
const starts: ReadonlySet<string> = new Set(
  [...shares.keys(), ...wholes.keys(), ...vague.keys()].map(phrase => phrase.split(' ')[0]!),
)

/** The longest phrase of a table that starts at a token. */
function phraseAt(tokens: readonly Token[], at: number, phrases: ReadonlyMap<string, Portion>) {
  const words: string[] = []
  let found: (Portion & { readonly to: number }) | undefined
  for (let i = at; i < tokens.length && words.length < mostWords; i++) {
    const token = tokens[i]!
    if (isApostrophe(token)) continue
    if (token.kind !== 'word') break
    words.push(token.key)
    const portion = phrases.get(words.join(' '))
    if (portion) found = { ...portion, to: i + 1 }
  }
  return found
}

function quantity(from: number, to: number, word: string, share?: number | 'rest'): RowQuantity {
  const number = { value: 1, text: '1', to: from }
  const terms = [{ number, unit: { kind: 'unknown', word } }] as const
  return { from, to, terms, about: [], ...(share === undefined ? {} : { share }) }
}

/** A share as a number with something of: `1/2 of the levain`, `50 % of the soaker`. */
function partAt(tokens: readonly Token[], at: number): (Portion & { readonly to: number }) | undefined {
  const number = numberAt(tokens, at)
  if (!number) return undefined
  const isPercent = tokens[number.to]?.text === '%'
  const share = isPercent ? number.value / 100 : number.value
  const to = isPercent ? number.to + 1 : number.to
  return share > 0 && share <= 1 && (isPercent || share < 1) && isOf(tokens[to]) ? { share, to } : undefined
}

/** `all of the levain`, `tout le levain`, `the rest of the water`. */
function shareAt(tokens: readonly Token[], from: number): RowQuantity | undefined {
  const phrase = phraseAt(tokens, from, shares)
  const said = phrase ?? partAt(tokens, from)
  if (!said) return undefined
  let { to } = said
  if (isOf(tokens[to])) to++
  const article = definite.has(tokens[to]?.key ?? '')
  if (article) to++
  if (isApostrophe(tokens[to])) to++
  const name = tokens[to]
  const isStage = tokens.slice(to, to + mostWords).some(t => namesEarlierStage(t.key))
  if (name?.kind !== 'word' || above.has(name.key) || (!phrase && !isStage)) return undefined
  // `the rest of the dough` is a heading
  if (said.share === 'rest' && !isStage && (name.key === 'dough' || name.key === 'pate')) return undefined
  return article || isStage || said.alone ? quantity(from, to, '', said.share) : undefined
}

const isEnd = (token: Token | undefined): boolean => token === undefined || token.kind === 'mark'
const joins = new Set(['and', 'et', 'plus', 'with', 'avec', 'de', 'or', 'ou'])

/** `enough water`, `the same weight of flour`; not `extra virgin olive oil`. */
function vagueAt(tokens: readonly Token[], from: number): RowQuantity | undefined {
  const phrase = phraseAt(tokens, from, vague)
  if (!phrase) return undefined
  const { to, alone } = phrase
  const [last, next] = [tokens[to - 1]!, tokens[to]]
  const before = tokens[from - 1]
  const ofIt = isOf(next) || (next?.key === 'd' && isApostrophe(tokens[to + 1]))
  const isName = alone && next?.kind === 'word' && (isEnd(before) || joins.has(before!.key))
  const isKind = (last.key === 'extra' || last.key === 'additional') && !isEnd(tokens[to + 1])
  return (ofIt || isName) && !isKind ? quantity(from, to, last.text) : undefined
}

/** How much is said at a token without number and unit, if anything is. */
export function portionAt(tokens: readonly Token[], at: number): RowQuantity | undefined {
  const { kind, key } = tokens[at]!
  if (kind === 'mark' || (kind === 'word' && !starts.has(key) && !numberWords.has(key))) return undefined
  const share = shareAt(tokens, at)
  if (share) return share
  const whole = at > 0 && isEnd(tokens[at - 1]) ? phraseAt(tokens, at, wholes) : undefined
  return whole && isEnd(tokens[whole.to]) ? quantity(at, whole.to, '', 1) : vagueAt(tokens, at)
}
