import { html, nothing, type PropertyDeclarations, type PropertyValues, svg, type TemplateResult } from 'lit'
import { localOf } from '../../src/day/course/clock.js'
import { breadNames } from '../../src/day/out/bread-names.js'
import { dateText } from '../../src/day/out/day-text.js'
import type { DaySheet } from '../../src/day/plan/open-day.js'
import type { PlannedDay } from '../../src/day/plan/planned.js'
import { emptyWorkbook, type Workbook } from '../../src/dough/document/workbook.js'
import { BaseElement } from '../base/base-element.js'
import { Geometry, type PlacedPart } from './lane-geometry.js'
import { datesOf, hourMarks, type LaneDay, type LanePart, laneDay } from './lane-layout.js'
import { lanesStyles } from './lanes-styles.js'
import { clockWords, laneName, laneWords, legendWords, partWords } from './words.js'

const lookAgain = 30_000 // ms: the present moves a pixel or so
const dateWidth = 72 // px: what shows less of a date than that names none
const nowWidth = 32 // px: its word stands among the hours, in place of those it would touch

/** Says which moment of the day was chosen in the drawing: its name. */
export type MomentChosen = CustomEvent<string>

/**
 * A day drawn: a lane for each bread, for what is made for several and for each oven. The list of its steps is the content;
 * this is a picture of it. A step chosen with the pointer, or by keys with Enter, is told as `tb-moment`.
 */
export class TbDayLanes extends BaseElement {
  static override properties: PropertyDeclarations = {
    opened: { attribute: false },
    workbook: { attribute: false },
    chosen: { attribute: false },
    now: { attribute: false },
    width: { state: true },
    at: { state: true },
  }

  declare opened: DaySheet | undefined
  declare workbook: Workbook
  declare chosen: string | undefined // name of the moment that is marked
  declare now: number | undefined // minutes since 1970; left out: the clock's
  declare private width: number // px that there are
  declare private at: string | undefined // key of the part that the keys are at

  #observer: ResizeObserver | undefined
  #clock: ReturnType<typeof setInterval> | undefined
  #laid: { readonly of: PlannedDay; readonly lanes: LaneDay } | undefined
  #geometry: Geometry | undefined
  #isScrolled = false

  constructor() {
    super()
    this.workbook = emptyWorkbook
    this.width = 0
  }

