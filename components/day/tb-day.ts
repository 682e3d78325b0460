import { html, nothing, type TemplateResult } from 'lit'
import { localOf } from '../../src/day/course/clock.js'
import { dateText } from '../../src/day/out/day-text.js'
import { type EarlySaid, earlySaid } from '../../src/day/plan/early-words.js'
import { movedSentences } from '../../src/day/plan/moved.js'
import type { DaySheet } from '../../src/day/plan/open-day.js'
import type { PlannedDay } from '../../src/day/plan/planned.js'
import type { Day } from '../../src/dough/document/day.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { changeDay, renameDay } from '../../src/dough/edits/fetched/day-edits.js'
import { fetchWhenIdle } from '../base/after-paint.js'
import { BaseElement } from '../base/base-element.js'
import { askEdit, type Edit, say } from '../base/events.js'
import { showDecimals } from '../base/numbers.js'
import '../controls/tb-grow.js'
import { goToStep } from '../method/to-step.js'
import { adviceOf, stepsOf } from './day-advice.js'
import type { DayState } from './day-planner.js'
import { dayStyles } from './day-styles.js'
import { factsInWords } from './facts-in-words.js'
import './facts/tb-day-facts.js'
import './tb-by-clock.js'
import { today } from '../../src/day/out/next-day.js'
import { remarksSaid } from './remarks-said.js'
import { adviceWords, clockOf, daysWords, dayWords } from './words.js'

/** A day: what it is, how it fits, and its list by the clock. On a phone what it is stands as one sentence to be opened. */
export class TbDay extends BaseElement {
  static override properties = {
    day: { attribute: false },
    state: { attribute: false },
    workbook: { attribute: false },
    larder: { attribute: false },
    open: { state: true },
    chosen: { state: true },
  }

  declare day: Day
  declare state: DayState
  declare workbook: Workbook
  declare larder: Larder
  declare open: boolean // its facts, where there is little room
  declare chosen: string | undefined // name of the moment gone to from the drawing

  #shown = '' // id of the day

  constructor() {
    super()
    this.open = false
  }

