import { figureOf } from '../../dough/amounts/figures.js'
import { gramsPerMeasure } from '../../dough/amounts/measures.js'
import { wholeAmount } from '../../dough/amounts/quantities.js'
import { tokensOf } from '../../dough/amounts/text-tokens.js'
import type { Measure } from '../../dough/amounts/units.js'
import { numberText } from '../../dough/amounts/written-numbers.js'
import { nameKey, newId } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { kindOf } from './headings.js'
import { above, namesEarlierStage, wholeWords } from './kitchen-words.js'
import type { LineDraft, StageDraft } from './stages.js'

/** What speaks for a line taking an earlier stage. */
const weights = {
  'its name': 10,
  'a word of its kind, as no other': 6,
  'its kind, as no other': 3,
  'its weight': 2.5,
  'a share': 2,
  'what stands above': 2,
} as const
const enough = 5
const mostEarlier = 40 // stages that are asked; no formula has so many

const singular = (key: string): string => key.replace(/s$/, '')
const kindWordsOf = (name: string): string[] =>
  tokensOf(name)
    .map(t => singular(t.key))
    .filter(namesEarlierStage)

/** What a line weighs, where its amount is a weight or a measure the larder knows. */
function gramsOfLine({ amount, ingredient }: LineDraft, larder: Larder): number | undefined {
  const quantity = amount === '' ? undefined : wholeAmount(amount)?.quantity
  if (!quantity) return undefined
  const { grams, value, unit } = figureOf(quantity, () => '')
  if (grams !== undefined || unit === '' || unit === '%') return grams
  const known = larder.find(ingredient)
  const one = known && gramsPerMeasure(known, unit as Measure)
  return one === undefined ? undefined : one * value
}

/** What lines weigh together, where all of them can be weighed. */
function gramsOf(lines: readonly LineDraft[], larder: Larder): number | undefined {
  let sum = 0
  for (const line of lines) {
    const grams = gramsOfLine(line, larder)
    if (grams === undefined) return undefined
    sum += grams
  }
  return sum
}

/** What is known of an earlier stage, asked once. */
interface Known {
  readonly words: readonly string[] // of its name, that say what kind it is
  readonly grams: number | undefined // of all its lines
  taken: number | undefined // grams that lines took of it; undefined where one of them cannot be weighed
  isTaken: boolean
}

/** Finds which lines take which earlier stages, and how much of them. */
class Takings {
  readonly #known = new Map<StageDraft, Known>()

  constructor(
    readonly stages: readonly StageDraft[],
    readonly larder: Larder,
  ) {}

  takeAll(): void {
    // the rest of a stage is what all other lines left of it
    for (const rests of [false, true]) {
      this.stages.forEach((stage, at) => {
        const earlier = this.stages.slice(Math.max(0, at - mostEarlier), at)
        for (const line of stage.lines) {
          if ((line.share === 'rest') !== rests) continue
          const source = this.#sourceOf(line, earlier)
          if (source) this.#refer(line, source)
          else seed(line, stage)
        }
      })
      for (const [stage, known] of this.#known)
        this.#known.set(stage, { ...known, grams: gramsOf(stage.lines, this.larder) })
    }
    this.#takeUnnamed()
  }

  #of(stage: StageDraft): Known {
    let known = this.#known.get(stage)
    if (!known) {
      const grams = gramsOf(stage.lines, this.larder)
      known = { words: kindWordsOf(stage.name), grams, taken: 0, isTaken: false }
      this.#known.set(stage, known)
    }
    return known
  }

