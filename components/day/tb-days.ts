import { html, nothing, type PropertyValues } from 'lit'
import type { Day } from '../../src/dough/document/day.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { BaseElement } from '../base/base-element.js'
import { hashFrom } from '../base/hash.js'
import { DayPlanner } from './day-planner.js'
import { daysStyles } from './days-styles.js'
import './tb-day.js'
import { latestFirst, today } from './tb-day-list.js'
import { daysWords } from './words.js'

const idInAddress = (): string => hashFrom('#days/'.length)

/** The days: their list, and the one that the address names; beside the list, where there is room, the next to come. */
export class TbDays extends BaseElement {
  static override properties = {
    workbook: { attribute: false },
    larder: { attribute: false },
    chosen: { reflect: true },
  }

  declare workbook: Workbook
  declare larder: Larder
  declare chosen: string // id of the day in the address, '' for none that is there

  readonly #planner = new DayPlanner(() => this.requestUpdate())
  #address = '' // as it was last looked at
  #toName = false

  constructor() {
    super()
    this.chosen = ''
  }

  override connectedCallback(): void {
    super.connectedCallback()
    window.addEventListener('hashchange', this.#followAddress)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    window.removeEventListener('hashchange', this.#followAddress)
    this.#planner.close()
  }

  #followAddress = (): void => {
    if (location.hash.startsWith('#days')) this.requestUpdate()
  }

  get #days(): readonly Day[] {
    return this.workbook.days ?? []
  }

  /** The day that is chosen, or the next to come. */
  get #open(): Day | undefined {
    const chosen = this.#days.find(({ id }) => id === this.chosen)
    if (chosen) return chosen
    const latest = latestFirst(this.#days)
    return latest.findLast(({ date }) => date >= today()) ?? latest[0]
  }

  protected override willUpdate(): void {
    const address = idInAddress()
    this.chosen = this.#days.some(({ id }) => id === address) ? address : ''
    if (address !== this.#address) scrollTo({ top: 0 })
    this.#address = address
    const day = this.#open
    if (day) this.#planner.plan(day, this.workbook, this.larder)
  }

  protected override updated(_changed: PropertyValues<this>): void {
    document.title = daysWords.title(this.#open?.name ?? daysWords.days)
    if (this.#toName && this.chosen) {
      this.#toName = false
      void this.renderRoot.querySelector('tb-day')?.nameIt()
    }
  }

  override render() {
    const day = this.#open
    const { numbers, readOnly, workbook, larder } = this
    return html`<tb-day-list
        .days=${this.#days}
        .current=${day?.id ?? ''}
        .numbers=${numbers}
        ?readOnly=${readOnly}
        @tb-name=${this.#nameIt}
      ></tb-day-list>
      ${
        day
          ? html`<tb-day
            .day=${day}
            .state=${this.#planner.state}
            .workbook=${workbook}
            .larder=${larder}
            .numbers=${numbers}
            ?readOnly=${readOnly}
            @tb-stop=${() => this.#planner.stop()}
            @tb-again=${() => this.#planner.again()}
          ></tb-day>`
          : nothing
      }
      ${day ? nothing : html`<main class="empty"><h1>${daysWords.none}</h1><p>${daysWords.how}</p></main>`}`
  }

  #nameIt = (): void => {
    this.#toName = true
    this.requestUpdate()
  }

  static override styles = daysStyles
}
customElements.define('tb-days', TbDays)

declare global {
  interface HTMLElementTagNameMap {
    'tb-days': TbDays
  }
}
