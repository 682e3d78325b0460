import { namesEarlierStage } from './kitchen-words.js'
import { type NumberRead, numberAt } from './numbers.js'
import { isApostrophe, type Token } from './tokens.js'
import { type UnitWord, unitTable } from './unit-words.js'

/** How much, said without a number and a unit. */
export interface Portion {
  readonly number: NumberRead
  readonly unit: UnitWord
  readonly to: number // the token after
}

const table = <V>(rows: readonly (readonly [words: string, value: V])[]): ReadonlyMap<string, V> =>
  new Map(rows.flatMap(([words, value]) => words.split('|').map(word => [word, value] as const)))

/** Shares of what was made before. `alone`: no article needs to follow, `remaining levain`. */
const shares = table<{ of: number | 'rest'; alone?: true }>([
  ['all|whole|the whole|entire|the entire|every bit|tout|toute|tous|toutes', { of: 1 }],
  ['la totalite|totalite|l integralite|integralite|l ensemble', { of: 1 }],
  ['half|a half|one half|la moitie|moitie|une moitie', { of: 1 / 2 }],
  ['a third|one third|un tiers|le tiers', { of: 1 / 3 }],
  ['two thirds|deux tiers|les deux tiers', { of: 2 / 3 }],
  ['a quarter|one quarter|un quart|le quart', { of: 1 / 4 }],
  ['three quarters|trois quarts|les trois quarts', { of: 3 / 4 }],
  ['the rest|rest|the remainder|remainder|what is left|whatever is left', { of: 'rest' }],
  ['le reste|reste|le restant|ce qui reste|ce qu il reste', { of: 'rest' }],
  ['the remaining|remaining', { of: 'rest', alone: true }],
])
const definite = new Set(
  'the your our my this that these those du des le la les l votre notre ce cette'.split(' '),
)
const of = new Set(['of', 'de'])

/** The same behind a name: `levain (all of it)`, `levain : tout`. */
const wholes = table([
  ['all|all of it|the lot|the whole lot|the whole thing|everything|tout|le tout|en entier|en totalite', 1],
])

/** As much as something else, or as it takes. `bare`: no `of` needs to follow, `enough water`. */
const vague = table<{ bare?: true }>([
  [
    'the same weight|same weight|the same amount|same amount|the same quantity|same quantity|the same volume',
    {},
  ],
  [
    'an equal weight|equal weight|an equal amount|equal amounts|an equal quantity|equal quantities|equal parts',
    {},
  ],
  ['plenty|lots|a lot|a bit|a touch|a hint|a generous amount|a good amount|as much', {}],
  ['le meme poids|meme poids|la meme quantite|meme quantite|autant|un soupcon|un nuage|beaucoup', {}],
  ['enough|just enough|quelques|assez|suffisamment|plusieurs|several|extra|additional', { bare: true }],
])

/** Words that may open any of them: most tokens do not. */
export const portionStarts: ReadonlySet<string> = new Set(
  [...shares.keys(), ...wholes.keys(), ...vague.keys()].map(phrase => phrase.split(' ')[0]!),
)

/** The longest phrase of a table that starts at a token. */
function phraseAt<V>(
  tokens: readonly Token[],
  at: number,
  phrases: ReadonlyMap<string, V>,
): { value: V; to: number } | undefined {
  const words: string[] = []
  let found: { value: V; to: number } | undefined
  for (let i = at; i < tokens.length && words.length < 4; i++) {
    const token = tokens[i]!
    if (isApostrophe(token)) continue
    if (token.kind !== 'word') break
    words.push(token.key)
    const value = phrases.get(words.join(' '))
    if (value !== undefined) found = { value, to: i + 1 }
  }
  return found
}

const one = (to: number): NumberRead => ({ value: 1, text: '1', to })
const portion = (to: number, unit: UnitWord): Portion => ({ number: one(to), unit, to })

/** A share as a number with something of: `1/2 of the levain`, `50 % of the soaker`. */
function partAt(tokens: readonly Token[], at: number): { of: number; to: number } | undefined {
  const number = numberAt(tokens, at)
  if (!number) return undefined
  const isPercent = tokens[number.to]?.text === '%'
  const value = isPercent ? number.value / 100 : number.value
  const to = isPercent ? number.to + 1 : number.to
  return value > 0 && value <= 1 && (isPercent || value < 1) && of.has(tokens[to]?.key ?? '')
    ? { of: value, to }
    : undefined
}

