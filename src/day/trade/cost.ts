import type { Ingredient } from '../../dough/document/larder.js'

/** What something costs, as far as it is known. Names are those of ingredients. */
export interface Cost {
  readonly amount: number // of what has a price, in the workbook's currency
  readonly unpriced: readonly string[] // have no price: the amount is without them
  readonly free: readonly string[] // water and the baker's own starter, without a price: taken to cost nothing
  readonly unweighed: readonly string[] // have a price or not, but no weight that is known
}

/** Whether an amount is all that it costs. */
export const isWhole = ({ unpriced, unweighed }: Cost): boolean => unpriced.length + unweighed.length === 0

export const noCost: Cost = { amount: 0, unpriced: [], free: [], unweighed: [] }

const union = (a: readonly string[], b: readonly string[]): readonly string[] => [...new Set([...a, ...b])]

/** Two costs as one. */
export const added = (a: Cost, b: Cost): Cost => ({
  amount: a.amount + b.amount,
  unpriced: union(a.unpriced, b.unpriced),
  free: union(a.free, b.free),
  unweighed: union(a.unweighed, b.unweighed),
})

/** What a gram of an ingredient costs; undefined where nobody has said. */
export function pricePerGram(known: Ingredient | undefined): number | undefined {
  const { price, pack } = known ?? {}
  if (price === undefined) return undefined
  if (price === 0) return 0
  return pack === undefined ? undefined : price / pack
}

/** What so many grams of an ingredient cost; `isOwn`: it is the baker's own starter. */
export function costOf(
  name: string,
  grams: number | undefined,
  known: Ingredient | undefined,
  isOwn: boolean,
): Cost {
  if (grams === undefined) return { ...noCost, unweighed: [name] }
  const each = pricePerGram(known)
  if (each !== undefined) return { ...noCost, amount: grams * each }
  if (grams === 0) return noCost
  return isOwn || known?.countsAs.kind === 'water'
    ? { ...noCost, free: [name] }
    : { ...noCost, unpriced: [name] }
}

/** How many packs hold so many grams; what the noise of doubles leaves over is no further pack. */
export const packsFor = (grams: number, pack: number): number =>
  Math.max(0, Math.ceil(Number((grams / pack).toPrecision(12))))
