import { type CellError, type Expression, type Graph, parse } from '../engine/index.js'
import { usualFlourWeight } from './formula.js'
import { cellOf, type Meant, meaningOf } from './names.js'
import { type Count, counts, inOrder, type LinePlan, type Outline, type StagePlan } from './outline.js'
import { type Split, splitLines } from './split.js'

/** How a cell is defined. Two definitions of one key are the same. */
export interface Definition {
  readonly key: string
  readonly make: (graph: Graph, name: string) => void
}

/** The cells of a formula by name, and what each is called in words. */
export interface CellPlan {
  readonly cells: ReadonlyMap<string, Definition>
  readonly words: ReadonlyMap<string, string>
  readonly splits: ReadonlyMap<LinePlan, Split>
  freeStage(stage: StagePlan): boolean // its base is not set by its own lines
}

/** A weight and what a gram of it brings: a number, or the cell of a stage's share. */
type Term = readonly [weight: string, brings: number | string]

const noRoom = (stage: StagePlan) =>
  `The ${stage.baseIsFlour ? 'flours' : 'base lines'} of ${stage.stage.name} by percentage already add to 100 % or more, which leaves no room for those in grams.`

class Builder implements CellPlan {
  readonly cells = new Map<string, Definition>()
  readonly words = new Map<string, string>()
  readonly splits: ReadonlyMap<LinePlan, Split>
  readonly #outline: Outline
  readonly #has = new Map<StagePlan, Set<Count>>() // the counts a stage can bring at all

  constructor(outline: Outline) {
    this.#outline = outline
    this.splits = splitLines(outline)
    for (const stage of inOrder(outline.stages)) this.#has.set(stage, this.#countsOf(stage))
    for (const stage of outline.stages) this.#stage(stage)
    this.#readings()
  }

  freeStage(stage: StagePlan): boolean {
    return stage.base.every(l => this.splits.get(l)!.fixed === 'none')
  }

