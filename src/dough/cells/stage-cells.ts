import { cellOf } from '../outline/names.js'
import {
  type Counted,
  carriedAs,
  inOrder,
  isSoaker,
  type LinePlan,
  lineBrings,
  type Outline,
  type StagePlan,
} from '../outline/outline.js'
import type { Split } from '../outline/split.js'
import type { CellWriter, Term } from './cell-writer.js'
import type { LineCells } from './line-cells.js'
import { cellProblem } from './words.js'

const isThere = (cell: string | undefined): cell is string => cell !== undefined
const total = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0)

/** The stages of a formula as cells: base, weight, what each brings, and how much of it ends in the dough. */
export class StageCells {
  readonly #has = new Map<StagePlan, Set<Counted>>() // the counts a stage can bring at all

  constructor(
    private readonly out: CellWriter,
    private readonly outline: Outline,
    private readonly splits: ReadonlyMap<LinePlan, Split>,
    private readonly lines: LineCells,
  ) {
    for (const stage of inOrder(outline.stages)) this.#has.set(stage, this.#countsOf(stage))
  }

  /** Its base is not set by its own lines. */
  isFree = (stage: StagePlan): boolean =>
    stage.base.every(l => this.splits.get(l)!.fixed === 'none' && this.splits.get(l)!.by.size === 0)

  /** Lines that give move its base. */
  isMoved = (stage: StagePlan): boolean => stage.base.some(l => this.splits.get(l)!.by.size > 0)

