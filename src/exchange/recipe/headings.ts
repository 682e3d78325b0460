import { listHeadings, methodHeadings, noteHeadings, stageKinds } from './kitchen-words.js'
import { joined } from './name.js'
import { shareOf } from './quantity.js'
import type { Row } from './row-text.js'
import { closingOf, isApostrophe, type Token } from './tokens.js'

export type StageKind = 'ferments' | 'soaks' | 'dough' | 'other'

/** What a heading opens. */
export type Heading =
  | {
      readonly opens: 'stage'
      readonly name: string
      readonly kind: StageKind | undefined
      readonly remark: string
    }
  | { readonly opens: 'ingredients' | 'method' | 'notes' }

const articlesOf = new Set([
  'the',
  'le',
  'la',
  'les',
  'l',
  'your',
  'a',
  'du',
  'de',
  'd',
  'des',
  'un',
  'une',
  'of',
  'den',
  'das',
])

/** `The levain` speaks of one that is there. */
export const isDefinite = (token: Token | undefined): boolean =>
  token !== undefined && ['the', 'your', 'le', 'la', 'les', 'l'].includes(token.key)

const leads = new Set(['for', 'pour', 'fur', 'ingredients', 'ingredient', 'stage', 'step', 'part', 'partie'])

/** The heads of a table's columns. */
const columnHeads = new Set(
  'ingredient ingredients weight weights amount amounts quantity g gram grams percent percentage note notes unit units poids quantite pourcentage grammes baker s'.split(
    ' ',
  ),
)

const isKindWord = (token: Token): boolean => stageKinds.has(token.key)

/** What kind of stage a name speaks of, by its first word that says so; a dough of something is a dough. */
export function kindOf(tokens: readonly Token[]): StageKind | undefined {
  const kinds = tokens.map(t => stageKinds.get(t.key)).filter(k => k !== undefined)
  return kinds.includes('ferments') ? 'ferments' : kinds[0]
}

const capital = (text: string): string => {
  const small = text === text.toUpperCase() && text.length > 3 ? text.toLowerCase() : text
  return small.charAt(0).toUpperCase() + small.slice(1)
}

/** `Day 2 – dough`: the token after the day, where something follows. */
function afterDay(tokens: readonly Token[]): number {
  const isDay = tokens[0]?.key === 'day' || tokens[0]?.key === 'jour'
  return isDay && tokens.length > 3 && tokens[2]!.kind === 'mark' ? 3 : 0
}

/** The words before a parenthesis, a colon or a dash, and what follows as a remark. */
function divided(row: Row): { start: number; head: Token[]; remark: string; colon: boolean } {
  const { tokens } = row
  const start = afterDay(tokens)
  let end = tokens.length
  const colon = tokens.at(-1)?.text === ':'
  if (colon) end--
  const at = tokens.findIndex(
    (t, i) =>
      i < end &&
      i > start &&
      (t.text === '(' || t.text === ':' || t.text === ',' || ('–—-'.includes(t.text) && t.gap)),
  )
  const cut = at < 0 ? end : at
  let [from, to] = [cut, end]
  if (tokens[from]?.text === '(' && closingOf(tokens, from, to) >= to - 1) {
    from++
    if (tokens[to - 1]?.text === ')') to--
  } else if (from < to) from++
  const remark = from < to ? row.text.slice(tokens[from]!.at, tokens[to - 1]!.end) : ''
  return { start, head: tokens.slice(start, cut), remark, colon }
}

function nameIn(head: readonly Token[]): { name: readonly Token[]; led: boolean } {
  let i = 0
  let led = false
  while (i < head.length && leads.has(head[i]!.key)) {
    i++
    led = true
    if (head[i]?.kind === 'number') i++
    if (head[i]?.text === ':' || head[i]?.text === '.') i++
  }
  if (led || head.length > 1)
    while (
      i < head.length - 1 &&
      (articlesOf.has(head[i]!.key) || isApostrophe(head[i]) || leads.has(head[i]!.key))
    )
      i++
  return { name: head.slice(i), led }
}

/**
 * A heading names what comes; a row that says how much of it is a line: `all of the levain`,
 * `levain (all of it)`. Only a row marked as a heading may be `The rest of the dough:`.
 */
const saysHowMuch = (row: Row, headTo: number, marked: boolean): boolean =>
  row.quantities.some(q => (shareOf(q) === undefined ? q.from < headTo : !marked && q.from <= headTo + 1))

/**
 * What a row opens if it is a heading. `sure` is false where it is one only if lines follow: a short row
 * that could be anything.
 */
export function headingOf(row: Row): { heading: Heading; sure: boolean } | undefined {
  if (row.words.length === 0 || row.words.length > 12) return undefined
  const { start, head, remark, colon } = divided(row)
  const words = head.filter(t => t.kind !== 'mark')
  if (words.length === 0 || words.length > 7) return undefined
  const key = words.map(t => t.key).join(' ')
  const marked = row.heading || colon
  const isTableHead = words.length > 1 && words.every(t => columnHeads.has(t.key))
  if (listHeadings.has(key) || isTableHead) return { heading: { opens: 'ingredients' }, sure: true }
  if (methodHeadings.has(key)) return { heading: { opens: 'method' }, sure: true }
  if (noteHeadings.has(key)) return { heading: { opens: 'notes' }, sure: marked || row.words.length === 1 }
  const { name, led } = nameIn(head)
  if (name.length === 0 || name.some(t => t.kind === 'number')) return undefined
  const kind = kindOf(name)
  if (saysHowMuch(row, start + head.length, marked)) return undefined
  const sure = marked || (led && kind !== undefined)
  const plain = words.length <= 4 && !row.bulleted && !'.!?'.includes(row.tokens.at(-1)!.text)
  if (!sure && !plain) return undefined
  return { heading: { opens: 'stage', name: capital(joined(name)), kind, remark }, sure }
}

/** A stage's name before amounts in one row: `Levain: 40 g starter, 100 g flour`, `For the poolish, mix …`. */
export function inlineStage(
  row: Row,
  start = 0,
  to = row.tokens.length,
): { name: string; kind: StageKind; from: number } | undefined {
  const { tokens } = row
  const end =
    start + tokens.slice(start, Math.min(start + 9, to)).findIndex(t => t.text === ':' || t.text === ',')
  if (end <= start) return undefined
  const { name, led } = nameIn(tokens.slice(start, end))
  const kind = kindOf(name)
  if (!kind || name.length > 4 || name.some(t => t.kind !== 'word')) return undefined
  const only = name.every(t => isKindWord(t) || articlesOf.has(t.key)) || led || name.length <= 2
  if (!only || (tokens[end]!.text === ',' && !led)) return undefined
  const behind = row.quantities.filter(q => q.from > end && q.to <= to)
  // `Levain: 200 g` is a line
  return behind.length > 1 ? { name: capital(joined(name)), kind, from: end + 1 } : undefined
}
