import { nameKey } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { guessCountsAs, isGrain } from '../../dough/larder/counts-as-guess.js'
import type { Portion } from '../../dough/lexicon/portions.js'
import type { Kind } from '../steps/recipe-method.js'
import { kitchen } from '../values/kitchen-words.js'
import { kindOfWord, namesBread } from '../values/stage-kinds.js'
import {
  endsWithNumber,
  footnotesOf,
  isAside,
  isCorrection,
  isFact,
  isInWords,
  isList,
  isOrder,
  isShortName,
  isWished,
  nameIn,
  ofSentence,
  opensWith,
} from './clues.js'
import { type Heading, headingOf, inlineStage, type StageHeading } from './headings.js'
import { ofFinish, ofWhole } from './named-stages.js'
import { foundIn, inProse } from './pieces.js'
import type { Row } from './recipe-row.js'
import type { Found, Part } from './segment.js'

/** What speaks for a row being of a kind, and what it weighs; a candidate's score is their sum. */
const weights = {
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
  'unlike the row below': 3,
  'heading of a part': 7,
  'a time first': 5,
  'a verb first': 5,
  'several sentences': 5,
  'opens like a sentence': 5,
  'somebody tells': 5,
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
  'another choice': 5,
  'a footnote': 9,
  'a step that is counted': 9,
  'a name beside lines': 1,
  'a remark among remarks': 0.5,
} as const
export type Evidence = keyof typeof weights

/** One reading of a row, with what speaks for it. */
export interface Candidate {
  readonly kind: Kind
  readonly score: number
  readonly reasons: readonly Evidence[]
  readonly stage?: StageHeading // that a heading opens
  readonly parts?: readonly Part[] // the ingredients of a line
  readonly inSentence?: true
  readonly inMethod?: true // it is a line in the method too: `Egg wash: 1 egg, 1 tbsp milk`
  readonly needs?: 'lines below' | 'a line above' | 'a neighbour' | 'a remark above' // else it is none
}

export const candidate = (
  kind: Kind,
  reasons: readonly Evidence[],
  more: Omit<Candidate, 'kind' | 'score' | 'reasons'> = {},
): Candidate => ({ ...more, kind, reasons, score: reasons.reduce((sum, r) => sum + weights[r], 0) })

const ofDough = new Set<string>(['g', 'kg', 'tbsp', 'tsp']) // of which no tool is
const mostTools = 30 // rows of a list of them that are looked at
const rowsBelow = 6 // a title, where a list is to begin
const mostAlike = 5 // ingredients of one amount
const leastToTell = 5 // the score of what tells something so plainly that it is no line

const only = (...pairs: readonly (readonly [Evidence, boolean])[]): Evidence[] =>
  pairs.filter(([, holds]) => holds).map(([evidence]) => evidence)

const bestOf = (all: readonly Candidate[]): Candidate => all.reduce((a, b) => (b.score > a.score ? b : a))

/** Does the amount stand before the name, behind it, or is there none? */
const shapeOf = ({ quantities: [first] }: Row): string =>
  first ? (first.from === 0 ? 'first' : 'behind') : 'none'

/** Is it in the larder, or flour, water or salt by its name? A starter may be a stage, a grain a bread. */
function isIngredient({ known, ingredient }: Found): boolean {
  if (known) return true
  const words = ingredient.split(' ')
  return [words[0]!, words.at(-1)!].some(word => {
    const kind = isGrain(word) || word.includes('-') ? undefined : guessCountsAs(word)
    return kind !== undefined && kind !== 'starter'
  })
}

/** What speaks for a heading and for no title. */
const ofHeadings = new Set<Evidence>(['opens as a heading', 'names a kind of stage', 'below a blank row'])

/** An ingredient of which only the name is written. */
const named = (ingredient: string, { text: source }: Row): readonly Part[] => [
  { found: [{ ingredient, known: false, amount: '', note: '', guesses: [], said: [], source }] },
]

/** A name without an amount, that one on the row beside it may be of. */
export function nameAlone({ kind, parts }: Candidate): Found | undefined {
  const [part, ...others] = parts ?? []
  const [found, ...more] = part?.found ?? []
  const isOne = kind === 'line' && found && others.length + more.length === 0
  return isOne && found.amount === '' && found.share === undefined ? found : undefined
}

/** Makes the candidates of each row of a text, from the first to the last. */
export class Candidates {
  #isList = false // amounts of ingredients were met, outside sentences
  #soaked: number | undefined // the last short row that speaks of something soaked
  readonly #footnotes: ReadonlySet<Row>
  readonly #stages = new Set<string>() // that headings name
  readonly #told = new Map<string, readonly string[]>() // by an amount, what sentences say it is of