  /** The earlier stage that a line takes, by what speaks for it. */
  #sourceOf(line: LineDraft, earlier: readonly StageDraft[]): StageDraft | undefined {
    if (earlier.length === 0) return undefined
    const { ingredient, share, note } = line
    const words = kindWordsOf(ingredient)
    const kind = kindOf(tokensOf(ingredient))
    const sharing = earlier.filter(stage => this.#of(stage).words.some(word => words.includes(word)))
    const alike = earlier.filter(stage => kind !== undefined && stage.kind === kind)
    const isAbove = tokensOf(`${ingredient} ${note}`).some(t => above.has(t.key))
    let best: { stage: StageDraft; score: number } | undefined
    for (const stage of earlier) {
      const isAlike = alike.length === 1 && alike[0] === stage
      const evidence: readonly (readonly [keyof typeof weights, boolean])[] = [
        ['its name', nameKey(stage.name) === nameKey(ingredient)],
        ['a word of its kind, as no other', sharing.length === 1 && sharing[0] === stage],
        ['its kind, as no other', isAlike],
        ['its weight', isAlike && isNear(gramsOfLine(line, this.larder), this.#of(stage).grams)],
        ['a share', share !== undefined],
        ['what stands above', isAbove],
      ]
      const score = evidence.reduce((sum, [what, holds]) => sum + (holds ? weights[what] : 0), 0)
      if (score >= enough && (!best || score > best.score)) best = { stage, score }
    }
    return best?.stage
  }

  /** A line that speaks of an earlier stage takes its name; where nothing says how much, it takes all of it. */
  #refer(line: LineDraft, source: StageDraft): void {
    const written = line.ingredient
    const known = this.#of(source)
    line.ingredient = source.name
    const besides = tokensOf(written)
      .filter(t => t.kind === 'word' && !wholeWords.has(t.key) && !known.words.includes(singular(t.key)))
      .map(t => t.text)
    if (nameKey(written) !== nameKey(source.name) && besides.length > 0)
      line.note = [besides.join(' '), line.note].filter(Boolean).join(', ')
    const share = line.share ?? (line.guesses.length === 0 ? 1 : undefined)
    if (line.amount === '' && share !== undefined) this.#takeShare(line, share, source)
    const grams = gramsOfLine(line, this.larder)
    known.isTaken = true
    known.taken = known.taken === undefined || grams === undefined ? undefined : known.taken + grams
  }

  #takeShare(line: LineDraft, share: number | 'rest', source: StageDraft): void {
    const { grams, taken } = this.#of(source)
    const before = share === 'rest' ? taken : 0
    if (grams === undefined || before === undefined) return
    const takes = share === 'rest' ? grams - before : grams * share
    if (takes <= 0) return
    line.amount = `${numberText(Number(takes.toFixed(2)))} g`
    line.guesses.push({ code: 'taken', share, stage: source.name, grams, before })
  }

  /** What is made for the dough goes into it, though no line of the text says so. */
  #takeUnnamed(): void {
    const final = this.stages.at(-1)
    if (!final || (final.kind !== 'dough' && final.kind !== undefined)) return
    const lines: LineDraft[] = []
    for (const stage of this.stages) {
      const { kind, heading, name: ingredient } = stage
      if (stage === final || !heading || (kind !== 'ferments' && kind !== 'soaks')) continue
      if (this.#of(stage).isTaken) continue
      const line: LineDraft = {
        ...{ id: newId(), ...heading, ingredient, amount: '', share: 1, note: '', known: false, said: [] },
        guesses: [{ code: 'takenByNoLine', stage: ingredient, into: final.name }],
      }
      this.#takeShare(line, 1, stage)
      lines.push(line)
    }
    final.lines.unshift(...lines)
  }
}

const isNear = (grams: number | undefined, whole: number | undefined): boolean =>
  grams !== undefined && whole !== undefined && Math.abs(grams - whole) <= whole * 0.01

/** A stage is not made of itself: what bears its name in it is the starter it is built from. */
function seed(line: LineDraft, stage: StageDraft): void {
  const ofItself = nameKey(line.ingredient) === nameKey(stage.name)
  const levain =
    !line.known && kindWordsOf(line.ingredient).some(word => ['levain', 'leaven', 'chef'].includes(word))
  if (stage.kind !== 'ferments' || !(ofItself || levain)) return
  const as = nameKey(stage.name) === 'ripe starter' ? 'Sourdough starter' : 'Ripe starter'
  line.guesses.push({ code: 'starterWithin', written: line.ingredient, stage: stage.name, as })
  line.note = [line.ingredient, line.note].filter(Boolean).join(', ')
  line.ingredient = as
}

/** Names the lines of stages after the earlier stages they take, and says how much where the text does not. */
export const takeStages = (stages: readonly StageDraft[], larder: Larder): void =>
  new Takings(stages, larder).takeAll()
