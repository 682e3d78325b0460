import { type Cost, isWhole } from '../../src/day/trade/cost.js'
import { moneyText } from '../../src/day/trade/currency.js'
import type { Need } from '../../src/day/trade/needs.js'
import { type HouseholdOptions, inMeasures } from '../../src/dough/about/household.js'
import { gramsPerMeasure } from '../../src/dough/amounts/measures.js'
import { type NumberStyle, showDecimals, showNumber } from '../base/numbers.js'
import { needWords } from './words.js'

/** How weights, measures and money are shown. */
export interface TradeStyle {
  readonly numbers: NumberStyle
  readonly measures: HouseholdOptions
  readonly currency: string
}

const mostMeasured = { grams: 1000, cups: 4 } as const // more of it nobody measures in a kitchen
const nearWhole = 0.02 // of a count: a piece is never so exact

/** A weight as the scale shows it: `38,412 g`. */
export const sayScale = (grams: number, numbers: NumberStyle): string =>
  needWords.grams(showDecimals(Number(grams.toFixed(4)), numbers, 4, 0))

/** A weight as one speaks of it: `38.4 kg`, `412 g`. */
export const sayRound = (grams: number, numbers: NumberStyle): string =>
  grams >= 1000
    ? needWords.kilograms(showDecimals(grams / 1000, numbers, grams >= 10_000 ? 1 : 2, 0))
    : needWords.grams(showDecimals(grams, numbers, grams >= 10 ? 0 : 2, 0))

/** A weight that was typed: `25 kg`. */
export const sayPack = (grams: number, numbers: NumberStyle): string =>
  grams >= 1000
    ? needWords.kilograms(showNumber(grams / 1000, numbers))
    : needWords.grams(showNumber(grams, numbers))

export const sayMoney = (amount: number, { currency, numbers }: TradeStyle): string =>
  moneyText(amount, currency, numbers.language)

/** What something costs: what is known of it where it is not all, and that it is not. */
export const sayCost = (cost: Cost, style: TradeStyle): string =>
  isWhole(cost) ? sayMoney(cost.amount, style) : needWords.atLeast(sayMoney(cost.amount, style))

/** What an ingredient costs by itself. */
export function costSaid({ cost }: Need, style: TradeStyle): string {
  if (cost.unpriced.length > 0) return needWords.noPrice
  if (cost.free.length > 0) return needWords.free
  return sayCost(cost, style)
}

/**
 * What a kitchen has for it: whole pieces of what is counted, with how much of them is used, and spoons and cups of what is light; '' where
 * it is weighed.
 */
export function kitchenSaid({ grams, known }: Need, { numbers, measures }: TradeStyle): string {
  if (!known || !(grams > 0)) return ''
  if (known.each) {
    const exact = grams / known.each
    const near = Math.round(exact)
    if (near > 0 && Math.abs(exact / near - 1) <= nearWhole) return needWords.each(showNumber(near, numbers))
    const whole = showNumber(Math.ceil(exact), numbers)
    return needWords.eachUsed(needWords.each(whole), showDecimals(exact, numbers, 1, 0))
  }
  const cup = gramsPerMeasure(known, 'cup')
  if (cup === undefined || grams > mostMeasured.grams || grams / cup > mostMeasured.cups) return ''
  return inMeasures(known, grams, measures) ?? ''
}

/** Whether it is drawn or kept, and so not bought: water and the baker's own starter, where nobody says what a pack of it holds or costs. */
export const isMadeHere = ({ isOwn, known }: Need): boolean =>
  (isOwn || known?.countsAs.kind === 'water') && known?.price === undefined && known?.pack === undefined

/** What is to be had of it in the shop, what is there and what is short, and whose it is. */
export function shopSaid(need: Need, { numbers }: TradeStyle): string {
  const { known, grams, packs, short, toBuy, isOwn, isAll } = need
  const packsOf = (count: number | undefined) =>
    count === undefined || !known?.pack ? '' : needWords.packs(count, sayPack(known.pack, numbers))
  const { stock } = known ?? {}
  const counted =
    stock === undefined || short === undefined
      ? packs === undefined
        ? ''
        : needWords.usedOf(packsOf(packs), sayRound(grams, numbers))
      : short > 0
        ? needWords.short(sayPack(stock, numbers), sayRound(short, numbers), packsOf(toBuy))
        : needWords.enough(sayPack(stock, numbers), sayRound(stock - grams, numbers))
  return [
    known ? '' : needWords.notKnown,
    isOwn && !counted ? needWords.own : '',
    counted,
    known?.supplier ?? '',
    isAll ? '' : needWords.some,
  ]
    .filter(Boolean)
    .join(' · ')
}

/** What a sum is without, in sentences. */
export const sumRemarks = ({ unpriced, unweighed, free }: Cost): string[] => [
  ...(unpriced.length ? [needWords.unpriced(unpriced)] : []),
  ...(unweighed.length ? [needWords.unweighed(unweighed)] : []),
  ...(free.length ? [needWords.isFree(free)] : []),
]
