import { type Cost, isWhole } from '../../src/day/trade/cost.js'
import { moneyText } from '../../src/day/trade/currency.js'
import type { Need } from '../../src/day/trade/needs.js'
import { type HouseholdOptions, inMeasures } from '../../src/dough/about/household.js'
import { type NumberStyle, showDecimals, showNumber } from '../base/numbers.js'
import { needWords } from './words.js'

/** How weights, measures and money are shown. */
export interface TradeStyle {
  readonly numbers: NumberStyle
  readonly measures: HouseholdOptions
  readonly currency: string
}

const mostInCups = 500 // grams: more of it nobody measures in cups

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

/** What a kitchen has for it: kilograms, pieces of what is counted, spoons and cups of what is light. */
export function kitchenSaid({ grams, known }: Need, { numbers, measures }: TradeStyle): string {
  if (known?.each && grams > 0) {
    const halves = Math.max(0.5, Math.round((grams / known.each) * 2) / 2)
    const count = needWords.each(showDecimals(halves, numbers, 1, 0))
    return Math.abs(grams / known.each / halves - 1) > 0.02 ? needWords.about(count) : count
  }
  const spoons = known && grams <= mostInCups ? inMeasures(known, grams, measures) : undefined
  return spoons ?? sayRound(grams, numbers)
}

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
