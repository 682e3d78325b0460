import { kitchenUnits } from '../../dough/amounts/kitchen-measures.js'
import { articles, measureWords } from '../../dough/amounts/number-words.js'
import type { Token } from '../../dough/amounts/text-tokens.js'
import type { Larder } from '../../dough/document/larder.js'
import { type Found, nearer, settle } from './found.js'
import {
  amountJoins,
  descriptiveOfPercent,
  eachWords,
  fillers,
  leadWords,
  noteStarts,
  remarkStarts,
  stateWords,
  totalWords,
} from './kitchen-words.js'
import { ingredientNamed } from './larder-names.js'
import { bare, isState, nameOf, noteStart } from './name.js'
import type { RowQuantity } from './portions.js'
import { purposeOf } from './purposes.js'
import type { LineReason } from './reasons.js'
import { closingOf, isOpening, type Row, textOf } from './row.js'

/** A stretch of a row's tokens, with the amounts in it. */
export interface Piece {
  readonly from: number
  readonly to: number
  readonly quantities: readonly RowQuantity[]
}

const mostLead = 8 // words before an amount that only limit it
const mostStates = 12 // tokens behind one that only say what it is like

const isJoin = (token: Token | undefined) =>
  token !== undefined && ('/|=,:≈~'.includes(token.text) || amountJoins.has(token.key))

const isLeadWord = (token: Token): boolean => leadWords.has(token.key) || "'’".includes(token.text)
const isLimit = (row: Row, q: RowQuantity, from: number, to: number): boolean =>
  q.from <= from + mostLead && q.to < to && row.tokens.slice(from, q.from).every(isLeadWord)

const isPercent = ({ terms: [{ unit }] }: RowQuantity): boolean => unit?.kind === 'unit' && unit.unit === '%'

/** May this be the amount of a line, where it stands? */
export function isAmount(row: Row, quantity: RowQuantity, from: number, to: number): boolean {
  const { tokens } = row
  const unit = quantity.terms[0].unit
  const after = tokens[quantity.to]
  if (isPercent(quantity)) return !descriptiveOfPercent.has(after?.key ?? '') || quantity.to >= to
  if (unit) return unit.kind !== 'not an amount'
  if (quantity.from === from || isLimit(row, quantity, from, to)) return true
  if (tokens[quantity.from]!.kind === 'word') return false
  const before = tokens[quantity.from - 1]
  const apart = tokens[quantity.from]!.wide || (before?.kind === 'mark' && ':,.…–—-='.includes(before.text))
  if (!apart && before?.kind !== 'word') return false
  let end = quantity.to
  while (end < to && end <= quantity.to + mostStates && !isOpening(tokens[end]) && tokens[end]!.text !== ',')
    end++
  // `Eggs: 3 large`
  return end <= quantity.to + mostStates && isState(tokens.slice(quantity.to, end), true)
}

/** Amounts in parentheses that are of the same thing as the one before them. */
interface Inside {
  readonly amounts: readonly RowQuantity[]
  readonly close: number
  readonly each: boolean // of each of those counted
  readonly remark: number // the token where a remark on it starts, or `close`
}

/** What is in the parenthesis at `open`, if it is an amount and at most a remark on it. */
function amountsIn(row: Row, open: number, to: number): Inside | undefined {
  const { tokens, starting } = row
  const first = starting.get(open + 1) ?? starting.get(open + 2)
  if (!first?.terms[0].unit) return undefined
  const close = closingOf(tokens, open, to)
  if (first.to > close) return undefined
  const amounts = [first]
  let each = false
  let i = first.to
  while (i < close) {
    const token = tokens[i]!
    const other = starting.get(i)
    if (other?.terms[0].unit && other.to <= close) {
      amounts.push(other)
      i = other.to
    } else if (isJoin(token) || eachWords.has(token.key) || totalWords.has(token.key)) {
      each ||= eachWords.has(token.key)
      i++
    } else break
  }
  const next = tokens[i]
  const isRemark =
    i === close || remarkStarts.has(next!.low) || stateWords.has(next!.key) || measureWords.has(next!.key)
  return isRemark ? { amounts, close, each, remark: i } : undefined
}

/** One segment of a row, while it is taken apart. */
class Segment {
  readonly taken: RowQuantity[] = []
  readonly each = new Set<RowQuantity>()
  readonly notes: string[] = []
  name: Token[] = []

  constructor(
    readonly row: Row,
    readonly to: number,
  ) {}

  /** A remark in the row's own words. */
  note(from: number, to: number): void {
    const { tokens } = this.row
    let [a, b] = [from, to]
    while (a < b && tokens[a]!.kind === 'mark' && !'(["“«~≈½'.includes(tokens[a]!.text)) a++
    while (b > a && '([,;:.…–—-=/|'.includes(tokens[b - 1]!.text)) b--
    if (isOpening(tokens[a]) && closingOf(tokens, a, b) === b - 1) return this.note(a + 1, b - 1)
    const text = textOf(this.row, a, b).trim()
    const isFiller = a + 1 === b && (fillers.has(tokens[a]!.key) || articles.has(tokens[a]!.key))
    if (text && !isFiller) this.notes.push(text)
  }

