import { Graph } from '../../engine/index.js'
import { type CellEdits, CellPlan } from '../cells/plan-cells.js'
import { type Scale, usualScale } from '../document/batch.js'
import type { Formula } from '../document/formula.js'
import { type Larder, larderOf } from '../document/larder.js'
import type { ReadingName } from '../document/reading-names.js'
import { usualLarder } from '../larder/usual-larder.js'
import { workableOutline } from '../outline/named-lines.js'
import { cellOf, namesToUse } from '../outline/names.js'
import type { LinePlan, Outline } from '../outline/outline.js'
import { type Revision, revise } from '../outline/revise.js'
import { type WeighedLines, weighing } from '../weighed/weighed.js'
import type { Weighed } from '../weighed/weighing.js'
import { explain } from './explain.js'
import type {
  DoughParts,
  FigureProblem,
  FigureSheet,
  JottingFigures,
  LineFigures,
  StageFigures,
} from './figures.js'
import { Noticed } from './noticed.js'
import { doughParts, jottingFigures, lineFigures, readingProblem, stageFigures } from './read-figures.js'
import { allTouched, type Touched, untouched } from './touched.js'
import { PlansById, Touching } from './touching.js'
import { numberIn, type WorkedOut } from './worked-out.js'

/** A formula with its figures. The larder is the usual one unless another is given. */
export const openSheet = (formula: Formula, larder?: Larder, scale?: Scale): FigureSheet =>
  new WorkedSheet(formula, larder, scale)

export class WorkedSheet implements FigureSheet {
  readonly #graph = new Graph()
  #outline: Outline
  #plan: CellPlan // as the cells of the graph are defined
  #plans: PlansById
  #scale: Scale
  workedOut: WorkedOut
  #lastUpdate = { planned: 0, defined: 0 }
  readonly #lastGood = new Map<string, number>() // weights of lines that give, while their holds had an answer
  readonly #lineFigures = new Map<string, LineFigures>()
  readonly #stageFigures = new Map<string, StageFigures>()
  #weighed: WeighedLines | undefined // from when it is first asked for
  #dough: FigureSheet | undefined // as it is weighed, likewise
  #doughIsOld = false

  constructor(formula: Formula, larder: Larder = larderOf(usualLarder), scale: Scale = usualScale) {
    this.#scale = scale
    this.#outline = workableOutline(formula, larder)
    this.#plan = new CellPlan(this.#outline)
    this.#plans = new PlansById(this.#outline.stages)
    this.workedOut = this.#seen()
    this.#define(this.#plan.after(undefined))
    this.#noteGood(this.#outline.giving)
  }

  get formula(): Formula {
    return this.#outline.formula
  }
  get larder(): Larder {
    return this.#outline.larder
  }
  get scale(): Scale {
    return this.#scale
  }

  update(formula: Formula, larder: Larder = this.larder, scale: Scale = this.#scale): Touched {
    const { formula: before, larder: known } = this.#outline
    if (formula === before && larder === known && scale === this.#scale) return untouched
    const isOther = formula.id !== before.id || larder !== known || scale !== this.#scale
    const revision = larder === known && !this.#plan.isTangled && revise(this.#outline, formula)
    const touched = revision ? this.#revised(revision, before, scale) : this.#anew(formula, larder, scale)
    return isOther ? allTouched : touched
  }

  /** Works out what a revision touched. What throws leaves the sheet at the formula `before`. */
  #revised(revision: Revision, before: Formula, scale: Scale): Touched {
    const edits = this.#plan.revised(revision)
    let changed: readonly string[]
    try {
      changed = this.#define(edits)
    } catch (error) {
      this.#plan.revised(revise(this.#outline, before)!)
      throw error
    }
    const touching = new Touching(this.workedOut, this.#plans)
    touching.stages(revision.stages)
    touching.lines(revision.lines)
    touching.cells(edits, changed)
    if (revision.holds) touching.problems()
    this.#weighAgain(touching, this.#plans, revision.batch, scale)
    const touched = touching.done()
    for (const id of touched.lines) this.#lineFigures.delete(id)
    for (const id of touched.stages) this.#stageFigures.delete(id)
    this.workedOut.noticed.forget([...touched.lines].flatMap(id => this.#plans.lines.get(id) ?? []))
    return touched
  }

  /** Plans everything anew, and defines what is not as it was. */
  #anew(formula: Formula, larder: Larder, scale: Scale): Touched {
    const outline = workableOutline(formula, larder)
    const plan = new CellPlan(outline)
    const edits = plan.after(this.#plan)
    this.#noteGood(outline.giving) // what a line weighed before it began to give
    const changed = this.#define(edits)
    const former = this.#plans
    this.#outline = outline
    this.#plan = plan
    this.#plans = new PlansById(outline.stages)
    this.workedOut = this.#seen()
    const touching = new Touching(this.workedOut, this.#plans)
    touching.cells(edits, changed)
    touching.anew(former)
    this.#weighAgain(touching, former, true, scale)
    this.#lineFigures.clear()
    this.#stageFigures.clear()
    return touching.done()
  }

  /** Defines cells, and gives the names of those that came to other values. */
  #define({ planned, puts, gone }: CellEdits): readonly string[] {
    const { changed } = this.#graph.transact(() => {
      for (const name of gone.keys()) this.#graph.remove(name)
      for (const [name, definition] of puts) definition.make(this.#graph, name)
    })
    this.#lastUpdate = { planned, defined: puts.size }
    return changed
  }

  #noteGood(giving: readonly LinePlan[]): void {
    for (const line of giving) {
      const weight = numberIn(this.workedOut, cellOf.weight(line))
      if (weight !== undefined) this.#lastGood.set(line.line.id, weight)
    }
  }

  /** Touches what is weighed otherwise than before; nothing where nobody has asked yet. */
  #weighAgain(touching: Touching, former: PlansById, anew: boolean, scale: Scale): void {
    this.#noteGood(this.#outline.giving)
    const isOther = anew || scale !== this.#scale
    this.#scale = scale
    const before = this.#weighed
    if (!before || !(isOther || touching.inBatch.length)) return
    this.#doughIsOld = true
    touching.allReadings()
    if (!isOther) return touching.lines(before.follow(touching.inBatch))
    const now = this.#weighing()
    for (const [id, line] of this.#plans.lines) {
      const was = former.lines.get(id)
      if (!was || !isSame(before.of(was), now?.of(line))) touching.lines([line])
    }
  }

