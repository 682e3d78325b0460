import { cardinalAt } from './cardinals.js'
import { numberWords } from './number-words.js'
import type { Quantity } from './quantities.js'
import { isApostrophe, type Token } from './text-tokens.js'
import { wordsOf } from './unit-words.js'
import { numberAt } from './written-numbers.js'

/** A quantity, or a share of what was made before. */
export interface Portion extends Quantity {
  readonly share?: number | 'rest' // of an earlier stage: all of the levain
}

/** How much, said without number and unit. */
interface Phrase {
  readonly share?: number | 'rest' // else nobody can weigh it
  readonly alone?: true // nothing needs to follow that says of what: `remaining levain`, `enough water`
}

const table = (rows: readonly (readonly [words: string, of: Phrase])[]): ReadonlyMap<string, Phrase> =>
  new Map(rows.flatMap(([words, of]) => wordsOf(words, () => of)))

/** Before a name. */
const phrases = table([
  ['all|whole|the whole|entire|the entire|every bit|tout|toute|tous|toutes', { share: 1 }],
  ['gesamter|gesamte|gesamten|gesamtes|der ganze|die ganze|das ganze|alles vom|alles von', { share: 1 }],
  [
    'restlicher|restliche|restlichen|restliches|der restliche|die restliche|das restliche',
    { share: 'rest', alone: true },
  ],
  ['la totalite|totalite|l integralite|integralite|l ensemble', { share: 1 }],
  ['everything from|everything of|all from', { share: 1, alone: true }],
  ['half|a half|one half|la moitie|moitie|une moitie', { share: 1 / 2 }],
  ['a third|one third|un tiers|le tiers', { share: 1 / 3 }],
  ['two thirds|deux tiers|les deux tiers', { share: 2 / 3 }],
  ['a quarter|one quarter|un quart|le quart', { share: 1 / 4 }],
  ['three quarters|trois quarts|les trois quarts', { share: 3 / 4 }],
  ['the rest|rest|the remainder|remainder|what is left|whatever is left', { share: 'rest' }],
  ['le reste|reste|le restant|ce qui reste|ce qu il reste', { share: 'rest' }],
  ['the remaining|remaining', { share: 'rest', alone: true }],
  ['the same weight|same weight|the same amount|same amount|the same quantity|same quantity', {}],
  ['the same volume|an equal weight|equal weight|an equal amount|equal amounts|an equal quantity', {}],
  ['equal quantities|equal parts|plenty|lots|a lot|a bit|a touch|a hint|a generous amount|a good amount', {}],
  ['as much', { alone: true }],
  ['le meme poids|meme poids|la meme quantite|meme quantite|autant|un soupcon|un nuage|beaucoup', {}],
  [
    'etwas|ein wenig|ein bisschen|reichlich|genug|enough|just enough|quelques|assez|suffisamment|plusieurs|several|extra|additional',
    { alone: true },
  ],
])
/** Behind one: `levain (all of it)`, `levain : tout`. */
const behind = table([
  [
    'all|all of it|the lot|the whole lot|the whole thing|everything|all of the above|all the above',
    { share: 1 },
  ],
  ['tout|le tout|en entier|en totalite', { share: 1 }],
])
const mostWords = 4
const definite = new Set(
  'the your our my this that these those du des le la les l votre notre ce cette'.split(' '),
)
const above = new Set('above ci-dessus dessus oben earlier'.split(' '))
const joins = new Set('and et plus with avec de or ou'.split(' '))

/** Words that may open any of them: most tokens do not. */
const starts: ReadonlySet<string> = new Set(
  [...phrases.keys(), ...behind.keys()].map(phrase => phrase.split(' ', 1)[0]!),
)

