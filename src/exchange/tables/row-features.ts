import { gramsIn } from '../../dough/amounts/measures.js'
import type { Larder } from '../../dough/document/larder.js'
import { guessCountsAs, isGrain } from '../../dough/larder/counts-as-guess.js'
import { gaps } from '../csv/any-cells.js'
import { type CellRead, footnotes, type Quantity, readCell } from '../values/amount-cells.js'
import { folded, isStageName, type Label, labelOf, onceEach } from '../values/labels.js'
import { namedIn } from '../values/line-names.js'
import { type AmountUse, amountUses, isAmountUse, isBlankRow, unitOfUse } from './table-cells.js'
import type { ColumnUse, ForeignRow, Mapping } from './types.js'
import { isUnit, measureOf } from './vocabulary.js'
import type { Reason } from './words.js'

/** What is known of ingredients by their names. */
export type Names = ReturnType<typeof namesIn>

export function namesIn(larder: Larder) {
  const find = onceEach(name => larder.find(name))
  /** What it most likely counts as, for comparing sums only. */
  const kind = onceEach(name => find(name)?.countsAs.kind ?? guessCountsAs(name))
  /** An ingredient and no bread: `Rye` may be either. */
  const isIngredient = (name: string) =>
    kind(name) !== undefined && (!isGrain(name) || find(name) !== undefined)
  return { find, kind, isIngredient, named: onceEach(name => namedIn(name, larder)) }
}

/** Grams a quantity of an ingredient weighs, where that is known. */
export function gramsOf(quantity: Quantity | undefined, name: string, names: Names): number | undefined {
  const known = names.find(name) ?? (names.kind(name) === 'water' ? names.find('Water') : undefined)
  return quantity && gramsIn(quantity, known)
}

export interface AmountCell {
  readonly use: AmountUse
  readonly cell: string
  readonly read: Exclude<CellRead, { is: 'nothing' }>
}

/** A row by the uses of its columns, before its neighbours are looked at. */
export interface Row {
  readonly row: number
  readonly is:
    | 'not understood'
    | 'blank'
    | 'headings'
    | 'name' // a name and no amount
    | 'amounts' // amounts and no name
    | 'total'
    | 'fact' // tells of the dough, not of an ingredient
    | 'notes' // only in the column of notes
    | 'joined' // a name whose amounts stand in the row below
    | 'line'
  readonly name: string // the ingredient, or whatever stands in its place
  readonly label: Label // of the name
  readonly stage: string
  readonly formula: string
  readonly note: string
  readonly amounts: readonly AmountCell[]
  readonly cells: readonly string[]
  readonly why?: Reason
}

/** All that a row says. */
export const textOf = ({ cells }: { readonly cells: readonly string[] }): string =>
  cells.filter(Boolean).join(' | ')

export const quantitiesOf = ({ amounts }: Pick<Row, 'amounts'>): Quantity[] =>
  amounts.flatMap(({ read }) => (read.is === 'quantity' ? [read] : []))

/** Some columns of a table, read by themselves: those of one stage, or of one of the tables that stand side by side. */
export interface View {
  readonly uses: readonly ColumnUse[]
  readonly stage?: string // all its lines are of this
  readonly part: 'all' | 'stage' | 'table'
}

