import type { CountsAs, Problem } from '../../dough/document/formula.js'
import { nameKey, newId } from '../../dough/document/formula.js'
import type { Quantity } from './cells.js'
import { quantitiesOf, type Row } from './row-features.js'
import type { totalOf } from './vocabulary.js'
import { inWords, type Reason, severityOf } from './words.js'

/** A line as the table gives it: its weight and its percentage, where it has both. */
export interface DraftLine {
  readonly id: string
  readonly row: number
  ingredient: string
  note: string
  weight: Quantity | undefined // grams, or a measure
  percent: Quantity | undefined
  readonly kind: CountsAs['kind'] | undefined // what it most likely counts as
  readonly grams: number | undefined // its weight where it gives one
  takes: DraftStage | undefined // the earlier stage it is
}

/** What lines add to, in grams and as a fraction of 1; undefined where one of them has no such figure. */
export class Sums {
  grams: number | undefined = 0
  percent: number | undefined = 0
  step = 0 // the last digits of the weights, added

  add(weight: Quantity | undefined, percent: Quantity | undefined): void {
    this.grams = sumOf([this.grams, weight?.grams])
    this.percent = sumOf([this.percent, percent?.percent])
    this.step += weight?.step ?? 0
  }

  /** Is a printed figure what the lines add to, as far as its digits go? */
  agreeWith(printed: Quantity): boolean {
    const close = (a: number | undefined, b: number | undefined, within: number) =>
      a !== undefined && b !== undefined && a > 0 && isWithin(a - b, within)
    return (
      close(printed.grams, this.grams, Math.max(printed.step, this.step) / 2) ||
      close(printed.percent, this.percent, printed.step)
    )
  }

  /** What the lines from here to the end of their block add to. */
  static ofBlock(rows: readonly Row[], from: number): Sums {
    const sums = new Sums()
    for (let at = from; rows[at]?.is === 'line'; at++) {
      const quantities = quantitiesOf(rows[at]!)
      sums.add(
        quantities.find(({ grams }) => grams !== undefined),
        quantities.find(({ percent }) => percent !== undefined),
      )
    }
    return sums
  }
}

export function sumOf(values: readonly (number | undefined)[]): number | undefined {
  let sum = 0
  for (const value of values) {
    if (value === undefined) return undefined
    sum += value
  }
  return sum
}

/** Whether a difference is no more than this, as far as binary fractions tell. */
export const isWithin = (difference: number, most: number): boolean =>
  Math.abs(difference) <= most * (1 + 1e-9) + 1e-9

export class DraftStage {
  readonly id = newId()
  readonly lines: DraftLine[] = []
  readonly sums = new Sums()
  readonly #names = new Set<string>()
  hasTotal = false // one was printed below its lines

  constructor(
    public name: string,
    readonly isNamed: boolean, // by the table
  ) {}

  add(line: DraftLine): void {
    this.lines.push(line)
    this.#names.add(nameKey(line.ingredient))
    this.sums.add(line.weight, line.percent)
  }

  has(ingredient: string): boolean {
    return this.#names.has(nameKey(ingredient))
  }

  get flours(): readonly DraftLine[] {
    return this.lines.filter(line => line.kind === 'flour')
  }
}

/** A total as printed, with what stood above it. */
export interface PrintedTotal {
  readonly row: number
  readonly label: string
  readonly of: NonNullable<ReturnType<typeof totalOf>>
  readonly stage: DraftStage | undefined
  readonly heads: boolean // printed beside the name of its stage, before the lines
  readonly quantities: readonly Quantity[]
}

export class DraftFormula {
  readonly id = newId()
  readonly stages: DraftStage[] = []
  readonly notes: string[] = []
  readonly totals: PrintedTotal[] = []
  readonly #byName = new Map<string, DraftStage>()
  #lines: readonly DraftLine[] | undefined

  constructor(readonly name: string) {}

  /** The stage of this name, made where there is none. */
  stage(name: string): DraftStage {
    return this.find(name) ?? this.begin(name, true)
  }

  find(name: string): DraftStage | undefined {
    return this.#byName.get(nameKey(name))
  }

  begin(name: string, isNamed: boolean): DraftStage {
    const stage = new DraftStage(name, isNamed)
    this.stages.push(stage)
    if (isNamed) this.#byName.set(nameKey(name), stage)
    return stage
  }

  /** All lines, once they are read. */
  get lines(): readonly DraftLine[] {
    this.#lines ??= this.stages.flatMap(stage => stage.lines)
    return this.#lines
  }
}

/** What is told while a table is read. */
export class Told {
  readonly problems: Problem[] = []

  say(reason: Reason, row?: number, formula?: string): void {
    const where = { ...(row === undefined ? {} : { row }), ...(formula === undefined ? {} : { formula }) }
    this.problems.push({ ...reason, where, severity: severityOf(reason), message: inWords(reason) })
  }

  /** Of a row, which the reason names. */
  sayOf(reason: Reason & { readonly row: number }): void {
    this.say(reason, reason.row)
  }
}
