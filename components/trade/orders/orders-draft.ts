import type { Orderable } from '../../../src/day/trade/bread-matches.js'
import { type Wanted, wantsWeight } from '../../../src/day/trade/order-edits.js'
import { type Ordered, type Orders, readOrders } from '../../../src/day/trade/read-orders.js'
import type { Day } from '../../../src/dough/document/day.js'
import type { Workbook } from '../../../src/dough/document/workbook.js'
import type { NumberStyle } from '../../base/numbers.js'
import { readWeight } from '../../typed/typed-numbers.js'

/** A bread that is ordered, all its orders added up. */
export interface OrderedBread {
  readonly formula: string
  readonly name: string
  readonly count: number
  readonly counts: readonly number[] // of each order
  readonly by: readonly string[] // names it was taken for that are not its own
  readonly now: number | undefined // pieces on the day; undefined: it is not on it, or not in pieces
  readonly isOnDay: boolean
  readonly wantsWeight: boolean // nobody has said yet what a piece weighs
}

/** What was typed as orders, read, with what was chosen for names that are none. */
export interface OrdersDraft {
  readonly orders: Orders
  readonly breads: readonly OrderedBread[]
  readonly asked: readonly { readonly key: string; readonly row: Ordered }[] // names to be asked, each once
  readonly leftOut: readonly Ordered[]
}

export const leaveOut = 'leave out'

/** What a name is asked by: several rows may have it. */
export const askedBy = ({ name }: Ordered): string => name.toLowerCase()

/** What the orders in a text come to on a day; `chosen`: for a name that is asked the id of a formula, or that it is left out. */
export function draftOrders(
  text: string,
  day: Day,
  { formulas }: Pick<Workbook, 'formulas'>,
  numbers: NumberStyle,
  chosen: ReadonlyMap<string, string>,
): OrdersDraft {
  const onDay = new Map(day.breads.map(bread => [bread.formula, bread]))
  const isFirst = ({ id }: Orderable) => onDay.has(id)
  const orders = readOrders(text, formulas, { mark: numbers.decimal, isFirst })
  const found = new Map<string, { counts: number[]; by: string[] }>()
  const asked = new Map<string, Ordered>()
  const leftOut: Ordered[] = []
  for (const row of orders.rows) {
    const key = askedBy(row)
    if (!row.formula) asked.set(key, asked.get(key) ?? row)
    const formula = row.formula?.id ?? chosen.get(key)
    if (formula === leaveOut) leftOut.push(row)
    if (!formula || formula === leaveOut) continue
    const one = found.get(formula) ?? { counts: [], by: [] }
    one.counts.push(row.count)
    if (!row.isWhole && !one.by.includes(row.name)) one.by.push(row.name)
    found.set(formula, one)
  }
  const breads = [...found].flatMap(([id, { counts, by }]): OrderedBread[] => {
    const formula = formulas.find(one => one.id === id)
    if (!formula) return []
    const bread = onDay.get(id)
    const batch = bread?.batch
    return [
      {
        formula: id,
        name: formula.name,
        count: Number(counts.reduce((sum, count) => sum + count, 0).toPrecision(12)),
        counts,
        by,
        now: batch && 'pieces' in batch ? batch.pieces.reduce((sum, { count }) => sum + count, 0) : undefined,
        isOnDay: bread !== undefined,
        wantsWeight: wantsWeight(batch, formula.batch),
      },
    ]
  })
  return { orders, breads, asked: [...asked].map(([key, row]) => ({ key, row })), leftOut }
}

/** How many of each bread are to be baked; `weights`: what was typed for those that want one, by formula. */
export function wantedOf(
  { breads }: OrdersDraft,
  weights: ReadonlyMap<string, string>,
  numbers: NumberStyle,
): ReadonlyMap<string, Wanted> {
  return new Map(
    breads
      .filter(({ count }) => count > 0)
      .map(({ formula, count, wantsWeight }) => {
        const weight = wantsWeight ? readWeight(weights.get(formula) ?? '', numbers) : undefined
        return [formula, weight === undefined ? { count } : { count, weight }]
      }),
  )
}
