import { dateText } from '../../src/day/out/day-text.js'
import type { TradeTexts } from '../../src/day/trade/trade-text.js'
import { listedBuilds, notesSaid } from './listed-builds.js'
import { hasPrices } from './needs-table.js'
import {
  costSaid,
  isMadeHere,
  kitchenSaid,
  sayCost,
  sayScale,
  shopSaid,
  sumRemarks,
} from './trade-figures.js'
import type { TradeShown } from './trade-shown.js'
import { needWords, weighWords } from './words.js'

const plain = (text: string): string => text.replaceAll('\u00a0', ' ')

/** What to weigh and order, as texts. */
export function textsOf(shown: TradeShown): TradeTexts {
  const { needs, costs, style, made, nameOf } = shown
  const { numbers } = style
  const priced = hasPrices(needs)
  return {
    name: plain(made.day.name),
    date: dateText(made.day.date, numbers.language),
    needs: [
      ...needs.all.filter(need => !isMadeHere(need)),
      ...needs.all.filter(isMadeHere), // last, and said so
    ].map(need => {
      const weight = sayScale(need.grams, numbers)
      const about = [
        isMadeHere(need) ? needWords.madeHere.toLowerCase() : '',
        shopSaid(need, style),
        need.known?.each ? kitchenSaid(need, style) : '',
        priced ? costSaid(need, style) : '',
      ]
        .filter(Boolean)
        .join(' · ')
      return {
        name: need.name,
        figure: plain(need.isAll ? weight : needWords.atLeast(weight)),
        about: plain(about),
      }
    }),
    remarks: priced ? sumRemarks(needs.used).map(plain) : [],
    costs: priced
      ? [
          ...costs.map(({ of, cost }) => ({ name: nameOf(of), figure: plain(sayCost(cost, style)) })),
          { name: needWords.used, figure: plain(sayCost(needs.used, style)) },
        ]
      : [],
    notes: plain(notesSaid(shown)),
    lists: listedBuilds(shown).map(({ build, name, about }) => ({
      name: plain([name, about].filter(Boolean).join(', ')),
      lines: [
        ...build.lines.map(({ ingredient, grams, note }) => ({
          name: ingredient,
          figure: grams === undefined ? weighWords.unknown : plain(sayScale(grams, numbers)),
          ...(note && { about: note }),
        })),
        ...(build.total === undefined
          ? []
          : [{ name: weighWords.total, figure: plain(sayScale(build.total, numbers)) }]),
      ],
    })),
  }
}
