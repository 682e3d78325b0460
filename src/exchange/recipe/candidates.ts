import { nameKey } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { clues } from './clues.js'
import type { Found, Part } from './found.js'
import { headingOf, inlineStage, isDefinite, type StageHeading, type StageOpening } from './headings.js'
import { asWished, namesBread, verbs } from './kitchen-words.js'
import { bare, isState, joined } from './name.js'
import { foundIn } from './pieces.js'
import { inProse } from './prose.js'
import { isForUse } from './purposes.js'
import type { Evidence } from './reasons.js'
import type { Row } from './row.js'

/** What a row may be. */
export type Kind =
  | 'title'
  | 'stage'
  | 'list' // the heading of one
  | 'method' // … of the steps
  | 'remarks' // … of notes
  | 'line'
  | 'amount' // of the name on the row beside it
  | 'step'
  | 'note'
  | 'fact' // of the whole: a yield, a total, a time
  | 'unknown'

/** One reading of a row, with what speaks for it. */
export interface Candidate {
  readonly kind: Kind
  readonly score: number
  readonly reasons: readonly Evidence[]
  readonly stage?: StageHeading // that a heading opens
  readonly parts?: readonly Part[] // what lines of ingredients the row holds
  readonly inSentence?: true
  readonly needs?: 'lines below' | 'a line above' | 'a neighbour' | 'a remark above' // else it is none
}

/** A row between its neighbours. */
export interface Placed {
  readonly row: Row
  readonly isFirst: boolean // of the rows with text
  readonly blankBefore: boolean
  readonly blankAfter: boolean
  readonly below: Row | undefined // the next row with text
}

/** What each piece of evidence weighs; a reading's score is their sum. */
const weights: Readonly<Record<Evidence, number>> = {
  'first row': 4,
  'marked as a heading': 7,
  'opens as a heading': 7,
  short: 2,
  'names a kind of stage': 1,
  'names a bread': 6,
  'names what is in it': -4,
  'below a blank row': 1,
  'above a blank row': 1,
  'named by a line below': 4,
  'name of an ingredient': -3.5,
  'says how much': -2,
  'unlike the rows below': 3,
  'heading of a list': 7,
  'heading of a method': 7,
  'heading of remarks': 7,
  'a time first': 5,
  'a verb first': 5,
  'several sentences': 5,
  'opens like a sentence': 5,
  'long, with a verb': 5,
  long: 1,
  'a fact with its figure': 6,
  'asks for ingredients': 9,
  'names its stage': 8,
  'amounts of ingredients': 4,
  'ingredients the larder knows': 3,
  'an ingredient in a list': 3,
  'as much as is wished': 3,
  'takes an earlier stage': 6.5,
  'ingredients in a sentence': 1,
  'only an amount': 0.2,
  'only what is done to it': 3.5,
  'a name beside lines': 1,
  'a remark among remarks': 0.5,
  'nothing known': 0,
}

const candidate = (
  kind: Kind,
  reasons: readonly Evidence[],
  more: Omit<Candidate, 'kind' | 'score' | 'reasons'> = {},
): Candidate => ({ kind, reasons, score: reasons.reduce((sum, r) => sum + weights[r], 0), ...more })

/** A candidate with one more piece of evidence for it. */
export const withEvidence = (one: Candidate, evidence: Evidence): Candidate => ({
  ...one,
  score: one.score + weights[evidence],
  reasons: [...one.reasons, evidence],
})

const only = (...pairs: readonly (readonly [Evidence, boolean])[]): Evidence[] =>
  pairs.filter(([, holds]) => holds).map(([evidence]) => evidence)

/** Does the amount stand before the name, behind it, or is there none? */
const shapeOf = ({ quantities }: Row): string =>
  quantities.length === 0 ? 'none' : quantities[0]!.from === 0 ? 'first' : 'behind'