// `Yeast0.5%`, and `Soaker: 1 lb 8 oz` with a stage's name
const headed = /^([^:]*\p{L}:)\s+(\d.*)$/u
const glued = /^(\p{L}[\p{L} '’-]*\p{L})(\d+(?:[.,]\d+)?\s?(?:%|g|kg|oz|lbs?))$/u

/** Letters that are spoons in a column of units. */
const spoons: Readonly<Partial<Record<string, string>>> = { T: 'tbsp', t: 'tsp' }

/** Two units over two numbers. */
const pair = /^(%|k?g|oz|lbs?|ml|cups?) ?[/|] ?(%|k?g|oz|lbs?|ml|cups?)$/
const twoNumbers = /^([\d.,]+) ?[/|] ?([\d.,]+)$/

/** Reads rows by the uses of the columns, each text once. */
export class RowSorter {
  readonly #read: (cell: string, use: AmountUse) => CellRead
  readonly #headings: readonly string[]
  readonly #measures: readonly string[] // that headings name
  readonly #pairs: readonly (readonly string[] | undefined)[] // of units, `g / %`

  constructor(
    readonly mapping: Mapping,
    headings: readonly string[],
    readonly delimiter: string,
  ) {
    this.#headings = headings.map(folded)
    this.#pairs = headings.map(heading => pair.exec(folded(heading))?.slice(1))
    this.#measures = headings.map(heading => (heading.length > 60 ? '' : measureOf(heading)))
    const byUse = Object.fromEntries(
      amountUses.map(use => [use, onceEach(text => readCell(text, unitOfUse[use], mapping.decimal))]),
    )
    this.#read = (cell, use) => byUse[use]!(cell)
  }

  sort(foreign: ForeignRow, view: View): Row {
    const { row, cells, broken } = foreign
    const { length } = this.mapping.columns
    const texts = { name: '', label: labelOf(''), stage: '', formula: '', note: '' }
    const nothing = { row, cells, amounts: [], ...texts }
    const lost = (why: Reason): Row => ({ ...nothing, is: 'not understood', why })
    const notAsWide = { code: 'rowNotAsWide', row, count: cells.length, columns: length } as const
    if (broken) return lost(broken)
    if (isBlankRow(foreign)) return { ...nothing, is: 'blank' }
    const over = this.#underHeadings(cells, view)
    if (typeof over === 'object') return { ...nothing, is: 'name', ...over }
    if (over === '') return { ...nothing, is: 'headings' }
    if (over !== undefined) return { ...nothing, is: 'name', name: over, label: labelOf(over) }
    if (cells.length > length && cells.slice(length).some(Boolean)) return lost(notAsWide)
    const sorted = this.#sort(row, cells, view)
    return this.#mayBeShifted(sorted) ? lost(notAsWide) : sorted
  }

  /**
   * The headings again: `''`, or the name of a stage that stands among them, `Levain | kg | %` under `Dough | kg | %`.
   * Or a `stage` in the column of stages, `Dough | Ingredient | Grams`. Undefined where it is another row.
   */
  #underHeadings(cells: readonly string[], { uses }: View): string | { stage: string } | undefined {
    const own = uses.indexOf('ingredient')
    let [isAgain, others, stage] = [true, 0, '']
    for (let at = Math.max(cells.length, this.#headings.length) - 1; at >= 0; at--) {
      const heading = this.#headings[at] ?? ''
      const cell = folded(cells[at] ?? '')
      const isSame = cell === heading || (cell !== '' && heading.endsWith(`: ${cell}`))
      if (!isSame) isAgain = false
      if (at === own || uses[at] === 'leave out' || heading === '') continue
      if (!isSame && uses[at] === 'stage' && isStageName(cells[at] ?? '')) {
        stage = cells[at]!
        continue
      }
      if (!isSame && !(isAmountUse(uses[at]) && isUnit(cell))) return undefined
      others++
    }
    if (others === 0) return undefined
    if (stage !== '') return cells[own] && folded(cells[own]) === this.#headings[own] ? { stage } : undefined
    return isAgain ? '' : cells[own] || undefined
  }

  /** Between blanks an empty cell is not seen, so that a number without a unit may stand in the wrong column. */
  #mayBeShifted({ cells, is, amounts }: Row): boolean {
    if (this.delimiter !== gaps || (is !== 'line' && is !== 'total' && is !== 'amounts')) return false
    const last = this.mapping.columns.findLastIndex(use => use !== 'note')
    return cells.length <= last && amounts.some(({ read }) => read.is === 'quantity' && read.bare)
  }

  /** A name and its amount in one cell. */
  #apart(cell: string): { name: string; amount: string } | undefined {
    const [, name, amount] = glued.exec(cell) ?? headed.exec(cell) ?? []
    if (!name || !amount || this.#read(amount, 'amount').is !== 'quantity') return undefined
    return name.endsWith(':') && !labelOf(name).isStage ? undefined : { name, amount }
  }

  #sort(row: number, cells: readonly string[], { uses, stage: ofView, part }: View): Row {
    const at = { ingredient: '', stage: '', formula: '', note: '', unit: '' }
    const given: { use: AmountUse; cell: string; measure: string }[] = []
    for (const [column, said] of cells.entries()) {
      const use = uses[column]
      if (said === '' || use === undefined || use === 'leave out' || use === 'of a stage') continue
      const both = this.#pairs[column] && twoNumbers.exec(said)
      const cell = both
        ? `${both[1]} ${this.#pairs[column]![0]} / ${both[2]} ${this.#pairs[column]![1]}`
        : said
      if (isAmountUse(use)) given.push({ use, cell, measure: this.#measures[column] ?? '' })
      else at[use] = at[use] === '' ? said : `${at[use]}; ${said}`
    }
    const apart = given.length === 0 ? this.#apart(at.ingredient) : undefined
    const name = apart?.name ?? at.ingredient.replace(footnotes, '')
    if (apart) given.push({ use: 'amount', cell: apart.amount, measure: '' })
    const amounts: AmountCell[] = []
    for (const { use, cell: said, measure } of given) {
      const unit = at.unit || measure
      const hasUnit = use !== 'amount' || unit === '' || !/[\d¼-¾⅐-⅞]$/.test(said)
      // a `T` in a column of units can be nothing else
      const letter = hasUnit ? undefined : spoons[at.unit.replace(/\.$/, '')]
      const cell = hasUnit ? said : `${said} ${unit}`
      const asRead = this.#read(letter ? `${said} ${letter}` : cell, use)
      const read = letter && asRead.is === 'quantity' ? { ...asRead, remark: cell } : asRead
      // a 0 in the column of a stage says that it has none
      const isNone = part === 'stage' && read.is === 'quantity' && (read.grams ?? read.percent) === 0
      if (read.is === 'nothing' || isNone) continue
      amounts.push({ use, cell, read })
      for (const also of read.is === 'quantity' ? (read.also ?? []) : [])
        amounts.push({ use, cell, read: also })
    }
    const { formula, note } = at
    const stage = part === 'stage' && amounts.length === 0 ? '' : (ofView ?? at.stage)
    // a total is often written in whatever column has room
    const text = name || at.stage || formula
    const label = labelOf(text)
    const isEmpty = part !== 'all' && text === '' && given.length === 0 && note === ''
    const is = isEmpty ? 'blank' : kindOf(label, name, stage, amounts)
    const named = is === 'total' ? text : name
    return { row, is, name: named, label: labelOf(named), stage, formula, note, amounts, cells }
  }
}

function kindOf({ text, is }: Label, name: string, stage: string, amounts: readonly AmountCell[]): Row['is'] {
  const isTotal = is === 'total' || is === 'dough'
  if (text === '') return amounts.length > 0 ? 'amounts' : 'notes'
  if (isTotal && (name === '' || amounts.length > 0 || (stage === '' && is === 'total'))) return 'total'
  if (amounts.length === 0) return 'name'
  if (name === '') return 'amounts'
  const isEdible = amounts.every(({ read }) => read.is === 'quantity' || read.why !== 'notEdible')
  return is === 'fact' || !isEdible ? 'fact' : 'line'
}
