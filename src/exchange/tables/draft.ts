import type { CountsAs, Problem } from '../../dough/document/formula.js'
import { nameKey, newId } from '../../dough/document/formula.js'
import { largest } from '../../dough/document/largest.js'
import { tokensOf } from '../../dough/lexicon/text-tokens.js'
import { agreement, ranks } from '../recipe/amount.js'
import type { Quantity } from '../values/amount-cells.js'
import type { Source } from '../values/earlier-stages.js'
import { isShort } from '../values/line-names.js'
import { kindOf, type StageKind } from '../values/stage-kinds.js'
import { isWithin, sumOf } from '../values/written-weights.js'
import { type AmountCell, gramsOf, type Names, type Row } from './row-features.js'
import { type Reason, severityOf, tableReason } from './words.js'

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
  readonly lacksAmount?: boolean
  readonly isAdded?: true // no row says it
}

/** Is a printed figure what lines add to, as far as its digits go? Of very many lines it is not asked. */
export function isSumOf(
  lines: readonly Partial<Pick<DraftLine, 'weight' | 'percent'>>[],
  { grams, percent, step }: Quantity,
): boolean {
  if (lines.length > 500) return false
  const close = (a: number | undefined, b: number | undefined, within: number) =>
    a !== undefined && b !== undefined && a > 0 && isWithin(a - b, within)
  const steps = sumOf(lines.map(({ weight }) => weight?.step ?? 0))!
  return (
    close(grams, sumOf(lines.map(({ weight }) => weight?.grams)), Math.max(step, steps) / 2) ||
    close(percent, sumOf(lines.map(line => line.percent?.percent)), step)
  )
}

export class DraftStage implements Source<DraftLine> {
  readonly id = newId()
  readonly lines: DraftLine[] = []
  readonly #names = new Set<string>()
  hasTotal = false // one was printed below its lines

  constructor(
    public name: string,
    readonly isNamed: boolean, // by the table
  ) {}

  add(line: DraftLine): void {
    this.lines.push(line)
    this.#names.add(nameKey(line.ingredient))
  }

  has(ingredient: string): boolean {
    return this.#names.has(nameKey(ingredient))
  }

  get kind(): StageKind | undefined {
    return kindOf(tokensOf(this.name))
  }

  get grams(): number | undefined {
    return sumOf(this.lines.map(line => line.grams))
  }

  get flours(): readonly DraftLine[] {
    return this.lines.filter(line => line.kind === 'flour')
  }

  /** What the percentages of its flours add to, as a fraction of 1; undefined where one has none. */
  get flourShare(): number | undefined {
    return sumOf(this.flours.map(line => line.percent?.percent))
  }
}

/** A total as printed, with what stood above it. */
export interface PrintedTotal {
  readonly row: number
  readonly label: string
  readonly stage: DraftStage | undefined
  readonly heads: boolean // printed beside the name of its stage, before the lines
  readonly quantities: readonly Quantity[]
}

export class DraftFormula {
  readonly id = newId()
  readonly stages: DraftStage[] = []
  readonly notes: string[] = []
  readonly totals: PrintedTotal[] = []
  count = 0 // of its lines; what it has past the most that are kept is not made
  readonly #byName = new Map<string, DraftStage>()

  constructor(readonly name: string) {}

  get isTooLong(): boolean {
    return this.count > largest.lines
  }

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

  get lines(): readonly DraftLine[] {
    return this.stages.flatMap(stage => stage.lines)
  }
}

/** What is told while a table is read. */
export class Told {
  readonly problems: Problem[] = []

  /** With the row that it is of, whether its sentence names it or not. */
  say(reason: Reason & { readonly row?: number }, formula?: string): void {
    const { row, ...rest } = reason
    const where = { ...(row === undefined ? {} : { row }), ...(formula === undefined ? {} : { formula }) }
    this.problems.push({ ...rest, where, severity: severityOf(reason), message: tableReason(reason).message })
  }
}

const order = ['grams', 'kilograms', 'amount', 'pounds', 'ounces', 'percent'] as const

type ReadCell = AmountCell & { readonly read: Quantity }
const isRead = (amount: AmountCell): amount is ReadCell => amount.read.is === 'quantity'

const mostEggs = 24
/** A cell that takes all there is of a stage. */
const wholly =
  /^\s*(?:all(?: of (?:it|them|the .{1,40}))?|the whole|whole|entire|everything|tout|toute|le tout|la totalité|en entier|alles)\s*$/i

/** Turns the amounts of a row into those of a line, and tells of what was doubtful. */
export class LineMaker {
  readonly #bare: number[] = []

  constructor(
    readonly names: Names,
    readonly told: Told,
    readonly isMarkSure: boolean, // the table shows which decimal sign it uses
  ) {}

