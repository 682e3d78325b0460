import type { Larder } from '../../dough/document/larder.js'
import { type AmountRead, amountOf, asWritten, compared } from './amount.js'
import { articles, fillers, leadWords, measureWords, noteStarts, stateWords } from './kitchen-words.js'
import { ingredientNamed, larderName } from './larder-names.js'
import { bare, isState, nameOf, noteStart } from './name.js'
import { saidOfPurpose } from './purposes.js'
import { type Quantity, shareOf } from './quantity.js'
import type { Row } from './row-text.js'
import { closingOf, type Token } from './tokens.js'
import { unitTable } from './unit-words.js'

/** A stretch of a row's tokens, with the amounts in it. */
export interface Piece {
  readonly from: number
  readonly to: number
  readonly quantities: readonly Quantity[]
}

/** One ingredient found in a row. */
export interface Found {
  readonly ingredient: string
  readonly known: boolean // the larder has it
  readonly amount: string
  readonly share?: number | 'rest' | undefined // of an earlier stage, where no amount is said
  readonly note: string
  readonly guesses: readonly string[]
  readonly said: readonly string[] // what needs no confirming
  readonly source: string // exact text in the row
}

const isOpen = (token: Token | undefined) => token?.text === '(' || token?.text === '['
const isJoin = (token: Token | undefined) =>
  token !== undefined && ('/|=,:≈~'.includes(token.text) || ['or', 'ou', 'soit'].includes(token.key))

/** The text of tokens from, up to but not with, to. */
export const textOf = (row: Row, from: number, to: number): string =>
  from < to ? row.text.slice(row.tokens[from]!.at, row.tokens[to - 1]!.end) : ''

/** What is descriptive about a per cent: `100 % hydration`, `12 % protein`. */
const percentOf =
  /^(hydration|hydratation|hydrated|protein|proteins|proteine|proteines|fat|cocoa|cacao|matiere|mg|extraction|whole|strength|alcohol|rye|abv)$/

const isLeadWord = (token: Token): boolean => leadWords.has(token.key) || "'’".includes(token.text)

const isPercent = ({ terms: [{ unit }] }: Quantity): boolean => unit?.kind === 'unit' && unit.unit === '%'

/** May this be the amount of a line, where it stands? */
export function isAmount(row: Row, quantity: Quantity, from: number, to: number): boolean {
  const { tokens } = row
  const unit = quantity.terms[0].unit
  const after = tokens[quantity.to]
  if (isPercent(quantity)) return !percentOf.test(after?.key ?? '') || quantity.to >= to
  if (unit) return unit.kind !== 'not an amount'
  const before = tokens[quantity.from - 1]
  const ofIt = quantity.from <= from + 8 && tokens.slice(from, quantity.from).every(isLeadWord)
  if (ofIt && quantity.to < to) return true
  const atStart = quantity.from === from
  const apart = tokens[quantity.from]!.wide || (before?.kind === 'mark' && ':,.…–—-='.includes(before.text))
  const end = tokens.findIndex((t, i) => i >= quantity.to && (i >= to || isOpen(t) || t.text === ','))
  // `Eggs: 3 large`
  const atEnd = isState(tokens.slice(quantity.to, end < 0 ? to : Math.min(end, to)), true)
  return atStart || ((apart || before?.kind === 'word') && atEnd && tokens[quantity.from]!.kind !== 'word')
}

/** Amounts in parentheses that are of the same thing as the one before them. */
interface Inside {
  readonly amounts: readonly [Quantity, ...Quantity[]]
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
  const amounts: [Quantity, ...Quantity[]] = [first]
  let each = false
  let i = first.to
  while (i < close) {
    const token = tokens[i]!
    const other = starting.get(i)
    if (other?.terms[0].unit && other.to <= close) {
      amounts.push(other)
      i = other.to
    } else if (isJoin(token) || eachWords.has(token.key) || allWords.has(token.key)) {
      each ||= eachWords.has(token.key)
      i++
    } else break
  }
  const next = tokens[i]
  const remarks =
    i === close || remarkStarts.has(next!.low) || stateWords.has(next!.key) || measureWords.has(next!.key)
  return remarks ? { amounts, close, each, remark: i } : undefined
}

