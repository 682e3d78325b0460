import { html, nothing, type PropertyValues } from 'lit'
import { Learning } from '../../src/day/learning/learning.js'
import { lessonOf } from '../../src/day/learning/lessons.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { workbookOf } from '../base/asked-of-page.js'
import { BaseElement } from '../base/base-element.js'
import { showPercent } from '../base/numbers.js'
import './tb-learnt.js'
import { lessonWords } from './words.js'

/** What the bakes of a formula have told of one of its losses. */
export class TbLearntLosses extends BaseElement {
  static override properties = {
    sheet: { attribute: false },
    loss: {},
    kept: { type: Number },
    take: { attribute: false },
  }

  declare sheet: FigureSheet
  declare loss: 'loss' | 'bakeLoss'
  declare kept: number // fraction of 1, as it is said now
  declare take: (loss: number) => void

  #learning: Learning | undefined
  #of: Workbook | undefined

  protected override willUpdate(_changed: PropertyValues): void {
    const workbook = workbookOf(this)
    if (workbook === this.#of) return
    this.#of = workbook
    this.#learning = workbook && new Learning(workbook, this.sheet.larder)
  }

  override render() {
    const { sheet, loss, kept } = this
    const learnt = this.#learning?.learnt(lessonOf[loss](sheet.formula.id))
    if (!learnt) return nothing
    const middle = Math.max(0, Number(learnt.middle.toFixed(3))) // as a percentage is written
    return html`<tb-learnt
      .learnt=${learnt}
      what=${lessonWords[loss]}
      .show=${(value: number) => `${showPercent(value, this.numbers)}\u00a0%`}
      .taken=${`${showPercent(middle, this.numbers)}\u00a0%`}
      .take=${() => this.take(middle)}
      ?isSo=${Math.abs(middle - kept) < 5e-4}
      ?readOnly=${this.readOnly}
    ></tb-learnt>`
  }
}
customElements.define('tb-learnt-losses', TbLearntLosses)

declare global {
  interface HTMLElementTagNameMap {
    'tb-learnt-losses': TbLearntLosses
  }
}
