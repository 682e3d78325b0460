import { moneyDigits } from '../../day/trade/currency.js'
import type { Needs } from '../../day/trade/needs.js'
import { writeTable } from './csv-table.js'

const headings = [
  'ingredient',
  'grams',
  'pack grams',
  'packs used',
  'in stock grams',
  'short grams',
  'packs to buy',
  'price of a pack',
  'cost used',
  'cost to buy',
  'currency',
  'supplier',
  'remark',
] as const

/** How numbers are written: where the comma is the decimal sign, cells are parted by semicolons, as office programs there read them. */
export interface TotalsOptions {
  readonly decimal: '.' | ','
  readonly currency: string
}

const remarks = {
  unweighed: 'not all of its weight is known',
  unpriced: 'no price',
} as const

/**
 * The totals of a day or of one formula's batch as a file for an office program: one row an ingredient, figures as plain numbers
 * in the decimal sign of the reader's own program. Nothing stands where a figure is not known, and the remark says so.
 */
export function writeTotals({ all }: Needs, { decimal, currency }: TotalsOptions): string {
  const digits = moneyDigits(currency)
  const number = (value: number | undefined, most = 4): string =>
    value === undefined ? '' : String(Number(value.toFixed(most))).replace('.', decimal)
  const rows = all.map(({ name, known, grams, isAll, packs, short, toBuy, cost, buying }) => {
    const isPriced = cost.unpriced.length === 0 && known?.price !== undefined
    return [
      name,
      number(grams),
      number(known?.pack),
      number(packs),
      number(known?.stock),
      number(short),
      number(toBuy),
      number(known?.price, digits + 2),
      isPriced ? number(cost.amount, digits + 2) : '',
      isPriced ? number(buying.amount, digits + 2) : '',
      isPriced ? currency : '',
      known?.supplier ?? '',
      [isAll ? '' : remarks.unweighed, cost.unpriced.length ? remarks.unpriced : '']
        .filter(Boolean)
        .join(', '),
    ]
  })
  return writeTable([headings, ...rows], decimal === ',' ? ';' : ',')
}