const remarkStarts = new Set(['at', 'à', 'without', 'sans', 'when', 'once'])
const eachWords = new Set(['each', 'chacun', 'chacune', 'piece'])

const allWords = new Set(['total', 'in', 'all', 'the', '.', 'about', 'au'])

/** One segment of a row, while it is taken apart. */
class Segment {
  readonly taken: Quantity[] = []
  readonly each = new Set<Quantity>()
  readonly notes: string[] = []
  readonly guesses: string[] = []
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
    if (isOpen(tokens[a]) && closingOf(tokens, a, b) === b - 1) return this.note(a + 1, b - 1)
    const text = textOf(this.row, a, b).trim()
    if (text && !(a + 1 === b && (fillers.has(tokens[a]!.key) || articles.has(tokens[a]!.key))))
      this.notes.push(text)
  }

  /** Amounts that stand beside one another: `500 g (4 cups)`, `1 cup / 240 ml`. The token after. */
  beside(at: number): number {
    const { tokens } = this.row
    let i = at
    while (i < this.to) {
      if (isOpen(tokens[i])) {
        const inside = amountsIn(this.row, i, this.to)
        if (!inside) break
        this.takeAll(inside)
        i = Math.min(inside.close + 1, this.to)
        continue
      }
      const next = isJoin(tokens[i]) ? i + (isJoin(tokens[i + 1]) ? 2 : 1) : tokens[i]!.wide ? i : -1
      const other = next < 0 ? undefined : this.row.starting.get(next)
      if (!other?.terms[0].unit || other.to > this.to) break
      const joinsName = ',:'.includes(tokens[i]!.text) && !isJoin(tokens[i + 1])
      if (joinsName && this.taken.length > 1) break
      this.take(other)
      i = other.to
    }
    return i
  }

  take(quantity: Quantity): void {
    this.taken.push(quantity)
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
    const close = isOpen(tokens[from]) ? closingOf(tokens, from, this.to) : label
    if (close === undefined || close + 1 >= this.to || !starting.has(close + 1)) return from
    if (amountsIn(this.row, from, this.to)) return from
    this.note(from, close + 1)
    return close + 1
  }

  /** The name that starts at a token, then remarks and further amounts; the words of the name. */
  nameFrom(at: number, to: number): void {
    const { tokens } = this.row
    let i = at
    const first = tokens[i]
    if (isOpen(first)) {
      const close = Math.min(closingOf(tokens, i, to) + 1, to)
      const inside = amountsIn(this.row, i, to)
      if (inside) this.takeAll(inside)
      else this.note(i, close)
      i = close
    }
    // a container behind the amount of what is in it: `7 g sachet of yeast`
    while (i < to && tokens[i]!.kind === 'mark' && tokens[i]!.text !== '(') i++
    const container = unitTable.get(tokens[i]?.key ?? '')
    if (container?.kind === 'unknown' && i + 1 < to && this.taken.length > 0) {
      this.notes.push(tokens[i]!.text)
      i++
      i = this.beside(i)
    }
    while (i < to && (fillers.has(tokens[i]!.key) || tokens[i]!.kind === 'mark') && !isOpen(tokens[i])) i++
    i = this.statesBefore(i, to)
    const end = this.columnAfter(i, noteStart(tokens, i, to))
    const size = this.sizeOfOne(i, end)
    this.name.push(...tokens.slice(i, size?.from ?? end))
    this.remarks(size?.to ?? end, to)
  }

  /** `warm (not hot) water`: states with a remark on them, before the name. The token where that starts. */
  statesBefore(from: number, to: number): number {
    const { tokens } = this.row
    const open = noteStart(tokens, from, to)
    if (open === from || !isOpen(tokens[open]) || !isState(tokens.slice(from, open))) return from
    const close = closingOf(tokens, open, to)
    if (tokens[close + 1]?.kind !== 'word' || close + 1 >= to || amountsIn(this.row, open, to)) return from
    this.note(from, close + 1)
    return close + 1
  }

  /** Where behind a name another column starts, or its per cent at the end: `375 g water 75 %`. */
  columnAfter(from: number, end: number): number {
    for (let i = from + 1; i < end; i++) {
      const other = this.row.starting.get(i)
      if (other && (this.row.tokens[i]!.wide || (isPercent(other) && other.to >= end))) return i
    }
    return end
  }

  /** What one of those counted weighs, behind the name: `2 sachets of yeast of 7 g`. */
  sizeOfOne(from: number, end: number): { from: number; to: number } | undefined {
    const counted = this.taken.at(-1)?.terms[0].unit
    if (this.taken.length === 0 || (counted && counted.kind !== 'unknown')) return undefined
    for (let i = from + 1; i < end; i++) {
      const size = ['of', 'de', 'at'].includes(this.row.tokens[i]!.key)
        ? this.row.starting.get(i + 1)
        : undefined
      if (!size?.terms[0].unit || shareOf(size) !== undefined) continue
      this.take(size)
      this.each.add(size)
      return { from: i, to: size.to }
    }
    return undefined
  }

  /** What comes after a name, a remark a piece. */
  remarks(at: number, to: number): void {
    const { tokens } = this.row
    let from = at
    for (let i = at; i < to; i++) {
      if (isOpen(tokens[i])) {
        this.note(from, i)
        const inside = amountsIn(this.row, i, to)
        const close = Math.min(closingOf(tokens, i, to), to - 1)
        if (inside) this.takeAll(inside)
        else this.note(i, close + 1)
        i = close
        from = i + 1
      } else if (tokens[i]!.text === ',' || tokens[i]!.text === ';') {
        this.note(from, i)
        from = i + 1
      }
    }
    this.note(from, to)
  }
}

