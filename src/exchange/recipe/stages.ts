import { gramsIn } from '../../dough/amounts/measures.js'
import { type Line, type Meaning, nameKey, newId, type Stage } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { guessCountsAs } from '../../dough/larder/counts-as-guess.js'
import { numberText } from '../../dough/lexicon/digits.js'
import { wholeAmount } from '../../dough/lexicon/quantities.js'
import { tokensOf } from '../../dough/lexicon/text-tokens.js'
import { figureOf } from '../../dough/lexicon/written-figures.js'
import { unnamed } from '../csv/columns.js'
import { kitchen } from '../values/kitchen-words.js'
import { earlierStageWords, kindOf, type StageKind } from '../values/stage-kinds.js'
import { sumOf } from '../values/sums.js'
import type { Found } from './segment.js'
import type { LineReason } from './words.js'

/** A line while the recipe is being read. */
export interface LineDraft extends Found {
  readonly id: string
  readonly row: number // 1-based
  ingredient: string
  amount: string
  note: string
  readonly guesses: LineReason[]
}

/** A stage while the recipe is being read; one without a name is what no heading is over. */
export interface StageDraft {
  name: string
  readonly kind: StageKind | undefined
  readonly heading: { readonly row: number; readonly source: string } | undefined // where it is opened
  readonly lines: LineDraft[]
  isTold?: true // it is one even without lines
}

export const draftOf = (found: Found, row: number, source: string): LineDraft => ({
  ...found,
  id: newId(),
  row,
  source,
  guesses: [...found.guesses],
})

/** The stages that hold something, the final dough last. */
export function inOrder(stages: readonly StageDraft[]): StageDraft[] {
  const used = stages.filter(stage => stage.lines.length > 0 || stage.isTold)
  const final =
    used.findLast(stage => stage.isTold) ??
    used.findLast(stage => stage.kind === 'dough') ??
    used.find(stage => stage.name === '') ??
    used.findLast(stage => stage.kind === undefined) ??
    used.at(-1)
  if (!final) return []
  const ordered = [...used.filter(stage => stage !== final), final]
  ordered.forEach((stage, at) => {
    if (stage.name === '') stage.name = stage === final ? unnamed.stage : `Stage ${at + 1}`
  })
  return ordered
}

const enough = 5 // of what speaks for a line taking an earlier stage
const mostEarlier = 40 // stages that are asked; no formula has so many
const nearly = 0.01 // of its weight

/** What a line weighs, where its amount is a weight or a measure the larder knows. */
function gramsOfLine({ amount, ingredient }: LineDraft, larder: Larder): number | undefined {
  const quantity = wholeAmount(amount)?.quantity
  const figure = quantity && figureOf(quantity, () => '')
  return figure && gramsIn(figure, larder.find(ingredient))
}

/** What is known of an earlier stage, asked once. */
interface Known {
  readonly words: readonly string[] // of its name, that say what kind it is
  whole?: { readonly grams: number | undefined } | undefined // of all its lines, where asked; none where one cannot be weighed
  taken: number | undefined // grams of it by other lines, likewise
  isTaken: boolean
}

/** Names lines after the earlier stages they take, and says how much where the text does not. */
export class Takings {
  readonly #known = new Map<StageDraft, Known>()

  constructor(
    readonly stages: readonly StageDraft[],
    readonly larder: Larder,
  ) {}

  takeAll(): void {
    // the rest of a stage is what all other lines left of it
    for (const isRest of [false, true]) {
      this.stages.forEach((stage, at) => {
        const earlier = this.stages.slice(Math.max(0, at - mostEarlier), at)
        for (const line of stage.lines) {
          if ((line.share === 'rest') !== isRest) continue
          const source = earlier.length > 0 ? this.#sourceOf(line, earlier) : undefined
          if (source) this.#refer(line, source)
          else seed(line, stage)
        }
      })
      for (const known of this.#known.values()) known.whole = undefined
    }
    this.#takeUnnamed()
  }

  #gramsOf(stage: StageDraft): number | undefined {
    const known = this.#of(stage)
    known.whole ??= { grams: sumOf(stage.lines.map(line => gramsOfLine(line, this.larder))) }
    return known.whole.grams
  }

