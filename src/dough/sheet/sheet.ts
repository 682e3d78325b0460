import { type CellValue, Graph, nameFor } from '../../engine/index.js'
import { type CellPlan, planCells } from '../cells/plan-cells.js'
import { type Scale, usualScale } from '../document/batch.js'
import type { Formula, Problem } from '../document/formula.js'
import type { Larder } from '../document/larder.js'
import { larderOf } from '../document/larder.js'
import { type ReadingName, readingNames } from '../document/reading-names.js'
import { holdWords, measured, tidy } from '../document/words.js'
import { usualLarder } from '../larder/usual-larder.js'
import { cellOf, namesToUse } from '../outline/names.js'
import { inOrder, type LinePlan, type Outline, outlineOf, type StagePlan } from '../outline/outline.js'
import type { DoughParts, FigureSheet, JottingFigures, LineFigures, StageFigures } from './figures.js'
import { remarksOn } from './remarks.js'
import { allTouched, type Touched, untouched } from './touched.js'
import { asWeighed, enoughOf, type Weighed, weigh } from './weighing.js'
import type { WorkedOut } from './worked-out.js'

/** A formula with its figures. The larder is the usual one unless another is given. */
export const openSheet = (formula: Formula, larder?: Larder, scale?: Scale): FigureSheet =>
  new WorkedSheet(formula, larder, scale)

export class WorkedSheet implements FigureSheet {
  #graph = new Graph()
  #outline!: Outline
  #plan!: CellPlan // as the cells of the graph are defined
  #lines = new Map<string, LinePlan>()
  #stages = new Map<string, StagePlan>()
  #lineFigures = new Map<string, LineFigures>()
  #lastGood = new Map<string, number>() // weights of lines that give, while their holds had an answer
  #problems: readonly Problem[] | undefined
  #scale: Scale
  #weighed: ReadonlyMap<string, Weighed> | undefined
  #asWeighed: FigureSheet | undefined

  constructor(formula: Formula, larder: Larder = larderOf(usualLarder), scale: Scale = usualScale) {
    this.#scale = scale
    this.update(formula, larder)
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
    if (this.#outline && formula === this.formula && larder === this.larder && scale === this.#scale)
      return untouched
    this.#scale = scale
    const outline = outlineOf(formula, larder)
    const plan = planCells(outline)
    this.#noteGood(outline) // what a line weighed before it began to give
    this.#graph.transact(() => {
      const made = this.#plan?.cells
      if (made) for (const name of made.keys()) if (!plan.cells.has(name)) this.#graph.remove(name)
      for (const [name, definition] of plan.cells)
        if (made?.get(name)?.key !== definition.key) definition.make(this.#graph, name)
    })
    this.#outline = outline
    this.#plan = plan
    this.#stages = new Map(outline.stages.map(s => [s.stage.id, s]))
    this.#lines = new Map(outline.stages.flatMap(s => s.lines.map(l => [l.line.id, l] as const)))
    this.#lineFigures.clear()
    this.#noteGood(outline)
    this.#problems = undefined
    this.#weighed = undefined
    this.#asWeighed = undefined
    return allTouched
  }

