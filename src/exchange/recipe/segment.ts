import { kitchenUnits } from '../../dough/amounts/kitchen-measures.js'
import { articles, measureWords } from '../../dough/amounts/number-words.js'
import { type Token, tokensOf } from '../../dough/amounts/text-tokens.js'
import type { Larder } from '../../dough/document/larder.js'
import { ingredientNamed, larderName } from '../../dough/larder/spelled-names.js'
import { settle } from './amount.js'
import type { StageHeading } from './headings.js'
import { kitchen } from './kitchen-words.js'
import { bare, isState, nameOf, noteStart, purposeIn } from './names.js'
import type { RowQuantity } from './portions.js'
import { closingOf, isOpening, type Row, textOf } from './row.js'
import type { LineReason } from './words.js'

/** One ingredient found in a row. */
export interface Found {
  readonly ingredient: string
  readonly known: boolean // the larder has it
  readonly amount: string
  readonly share?: number | 'rest' // of an earlier stage, where no amount is said
  readonly note: string
  readonly guesses: readonly LineReason[]
  readonly said: readonly LineReason[] // what needs no confirming
  readonly source: string // exact text in the row
}

/** Ingredients of a row, and the stage that the row says they are of. */
export interface Part {
  readonly found: readonly Found[]
  readonly stage?: StageHeading
}

/** A stretch of a row's tokens, with the amounts in it. */
export interface Piece {
  readonly from: number
  readonly to: number
  readonly quantities: readonly RowQuantity[]
}

const mostLead = 8 // words before an amount that only limit it
const mostStates = 12 // tokens behind one that only say what it is like
const longestKind = 30 // characters of a remark that can be of the name

const isJoin = (token: Token | undefined) =>
  token !== undefined && ('/|=,:≈~'.includes(token.text) || kitchen.amountJoins.has(token.key))
const isPercent = ({ terms: [{ unit }] }: RowQuantity): boolean => unit?.kind === 'unit' && unit.unit === '%'
const isMeasure = (quantity: RowQuantity | undefined): quantity is RowQuantity =>
  Boolean(quantity?.terms[0].unit)

/** `at least 600 g water`, `zest of 1 orange`: what stands before the amount is no name. */
const isLimit = ({ tokens }: Row, q: RowQuantity, from: number, to: number): boolean =>
  q.from <= from + mostLead &&
  q.to < to &&
  tokens.slice(from, q.from).every(t => kitchen.leads.has(t.key) || "'’".includes(t.text))

/** May this be the amount of a line, where it stands? */
export function isAmount(row: Row, quantity: RowQuantity, from: number, to: number): boolean {
  const { tokens } = row
  const { unit } = quantity.terms[0]
  if (isPercent(quantity)) return quantity.to >= to || !kitchen.ofPercent.has(tokens[quantity.to]?.key ?? '')
  if (unit) return unit.kind !== 'not an amount'
  if (quantity.from === from || isLimit(row, quantity, from, to)) return true
  const [before, first] = [tokens[quantity.from - 1], tokens[quantity.from]!]
  const isApart = first.wide || before?.kind === 'word' || ':,.…–—-='.includes(before?.text ?? ' ')
  if (first.kind === 'word' || !isApart) return false
  const last = quantity.to + mostStates
  let end = quantity.to
  while (end < to && end <= last && !isOpening(tokens[end]) && tokens[end]!.text !== ',') end++
  // `Eggs: 3 large`
  return end <= last && isState(tokens.slice(quantity.to, end), true)
}

/** One segment of a row, while it is taken apart. */
class Segment {
  readonly taken: RowQuantity[] = []
  readonly each = new Set<RowQuantity>() // those that are of each that is counted
  readonly notes: string[] = []
  name: readonly Token[] = []
  readonly #tokens: readonly Token[]

  constructor(
    readonly row: Row,
    readonly to: number,
  ) {
    this.#tokens = row.tokens
  }

  /** A remark in the row's own words. */
  note(from: number, to: number): void {
    const tokens = this.#tokens
    let [a, b] = [from, to]
    while (a < b && tokens[a]!.kind === 'mark' && !'(["“«~≈½'.includes(tokens[a]!.text)) a++
    while (b > a && '([,;:.…–—-=/|'.includes(tokens[b - 1]!.text)) b--
    if (isOpening(tokens[a]) && closingOf(tokens, a, b) === b - 1) return this.note(a + 1, b - 1)
    const text = textOf(this.row, a, b).trim()
    const isFiller = a + 1 === b && (kitchen.fillers.has(tokens[a]!.key) || articles.has(tokens[a]!.key))
    if (text && !isFiller) this.notes.push(text)
  }

