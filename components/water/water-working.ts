import { html, nothing, type TemplateResult } from 'lit'
import type { Mixing } from '../../src/day/mixing/mixing.js'
import { type NumberStyle, showDecimals, showGrams } from '../base/numbers.js'
import { sayCelsius } from '../typed/typed-degrees.js'
import { factorSaid, waterWorking } from './words.js'

/** How the temperature of a mixing's water came about, both ways. */
export function workingOfWater(mixing: Mixing, of: string, style: NumberStyle): TemplateResult {
  const { wanted, rise, factors, friction, byFactors, parts, water, waterHeat, celsius, ice, freezer, tap } =
    mixing
  const say = (value: number) => sayCelsius(value, style)
  const grams = (value: number) => `${showGrams(value, style)}\u00a0g`
  const decimals = (value: number, digits: number) => showDecimals(value, style, digits, 0)
  const mixed = wanted - rise
  const heatTo = (part: { grams: number; heat: number; celsius: number }) =>
    (part.grams / 1000) * part.heat * (mixed - part.celsius)
  const all = parts.reduce((sum, part) => sum + heatTo(part), 0)
  const kilojoules = (value: number) => showDecimals(value, style, 1).replace('-', '−')
  return html`<p>${waterWorking.byFactors(
    factors.length + 1,
    say(wanted),
    factors.map(f => factorSaid(f.of, say(f.celsius))),
    say(friction),
    say(rise),
    say(byFactors),
  )}</p>
    <p>${waterWorking.mixed(say(mixed), say(wanted), say(rise))}</p>
    <div class="scroll" tabindex="0" role="group" aria-label=${waterWorking.table(of)}>
      <table>
        <thead>
          <tr>${waterWorking.columns.map(column => html`<th scope="col">${column}</th>`)}</tr>
        </thead>
        <tbody>
          ${parts.map(
            part => html`<tr>
              <th scope="row">${part.ingredient}</th>
              <td>${grams(part.grams)}</td>
              <td>${decimals(part.heat, 2)}</td>
              <td>${say(part.celsius)}</td>
              <td>${kilojoules(heatTo(part))}</td>
            </tr>`,
          )}
        </tbody>
      </table>
    </div>
    <p>${waterWorking.water({
      liquid: mixing.liquid,
      grams: grams(water),
      heat: decimals(waterHeat, 3),
      takesUp: all > 0,
      kilojoules: `${kilojoules(Math.abs(all))}\u00a0kJ`,
      apart: say(Math.abs(celsius - mixed)),
      celsius: say(celsius),
    })}</p>
    ${
      ice
        ? html`<p>${freezer === undefined ? waterWorking.ice(grams(water), say(tap), say(celsius)) : waterWorking.iceFrom(say(freezer))}</p>`
        : nothing
    }
    <p class="limits">${waterWorking.limits}</p>`
}
