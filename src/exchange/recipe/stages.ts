import { gramsIn } from '../../dough/amounts/measures.js'
import { type Line, type Meaning, nameKey, newId, type Stage } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { guessCountsAs, isGrain } from '../../dough/larder/counts-as-guess.js'
import { numberText } from '../../dough/lexicon/digits.js'
import { wholeAmount } from '../../dough/lexicon/quantities.js'
import { figureOf } from '../../dough/lexicon/written-figures.js'
import { unnamed } from '../csv/columns.js'
import { earlierStageWords, type StageKind } from '../values/stage-kinds.js'
import { sumOf } from '../values/sums.js'
import type { Found } from './segment.js'
import { isForDough, mostEarlier, type Source, Sources, type Taker } from './sources.js'
import type { LineReason } from './words.js'

/** A line while the recipe is being read. */
export interface LineDraft extends Found {
  readonly id: string
  readonly row: number // 1-based
  ingredient: string
  amount: string
  note: string
  readonly guesses: LineReason[]
  readonly said: LineReason[]
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
  said: [...found.said],
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

/** What a line weighs, where its amount is a weight or a measure the larder knows. */
function gramsOfLine({ amount, ingredient }: LineDraft, larder: Larder): number | undefined {
  const quantity = wholeAmount(amount)
  const figure = quantity && figureOf(quantity, () => '')
  return figure && gramsIn(figure, larder.find(ingredient))
}

/** A stage as later ones may take it. */
class Made implements Source {
  readonly name: string
  readonly kind: StageKind | undefined
  isTaken = false
  taken: number | undefined = 0 // grams of it by other lines
  #whole: { readonly grams: number | undefined } | undefined

  constructor(
    readonly stage: StageDraft,
    readonly gramsOf: (line: LineDraft) => number | undefined,
  ) {
    this.name = stage.name
    this.kind = stage.kind
  }

  get grams(): number | undefined {
    this.#whole ??= { grams: sumOf(this.stage.lines.map(this.gramsOf)) }
    return this.#whole.grams
  }

  /** Its lines were given other amounts. */
  changed(): void {
    this.#whole = undefined
  }
}

/** Names lines after the earlier stages they take, and says how much where the text does not. */
export class Takings {
  readonly #made: readonly Made[]
  readonly #sources = new Sources<Made>()
  readonly #gramsOf: (line: LineDraft) => number | undefined

  constructor(stages: readonly StageDraft[], larder: Larder) {
    this.#gramsOf = line => gramsOfLine(line, larder)
    this.#made = stages.map(stage => new Made(stage, this.#gramsOf))
  }

  takeAll(): void {
    // the rest of a stage is what all other lines left of it
    for (const isRest of [false, true]) {
      this.#made.forEach(({ stage }, at) => {
        const earlier = this.#made.slice(Math.max(0, at - mostEarlier), at)
        for (const line of stage.lines) {
          if ((line.share === 'rest') !== isRest) continue
          const source = at > 0 ? this.#sources.of(this.#taker(line), earlier) : undefined
          if (source) this.#refer(line, source)
          else seed(line, stage)
        }
      })
      for (const made of this.#made) made.changed()
    }
    this.#takeUnnamed()
  }

  #taker(line: LineDraft): Taker {
    const { ingredient, note, share, known } = line
    const gramsOf = this.#gramsOf
    const of = { ingredient, note, known, ...(share === undefined ? {} : { share }) }
    return {
      ...of,
      get grams() {
        return gramsOf(line)
      },
    }
  }

  /** A line that speaks of an earlier stage takes its name; where nothing says how much, it takes all of it. */
  #refer(line: LineDraft, source: Made): void {
    const besides = this.#sources.besides(line.ingredient, source)
    line.ingredient = source.name
    line.note = [besides, line.note].filter(Boolean).join(', ')
    const share = line.share ?? (line.guesses.length === 0 ? 1 : undefined)
    if (line.amount === '' && share !== undefined) this.#takeShare(line, share, source)
    source.isTaken = true
    source.taken = sumOf([source.taken, this.#gramsOf(line)])
  }

  #takeShare(line: LineDraft, share: number | 'rest', source: Made): void {
    const { grams } = source
    const before = share === 'rest' ? source.taken : 0
    if (grams === undefined || before === undefined) return
    const takes = share === 'rest' ? grams - before : grams * share
    if (takes <= 0) return
    line.amount = `${numberText(Number(takes.toFixed(2)))} g`
    const of = { stage: source.name, grams }
    if (share === 'rest' && before > 0) line.guesses.push({ code: 'restTaken', ...of, before })
    else if (share === 'rest' || share === 1)
      (line.share === 1 && isWeighed(source.stage) ? line.said : line.guesses).push({
        code: 'allTaken',
        ...of,
      })
    else line.guesses.push({ code: 'shareTaken', ...of, share })
  }

  /** What is made for the dough goes into it, though no line of the text says so. */
  #takeUnnamed(): void {
    const final = this.#made.at(-1)?.stage
    if (!final || (final.kind !== 'dough' && final.kind !== undefined)) return
    const names = new Set(this.#made.map(({ name }) => nameKey(name)))
    const unnamed = this.#made.slice(-mostEarlier, -1).flatMap(made => {
      const { heading, name: stage } = made.stage
      if (!heading || !isForDough(made) || made.isTaken) return []
      const others = final.lines.filter(line => !names.has(nameKey(line.ingredient)))
      const like = this.#sources.perhaps(
        others.map(line => ({ ...this.#taker(line), line, grams: this.#gramsOf(line) })),
        made,
      )?.line
      if (like) {
        like.guesses.push({ code: 'perhapsTaken', like: like.ingredient, stage })
        this.#refer(like, made)
        return []
      }
      const { row, source } = heading
      const found = { ingredient: stage, known: false, amount: '', note: '', guesses: [], said: [], source }
      const line = draftOf(found, row, source)
      line.guesses.push({ code: 'takenByNoLine', stage, into: final.name })
      this.#takeShare(line, 1, made)
      return [line]
    })
    final.lines.unshift(...unnamed)
  }
}

/** Is all of it weighed, and nothing measured? */
const isWeighed = ({ lines }: StageDraft): boolean => lines.every(({ amount }) => /\d k?g$/.test(amount))

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
  for (const { ingredient, amount, known, guesses, said } of stages.flatMap(stage => stage.lines)) {
    if (amount === '' && guesses.length === 0) guesses.push({ code: 'noAmount', ingredient })
    if (anyYeast.test(ingredient) && !known) guesses.push({ code: 'whichYeast' })
    const key = nameKey(ingredient)
    const isKnown = names.has(key) || larder.find(ingredient) !== undefined || mixture.test(ingredient)
    const kind = isKnown ? undefined : guessCountsAs(ingredient)
    if (!kind || kind === 'other') continue
    // that flour counts as flour is in no doubt
    const isPlain = kind !== 'starter' && !isGrain(ingredient)
    ;(isPlain ? said : guesses).push({ code: 'countsAs', ingredient, kind })
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