  /** What is in the parenthesis at `open`, if it is amounts of what stands before it and at most a remark on them. */
  #amountsIn(open: number) {
    const { starting } = this.row
    const tokens = this.#tokens
    const close = closingOf(tokens, open, this.to)
    const first = starting.get(open + 1) ?? starting.get(open + 2)
    if (!isMeasure(first) || first.to > close) return undefined
    const amounts = [first]
    let isEach = false
    let at = first.to
    while (at < close) {
      const { key } = tokens[at]!
      const other = starting.get(at)
      if (isMeasure(other) && other.to <= close) {
        amounts.push(other)
        at = other.to
      } else if (isJoin(tokens[at]) || kitchen.each.has(key) || kitchen.total.has(key)) {
        isEach ||= kitchen.each.has(key)
        at++
      } else break
    }
    const { low = '', key = '' } = tokens[at] ?? {}
    const isRemark =
      at === close || kitchen.remarkStarts.has(low) || kitchen.states.has(key) || measureWords.has(key)
    return isRemark ? { amounts, isEach, remark: at, close } : undefined
  }

  /** The amounts or the remark of a bracket. The token after it. */
  #bracket(open: number, onlyAmounts = false): number {
    const inside = this.#amountsIn(open)
    if (!inside && onlyAmounts) return open
    const close = inside?.close ?? closingOf(this.#tokens, open, this.to)
    this.taken.push(...(inside?.amounts ?? []))
    if (inside?.isEach) for (const amount of inside.amounts) this.each.add(amount)
    this.note(inside?.remark ?? open, Math.min(inside ? close : close + 1, this.to))
    return Math.min(close + 1, this.to)
  }

  /** Amounts that stand beside one another: `500 g (4 cups)`, `1 cup / 240 ml`, `2 cups 474 ml`. The token after. */
  beside(at: number): number {
    const tokens = this.#tokens
    let i = at
    while (i < this.to) {
      if (isOpening(tokens[i])) {
        const after = this.#bracket(i, true)
        if (after === i) break
        i = after
        continue
      }
      const next = isJoin(tokens[i]) ? i + (isJoin(tokens[i + 1]) ? 2 : 1) : i
      const other = this.row.starting.get(next)
      if (!isMeasure(other) || other.to > this.to) break
      if (next === i && !tokens[i]!.wide && isPercent(other)) break
      const joinsName = ',:'.includes(tokens[i]!.text) && !isJoin(tokens[i + 1])
      if (joinsName && this.taken.length > 1) break
      this.taken.push(other)
      i = other.to
    }
    return i
  }

  /** A remark before all else: `(optional) 30 g seeds`, `To serve: 30 g butter`. The token after. */
  remarkFirst(from: number): number {
    const tokens = this.#tokens
    const colon = tokens.slice(from, Math.min(from + 7, this.to)).findIndex(t => t.text === ':')
    const label = kitchen.noteStarts.has(tokens[from]!.key) && colon > 0 ? from + colon : undefined
    const close = isOpening(tokens[from]) ? closingOf(tokens, from, this.to) : label
    if (close === undefined || close + 1 >= this.to || !this.row.starting.has(close + 1)) return from
    if (this.#amountsIn(from)) return from
    this.note(from, close + 1)
    return close + 1
  }

  /** The name that starts at a token, then remarks and further amounts. */
  nameFrom(at: number, to: number): void {
    const tokens = this.#tokens
    let i = at
    const skip = (isSkipped: (token: Token) => boolean) => {
      while (i < to && !isOpening(tokens[i]) && isSkipped(tokens[i]!)) i++
    }
    if (isOpening(tokens[i])) i = this.#bracket(i)
    skip(t => t.kind === 'mark')
    const hasAmount = this.taken.length > 0
    // a container behind the amount of what is in it: `7 g sachet of yeast`
    if (hasAmount && i + 1 < to && kitchenUnits.get(tokens[i]!.key)?.kind === 'unknown') {
      this.notes.push(tokens[i]!.text)
      i = this.beside(i + 1)
    }
    skip(t => t.kind === 'mark' || kitchen.fillers.has(t.key))
    // `500 g 100 % whole rye flour`: all of it is of that
    if (
      hasAmount &&
      tokens[i]?.text === '100' &&
      tokens[i + 1]?.text === '%' &&
      !this.#saysHydration(i + 2)
    ) {
      this.note(i, i + 2)
      i += 2
    }
    i = this.#statesBefore(i, to)
    const end = this.#columnAfter(i, noteStart(tokens, i, to))
    const size = this.#sizeOfOne(i, end)
    this.name = tokens.slice(i, size ? size.from - 1 : end)
    this.remarks(size?.to ?? end, to)
  }

  #saysHydration(at: number): boolean {
    const { kind, key = '' } = this.#tokens[at] ?? {}
    return kind !== 'word' || /^hydrat/.test(key)
  }

  /** `warm (not hot) water`: states with a remark on them, before the name. The token where that starts. */
  #statesBefore(from: number, to: number): number {
    const tokens = this.#tokens
    const open = noteStart(tokens, from, to)
    if (open === from || !isOpening(tokens[open]) || !isState(tokens.slice(from, open))) return from
    const close = closingOf(tokens, open, to)
    if (tokens[close + 1]?.kind !== 'word' || close + 1 >= to || this.#amountsIn(open)) return from
    this.note(from, close + 1)
    return close + 1
  }

  /** Where behind a name another column starts, or its per cent at the end: `375 g water 75 %`. */
  #columnAfter(from: number, end: number): number {
    for (let i = from + 1; i < end; i++) {
      const other = this.row.starting.get(i)
      if (other && (this.#tokens[i]!.wide || (isPercent(other) && other.to >= end))) return i
    }
    return end
  }

  /** What one of those counted weighs, behind the name: `2 sachets of yeast of 7 g`. */
  #sizeOfOne(from: number, end: number): RowQuantity | undefined {
    const counted = this.taken.at(-1)?.terms[0].unit
    if (this.taken.length === 0 || (counted && counted.kind !== 'unknown')) return undefined
    for (let i = from + 1; i < end; i++) {
      const size = ['of', 'de', 'at'].includes(this.#tokens[i]!.key) && this.row.starting.get(i + 1)
      if (!size || !isMeasure(size) || size.share !== undefined) continue
      this.taken.push(size)
      this.each.add(size)
      return size
    }
    return undefined
  }

  /** What comes after a name, a remark a piece. */
  remarks(at: number, to: number): void {
    let from = at
    for (let i = at; i < to; i++) {
      const isBreak = this.#tokens[i]!.text === ',' || this.#tokens[i]!.text === ';'
      if (!isBreak && !isOpening(this.#tokens[i])) continue
      this.note(from, i)
      from = isBreak ? i + 1 : this.#bracket(i)
      i = from - 1
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

/** A remark may say which of the larder's it is: `flour, strong white`, `beurre, doux`, `all-purpose or bread flour`. */
function nearer(name: { ingredient: string; known: boolean }, notes: readonly string[], larder: Larder) {
  const { ingredient, known } = name
  const remarks = notes.flatMap(note => note.split(', '))
  for (const remark of remarks.filter(r => r.length <= longestKind)) {
    const isOther = !known && /^(?:or|ou|oder) /i.test(remark)
    const nearest = isOther
      ? larderName(larder, `${ingredient} ${remark.split(' ').at(-1)}`)
      : (larderName(larder, `${remark} ${ingredient}`) ?? larderName(larder, `${ingredient} ${remark}`))
    if (nearest)
      return { ingredient: nearest, known: true, remarks: remarks.filter(r => isOther || r !== remark) }
  }
  return { ingredient, known, remarks }
}

/** Takes one segment of a row apart: what, how much, and what else is said. */
export function readSegment(row: Row, piece: Piece, larder: Larder): Found | undefined {
  const { tokens, depths } = row
  const { to, quantities } = piece
  const segment = new Segment(row, to)
  const from = segment.remarkFirst(piece.from)
  const amounts = quantities.filter(q => depths[q.from] === 0 && isAmount(row, q, from, to))
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
  if (!/\p{L}/u.test(name.ingredient)) return undefined
  const { ingredient, known, remarks } = nearer(name, segment.notes, larder)
  const typedOf = (q: RowQuantity) => textOf(row, q.from, q.to)
  const { amount, share, guesses, said, notes } = settle(
    segment.taken.map(quantity => ({
      quantity,
      typed: typedOf(quantity),
      ofEach: segment.each.has(quantity),
      isBefore: isOpening(tokens[quantity.to]),
    })),
    ingredient,
    larder,
  )
  const counted = new Set(segment.taken.map(q => q.from))
  const more: LineReason[] = quantities
    .filter(q => q.terms[0].unit?.kind === 'unit' && !isPercent(q) && !counted.has(q.from))
    .map(q => ({ code: 'notCounted', typed: typedOf(q) }))
  if (main && kitchen.each.has(tokens[main.to]?.key ?? '') && main.to + 2 < to)
    more.push({ code: 'eachOfSeveral' })
  const purposes =
    segment.taken.length > 0 ? remarks.map(remark => purposeIn(tokensOf(remark).slice(0, 8))) : []
  const purpose = purposes.find(one => one !== undefined)
  if (purpose) more.push({ code: 'forUse', purpose })
  const all = [...notes, ...name.notes, ...remarks].map(n => n.trim()).filter(Boolean)
  const isOne = article && ingredientNamed(larder, ingredient)?.each
  return {
    ...{ ingredient, known, said },
    amount: isOne && segment.taken.length === 0 ? '1 each' : amount,
    ...(share === undefined ? {} : { share }),
    note: [...new Set(all)].join(', '),
    guesses: [...guesses, ...more],
    source: textOf(row, piece.from, to),
  }
}