  /** `rows` with text; `apart` says which of them have blank rows above. */
  constructor(
    readonly larder: Larder,
    readonly rows: readonly Row[],
    readonly apart: readonly boolean[],
    readonly steps: ReadonlySet<Row> = new Set(), // that are counted as such
  ) {
    this.#footnotes = footnotesOf(rows)
  }

  all(): (readonly Candidate[])[] {
    return this.rows.map((row, at) => this.#of(row, at))
  }

  #of(row: Row, at: number): readonly Candidate[] {
    const tellings = this.#tellings(row)
    const isTold = tellings.some(({ score }) => score >= leastToTell)
    const lines = this.#lines(row, at, isTold)
    const isName = lines.some(({ needs, kind }) => kind === 'line' && !needs)
    // `Fig and walnut, 2 x 700 g`: of so many loaves
    const isKnown = lines.some(({ parts = [] }) => parts.some(p => p.found.some(f => f.known)))
    const isMany = ({ times, terms: [{ unit }] }: Portion) =>
      times !== undefined || unit?.kind === 'each' || (!unit && row.words.length > 3)
    const isOver =
      at === 0 &&
      !isTold &&
      !isKnown &&
      this.rows.slice(1, rowsBelow).some(r => isList(r) || endsWithNumber(r))
    // `Three-stage rye, 80 %`: of so much rye
    const isPart = isOver && (this.#isOfShare(row) || isInWords(row))
    const isOfLoaves = isPart || (isOver && row.quantities.some(q => q.from > 0 && isMany(q)))
    const heads = this.#headings(row, at, isName && !isOfLoaves, isOfLoaves)
    if (heads.some(({ reasons }) => reasons.includes('heading of a part'))) return heads
    const plain = [...heads, ...lines, ...tellings, candidate('unknown', [])]
    const all = [...plain, ...this.#prose(row, at, plain)]
    const best = bestOf(all)
    const isWeight = plain.some(c => c.kind === 'amount') && row.quantities.some(q => q.terms[0].unit)
    this.#isList ||=
      isWeight ||
      (!best.inSentence && best.kind === 'line' && best.parts!.some(p => p.found.some(f => f.amount)))
    return all
  }

  /** Does the first row name a bread with one per cent behind it, over what is no list of per cents? */
  #isOfShare({ quantities: [share, ...others], tokens, words }: Row): boolean {
    const isShare = ({ terms: [{ unit }] }: Portion) => unit?.kind === 'unit' && unit.unit === '%'
    if (!share || others.length > 0 || !isShare(share)) return false
    const isFirst = share.from === 0 // `75 % rye`
    if (isFirst ? words.length > 3 : share.to < tokens.length || words.length < 2) return false
    const name = nameIn({ tokens: isFirst ? tokens.slice(share.to) : tokens.slice(0, share.from) })
    const kind = isFirst && isGrain(name) ? undefined : guessCountsAs(name)
    return kind === undefined && (this.apart[1] === true || !this.rows[1]?.quantities.some(isShare))
  }

  #headings(row: Row, at: number, isName: boolean, isOfLoaves: boolean): Candidate[] {
    const isFirst = at === 0
    const heading = headingOf(row)
    if (heading?.isOfNeeds && this.#isOverTools(at))
      return [candidate('remarks', ['heading of a part'], { stage: heading.stage })]
    if (heading && heading.opens !== 'stage') {
      const opens = heading.opens === 'time' ? this.#opensAt(at) : heading.opens
      return [candidate(opens, [heading.sure ? 'heading of a part' : 'short'], { stage: heading.stage })]
    }
    if (!heading) {
      const stage = { name: nameIn(row), kind: undefined, remark: '' }
      const evidence = only(['first row', isOfLoaves || (isShortName(row) && !isName)], ['short', isOfLoaves])
      return isFirst && evidence.length > 0 ? [candidate('title', evidence, { stage })] : []
    }
    const { stage, sure, led } = heading
    const { kind, name } = stage
    const evidence = this.#evidence(row, at, heading, isName)
    const candidates: Candidate[] = []
    const isOver = at === 1 && isShortName(row) && isList(this.rows[2]) // below the title
    if (sure || kind || led || this.apart[at] || isOver) {
      const isOpen = sure && !(isFirst && row.colon)
      candidates.push(candidate('stage', evidence, { stage, ...(isOpen ? {} : { needs: 'lines below' }) }))
    }
    if (isFirst) {
      const title = evidence.filter(
        one =>
          !ofHeadings.has(one) &&
          !(isOfLoaves && one === 'says how much') &&
          (one !== 'marked as a heading' || row.marked),
      )
      if (kind) title.push('names what is in it')
      if (kind && namesBread(row.words.map(t => t.key)) && !title.includes('says how much'))
        title.push('names a bread')
      candidates.push(candidate('title', ['first row', ...title], { stage }))
    }
    this.#stages.add(nameKey(name))
    return candidates
  }

  /** Does a list of ingredients have its own heading below, and what stands before it hardly any amounts? */
  #isOverTools(at: number): boolean {
    const below = this.rows.slice(at + 1, at + 1 + mostTools)
    const list = below.findIndex(row => {
      const heading = row.words.length <= 4 ? headingOf(row) : undefined
      return heading?.opens === 'list' && heading.sure && !heading.isOfNeeds
    })
    const isWeighed = ({ quantities }: Row) =>
      quantities.some(({ terms: [{ unit }] }) => unit?.kind === 'unit' && ofDough.has(unit.unit))
    return list > 0 && below.slice(0, list).filter(isWeighed).length * 2 <= list
  }

