import { html, type TemplateResult } from 'lit'
import { lengthText } from '../../src/day/course/clock.js'
import { ripeningStep } from '../../src/day/mixing/fed-build.js'
import type { Feeding } from '../../src/day/mixing/feeding.js'
import type { Stage } from '../../src/dough/document/formula.js'
import { type NumberStyle, showDecimals, showPercent } from '../base/numbers.js'
import { sayCelsius } from '../typed/typed-degrees.js'
import { feedingWorking } from './words.js'

/** How the seed of a build came about. */
export function workingOfFeeding(
  stage: Stage,
  { hours, celsius, speed, speedKnown, dilution, seedShare, before }: Feeding,
  isAlone: boolean,
  style: NumberStyle,
): TemplateResult {
  const decimals = (value: number, digits = 3) => showDecimals(value, style, digits, 0)
  const own = ripeningStep(stage)
  return html`${isAlone ? '' : html`<h4>${stage.name}</h4>`}
    <p>${feedingWorking.dilution(decimals(before.dilution))}</p>
    <p>
      ${speedKnown && own ? feedingWorking.speedKnown(decimals(speed), own.step.text) : feedingWorking.speedUnknown}
    </p>
    <p>
      ${feedingWorking.wants(lengthText(hours * 60), sayCelsius(celsius, style), decimals(dilution), `${showPercent(seedShare, style)}\u00a0%`)}
    </p>`
}
