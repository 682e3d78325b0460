import { html, nothing, type TemplateResult } from 'lit'
import type { Need, Needs } from '../../src/day/trade/needs.js'
import {
  costSaid,
  isMadeHere,
  kitchenSaid,
  sayCost,
  sayScale,
  shopSaid,
  sumRemarks,
  type TradeStyle,
} from './trade-figures.js'
import { needWords } from './words.js'

/** Whether anything has a price: without any, there is no column of costs. */
export const hasPrices = ({ all }: Needs): boolean => all.some(({ known }) => known?.price !== undefined)

/** All ingredients through all stages: what to weigh, what a kitchen and a shop call it, what it costs. `choose` leads to one in the larder. */
export function needsTable(needs: Needs, style: TradeStyle, choose: (name: string) => void): TemplateResult {
  const priced = hasPrices(needs)
  const rows = (all: readonly Need[]) => all.map(need => row(need, style, priced, choose))
  const here = needs.all.filter(isMadeHere)
  return html`<table class="needs">
      <thead>
        <tr>
          <th scope="col">${needWords.ingredient}</th>
          <th scope="col" class="figure">${needWords.weight}</th>
          <th scope="col" class="figure kitchen">${needWords.kitchen}</th>
          ${priced ? html`<th scope="col" class="figure">${needWords.costs}</th>` : nothing}
        </tr>
      </thead>
      <tbody>
        ${rows(needs.all.filter(need => !here.includes(need)))}
      </tbody>
      ${
        here.length
          ? html`<tbody class="here">
              <tr>
                <th scope="rowgroup" colspan=${priced ? 4 : 3}>${needWords.madeHere}</th>
              </tr>
              ${rows(here)}
            </tbody>`
          : nothing
      }
      ${priced ? foot(needs, style) : nothing}
    </table>
    ${
      priced
        ? sumRemarks(needs.used).map(sentence => html`<p class="remark">${sentence}</p>`)
        : html`<p class="hint">${needWords.noPrices}</p>`
    }`
}

function row(need: Need, style: TradeStyle, priced: boolean, choose: (name: string) => void): TemplateResult {
  const shop = shopSaid(need, style)
  const weight = sayScale(need.grams, style.numbers)
  const kitchen = kitchenSaid(need, style)
  const isMissing = need.cost.unpriced.length > 0
  return html`<tr>
    <th scope="row">
      <button title=${needWords.say(need.name)} @click=${() => choose(need.name)}>${need.name}</button>
      ${shop ? html`<small class=${need.short ? 'short' : ''}>${shop}</small>` : nothing}
      ${kitchen ? html`<small class="kitchen-below">${kitchen}</small>` : nothing}
    </th>
    <td class="figure">${need.isAll ? weight : needWords.atLeast(weight)}</td>
    <td class="figure kitchen">${kitchen}</td>
    ${priced ? html`<td class="figure ${isMissing ? 'missing' : ''}">${costSaid(need, style)}</td>` : nothing}
  </tr>`
}

function foot({ used, buying, all }: Needs, style: TradeStyle): TemplateResult {
  const buys = all.some(({ toBuy, known }) => toBuy && known?.price)
  const sum = (words: string, cost: typeof used) => html`<tr>
    <th scope="row">${words}</th>
    <td></td>
    <td class="kitchen"></td>
    <td class="figure">${sayCost(cost, style)}</td>
  </tr>`
  return html`<tfoot>
    ${sum(needWords.used, used)}${buys ? sum(needWords.toBuy, buying) : nothing}
  </tfoot>`
}
