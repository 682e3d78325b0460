import {
  asides,
  factGoesOn,
  factStarts,
  listStarts,
  namesYield,
  sentenceStarts,
  verbs,
} from './kitchen-words.js'
import { sentencesOf } from './prose.js'
import { uses } from './purposes.js'
import type { Evidence } from './reasons.js'
import type { Row } from './row.js'

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

/** `Serves 4`, `Total: 1,921 g`, `Bake: 40 min`, `Pour un kilo de pain`: a fact with its number. */
function isFact(row: Row): boolean {
  const after = opensWith(row, factStarts)
  if (after === undefined) return false
  const next = row.tokens[after]
  const first = row.words[0]!.key
  if (first === 'pour' || first === 'for')
    return row.quantities.length === 0
      ? row.hasNoAmount
      : row.quantities[0]!.from <= after &&
          row.words.length <= 6 &&
          row.words.some(t => namesYield.has(t.key))
  if (first === 'rest' || first === 'proof') return next?.text === ':' || next?.kind === 'number'
  return (
    next === undefined ||
    next.kind !== 'word' ||
    factGoesOn.has(next.key) ||
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

/** `Pour la pâte` is no order, though `pour` is a verb in English. */
function opensWithVerb({ words, tokens }: Row): boolean {
  const [first, next] = words
  if (!first || !verbs.has(first.key) || tokens[1]?.text === ':') return false
  const key = next?.key ?? ''
  return first.key !== 'pour' || !(['la', 'le', 'les', 'l', 'un', 'une'].includes(key) || uses.has(key))
}

/** What speaks for an instruction, or a sentence about the bread. */
function ofSentence(row: Row): readonly (readonly [Evidence, boolean])[] {
  const { words, tokens, quantities } = row
  const amountFirst = quantities[0]?.from === 0
  const digitsFirst = amountFirst && tokens[0]!.kind === 'number'
  const timeFirst = row.when === 0 && !quantities.some(q => q.terms[0].unit)
  if (digitsFirst || words.length === 0) return [['a time first', timeFirst]]
  const isLong = words.length >= 5 && !amountFirst
  const hasVerb = isLong && hasVerbBeside(row)
  return [
    ['a time first', timeFirst],
    ['a verb first', opensWithVerb(row)],
    ['several sentences', isLong && sentencesOf(row).length > 1],
    ['opens like a sentence', isLong && sentenceStarts.has(words[0]!.key) && (hasVerb || words.length > 8)],
    ['long, with a verb', hasVerb && words.length >= 8],
  ]
}

/** `cut into four pieces`, `to yield about 4 cups`: of the ingredient above. */
const isAside = (row: Row): boolean =>
  opensWith(row, asides) !== undefined && !row.tokens.slice(0, 2).some(t => t.text === ':')

/** Does an order follow at a token: `mix …`? */
const isOrder = (row: Row, from: number): boolean => {
  const word = row.tokens.slice(from, from + 3).find(t => t.kind === 'word')
  return word !== undefined && verbs.has(word.key)
}

/** What is asked of a row’s words, before its neighbours are. */
export const clues = {
  isFact,
  isAside,
  isOrder,
  ofSentence,
  listStart: (row: Row): number | undefined => opensWith(row, listStarts),
}