/** Makes the candidates of each row of a text, from the first to the last. */
export class Candidates {
  #amounts = false // of a list were met
  readonly #stages = new Set<string>() // names and words of the stages' headings met

  constructor(readonly larder: Larder) {}

  of(placed: Placed): readonly Candidate[] {
    const { row } = placed
    const lines = this.#lines(row)
    const isName = lines.some(({ score }) => score >= weights['ingredients the larder knows'])
    const heads = this.#headings(placed, isName)
    if (heads.some(({ kind }) => kind === 'list' || kind === 'method')) return heads
    const all = [...heads, ...lines, ...this.#tellings(row), candidate('unknown', ['nothing known'])]
    const best = all.reduce((a, b) => (b.score > a.score ? b : a))
    if (best.kind === 'line' && !best.inSentence && best.parts?.some(p => p.found.some(f => f.amount !== '')))
      this.#amounts = true
    return all
  }

  #headings(placed: Placed, isName: boolean): Candidate[] {
    const { row, isFirst, blankBefore } = placed
    const heading = headingOf(row)
    if (heading && heading.opens !== 'stage')
      return [candidate(heading.opens, [heading.sure ? headingEvidence[heading.opens] : 'short'])]
    if (!heading) return isFirst && isShortName(row) && !isName ? [titleOf(row)] : []
    const { stage, sure } = heading
    const { kind } = stage
    const evidence = this.#evidence(placed, heading, isName)
    const candidates: Candidate[] = []
    if (sure || kind || blankBefore) {
      const isOpen = sure && !(isFirst && row.colon)
      candidates.push(candidate('stage', evidence, { stage, ...(isOpen ? {} : { needs: 'lines below' }) }))
    }
    if (isFirst) {
      const keys = row.words.map(t => t.key)
      const title = evidence.filter(one => ofTitles.has(one) && (one !== 'marked as a heading' || row.marked))
      if (kind) title.push('names what is in it')
      if (kind && namesBread(keys) && !title.includes('says how much')) title.push('names a bread')
      candidates.push(candidate('title', ['first row', ...title], { stage }))
    }
    if (!sure && this.#speaksOfStage(row, stage, blankBefore)) {
      const parts = [{ found: [named(stage.name, row)] }]
      candidates.push(candidate('line', ['takes an earlier stage'], { parts, needs: 'a line above' }))
    }
    this.#stages.add(nameKey(stage.name))
    return candidates
  }

