import { css, html, nothing, type PropertyDeclarations } from 'lit'
import { breadNames } from '../../src/day/out/bread-names.js'
import { ovenDays } from '../../src/day/plan/loads.js'
import type { DaySheet } from '../../src/day/plan/open-day.js'
import { emptyWorkbook, type Workbook } from '../../src/dough/document/workbook.js'
import { BaseElement } from '../base/base-element.js'
import { loadTable } from './load-table.js'
import { loadTableStyles } from './load-table-styles.js'
import { loadWords } from './words.js'

/** What goes into each oven at once, and when; one that is not full stands out. A time pressed is told as `tb-moment`. */
export class TbDayLoads extends BaseElement {
  static override properties: PropertyDeclarations = {
    opened: { attribute: false },
    workbook: { attribute: false },
  }

  declare opened: DaySheet | undefined
  declare workbook: Workbook

  constructor() {
    super()
    this.workbook = emptyWorkbook
  }

  override render() {
    const { opened, numbers } = this
    const plan = opened?.plan
    const ovens = plan ? ovenDays(plan) : []
    if (!plan || ovens.length === 0) return nothing
    const { zone } = plan.day
    const nameOf = breadNames(plan.day, this.workbook.formulas)
    return loadTable(ovens, {
      zone,
      numbers,
      nameOf,
      go: (moment, clock) =>
        html`<button aria-label=${loadWords.goTo(`${clock}`)} @click=${() => this.#choose(moment)}>${clock}</button>`,
    })
  }

  #choose(moment: string): void {
    this.dispatchEvent(new CustomEvent('tb-moment', { detail: moment, bubbles: true, composed: true }))
  }

  static override styles = [
    loadTableStyles,
    css`
      :host {
        display: block;
        overflow-x: auto;
      }
    `,
  ]
}
customElements.define('tb-day-loads', TbDayLoads)

declare global {
  interface HTMLElementTagNameMap {
    'tb-day-loads': TbDayLoads
  }
}
