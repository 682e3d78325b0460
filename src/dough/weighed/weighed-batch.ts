import type { Scale } from '../document/batch.js'
import { type Formula, hasBatch, type Line } from '../document/formula.js'
import { inOrder, type LinePlan, type Outline, type StagePlan } from '../outline/outline.js'
import { useWeighing, type WeighedLines } from './weighed.js'
import { type Aim, evened, rounded, type Weighed } from './weighing.js'

/**
 * What is weighed of every line of the batch: each as it rounds, but for what that leaves over of a stage. Nothing is
 * weighed where a weight is not known.
 */
export class WeighedBatch implements WeighedLines {
  readonly #outline: Outline
  readonly #scale: Scale
  readonly #wanted: (line: LinePlan) => number | undefined
  readonly #stages: readonly StagePlan[] // takers first
  readonly #rounded = new Map<LinePlan, Weighed>()
  readonly #evened = new Map<StagePlan, ReadonlyMap<LinePlan, Weighed>>() // lines weighed otherwise than they round
  readonly #unknown = new Set<LinePlan>()

  /** `wanted` gives the grams of a line in the batch. */
  constructor(outline: Outline, scale: Scale, wanted: (line: LinePlan) => number | undefined) {
    this.#outline = outline
    this.#scale = scale
    this.#wanted = wanted
    this.#stages = inOrder(outline.stages).reverse()
    for (const stage of this.#stages) for (const line of stage.lines) this.#round(line)
    if (this.isKnown) for (const stage of this.#stages) this.#even(stage)
  }

  get isKnown(): boolean {
    return this.#unknown.size === 0 && this.#rounded.size > 0
  }

  of(line: LinePlan): Weighed | undefined {
    if (!this.isKnown) return undefined
    return this.#evened.get(line.stage)?.get(line) ?? this.#rounded.get(line)
  }

  /** To be told which lines have another weight in the batch: gives all lines of which another may be weighed. */
  follow(lines: readonly LinePlan[]): Iterable<LinePlan> {
    const wasKnown = this.isKnown
    for (const line of lines) if (this.#rounded.has(line)) this.#round(line)
    if (!this.isKnown) return wasKnown ? this.#rounded.keys() : lines
    const other = new Set(wasKnown ? lines : this.#rounded.keys())
    const stages = new Set<StagePlan>()
    const reach = (line: LinePlan) => {
      other.add(line)
      stages.add(line.stage)
      if (line.source) stages.add(line.source)
    }
    for (const line of other) reach(line)
    for (const stage of this.#stages) {
      if (!stages.has(stage)) continue
      const before = this.#evened.get(stage)
      const now = this.#even(stage)
      for (const line of new Set([...(before?.keys() ?? []), ...now.keys()]))
        if (before?.get(line)?.grams !== now.get(line)?.grams) reach(line)
    }
    return other
  }

  #round(line: LinePlan): void {
    const wanted = this.#wanted(line)
    if (wanted === undefined || wanted < 0) this.#unknown.add(line)
    else this.#unknown.delete(line)
    this.#rounded.set(line, rounded(wanted ?? 0, this.#scale))
  }

  #even(stage: StagePlan): ReadonlyMap<LinePlan, Weighed> {
    const { lines } = stage
    const wanted = lines.map(line => this.#wanted(line)!)
    const weighed = lines.map(line => this.#rounded.get(line)!)
    const other = evened(wanted, weighed, this.#aimOf(stage, wanted))
    const now = new Map([...other].map(([at, line]) => [lines[at]!, line]))
    this.#evened.set(stage, now)
    return now
  }

  /**
   * What is to be made of a stage: of the dough all that is wanted, and of a build what the stages that take it weigh of
   * it and what is kept back.
   */
  #aimOf(stage: StagePlan, wanted: readonly number[]): Aim {
    const all = wanted.reduce((sum, w) => sum + w, 0)
    if (stage.isFinal) return { grams: all, seed: [] }
    const of = (grams: (line: LinePlan) => number) => stage.takenBy.reduce((sum, l) => sum + grams(l), 0)
    const taken = of(line => this.of(line)?.grams ?? 0)
    if (!hasBatch(this.#outline.formula)) {
      const short = of(line => this.#wanted(line) ?? 0) - all
      const tiny = 1e-9 * Math.max(1, all)
      // As much as is written stays so; where that is what is taken, it is what is weighed of that.
      return { grams: short > tiny ? all : short > -tiny ? taken : Math.max(all, taken), seed: [] }
    }
    const { loss = 0, keepBack = 0 } = stage.stage
    const needed = taken / (1 - loss)
    if (keepBack !== 'seed') return { grams: needed + keepBack, seed: [] }
    const seed = stage.lines.flatMap(({ countsAs }, at) => (countsAs?.kind === 'starter' ? [at] : []))
    return { grams: needed, seed }
  }
}

/**
 * The formula with every line at what is weighed of it, to read the dough as it will really be. What is as it was
 * in `before`, a formula so made, is the same object.
 */
export function asWeighed(outline: Outline, weighed: WeighedLines, before: Formula | undefined): Formula {
  const stages = outline.stages.map((plan, i) => {
    const was = before?.stages[i]
    const lines = plan.lines.map((linePlan, at): Line => {
      const line = { ...linePlan.line, amount: `${weighed.of(linePlan)?.grams ?? 0} g` }
      const former = was?.lines[at]
      return former && isSame(former, line) ? former : line
    })
    const isKept =
      was && was.lines.length === lines.length && lines.every((line, at) => line === was.lines[at])
    return { ...plan.stage, lines: isKept ? was.lines : lines, ferments: plan.ferments }
  })
  const { batch: _batch, holds: _holds, ...formula } = outline.formula
  return { ...formula, stages }
}

const isSame = (a: Line, b: Line): boolean =>
  a.id === b.id && a.ingredient === b.ingredient && a.amount === b.amount && a.base === b.base

useWeighing({
  batch: (outline, scale, wanted) => new WeighedBatch(outline, scale, wanted),
  formula: asWeighed,
})