  /** What the heading of a time opens: lines, the heading of lines, or a method. */
  #opensAt(at: number): 'stage' | 'list' | 'method' {
    if (this.#isOverLines(at)) return 'stage'
    const [next, line] = this.rows.slice(at + 1, at + 3)
    const isOverHeading = next && isShortName(next) && isList(line) && headingOf(next)?.opens === 'stage'
    return isOverHeading ? 'list' : 'method'
  }

  /** Do lines follow a row, perhaps behind one that takes what stands above it? */
  #isOverLines(at: number): boolean {
    const [below, next] = this.rows.slice(at + 1, at + 3)
    const takes =
      below !== undefined &&
      below.words.length <= 6 &&
      (below.quantities[0]?.share !== undefined || below.words.some(t => kitchen.above.has(t.key)))
    return isList(below) || (takes && isList(next))
  }

  /** What speaks for and against a heading, whatever it opens. */
  #evidence(row: Row, at: number, { stage, sure }: Heading, isName: boolean) {
    const below = this.rows[at + 1]
    const isMarked = row.marked || row.colon
    const amounts = row.quantities.some(q => q.terms[0].unit || row.depths[q.from] === 0)
    return only(
      ['marked as a heading', isMarked],
      ['opens as a heading', sure && !isMarked],
      ['short', !sure],
      ['names a kind of stage', stage.kind !== undefined],
      ['below a blank row', this.apart[at]!],
      ['above a blank row', this.apart[at + 1] === true && !amounts],
      ['name of an ingredient', isName && stage.kind === undefined && !sure],
      ['says how much', amounts && !sure],
      ['unlike the row below', amounts && below !== undefined && shapeOf(row) !== shapeOf(below)],
    )
  }

  /** A row that plainly tells something is a line only where it opens as a list. */
  #lines(row: Row, at: number, isTold: boolean): Candidate[] {
    const { larder } = this
    const { words, bulleted, when, quantities } = row
    const colon = row.tokens.findIndex(t => t.text === ':')
    const isTotal =
      opensWith(row, kitchen.factStarts) !== undefined && quantities.filter(q => q.from > colon).length > 1
    // `You need …`, `Total flour: 80 % …, 20 % …`
    const start = colon > 0 && isTotal ? colon + 1 : opensWith(row, kitchen.listStarts)
    if (start !== undefined && quantities.some(q => q.terms[0].unit)) {
      const found = foundIn(row, larder, start)
      // `Total: 1,859 g → 2 × 930 g` names none
      const isNamed = !isTotal || found.every(f => !/\d/.test(f.ingredient))
      if (found.length > 0 && isNamed)
        return [candidate('line', ['asks for ingredients'], { parts: [{ found }] })]
    }
    const inline = inlineStage(row)
    if (inline && !isOrder(row, inline.from)) {
      const found = foundIn(row, larder, inline.from, inline.stage.kind === 'soaks')
      const parts = [{ found, stage: inline.stage }]
      const inMethod = inline.stage.kind === 'other' && !this.#isStage(inline.stage.name)
      if (found.length > (inline.stage.kind === 'other' ? 0 : 1))
        return [candidate('line', ['names its stage'], { parts, ...(inMethod && { inMethod }) })]
    }
    const whole = ofWhole(row, name => this.#isStage(name))
    if (whole) return [candidate('line', ['takes an earlier stage'], { parts: [{ found: [whole] }] })]
    const finish = colon > 0 && quantities.length === 0 ? ofFinish(row, colon, larder) : undefined
    if (finish) return [candidate('line', ['names its stage'], { parts: [finish] })]
    if (isTold) return []
    const found = foundIn(row, larder)
    const isOne = found.length === 1
    const [reason] = only(
      ['amounts of ingredients', found.some(f => f.amount || f.share !== undefined || f.guesses.length > 0)],
      ['ingredients the larder knows', found.length > 0 && found.every(isIngredient)],
      [
        'an ingredient in a list',
        isOne && bulleted && words.length <= 8 && when === undefined && !row.hasNoAmount,
      ],
      ['as much as is wished', isOne && isWished(row)],
    )
    if (reason) return [candidate('line', [reason], { parts: [{ found }] })]
    if (found.length === 0 && quantities[0]?.from === 0) {
      const isShare = quantities[0].terms[0].unit?.kind === 'unit' && quantities[0].terms[0].unit.unit === '%'
      const also = isShare ? [candidate('note', ['only an amount'])] : []
      return [candidate('amount', ['only an amount']), ...also]
    }
    if (!isShortName(row)) return []
    // a row among lines that names a stage read before takes that one
    const name = nameIn(row)
    const isDefinite = kitchen.definite.has(words[0]!.key) && !this.apart[at]
    // `Levain, soaker` names two
    const isSeveral = found.length > 1 && found.every(f => this.#isStage(f.ingredient))
    const parts = isSeveral ? [{ found }] : named(name, row)
    if (words.some(t => kitchen.above.has(t.key)))
      return [candidate('line', ['takes an earlier stage'], { parts })]
    return this.#isStage(name) || isDefinite || isSeveral
      ? [candidate('line', ['takes an earlier stage'], { parts, needs: 'a line above' })]
      : [
          candidate('line', ['a name beside lines'], {
            parts: isOne ? [{ found }] : parts,
            needs: 'a neighbour',
          }),
        ]
  }

  #isStage(name: string): boolean {
    return this.#stages.has(nameKey(name))
  }

  /** The ingredients of sentences, before any list of them. */
  #prose(row: Row, at: number, plain: readonly Candidate[]): Candidate[] {
    const { kind, reasons } = bestOf(plain)
    if (this.#isList || (kind !== 'step' && kind !== 'note')) return []
    const told = inProse(row, this.larder).map(part => ({
      ...part,
      found: part.found.filter(f => this.#isNew(f)),
    }))
    const soaker = kitchen.soaks.has(row.words[0]?.key ?? '') ? this.#soakerBelow(at) : undefined
    const parts = soaker ? told.map(part => (part.stage ? part : { ...part, stage: soaker })) : told
    if (parts.every(({ found }) => found.length === 0)) return []
    return [candidate('line', [...reasons, 'ingredients in a sentence'], { parts, inSentence: true })]
  }

  /** Is it not what was told before, `the half ounce of salt`? */
  #isNew({ ingredient, amount, again }: Found): boolean {
    const names = this.#told.get(amount) ?? []
    if (again && names.some(name => ` ${nameKey(ingredient)} `.includes(` ${name} `))) return false
    this.#told.set(amount, [...names.slice(-mostAlike), nameKey(ingredient)])
    return true
  }

  /** What is soaked before the lists is a soaker where a line of them takes it: `soaked raisins`. */
  #soakerBelow(at: number): StageHeading | undefined {
    this.#soaked ??= this.rows.findLastIndex(
      row =>
        row.words.length <= 6 &&
        row.words.some(t => kindOfWord(t.key) === 'soaks' || kitchen.soaked.has(t.key)),
    )
    const name = this.rows[at]!.words.some(t => kitchen.soaksInFrench.has(t.key)) ? 'Trempage' : 'Soaker'
    return this.#soaked > at ? { name, kind: 'soaks', remark: '' } : undefined
  }

  /** What a row tells, where it is no line: a fact, a step, a remark. */
  #tellings(row: Row): Candidate[] {
    const told: Candidate[] = []
    if (this.#footnotes.has(row) || isCorrection(row)) told.push(candidate('note', ['a footnote']))
    if (isFact(row)) told.push(candidate('fact', ['a fact with its figure']))
    if (row.words.length > 1 && kitchen.ors.has(row.tokens[0]!.key))
      told.push(candidate('note', ['another choice']))
    if (isAside(row)) told.push(candidate('note', ['only what is done to it']))
    const counted: Evidence[] = this.steps.has(row) ? ['a step that is counted'] : []
    if (counted.length > 0) return [...told, candidate('step', counted)]
    const sentence = only(...ofSentence(row), ['long', row.words.length > 5])
    if (sentence.length === 0) {
      const needs = row.when === undefined ? { needs: 'a remark above' as const } : {}
      return [...told, candidate('note', ['a remark among remarks'], needs)]
    }
    const does = row.hasNoAmount || row.numbered || row.words.some(t => kitchen.verbs.has(t.key))
    return [...told, candidate(does ? 'step' : 'note', sentence)]
  }
}
