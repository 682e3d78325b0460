import { nameKey } from '../../dough/document/formula.js'
import { type Token, tokensOf } from '../../dough/lexicon/text-tokens.js'
import { kitchen } from './kitchen-words.js'
import { isFinalDough, onceEach } from './labels.js'
import { earlierStageWords, kindOf, type StageKind } from './stage-kinds.js'

/** What a line says of the stage it may take. */
export interface Taker {
  readonly ingredient: string
  readonly note: string
  readonly share?: number | 'rest'
  readonly known?: boolean // to the larder
  readonly grams: number | undefined
}

/** A stage that later ones may take. */
export interface Source<L extends Taker> {
  readonly name: string
  readonly kind: StageKind | undefined
  readonly lines: readonly L[]
  readonly grams: number | undefined // of all its lines; undefined where one cannot be weighed
}

const enough = 5 // of what speaks for a line taking an earlier stage
const mostEarlier = 40 // stages that are asked; no formula has so many
const nearly = 0.01 // of its weight

const isNear = (grams: number | undefined, whole: number | undefined): boolean =>
  grams !== undefined && whole !== undefined && Math.abs(grams - whole) <= whole * nearly

const isAbove = (said: string): boolean => tokensOf(said).some(t => kitchen.above.has(t.key))

/** Is it made to go into the dough? */
export const isForDough = ({ kind }: Pick<Source<Taker>, 'kind'>): boolean =>
  kind === 'ferments' || kind === 'soaks'

/** The final dough of stages in any order: by its name, without a name, or as the one that takes others and is taken by none. */
export function finalAmong<S extends Omit<Source<Taker>, 'grams'>>(stages: readonly S[]): S | undefined {
  const names = new Set(stages.map(({ name }) => nameKey(name)))
  const taken = new Set(stages.flatMap(({ lines }) => lines.map(line => nameKey(line.ingredient))))
  const takers = stages.filter(
    ({ name, kind, lines }) =>
      kind !== 'other' &&
      !taken.has(nameKey(name)) &&
      lines.some(line => names.has(nameKey(line.ingredient))),
  )
  return (
    stages.findLast(({ name }) => isFinalDough(name)) ??
    stages.findLast(({ kind }) => kind === 'dough') ??
    stages.findLast(({ name }) => name === '') ??
    (takers.length === 1 ? takers[0] : stages.findLast(({ kind }) => kind === undefined)) ??
    stages.at(-1)
  )
}

/** Finds which lines take a stage made before theirs, by what speaks for it. The last stage is the final dough. */
export class EarlierStages<L extends Taker, S extends Source<L>> {
  readonly #grams = new Map<S, number | undefined>() // as the lines stood when they had been looked at
  /** What a name says of stages. */
  readonly #wordsOf = onceEach(name => ({ words: earlierStageWords(name), kind: kindOf(tokensOf(name)) }))

  /** `said`: what a line says, where that is not all it holds. */
  constructor(
    readonly stages: readonly S[],
    readonly said: (line: L) => Taker = line => line,
  ) {}

  /** Tells of every line, in the order of the stages, which earlier one it takes; of many the last are asked. */
  each(tell: (line: L, source: S | undefined, stage: S) => void): void {
    this.#grams.clear()
    for (const [at, stage] of this.stages.entries()) {
      const earlier = this.stages.slice(Math.max(0, at - mostEarlier), at)
      for (const line of stage.lines) tell(line, this.#of(this.said(line), earlier), stage)
    }
  }

  /** The stages that `isLeft`, each with the one line of the final dough that may be meant by another name: its kind, and no more of it than there is. */
  *left(isLeft: (stage: S) => boolean): Generator<{ readonly stage: S; readonly like: L | undefined }> {
    const names = new Set(this.stages.map(({ name }) => nameKey(name)))
    for (const stage of this.stages.slice(-mostEarlier, -1).filter(isLeft)) {
      const alike = this.stages
        .at(-1)!
        .lines.filter(
          ({ ingredient }) =>
            !names.has(nameKey(ingredient)) && this.#wordsOf(ingredient).kind === stage.kind,
        )
      const isMore = stage.grams !== undefined && (alike[0]?.grams ?? 0) > stage.grams * (1 + nearly)
      yield { stage, like: alike.length === 1 && !isMore ? alike[0] : undefined }
    }
  }

  /** What a line's own words say besides the name of the stage it takes: `ripe`, `from last night`. */
  besides(ingredient: string, { name }: S): string {
    if (nameKey(ingredient) === nameKey(name)) return ''
    const { words } = this.#wordsOf(name)
    const isOfIt = (t: Token) =>
      kitchen.whole.has(t.key) || earlierStageWords(t.text).some(word => words.includes(word))
    return tokensOf(ingredient)
      .filter(t => t.kind === 'word' && !isOfIt(t))
      .map(t => t.text)
      .join(' ')
  }

  #gramsOf(stage: S): number | undefined {
    if (!this.#grams.has(stage)) this.#grams.set(stage, stage.grams)
    return this.#grams.get(stage)
  }

  #of(line: Taker, earlier: readonly S[]): S | undefined {
    if (earlier.length === 0) return undefined
    const { ingredient, note, share, known } = line
    // `scalded rye` takes the scald
    const isNoted = known === false || share === 1 // `soaked raisins, all`
    const { words, kind } = this.#wordsOf(isNoted ? `${ingredient} ${note}` : ingredient)
    // `all of the above`, and nothing else
    const isAllAbove = isAbove(ingredient) && tokensOf(ingredient).every(t => kitchen.whole.has(t.key))
    const named = earlier.find(({ name }) => nameKey(name) === nameKey(ingredient))
    if (named) return named
    if (isAllAbove) return earlier.at(-1)
    if (kind === undefined && share === undefined) return undefined
    const onlyOf = (all: readonly S[]) => (all.length === 1 ? all[0] : undefined)
    const sharing = onlyOf(
      earlier.filter(({ name }) => this.#wordsOf(name).words.some(word => words.includes(word))),
    )
    const alike = onlyOf(earlier.filter(stage => kind !== undefined && stage.kind === kind))
    const weighing = onlyOf(
      earlier.filter(stage => kind !== undefined && isNear(line.grams, this.#gramsOf(stage))),
    )
    let best: { stage: S; score: number } | undefined
    for (const stage of earlier) {
      const evidence: readonly (readonly [score: number, holds: boolean])[] = [
        [6, stage === sharing], // a word of its kind, as no other
        [3, stage === alike], // its kind, as no other
        [stage === alike ? 2.5 : enough, stage === weighing], // its weight, as no other
        [2, share !== undefined],
        [2, isAbove(`${ingredient} ${note}`)],
      ]
      const score = evidence.reduce((sum, [score, holds]) => sum + (holds ? score : 0), 0)
      if (score >= enough && (!best || score > best.score)) best = { stage, score }
    }
    return best?.stage
  }
}
