import { isAsWritten } from '../cells/batch-cells.js'
import { seedLines } from '../cells/builds.js'
import type { Scale } from '../document/batch.js'
import type { Formula, Line } from '../document/formula.js'
import { inOrder, type LinePlan, type Outline, type StagePlan } from '../outline/outline.js'
import { type Enough, raised, rounded, type Weighed } from './weighing.js'

/**
 * What is weighed of every line of the batch: each as it rounds, but one line of a stage that would else come to
 * less than enough. Nothing is weighed where a weight is not known.
 */
export class WeighedBatch {
  readonly #outline: Outline
  readonly #scale: Scale
  readonly #wanted: (line: LinePlan) => number | undefined
  readonly #stages: readonly StagePlan[] // takers first
  readonly #rounded = new Map<LinePlan, Weighed>()
  readonly #raised = new Map<StagePlan, { readonly line: LinePlan; readonly weighed: Weighed }>()
  readonly #unknown = new Set<LinePlan>()

  /** `wanted` gives the grams of a line in the batch. */
  constructor(outline: Outline, scale: Scale, wanted: (line: LinePlan) => number | undefined) {
    this.#outline = outline
    this.#scale = scale
    this.#wanted = wanted
    this.#stages = inOrder(outline.stages).reverse()
    for (const stage of this.#stages) for (const line of stage.lines) this.#round(line)
    if (this.isKnown) for (const stage of this.#stages) this.#raise(stage)
  }

  get isKnown(): boolean {
    return this.#unknown.size === 0 && this.#rounded.size > 0
  }

  of(line: LinePlan): Weighed | undefined {
    if (!this.isKnown) return undefined
    const up = this.#raised.get(line.stage)
    return up?.line === line ? up.weighed : this.#rounded.get(line)
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
      const before = this.#raised.get(stage)
      const now = this.#raise(stage)
      if (before?.line === now?.line && before?.weighed.grams === now?.weighed.grams) continue
      if (before) reach(before.line)
      if (now) reach(now.line)
    }
    return other
  }

  #round(line: LinePlan): void {
    const wanted = this.#wanted(line)
    if (wanted === undefined || wanted < 0) this.#unknown.add(line)
    else this.#unknown.delete(line)
    this.#rounded.set(line, rounded(wanted ?? 0, this.#scale))
  }

  #raise(stage: StagePlan) {
    this.#raised.delete(stage)
    const wanted = () => stage.lines.map(line => this.#wanted(line)!)
    const enough = this.#enoughOf(stage, () => wanted().reduce((sum, w) => sum + w, 0))
    const weighed = enough && stage.lines.map(line => this.#rounded.get(line)!)
    const up = enough && raised(wanted(), weighed!, enough)
    if (!up) return undefined
    const of = { line: stage.lines[up.at]!, weighed: up.weighed }
    this.#raised.set(stage, of)
    return of
  }

  /**
   * What is enough of a stage: the dough that the pieces take, and of a build what the stages that take it weigh of it
   * and what is kept back. Undefined where nothing falls short: so much dough, a factor.
   */
  #enoughOf(stage: StagePlan, all: () => number): Enough | undefined {
    const { batch } = this.#outline.formula
    if (stage.isFinal) return batch && 'pieces' in batch ? { grams: all(), seed: [] } : undefined
    const taken = stage.takenBy.reduce((sum, line) => sum + (this.of(line)?.grams ?? 0), 0)
    // A stage that is written too small stays so; only what rounding takes away is made up for.
    if (isAsWritten(this.#outline))
      return taken - all() < stage.takenBy.length ? { grams: taken, seed: [] } : undefined
    const { loss = 0, keepBack = 0 } = stage.stage
    const needed = taken / (1 - loss)
    if (keepBack !== 'seed') return { grams: needed + keepBack, seed: [] }
    return { grams: needed, seed: seedLines(stage).map(line => stage.lines.indexOf(line)) }
  }
}

/**
 * The formula with every line at what is weighed of it, to read the dough as it will really be. What is as it was
 * in `before`, a formula so made, is the same object.
 */
export function asWeighed(outline: Outline, weighed: WeighedBatch, before: Formula | undefined): Formula {
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
