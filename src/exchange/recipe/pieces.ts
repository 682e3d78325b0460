import type { Larder } from '../../dough/document/larder.js'
import { guessCountsAs } from '../../dough/larder/counts-as-guess.js'
import { ingredientNamed, larderName } from '../../dough/larder/spelled-names.js'
import type { Portion } from '../../dough/lexicon/portions.js'
import type { Token } from '../../dough/lexicon/text-tokens.js'
import { isOneOf, kitchen } from '../values/kitchen-words.js'
import { bare, isState, joined, nameOf, noteStart, purposeIn } from '../values/line-names.js'
import { earlierStageWords } from '../values/stage-kinds.js'
import { inlineStage, stageMade } from './headings.js'
import { type Row, textOf } from './recipe-row.js'
import { type Found, isAmount, type Part, type Piece, Segment } from './segment.js'

const longestName = 60 // tokens beside an amount that are looked at
const plainStuff = /(?:^| )(?:oil|huile|öl|seeds?|graines|nuts?)$/i
const anyYeast = /yeast|levure|hefe/i
const longestBareName = 6 // tokens of a name without an amount, among others

/** The pieces between tokens at which a row is cut, or before which, each with its amounts. */
function cut(
  row: Row,
  from: number,
  to: number,
  isCut: (at: number, inside: boolean) => boolean | 'before',
): Piece[] {
  const { quantities, starting, depths } = row
  const pieces: Piece[] = []
  let next = quantities.findIndex(q => q.from >= from)
  let at = from
  let inside = 0 // the token after the amount that we are in
  for (let i = from; i <= to; i++) {
    const isBefore = i >= inside && starting.has(i) && depths[i] === 0 && isCut(i, false) === 'before'
    inside = starting.get(i)?.to ?? inside
    if (i < to && !isBefore && (depths[i]! > 0 || i < inside || !isCut(i, i === inside))) continue
    const within: Portion[] = []
    while (next >= 0 && quantities[next] && quantities[next]!.from < i) within.push(quantities[next++]!)
    if (i > at) pieces.push({ from: at, to: i, quantities: within })
    at = isBefore ? i : i + 1
  }
  return pieces
}

/** Does a word say what is done to an ingredient? */
const isDone = (token: Token | undefined): boolean =>
  token !== undefined && (isOneOf(kitchen.states, token) || /\p{L}{3}(?:(?<!se)ed|ée?s?)$/u.test(token.low))

/** `2 cups rye flour    1 tbsp caraway`: does another amount with its name stand beside the first? */
function isBeside({ starting, tokens }: Row, from: number, at: number): boolean {
  const [first, other] = [starting.get(from), starting.get(at)]
  if (!first || !other || first.to >= at) return false
  const next = tokens[other.to]?.text === '.' ? other.to + 1 : other.to
  return tokens[at - 1]!.kind === 'word' && tokens[next]?.kind === 'word'
}

/** Between commas and semicolons, and between `and` and an amount: `salt 10 g / yeast 5 g`. */
const chunksOf = (row: Row, from: number): Piece[] =>
  cut(row, from, row.tokens.length, (i, isBehindAmount) => {
    const { text, key, wide, gap } = row.tokens[i]!
    if (text === ',' || text === ';' || (wide && text === '+') || '•▪■◦●·∙'.includes(text)) return true
    if (text === '/')
      return gap && isBehindAmount && row.tokens[i + 1]?.kind === 'word' && !row.starting.has(i + 1)
    if (wide && i > from && isBeside(row, from, i)) return 'before'
    const ofStuff = i > from && kitchen.beforeStuff.has(key) && isDone(row.tokens[i - 1])
    return i > from && kitchen.joins.has(key) && !ofStuff && row.starting.has(i + 1)
  })

/** The words beside an amount that could name something. */
function namedBeside({ tokens, depths }: Row, { from, to }: Piece, amount: Portion | undefined) {
  const isFirst = amount && bare(tokens.slice(from, amount.from)).length === 0
  const [start, end] = isFirst ? [amount.to, to] : [from, amount ? amount.from : to]
  const words = tokens.slice(start, Math.min(end, start + longestName))
  return bare(words.filter((t, i) => depths[start + i] === 0 && t.kind === 'word'))
}

