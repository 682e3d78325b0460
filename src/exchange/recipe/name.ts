import { aboutWords, numberWords } from '../../dough/amounts/number-words.js'
import { isApostrophe, type Token } from '../../dough/amounts/text-tokens.js'
import type { Larder } from '../../dough/document/larder.js'
import {
  fillers,
  isOneOf,
  kindWords,
  noteParticiples,
  noteStarts,
  stateWords,
  temperatureWords,
} from './kitchen-words.js'
import { larderName } from './larder-names.js'

/** An ingredient's name with what was said about it besides. */
export interface NameRead {
  readonly ingredient: string
  readonly known: boolean // the larder has it
  readonly notes: readonly string[]
}

/** Words of a row with the spaces between them as one space; none before what is tied to the word before. */
export const joined = (tokens: readonly Token[]): string =>
  tokens
    .map((token, i) => (i > 0 && token.gap ? ` ${token.text}` : token.text))
    .join('')
    .trim()

/** Without `of`, `de l’`, dots and dashes at its start, and marks at its end. */
export function bare(tokens: readonly Token[]): readonly Token[] {
  let from = 0
  let to = tokens.length
  const starts = (token: Token) =>
    (token.kind === 'mark' && token.text !== '%') || fillers.has(token.key) || isApostrophe(token)
  while (from < to && starts(tokens[from]!)) from++
  while (to > from && tokens[to - 1]!.kind === 'mark' && !')]%'.includes(tokens[to - 1]!.text)) to--
  while (to > from && ['de', 'of', 'et', 'and', 'du', 'd', 'with', 'a', 'x'].includes(tokens[to - 1]!.key))
    to--
  return tokens.slice(from, to)
}

/** `en morceaux`, `en plusieurs fois`: how it is cut or given; `en poudre` is of the name. */
const cutInto = new Set(
  'plusieurs morceaux petits des cubes lamelles tranches rondelles quartiers fines'.split(' '),
)

/** Where the remark about a name starts: `for dusting`, `à 28 °C`, `or honey`. */
export function noteStart(tokens: readonly Token[], from = 0, to = tokens.length): number {
  for (let i = from; i < to; i++) {
    const token = tokens[i]!
    if (noteStarts.has(token.key) || (i > from && noteParticiples.has(token.key))) return i
    const after = tokens[i + 1]
    if (token.low === 'à' && (after?.kind === 'number' || /^temp|^discretion/.test(after?.key ?? '')))
      return i
    if (token.key === 'en' && (numberWords.has(after?.key ?? '') || cutInto.has(after?.key ?? ''))) return i
    if (token.kind === 'mark' && ',([{;:=/|!?+@'.includes(token.text)) return i
    if ('–—-'.includes(token.text) && token.gap && after?.gap) return i
    if (token.text === '.' && (after === undefined || after.gap)) return i
  }
  return to
}

/** The words with those of a set taken out, wherever they stand; the words taken. */
function without(tokens: readonly Token[], words: ReadonlySet<string>): [Token[], string[]] {
  const kept: Token[] = []
  const taken: string[] = []
  for (const token of tokens)
    if (isOneOf(words, token)) taken.push(token.text)
    else kept.push(token)
  return [kept, taken]
}

/** The words without `100 % hydration`, which says how wet a starter is; the words taken. */
function withoutHydration(tokens: readonly Token[]): [readonly Token[], string[]] {
  const at = tokens.findIndex(
    (t, i) => t.kind === 'number' && tokens[i + 1]?.text === '%' && /^hydrat/.test(tokens[i + 2]?.key ?? ''),
  )
  if (at < 0 || tokens.length === 3) return [tokens, []]
  return [[...tokens.slice(0, at), ...tokens.slice(at + 3)], [joined(tokens.slice(at, at + 3))]]
}

const both = new Set([...kindWords, ...stateWords, ...aboutWords])

/**
 * The name in a run of words. Temperatures go into the note; so does what was done to an ingredient and
 * what kind of it is wanted, where the rest is a name in the larder. Else it stays as written.
 */
export function nameOf(words: readonly Token[], larder: Larder): NameRead {
  const [tokens, hydration] = withoutHydration(bare(words).slice(0, 40))
  const [still, warm] = without(tokens, temperatureWords)
  const temperatures = [...hydration, ...warm]
  const plain = bare(still)
  if (plain.length === 0) return { ingredient: '', known: false, notes: temperatures }
  const name = larderName(larder, joined(plain))
  if (name) return { ingredient: name, known: true, notes: temperatures }
  const [kinds, states] = without(plain, stateWords)
  for (const [kept, taken] of [[kinds, states] as const, without(plain, both)]) {
    const rest = bare(kept)
    const found = rest.length > 0 ? larderName(larder, joined(rest)) : undefined
    if (found) return { ingredient: found, known: true, notes: [...temperatures, together(taken)] }
  }
  const rest = bare(states.length > 0 && kinds.length > 0 ? kinds : plain)
  const notes = kinds.length > 0 && states.length > 0 ? [...temperatures, together(states)] : temperatures
  return { ingredient: joined(rest), known: false, notes }
}

const together = (taken: readonly string[]): string => taken.join(' ')

/** Is there nothing in these words but what is done to an ingredient? */
export const isState = (tokens: readonly Token[], orNothing = false): boolean => {
  const words = tokens.filter(t => t.kind === 'word')
  return (
    (orNothing || words.length > 0) &&
    words.every(
      t =>
        isOneOf(stateWords, t) || isOneOf(temperatureWords, t) || isOneOf(kindWords, t) || fillers.has(t.key),
    )
  )
}