/** `asdf 42t`: one letter behind what nobody knows is no measure. */
function withoutLetter(quantity: Quantity): Quantity {
  const [{ number, unit }] = quantity.terms
  const isLetter = unit?.kind === 'unit' && unit.letter
  return isLetter
    ? { ...quantity, terms: [{ number, unit: { kind: 'unknown', word: unit.unit } }] }
    : quantity
}

/** The amount of highest rank, with what there is to say about the others. */
function settle(
  segment: Segment,
  name: string,
  larder: Larder,
): { amount: AmountRead | undefined; guesses: string[]; said: string[]; notes: string[] } {
  const { row } = segment
  const reads = segment.taken.map(q => {
    const typed = textOf(row, q.from, q.to)
    return { q, typed, read: amountOf(q, typed, name, larder) }
  })
  const best = [...reads].sort((a, b) => b.read.rank - a.read.rank)[0]
  if (!best) return { amount: undefined, guesses: [], said: [], notes: [] }
  const guesses = [...best.read.said]
  const said: string[] = []
  const measures: string[] = []
  const notes = best.read.note ? [best.read.note] : []
  let amount = best.read
  const count = reads.find(r => r !== best && r.read.rank <= 2 && !r.q.upTo)
  const pieces = count?.q.terms[0].number.value ?? 1
  const isBare = count !== undefined && count.q.terms[0].unit === undefined
  // `2 (400 g) tins` are of 400 g each; `3 eggs (150 g)` are not
  const ofEach = segment.each.has(best.q) || (isBare && isOpen(row.tokens[count.q.to]))
  if (count && ofEach && pieces !== 1) {
    amount = { ...amount, value: amount.value * pieces, text: amountText(amount.value * pieces, amount.unit) }
    guesses.push(`${count.typed} of ${best.typed} each: ${amount.text}.`)
    notes.push(count.typed)
  } else
    for (const other of reads) {
      if (other === best || (other === count && isBare && pieces === 1)) continue
      if (other.read.share === 1) continue
      if (other.read.unit === '' || other.read.unit === '%') {
        notes.push(other.typed)
        if (other.read.unit === '' && pieces !== 1)
          guesses.push(`${best.typed} was taken for all of ${other.typed} together.`)
      } else {
        measures.push(other.typed)
        const { sentence, agrees } = compared(amount, other.read, other.typed, name, larder)
        const among = agrees ? said : guesses
        among.push(sentence)
      }
    }
  if (measures.length > 0) notes.push(asWritten(measures.join(', ')))
  return { amount, guesses, said, notes }
}