/** The longest phrase of a table that starts at a token, and the token after it. */
function phraseAt(tokens: readonly Token[], at: number, all: ReadonlyMap<string, Phrase>) {
  const words: string[] = []
  let found: (Phrase & { readonly to: number }) | undefined
  for (let i = at; i < tokens.length && words.length < mostWords; i++) {
    if (isApostrophe(tokens[i])) continue
    if (tokens[i]!.kind !== 'word') break
    words.push(tokens[i]!.key)
    const phrase = all.get(words.join(' '))
    if (phrase) found = { ...phrase, to: i + 1 }
  }
  return found
}

function quantity(from: number, to: number, word: string, share?: number | 'rest'): Portion {
  const number = { value: 1, text: '1', to: from }
  const terms = [{ number, unit: { kind: 'unknown', word } }] as const
  return { from, to, terms, about: [], ...(share === undefined ? {} : { share }) }
}

const isOf = (token: Token | undefined): boolean => token?.key === 'of' || token?.key === 'de'
const isEnd = (token: Token | undefined): boolean => token === undefined || token.kind === 'mark'

/** A share as a number with something of: `1/2 of the levain`, `50 % of the soaker`. */
function partAt(tokens: readonly Token[], at: number): (Phrase & { readonly to: number }) | undefined {
  const number = numberAt(tokens, at, cardinalAt)
  if (!number) return undefined
  const isPercent = tokens[number.to]?.text === '%'
  const share = isPercent ? number.value / 100 : number.value
  const to = isPercent ? number.to + 1 : number.to
  return share > 0 && share <= 1 && (isPercent || share < 1) && isOf(tokens[to]) ? { share, to } : undefined
}

/** `all of the levain`, `the rest of the water`: a share of what an article or a stage's name follows. */
function shareAt(
  tokens: readonly Token[],
  from: number,
  phrase: ReturnType<typeof phraseAt>,
  isStage: (key: string) => boolean,
) {
  const said = phrase ?? partAt(tokens, from)
  if (said?.share === undefined) return undefined
  let { to } = said
  if (isOf(tokens[to])) to++
  const article = definite.has(tokens[to]?.key ?? '')
  if (article) to++
  if (isApostrophe(tokens[to])) to++
  const { kind, key = '' } = tokens[to] ?? {}
  const ofStage = tokens.slice(to, to + mostWords).some(t => isStage(t.key))
  if (kind !== 'word' || above.has(key) || (!phrase && !ofStage)) return undefined
  // `the rest of the dough` is a heading
  if (said.share === 'rest' && !ofStage && (key === 'dough' || key === 'pate')) return undefined
  return article || ofStage || said.alone ? quantity(from, to, '', said.share) : undefined
}

/**
 * How much is said at a token without number and unit, if anything is: `all of the levain`, `enough water`. `isStage`
 * says whether a word names what was made before, of which a share may be taken.
 */
export function portionAt(
  tokens: readonly Token[],
  from: number,
  isStage: (key: string) => boolean,
): Portion | undefined {
  const { kind, key } = tokens[from]!
  if (kind === 'mark' || (kind === 'word' && !starts.has(key) && !numberWords.has(key))) return undefined
  const phrase = phraseAt(tokens, from, phrases)
  const share = shareAt(tokens, from, phrase, isStage)
  if (share) return share
  const before = tokens[from - 1]
  const whole = from > 0 && isEnd(before) ? phraseAt(tokens, from, behind) : undefined
  if (whole && isEnd(tokens[whole.to])) return quantity(from, whole.to, '', 1)
  if (!phrase || phrase.share !== undefined) return undefined
  // `enough water`, `the same weight of flour`; not `extra virgin olive oil`
  const { to, alone } = phrase
  const [last, next] = [tokens[to - 1]!, tokens[to]]
  const ofIt = isOf(next) || (next?.key === 'd' && isApostrophe(tokens[to + 1]))
  const isName =
    alone && next?.kind === 'word' && next.key !== 'as' && (isEnd(before) || joins.has(before!.key))
  const isKind = (last.key === 'extra' || last.key === 'additional') && !isEnd(tokens[to + 1])
  return (ofIt || isName) && !isKind ? quantity(from, to, last.text) : undefined
}
