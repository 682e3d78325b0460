import { css, html, type PropertyValues } from 'lit'
import { Learning } from '../../src/day/learning/learning.js'
import type { PlannedDay } from '../../src/day/plan/planned.js'
import { Weights } from '../../src/day/plan/weigh-list.js'
import type { Day } from '../../src/dough/document/day.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { BaseElement } from '../base/base-element.js'
import '../feeding/tb-day-feedings.js'
import './tb-waits.js'
import './tb-water.js'

/** All that has to do with temperature on a day: its feedings, the water of its mixings, and what its waits come to; before those what it is given to hold. */
export class TbTemperatures extends BaseElement {
  static override properties = {
    day: { attribute: false },
    plan: { attribute: false },
    workbook: { attribute: false },
    larder: { attribute: false },
  }

  declare day: Day
  declare plan: PlannedDay | undefined // undefined: there are no times
  declare workbook: Workbook
  declare larder: Larder

  #weights: Weights | undefined
  #learning: Learning | undefined // undefined: nothing has been baked

  protected override willUpdate(changed: PropertyValues<this>): void {
    const before = changed.get('workbook')
    const { formulas, scale } = this.workbook
    const isSame = before?.formulas === formulas && before.scale === scale && !changed.has('larder')
    if (!this.#weights || (changed.has('workbook') && !isSame) || changed.has('larder'))
      this.#weights = new Weights(formulas, this.larder, scale)
    if (changed.has('workbook') || changed.has('larder'))
      this.#learning = this.workbook.bakes ? new Learning(this.workbook, this.larder) : undefined
  }

  override render() {
    const { day, plan, numbers, readOnly } = this
    const sheetOf = (bread: string) => this.#weights!.sheet(day, bread)
    const weighed = ({ stage, breads }: { readonly stage: string; readonly breads: readonly string[] }) =>
      this.#weights!.lines(day, stage, breads)
    const learning = this.#learning
    return html`<tb-day-feedings
        .day=${day}
        .plan=${plan}
        .sheetOf=${sheetOf}
        .weighed=${weighed}
        .numbers=${numbers}
        ?readOnly=${readOnly}
      ></tb-day-feedings>
      <tb-water
        .day=${day}
        .sheetOf=${sheetOf}
        .weighed=${weighed}
        .learning=${learning}
        .numbers=${numbers}
        ?readOnly=${readOnly}
      ></tb-water>
      <slot></slot>
      <tb-waits
        .day=${day}
        .plan=${plan}
        .sheetOf=${sheetOf}
        .learning=${learning}
        .numbers=${numbers}
        ?readOnly=${readOnly}
      ></tb-waits>`
  }

  static override styles = css`
    :host {
      display: grid;
      gap: 26px;
    }
  `
}
customElements.define('tb-temperatures', TbTemperatures)

declare global {
  interface HTMLElementTagNameMap {
    'tb-temperatures': TbTemperatures
  }
}
