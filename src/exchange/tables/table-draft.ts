import { gramsPerMeasure } from '../../dough/amounts/measures.js'
import type { Measure } from '../../dough/amounts/units.js'
import type { CountsAs, Problem } from '../../dough/document/formula.js'
import { nameKey, newId } from '../../dough/document/formula.js'
import type { Ingredient, Larder } from '../../dough/document/larder.js'
import { guessCountsAs, isGrain } from '../../dough/larder/counts-as-guess.js'
import type { Quantity } from './cell-quantity.js'
import { type Sums, sumOf } from './sums.js'
import { folded, type totalOf } from './words.js'

/** A line as the table gives it: its weight and its percentage, where it has both. */
export interface ForeignLine {
  readonly id: string
  readonly row: number
  ingredient: string
  note: string
  weight: Quantity | undefined // grams, or a measure
  percent: Quantity | undefined
  readonly kind: CountsAs['kind'] | undefined // what it most likely counts as
  readonly grams: number | undefined // its weight where it gives one
  takes: ForeignStage | undefined // the earlier stage it is
}

export class ForeignStage {
  readonly id = newId()
  readonly lines: ForeignLine[] = []
  readonly #names = new Set<string>()
  hasTotal = false // one was printed below its lines
  #grams: number | undefined = 0
  #percent: number | undefined = 0
  #step = 0

  constructor(
    public name: string,
    readonly isNamed: boolean, // by the table
  ) {}

  add(line: ForeignLine): void {
    this.lines.push(line)
    this.#names.add(nameKey(line.ingredient))
    const { weight, percent } = line
    this.#grams = sumOf([this.#grams, weight?.grams])
    this.#percent = sumOf([this.#percent, percent?.percent])
    this.#step += weight?.step ?? 0
  }

  has(ingredient: string): boolean {
    return this.#names.has(nameKey(ingredient))
  }

  /** What its lines add to so far. */
  get sums(): Sums {
    return { grams: this.#grams, percent: this.#percent, step: this.#step }
  }
}

/** A total as printed, with what stood above it. */
export interface PrintedTotal {
  readonly row: number
  readonly label: string
  readonly of: NonNullable<ReturnType<typeof totalOf>>
  readonly stage: ForeignStage | undefined
  readonly heads: boolean // printed beside the name of its stage, before the lines
  readonly quantities: readonly Quantity[]
}

export class ForeignFormula {
  readonly id = newId()
  readonly stages: ForeignStage[] = []
  readonly #byName = new Map<string, ForeignStage>()
  readonly notes: string[] = []
  readonly totals: PrintedTotal[] = []
  #lines: readonly ForeignLine[] | undefined

  constructor(
    readonly name: string,
    readonly isNamed: boolean,
  ) {}

  /** The stage of this name, made where there is none. */
  stage(name: string): ForeignStage {
    return this.find(name) ?? this.begin(name, true)
  }

  find(name: string): ForeignStage | undefined {
    return this.#byName.get(nameKey(name))
  }

  begin(name: string, isNamed: boolean): ForeignStage {
    const stage = new ForeignStage(name, isNamed)
    this.stages.push(stage)
    if (isNamed) this.#byName.set(nameKey(name), stage)
    return stage
  }

  /** All lines, once they are read. */
  get lines(): readonly ForeignLine[] {
    this.#lines ??= this.stages.flatMap(stage => stage.lines)
    return this.#lines
  }
}

/** What an ingredient most likely counts as, for comparing sums only. */
export function kindOf(name: string, larder: Larder): CountsAs['kind'] | undefined {
  let known = kinds.get(larder)
  if (!known) {
    known = new Map()
    kinds.set(larder, known)
  }
  if (known.has(name)) return known.get(name)
  const kind = larder.find(name)?.countsAs.kind ?? guessCountsAs(name)
  if (known.size > 5000) known.clear()
  known.set(name, kind)
  return kind
}
const kinds = new WeakMap<Larder, Map<string, CountsAs['kind'] | undefined>>()

/** Is a name that stands by itself an ingredient's, and no bread's: `Rye` may be either. */
export const isIngredient = (name: string, larder: Larder): boolean =>
  kindOf(name, larder) !== undefined && (!isGrain(name) || larder.find(name) !== undefined)

/** The same larder, which need not look a name up that it has just been asked for. */
export function remembering(larder: Larder): Larder {
  const known = new Map<string, Ingredient | undefined>()
  return {
    ingredients: larder.ingredients,
    find(name) {
      if (known.has(name)) return known.get(name)
      const found = larder.find(name)
      if (known.size > 5000) known.clear()
      known.set(name, found)
      return found
    },
  }
}

/** Grams a quantity of an ingredient weighs, where that is known. */
export function gramsOf(quantity: Quantity | undefined, name: string, larder: Larder): number | undefined {
  if (quantity?.grams !== undefined) return quantity.grams
  if (!quantity?.measure) return undefined
  const ingredient = larder.find(name)
  if (!ingredient) {
    const ml = { ml: 1, l: 1000 }[quantity.measure.unit]
    return ml !== undefined && kindOf(name, larder) === 'water' ? quantity.measure.count * ml : undefined
  }
  const each = gramsPerMeasure(ingredient, quantity.measure.unit as Measure)
  return each === undefined ? undefined : each * quantity.measure.count
}

/** Do two names mean one thing, accents, case and signs aside? */
export const alike = (a: string, b: string): boolean => wordsOf(a) === wordsOf(b)
export const wordsOf = (name: string): string =>
  folded(name)
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()

/** What is told while a table is read. */
export class Told {
  readonly problems: Problem[] = []
  say(
    severity: Problem['severity'],
    row: number | undefined,
    message: string,
    where: Problem['where'] = {},
    code = 'tableProblem',
  ): void {
    const at = { ...(row === undefined ? {} : { row }), ...where }
    this.problems.push({ where: at, code, message, severity })
  }
}

/** `3`, `3 and 4`, `3, 4, 5 and 12 more`. */
export function rowsWords(rows: readonly number[]): string {
  const shown = rows.length > 9 ? rows.slice(0, 8) : rows
  const rest = rows.length - shown.length
  const last = rest > 0 ? `${rest} more` : String(shown.at(-1))
  const first = rest > 0 ? shown : shown.slice(0, -1)
  return first.length === 0 ? last : `${first.join(', ')} and ${last}`
}
export const rowOrRows = (rows: readonly number[]): string =>
  `${rows.length === 1 ? 'Row' : 'Rows'} ${rowsWords(rows)}`
