import type { Worded } from '../../engine/index.js'
import type { Meant } from '../outline/meant.js'
import { cellOf, meaningOf } from '../outline/names.js'
import { nearName } from '../outline/near-names.js'
import type { LinePlan, Outline, StagePlan } from '../outline/outline.js'
import type { Half, Split } from '../outline/split.js'
import { takingAll } from '../outline/taking-all.js'
import type { CellWriter } from './cell-writer.js'
import { cellProblem } from './words.js'

/** The lines of a formula as cells: their weights, and their parts by what moves them. */
export class LineCells {
  constructor(
    private readonly out: CellWriter,
    private readonly outline: Outline,
    private readonly splits: ReadonlyMap<LinePlan, Split>,
  ) {}

  /** Writes the cells of one line. The weight of a line that gives is left to the solving. */
  write(line: LinePlan): void {
    const words = `${line.line.ingredient || 'a line'} in ${line.stage.stage.name}`
    if (!line.gives) this.#weight(line, words)
    const { fixed, slope, by } = this.splits.get(line)!
    if (fixed !== 'none' && fixed !== 'weight')
      this.#half(line, cellOf.fixed(line), fixed, words, other => this.fixed(other)!)
    if (slope !== 'none') this.#half(line, cellOf.slope(line), slope, words, other => cellOf.slope(other))
    for (const [giving, half] of by) {
      if (half === 'one') this.out.input(cellOf.by(line, giving), words, 1)
      else
        this.#half(
          line,
          cellOf.by(line, giving),
          half,
          `${words}, a gram of ${giving.line.ingredient}`,
          other => cellOf.by(other, giving),
        )
    }
    this.out.compute(
      cellOf.batch(line),
      `${line.line.ingredient || 'a line'} in the batch`,
      'times',
      [cellOf.weight(line), cellOf.times(line.stage)],
      ([w, k]) => w! * k!,
    )
  }

  /** The cell of a line's part that nothing moves; undefined where it has none. */
  fixed(line: LinePlan): string | undefined {
    const { fixed } = this.splits.get(line)!
    return fixed === 'none' ? undefined : fixed === 'weight' ? cellOf.weight(line) : cellOf.fixed(line)
  }

  /** The cell of a line's part a gram of base; undefined where it has none. */
  slope(line: LinePlan): string | undefined {
    return this.splits.get(line)!.slope === 'none' ? undefined : cellOf.slope(line)
  }

  by(line: LinePlan, giving: LinePlan): string | undefined {
    return this.splits.get(line)!.by.has(giving) ? cellOf.by(line, giving) : undefined
  }

  #weight(line: LinePlan, words: string): void {
    const name = cellOf.weight(line)
    const { amount } = line
    if (!amount) return this.out.input(name, words, 0)
    if ('problem' in amount) return this.out.fail(name, words, this.#near(line) ?? amount.problem)
    const unknown = this.#unknownIn(line)
    if (unknown) return this.out.fail(name, words, unknown)
    if (amount.plain && !amount.typed.startsWith('-'))
      return this.out.expression(name, words, amount.expression, n => this.#cellNamed(n, line))
    const asTyped = cellOf.asTyped(line)
    this.out.expression(asTyped, words, amount.expression, n => this.#cellNamed(n, line))
    this.out.compute(name, words, 'not below nothing', [asTyped], ([weight]) => {
      if (weight! >= 0) return weight!
      return {
        kind: 'domain',
        ...cellProblem({ code: 'amountBelowNothing', weight: weight! }),
        origin: name,
      }
    })
  }

  #unknownIn(line: LinePlan): Worded | undefined {
    if (!line.amount || 'problem' in line.amount) return undefined
    for (const name of line.amount.expression.names) {
      const meant = meaningOf(name, line, this.outline)
      if (meant.kind === 'unknown') return this.#near(line) ?? meant.problem
      const why = meant.kind === 'all' && takingAll!.isOfAnySize(meant.stage, this.splits)
      if (why) return why
    }
    return undefined
  }

  #near = ({ line, stage }: LinePlan) => this.outline.tooMuch ?? nearName(line.amount, this.outline, stage)

  #half(line: LinePlan, name: string, half: Half, words: string, of: (line: LinePlan) => string): void {
    const problem = 'problem' in half ? half.problem : this.#unknownIn(line)
    if (problem) return this.out.fail(name, words, problem)
    const terms = 'terms' in half ? half.terms : []
    const [only] = terms
    if (only && terms.length === 1 && !only.times)
      return this.out.expression(name, words, only.expression, n => this.#cellNamed(n, line))
    this.out.dot(
      name,
      words,
      terms.map(({ expression, times }, i) => {
        const at = `${name} ${i}`
        this.out.expression(at, words, expression, n => this.#cellNamed(n, line))
        return [at, times ? of(times) : 1]
      }),
    )
  }

  #cellNamed = (name: string, line: LinePlan): string => {
    const meant = meaningOf(name, line, this.outline)
    return meant.kind === 'all'
      ? takingAll!.write(this.out, line)
      : cellMeant(this.out, meant, name, line.stage)
  }
}

/** The cell that a name is taken from; sums and constants are made on the way. `stage` is where `base` is read. */
export function cellMeant(out: CellWriter, meant: Meant, name: string, stage: StagePlan): string {
  switch (meant.kind) {
    case 'base':
      return cellOf.base(stage)
    case 'unit':
      out.common(meant.name, () => out.input(meant.name, meant.name, meant.grams))
      return meant.name
    case 'lines':
    case 'far lines': {
      if (meant.lines.length === 1) return cellOf.weight(meant.lines[0]!)
      const sum = cellOf.named(meant.lines[0]!.stage, name.split('.').at(-1)!)
      out.common(sum, () => out.sum(sum, `all ${name}`, meant.lines.map(cellOf.weight)))
      return sum
    }
    case 'count':
      return cellOf.count(meant.stage, meant.count)
    case 'stage weight':
      return cellOf.stageWeight(meant.stage)
    case 'stage base':
      return cellOf.base(meant.stage)
    case 'jotting':
      return cellOf.jotting(meant.name)
    case 'reading':
      return cellOf.reading(meant.name)
    case 'all':
    case 'unknown':
      throw new RangeError(name)
  }
}