/** `plus 50 g for dusting`, `soaked in 50 ml rum`: more said of the ingredient before. */
function isRemark({ tokens }: Row, { from, to }: Piece, amount: Portion): boolean {
  const [first, second] = [tokens[from], tokens[from + 1]]
  const after = tokens[amount.to]
  // `25 g of it held back`, `may need 7`
  if (
    ['of', 'from'].includes(after?.key ?? '') &&
    ['it', 'them', 'which'].includes(tokens[amount.to + 1]?.key ?? '')
  )
    return true
  if (kitchen.perhaps.has(first?.key ?? '') && amount.from > from) return true
  if (isDone(first) && kitchen.beforeStuff.has(second?.key ?? '')) return true
  if (after && kitchen.noteStarts.has(after.key) && amount.to < to) return true
  return first !== undefined && kitchen.noteStarts.has(first.key) && !kitchen.joins.has(first.key)
}

/** Does a chunk speak of another ingredient than the one before it? */
function isAnother(row: Row, chunk: Piece, amount: Portion | undefined, larder: Larder): boolean {
  const name = namedBeside(row, chunk, amount)
  if (name.length === 0 || isState(name) || name.every(t => kitchen.more.has(t.key))) return false
  if (amount) return !isRemark(row, chunk, amount)
  const isShort = chunk.to - chunk.from <= longestBareName
  // `semolina for rolling`
  const end = noteStart(name, 1)
  const isForUse = end < name.length && purposeIn(name.slice(end)) !== undefined
  if (isForUse && nameOf(name.slice(0, end), larder).known) return true
  const isName = nameOf(name, larder).known || earlierStageWords(joined(name)).length === name.length
  return isShort && !kitchen.noteStarts.has(row.tokens[chunk.from]!.key) && isName
}

/** `1 cup Flour, Whole Wheat`: does a chunk say which of the larder's the one before it is? */
function isNameOf(row: Row, before: Piece, chunk: Piece, larder: Larder): boolean {
  const name = joined(namedBeside(row, before, before.quantities[0]))
  const kind = textOf(row, chunk.from, Math.min(chunk.to, chunk.from + longestBareName))
  return larderName(larder, `${kind} ${name}`) !== undefined
}

/** `the levain, 200 g flour`: is an earlier stage named and nothing else? */
const isOfStages = (row: Row, { from, to }: Piece): boolean => {
  const name = bare(row.tokens.slice(from, Math.min(to, from + longestBareName)))
  return kitchen.definite.has(row.tokens[from]!.key) && earlierStageWords(joined(name)).length === name.length
}

/** `rosemary, salt, 3 tbsp oil`: are both ingredients, of which the first has no amount? In what is called a list all are. */
function isListed(row: Row, before: Piece, chunk: Piece, larder: Larder, isList: boolean): boolean {
  const amount = chunk.quantities.find(q => row.depths[q.from] === 0)
  if (amount && bare(row.tokens.slice(chunk.from, amount.from)).length > 0) return false
  const isKnown = (piece: Piece, of: Portion | undefined) => {
    const { known, ingredient } = nameOf(namedBeside(row, piece, of), larder)
    return known || (guessCountsAs(ingredient) ?? 'other') !== 'other' || plainStuff.test(ingredient)
  }
  return (
    (isList || isKnown(before, undefined)) && isKnown(chunk, amount) && !isNameOf(row, before, chunk, larder)
  )
}

/** The stretches of a row that speak of one ingredient each. */
function piecesOf(row: Row, larder: Larder, start: number, isSoaked: boolean): Piece[] {
  const pieces: { from: number; to: number; quantities: Portion[]; isNamed: boolean; isMeasured: boolean }[] =
    []
  for (const whole of chunksOf(row, start)) {
    // of a soaker what it lies in is as much its own: `cooked in 3 cups of water`
    const isLying =
      isSoaked &&
      isDone(row.tokens[whole.from]) &&
      kitchen.beforeStuff.has(row.tokens[whole.from + 1]?.key ?? '')
    const chunk = isLying ? { ...whole, from: whole.from + 2 } : whole
    const { from, to, quantities } = chunk
    const amount = quantities.find(q => row.depths[q.from] === 0 && isAmount(row, q, from, to))
    const isNamed = namedBeside(row, chunk, amount).length > 0
    const isMeasured = amount !== undefined
    const before = pieces.at(-1)
    const isMore = before && !amount && isNameOf(row, before, chunk, larder)
    const isWhole =
      before?.isNamed &&
      (before.isMeasured ||
        row.quantities.length === 0 ||
        isOfStages(row, before) ||
        isListed(row, before, chunk, larder, start > 0))
    if (!before || (isWhole && !isMore && isAnother(row, chunk, amount, larder))) {
      pieces.push({ from, to, quantities: [...quantities], isNamed, isMeasured })
      continue
    }
    before.to = to
    before.quantities.push(...quantities)
    before.isNamed ||= isNamed
    before.isMeasured ||= isMeasured
  }
  return pieces
}

