import { html, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import { lengthText, localOf, localText, readClock } from '../../src/day/course/clock.js'
import { dateText } from '../../src/day/out/day-text.js'
import { nearestDate } from '../../src/day/plan/open-day.js'
import type { Day } from '../../src/dough/document/day.js'
import { holdMoment, releaseMoment } from '../../src/dough/edits/fetched/day-edits.js'
import { BaseElement } from '../base/base-element.js'
import { askEdit, say } from '../base/events.js'
import { type ClockRow, clockDates, type HeatRow } from './clock-rows.js'
import { clockStyles } from './clock-styles.js'
import type { DayState } from './day-planner.js'
import './tb-time-working.js'
import { clockOf, clockWords } from './words.js'

/** A time being typed, with why it was not taken. */
interface Typing {
  readonly key: string // of its row
  readonly text: string | undefined // undefined: as it is shown, all of it to be overwritten
  readonly why: string
}

/** A planned day as a list by the clock. Each time is typed in place: then it is held, until it is let follow again. */
export class TbByClock extends BaseElement {
  static override properties = {
    day: { attribute: false },
    state: { attribute: false },
    typing: { state: true },
    asked: { state: true },
  }

  declare day: Day // as it stands
  declare state: DayState
  declare typing: Typing | undefined
  declare asked: string // key of the row whose working is open

  #rows: readonly ClockRow[] = []
  #shown = '' // id of the day
  #told:
    | { readonly words: string; readonly key: string; readonly before: ReadonlyMap<string, number> }
    | undefined
  #focusOn: { readonly key: string; readonly what: 'time' | 'how' } | undefined

  constructor() {
    super()
    this.typing = undefined
    this.asked = ''
  }

  protected override willUpdate(): void {
    if (this.day.id === this.#shown) return
    this.#shown = this.day.id
    this.typing = undefined
    this.asked = ''
    this.#told = undefined
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('state')) this.#tell()
    const to = this.#focusOn
    this.#focusOn = undefined
    if (to) this.#at(to.key)?.querySelector<HTMLElement>(`.${to.what}`)?.focus()
    const input = this.renderRoot.querySelector<HTMLInputElement>('.when input')
    if (!input || !changed.has('typing') || changed.get('typing')?.key === this.typing?.key) return
    input.focus()
    if (this.typing?.text === undefined) input.select()
  }

  /** Says what moved when a time was typed, once that is known. */
  #tell(): void {
    const { state } = this
    const told = this.#told
    if (!told || !state.opened) return
    this.#told = undefined
    const { plan } = state.opened
    if (!plan) return // the conflict is told where it stands
    const moved = plan.events.flatMap(({ begins, from }) => {
      const off = Math.abs(from - (told.before.get(begins) ?? from))
      return off > 0.5 && begins !== told.key ? [off] : []
    })
    const rest = moved.length
      ? clockWords.moved(moved.length, lengthText(Math.max(...moved)))
      : clockWords.nothingMoved
    say(this, `${told.words} ${rest}`)
  }

  override render() {
    const { opened, lastGood } = this.state
    const sheet = opened?.plan ? opened : lastGood
    if (!sheet?.plan) return nothing
    const dates = clockDates(sheet, this.day, this.numbers)
    this.#rows = dates.flatMap(({ rows }) => rows.filter(row => row.event !== undefined))
    return html`${
      this.readOnly ? nothing : html`<p class="hint" id="hint">${clockWords.hint}</p>`
    }${dates.map(
      ({ date, rows }) => html`<h3 id="d${date}">${dateText(date, this.numbers.language)}</h3>
        <ol aria-labelledby="d${date}" @keydown=${this.#key}>
          ${repeat(
            rows,
            ({ key }) => key,
            row => (row.event ? this.#row(row) : heatRow(row)),
          )}
        </ol>`,
    )}`
  }

  #row(row: ClockRow): TemplateResult {
    const { key, event, what, of, about, weigh, length, named, time, typed } = row
    const isAsked = this.asked === key
    const fits = !typed || typed === time
    return html`<li class=${typed ? 'typed' : ''} data-key=${key}>
      <div class="when">${this.#time(row)}</div>
      <span class="mark ${event.kind}" aria-hidden="true"></span>
      <div class="what">
        <span class="does">${what}${of ? html` <span class="of">${of}</span>` : nothing}</span>
        ${weigh ? html`<small class="weigh">${weigh}</small>` : nothing}
        ${about ? html`<small>${about}</small>` : nothing}
        ${fits ? nothing : html`<small class="wrong">${clockWords.notFitting(time)}</small>`}
        ${fits || this.readOnly ? nothing : this.#instead(row)}
        ${
          typed && !this.readOnly
            ? html`<button class="follow" aria-label=${clockWords.followThis(named)} @click=${() => this.#release(row)}>${clockWords.follow}</button>`
            : nothing
        }
      </div>
      <button
        class="how"
        aria-label=${`${length}; ${clockWords.how(named)}`}
        aria-expanded=${isAsked}
        title=${clockWords.how(named)}
        @click=${() => this.#ask(row)}
      >
        ${length}
      </button>
      ${
        this.typing?.key === key && this.typing.why
          ? html`<p class="fault" id="why" role="alert">${this.typing.why}</p>`
          : nothing
      }
      ${isAsked ? this.#working(row) : nothing}
    </li>`
  }

  /** What would do in place of a time that does not fit. */
  #instead({ key, event, named }: ClockRow) {
    const nearest = this.state.opened?.conflict?.nearest.find(
      ({ reason }) => reason.of === 'held' && reason.moment === event.begins,
    )
    if (!nearest) return nothing
    const at = localText(localOf(nearest.time, this.day.zone))
    const clock = clockOf(nearest.time, this.day)
    return html`<button
      class="follow"
      @click=${() => {
        this.#focusOn = { key, what: 'time' }
        this.#edit(clockWords.held(named, clock), event.begins, workbook =>
          holdMoment(workbook, this.day.id, event.begins, at, named),
        )
      }}
    >${clockWords.takeInstead(clock)}</button>`
  }

  #time(row: ClockRow): TemplateResult {
    const { key, named, typed } = row
    const shown = typed || row.time
    if (this.typing?.key === key)
      return html`<input
        aria-label=${clockWords.newTime(named)}
        aria-invalid=${this.typing.why ? 'true' : nothing}
        aria-describedby=${this.typing.why ? 'why' : 'hint'}
        autocomplete="off"
        inputmode="decimal"
        enterkeyhint="done"
        data-typed=${`day ${this.day.id} time ${key}`}
        .defaultValue=${shown}
        .value=${this.typing.text ?? shown}
        @blur=${this.#left}
        @keydown=${this.#keyInField}
      />`
    return html`<button
      class="time"
      aria-label=${clockWords.time(named, shown, typed !== '')}
      aria-describedby=${this.readOnly ? nothing : 'hint'}
      ?disabled=${this.readOnly}
      @click=${() => this.#open(key, undefined)}
    >
      ${shown}
    </button>`
  }

  #working(row: ClockRow): TemplateResult {
    const { opened, lastGood } = this.state
    return html`<tb-time-working
      .sheet=${opened?.plan ? opened : lastGood}
      .moment=${row.event.begins}
      @tb-close=${() => this.#ask(row)}
    ></tb-time-working>`
  }

  /** Opens the field of a time by its name, as `#time` gives it. */
  openField(day: string, name: string): void {
    const key = name.replace(/^time /, '')
    if (day === this.day.id && key !== name && this.typing?.key !== key) this.#open(key, undefined)
  }

  /** Puts the focus on a moment's time, or where that cannot be typed on its length; false where the list has no such moment. */
  goTo(moment: string): boolean {
    const row = this.#rows.find(({ event }) => event.begins === moment)
    if (!row) return false
    this.#at(row.key)
      ?.querySelector<HTMLElement>(this.readOnly ? '.how' : '.time')
      ?.focus()
    return true
  }

  #ask({ key }: ClockRow): void {
    if (this.asked === key) this.#focusOn = { key, what: 'how' }
    this.asked = this.asked === key ? '' : key
  }

  #at(key: string): HTMLElement | null {
    return this.renderRoot.querySelector(`li[data-key="${CSS.escape(key)}"]`)
  }

  #open(key: string, text: string | undefined): void {
    if (!this.readOnly) this.typing = { key, text, why: '' }
  }

  /** Takes the time that stands in the field; false where it is none, which is then said beneath. */
  #take(input: HTMLInputElement): boolean {
    const { typing } = this
    const row = this.#rows.find(({ key }) => key === typing?.key)
    if (!typing || !row) return true
    const text = input.value.trim()
    if (text === '') {
      this.typing = undefined
      if (row.typed) this.#release(row)
      return true
    }
    if (text === (row.typed || row.time)) {
      this.typing = undefined
      return true
    }
    const minutes = readClock(text)
    if (minutes === undefined) {
      this.typing = { ...typing, text: input.value, why: clockWords.notATime(text) }
      return false
    }
    this.typing = undefined
    const at = nearestDate(row.event.from, minutes, this.day.zone)
    const { begins } = row.event
    this.#edit(clockWords.held(row.named, at.slice(11).replace(/^0/, '')), begins, workbook =>
      holdMoment(workbook, this.day.id, begins, at, row.named),
    )
    return true
  }

  #release(row: ClockRow): void {
    const { begins } = row.event
    this.#focusOn = { key: row.key, what: 'time' }
    this.#edit(clockWords.released(row.named), begins, workbook =>
      releaseMoment(workbook, this.day.id, begins, row.named),
    )
  }

  #edit(words: string, key: string, edit: Parameters<typeof askEdit>[1]): void {
    const { opened, lastGood } = this.state
    const before = new Map((opened?.plan ?? lastGood?.plan)?.events.map(({ begins, from }) => [begins, from]))
    this.#told = { words, key, before }
    const refusal = askEdit(this, edit, { day: this.day.id })
    if (!refusal) return
    this.#told = undefined
    say(this, refusal)
  }

  #left = (event: FocusEvent): void => {
    if (document.hasFocus()) this.#take(event.target as HTMLInputElement)
  }

  #keyInField = (event: KeyboardEvent): void => {
    if (event.isComposing || event.keyCode === 229) return // Safari: Enter that ends a composition
    const { typing } = this
    if (!typing || (event.key !== 'Enter' && event.key !== 'Escape')) return
    event.preventDefault()
    event.stopPropagation()
    if (event.key === 'Escape') this.typing = undefined
    else if (!this.#take(event.target as HTMLInputElement)) return
    this.#focusOn = { key: typing.key, what: 'time' }
  }

  #key = (event: KeyboardEvent): void => {
    const button = event.target as HTMLElement
    const key = button.closest<HTMLElement>('li')?.dataset.key
    if (event.defaultPrevented || key === undefined || !button.matches('.time, .how')) return
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      const all = [
        ...this.renderRoot.querySelectorAll<HTMLElement>(button.matches('.time') ? '.time' : '.how'),
      ]
      event.preventDefault()
      all[all.indexOf(button) + (event.key === 'ArrowDown' ? 1 : -1)]?.focus()
    } else if (button.matches('.time')) this.#keyOnTime(event, key)
  }

  #keyOnTime(event: KeyboardEvent, key: string): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    if (event.key === 'Delete' || event.key === 'Backspace') {
      const row = this.#rows.find(one => one.key === key)
      event.preventDefault()
      if (row?.typed && !this.readOnly) this.#release(row)
    } else if (event.key === 'F2') this.#open(key, undefined)
    // The field takes the key itself: it has the focus by then.
    else if (/^\d$/.test(event.key)) this.#open(key, '')
  }

  static override styles = clockStyles
}
const heatRow = ({ what, time, length }: HeatRow): TemplateResult => html`<li>
  <div class="when"><span class="time">${time}</span></div>
  <span class="mark heat" aria-hidden="true"></span>
  <div class="what"><span class="does">${what}</span></div>
  <span class="long">${length}</span>
</li>`
customElements.define('tb-by-clock', TbByClock)

declare global {
  interface HTMLElementTagNameMap {
    'tb-by-clock': TbByClock
  }
}
