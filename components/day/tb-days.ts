import { html, type TemplateResult } from 'lit'
import { nextDay } from '../../src/day/out/next-day.js'
import type { Day } from '../../src/dough/document/day.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { BaseElement } from '../base/base-element.js'
import { hashFrom } from '../base/hash.js'
import { isWide } from '../styles/breakpoints.js'
import { DayPlanner } from './day-planner.js'
import { daysStyles } from './days-styles.js'
import './tb-day.js'
import './tb-day-list.js'
import { daysWords } from './words.js'

const idInAddress = (): string => hashFrom('#days/'.length)

/** The days: their list, and the one that the address names; beside the list, where there is room, the next to come. */
export class TbDays extends BaseElement {
  static override properties = {
    workbook: { attribute: false },
    larder: { attribute: false },
    chosen: { state: true },
  }

  declare workbook: Workbook
  declare larder: Larder
  declare chosen: string // id of the day in the address, '' for none that is there

  readonly #wide = matchMedia(isWide)
  readonly #planner = new DayPlanner(() => this.requestUpdate())
  #address: string | undefined // as it was last looked at
  #toName = false

  constructor() {
    super()
    this.chosen = ''
  }

  override connectedCallback(): void {
    super.connectedCallback()
    window.addEventListener('hashchange', this.#followAddress)
    this.#wide.addEventListener('change', this.#followAddress)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    window.removeEventListener('hashchange', this.#followAddress)
    this.#wide.removeEventListener('change', this.#followAddress)
    this.#planner.close()
  }

  #followAddress = (): void => {
    if (location.hash.startsWith('#days')) this.requestUpdate()
  }

  get #days(): readonly Day[] {
    return this.workbook.days ?? []
  }

  /** The day that is chosen; beside the list, where none is, the next to come. */
  get #open(): Day | undefined {
    const chosen = this.#days.find(({ id }) => id === this.chosen)
    if (chosen || !this.#wide.matches) return chosen
    return nextDay(this.#days)
  }

  protected override willUpdate(): void {
    const address = idInAddress()
    this.chosen = this.#days.some(({ id }) => id === address) ? address : ''
    if (address !== this.#address) scrollTo({ top: 0 })
    this.#address = address
    const day = this.#open
    if (day) this.#planner.plan(day, this.workbook, this.larder)
  }

  protected override updated(): void {
    document.title = daysWords.title(this.#open?.name ?? daysWords.days)
    if (this.#toName && this.chosen) {
      this.#toName = false
      void this.renderRoot.querySelector('tb-day')?.nameIt()
    }
  }

  override render() {
    const day = this.#open
    if (this.#wide.matches) return html`${this.#list(day)}${day ? this.#day(day) : this.#none()}`
    if (day) return this.#day(day)
    return html`<main class="alone">
      ${this.#days.length ? html`<h1 class="unseen">${daysWords.days}</h1>` : this.#noneSaid()} ${this.#list(day)}
    </main>`
  }

  #list(day: Day | undefined): TemplateResult {
    return html`<tb-day-list
      .days=${this.#days}
      .current=${day?.id ?? ''}
      .cleared=${this.workbook.cleared?.length ?? 0}
      .numbers=${this.numbers}
      ?readOnly=${this.readOnly}
      @tb-name=${this.#nameIt}
    ></tb-day-list>`
  }

  #day(day: Day): TemplateResult {
    return html`<tb-day
      .day=${day}
      .state=${this.#planner.state}
      .workbook=${this.workbook}
      .larder=${this.larder}
      .numbers=${this.numbers}
      ?readOnly=${this.readOnly}
      @tb-stop=${() => this.#planner.stop()}
      @tb-again=${() => this.#planner.again()}
    ></tb-day>`
  }

  #none(): TemplateResult {
    return html`<main class="empty">${this.#noneSaid()}</main>`
  }

  #noneSaid(): TemplateResult {
    return html`<h1>${daysWords.none}</h1>
      <p>${daysWords.how}</p>`
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
