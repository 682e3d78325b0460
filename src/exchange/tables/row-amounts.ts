import { newId } from '../../dough/document/formula.js'
import type { Quantity } from './cells.js'
import { type DraftLine, isWithin, type Told } from './draft.js'
import { type AmountCell, gramsOf, type Names, type Row } from './row-features.js'
import { bracketed } from './vocabulary.js'

const order = ['grams', 'kilograms', 'amount', 'pounds', 'ounces', 'percent'] as const

interface ReadCell extends AmountCell {
  readonly read: Quantity
}
const isRead = (amount: AmountCell): amount is ReadCell => amount.read.is === 'quantity'
const isWeight = ({ read }: ReadCell): boolean => read.percent === undefined

/** Turns the amounts of a row into those of a line, and tells of what was doubtful. */
export class LineMaker {
  readonly #bare: number[] = []
  readonly #isTogether: boolean // pounds in one column and the ounces over them in the next

  constructor(
    readonly names: Names,
    readonly told: Told,
    rows: readonly Row[],
    readonly isMarkSure: boolean, // the table shows which decimal sign it uses
  ) {
    this.#isTogether = poundsAndOunces(rows)
  }

  line(row: Row): DraftLine {
    const { row: number, name: said, note } = row
    const of = { row: number, name: said }
    const notes = note === '' ? [] : [note]
    const read = row.amounts.filter(isRead).sort((a, b) => order.indexOf(a.use) - order.indexOf(b.use))
    for (const { cell, read: not } of row.amounts) {
      if (not.is === 'quantity') continue
      notes.push(cell)
      this.told.sayOf({ code: 'unreadAmount', ...of, cell, why: not.why, isOnly: read.length === 0 })
    }
    if (row.amounts.length === 0) this.told.sayOf({ code: 'withoutAnAmount', ...of })
    const percent = read.find(cell => !isWeight(cell))?.read
    const weight = this.#weight(row, read.filter(isWeight))
    for (const quantity of [weight, percent]) if (quantity) this.#tell(row, quantity, notes)
    if (weight?.bare && read.some(({ use, read: one }) => one === weight && use === 'amount'))
      this.#bare.push(number)
    const ingredient = this.#nameOf(said, notes)
    if (weight?.bare && this.names.find(ingredient)?.kind === 'egg' && (weight.grams ?? 0) <= 24)
      this.told.sayOf({
        code: 'countedEggs',
        row: number,
        name: ingredient,
        amount: weight.text,
        pieces: weight.grams ?? 0,
      })
    return {
      id: newId(),
      row: number,
      ingredient,
      note: [...new Set(notes)].join('; '),
      weight,
      percent,
      kind: this.names.kind(ingredient),
      grams: gramsOf(weight, ingredient, this.names),
      takes: undefined,
    }
  }

  /** `Water (28 °C)` is water, where the larder knows it only so; what is in brackets goes into the note. */
  #nameOf(said: string, notes: string[]): string {
    const name = said.replace(/^[•·*–—-]\s+/, '')
    const short = bracketed(name)
    if (!short || this.names.find(name) || !this.names.find(short.name)) return name
    notes.unshift(short.within)
    return short.name
  }

  #tell({ row, name }: Row, { remark, text, doubt }: Quantity, notes: string[]): void {
    if (remark) {
      notes.push(remark)
      if (text !== remark) this.told.sayOf({ code: 'readAs', row, name, cell: remark, amount: text })
    }
    if (doubt !== undefined && !this.isMarkSure)
      this.told.sayOf({ code: 'doubtfulSign', row, name, typed: doubt.typed, read: doubt.read })
  }

  /** The first of several weights; the others are compared with it. */
  #weight({ row, name }: Row, [first, ...others]: readonly ReadCell[]): Quantity | undefined {
    if (!first) return undefined
    const ounces = others.find(({ use }) => use === 'ounces')?.read
    if (this.#isTogether && first.use === 'pounds' && ounces?.grams !== undefined) {
      const grams = first.read.grams! + ounces.grams
      return { ...first.read, text: `${first.read.text} + ${ounces.text}`, grams, step: ounces.step }
    }
    for (const { cell, read } of others) {
      const [a, b] = [gramsOf(first.read, name, this.names), gramsOf(read, name, this.names)]
      if (a === undefined || b === undefined || isWithin(a - b, (first.read.step + read.step) / 2)) continue
      this.told.sayOf({ code: 'twoWeights', row, name, first: first.cell, other: cell, a, b })
    }
    return first.read
  }

  finish(): void {
    if (this.#bare.length > 0) this.told.say({ code: 'withoutUnits', rows: this.#bare }, this.#bare[0])
  }
}

/** Whole pounds with less than sixteen ounces beside them, wherever both are: `2 | 3` is 2 lb 3 oz. */
function poundsAndOunces(rows: readonly Row[]): boolean {
  let both = 0
  for (const { amounts } of rows) {
    const [pounds, ounces] = (['pounds', 'ounces'] as const).map(use => {
      const read = amounts.find(amount => amount.use === use)?.read
      return read?.is === 'quantity' ? read.text : undefined
    })
    if (pounds === undefined || ounces === undefined) continue
    if (!/^\d+ lb$/.test(pounds) || !(Number.parseFloat(ounces) < 16)) return false
    both++
  }
  return both > 0
}