  #weighing(): WeighedLines | undefined {
    this.#weighed = weighing?.batch(this.#outline, this.#scale, line =>
      numberIn(this.workedOut, cellOf.batch(line)),
    )
    return this.#weighed
  }

  weighed(line: string): Weighed | undefined {
    const plan = this.#plans.lines.get(line)
    return plan && (this.#weighed ?? this.#weighing())?.of(plan)
  }

  weighedReading(name: ReadingName): number | undefined {
    const weighed = this.#weighed ?? this.#weighing()
    if (!weighed?.isKnown) return undefined
    const formula = () => weighing!.formula(this.#outline, weighed, this.#dough?.formula)
    if (!this.#dough) this.#dough = openSheet(formula(), this.larder)
    else if (this.#doughIsOld) this.#dough.update(formula(), this.larder)
    this.#doughIsOld = false
    return this.#dough.reading(name)
  }

  reading(name: ReadingName): number | undefined {
    return numberIn(this.workedOut, cellOf.reading(name))
  }

  readingProblem(name: ReadingName): FigureProblem | undefined {
    return readingProblem(this.workedOut, name)
  }

  line(id: string): LineFigures {
    const known = this.#lineFigures.get(id)
    if (known) return known
    const plan = this.#plans.lines.get(id)
    if (!plan) throw new RangeError(`There is no line ${id} in ${this.formula.name}.`)
    const figures = lineFigures(this.workedOut, plan, this.#lastGood.get(id))
    this.#lineFigures.set(id, figures)
    return figures
  }

  stage(id: string): StageFigures {
    const known = this.#stageFigures.get(id)
    if (known) return known
    const plan = this.#plans.stages.get(id)
    if (!plan) throw new RangeError(`There is no stage ${id} in ${this.formula.name}.`)
    const percents = plan.lines.map(l => this.line(l.line.id).percent)
    const figures = stageFigures(this.workedOut, plan, percents)
    this.#stageFigures.set(id, figures)
    return figures
  }

  jotting(id: string): JottingFigures {
    return jottingFigures(this.workedOut, id)
  }

  get usableNames(): readonly string[] {
    return namesToUse(this.#outline)
  }

  other(formula: Formula): FigureSheet {
    return openSheet(formula, this.larder, this.#scale)
  }

  get parts(): DoughParts | undefined {
    return doughParts(this.workedOut)
  }

  #seen(): WorkedOut {
    const [graph, plan, outline] = [this.#graph, this.#plan, this.#outline]
    const noticed = new Noticed()
    return {
      graph,
      plan,
      outline,
      lastUpdate: () => this.#lastUpdate,
      explain: value => explain({ plan, outline, noticed }, value),
      weighed: line => this.weighed(line),
      noticed,
    }
  }
}

const isSame = (a: Weighed | undefined, b: Weighed | undefined): boolean =>
  a?.grams === b?.grams && a?.step === b?.step && a?.mayBeOff === b?.mayBeOff
