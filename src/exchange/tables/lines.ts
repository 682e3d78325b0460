import { newId } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { grams } from '../../dough/document/words.js'
import { quoted } from '../csv/row.js'
import type { Quantity } from './cell-quantity.js'
import type { AmountCell, Sorted } from './sort.js'
import { type ForeignLine, gramsOf, kindOf, rowOrRows, type Told } from './table-draft.js'
import type { Mapping } from './types.js'
import { bracketed } from './words.js'

const order = ['grams', 'kilograms', 'amount', 'pounds', 'ounces', 'percent'] as const

interface Read extends AmountCell {
  readonly read: Quantity
}

/** Turns the amounts of a row into those of a line, and tells of what was doubtful. */
export class LineMaker {
  readonly #bare: number[] = []
  readonly #together: boolean // pounds in one column and the ounces over them in the next

  constructor(
    readonly mapping: Mapping,
    readonly larder: Larder,
    readonly told: Told,
    rows: readonly Sorted[],
    readonly markIsSure: boolean,
  ) {
    this.#together = poundsAndOunces(rows)
  }

  line(row: Sorted): ForeignLine {
    const notes: string[] = row.note === '' ? [] : [row.note]
    const read: Read[] = []
    const lost: AmountCell[] = []
    for (const amount of row.amounts)
      if (amount.read.is === 'quantity') read.push(amount as Read)
      else lost.push(amount)
    for (const { cell, read: why } of lost) {
      notes.push(cell)
      if (why.is === 'quantity') continue
      const then = read.length === 0 ? 'The line is kept without an amount' : 'It was not read'
      this.told.say(
        'warning',
        row.row,
        `Row ${row.row} gives ${quoted(cell)} for ${row.name}, which ${why.why}. ${then}, and the text is in its note.`,
      )
    }
    if (row.amounts.length === 0)
      this.told.say(
        'warning',
        row.row,
        `Row ${row.row} gives no amount for ${row.name}. The line is kept without one.`,
      )
    const { weight, percent } = this.#choose(row, read)
    for (const quantity of [weight, percent]) {
      if (!quantity) continue
      if (quantity.remark) notes.push(quantity.remark)
      if (quantity.remark && quantity.text !== quantity.remark)
        this.told.say(
          'remark',
          row.row,
          `Row ${row.row} gives ${quoted(quantity.remark)} for ${row.name}, read as ${quantity.text}; the text is in its note.`,
        )
      this.#doubts(row, quantity)
    }
    if (weight?.bare && read.some(({ use, read: of }) => of === weight && use === 'amount'))
      this.#bare.push(row.row)
    const name = this.#nameOf(row, notes)
    if (weight?.bare && this.larder.find(name)?.kind === 'egg' && (weight.grams ?? 0) <= 24)
      this.told.say(
        'warning',
        row.row,
        `Row ${row.row} gives ${weight.text} for ${name}. If they are counted, write ${weight.grams} each.`,
      )
    return {
      id: newId(),
      row: row.row,
      ingredient: name,
      note: [...new Set(notes)].join('; '),
      weight,
      percent,
      kind: kindOf(name, this.larder),
      grams: gramsOf(weight, name, this.larder),
      takes: undefined,
    }
  }

  /** `Water (28 °C)` is water, where the larder knows it only so; what is in brackets goes into the note. */
  #nameOf({ name: said }: Sorted, notes: string[]): string {
    const name = said.replace(/^[•·*–—-]\s+/, '')
    const short = bracketed(name)
    if (!short || this.larder.find(name) || !this.larder.find(short.name)) return name
    notes.unshift(short.within)
    return short.name
  }

  #doubts(row: Sorted, quantity: Quantity): void {
    if (this.markIsSure) return
    for (const { typed, read } of quantity.doubts)
      this.told.say(
        'warning',
        row.row,
        `Row ${row.row} has ${quoted(typed)} for ${row.name}, which is read as ${read}: the table does not show whether its ${typed.includes(',') ? 'comma' : 'point'} is a decimal sign. Choose the other one if that is not meant.`,
      )
  }

  #choose(
    row: Sorted,
    read: readonly Read[],
  ): { weight: Quantity | undefined; percent: Quantity | undefined } {
    const sorted = [...read].sort((a, b) => order.indexOf(a.use) - order.indexOf(b.use))
    const percent = sorted.find(({ read: { percent } }) => percent !== undefined)?.read
    const weights = sorted.filter(({ read: { percent } }) => percent === undefined)
    const [first, ...others] = weights
    if (!first) return { weight: undefined, percent }
    const ounces = others.find(({ use }) => use === 'ounces')
    if (this.#together && first.use === 'pounds' && ounces?.read.grams !== undefined) {
      const { text, grams: of = 0, step } = ounces.read
      const sum = { ...first.read, text: `${first.read.text} + ${text}`, grams: first.read.grams! + of, step }
      return { weight: sum, percent }
    }
    for (const { cell, read: other } of others) {
      const [a, b] = [first.read, other].map(weight => gramsOf(weight, row.name, this.larder))
      if (a === undefined || b === undefined) continue
      if (Math.abs(a - b) <= ((first.read.step + other.step) / 2) * (1 + 1e-9) + 1e-9) continue
      this.told.say(
        'warning',
        row.row,
        `Row ${row.row} gives ${quoted(first.cell)} and ${quoted(cell)} for ${row.name}, which are ${grams(a)} and ${grams(b)}. The first is read.`,
      )
    }
    return { weight: first.read, percent }
  }

  finish(): void {
    if (this.#bare.length === 0) return
    this.told.say(
      'remark',
      this.#bare[0],
      `${rowOrRows(this.#bare)} ${this.#bare.length === 1 ? 'gives' : 'give'} a number without a unit: taken as grams.`,
    )
  }
}

/** Whole pounds with less than sixteen ounces beside them, wherever both are: `2 | 3` is 2 lb 3 oz. */
function poundsAndOunces(rows: readonly Sorted[]): boolean {
  let both = 0
  for (const { amounts } of rows) {
    const cells = (['pounds', 'ounces'] as const).map(use => amounts.find(amount => amount.use === use)?.read)
    const [pounds, ounces] = cells.map(read => (read?.is === 'quantity' ? read.text : undefined))
    if (pounds === undefined || ounces === undefined) continue
    if (!/^\d+ lb$/.test(pounds) || !(Number.parseFloat(ounces) < 16)) return false
    both++
  }
  return both > 0
}