/** A stage's name by a word of it, at most three words on. */
const namesStage = (tokens: readonly Token[], at: number): boolean =>
  tokens.slice(at, at + 4).some(t => namesEarlierStage(t.key))

/** `all of the levain`, `tout le levain`, `the rest of the water`. */
function shareAt(tokens: readonly Token[], at: number): Portion | undefined {
  const phrase = phraseAt(tokens, at, shares)
  const part = partAt(tokens, at)
  const share = phrase ? { ...phrase.value, to: phrase.to } : part
  if (!share) return undefined
  let { to } = share
  if (of.has(tokens[to]?.key ?? '')) to++
  const article = definite.has(tokens[to]?.key ?? '')
  if (article) to++
  if (isApostrophe(tokens[to])) to++
  const known = namesStage(tokens, to)
  const name = tokens[to]
  if (name?.kind !== 'word' || (part && !phrase && !known)) return undefined
  // `the rest of the dough` is a heading
  if (share.of === 'rest' && !known && ['dough', 'pate'].includes(name.key)) return undefined
  if (!article && !known && !('alone' in share)) return undefined
  return portion(to, { kind: 'share', of: share.of })
}

const isEnd = (token: Token | undefined): boolean => token === undefined || token.kind === 'mark'

/** Amounts that stand where a new thing may start. */
const joins = new Set(['and', 'et', 'plus', 'with', 'avec', 'de', 'or', 'ou'])
const mayOpen = (before: Token | undefined): boolean => isEnd(before) || joins.has(before!.key)

function vagueAt(tokens: readonly Token[], at: number): Portion | undefined {
  const phrase = phraseAt(tokens, at, vague)
  if (!phrase) return undefined
  const { value, to } = phrase
  const name = of.has(tokens[to]?.key ?? '') || (tokens[to]?.key === 'd' && isApostrophe(tokens[to + 1]))
  const isName = value.bare && mayOpen(tokens[at - 1]) && tokens[to]?.kind === 'word'
  if (!name && !isName) return undefined
  // `extra virgin olive oil`, `extra strong flour`
  if (['extra', 'additional'].includes(tokens[to - 1]!.key) && !isEnd(tokens[to + 1])) return undefined
  return portion(to, { kind: 'unknown', word: tokens[to - 1]!.text })
}

/** Measures that need no `of` either. */
const scant = new Set('handful knob dash splash drizzle glug poignee bunch sprinkle sprinkling'.split(' '))

/** A measure that needs no number: `pinch of salt`, `handful of seeds`. */
function measureAt(tokens: readonly Token[], at: number): Portion | undefined {
  const unit = unitTable.get(tokens[at]!.key)
  if (!unit || (unit.kind !== 'pinch' && unit.kind !== 'unknown')) return undefined
  const after = tokens[at + 1]
  const ofIt =
    after !== undefined && (of.has(after.key) || (after.key === 'd' && isApostrophe(tokens[at + 2])))
  return ofIt || ((unit.kind === 'pinch' || scant.has(tokens[at]!.key)) && after?.kind === 'word')
    ? portion(at + 1, unit)
    : undefined
}

/** A measure without a number, where one may open a name: after words like `good`, `generous` too. */
export function bareMeasureAt(
  tokens: readonly Token[],
  from: number,
  isAbout: (token: Token | undefined) => boolean,
): { portion: Portion; about: string[] } | undefined {
  if (tokens[from]!.kind !== 'word' || !mayOpen(tokens[from - 1])) return undefined
  let at = from
  while (at < from + 3 && isAbout(tokens[at])) at++
  const found = tokens[at] && measureAt(tokens, at)
  return found && { portion: found, about: tokens.slice(from, at).map(t => t.text) }
}

/** How much is said at a token without number and unit, if anything is. */
export function portionAt(tokens: readonly Token[], at: number): Portion | undefined {
  const share = shareAt(tokens, at)
  if (share) return share
  const whole = at > 0 && isEnd(tokens[at - 1]) ? phraseAt(tokens, at, wholes) : undefined
  if (whole && isEnd(tokens[whole.to])) return portion(whole.to, { kind: 'share', of: 1 })
  return vagueAt(tokens, at)
}