  /** Every line is so much a gram of base, so that the stage's make-up does not depend on how much is made. */
  #isAllShares(stage: StagePlan): boolean {
    return this.freeStage(stage) && stage.lines.every(l => this.splits.get(l)!.fixed === 'none')
  }

  #countsOf(stage: StagePlan): Set<Count> {
    const found = new Set<Count>()
    for (const { brings, source } of stage.lines) {
      for (const count of counts) if (brings[count]) found.add(count)
      if (!source) continue
      for (const count of this.#has.get(source) ?? []) found.add(count)
      if (source.ferments) found.add('prefermented')
    }
    return found
  }

  #put(name: string, words: string, key: string, make: Definition['make']): void {
    this.cells.set(name, { key, make })
    this.words.set(name, words)
  }
  #input(name: string, words: string, value: number): void {
    this.#put(name, words, `is ${value}`, (graph, at) => graph.input(at, value))
  }
  #fail(name: string, words: string, message: string): void {
    this.#put(name, words, `fails ${message}`, (graph, at) => graph.fail(at, message))
  }
  #sum(name: string, words: string, of: readonly string[]): void {
    if (of.length === 0) this.#input(name, words, 0)
    else this.#put(name, words, `sum ${of.join(' ')}`, (graph, at) => graph.sum(at, of))
  }
  #compute(
    name: string,
    words: string,
    how: string,
    of: readonly string[],
    fn: (values: readonly number[]) => number | CellError,
  ) {
    this.#put(name, words, `${how} ${of.join(' ')}`, (graph, at) => graph.compute(at, of, fn))
  }
  #expression(name: string, words: string, expression: Expression, resolve: (name: string) => string): void {
    const key = `${expression.key} ${expression.numbers.join(' ')} ${expression.names.map(resolve).join(' ')}`
    this.#put(name, words, key, (graph, at) => graph.define(at, expression, resolve))
  }

  /** Σ weight × what a gram brings. */
  #dot(name: string, words: string, terms: readonly Term[]): void {
    if (terms.length === 0) return this.#input(name, words, 0)
    const of = terms.flatMap(([weight, brings]) => (typeof brings === 'string' ? [weight, brings] : [weight]))
    const brings = terms.map(([, b]) => (typeof b === 'string' ? undefined : b))
    this.#compute(name, words, `brings ${brings.join(' ')}`, of, values => {
      let total = 0
      let at = 0
      for (const fixed of brings) {
        total += values[at]! * (fixed ?? values[at + 1]!)
        at += fixed === undefined ? 2 : 1
      }
      return total
    })
  }

  #stage(stage: StagePlan): void {
    const { name } = stage.stage
    for (const line of stage.lines) this.#line(line)
    this.#sum(cellOf.stageWeight(stage), `weight of ${name}`, stage.lines.map(cellOf.weight))
    this.#sum(cellOf.taken(stage), `what later stages take of ${name}`, stage.takenBy.map(cellOf.weight))
    if (this.#isAllShares(stage))
      this.#sum(cellOf.perBase(stage), `${name} a gram of its base`, this.#slopes(stage.lines))
    this.#base(stage)
    this.#totals(stage)
    this.#carried(stage)
  }

  #slopes = (lines: readonly LinePlan[]): string[] =>
    lines.filter(l => this.splits.get(l)!.slope !== 'none').map(cellOf.slope)
  #fixed = (lines: readonly LinePlan[]): string[] =>
    lines.filter(l => this.splits.get(l)!.fixed !== 'none').map(l => this.#half(l, 'fixed'))
  #half = (line: LinePlan, part: 'fixed' | 'slope'): string =>
    this.splits.get(line)![part] === 'weight' ? cellOf.weight(line) : cellOf[part](line)

  #line(line: LinePlan): void {
    const name = cellOf.weight(line)
    const words = `${line.line.ingredient || 'a line'} in ${line.stage.stage.name}`
    const { amount } = line
    if (!amount) this.#input(name, words, 0)
    else if ('problem' in amount) this.#fail(name, words, amount.problem)
    else {
      const meant = new Map(amount.expression.names.map(n => [n, meaningOf(n, line, this.#outline)]))
      const unknown = [...meant.values()].find(m => m.kind === 'unknown')
      if (unknown?.kind === 'unknown') this.#fail(name, words, unknown.problem)
      else this.#expression(name, words, amount.expression, n => this.#cellMeant(meant.get(n)!, line, n))
    }
    for (const part of ['fixed', 'slope'] as const) {
      const half = this.splits.get(line)![part]
      if (half === 'none' || half === 'weight') continue
      const partWords = part === 'slope' ? `${words}, a gram of base` : `${words}, apart from the base`
      if ('problem' in half) this.#fail(cellOf[part](line), partWords, half.problem)
      else {
        const parts = half.terms.map((term, i) => {
          const at = `${cellOf[part](line)} ${i}`
          const meant = new Map(term.expression.names.map(n => [n, meaningOf(n, line, this.#outline)]))
          this.#expression(at, partWords, term.expression, n => this.#cellMeant(meant.get(n)!, line, n))
          return [at, term.times ? this.#half(term.times, part) : 1] as const
        })
        this.#dot(cellOf[part](line), partWords, parts)
      }
    }
  }

  /** The cell that a name in an amount is taken from; sums and constants are made on the way. */
  #cellMeant(meant: Meant, line: LinePlan, written: string): string {
    switch (meant.kind) {
      case 'base':
        return cellOf.base(line.stage)
      case 'unit':
        if (!this.cells.has(meant.name)) this.#input(meant.name, meant.name, meant.grams)
        return meant.name
      case 'lines':
      case 'far lines': {
        if (meant.lines.length === 1) return cellOf.weight(meant.lines[0]!)
        const sum = cellOf.named(meant.lines[0]!.stage, written.split('.').at(-1)!)
        if (!this.cells.has(sum)) this.#sum(sum, `all ${written}`, meant.lines.map(cellOf.weight))
        return sum
      }
      case 'count':
        return cellOf.count(meant.stage, meant.count)
      case 'stage weight':
        return cellOf.stageWeight(meant.stage)
      case 'stage base':
        return cellOf.base(meant.stage)
      case 'unknown':
        throw new RangeError(meant.problem)
    }
  }

  /** F = Σa ÷ (1 − Σb); free where Σa is nothing: the flour weight, or what makes just what later stages take. */
  #base(stage: StagePlan): void {
    const name = cellOf.base(stage)
    const words = stage.baseIsFlour ? `flour of ${stage.stage.name}` : `base of ${stage.stage.name}`
    if (this.freeStage(stage)) return this.#freeBase(stage, name, words)
    const fixed = this.#fixed(stage.base)
    const of = [...fixed, ...this.#slopes(stage.base)]
    this.#compute(name, words, `base ${fixed.length}`, of, values => {
      const a = values.slice(0, fixed.length).reduce((sum, v) => sum + v, 0)
      const b = values.slice(fixed.length).reduce((sum, v) => sum + v, 0)
      if (a === 0) return 0
      if (1 - b > 1e-12) return a / (1 - b)
      return { kind: 'domain', message: noRoom(stage), origin: name }
    })
  }

  #freeBase(stage: StagePlan, name: string, words: string): void {
    if (stage.isFinal) return this.#compute(name, words, 'as', [cellOf.flourWeight], ([grams]) => grams!)
    if (stage.circle) return this.#fail(name, words, stage.circle)
    const taken = cellOf.taken(stage)
    if (this.#isAllShares(stage)) {
      const of = [taken, cellOf.perBase(stage)]
      return this.#compute(name, words, 'share', of, ([need, each]) => (each === 0 ? 0 : need! / each!))
    }
    const fixed = this.#fixed(stage.lines)
    const of = [taken, ...fixed, ...this.#slopes(stage.lines)]
    this.#compute(name, words, `rest ${fixed.length}`, of, ([need, ...values]) => {
      const a = values.slice(0, fixed.length).reduce((sum, v) => sum + v, 0)
      const b = values.slice(fixed.length).reduce((sum, v) => sum + v, 0)
      if (need === 0 || b === 0) return 0
      if (need! >= a) return (need! - a) / b
      const message = `Later stages take less of ${stage.stage.name} than its lines in grams weigh alone.`
      return { kind: 'domain', message, origin: name }
    })
  }

  /** What each line brings of a count: its ingredient's, or the share of the stage it takes. */
  #terms(lines: readonly LinePlan[], count: Count, weight: (line: LinePlan) => string): Term[] {
    return lines.flatMap((line): Term[] => {
      const { source, brings } = line
      if (!source) return brings[count] ? [[weight(line), brings[count]!]] : []
      const carried = count === 'prefermented' && source.ferments ? 'flour' : count
      return source.circle || this.#has.get(source)?.has(carried)
        ? [[weight(line), cellOf.share(source, carried)]]
        : []
    })
  }

  #totals(stage: StagePlan): void {
    const { name } = stage.stage
    const shared = this.#isAllShares(stage)
    const per = shared ? cellOf.perBase(stage) : cellOf.stageWeight(stage)
    for (const count of counts) {
      this.#dot(
        cellOf.count(stage, count),
        `${count} of ${name}`,
        this.#terms(stage.lines, count, cellOf.weight),
      )
      if (stage.isFinal && !stage.takenBy.length) continue
      const words = `share of ${count} in ${name}`
      if (stage.circle) this.#fail(cellOf.share(stage, count), words, stage.circle)
      if (stage.circle || !this.#has.get(stage)?.has(count)) continue
      let total = cellOf.count(stage, count)
      if (shared) {
        total = `${total} a gram of base`
        const lines = stage.lines.filter(l => this.splits.get(l)!.slope !== 'none')
        this.#dot(total, words, this.#terms(lines, count, cellOf.slope))
      }
      this.#compute(cellOf.share(stage, count), words, 'share', [total, per], ([c, w]) =>
        w === 0 ? 0 : c! / w!,
      )
    }
    if (!stage.isFinal) return
    for (const kind of ['flour', 'water'] as const) {
      const own = stage.lines.filter(l => l.countsAs?.kind === kind).map(cellOf.weight)
      this.#sum(cellOf.lines(stage, kind), `${kind} lines of ${name}`, own)
    }
    const levain = stage.lines.filter(l => l.source?.ferments || l.countsAs?.kind === 'starter')
    this.#sum(cellOf.lines(stage, 'levain'), `levain in ${name}`, levain.map(cellOf.weight))
  }

  /** The part of a stage, as written, that ends in the dough. */
  #carried(stage: StagePlan): void {
    const words = `part of ${stage.stage.name} in the dough`
    if (stage.isFinal) return this.#input(cellOf.carried(stage), words, 1)
    if (stage.circle) return this.#fail(cellOf.carried(stage), words, stage.circle)
    const of = stage.takenBy.flatMap(l => [cellOf.weight(l), cellOf.carried(l.stage)])
    this.#compute(
      cellOf.carried(stage),
      words,
      'carried',
      [cellOf.stageWeight(stage), ...of],
      ([whole, ...taken]) => {
        let into = 0
        for (let i = 0; i < taken.length; i += 2) into += taken[i]! * taken[i + 1]!
        return whole === 0 ? 0 : into / whole!
      },
    )
  }

  #readings(): void {
    const { final, formula } = this.#outline
    this.#input(cellOf.flourWeight, 'flour weight', formula.flourWeight || usualFlourWeight)
    const total = (count: Count) => cellOf.count(final, count)
    const reading = (name: string, words: string, text: string, of: Readonly<Record<string, string>>) =>
      this.#expression(cellOf.reading(name), words, parse(text), n => of[n]!)
    const overFlour = (name: string, words: string, count: Count) =>
      reading(name, words, 'part / flour', { part: total(count), flour: total('flour') })
    overFlour('trueHydration', 'true hydration', 'water')
    overFlour('moistureHydration', 'moisture hydration', 'moisture')
    overFlour('salt', 'salt', 'salt')
    overFlour('prefermentedFlour', 'prefermented flour', 'prefermented')
    for (const count of ['fat', 'sugar', 'egg', 'milk'] as const) overFlour(count, count, count)
    const flour = cellOf.lines(final, 'flour')
    reading('listedHydration', 'listed hydration', 'water / flour', {
      water: cellOf.lines(final, 'water'),
      flour,
    })
    reading('levainOnFlour', 'levain on flour', 'levain / flour', {
      levain: cellOf.lines(final, 'levain'),
      flour,
    })
    reading('totalFlour', 'total flour', 'flour', { flour: total('flour') })
    reading('totalWater', 'total water', 'water', { water: total('water') })
    reading('doughWeight', 'dough weight', 'dough', { dough: cellOf.stageWeight(final) })
    this.#wholeDough()
  }

  /** Each ingredient's weight through all stages over all flour, on the last of its lines. */
  #wholeDough(): void {
    for (const [last, lines] of linesByIngredient(this.#outline)) {
      const of = [
        cellOf.count(this.#outline.final, 'flour'),
        ...lines.flatMap(l => [cellOf.weight(l), cellOf.carried(l.stage)]),
      ]
      this.#compute(
        cellOf.wholeDough(last),
        `${last.line.ingredient} in the whole dough`,
        'whole',
        of,
        ([flour, ...parts]) => {
          let weight = 0
          for (let i = 0; i < parts.length; i += 2) weight += parts[i]! * parts[i + 1]!
          return weight / flour!
        },
      )
    }
  }
}

/** The lines of each ingredient through all stages, by the last of them. */
function linesByIngredient(outline: Outline): Map<LinePlan, LinePlan[]> {
  const groups = new Map<string, LinePlan[]>()
  for (const stage of outline.stages) {
    for (const line of stage.lines) {
      if (line.source || !line.line.ingredient) continue
      const key = line.ingredient?.id ?? line.line.ingredient.toLowerCase()
      groups.set(key, [...(groups.get(key) ?? []), line])
    }
  }
  return new Map([...groups.values()].map(lines => [lines.at(-1)!, lines]))
}

/** The cells that work a formula out. */
export const planCells = (outline: Outline): CellPlan => new Builder(outline)
