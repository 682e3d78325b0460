import { html, nothing, type TemplateResult } from 'lit'
import type { NameOf } from '../../src/day/out/bread-names.js'
import { isWhole } from '../../src/day/trade/cost.js'
import type { DoughCost, PieceCost } from '../../src/day/trade/dough-costs.js'
import { sayCost, sayMoney, sayRound, sayScale, type TradeStyle } from './trade-figures.js'
import { costWords, needWords } from './words.js'

/** What each dough costs: all told, by piece, by kilogram of dough and of bread. */
export function costsList(costs: readonly DoughCost[], style: TradeStyle, nameOf: NameOf): TemplateResult {
  return html`<p class="hint">${costWords.how}</p>
    <ul class="costs">
      ${costs.map(cost => dough(cost, style, nameOf(cost.of)))}
    </ul>
    ${costs.some(({ baked }) => baked === undefined) ? html`<p class="hint">${costWords.noBakeLoss}</p>` : nothing}`
}

function dough(cost: DoughCost, style: TradeStyle, name: string): TemplateResult {
  const { numbers } = style
  const least = (amount: number) => {
    const said = sayMoney(amount, style)
    return isWhole(cost.cost) ? said : needWords.atLeast(said)
  }
  const said = [
    ...cost.pieces.map(piece => costWords.aPiece(least(piece.cost), pieceSaid(piece, style))),
    ...(cost.perKiloOfDough === undefined ? [] : [costWords.aKiloOfDough(least(cost.perKiloOfDough))]),
    ...(cost.perKiloOfBread === undefined ? [] : [costWords.aKiloOfBread(least(cost.perKiloOfBread))]),
  ]
  const without = [...new Set([...cost.cost.unpriced, ...cost.cost.unweighed])]
  return html`<li>
    <p class="lead">
      <b>${name}</b>
      ${cost.dough === undefined ? nothing : html`<span class="quiet">${costWords.ofDough(sayScale(cost.dough, numbers))}</span>`}
      <strong>${sayCost(cost.cost, style)}</strong>
    </p>
    ${said.map(words => html`<p>${words}</p>`)}
    ${without.length ? html`<p class="remark">${costWords.without(without)}</p>` : nothing}
  </li>`
}

/** `852 g, 750 g baked, round tin` */
function pieceSaid({ dough, baked, name }: PieceCost, { numbers }: TradeStyle): string {
  const weight = sayRound(dough, numbers)
  const said = baked === undefined ? weight : costWords.baked(weight, sayRound(baked, numbers))
  return name ? costWords.named(said, name) : said
}