  override connectedCallback(): void {
    super.connectedCallback()
    this.#observer = new ResizeObserver(() => {
      this.width = this.clientWidth
    })
    this.#observer.observe(this)
    this.#clock = setInterval(() => this.now === undefined && this.requestUpdate(), lookAgain)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.#observer?.disconnect()
    clearInterval(this.#clock)
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const plan = this.opened?.plan
    if (plan?.events.length && this.#laid?.of !== plan) this.#laid = { of: plan, lanes: laneDay(plan) }
    if (!plan?.events.length) this.#laid = undefined
    if (this.#laid) this.#geometry = new Geometry(this.#laid.lanes, this.width || this.clientWidth)
    if (changed.has('chosen')) this.at = this.#geometry?.partOf(this.chosen)?.key ?? this.at
  }

  protected override updated(): void {
    const scroll = this.renderRoot.querySelector('.scroll')
    const geometry = this.#geometry
    if (this.#isScrolled || !scroll || !geometry || this.width === 0) return
    this.#isScrolled = true
    const present = this.#present
    if (present !== undefined) scroll.scrollLeft = geometry.x(present) - this.width / 3
  }

  /** The present where it lies in the day. */
  get #present(): number | undefined {
    const now = this.now ?? Date.now() / 60_000
    const { from, until } = this.#laid!.lanes
    return now >= from && now <= until ? now : undefined
  }

  get #nameOf(): (bread: string) => string {
    return breadNames(this.#laid!.of.day, this.workbook.formulas)
  }

  override render() {
    const geometry = this.#geometry
    if (!this.#laid || !geometry) return nothing
    const { lanes } = this.#laid
    const { zone } = this.#laid.of.day
    const { width, height } = geometry
    return html`<div class="scroll">
        <div class="drawing" style=${`width: ${width}px; height: ${height}px`} @click=${this.#click}>
          <svg viewBox=${`0 0 ${width} ${height}`} width=${width} height=${height} role="img" aria-label=${this.#described}>
            ${this.#ground(geometry)} ${geometry.parts.map(part => this.#part(part))}
            ${geometry.parts.filter(({ part }) => part.held).map(({ x, y, height }) => svg`<path class="held" d=${`M${x - 5} ${y - 5}h10l-4 6v${height + 3}h-2v${-height - 3}z`} />`)}
            ${this.#line(geometry)}
          </svg>
          ${datesOf(lanes, zone).map(
            ({ date, from, until }) => html`<div
              class="date"
              aria-hidden="true"
              style=${`left: ${geometry.x(from)}px; width: ${geometry.x(until) - geometry.x(from)}px`}
            >
              ${geometry.x(until) - geometry.x(from) < dateWidth ? nothing : html`<span>${dateText(date, this.numbers.language, 'short')}</span>`}
            </div>`,
          )}
          <div class="stays" aria-hidden="true">
            ${geometry.lanes.map(({ lane, y }) => html`<span class="name" style=${`top: ${y}px`}>${laneName(lane, this.#nameOf)}</span>`)}
          </div>
          ${this.#cursor(geometry)}
        </div>
      </div>
      ${this.#legend(geometry)}`
  }

  get #described(): string {
    const { of, lanes } = this.#laid!
    const { zone } = of.day
    const { language } = this.numbers
    const when = (instant: number) =>
      `${dateText(localOf(instant, zone).date, language)} ${clockWords(instant, zone)}`
    return laneWords.drawn(
      lanes.lanes.map(lane => laneName(lane, this.#nameOf)),
      when(Math.min(...lanes.lanes.flatMap(l => l.parts.map(p => p.from)))),
      when(Math.max(...lanes.lanes.flatMap(l => l.parts.map(p => p.until)))),
      [...new Set(lanes.nights.map(([a, b]) => `${clockWords(a, zone)}–${clockWords(b, zone)}`))],
    )
  }

  /** Nights and hours. */
  #ground(geometry: Geometry): TemplateResult[] {
    const { of, lanes } = this.#laid!
    const { hours, marks, height } = geometry
    const now = this.#present === undefined ? Number.NaN : geometry.x(this.#present)
    const nights = lanes.nights.map(
      ([from, until]) =>
        svg`<rect class="night" x=${geometry.x(from)} y=${marks} width=${geometry.x(until) - geometry.x(from)} height=${height - marks} />`,
    )
    const lines = hourMarks(lanes, of.day.zone, hours).map(({ instant, hour }) => {
      const x = geometry.x(instant)
      const anchor = x < 8 ? 'start' : x > geometry.width - 12 ? 'end' : 'middle'
      return svg`<path class=${hour === 0 ? 'mark midnight' : 'mark'} d=${`M${x} ${marks}V${height}`} />
        ${Math.abs(x - now) < nowWidth ? nothing : svg`<text x=${x} y=${marks - 5} text-anchor=${anchor}>${laneWords.hour(hour)}</text>`}`
    })
    return [...nights, ...lines]
  }

  #part({ part, x, y, width, height }: PlacedPart): TemplateResult {
    const said = partWords(part, this.#laid!.of.day.zone, this.#nameOf)
    return svg`<rect class=${part.shows} data-moment=${part.moment ?? nothing} x=${x} y=${y} width=${width} height=${height} rx=${part.shows === 'hands' ? 1 : 3}><title>${said}</title></rect>`
  }

  #line({ x, marks, height, width }: Geometry): TemplateResult | typeof nothing {
    const present = this.#present
    if (present === undefined) return nothing
    const at = x(present)
    const anchor = at < nowWidth / 2 ? 'start' : at > width - nowWidth / 2 ? 'end' : 'middle'
    return svg`<path class="now" d=${`M${at} ${marks}V${height}`} />
      <text class="now" x=${at} y=${marks - 5} text-anchor=${anchor}>${laneWords.now}</text>`
  }

  /** One stop of the Tab key that the arrows move from step to step, read out as it goes. */
  #cursor(geometry: Geometry): TemplateResult | typeof nothing {
    const steps = geometry.steps
    const at = this.#placed(geometry)
    if (!at) return nothing
    const { x, y, width, height, part } = at
    const { zone } = this.#laid!.of.day
    const isChosen = this.chosen !== undefined && part.moment === this.chosen
    return html`<div
      class=${isChosen ? 'cursor chosen' : 'cursor'}
      style=${`left: ${x}px; top: ${y}px; width: ${Math.max(width, 4)}px; height: ${height}px`}
      role="slider"
      tabindex="0"
      aria-label=${laneWords.steps}
      aria-description=${laneWords.keys}
      aria-valuemin="1"
      aria-valuemax=${steps.length}
      aria-valuenow=${steps.indexOf(at) + 1}
      aria-valuetext=${partWords(part, zone, this.#nameOf)}
      @keydown=${this.#key}
    ></div>`
  }

  #placed({ steps }: Geometry): PlacedPart | undefined {
    const present = this.#present ?? Number.NEGATIVE_INFINITY
    return steps.find(s => s.key === this.at) ?? steps.find(s => s.part.until > present) ?? steps[0]
  }

  #legend({ parts }: Geometry): TemplateResult {
    const shown = (['hands', 'wait', 'bake', 'heating'] as const).filter(shows =>
      parts.some(({ part }) => part.shows === shows),
    )
    const sign = (drawn: TemplateResult) =>
      html`<svg width="16" height="14" viewBox="0 0 16 14">${drawn}</svg>`
    const rect = (shows: LanePart['shows'] | 'night') =>
      svg`<rect class=${shows} x="1" y=${shows === 'wait' ? 3.5 : 1} width="14" height=${shows === 'wait' ? 7 : 12} rx="2" />`
    const { nights } = this.#laid!.lanes
    return html`<ul class="legend" aria-hidden="true">
      ${shown.map(shows => html`<li>${sign(rect(shows))}${legendWords[shows]}</li>`)}
      ${nights.length ? html`<li>${sign(rect('night'))}${legendWords.night}</li>` : nothing}
      ${parts.some(({ part }) => part.held) ? html`<li>${sign(svg`<path class="held" d="M3 1h10l-4 6v6h-2V7z" />`)}${legendWords.held}</li>` : nothing}
    </ul>`
  }

  #choose(part: LanePart): void {
    if (part.moment === undefined) return
    this.dispatchEvent(new CustomEvent('tb-moment', { detail: part.moment, bubbles: true, composed: true }))
  }

  #click = (event: MouseEvent): void => {
    const box = (event.currentTarget as HTMLElement).getBoundingClientRect()
    const found = this.#geometry?.nearest(event.clientX - box.left, event.clientY - box.top)
    if (!found) return
    this.at = found.key
    this.#choose(found.part)
  }

  #key = (event: KeyboardEvent): void => {
    const geometry = this.#geometry
    const at = geometry && this.#placed(geometry)
    if (!at || event.altKey || event.ctrlKey || event.metaKey) return
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault()
      this.#choose(at.part)
      return
    }
    const to = geometry.after(at, event.key)
    if (!to) return
    event.preventDefault()
    this.at = to.key
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector('.cursor')?.scrollIntoView({ block: 'nearest', inline: 'nearest' }),
    )
  }

  static override styles = lanesStyles
}
customElements.define('tb-day-lanes', TbDayLanes)

declare global {
  interface HTMLElementTagNameMap {
    'tb-day-lanes': TbDayLanes
  }
  interface HTMLElementEventMap {
    'tb-moment': MomentChosen
  }
}