/** The ingredients of a row that is a list of them. */
export function foundIn(row: Row, larder: Larder, start = 0, isSoaked = false): Found[] {
  const found: Found[] = []
  let lost: string[] = [] // what stands before the first of them
  for (const piece of piecesOf(row, larder, start, isSoaked)) {
    const line = new Segment(row, piece, larder).read()
    if (!line) lost.push(textOf(row, piece.from, piece.to))
    const of = line ?? found.pop()
    if (!of) continue
    const reasons = lost.map(text => ({ code: 'notUnderstood' as const, typed: text }))
    found.push({ ...of, guesses: [...of.guesses, ...reasons] })
    lost = []
  }
  // what stands before the first stands before all
  const label = found[0]?.guesses.find(({ code }) => code === 'labelled')
  return label ? found.map((one, at) => (at > 0 ? { ...one, guesses: [...one.guesses, label] } : one)) : found
}

const sticky = new Set(["'", '’', '-', '%', '/', '(', ')', '[', ']', '°'])

/** `a 2 lb tin`: what it is put into, and nothing that goes in. */
const isVessel = ({ ingredient, known }: Found): boolean =>
  !known && kitchen.vessels.has(ingredient.slice(ingredient.lastIndexOf(' ') + 1).toLowerCase())

/** The ingredients of a sentence, from a token up to another: what stands between its verbs and prepositions. */
function inSentence(row: Row, larder: Larder, start: number, end: number): Found[] {
  const { tokens, depths } = row
  const clauses = cut(row, start, end, i => {
    const { kind, key, text } = tokens[i]!
    if (kind === 'mark') return !sticky.has(text)
    const isVerb = kitchen.verbs.has(key) && key !== 'rub'
    return isVerb || kitchen.clauseEnds.has(key) || kitchen.noteStarts.has(key)
  })
  return clauses.flatMap(clause => {
    const main = clause.quantities.find(q => depths[q.from] === 0)
    const first = main ?? clause.quantities[0]
    if (!first) return []
    const line = new Segment(row, main ? { ...clause, from: main.from } : clause, larder).read()
    if (!line || !/\p{L}{3}/u.test(line.ingredient) || isVessel(line)) return []
    const { unit } = first.terms[0]
    const isBare = !unit && !(row.bareUnit && line.known)
    const isCount = isBare || (unit?.kind === 'each' && !line.known) // `a piece of it`
    if (isCount && !ingredientNamed(larder, line.ingredient)?.each) return []
    // of shares only those of a stage are lines of their own: `half of the water` was counted before
    const isStage = earlierStageWords(line.ingredient).length > 0
    const isAgain = kitchen.definite.has(tokens[first.from - 1]?.key ?? '')
    const told = isAgain ? { ...line, again: true as const } : line
    // `a gill of yeast`: it is to be asked how much that is
    const isStuff = unit?.kind === 'unknown' && (guessCountsAs(line.ingredient) ?? 'other') !== 'other'
    const isAsked = line.known || isStuff || (unit?.kind === 'unknown' && anyYeast.test(line.ingredient))
    return (first.share === undefined ? line.amount !== '' || isAsked : isStage) ? [told] : []
  })
}

/** The sentences of a row: where each starts, and the token after it. */
export function sentencesOf({ tokens }: Row): { from: number; to: number }[] {
  const sentences: { from: number; to: number }[] = []
  let from = 0
  tokens.forEach(({ text }, i) => {
    const next = tokens[i + 1]
    // a row of dots leads from a name to its amount
    const isEnd = '.!?;'.includes(text) && tokens[i - 1]?.text !== '.'
    if (!isEnd || !next?.gap || !/^[\p{Lu}\d]/u.test(next.text)) return
    sentences.push({ from, to: i + 1 })
    from = i + 1
  })
  return [...sentences, { from, to: tokens.length }]
}

/** The ingredients of a row's sentences, with the stage each sentence names. */
export function inProse(row: Row, larder: Larder): Part[] {
  if (row.quantities.length === 0) return []
  return sentencesOf(row).map(({ from, to }) => {
    const found = inSentence(row, larder, from, to)
    const stage = inlineStage(row, from, to)?.stage ?? stageMade(row, from, to)
    return stage ? { found, stage } : { found }
  })
}