  #of(stage: StageDraft): Known {
    const known = this.#known.get(stage) ?? { words: earlierStageWords(stage.name), taken: 0, isTaken: false }
    this.#known.set(stage, known)
    return known
  }

  /** The earlier stage that a line takes, by what speaks for it. */
  #sourceOf(line: LineDraft, earlier: readonly StageDraft[]): StageDraft | undefined {
    const { ingredient, share, note } = line
    const words = earlierStageWords(ingredient)
    const kind = kindOf(tokensOf(ingredient))
    const sharing = earlier.filter(stage => this.#of(stage).words.some(word => words.includes(word)))
    const alike = earlier.filter(stage => kind !== undefined && stage.kind === kind)
    const isAbove = tokensOf(`${ingredient} ${note}`).some(t => kitchen.above.has(t.key))
    let best: { stage: StageDraft; score: number } | undefined
    for (const stage of earlier) {
      const isAlike = alike.length === 1 && alike[0] === stage
      const evidence: readonly (readonly [score: number, holds: boolean])[] = [
        [10, nameKey(stage.name) === nameKey(ingredient)],
        [6, sharing.length === 1 && sharing[0] === stage], // a word of its kind, as no other
        [3, isAlike], // its kind, as no other
        [2.5, isAlike && isNear(gramsOfLine(line, this.larder), this.#gramsOf(stage))],
        [2, share !== undefined],
        [2, isAbove],
      ]
      const score = evidence.reduce((sum, [score, holds]) => sum + (holds ? score : 0), 0)
      if (score >= enough && (!best || score > best.score)) best = { stage, score }
    }
    return best?.stage
  }

  /** A line that speaks of an earlier stage takes its name; where nothing says how much, it takes all of it. */
  #refer(line: LineDraft, source: StageDraft): void {
    const { ingredient, guesses } = line
    const known = this.#of(source)
    const besides = tokensOf(ingredient)
      .filter(
        t =>
          t.kind === 'word' &&
          !kitchen.whole.has(t.key) &&
          !earlierStageWords(t.text).some(word => known.words.includes(word)),
      )
      .map(t => t.text)
    line.ingredient = source.name
    if (nameKey(ingredient) !== nameKey(source.name) && besides.length > 0)
      line.note = [besides.join(' '), line.note].filter(Boolean).join(', ')
    const share = line.share ?? (guesses.length === 0 ? 1 : undefined)
    if (line.amount === '' && share !== undefined) this.#takeShare(line, share, source)
    known.isTaken = true
    known.taken = sumOf([known.taken, gramsOfLine(line, this.larder)])
  }

  #takeShare(line: LineDraft, share: number | 'rest', source: StageDraft): void {
    const grams = this.#gramsOf(source)
    const before = share === 'rest' ? this.#of(source).taken : 0
    if (grams === undefined || before === undefined) return
    const takes = share === 'rest' ? grams - before : grams * share
    if (takes <= 0) return
    line.amount = `${numberText(Number(takes.toFixed(2)))} g`
    const of = { stage: source.name, grams }
    if (share === 'rest' && before > 0) line.guesses.push({ code: 'restTaken', ...of, before })
    else if (share === 'rest' || share === 1) line.guesses.push({ code: 'allTaken', ...of })
    else line.guesses.push({ code: 'shareTaken', ...of, share })
  }

  /** What is made for the dough goes into it, though no line of the text says so. */
  #takeUnnamed(): void {
    const final = this.stages.at(-1)
    if (!final || (final.kind !== 'dough' && final.kind !== undefined)) return
    const unnamed = this.stages.flatMap(stage => {
      const { kind, heading, name: ingredient } = stage
      const isForDough = kind === 'ferments' || kind === 'soaks'
      if (stage === final || !heading || !isForDough || this.#of(stage).isTaken) return []
      const { row, source } = heading
      const found = { ingredient, known: false, amount: '', note: '', guesses: [], said: [], source }
      const line = draftOf(found, row, source)
      line.guesses.push({ code: 'takenByNoLine', stage: ingredient, into: final.name })
      this.#takeShare(line, 1, stage)
      return [line]
    })
    final.lines.unshift(...unnamed)
  }
}

const isNear = (grams: number | undefined, whole: number | undefined): boolean =>
  grams !== undefined && whole !== undefined && Math.abs(grams - whole) <= whole * nearly

/** A stage is not made of itself: what bears its name in it is the starter it is built from. */
function seed(line: LineDraft, { name, kind }: StageDraft): void {
  const { ingredient: written, known, note } = line
  const isItself = nameKey(written) === nameKey(name)
  const isLevain = !known && earlierStageWords(written).some(word => /^(?:levain|leaven|chef)$/.test(word))
  if (kind !== 'ferments' || !(isItself || isLevain)) return
  const as = nameKey(name) === 'ripe starter' ? 'Sourdough starter' : 'Ripe starter'
  line.guesses.push({ code: 'starterWithin', written, stage: name, as })
  line.note = [written, note].filter(Boolean).join(', ')
  line.ingredient = as
}

const anyYeast = /^(levure|yeast|dry yeast|levure s[eè]che)$/i
const mixture = /(?<!\p{L})(?:and|et|or|ou|almond|amandes?|hazelnut|noisettes?|coconut|coco|nut)(?!\p{L})/iu

/** Asks for what is missing in lines, and gives what those unknown to the larder count as, by their names. */
export function asked(stages: readonly StageDraft[], larder: Larder): Meaning[] {
  const meanings = new Map<string, Meaning>()
  const names = new Set(stages.map(stage => nameKey(stage.name)))
  for (const { ingredient, amount, known, guesses } of stages.flatMap(stage => stage.lines)) {
    if (amount === '' && guesses.length === 0) guesses.push({ code: 'noAmount', ingredient })
    if (anyYeast.test(ingredient) && !known) guesses.push({ code: 'whichYeast' })
    const key = nameKey(ingredient)
    const isKnown = names.has(key) || larder.find(ingredient) !== undefined || mixture.test(ingredient)
    const kind = isKnown ? undefined : guessCountsAs(ingredient)
    if (!kind || kind === 'other') continue
    guesses.push({ code: 'countsAs', ingredient, kind })
    const countsAs = kind === 'starter' ? { kind, hydration: 1 } : { kind }
    if (!meanings.has(key)) meanings.set(key, { ingredient, countsAs })
  }
  return [...meanings.values()]
}

/** A draft as the formula's stage. */
export const stageOf = ({ name, kind, lines }: StageDraft, isFinal: boolean): Stage => ({
  id: newId(),
  name,
  ...(kind === 'ferments' && !isFinal ? { ferments: true } : {}),
  lines: lines.map(({ id, ingredient, amount, note }): Line => ({ id, ingredient, amount, note })),
})