  protected override willUpdate(): void {
    if (this.day.id === this.#shown) return
    this.#shown = this.day.id
    this.chosen = undefined
    this.open = this.day.breads.length === 0
  }

  protected override firstUpdated(): void {
    void fetchWhenIdle(() =>
      Promise.all([import('../lanes/index.js'), import('../water/tb-temperatures.js')]),
    )
  }

  override render() {
    const { day, state, workbook, larder, numbers, readOnly, open } = this
    return html`<main>
        <a class="all" href="#days">${daysWords.all}</a>
        <h1>
          <tb-grow
            label=${dayWords.name}
            field=${`day ${day.id} name`}
            .value=${day.name}
            ?readOnly=${readOnly}
            @tb-entered=${(event: CustomEvent<string>) => this.#ask(w => renameDay(w, day.id, event.detail))}
          ></tb-grow>
        </h1>
        <tb-grow
          class="own"
          manyLines
          label=${dayWords.note}
          field=${`day ${day.id} note`}
          hint=${readOnly ? '' : dayWords.noteHint}
          .value=${day.note}
          ?readOnly=${readOnly}
          @tb-entered=${(event: CustomEvent<string>) => this.#ask(w => changeDay(w, day.id, { note: event.detail }))}
        ></tb-grow>
        <p class="said">
          ${factsInWords(day, workbook, numbers)}
          <button aria-expanded=${open} aria-controls="facts" @click=${this.#toggle}>
            ${open ? dayWords.done : dayWords.change}
          </button>
        </p>
        <section id="facts" class=${open ? 'open' : ''} aria-label=${dayWords.facts}>
          <tb-day-facts
            .day=${day}
            .workbook=${workbook}
            .larder=${larder}
            .numbers=${numbers}
            today=${today()}
            ?readOnly=${readOnly}
          ></tb-day-facts>
        </section>
        ${this.#standing()}
        ${
          day.breads.length
            ? html`<p class="bench">
                <a href="#bench/${day.id}">${dayWords.bench}</a>
                <a class="order" href="#order/${day.id}">${dayWords.order}</a>
              </p>`
            : nothing
        }
        ${this.#drawn()}
        <section class="clock" aria-labelledby="by-the-clock">
          <h2 id="by-the-clock">${dayWords.byTheClock}</h2>
          ${this.#nothingYet()}
          <tb-by-clock
            .day=${day}
            .state=${state}
            .numbers=${numbers}
            ?readOnly=${readOnly}
            ?old=${!state.opened?.plan}
          ></tb-by-clock>
        </section>
      </main>
      <aside aria-label=${dayWords.remarks}>${this.#remarks()}
        ${
          day.breads.length
            ? html`<tb-temperatures
              .day=${day}
              .plan=${this.#planned?.plan}
              .workbook=${workbook}
              .larder=${larder}
              .numbers=${numbers}
              ?readOnly=${readOnly}
              >${this.#beside()}</tb-temperatures
            >`
            : nothing
        }
      </aside>`
  }

  /** Whether it fits: what moved; or what cannot be together, and what would do; or that it is being looked for. */
  #standing(): TemplateResult | typeof nothing {
    const { opened, progress, stopped, lastGood } = this.state
    if (progress) return this.#looking(progress.relaxed)
    if (!opened)
      return stopped
        ? html`<div class="note warn">
            <p>${dayWords.stoppedEmpty}</p>
            <p class="do"><button class="lined" @click=${() => this.#tellUp('tb-again')}>${dayWords.again}</button></p>
            ${this.#ofLastGood()}
          </div>`
        : nothing
    if (opened.conflict)
      return html`<div class="note warn" role="group" aria-label=${dayWords.doesNotFit}>
        <p role="alert">${opened.conflictSentence}</p>
        ${this.#advice(opened)} ${this.#stepAdvice(opened)}
        ${lastGood ? this.#ofLastGood() : nothing}
      </div>`
    if (!opened.plan) return nothing
    const early = this.#early(opened, opened.plan)
    return html`<div class="note">
      <p>${this.#fits(opened.plan, early?.fits)}</p>
      ${
        early
          ? html`<ul>${early.breads.map(words => html`<li>${words}</li>`)}</ul>
            ${this.#advice(opened)}`
          : nothing
      }
      ${stopped || !opened.plan.proven ? html`<p>${dayWords.stopped} <button @click=${() => this.#tellUp('tb-again')}>${dayWords.again}</button></p>` : nothing}
    </div>`
  }

  /** The day as it is, or the last one that had times. */
  get #planned(): DaySheet | undefined {
    const { opened, lastGood } = this.state
    return opened?.plan ? opened : lastGood
  }

  #drawn(): TemplateResult | typeof nothing {
    if (!this.#planned?.plan) return nothing
    return html`<section class="drawn" aria-label=${dayWords.drawn}>
      <tb-day-lanes
        .opened=${this.#planned}
        .workbook=${this.workbook}
        .numbers=${this.numbers}
        .chosen=${this.chosen}
        @tb-moment=${this.#goTo}
      ></tb-day-lanes>
    </section>`
  }

  /** The loads, and what leaves of the day. */
  #beside(): TemplateResult | typeof nothing {
    const opened = this.#planned
    if (!opened?.plan) return nothing
    const { workbook, numbers } = this
    return html`<section class="loads" @tb-moment=${this.#goTo}>
        <tb-day-loads .opened=${opened} .workbook=${workbook} .numbers=${numbers}></tb-day-loads>
      </section>
      <section class="out" aria-labelledby="out">
        <h2 id="out">${dayWords.out}</h2>
        <tb-day-out .opened=${opened} .workbook=${workbook} .numbers=${numbers}></tb-day-out>
      </section>`
  }

  #goTo = ({ detail }: CustomEvent<string>): void => {
    this.chosen = detail
    this.renderRoot.querySelector('tb-by-clock')?.goTo(detail)
  }

  #ofLastGood(): TemplateResult | typeof nothing {
    const { lastGood, isBare } = this.state
    if (!lastGood) return nothing
    return html`<p>${isBare ? dayWords.withoutHolds : dayWords.lastGood}</p>`
  }

  #looking(tried: number): TemplateResult {
    const said = this.state.lastGood
      ? dayWords.lookingOn(showDecimals(tried, this.numbers, 0))
      : dayWords.looking
    return html`<div class="note">
      <p>${said} <button @click=${() => this.#tellUp('tb-stop')}>${dayWords.stop}</button></p>
    </div>`
  }

  /** `All of it fits. You begin on Friday at 6:00; because nobody is up before 6:00, …` */
  #fits(plan: PlannedDay, early: string | undefined): string {
    const { day } = plan
    const first = plan.events[0]!.from
    const { date } = localOf(first, day.zone)
    const when = dayWords.at(dateText(date, this.numbers.language), clockOf(first, day))
    const name = (id: string) =>
      day.breads.length > 1 ? (this.state.opened?.breads.find(b => b.id === id)?.formula.name ?? '') : ''
    const moved = movedSentences(plan, name)
    const isPast = first < Date.now() / 60_000
    return [
      early ?? (moved.length ? dayWords.fits : dayWords.fitsAtUsual),
      isPast ? dayWords.beginsPast(when) : dayWords.begins(when),
      ...moved,
    ].join(' ')
  }

  /** Which breads are done before their time. */
  #early(opened: DaySheet, plan: PlannedDay): EarlySaid | undefined {
    const { day } = plan
    return earlySaid(
      plan,
      id => opened.breads.find(b => b.id === id)?.formula.name ?? '',
      instant => {
        const { date } = localOf(Math.round(instant), day.zone)
        const clock = clockOf(instant, day)
        return date === day.date
          ? dayWords.atClock(clock)
          : dayWords.onDate(dateText(date, this.numbers.language), clock)
      },
    )
  }

  #advice(opened: DaySheet): TemplateResult | typeof nothing {
    const advice = this.readOnly ? [] : adviceOf(opened)
    if (advice.length === 0) return nothing
    return html`<p class="do">
      ${advice.map(({ words, edit }) => html`<button class="lined" @click=${() => this.#ask(edit)}>${words}</button>`)}
    </p>`
  }

  /** The way to the steps of a formula that stand in the way. */
  #stepAdvice(opened: DaySheet): TemplateResult | typeof nothing {
    const found = stepsOf(opened)
    if (!found) return nothing
    return html`<p class="do">
        ${found.steps.map(({ words, place }) => html`<button class="lined" @click=${() => void goToStep(this, place)}>${words}</button>`)}
      </p>
      <p>${adviceWords.inFormula(found.formula)}</p>`
  }

  #nothingYet(): TemplateResult | typeof nothing {
    const { opened } = this.state
    if (this.day.breads.length === 0) return html`<p class="quiet">${dayWords.noBreads}</p>`
    const isEmpty = opened && !opened.plan && !opened.conflict
    if (this.#planned?.plan && !isEmpty) return nothing
    const why = opened
      ? isEmpty
        ? dayWords.noSteps
        : dayWords.noTimes
      : this.state.stopped
        ? dayWords.noTimesFound
        : dayWords.noTimesYet
    return html`<p class="quiet">${why}</p>`
  }

  #remarks(): TemplateResult | typeof nothing {
    const sheet = this.state.opened ?? this.state.lastGood
    const said = sheet ? remarksSaid(sheet) : []
    if (said.length === 0) return nothing
    return html`<h2>${dayWords.remarks}</h2>
      <ul>${said.map(sentence => html`<li>${sentence}</li>`)}</ul>`
  }

  #toggle = (): void => {
    this.open = !this.open
  }

  #tellUp(name: 'tb-stop' | 'tb-again'): void {
    this.dispatchEvent(new CustomEvent(name))
  }

  #ask(edit: Edit): void {
    const refusal = askEdit(this, edit, { day: this.day.id })
    if (refusal) say(this, refusal)
  }

  /** Shows the facts where a field lies among them. */
  openField(day: string, name: string): void {
    if (day === this.day.id && !/^(?:time|feed|name|note)\b/.test(name)) this.open = true
  }

  /** Puts the focus into its name. */
  async nameIt(): Promise<void> {
    await this.updateComplete
    this.renderRoot.querySelector('tb-grow')?.focus()
  }

  static override styles = dayStyles
}
customElements.define('tb-day', TbDay)

declare global {
  interface HTMLElementTagNameMap {
    'tb-day': TbDay
  }
}