  line(row: Row): DraftLine {
    const { row: number, name: said, note } = row
    const of = { row: number, name: said }
    const notes = note === '' ? [] : [note]
    const rank = ({ read: { unit }, use }: ReadCell) => (ranks[unit] ?? 0) - order.indexOf(use) / 10
    const read = row.amounts.filter(isRead).sort((a, b) => rank(b) - rank(a))
    for (const { cell, read: not } of row.amounts) {
      if (not.is === 'quantity') continue
      if (wholly.test(cell)) continue
      notes.push(cell)
      this.told.say({ code: 'unreadAmount', ...of, cell, why: not.why, isOnly: read.length === 0 })
    }
    const weights = read.filter(cell => cell.read.percent === undefined)
    const percent = read.find(cell => !weights.includes(cell))?.read
    const first = this.#weight(row, weights)
    const isOfAmounts = read.some(({ use, read: one }) => one === first && use === 'amount')
    const weight = first && isOfAmounts ? this.#counted(row, first) : first
    for (const quantity of [weight, percent]) if (quantity) this.#tell(row, quantity, notes)
    if (weight?.bare && read.some(({ use, read: one }) => one === weight && use === 'amount'))
      this.#bare.push(number)
    const ingredient = this.#nameOf(said, notes)
    if (weight?.bare && this.names.find(ingredient)?.kind === 'egg' && (weight.grams ?? 0) <= mostEggs)
      this.told.say({ code: 'countedEggs', ...of, amount: weight.text, pieces: weight.grams ?? 0 })
    const kind = this.names.kind(ingredient)
    if (!kind && !this.names.find(ingredient) && isShort(ingredient))
      this.told.say({ code: 'nameIsShort', row: number, name: ingredient })
    const grams = gramsOf(weight, ingredient, this.names)
    const texts = { ingredient, note: [...new Set(notes)].join('; ') }
    const lacksAmount = row.amounts.every(({ cell, read: one }) => one.is !== 'quantity' && wholly.test(cell))
    return { id: newId(), row: number, ...texts, weight, percent, kind, grams, takes: undefined, lacksAmount }
  }

  /** `Egg | 1` among amounts with their units is one egg. */
  #counted({ row, name }: Row, weight: Quantity): Quantity {
    const known = this.names.find(name) ?? this.names.find(this.names.named(name)?.ingredient ?? '')
    if (!weight.bare || known?.kind !== 'egg' || weight.value > mostEggs) return weight
    this.told.say({ code: 'readAsCounted', row, name, pieces: weight.value })
    const { grams, ...rest } = weight
    return { ...rest, text: `${weight.value} each`, unit: 'each', step: 1, bare: false }
  }

  /** `Water (28 °C)` is water, where the larder knows it only so; what else is said goes into the note. */
  #nameOf(said: string, notes: string[]): string {
    const name = said.replace(/^[•·*–—-]\s+/, '')
    const known = this.names.find(name) ? undefined : this.names.named(name)
    if (known?.note) notes.unshift(known.note)
    return known?.ingredient ?? name
  }

  #tell({ row, name }: Row, { remark, text, doubt }: Quantity, notes: string[]): void {
    if (remark) {
      notes.push(remark)
      if (text !== remark) this.told.say({ code: 'readAs', row, name, cell: remark, amount: text })
    }
    if (doubt && (doubt.code === 'wholeAndPart' || !this.isMarkSure)) this.told.say({ ...doubt, row, name })
  }

  /** The finest of several weights and measures; the others are compared with it. */
  #weight({ row, name }: Row, [first, ...others]: readonly ReadCell[]): Quantity | undefined {
    if (!first) return undefined
    const ounces = others.find(({ use }) => use === 'ounces')?.read
    // whole pounds, and the ounces over them beside: `2 | 3` is 2 lb 3 oz
    if (/^\d+ lb$/.test(first.read.text) && ounces && Number.parseFloat(ounces.text) < 16) {
      const grams = first.read.grams! + (ounces.grams ?? 0)
      return { ...first.read, text: `${first.read.text} + ${ounces.text}`, grams, step: ounces.step }
    }
    for (const { cell, read } of others) {
      const [a, b] = [gramsOf(first.read, name, this.names), gramsOf(read, name, this.names)]
      const within = read.unit === first.read.unit ? 0 : agreement
      if (a === undefined || b === undefined || Math.abs(b / a - 1) * 100 <= within) continue
      if (isWithin(a - b, (first.read.step + read.step) / 2)) continue
      this.told.say({ code: 'twoWeights', row, name, first: first.cell, other: cell, a, b })
    }
    return first.read
  }

  finish(): void {
    if (this.#bare.length > 0) this.told.say({ code: 'withoutUnits', rows: this.#bare, row: this.#bare[0]! })
  }
}
