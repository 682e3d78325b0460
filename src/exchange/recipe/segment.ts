import type { Larder } from '../../dough/document/larder.js'
import { guessCountsAs } from '../../dough/larder/counts-as-guess.js'
import { ingredientNamed } from '../../dough/larder/spelled-names.js'
import { kitchenUnits, measureWords } from '../../dough/lexicon/kitchen-measures.js'
import { articles } from '../../dough/lexicon/number-words.js'
import type { Portion } from '../../dough/lexicon/portions.js'
import { type Token, tokensOf } from '../../dough/lexicon/text-tokens.js'
import { kitchen } from '../values/kitchen-words.js'
import { bare, isState, nameOf, nearerName, noteStart, purposeIn } from '../values/line-names.js'
import { kindOfWord } from '../values/stage-kinds.js'
import { bySpoons, inCups, settle } from './amount.js'
import type { StageHeading } from './headings.js'
import { closingOf, isOpening, type Row, textOf } from './recipe-row.js'
import type { LineReason } from './words.js'

/** One ingredient found in a row. */
export interface Found {
  readonly ingredient: string
  readonly known: boolean // the larder has it
  readonly amount: string
  readonly share?: number | 'rest' // of an earlier stage, where no amount is said
  readonly less?: string // that is kept back of all of it: `all but 30 g`
  readonly note: string
  readonly guesses: readonly LineReason[]
  readonly said: readonly LineReason[] // what needs no confirming
  readonly again?: true // said as of what was met: `the half ounce of salt`
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
  readonly quantities: readonly Portion[]
}

const mostLead = 8 // tokens before an amount that are no name
const mostStates = 12 // tokens behind one that only say what it is like
const longestRemark = 8 // tokens of one that are asked what it is for

const isJoin = (token: Token | undefined) =>
  token !== undefined &&
  ('/|=,:;≈~–—'.includes(token.text) ||
    (token.text === '-' && token.gap) ||
    kitchen.amountJoins.has(token.key))
const isPercent = ({ terms: [{ unit }] }: Portion): boolean => unit?.kind === 'unit' && unit.unit === '%'
const isMeasure = (quantity: Portion | undefined): quantity is Portion =>
  quantity?.terms[0].unit !== undefined

/** What stands before an amount and is no name: `at least`, `zest of`, `(optional)`, `To serve:`. */
function isLead(row: Row, q: Portion, from: number, to: number): boolean {
  const { tokens } = row
  if (from === q.from || q.to >= to) return false
  if (isOpening(tokens[from])) return closingOf(row, from, to) === q.from - 1
  if (q.from - from > mostLead) return false
  const lead = tokens.slice(from, q.from)
  const isLabel = kitchen.noteStarts.has(lead[0]!.key) && lead.at(-1)!.text === ':'
  return isLabel || lead.every(t => kitchen.leads.has(t.key) || "'’.".includes(t.text))
}

/** May this be the amount of a line, where it stands? */
export function isAmount(row: Row, quantity: Portion, from: number, to: number): boolean {
  const { tokens } = row
  const { unit } = quantity.terms[0]
  if (isPercent(quantity)) return quantity.to >= to || !kitchen.ofPercent.has(tokens[quantity.to]?.key ?? '')
  if (unit) return unit.kind !== 'not an amount'
  if (quantity.from === from || isLead(row, quantity, from, to)) return true
  const [before, first] = [tokens[quantity.from - 1], tokens[quantity.from]!]
  const isApart = first.wide || before?.kind === 'word' || ':,.…–—-='.includes(before?.text ?? ' ')
  if (first.kind === 'word' || !isApart) return false
  const last = quantity.to + mostStates
  let end = quantity.to
  while (end < to && end <= last && !isOpening(tokens[end]) && tokens[end]!.text !== ',') end++
  // `Eggs: 3 large`
  return end <= last && isState(tokens.slice(quantity.to, end), true)
}

/** One segment of a row, which is taken apart: what, how much, and what else is said. */
export class Segment {
  readonly #taken: Portion[] = []
  readonly #each = new Set<Portion>() // those that are of each that is counted
  readonly #notes: string[] = []
  readonly #tokens: readonly Token[]
  #name: readonly Token[] = []

  constructor(
    readonly row: Row,
    readonly piece: Piece,
    readonly larder: Larder,
  ) {
    this.#tokens = row.tokens
  }

