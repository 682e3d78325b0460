import { breadNames, type NameOf } from '../../src/day/out/bread-names.js'
import type { DaySheet } from '../../src/day/plan/open-day.js'
import { Weights } from '../../src/day/plan/weigh-list.js'
import { type DayMade, dayMade, inMixingOrder, type MadeBuild } from '../../src/day/trade/builds-made.js'
import { guessCurrency } from '../../src/day/trade/currency.js'
import { type DoughCost, doughCosts } from '../../src/day/trade/dough-costs.js'
import { type Needs, needsOf } from '../../src/day/trade/needs.js'
import type { Day } from '../../src/dough/document/day.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import type { NumberStyle } from '../base/numbers.js'
import { ownMeasures } from '../controls/tb-measures.js'
import type { TradeStyle } from './trade-figures.js'

/** All that is shown of what a day needs. */
export interface TradeShown {
  readonly made: DayMade
  readonly needs: Needs
  readonly costs: readonly DoughCost[]
  readonly builds: readonly MadeBuild[] // in the order in which they are mixed, where `isTimed`
  readonly isTimed: boolean
  readonly begins: (build: MadeBuild) => number | undefined // minutes since 1970, UTC: when it is mixed
  readonly nameOf: NameOf
  readonly sheetOf: (bread: string) => FigureSheet | undefined
  readonly style: TradeStyle
}

/** What a day needs, as it stands; `opened`: its times, where they are known. */
export function tradeShown(
  day: Day,
  { formulas, scale, currency }: Workbook,
  larder: Larder,
  numbers: NumberStyle,
  opened: DaySheet | undefined,
): TradeShown {
  const weights = new Weights(formulas, larder, scale)
  const made = dayMade(day, formulas, weights)
  const begun = new Map<string, number>()
  for (const { begins, from } of opened?.plan?.events ?? []) {
    const [bread, stage] = begins.split(' ')
    const key = `${bread} ${stage}`
    begun.set(key, Math.min(from, begun.get(key) ?? from))
  }
  const begins = ({ key }: Pick<MadeBuild, 'key'>) => begun.get(key)
  return {
    made,
    needs: needsOf(made, larder),
    costs: doughCosts(made, larder),
    builds: inMixingOrder(made.builds, key => begun.get(key)),
    isTimed: made.builds.every(build => begins(build) !== undefined),
    begins,
    nameOf: breadNames(day, formulas),
    sheetOf: bread => weights.sheet(day, bread),
    style: {
      numbers,
      measures: ownMeasures(numbers.language),
      currency: currency ?? guessCurrency(numbers.language),
    },
  }
}
