import type { Larder } from '../../dough/document/larder.js'
import { larderName } from '../../dough/larder/spelled-names.js'
import { aboutWords } from '../../dough/lexicon/kitchen-measures.js'
import { numberWords } from '../../dough/lexicon/number-words.js'
import { isApostrophe, type Token } from '../../dough/lexicon/text-tokens.js'
import { isOneOf, kitchen, type Purpose, places, uses } from './kitchen-words.js'
import { printedTokens } from './printed-tokens.js'

/** An ingredient's name with what was said about it besides. */
export interface NameRead {
  readonly ingredient: string
  readonly known: boolean // the larder has it
  readonly notes: readonly string[]
}

const mostWords = 40

/** Words of a row with the spaces between them as one space; none before what is tied to the word before. */
export const joined = (tokens: readonly Token[]): string =>
  tokens
    .map((token, i) => (i > 0 && token.gap ? ` ${token.text}` : token.text))
    .join('')
    .trim()

/** Without `of`, `de l’`, dots and dashes at its start, and marks at its end. */
export function bare(tokens: readonly Token[]): readonly Token[] {
  const isLead = ({ kind, text, key }: Token) => (kind === 'mark' && text !== '%') || kitchen.fillers.has(key)
  const isTail = ({ kind, text, key }: Token) =>
    kind === 'mark' ? !')]%'.includes(text) : kitchen.nameEnds.has(key)
  let [from, to] = [0, tokens.length]
  while (from < to && (isLead(tokens[from]!) || isApostrophe(tokens[from]))) from++
  while (to > from && isTail(tokens[to - 1]!)) to--
  return tokens.slice(from, to)
}

/** Where the remark about a name starts: `for dusting`, `à 28 °C`, `or honey`. */
export function noteStart(tokens: readonly Token[], from = 0, to = tokens.length): number {
  for (let i = from; i < to; i++) {
    const { kind, key, low, text, gap } = tokens[i]!
    const after = tokens[i + 1]
    const next = after?.key ?? ''
    const starts =
      kind === 'mark'
        ? ',([{;:=|!?+@'.includes(text) ||
          (text === '/' && (gap || after?.gap)) ||
          ('–—-'.includes(text) && gap && after?.gap) ||
          (text === '.' && (after === undefined || after.gap))
        : kitchen.noteStarts.has(key) ||
          (i > from && kitchen.noteParticiples.has(key)) ||
          ((key === 'n' || key === 'q') && after?.text === '.') || // n. B., q. s.
          (low === 'à' && (after?.kind === 'number' || /^temp|^discretion/.test(next))) ||
          (key === 'en' && (numberWords.has(next) || kitchen.cutInto.has(next)))
    if (starts) return i
  }
  return to
}

/** The words with those of a set taken out, wherever they stand, `non blanchie` with its `non`; the words taken. */
function without(tokens: readonly Token[], words: ReadonlySet<string>): [readonly Token[], string[]] {
  const isTaken = tokens.map(
    (token, i) => isOneOf(words, token) || (isNot.has(token.key) && isOneOf(words, tokens[i + 1] ?? token)),
  )
  const kept = bare(tokens.filter((_, i) => !isTaken[i]))
  return [kept, tokens.filter((_, i) => isTaken[i]).map(t => t.text)]
}

const isNot = new Set(['non', 'not', 'pas'])

/** The words without `100 % hydration`, which says how wet a starter is; the words taken. */
function withoutHydration(tokens: readonly Token[]): [readonly Token[], string[]] {
  const at = tokens.findIndex((t, i) => t.key.startsWith('hydrat') && tokens[i - 1]?.text === '%')
  if (at < 2 || tokens.length === 3) return [tokens, []]
  return [[...tokens.slice(0, at - 2), ...tokens.slice(at + 1)], [joined(tokens.slice(at - 2, at + 1))]]
}

const statesAndKinds = new Set([...kitchen.kinds, ...kitchen.states, ...aboutWords])

/**
 * The name in a run of words. Temperatures go into the note; so does what was done to an ingredient and
 * what kind of it is wanted, where the rest is a name in the larder. Else it stays as written.
 */
export function nameOf(words: readonly Token[], larder: Larder): NameRead {
  const [tokens, hydration] = withoutHydration(bare(words).slice(0, mostWords))
  const [whole, warm] = without(tokens, kitchen.temperatures)
  const [stateless, states] = without(whole, kitchen.states)
  // `active dry yeast dissolved`
  const last = whole.findLastIndex(t => !isOneOf(kitchen.states, t))
  const behind = [whole.slice(0, last + 1), whole.slice(last + 1).map(t => t.text)] as const
  const readings = [[whole, []], behind, [stateless, states], without(whole, statesAndKinds)] as const
  for (const [kept, taken] of readings) {
    const ingredient = kept.length > 0 ? larderName(larder, joined(kept)) : undefined
    if (ingredient) return { ingredient, known: true, notes: [...hydration, ...warm, taken.join(' ')] }
  }
  // `flour whole wheat`, `yeast instant`
  const [opening, ...others] = whole
  const turned =
    opening && others.length > 0 && larderName(larder, joined([...others, { ...opening, gap: true }]))
  if (turned) return { ingredient: turned, known: true, notes: [...hydration, ...warm] }
  const rye = ryeIn(whole, larder)
  if (rye) return { ingredient: rye.ingredient, known: true, notes: [...hydration, ...warm, rye.note] }
  // `bread/strong flour` is the first of them
  const slash = whole.findIndex(t => t.text === '/')
  const first = slash < 1 ? undefined : larderName(larder, joined([...whole.slice(0, slash), whole.at(-1)!]))
  if (first) return { ingredient: first, known: true, notes: [...hydration, ...warm, joined(whole)] }
  const isLeft = stateless.length > 0
  // `medium russet potatoes`
  const size = isLeft && stateless.length > 1 && kitchen.sizes.has(stateless[0]!.key) ? 1 : 0
  const notes = [
    ...hydration,
    ...warm,
    ...(isLeft ? [states.join(' '), joined(stateless.slice(0, size))] : []),
  ]
  return { ingredient: joined(isLeft ? stateless.slice(size) : whole), known: false, notes }
}