  /** Every line is so much a gram of base, so that the stage's make-up does not depend on how much is made. */
  #isAllShares(stage: StagePlan): boolean {
    return (
      !stage.isFinal && this.isFree(stage) && stage.lines.every(l => this.splits.get(l)!.fixed === 'none')
    )
  }

  #countsOf(stage: StagePlan): Set<Counted> {
    const found = new Set<Counted>()
    for (const line of stage.lines) {
      for (const count of this.outline.counted) if (lineBrings(line, count)) found.add(count)
      if (!line.source) continue
      for (const count of this.#has.get(line.source) ?? []) found.add(count)
      if (line.source.ferments) found.add('prefermented')
      if (isSoaker(line.source) && found.has('water')) found.add('soaked')
    }
    return found
  }

  /** Writes the cells of a stage; those of its lines are written by themselves. */
  write(stage: StagePlan): void {
    const { name } = stage.stage
    this.out.sum(cellOf.stageWeight(stage), `weight of ${name}`, stage.lines.map(cellOf.weight))
    this.out.sum(cellOf.taken(stage), `what later stages take of ${name}`, stage.takenBy.map(cellOf.weight))
    if (this.#isAllShares(stage)) {
      const slopes = stage.lines.map(this.lines.slope, this.lines).filter(isThere)
      this.out.sum(cellOf.perBase(stage), `${name} a gram of its base`, slopes)
    }
    if (!this.isMoved(stage)) this.#base(stage)
    this.#totals(stage)
    this.#carried(stage)
    this.out.compute(
      cellOf.build(stage),
      `${name} in the batch`,
      'times',
      [cellOf.stageWeight(stage), cellOf.times(stage)],
      ([w, k]) => w! * k!,
    )
  }

  /** F = Σa ÷ (1 − Σb); free where Σa is nothing: the flour weight, or what makes just what later stages take. */
  #base(stage: StagePlan): void {
    const name = cellOf.base(stage)
    const words = stage.baseIsFlour ? `flour of ${stage.stage.name}` : `base of ${stage.stage.name}`
    if (this.isFree(stage)) return this.#freeBase(stage, name, words)
    const { fixed, slopes } = this.#parts(stage.base)
    const set = stage.isFinal ? [cellOf.flourWeight] : []
    const how = `base ${fixed.length} ${set}`
    this.out.compute(name, words, how, [...fixed, ...set, ...slopes], values => {
      const a = total(values.slice(0, fixed.length))
      const b = total(values.slice(fixed.length + set.length))
      // Where percentages alone are 100 % or more, grams come on top: of the flour weight, or of what they are themselves.
      return a === 0 ? 0 : 1 - b > 1e-12 ? a / (1 - b) : set.length ? values[fixed.length]! : a
    })
  }

  #parts(lines: readonly LinePlan[]) {
    return {
      fixed: lines.map(this.lines.fixed, this.lines).filter(isThere),
      slopes: lines.map(this.lines.slope, this.lines).filter(isThere),
    }
  }

  #freeBase(stage: StagePlan, name: string, words: string): void {
    if (stage.isFinal) return this.out.compute(name, words, 'as', [cellOf.flourWeight], ([grams]) => grams!)
    if (stage.circle) return this.out.fail(name, words, stage.circle)
    const taken = cellOf.taken(stage)
    if (this.#isAllShares(stage)) {
      const of = [taken, cellOf.perBase(stage)]
      return this.out.compute(name, words, 'share', of, ([need, each]) => (each === 0 ? 0 : need! / each!))
    }
    const { fixed, slopes } = this.#parts(stage.lines)
    this.out.compute(
      name,
      words,
      `rest ${fixed.length} ${stage.stage.name}`,
      [taken, ...fixed, ...slopes],
      ([need, ...values]) => {
        const a = total(values.slice(0, fixed.length))
        const b = total(values.slice(fixed.length))
        if (need === 0 || b === 0) return 0
        if (need! >= a) return (need! - a) / b
        const why = cellProblem({ code: 'takenBelowGrams', stage: stage.stage.name })
        return { kind: 'domain', ...why, origin: name }
      },
    )
  }

  /** What each line brings of a count: its ingredient's, or the share of the stage it takes. */
  terms(lines: readonly LinePlan[], count: Counted, weight: (line: LinePlan) => string | undefined): Term[] {
    return lines.flatMap((line): Term[] => {
      const at = weight(line)
      if (at === undefined) return []
      const { source } = line
      const own = lineBrings(line, count)
      if (!source) return own ? [[at, own]] : []
      const carried = carriedAs(source, count)
      return source.circle || this.#has.get(source)?.has(carried) ? [[at, cellOf.share(source, carried)]] : []
    })
  }

  #totals(stage: StagePlan): void {
    const { name } = stage.stage
    const shared = this.#isAllShares(stage)
    const per = shared ? cellOf.perBase(stage) : cellOf.stageWeight(stage)
    for (const count of this.outline.counted) {
      const words = `${count} of ${name}`
      // A stage that takes one that is made of itself has no counts to go by: all its terms say why.
      const canBring = this.#has.get(stage)?.has(count) ?? true
      const brought = canBring ? this.terms(stage.lines, count, cellOf.weight) : []
      this.out.dot(cellOf.count(stage, count), words, brought)
      if (stage.isFinal && !stage.takenBy.length) continue
      if (stage.circle) this.out.fail(cellOf.share(stage, count), `share of ${words}`, stage.circle)
      if (stage.circle || !this.#has.get(stage)?.has(count)) continue
      let sum = cellOf.count(stage, count)
      if (shared) {
        sum = `${sum} a gram of base`
        this.out.dot(
          sum,
          words,
          this.terms(stage.lines, count, line => this.lines.slope(line)),
        )
      }
      this.out.compute(cellOf.share(stage, count), `share of ${words}`, 'share', [sum, per], ([c, w]) =>
        w === 0 ? 0 : c! / w!,
      )
    }
    if (!stage.isFinal) return
    for (const kind of ['flour', 'water', 'levain'] as const) {
      const own = stage.lines.filter(l => isOwn(l, kind)).map(cellOf.weight)
      this.out.sum(cellOf.lines(stage, kind), `${kind} lines of ${name}`, own)
    }
  }

  /** The part of a stage, as written, that ends in the dough. */
  #carried(stage: StagePlan): void {
    const words = `part of ${stage.stage.name} in the dough`
    const name = cellOf.carried(stage)
    if (stage.isFinal) return this.out.input(name, words, 1)
    if (stage.circle) return this.out.fail(name, words, stage.circle)
    const of = stage.takenBy.flatMap(l => [cellOf.weight(l), cellOf.carried(l.stage)])
    this.out.compute(name, words, 'carried', [cellOf.stageWeight(stage), ...of], ([whole, ...taken]) => {
      let into = 0
      for (let i = 0; i < taken.length; i += 2) into += taken[i]! * taken[i + 1]!
      return whole === 0 ? 0 : into / whole!
    })
  }
}

/** The final dough's own flour and water lines, and its lines of levain: fermenting stages and starters. */
export function isOwn(line: LinePlan, kind: 'flour' | 'water' | 'levain'): boolean {
  if (kind !== 'levain') return line.countsAs?.kind === kind
  return line.source?.ferments === true || line.countsAs?.kind === 'starter'
}