  /** What speaks for and against a heading, whatever it opens. */
  #evidence({ row, blankBefore, blankAfter, below }: Placed, { stage, sure }: StageOpening, isName: boolean) {
    const marked = row.marked || row.colon
    const amounts = row.quantities.some(q => q.terms[0].unit || row.depths[q.from] === 0)
    return only(
      ['marked as a heading', marked],
      ['opens as a heading', sure && !marked],
      ['short', !sure],
      ['names a kind of stage', stage.kind !== undefined],
      ['below a blank row', blankBefore],
      ['above a blank row', blankAfter && !amounts],
      ['name of an ingredient', isName && stage.kind === undefined && !sure],
      ['says how much', amounts && !sure],
      ['unlike the rows below', amounts && below !== undefined && shapeOf(row) !== shapeOf(below)],
    )
  }

  /** A row among the lines of a stage that names one read before takes that one; it opens none. */
  #speaksOfStage({ words }: Row, { name }: StageHeading, blankBefore: boolean): boolean {
    return this.#stages.has(nameKey(name)) || (isDefinite(words[0]) && !blankBefore)
  }

  #lines(row: Row): Candidate[] {
    const { larder } = this
    const start = clues.listStart(row)
    if (start !== undefined && row.quantities.some(q => q.terms[0].unit)) {
      const found = foundIn(row, larder, start)
      if (found.length > 0) return [candidate('line', ['asks for ingredients'], { parts: [{ found }] })]
    }
    const inline = inlineStage(row)
    if (inline && !clues.isOrder(row, inline.from)) {
      const found = foundIn(row, larder, inline.from)
      if (found.length > 1)
        return [candidate('line', ['names its stage'], { parts: [{ found, stage: inline.stage }] })]
    }
    const found = foundIn(row, larder, 0)
    const isOne = found.length === 1
    const { words, bulleted, when, quantities } = row
    const [reason] = only(
      ['amounts of ingredients', found.some(f => f.amount || f.share !== undefined || f.guesses.length > 0)],
      ['ingredients the larder knows', found.length > 0 && found.every(f => f.known)],
      ['an ingredient in a list', isOne && bulleted && words.length <= 8 && when === undefined],
      ['as much as is wished', isOne && isWished(row)],
    )
    if (reason) return [candidate('line', [reason], { parts: [{ found }] })]
    if (found.length === 0 && quantities[0]?.from === 0) return [candidate('amount', ['only an amount'])]
    if (!isShortName(row)) return []
    const parts = [{ found: [named(nameIn(row), row)] }]
    return [candidate('line', ['a name beside lines'], { parts, needs: 'a neighbour' })]
  }

  /** What a row tells, where it is no line: a fact, a step, a remark. */
  #tellings(row: Row): Candidate[] {
    const told: Candidate[] = []
    if (clues.isFact(row)) told.push(candidate('fact', ['a fact with its figure']))
    if (isState(row.tokens) || clues.isAside(row)) told.push(candidate('note', ['only what is done to it']))
    const sentence = only(...clues.ofSentence(row))
    const reasons: readonly Evidence[] = sentence.length > 0 ? sentence : row.words.length > 5 ? ['long'] : []
    if (reasons.length > 0) {
      const does = row.words.some(t => verbs.has(t.key)) || row.hasNoAmount || row.numbered
      told.push(candidate(does ? 'step' : 'note', reasons))
      const parts = this.#amounts ? [] : inProse(row, this.larder)
      if (parts.some(p => p.found.length > 0))
        told.push(candidate('line', [...reasons, 'ingredients in a sentence'], { parts, inSentence: true }))
    } else
      told.push(
        candidate(
          'note',
          ['a remark among remarks'],
          row.when === undefined ? { needs: 'a remark above' } : {},
        ),
      )
    return told
  }
}

const headingEvidence = {
  list: 'heading of a list',
  method: 'heading of a method',
  remarks: 'heading of remarks',
} as const

/** What speaks for a title as for a heading. */
const ofTitles = new Set<Evidence>([
  'marked as a heading',
  'short',
  'above a blank row',
  'name of an ingredient',
  'says how much',
])

const nameIn = (row: Row): string => joined(bare(row.tokens.slice(0, 40)))

/** A few words that could name something, a bread or what goes into it. */
const isShortName = (row: Row): boolean =>
  row.words.length > 0 &&
  row.words.length <= 5 &&
  row.quantities.length === 0 &&
  row.when === undefined &&
  nameIn(row) !== ''

const titleOf = (row: Row): Candidate =>
  candidate('title', ['first row'], { stage: { name: nameIn(row), kind: undefined, remark: '' } })

/** A name without an amount, that one on the row beside it may be of. */
export function isNameAlone({ kind, parts }: Candidate): boolean {
  if (kind !== 'line' || parts?.length !== 1 || parts[0]!.found.length !== 1) return false
  const { amount, share } = parts[0]!.found[0]!
  return amount === '' && share === undefined
}

/** An ingredient of which only the name is written. */
const named = (ingredient: string, { text }: Row): Found => ({
  ingredient,
  known: false,
  amount: '',
  note: '',
  guesses: [],
  said: [],
  source: text,
})

/** `salt to taste`, `oil for the tin`. */
const isWished = ({ words }: Row): boolean =>
  words.some(({ key }, i) => i > 0 && (asWished.has(key) || isForUse(words, i)))