  #noteGood({ final }: Outline): void {
    for (const line of final.lines.filter(l => l.gives)) {
      const weight = this.#number(cellOf.weight(line))
      if (weight !== undefined) this.#lastGood.set(line.line.id, weight)
    }
  }

  weighed(line: string): Weighed | undefined {
    this.#weighed ??= this.#weighAll()
    return this.#weighed.get(line)
  }

  weighedReading(name: ReadingName): number | undefined {
    this.#weighed ??= this.#weighAll()
    if (!this.#weighed.size) return undefined
    this.#asWeighed ??= openSheet(asWeighed(this.#outline, this.#weighed), this.larder)
    return this.#asWeighed.reading(name)
  }

  /** What is weighed of every line of the batch; nothing where a weight is not known. */
  #weighAll(): ReadonlyMap<string, Weighed> {
    const all = new Map<string, Weighed>()
    for (const plan of inOrder(this.#outline.stages).reverse()) {
      const weights = plan.lines.map(l => this.#number(cellOf.batch(l)))
      if (weights.some(w => w === undefined || w < 0)) return new Map()
      const taken = plan.takenBy.reduce((sum, l) => sum + (all.get(l.line.id)?.grams ?? 0), 0)
      const atLeast = enoughOf(plan, this.#outline, weights as number[], taken)
      for (const [i, weighed] of weigh(weights as number[], this.#scale, atLeast).entries())
        all.set(plan.lines[i]!.line.id, weighed)
    }
    return all
  }

  reading(name: ReadingName): number | undefined {
    return this.#number(cellOf.reading(name))
  }

  readingProblem(name: ReadingName): string | undefined {
    const value = this.#graph.value(cellOf.reading(name))
    if (typeof value === 'number') return undefined
    const noFlour = this.#number(cellOf.count(this.#outline.final, 'flour')) === 0
    const noFlourLine = this.#number(cellOf.lines(this.#outline.final, 'flour')) === 0
    if (value.kind === 'domain' && noFlour) return 'There is no flour in the formula yet.'
    if (value.kind === 'domain' && noFlourLine) return 'The final dough has no flour line of its own.'
    return this.#placed(value)
  }

  line(id: string): LineFigures {
    let figures = this.#lineFigures.get(id)
    if (!figures) {
      const plan = this.#lines.get(id)
      if (!plan) throw new RangeError(`There is no line ${id} in ${this.formula.name}.`)
      figures = this.#figuresOf(plan)
      this.#lineFigures.set(id, figures)
    }
    return figures
  }

  #figuresOf(plan: LinePlan): LineFigures {
    const { amount, countsAs, source, stage, gives } = plan
    const value = this.#graph.value(cellOf.weight(plan))
    const known = typeof value === 'number'
    const weight = known ? value : gives && this.#lastGood.get(plan.line.id)
    const share = gives?.reading === 'wholeDough' ? gives : undefined
    const typed = !gives && amount && !('problem' in amount) ? amount : undefined
    return {
      weight,
      batch: this.#number(cellOf.batch(plan)),
      percent: this.#percentOf(plan, weight),
      wholeDough: this.#plan.cells.has(cellOf.wholeDough(plan))
        ? this.#number(cellOf.wholeDough(plan))
        : undefined,
      typedIn: gives ? share && 'wholeDough' : amount && (typed?.typedIn ?? 'weight'),
      typed: share ? `${tidy(share.value * 100)}` : (typed?.typed ?? (gives ? '' : plan.line.amount)),
      plain: share ? true : (typed?.plain ?? false),
      is: source ? 'stage' : (countsAs?.kind ?? 'unknown'),
      starterHydration: countsAs?.kind === 'starter' ? countsAs.hydration : undefined,
      isBase: stage.base.includes(plan),
      gives,
      isStale: !known && weight !== undefined,
      problem: known ? undefined : this.#placed(value, cellOf.weight(plan)),
    }
  }

  #percentOf(plan: LinePlan, weight: number | undefined): number | undefined {
    const { slope, fixed } = this.#plan.splits.get(plan)!
    if (fixed === 'none' && slope !== 'none') return this.#number(cellOf.slope(plan))
    const base = this.#number(cellOf.base(plan.stage))
    return weight === undefined || !base ? undefined : weight / base
  }

  stage(id: string): StageFigures {
    const plan = this.#stages.get(id)
    if (!plan) throw new RangeError(`There is no stage ${id} in ${this.formula.name}.`)
    const weight = this.#graph.value(cellOf.stageWeight(plan))
    const percents = plan.lines.map(l => this.line(l.line.id).percent)
    const known = percents.every(p => p !== undefined)
    return {
      weight: typeof weight === 'number' ? weight : undefined,
      build: this.#number(cellOf.build(plan)),
      needed:
        plan.isFinal || !this.#plan.cells.has(cellOf.needed(plan))
          ? undefined
          : this.#number(cellOf.needed(plan)),
      base: this.#number(cellOf.base(plan)),
      percent: known && percents.length ? (percents as number[]).reduce((sum, p) => sum + p, 0) : undefined,
      ferments: plan.ferments,
      isFinal: plan.isFinal,
      taken: plan.isFinal ? undefined : this.#number(cellOf.taken(plan)),
      problem: plan.circle ?? (typeof weight === 'number' ? undefined : this.#placed(weight)),
    }
  }

  jotting(id: string): JottingFigures {
    const plan = [...this.#outline.jottings.values()].find(j => j.jotting.id === id)
    if (!plan) {
      const problem = 'There is another jotting of this name; the first one is meant.'
      return { value: undefined, measures: 'number', said: '–', problem }
    }
    const value = this.#graph.value(cellOf.jotting(plan.name))
    const known = typeof value === 'number' ? value : undefined
    const problem =
      typeof value === 'number' ? this.#alsoALine(plan.name) : this.#placed(value, cellOf.jotting(plan.name))
    return { value: known, measures: plan.dimension, said: measured(known, plan.dimension), problem }
  }

  #alsoALine(jotting: string): string | undefined {
    const line = [...this.#lines.values()].find(
      l => l.line.ingredient && nameFor(l.line.ingredient) === jotting,
    )
    return (
      line &&
      `${line.line.ingredient} is an ingredient as well; amounts that say ${jotting} mean the jotting.`
    )
  }

  get usableNames(): readonly string[] {
    return namesToUse(this.#outline)
  }

  other(formula: Formula): FigureSheet {
    return openSheet(formula, this.larder, this.#scale)
  }

  get parts(): DoughParts | undefined {
    const { final } = this.#outline
    const [flour, water, salt, all] = (['flour', 'water', 'salt'] as const)
      .map(count => cellOf.count(final, count))
      .concat(cellOf.stageWeight(final))
      .map(cell => this.#number(cell))
    const [ownFlour, ownWater] = [
      this.#number(cellOf.lines(final, 'flour')),
      this.#number(cellOf.lines(final, 'water')),
    ]
    if (flour === undefined || water === undefined || salt === undefined || all === undefined)
      return undefined
    const rest = all - flour - water - salt
    const other = rest > 1e-9 * all ? rest : 0 // what rounding alone leaves is nothing
    return {
      flour,
      flourCarried: flour - (ownFlour ?? 0),
      water,
      waterCarried: water - (ownWater ?? 0),
      salt,
      other,
    }
  }

  get problems(): readonly Problem[] {
    this.#problems ??= remarksOn(this.workedOut)
    return this.#problems
  }

  get workedOut(): WorkedOut {
    return {
      graph: this.#graph,
      plan: this.#plan,
      outline: this.#outline,
      explain: value => this.#explain(value),
      weighed: line => this.weighed(line),
    }
  }

  #number(cell: string): number | undefined {
    const value = this.#graph.value(cell)
    return typeof value === 'number' ? value : undefined
  }

  /** The sentence of an error, with cells called by their words. */
  #explain(value: CellValue): string {
    if (typeof value === 'number') return ''
    const { path } = value
    if (value.kind !== 'cycle' || !path) return value.message
    const words = path.map(cell => this.#plan.cells.get(cell)?.words ?? cell)
    const steps = words.filter((word, i) => word !== words[i - 1])
    if (steps.length > 1 && steps.length === words.length && steps[0] !== steps.at(-1)) steps.push(steps[0]!)
    const held = this.#outline.final.lines.filter(l => l.gives && path.includes(cellOf.weight(l)))
    const holds = held.map(l => holdWords(l.gives!, l.line.ingredient)).join(', ')
    const way = holds
      ? `Release the hold (${holds}), or give one of them a number.`
      : 'Give one of them a number.'
    return `${steps.join(' is worked out from ')}: a circle, so there is no figure. ${way}`
  }

  /** The sentence, with the place where it arose when that is another cell than `here`. */
  #placed(value: CellValue, here?: string): string {
    if (typeof value === 'number') return ''
    const sentence = this.#explain(value)
    const origin = this.#plan.cells.get(value.origin)?.words
    if (value.kind === 'cycle' || !origin || value.origin === here) return sentence
    return `${origin}: ${sentence}`
  }
}

export { readingNames }
