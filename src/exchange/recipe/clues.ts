import { guessCountsAs } from '../../dough/larder/counts-as-guess.js'
import { kitchenUnits } from '../../dough/lexicon/kitchen-measures.js'
import { isApostrophe } from '../../dough/lexicon/text-tokens.js'
import { kitchen, uses } from '../values/kitchen-words.js'
import { bare, isState, joined, noteStart, purposeIn } from '../values/line-names.js'
import { isBread, kindOfWord } from '../values/stage-kinds.js'
import { sentencesOf } from './pieces.js'
import { closingOf, isOpening, type Row, rowOf } from './recipe-row.js'

const mostWordsOfPhrase = 4
const longestFacts = 160 // characters of a row of them
const mostLead = 10 // tokens before what somebody tells
const mostWordsOfName = 5 // of a row that names something and says no more

/** The longest phrase of a set that the row opens with: the token after it. */
export function opensWith(row: Row, phrases: ReadonlySet<string>): number | undefined {
  const words: string[] = []
  let after: number | undefined
  for (let i = 0; i < row.tokens.length && words.length < mostWordsOfPhrase; i++) {
    const token = row.tokens[i]!
    if (token.kind === 'word') words.push(token.key)
    else if (!isApostrophe(token) && !(i === 0 && isOpening(token))) break
    if (phrases.has(words.join(' '))) after = i + 1
  }
  return after
}

/** `Serves 4`, `Total: 1,921 g`, `Bake: 40 min`, `Pour un kilo de pain`: a fact with its number. */
export function isFact(row: Row): boolean {
  const { tokens, words, quantities, hasNoAmount, when } = row
  // `30 loaves of 800 g`
  const [each] = quantities
  const isOfEach = each && ['of', 'at', 'de', 'a', 'je', 'zu', '@'].includes(tokens[each.from - 1]?.key ?? '')
  const isOne = quantities.length === 1 && words.length < 9 && when === undefined
  if (isOfEach && hasNoAmount && isOne && !opensWithVerb(row)) return true
  // `Balls at 280 g`
  const isOfPieces = kitchenUnits.get(words[0]?.key ?? '')?.kind === 'not an amount' && words[0] === tokens[0]
  if (isOfEach && isOne && isOfPieces) return true
  if (isSizeOfBatch(row) || ofMembers.test(row.text.slice(0, 200)) || isOfBread(row) || isOfFacts(row))
    return true
  const after = opensWith(row, kitchen.factStarts)
  if (after === undefined) return false
  // `Autolyse` is a heading, `autolyse (all)` a line
  if (kindOfWord(words[0]!.key) && !tokens.some(t => t.kind === 'number')) return false
  const next = tokens[after]
  const first = words[0]!.key
  if (first === 'pour' || first === 'for') {
    const isYield = words.length <= 6 && words.some(t => isBread(t.key) || kindOfWord(t.key) === 'dough')
    return quantities[0] ? isYield && quantities[0].from <= after : hasNoAmount
  }
  if (first === 'rest' || first === 'proof') return next?.text === ':' || next?.kind === 'number'
  return (
    next?.kind !== 'word' ||
    kitchen.factGoesOn.has(next.key) ||
    /^(total|yield|serves|makes|rendement)/.test(first)
  )
}

/** `Total flour 1000 g, hydration 82 %`: are all the figures of a row those of facts, and more than one? */
function isOfFacts({ text, quantities }: Row): boolean {
  if (quantities.length < 2 || text.length > longestFacts) return false
  const figures = text.split(/\s[–—-]\s|[,;|·]/).filter(part => /\d/.test(part))
  return figures.length > 1 && figures.every(part => opensWith(rowOf(part), kitchen.factStarts) !== undefined)
}

/** What stands beside a name where people write to each other. */
const ofMembers =
  /(?<!\p{L})(?:member since|membre depuis|inscrit le|inscrite le|posts:\s*\d|messages\s?:\s*\d|posté le|posted (?:on|by))(?!\p{L})/iu

/** `My everyday 75% loaf, finally`: the only amount is a per cent of the bread. */
function isOfBread({ tokens, words, quantities: [share, ...others] }: Row): boolean {
  if (!share || others.length > 0 || share.from === 0 || words.length < 5) return false
  const { unit } = share.terms[0]
  const [bread, next] = tokens.slice(share.to, share.to + 2)
  return unit?.kind === 'unit' && unit.unit === '%' && isBread(bread?.key ?? '') && next?.kind !== 'word'
}

