import { nameKey } from '../../dough/document/formula.js'
import { type Token, tokensOf } from '../../dough/lexicon/text-tokens.js'
import { kitchen } from '../values/kitchen-words.js'
import { earlierStageWords, kindOf, type StageKind } from '../values/stage-kinds.js'

/** A stage that later ones may take. */
export interface Source {
  readonly name: string
  readonly kind: StageKind | undefined
  readonly grams: number | undefined // of all its lines; undefined where one cannot be weighed
}

/** What a line says of what it may take. */
export interface Taker {
  readonly ingredient: string
  readonly note: string
  readonly share?: number | 'rest'
  readonly known?: boolean // to the larder
  readonly grams: number | undefined
}

/** Is it made to go into the dough? */
export const isForDough = ({ kind }: Pick<Source, 'kind'>): boolean => kind === 'ferments' || kind === 'soaks'

const enough = 5 // of what speaks for a line taking an earlier stage
export const mostEarlier = 40 // stages that are asked; no formula has so many
const nearly = 0.01 // of its weight

const isNear = (grams: number | undefined, whole: number | undefined): boolean =>
  grams !== undefined && whole !== undefined && Math.abs(grams - whole) <= whole * nearly

/** What a name says of stages, worked out once for each. */
class Said {
  readonly #known = new Map<string, { words: readonly string[]; kind: StageKind | undefined }>()

  of(name: string) {
    const known = this.#known.get(name) ?? { words: earlierStageWords(name), kind: kindOf(tokensOf(name)) }
    if (this.#known.size > 5000) this.#known.clear()
    this.#known.set(name, known)
    return known
  }
}

/** Finds which earlier stage a line takes, by what speaks for it. */
export class Sources<S extends Source> {
  readonly #said = new Said()

  /** `earlier`: the stages made before the line's own; of many the last. */
  of(line: Taker, earlier: readonly S[]): S | undefined {
    const { ingredient, share } = line
    // `scalded rye` takes the scald
    const { words, kind } = this.#said.of(line.known === false ? `${ingredient} ${line.note}` : ingredient)
    const named = earlier.find(stage => nameKey(stage.name) === nameKey(ingredient))
    if (named || (kind === undefined && share === undefined)) return named
    const sharing = earlier.filter(({ name }) => this.#said.of(name).words.some(word => words.includes(word)))
    const alike = earlier.filter(stage => kind !== undefined && stage.kind === kind)
    const weighing = earlier.filter(stage => kind !== undefined && isNear(line.grams, stage.grams))
    const isAbove = tokensOf(`${ingredient} ${line.note}`).some(t => kitchen.above.has(t.key))
    const isOnly = (stage: S, all: readonly S[]) => all.length === 1 && all[0] === stage
    let best: { stage: S; score: number } | undefined
    for (const stage of earlier) {
      const evidence: readonly (readonly [score: number, holds: boolean])[] = [
        [6, isOnly(stage, sharing)], // a word of its kind, as no other
        [3, isOnly(stage, alike)], // its kind, as no other
        [isOnly(stage, alike) ? 2.5 : enough, isOnly(stage, weighing)], // its weight, as no other
        [2, share !== undefined],
        [2, isAbove],
      ]
      const score = evidence.reduce((sum, [score, holds]) => sum + (holds ? score : 0), 0)
      if (score >= enough && (!best || score > best.score)) best = { stage, score }
    }
    return best?.stage
  }

  /** What a line's own words say besides the name of the stage it takes: `ripe`, `from last night`. */
  besides(ingredient: string, { name }: S): string {
    if (nameKey(ingredient) === nameKey(name)) return ''
    const { words } = this.#said.of(name)
    const isOfIt = (t: Token) =>
      kitchen.whole.has(t.key) || earlierStageWords(t.text).some(word => words.includes(word))
    return tokensOf(ingredient)
      .filter(t => t.kind === 'word' && !isOfIt(t))
      .map(t => t.text)
      .join(' ')
  }

  /** Of lines that name no stage the one that may be meant by another name: its kind, and no more of it than there is. */
  perhaps<L extends Taker>(lines: readonly L[], stage: S): L | undefined {
    const like = lines.filter(line => this.#said.of(line.ingredient).kind === stage.kind)
    const [only] = like
    const { grams: whole } = stage
    const isMore = whole !== undefined && (only?.grams ?? 0) > whole * (1 + nearly)
    return like.length === 1 && !isMore ? only : undefined
  }
}
