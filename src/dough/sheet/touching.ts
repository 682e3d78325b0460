import type { CellEdits } from '../cells/plan-cells.js'
import { type ReadingName, readingNames } from '../document/reading-names.js'
import { cellOf } from '../outline/names.js'
import { isBase, type LinePlan, type StagePlan } from '../outline/outline.js'
import { isAllSlope } from './read-figures.js'
import type { Touched } from './touched.js'
import type { WorkedOut } from './worked-out.js'

/** The plans of a formula's lines and stages, by their ids. */
export class PlansById {
  readonly lines = new Map<string, LinePlan>()
  readonly stages = new Map<string, StagePlan>()

  constructor(of: readonly StagePlan[]) {
    for (const stage of of) {
      this.stages.set(stage.stage.id, stage)
      for (const line of stage.lines) this.lines.set(line.line.id, line)
    }
  }

  /** The same for the same lines in the same stages, in the same order. */
  order(): string {
    const lines = [...this.lines.values()].map(l => [l.stage.stage.id, l.line.id])
    return JSON.stringify([[...this.stages.keys()], lines])
  }
}

/** Gathers what an update touches. */
export class Touching {
  readonly #seen: WorkedOut
  readonly #plans: PlansById
  readonly #lines = new Set<LinePlan>()
  readonly #touched = {
    line: new Set<string>(),
    stage: new Set<string>(),
    reading: new Set<string>(),
    jotting: new Set<string>(),
  }
  #structure = false
  /** Lines that have another weight in the batch. */
  readonly inBatch: LinePlan[] = []

  constructor(seen: WorkedOut, plans: PlansById) {
    this.#seen = seen
    this.#plans = plans
  }

  stages(stages: readonly StagePlan[]): void {
    for (const { stage } of stages) this.#touched.stage.add(stage.id)
  }

  lines(lines: Iterable<LinePlan>): void {
    for (const line of lines) this.#line(line)
  }

  /** A line shows in its stage, and in what is taken of the one it takes. */
  #line(line: LinePlan): void {
    if (this.#lines.has(line)) return
    this.#lines.add(line)
    this.#touched.line.add(line.line.id)
    this.#touched.stage.add(line.stage.stage.id)
    if (line.source) this.#touched.stage.add(line.source.stage.id)
  }

  /** What was defined anew, and the names of the cells that came to other values. */
  cells({ puts, gone }: CellEdits, changed: readonly string[]): void {
    for (const [name] of puts) this.#cell(name, gone)
    for (const [name] of gone) this.#cell(name, gone)
    for (const name of changed) this.#cell(name, gone)
  }

  #cell(name: string, gone: CellEdits['gone']): void {
    const owner = (this.#seen.plan.cells.get(name) ?? gone.get(name))?.owner
    if (!owner) return
    this.#touched[owner.of].add(owner.id)
    const line = owner.of === 'line' && this.#plans.lines.get(owner.id)
    if (line) {
      this.#line(line)
      if (name === cellOf.batch(line)) this.inBatch.push(line)
    }
    const stage = owner.of === 'stage' && this.#plans.stages.get(owner.id)
    if (stage && name === cellOf.base(stage)) this.lines(stage.lines.filter(l => !isAllSlope(this.#seen, l)))
  }

  /** Whatever of a formula that was planned anew is not planned as it was. */
  anew(former: PlansById): void {
    const { lines, stages } = this.#plans
    this.#structure = former.order() !== this.#plans.order()
    for (const id of stages.keys()) this.#touched.stage.add(id)
    for (const [id, line] of lines) {
      const was = former.lines.get(id)
      if (!was || !isSamePlan(was, line)) this.#line(line)
    }
    this.problems()
  }

  /** Whatever has no figure: the reason names lines and holds that may be called otherwise by now. */
  problems(): void {
    const { graph, outline } = this.#seen
    for (const line of this.#plans.lines.values())
      if (typeof graph.value(cellOf.weight(line)) !== 'number') this.#line(line)
    for (const { id } of outline.formula.jottings ?? []) this.#touched.jotting.add(id)
  }

  /** Another weight is weighed somewhere: every reading has another one beside it. */
  allReadings(): void {
    for (const name of readingNames) this.#touched.reading.add(name)
  }

  /** What was touched. Why a reading has no number hangs on the whole final dough. */
  done(): Touched {
    const { line, stage, reading, jotting } = this.#touched
    const { graph, outline } = this.#seen
    if (stage.has(outline.final.stage.id))
      for (const name of readingNames)
        if (typeof graph.value(cellOf.reading(name)) !== 'number') reading.add(name)
    return {
      all: false,
      lines: line,
      stages: stage,
      readings: reading as Set<ReadingName>,
      jottings: jotting,
      structure: this.#structure,
    }
  }
}

const isSamePlan = (a: LinePlan, b: LinePlan): boolean =>
  a.line === b.line &&
  a.amount === b.amount &&
  a.countsAs === b.countsAs &&
  a.gives === b.gives &&
  a.source?.stage.id === b.source?.stage.id &&
  a.stage.stage.id === b.stage.stage.id &&
  isBase(a) === isBase(b)