/** `EDIT: sorry, the salt should be 17 g`. */
export const isCorrection = ({ tokens, words }: Row): boolean =>
  words.length > 3 && kitchen.corrections.has(tokens[0]!.key) && tokens[1]?.text === ':'

/** `Base 25 kg de farine.`, `Batch 10 kg flour`: what the per cents above are of, and no more of it. */
function isSizeOfBatch(row: Row): boolean {
  const { tokens, words, quantities } = row
  // `Mill Street Bakery - base 10 kg de farine`
  const dash = tokens.findLastIndex(
    (t, i) => i > 0 && '–—-,('.includes(t.text) && kitchen.sizeStarts.has(tokens[i + 1]?.key ?? ''),
  )
  if (dash > 0) return quantities.length === 1 && isSizeOfBatch(rowOf(row.text.slice(tokens[dash + 1]!.at)))
  const start = opensWith(row, kitchen.sizeStarts)
  const [size] = quantities
  if (start === undefined || quantities.length !== 1 || words.length > 8) return false
  const from = tokens[start]?.text === ':' ? start + 1 : start
  const { unit } = size!.terms[0]
  if (size!.from !== from || unit?.kind !== 'unit' || unit.unit === '%') return false
  const rest = tokens.slice(size!.to).filter(t => t.kind === 'word')
  return (
    rest.some(t => kindOfWord(t.key) === 'dough' || guessCountsAs(t.low) === 'flour') &&
    rest.every(t => kitchen.ofSize.has(t.key))
  )
}

/** `Anna: I used 100 g of sugar`: does somebody tell what they did, before any amount? */
function isTold({ tokens, quantities, words }: Row): boolean {
  const first = quantities[0]?.from ?? tokens.length
  return (
    words.length > 3 &&
    tokens
      .slice(0, Math.min(first, mostLead))
      .some(
        (t, i) =>
          kitchen.tellers.has(t.key) &&
          (i === 0 || tokens[i - 1]!.kind === 'mark') &&
          tokens.slice(i + 1, i + 4).some(v => kitchen.told.has(v.key)),
      )
  )
}

/** `Mix: 1st speed 4 min, 2nd speed 7 min, then 100 g of the water`: a verb and its time before any amount. */
function isTimed({ tokens, words, quantities, when }: Row): boolean {
  const amount = quantities.find(q => q.terms[0].unit)?.from ?? tokens.length
  const isVerb = kitchen.verbs.has(tokens[0]!.key) && tokens[1]?.text === ':'
  return isVerb && when !== undefined && when < amount && words.length > 5
}

/** `Pour la pâte` is no order, though `pour` is a verb in English. */
function opensWithVerb({ words, tokens }: Row): boolean {
  const [first, next] = words
  // `1 Mix the flour`
  if (tokens[0]?.kind === 'number')
    return tokens[1] === first && /^\p{Lu}/u.test(first?.text ?? '') && kitchen.verbs.has(first!.key)
  if (!first || !kitchen.verbs.has(first.key) || tokens[1]?.text === ':') return false
  // `Mix`, `Scald from stage 2, all of it`
  if (kindOfWord(first.key) && (!tokens[1] || isOpening(tokens[1]) || tokens[1].key === 'from')) return false
  const key = next?.key ?? ''
  return first.key !== 'pour' || !(['la', 'le', 'les', 'l', 'un', 'une'].includes(key) || uses.has(key))
}

/** `Water: 330 g to start, then up to 20 g more`: what a name with its amount behind a colon goes on with is said of it. */
function isLabelled({ tokens, starting }: Row): boolean {
  const colon = tokens.slice(0, mostWordsOfName + 1).findIndex(t => t.text === ':')
  const name = tokens.slice(0, Math.max(colon, 0))
  const isName = name.every(t => t.kind === 'word' && !kitchen.verbs.has(t.key) && !kindOfWord(t.key))
  return colon > 0 && isName && starting.get(colon + 1)?.terms[0].unit?.kind === 'unit'
}