  /** Amounts that stand beside one another: `500 g (4 cups)`, `1 cup / 240 ml`, `2 cups 474 ml`. The token after. */
  beside(at: number): number {
    const { tokens, starting } = this.row
    let i = at
    while (i < this.to) {
      if (isOpening(tokens[i])) {
        const inside = amountsIn(this.row, i, this.to)
        if (!inside) break
        this.takeAll(inside)
        i = Math.min(inside.close + 1, this.to)
        continue
      }
      const next = isJoin(tokens[i]) ? i + (isJoin(tokens[i + 1]) ? 2 : 1) : i
      const other = starting.get(next)
      if (!other?.terms[0].unit || other.to > this.to) break
      if (next === i && !tokens[i]!.wide && isPercent(other)) break
      const joinsName = ',:'.includes(tokens[i]!.text) && !isJoin(tokens[i + 1])
      if (joinsName && this.taken.length > 1) break
      this.taken.push(other)
      i = other.to
    }
    return i
  }

  takeAll({ amounts, close, each, remark }: Inside): void {
    this.taken.push(...amounts)
    if (each) for (const amount of amounts) this.each.add(amount)
    this.note(remark, close)
  }

  /** A remark before all else: `(optional) 30 g seeds`, `To serve: 30 g butter`. The token after. */
  remarkFirst(from: number): number {
    const { tokens, starting } = this.row
    const colon = tokens.slice(from, Math.min(from + 7, this.to)).findIndex(t => t.text === ':')
    const label = noteStarts.has(tokens[from]!.key) && colon > 0 ? from + colon : undefined
    const close = isOpening(tokens[from]) ? closingOf(tokens, from, this.to) : label
    if (close === undefined || close + 1 >= this.to || !starting.has(close + 1)) return from
    if (amountsIn(this.row, from, this.to)) return from
    this.note(from, close + 1)
    return close + 1
  }

  /** The name that starts at a token, then remarks and further amounts; the words of the name. */
  nameFrom(at: number, to: number): void {
    const { tokens } = this.row
    const isMark = (i: number) => i < to && tokens[i]!.kind === 'mark' && !isOpening(tokens[i])
    let i = at
    if (isOpening(tokens[i])) i = this.#bracket(i, to)
    while (isMark(i)) i++
    // a container behind the amount of what is in it: `7 g sachet of yeast`
    if (kitchenUnits.get(tokens[i]?.key ?? '')?.kind === 'unknown' && i + 1 < to && this.taken.length > 0) {
      this.notes.push(tokens[i]!.text)
      i = this.beside(i + 1)
    }
    while (isMark(i) || (i < to && fillers.has(tokens[i]!.key))) i++
    i = this.#wholePercent(i, to)
    i = this.#statesBefore(i, to)
    const end = this.#columnAfter(i, noteStart(tokens, i, to))
    const size = this.#sizeOfOne(i, end)
    this.name.push(...tokens.slice(i, size?.from ?? end))
    this.remarks(size?.to ?? end, to)
  }

  /** The amounts or the remark of a bracket. The token after it. */
  #bracket(open: number, to: number): number {
    const close = Math.min(closingOf(this.row.tokens, open, to) + 1, to)
    const inside = amountsIn(this.row, open, to)
    if (inside) this.takeAll(inside)
    else this.note(open, close)
    return close
  }

  /** `500 g 100 % whole rye flour`: all of it is of that. The token after. */
  #wholePercent(from: number, to: number): number {
    const [number, percent, name] = this.row.tokens.slice(from, Math.min(from + 3, to))
    if (number?.text !== '100' || percent?.text !== '%' || name?.kind !== 'word' || this.taken.length === 0)
      return from
    if (descriptiveOfPercent.has(name.key) && !/^(?:whole|rye)$/.test(name.key)) return from
    this.note(from, from + 2)
    return from + 2
  }

  /** `warm (not hot) water`: states with a remark on them, before the name. The token where that starts. */
  #statesBefore(from: number, to: number): number {
    const { tokens } = this.row
    const open = noteStart(tokens, from, to)
    if (open === from || !isOpening(tokens[open]) || !isState(tokens.slice(from, open))) return from
    const close = closingOf(tokens, open, to)
    if (tokens[close + 1]?.kind !== 'word' || close + 1 >= to || amountsIn(this.row, open, to)) return from
    this.note(from, close + 1)
    return close + 1
  }

  /** Where behind a name another column starts, or its per cent at the end: `375 g water 75 %`. */
  #columnAfter(from: number, end: number): number {
    for (let i = from + 1; i < end; i++) {
      const other = this.row.starting.get(i)
      if (other && (this.row.tokens[i]!.wide || (isPercent(other) && other.to >= end))) return i
    }
    return end
  }

  /** What one of those counted weighs, behind the name: `2 sachets of yeast of 7 g`. */
  #sizeOfOne(from: number, end: number): RowQuantity | undefined {
    const counted = this.taken.at(-1)?.terms[0].unit
    if (this.taken.length === 0 || (counted && counted.kind !== 'unknown')) return undefined
    for (let i = from + 1; i < end; i++) {
      if (!['of', 'de', 'at'].includes(this.row.tokens[i]!.key)) continue
      const size = this.row.starting.get(i + 1)
      if (!size?.terms[0].unit || size.share !== undefined) continue
      this.taken.push(size)
      this.each.add(size)
      return { ...size, from: i }
    }
    return undefined
  }

  /** What comes after a name, a remark a piece. */
  remarks(at: number, to: number): void {
    const { tokens } = this.row
    let from = at
    for (let i = at; i < to; i++) {
      if (isOpening(tokens[i])) {
        this.note(from, i)
        from = this.#bracket(i, to)
        i = from - 1
      } else if (tokens[i]!.text === ',' || tokens[i]!.text === ';') {
        this.note(from, i)
        from = i + 1
      }
    }
    this.note(from, to)
  }
}

