import type { Larder } from '../../dough/document/larder.js'
import { type Heading, headingOf, inlineStage, type StageKind } from './headings.js'
import { factStarts, listStarts, sentenceStarts, verbs } from './kitchen-words.js'
import { piecesOf } from './pieces.js'
import { sentencesOf } from './prose.js'
import { places, uses } from './purposes.js'
import type { Row } from './row-text.js'
import { type Found, readSegment, textOf } from './segment.js'

/** What a row looks like by itself, before what stands around it is considered. */
export type Looks =
  | { readonly as: 'blank' }
  | { readonly as: 'heading'; readonly heading: Heading; readonly sure: boolean }
  | { readonly as: 'fact' } // of the whole: a yield, a total, a time
  | { readonly as: 'sentence' }
  | {
      readonly as: 'list'
      readonly found: readonly Found[]
      readonly stage?: { name: string; kind: StageKind }
    }
  | { readonly as: 'name'; readonly found: Found } // an ingredient without an amount
  | { readonly as: 'other' }

/** Does the row open with a phrase of a set? The token after it. */
function opensWith(row: Row, phrases: ReadonlySet<string>): number | undefined {
  const words: string[] = []
  let after: number | undefined
  for (let i = 0; i < row.tokens.length && words.length < 4; i++) {
    const token = row.tokens[i]!
    if (token.kind === 'word') words.push(token.key)
    else if (token.text !== "'" && token.text !== '’') break
    if (phrases.has(words.join(' '))) after = i + 1
  }
  return after
}

/** `Serves 4`, `Total: 1,921 g`, `Bake: 40 min`: a fact with its number. */
function isFact(row: Row): boolean {
  const after = opensWith(row, factStarts)
  if (after === undefined) return false
  const next = row.tokens[after]
  const first = row.words[0]!.key
  if (first === 'pour' || first === 'for') return row.hasNoAmount && row.quantities.length === 0
  if (first === 'rest' || first === 'proof') return next?.text === ':' || next?.kind === 'number'
  return (
    next === undefined ||
    next.kind !== 'word' ||
    ['about', 'environ', 'of', 'one', 'two', 'de', 'pour'].includes(next.key) ||
    /^(total|yield|serves|makes|rendement)/.test(first)
  )
}

/** A verb behind the first word that is none of an amount: `the rest of the levain` says nothing to do. */
const hasVerbBeside = ({ tokens, words, quantities }: Row): boolean =>
  tokens.some(
    (t, i) =>
      t !== words[0] &&
      verbs.has(t.key) &&
      t.kind === 'word' &&
      !quantities.some(q => i >= q.from && i < q.to),
  )

/** The words of an instruction or of a sentence about the bread. */
function isSentence(row: Row): boolean {
  const { words, tokens } = row
  const first = words[0]?.key ?? ''
  if (row.when === 0 && !row.quantities.some(q => q.terms[0].unit)) return true
  if (tokens[0]?.kind === 'number' && row.quantities[0]?.from === 0) return false
  const next = words[1]?.key ?? ''
  const pourFrench =
    first === 'pour' && (['la', 'le', 'les', 'l', 'un', 'une'].includes(next) || uses.has(next))
  if (verbs.has(first) && !pourFrench && tokens[1]?.text !== ':') return true
  if (words.length < 5) return false
  if (row.quantities[0]?.from !== 0 && sentencesOf(row).length > 1) return true
  const hasVerb = hasVerbBeside(row)
  if (sentenceStarts.has(first) && (hasVerb || words.length > 8)) return row.quantities[0]?.from !== 0
  return row.quantities[0]?.from !== 0 && words.length >= 8 && hasVerb
}

/** How a row looks. */
export function looksOf(row: Row, larder: Larder): Looks {
  if (!row.tokens.some(t => t.kind !== 'mark')) return { as: 'blank' }
  const start = opensWith(row, listStarts)
  const measured = row.quantities.filter(q => q.terms[0].unit).length
  if (start !== undefined && measured > 0) {
    const found = foundIn(row, larder, start)
    if (found.length > 0) return { as: 'list', found }
  }
  const inline = inlineStage(row)
  if (inline && !isSentenceFrom(row, inline.from)) {
    const found = foundIn(row, larder, inline.from)
    if (found.length > 1) return { as: 'list', found, stage: inline }
  }
  const heading = headingOf(row)
  if (heading?.sure) return { as: 'heading', ...heading }
  if (isFact(row)) return { as: 'fact' }
  if (isSentence(row)) return { as: 'sentence' }
  const found = foundIn(row, larder, 0)
  if (found.some(f => f.amount !== '' || f.share !== undefined || f.guesses.length > 0))
    return { as: 'list', found }
  if (
    found.length === 1 &&
    (found[0]!.known || (row.bulleted && row.words.length <= 8 && row.when === undefined))
  )
    return { as: 'name', found: found[0]! }
  if (found.length > 1 && found.every(f => f.known)) return { as: 'list', found }
  if (optional(row) && found.length === 1) return { as: 'name', found: found[0]! }
  if (heading) return { as: 'heading', ...heading }
  return row.words.length > 5 ? { as: 'sentence' } : { as: 'other' }
}

/** What else an ingredient without an amount may be. */
const asWished = new Set(
  'taste optional facultatif facultative gout needed required kneading necessaire besoin volonte choix'.split(
    ' ',
  ),
)
const optional = ({ words }: Row): boolean =>
  words.some(
    ({ key }, i) =>
      i > 0 &&
      (asWished.has(key) ||
        uses.has(key) ||
        (places.has(key) &&
          words.slice(Math.max(1, i - 3), i).some(t => t.key === 'for' || t.key === 'pour'))),
  )

const isSentenceFrom = (row: Row, from: number): boolean => {
  const word = row.tokens.slice(from, from + 3).find(t => t.kind === 'word')
  return word !== undefined && verbs.has(word.key)
}

/** The ingredients of a row that is a list of them. */
function foundIn(row: Row, larder: Larder, from: number): Found[] {
  const found: Found[] = []
  let lost = ''
  for (const piece of piecesOf(row, larder, from)) {
    const line = readSegment(row, piece, larder)
    const before = found.at(-1)
    const notUnderstood = (text: string) => [`“${text}” was not understood.`]
    if (line) found.push(lost ? { ...line, guesses: [...line.guesses, ...notUnderstood(lost)] } : line)
    else if (before) {
      const guesses = [...before.guesses, ...notUnderstood(textOf(row, piece.from, piece.to))]
      found[found.length - 1] = { ...before, guesses }
      continue
    }
    lost = line ? '' : textOf(row, piece.from, piece.to)
  }
  return found
}