  /** A remark in the row's own words. */
  #note(from: number, to: number): void {
    const tokens = this.#tokens
    let [a, b] = [from, to]
    while (a < b && tokens[a]!.kind === 'mark' && !'(["“«~≈½'.includes(tokens[a]!.text)) a++
    while (b > a && '([,;:.…–—-=/|'.includes(tokens[b - 1]!.text)) b--
    if (isOpening(tokens[a]) && closingOf(this.row, a, b) === b - 1) return this.#note(a + 1, b - 1)
    const text = textOf(this.row, a, b).trim()
    const isFiller = a + 1 === b && (kitchen.fillers.has(tokens[a]!.key) || articles.has(tokens[a]!.key))
    if (text && !isFiller) this.#notes.push(text)
  }

  /** What is in the parenthesis at `open`, if it is amounts of what stands before it and at most a remark on them. */
  #amountsIn(open: number) {
    const { starting } = this.row
    const tokens = this.#tokens
    const close = closingOf(this.row, open, this.piece.to)
    const amounts: Portion[] = []
    let isEach = false
    let at = starting.has(open + 1) ? open + 1 : open + 2
    for (let isMore = true; isMore && at < close; ) {
      const { key } = tokens[at]!
      const amount = starting.get(at)
      const isWord = isJoin(tokens[at]) || kitchen.each.has(key) || kitchen.total.has(key)
      if (isMeasure(amount) && amount.to <= close) at = amounts.push(amount) && amount.to
      else if (isWord && amounts.length > 0) at++
      else isMore = false
      isEach ||= isMore && kitchen.each.has(key)
    }
    const { low = '', key = '' } = tokens[at] ?? {}
    const isRemark =
      at === close || kitchen.remarkStarts.has(low) || kitchen.states.has(key) || measureWords.has(key)
    return amounts.length > 0 && isRemark ? { amounts, isEach, remark: at, close } : undefined
  }

  /** The amounts or the remark of a bracket. The token after it. */
  #bracket(open: number): number {
    const inside = this.#amountsIn(open)
    const after = Math.min(closingOf(this.row, open, this.piece.to) + 1, this.piece.to)
    this.#taken.push(...(inside?.amounts ?? []))
    if (inside?.isEach) for (const amount of inside.amounts) this.#each.add(amount)
    this.#note(inside?.remark ?? open, inside?.close ?? after)
    return after
  }

  /** Amounts that stand beside one another: `500 g (4 cups)`, `1 cup / 240 ml`, `2 cups 474 ml`. The token after. */
  #beside(at: number): number {
    const tokens = this.#tokens
    const { to } = this.piece
    let i = at
    while (i < to) {
      if (isOpening(tokens[i])) {
        if (!this.#amountsIn(i)) break
        i = this.#bracket(i)
        continue
      }
      const sum = this.#sumAt(i)
      if (sum) {
        i = sum
        continue
      }
      const next = isJoin(tokens[i]) ? i + (isJoin(tokens[i + 1]) ? 2 : 1) : i
      const other = this.row.starting.get(next)
      if (!isMeasure(other) || other.to > to) break
      if (next === i && !tokens[i]!.wide && isPercent(other)) break
      const joinsName = ',:'.includes(tokens[i]!.text) && !isJoin(tokens[i + 1])
      if (joinsName && this.#taken.length > 1) break
      this.#taken.push(other)
      i = other.to
    }
    return i
  }

  /** `¼ cup (60 ml) + 1 tsp oil`: what is added to the amount before a bracket. The token after. */
  #sumAt(at: number): number | undefined {
    const [first, ...others] = this.#taken
    const more = this.row.starting.get(at + 1)
    const isSum = this.#tokens[at]!.text === '+' && this.#tokens[at - 1]?.text === ')'
    if (!isSum || !first || first.upTo || !isMeasure(more) || more.share !== undefined) return undefined
    if (this.#tokens[more.to]?.kind !== 'word' && this.#tokens[more.to]?.text !== '.') return undefined
    this.#taken.splice(0, 1 + others.length, { ...first, terms: [...first.terms, ...more.terms] }, ...others)
    return more.to
  }

  /** The name that starts at a token, then remarks and further amounts. */
  #nameFrom(at: number, to: number): void {
    const tokens = this.#tokens
    let i = at
    const skip = (isSkipped: (token: Token) => boolean) => {
      while (i < to && !isOpening(tokens[i]) && isSkipped(tokens[i]!)) i++
    }
    if (isOpening(tokens[i])) i = this.#bracket(i)
    skip(t => t.kind === 'mark')
    const hasAmount = this.#taken.length > 0
    // a container behind the amount of what is in it: `7 g sachet of yeast`
    if (hasAmount && i + 1 < to && kitchenUnits.get(tokens[i]!.key)?.kind === 'unknown') {
      this.#notes.push(tokens[i]!.text)
      i = this.#beside(i + 1)
    }
    skip(t => t.kind === 'mark' || kitchen.fillers.has(t.key))
    // `500 g 100 % whole rye flour`: all of it is of that
    const isAll = hasAmount && tokens[i]?.text === '100' && tokens[i + 1]?.text === '%'
    if (isAll && tokens[i + 2]?.kind === 'word' && !tokens[i + 2]!.key.startsWith('hydrat')) {
      this.#note(i, i + 2)
      i += 2
    }
    i = this.#statesBefore(i, to)
    const end = this.#columnAfter(i, noteStart(tokens, i, to))
    const size = this.#sizeOfOne(i, end)
    this.#name = tokens.slice(i, size ? size.from - 1 : end)
    this.#remarks(size?.to ?? end, to)
  }

  /** `warm (not hot) water`: states with a remark on them, before the name. The token where that starts. */
  #statesBefore(from: number, to: number): number {
    const tokens = this.#tokens
    const open = noteStart(tokens, from, to)
    if (open === from || !isOpening(tokens[open]) || !isState(tokens.slice(from, open))) return from
    const name = closingOf(this.row, open, to) + 1
    if (tokens[name]?.kind !== 'word' || name >= to || this.#amountsIn(open)) return from
    this.#note(from, name)
    return name
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
  #sizeOfOne(from: number, end: number): Portion | undefined {
    const counted = this.#taken.at(-1)?.terms[0].unit
    if (this.#taken.length === 0 || (counted && counted.kind !== 'unknown')) return undefined
    for (let i = from + 1; i < end; i++) {
      const size = ['of', 'de', 'at'].includes(this.#tokens[i]!.key) && this.row.starting.get(i + 1)
      if (!size || !isMeasure(size) || size.share !== undefined) continue
      this.#taken.push(size)
      this.#each.add(size)
      return size
    }
    return undefined
  }

  /** What comes after a name, a remark a piece. */
  #remarks(at: number, to: number): void {
    let from = at
    for (let i = at; i < to; i++) {
      const isBreak = this.#tokens[i]!.text === ',' || this.#tokens[i]!.text === ';'
      if (!isBreak && !isOpening(this.#tokens[i])) continue
      this.#note(from, i)
      from = isBreak ? i + 1 : this.#bracket(i)
      i = from - 1
    }
    this.#note(from, to)
  }

  /** `Topping: 50 g sesame seeds`: does what stands before the amount say where it goes, and what stands behind it what it is? */
  #isLabel({ from, to }: Portion): boolean {
    const tokens = this.#tokens
    if (tokens[from - 1]?.text !== ':') return false
    const isKnown = (a: number, b: number) => {
      const { known, ingredient } = nameOf(tokens.slice(a, b), this.larder)
      return known || (guessCountsAs(ingredient) ?? 'other') !== 'other'
    }
    return isKnown(to, noteStart(tokens, to, this.piece.to)) && !isKnown(this.piece.from, from - 1)
  }

  /** `1 t. de lait`: a tasse, or a teaspoon. */
  #isLetterInFrench({ to, terms: [{ unit }] }: Portion): boolean {
    const isLetter = unit?.kind === 'unit' && unit.unit === 'tsp' && unit.guess === 'letter'
    const after = this.#tokens[to]?.text === '.' ? to + 1 : to
    return isLetter && ['de', 'd', 'du'].includes(this.#tokens[after]?.key ?? '')
  }

  /** What `all but 30 g` keeps back. */
  #allBut(): Portion | undefined {
    const tokens = this.#tokens
    return this.piece.quantities.find(
      ({ from, terms: [{ unit }] }) =>
        unit?.kind === 'unit' &&
        kitchen.but.has(tokens[from - 1]?.key ?? '') &&
        kitchen.all.has(tokens[from - 2]?.key ?? ''),
    )
  }

  read(): Found | undefined {
    const { row, larder } = this
    const { from, to, quantities } = this.piece
    const tokens = this.#tokens
    const amounts = quantities.filter(q => row.depths[q.from] === 0 && isAmount(row, q, from, to))
    const isNamed = (q: Portion) => !isLead(row, q, from, to) && bare(tokens.slice(from, q.from)).length > 0
    const main = amounts.find(q => !isPercent(q) && (!isNamed(q) || q.terms[0].unit)) ?? amounts[0]
    // `un œuf`: an article before what the larder counts is one of it
    const article = !main && articles.has(tokens[from]!.key)
    const isLabelled = main !== undefined && this.#isLabel(main)
    const isBehind = main !== undefined && isNamed(main) && !isLabelled
    if (!main) this.#nameFrom(article ? from + 1 : from, to)
    else if (isBehind) {
      this.#nameFrom(from, main.from)
      this.#taken.push(main)
      this.#remarks(this.#beside(main.to), to)
    } else {
      this.#note(from, main.from)
      this.#taken.push(main)
      this.#nameFrom(this.#beside(main.to), to)
    }
    const name = nameOf(this.#name, larder)
    // `tout le rafraîchi`
    const isOfStage = main?.share !== undefined && this.#name.some(t => kindOfWord(t.key) === 'ferments')
    if (!/\p{L}/u.test(name.ingredient) || (isState(this.#name) && !isOfStage)) return undefined
    const { ingredient, known, remarks } = nearerName(name, this.#notes, larder)
    const typedOf = (q: Portion) => textOf(row, q.from, q.to)
    const inFrench = this.#taken.find(q => this.#isLetterInFrench(q))
    const isCup = inFrench !== undefined && !bySpoons.test(ingredient)
    const asMeant = this.#taken.map(q => (isCup && q === inFrench ? inCups(q) : q))
    const taken = asMeant.map(quantity => ({
      quantity,
      typed: typedOf(quantity),
      ofEach: this.#each.has(quantity),
      isBehind: isBehind && quantity === main,
      isBefore: isOpening(tokens[quantity.to]),
    }))
    const { amount, share, guesses, said, notes } = settle(
      taken,
      ingredient,
      larder,
      quantities.some(isPercent),
      row.bareUnit,
    )
    const letters: LineReason[] = inFrench
      ? [{ code: isCup ? 'cupOrSpoon' : 'spoonOrCup', typed: typedOf(inFrench) }]
      : []
    const label = isLabelled ? textOf(row, from, main.from - 1) : ''
    const labels: LineReason[] = label ? [{ code: 'labelled', label }] : []
    const more = this.#more(main, remarks, typedOf).filter(
      r => r.code !== 'notCounted' || taken.length > 0 || this.#allBut() === undefined,
    )
    const isOne = article && taken.length === 0 && ingredientNamed(larder, ingredient)?.each
    const said0 = [...notes, ...name.notes, ...remarks].map(n => n.trim()).filter(Boolean)
    // `soaked raisins, all`, `levain (all but 30 g)`
    const isAll = (n: string) => kitchen.all.has(n.toLowerCase().replace(/ of (?:it|them)$/, ''))
    const less = taken.length === 0 ? this.#allBut() : undefined
    const isWhole = taken.length === 0 && (less !== undefined || said0.some(isAll))
    const all = isWhole ? said0.filter(n => !isAll(n)) : said0
    return {
      ingredient,
      known,
      amount: isOne ? '1 each' : amount,
      ...(isWhole ? { share: 1 } : share === undefined ? {} : { share }),
      ...(less === undefined ? {} : { less: typedOf(less) }),
      note: [...new Set(all)].join(', '),
      guesses: [...guesses, ...letters, ...(more.some(r => r.code === 'forUse') ? [] : labels), ...more],
      said,
      source: textOf(row, from, to),
    }
  }

  /** A number alone behind `or` or `may need`. */
  #isOtherNumber({ from, to, terms: [{ unit }] }: Portion): boolean {
    const tokens = this.#tokens
    const [before, last, next] = [tokens[from - 2], tokens[from - 1], tokens[to]]
    const isOr = kitchen.ors.has(last?.key ?? '') || kitchen.perhaps.has(before?.key ?? '')
    return !unit && isOr && (next?.kind !== 'word' || kitchen.noteStarts.has(next.key))
  }

  /** What there is to say besides: of amounts that went into the note, and of what a remark says the ingredient is for. */
  #more(main: Portion | undefined, remarks: readonly string[], typedOf: (q: Portion) => string) {
    const { to, quantities } = this.piece
    const counted = new Set(this.#taken.map(q => q.from))
    // numbers of other columns beside a per cent
    const isOfShare = (q: Portion) => main !== undefined && isPercent(main) && !q.terms[0].unit
    // `400 ml, or 350 if it is runny`, `6 cups, may need 7`
    const isOther = (q: Portion) =>
      isMeasure(main) && !isPercent(main) && q.from > main.from && this.#isOtherNumber(q)
    const more: LineReason[] = quantities
      .filter(
        q =>
          (q.terms[0].unit?.kind === 'unit' ? !isPercent(q) : isOfShare(q) || isOther(q)) &&
          !counted.has(q.from),
      )
      .map(q => ({ code: 'notCounted', typed: typedOf(q) }))
    const isOfEach = [main?.to ?? -1, (main?.from ?? 0) - 1].some(at =>
      kitchen.each.has(this.#tokens[at]?.key ?? ''),
    )
    if (main && isOfEach && main.to + 2 < to) more.push({ code: 'eachOfSeveral' })
    if (this.#taken.length === 0) return more
    const purposes = remarks.map(remark => purposeIn(tokensOf(remark).slice(0, longestRemark)))
    const purpose = purposes.find(one => one !== undefined)
    return purpose ? [...more, { code: 'forUse' as const, purpose }] : more
  }
}