/** What speaks for an instruction, or a sentence about the bread. */
export function ofSentence(row: Row) {
  const { words, tokens, quantities, when } = row
  const timeFirst = when === 0 && !quantities.some(q => q.terms[0].unit)
  const amountFirst = quantities[0]?.from === 0
  const isText = words.length > 0 && !(amountFirst && tokens[0]!.kind === 'number')
  const isLong = isText && words.length >= 5 && !amountFirst && !isLabelled(row)
  // `the rest of the levain` says nothing to do
  const isInAmount = (i: number) => quantities.some(q => i >= q.from && i < q.to)
  const hasVerb =
    isLong &&
    tokens.some((t, i) => t !== words[0] && row.depths[i] === 0 && kitchen.verbs.has(t.key) && !isInAmount(i))
  return [
    ['a time first', timeFirst],
    ['a verb first', words.length > 0 && opensWithVerb(row)],
    ['somebody tells', isTold(row) || isTimed(row)],
    ['several sentences', isLong && sentencesOf(row).length > 1],
    [
      'opens like a sentence',
      isLong && kitchen.sentenceStarts.has(words[0]!.key) && (hasVerb || words.length > 8),
    ],
    ['long, with a verb', hasVerb && words.length >= 8],
  ] as const
}

/** `cut into four pieces`, `to yield about 4 cups`, `sifted`, `beaten, for the top`: of the ingredient above. */
export function isAside(row: Row): boolean {
  const { tokens } = row
  const isBracket = isOpening(tokens[0]) && closingOf(row, 0, tokens.length) === tokens.length - 1
  // `*from the weekend book`
  if (/^\s*[*†‡]+\p{Ll}/u.test(row.text) && row.quantities.length === 0) return true
  const isDone = isState(tokens.slice(0, noteStart(tokens, 1)))
  return (
    tokens.length === 0 ||
    isBracket ||
    isDone ||
    (opensWith(row, kitchen.asides) !== undefined && tokens[1]?.text !== ':')
  )
}

/** Does an order follow at a token: `mix …`, `in the evening, mix …`? */
export function isOrder({ tokens, quantities }: Row, from: number): boolean {
  const first = quantities.find(q => q.from >= from)?.from ?? from + 3
  return tokens
    .slice(from, Math.min(first, from + 8))
    .some(t => t.kind === 'word' && kitchen.verbs.has(t.key))
}

/** `salt to taste`, `oil for the tin`. */
export const isWished = ({ words }: Row): boolean =>
  words.some(
    ({ key }, i) =>
      i > 0 && (kitchen.asWished.has(key) || uses.has(key) || purposeIn(words.slice(i, i + 8)) !== undefined),
  )

/** The name of a row, marks and articles left out. */
export const nameIn = ({ tokens }: Pick<Row, 'tokens'>): string => joined(bare(tokens.slice(0, 40)))

/** A few words that could name something, a bread or what goes into it. */
export const isShortName = (row: Row): boolean =>
  row.words.length > 0 &&
  row.words.length <= mostWordsOfName &&
  row.quantities.length === 0 &&
  row.when === undefined &&
  nameIn(row) !== ''

/** `Fournil — feuille de pesée`: the words may be measures, and no number says how many. */
export const isInWords = ({ quantities, tokens }: Row): boolean =>
  quantities.length > 0 &&
  tokens.every(t => t.kind !== 'number') &&
  quantities.every(
    ({ from, terms: [{ unit }] }) =>
      unit?.kind === 'unknown' && from > 0 && (tokens[from]!.wide || '–—-'.includes(tokens[from - 1]!.text)),
  )

const mostFootnotes = 3
/** `* à défaut, de levain liquide`: the rows that tell of what has a star behind it elsewhere, where stars are no bullets. */
export function footnotesOf(rows: readonly Row[]): ReadonlySet<Row> {
  const starred = rows.filter(row => /^\s*[*†‡](?!\*)/.test(row.text) && !row.marked)
  const isMeant =
    starred.length <= mostFootnotes &&
    rows.some(row => !starred.includes(row) && /[\p{L}\d)][*†‡](?=[\s,.;]|$)/u.test(row.text) && !row.marked)
  return new Set(isMeant ? starred : [])
}

/** Does a row end with a number: `Water ..... 250`? */
export const endsWithNumber = ({ quantities, tokens, words }: Row): boolean =>
  quantities.some(q => q.from > 0 && q.to === tokens.length) && words.length <= 6

/** Does a row give an amount, and no order? */
export const isList = (row: Row | undefined): boolean =>
  row?.quantities.some(q => q.terms[0].unit) === true && !kitchen.verbs.has(row.words[0]?.key ?? '')