/** `farine de seigle bio T130`, of which the type is another of wheat. */
function ryeIn(words: readonly Token[], larder: Larder): { ingredient: string; note: string } | undefined {
  const type = words.find(t => /^t\d{2,3}$/.test(t.key))
  if (!type || !words.some(t => t.key === 'seigle')) return undefined
  const ingredient = larderName(larder, `farine de seigle ${type.key}`)
  const isOfName = new Set(['farine', 'de', 'seigle', type.key])
  if (!ingredient) return undefined
  return { ingredient, note: joined(bare(words.filter(t => !isOfName.has(t.key)))) }
}

/** `GNX`, `b.c.`: is it written short, so that few but the writer know what it is? */
export const isShort = (name: string): boolean =>
  /^(?:\p{Lu}[\p{Lu}\d]{1,3}|\p{L}{1,2}|[B-DF-HJ-NP-TV-XZb-df-hj-np-tv-xz]{3,4}|(?:\p{L}{1,4}\.){1,3})$/u.test(
    name,
  )

/** Is there nothing in these words but what is done to an ingredient? */
export function isState(tokens: readonly Token[], orNothing = false): boolean {
  const words = tokens.filter(t => t.kind === 'word')
  const { states, temperatures, kinds, fillers } = kitchen
  const isSo = (t: Token) => fillers.has(t.key) || [states, temperatures, kinds].some(set => isOneOf(set, t))
  return (orNothing || words.length > 0) && words.every(isSo)
}

/** What the words of a remark say an ingredient is for, where it may not belong to the dough: `for the tin`, `to glaze`. */
export function purposeIn(remark: readonly Token[]): Purpose | undefined {
  const [first, ...rest] = remark
  if (first?.key !== 'for' && first?.key !== 'to' && first?.key !== 'pour') return undefined
  const key = rest.find(t => t.kind === 'word' && !kitchen.beforeNames.has(t.key))?.key ?? ''
  return uses.get(key) ?? (first.key === 'to' ? undefined : places.get(key))
}

const inFull = (remark: string): string => joined(printedTokens(remark)).replace(/ ?[.,]$/, '')
const mostOfName = 2 // remarks that say together what it is
const longestKind = 30 // characters of a remark that can be of the name

const isDry = /^(?:dry|dried|powder|powdered)$/
const isLastWord = (text: string, word: string): boolean => text.endsWith(` ${word.toLowerCase()}`)

/** A remark may say which of the larder's it is: `flour, strong white`, `beurre, doux`, `all-purpose or bread flour`. */
export function nearerName({ ingredient, known }: NameRead, notes: readonly string[], larder: Larder) {
  const remarks = notes.flatMap(note => note.split(', '))
  // `milk, dry, nonfat`
  const few = remarks.length > 1 && remarks.length < 4 ? remarks.slice(0, mostOfName) : []
  const whole = few.length > 0 ? larderName(larder, [...few.toReversed(), ingredient].join(' ')) : undefined
  if (whole) return { ingredient: whole, known: true, remarks: remarks.slice(few.length) }
  for (const said of remarks.filter(r => r.length <= longestKind)) {
    const remark = inFull(said.replace(/(?<=\S) (?:or|ou|oder) .*$/, '')) // `Flour, Bread or All-Purpose`
    const isOther = !known && /^(?:or|ou|oder) /i.test(remark)
    // `vegetable or olive oil`: the one goes with the stuff of the other
    const whole = `${ingredient} ${remark.split(' ').at(-1)}`
    const isKind = isOther && kitchen.kindsOfStuff.has(ingredient.toLowerCase())
    const nearest = isOther
      ? (larderName(larder, whole) ?? (isKind ? whole : undefined))
      : (larderName(larder, `${remark} ${ingredient}`) ??
        larderName(larder, `${ingredient} ${remark}`) ??
        // `milk, powdered`
        (isDry.test(remark) ? larderName(larder, `${ingredient} powder`) : undefined) ??
        // `flour, AP`
        (remark !== said && isLastWord(remark, ingredient) ? larderName(larder, remark) : undefined))
    if (nearest)
      return {
        ingredient: nearest,
        known: !isKind,
        remarks: remarks.filter(r => isOther || r !== said || inFull(said) !== remark),
      }
  }
  return { ingredient, known, remarks }
}

const longestWritten = 200 // characters; no name with its remark is so long

/**
 * The larder's ingredient that a text names, with what the text says of it besides; undefined where it knows none, or where
 * figures stand in the text that may be its amount.
 */
export function namedIn(text: string, larder: Larder): { ingredient: string; note: string } | undefined {
  if (
    text.length > longestWritten ||
    /\d/.test(text.replace(/[([][^)\]]*[)\]]|(?<!\p{L})h2o(?!\p{L})/giu, ''))
  )
    return undefined
  const tokens = printedTokens(text)
  const end = noteStart(tokens)
  const name = nameOf(tokens.slice(0, end), larder)
  const remark = text.slice(tokens[end]?.at ?? text.length).replace(/^[\s,;:([–—-]+|[\s,;)\]]+$/g, '')
  const { ingredient, known, remarks } = nearerName(name, [remark], larder)
  return known ? { ingredient, note: [...name.notes, ...remarks].filter(Boolean).join(', ') } : undefined
}