/** A remark may say which of the larder's it is: `flour, strong white`, `butter (salted)`, `beurre, doux`. */
function nearer(
  { ingredient, known }: { ingredient: string; known: boolean },
  notes: readonly string[],
  larder: Larder,
): { ingredient: string; known: boolean; remarks: readonly string[] } {
  const remarks = notes.flatMap(note => note.split(', '))
  for (const remark of remarks) {
    if (remark.length > 30) continue
    const name =
      larderName(larder, `${remark} ${ingredient}`) ?? larderName(larder, `${ingredient} ${remark}`)
    if (name) return { ingredient: name, known: true, remarks: remarks.filter(r => r !== remark) }
  }
  return { ingredient, known, remarks }
}

const amountText = (value: number, unit: string): string => `${Number(value.toPrecision(12))} ${unit}`

/** Takes one segment of a row apart: what, how much, and what else is said. */
export function readSegment(row: Row, piece: Piece, larder: Larder): Found | undefined {
  const { tokens, depths } = row
  const { to, quantities } = piece
  const segment = new Segment(row, to)
  const from = segment.remarkFirst(piece.from)
  const open = quantities.filter(q => depths[q.from] === 0)
  const amounts = open.filter(q => isAmount(row, q, from, to))
  // `at least 600 g water`, `zest of 1 orange`: what stands before the amount is no name
  const isLimit = (q: Quantity) =>
    q.from > from && q.from <= from + 8 && q.to < to && tokens.slice(from, q.from).every(isLeadWord)
  const lead = (q: Quantity) => !isLimit(q) && bare(tokens.slice(from, q.from)).length > 0
  const main = amounts.find(q => !isPercent(q) && (!lead(q) || q.terms[0].unit)) ?? amounts[0]
  // `un œuf`: an article before what the larder counts is one of it
  const article = !main && articles.has(tokens[from]!.key)
  if (!main) segment.nameFrom(article ? from + 1 : from, to)
  else if (!lead(main)) {
    if (isLimit(main)) segment.note(from, main.from)
    segment.take(main)
    segment.nameFrom(segment.beside(main.to), to)
    if (segment.name.length === 0) return undefined
  } else {
    segment.nameFrom(from, main.from)
    segment.take(nameOf(segment.name, larder).known ? main : withoutLetter(main))
    segment.remarks(segment.beside(main.to), to)
  }
  if (segment.name.length === 0) return undefined
  const name = nameOf(segment.name, larder)
  if (name.ingredient === '' || !/\p{L}/u.test(name.ingredient)) return undefined
  const { ingredient, known, remarks } = nearer(name, segment.notes, larder)
  if (main && eachWords.has(tokens[main.to]?.key ?? '') && main.to + 2 < to)
    segment.guesses.push('So much of each is meant: make a line of every one.')
  const { amount, guesses, said, notes } = settle(segment, ingredient, larder)
  const taken = new Set(segment.taken.map(q => q.from))
  for (const left of quantities) {
    const { unit } = left.terms[0]
    const measured = (unit?.kind === 'unit' && unit.unit !== '%') || unit?.kind === 'converted'
    if (measured && !taken.has(left.from))
      guesses.push(`“${textOf(row, left.from, left.to)}” stands in the note and was not counted.`)
  }
  const all = [...notes, ...name.notes, ...remarks].map(n => n.trim()).filter(Boolean)
  return {
    ingredient,
    known,
    amount: amount?.text ?? (article && ingredientNamed(larder, ingredient)?.each ? '1 each' : ''),
    share: amount?.share,
    note: [...new Set(all)].join(', '),
    guesses: [...guesses, ...segment.guesses, ...(amount ? saidOfPurpose(remarks) : [])],
    said,
    source: textOf(row, piece.from, to),
  }
}