/** `asdf 42t`: one letter behind what nobody knows is no measure. */
function withoutLetter(quantity: RowQuantity): RowQuantity {
  const [{ number, unit }] = quantity.terms
  return unit?.kind === 'unit' && unit.guess === 'letter'
    ? { ...quantity, terms: [{ number, unit: { kind: 'unknown', word: unit.unit } }] }
    : quantity
}

/** Takes one segment of a row apart: what, how much, and what else is said. */
export function readSegment(row: Row, piece: Piece, larder: Larder): Found | undefined {
  const { tokens, depths } = row
  const { to, quantities } = piece
  const segment = new Segment(row, to)
  const from = segment.remarkFirst(piece.from)
  const amounts = quantities.filter(q => depths[q.from] === 0 && isAmount(row, q, from, to))
  // `at least 600 g water`, `zest of 1 orange`: what stands before the amount is no name
  const isLimited = (q: RowQuantity) => q.from > from && isLimit(row, q, from, to)
  const isNamed = (q: RowQuantity) => !isLimited(q) && bare(tokens.slice(from, q.from)).length > 0
  const main = amounts.find(q => !isPercent(q) && (!isNamed(q) || q.terms[0].unit)) ?? amounts[0]
  // `un œuf`: an article before what the larder counts is one of it
  const article = !main && articles.has(tokens[from]!.key)
  if (!main) segment.nameFrom(article ? from + 1 : from, to)
  else if (isNamed(main)) {
    segment.nameFrom(from, main.from)
    segment.taken.push(nameOf(segment.name, larder).known ? main : withoutLetter(main))
    segment.remarks(segment.beside(main.to), to)
  } else {
    if (isLimited(main)) segment.note(from, main.from)
    segment.taken.push(main)
    segment.nameFrom(segment.beside(main.to), to)
  }
  const name = nameOf(segment.name, larder)
  if (segment.name.length === 0 || !/\p{L}/u.test(name.ingredient)) return undefined
  const { ingredient, known, remarks } = nearer(name, segment.notes, larder)
  const taken = segment.taken.map(quantity => ({
    quantity,
    typed: textOf(row, quantity.from, quantity.to),
    ofEach: segment.each.has(quantity),
    before: isOpening(tokens[quantity.to]),
  }))
  const { amount, share, guesses, said, notes } = settle(taken, ingredient, larder)
  const more: LineReason[] = notCounted(row, piece, segment.taken)
  if (main && eachWords.has(tokens[main.to]?.key ?? '') && main.to + 2 < to)
    more.push({ code: 'each of several' })
  const purpose = amount && purposeOf(remarks)
  if (purpose) more.push({ code: 'for use', purpose })
  const all = [...notes, ...name.notes, ...remarks].map(n => n.trim()).filter(Boolean)
  return {
    ingredient,
    known,
    amount: amount?.text ?? (article && ingredientNamed(larder, ingredient)?.each ? '1 each' : ''),
    share,
    note: [...new Set(all)].join(', '),
    guesses: [...guesses, ...more],
    said,
    source: textOf(row, piece.from, to),
  }
}

/** The measures of a segment that went into its note. */
function notCounted(row: Row, { quantities }: Piece, taken: readonly RowQuantity[]): LineReason[] {
  const counted = new Set(taken.map(q => q.from))
  return quantities
    .filter(({ from, terms: [{ unit }] }) => unit?.kind === 'unit' && unit.unit !== '%' && !counted.has(from))
    .map(q => ({ code: 'not counted', typed: textOf(row, q.from, q.to) }))
}
