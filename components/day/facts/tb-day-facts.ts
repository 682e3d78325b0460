import { html, nothing, type TemplateResult } from 'lit'
import { clockText, readClock } from '../../../src/day/course/clock.js'
import { isLeeway } from '../../../src/dough/document/checks.js'
import { type Day, usualLeeway } from '../../../src/dough/document/day.js'
import type { Larder } from '../../../src/dough/document/larder.js'
import type { Workbook } from '../../../src/dough/document/workbook.js'
import { changeDay, type Fields, moveDay, setLeeway } from '../../../src/dough/edits/fetched/day-edits.js'
import { BaseElement } from '../../base/base-element.js'
import { askEdit, say } from '../../base/events.js'
import { showNumber } from '../../base/numbers.js'
import { TypedFields } from '../../controls/typed-fields.js'
import { sentenceStyles } from '../../styles/sentence-styles.js'
import { readNumber, readPart } from '../../typed/typed-numbers.js'
import { factStyles } from './facts-styles.js'
import { dateToRead, readDate } from './read-date.js'
import './tb-day-breads.js'
import './tb-day-ovens.js'
import { readCelsius } from './typed-facts.js'
import { usualName } from './usual-name.js'
import { type From, factWords, fromWords, notTakenFacts } from './words.js'

const usualTimes = { ready: '9:00', begin: '7:00' } as const
const usualNight = { from: '22:30', until: '6:00' } as const

/** What a day is, as sentences of fields: when, which breads, the kitchen, who sleeps, the ovens. Each change is one edit. */
export class TbDayFacts extends BaseElement {
  static override properties = {
    day: { attribute: false },
    workbook: { attribute: false },
    larder: { attribute: false },
    today: {},
  }

  declare day: Day
  declare workbook: Workbook
  declare larder: Larder
  declare today: string // date
  readonly #fields = new TypedFields(this, () => `day ${this.day.id}`)
  #shown = '' // id of the day whose fields these are
  #was: { readonly ready?: string; readonly begin?: string } = {} // times said before they were put aside

  protected override willUpdate(): void {
    if (this.day.id === this.#shown) return
    this.#shown = this.day.id
    this.#fields.forget()
    this.#was = {}
  }

  override render() {
    const { day, numbers, workbook, larder, readOnly } = this
    return html`${this.#when()}
      <tb-day-breads
        .day=${day}
        .workbook=${workbook}
        .larder=${larder}
        .numbers=${numbers}
        ?readOnly=${readOnly}
      ></tb-day-breads>
      <p class="line">${this.#kitchen()}</p>
      ${this.#fields.faults('kitchen', 'fridge', 'proofer')}
      <p class="line">${this.#nights()}${this.#leeway()}</p>
      ${this.#fields.faults(...day.asleep.flatMap((_, i) => [`from${i}`, `until${i}`]), 'bakers', 'leeway')}
      <tb-day-ovens .day=${day} .numbers=${numbers} ?readOnly=${readOnly}></tb-day-ovens>`
  }

  #when(): TemplateResult {
    const { day, numbers } = this
    const from: From = day.ready === undefined ? 'begin' : day.begin === undefined ? 'ready' : 'both'
    return html`<p class="line lead">
        <select aria-label=${factWords.from} ?disabled=${this.readOnly} @change=${this.#chooseFrom}>
          ${Object.entries(fromWords).map(([way, words]) => html`<option value=${way} .selected=${way === from}>${words}</option>`)}
        </select>
        ${day.begin === undefined ? nothing : this.#clock('begin', factWords.begin, day.begin, begin => ({ begin }))}
        ${from === 'both' ? factWords.to : nothing}
        ${day.ready === undefined ? nothing : this.#clock('ready', factWords.ready, day.ready, ready => ({ ready }))}
        ${factWords.on}
        <span class="date">${this.#fields.field({
          name: 'date',
          label: factWords.date,
          kept: dateToRead(day.date, this.today, numbers.language),
          keys: 'text',
          isReadOnly: this.readOnly,
          take: typed => {
            const date = readDate(typed, this.today, numbers.language)
            return date
              ? this.#move(date)
              : notTakenFacts.date(dateToRead(this.today, this.today, numbers.language))
          },
        })}</span>
      </p>
      ${this.#fields.faults('begin', 'ready', 'date')}`
  }

  /** To another date; a day that is called by its weekday is called by the other. */
  #move(date: string): string | undefined {
    const { day } = this
    const { language } = this.numbers
    const name = day.name === usualName(day.date, language) ? usualName(date, language) : day.name
    return this.#ask(workbook => moveDay(workbook, day.id, date, name))
  }

  /** A field for a time on the clock. */
  #clock(name: string, label: string, kept: string, fields: (clock: string) => Fields<Day>): TemplateResult {
    return this.#fields.field({
      name,
      label,
      kept,
      isReadOnly: this.readOnly,
      take: typed => {
        const minutes = readClock(typed)
        return minutes === undefined ? notTakenFacts.clock : this.#change(fields(clockText(minutes)))
      },
    })
  }

  #kitchen(): TemplateResult {
    const { day } = this
    return html`<span class="pair">${factWords.kitchen} ${this.#celsius('kitchen', factWords.kitchenDegrees, day.kitchen)}</span>
      <span class="pair">${factWords.fridge} ${this.#celsius('fridge', factWords.fridgeDegrees, day.fridge)}</span>
      <span class="pair">${factWords.proofer} ${this.#celsius('proofer', factWords.prooferDegrees, day.proofer)}</span>`
  }

  #celsius(name: 'kitchen' | 'fridge' | 'proofer', label: string, kept: number | undefined): TemplateResult {
    const { numbers } = this
    return this.#fields.field({
      name,
      label,
      kept: kept === undefined ? '' : showNumber(kept, numbers),
      unit: '°C',
      short: true,
      isReadOnly: this.readOnly,
      take: typed => {
        if (typed.trim() === '' && name === 'proofer') return this.#change({ proofer: undefined })
        const celsius = readCelsius(typed, numbers)
        return celsius === undefined ? notTakenFacts.celsius : this.#change({ [name]: celsius })
      },
    })
  }

  #nights(): TemplateResult {
    const { asleep, bakers } = this.day
    const at = (index: number, fields: Partial<(typeof asleep)[number]>): Fields<Day> => ({
      asleep: asleep.map((night, i) => (i === index ? { ...night, ...fields } : night)),
    })
    return html`${
      asleep.length
        ? asleep.map(
            ({ from, until }, i) => html`<span class="pair">
                ${factWords.asleep} ${this.#clock(`from${i}`, factWords.asleepFrom, from, clock => at(i, { from: clock }))}${
                  factWords.to
                }${this.#clock(`until${i}`, factWords.asleepUntil, until, clock => at(i, { until: clock }))}${
                  this.readOnly
                    ? nothing
                    : html`<button
                      class="out"
                      aria-label=${factWords.leaveOutNight}
                      title=${factWords.leaveOutNight}
                      @click=${() => this.#tell({ asleep: asleep.filter((_, n) => n !== i) })}
                    >${cross}</button>`
                }</span>`,
          )
        : html`<span class="pair"
              >${factWords.nobodySleeps}${
                this.readOnly
                  ? nothing
                  : html`<button @click=${() => this.#tell({ asleep: [usualNight] })}>${factWords.addNight}</button>`
              }</span
            >`
    }
      <span class="pair bakers">${this.#fields.field({
        name: 'bakers',
        label: factWords.bakersCount,
        kept: showNumber(bakers, this.numbers),
        short: true,
        isReadOnly: this.readOnly,
        take: typed => {
          const count = readNumber(typed, this.numbers) ?? 0
          return Number.isInteger(count) && count >= 1
            ? this.#change({ bakers: count })
            : notTakenFacts.bakers
        },
      })} ${factWords.bakers(bakers)}</span>`
  }

  #leeway(): TemplateResult {
    return html`<span class="pair seldom">
        ${factWords.leeway}
        ${this.#fields.field({
          name: 'leeway',
          label: factWords.leewayOf,
          kept: showNumber((this.workbook.leeway ?? usualLeeway) * 100, this.numbers),
          short: true,
          isReadOnly: this.readOnly,
          take: typed => {
            const part = readPart(typed, this.numbers)
            if (part === undefined || !isLeeway(part)) return notTakenFacts.leeway
            return this.#ask(() => setLeeway(part === usualLeeway ? undefined : part))
          },
        })}
        ${factWords.leewayUnit}</span>`
  }

  #chooseFrom = (event: Event): void => {
    const from = (event.target as HTMLSelectElement).value as From
    const { ready, begin } = this.day
    this.#was = { ...this.#was, ...(ready && { ready }), ...(begin && { begin }) }
    const { ready: wasReady = usualTimes.ready, begin: wasBegin = usualTimes.begin } = this.#was
    this.#tell({
      ready: from === 'begin' ? undefined : wasReady,
      begin: from === 'ready' ? undefined : wasBegin,
    })
  }

  #ask(edit: Parameters<typeof askEdit>[1]): string | undefined {
    return askEdit(this, edit, { day: this.day.id })
  }

  #change(fields: Fields<Day>): string | undefined {
    return this.#ask(workbook => changeDay(workbook, this.day.id, fields))
  }

  /** The same, where no field stands that the reason could be put beneath. */
  #tell(fields: Fields<Day>): void {
    const refusal = this.#change(fields)
    if (refusal) say(this, refusal)
  }

  static override styles = [sentenceStyles, factStyles]
}
customElements.define('tb-day-facts', TbDayFacts)

const cross = html`<svg aria-hidden="true" width="12" height="12" stroke="currentColor" stroke-width="1.7">
  <path d="M2 2l8 8M10 2L2 10" />
</svg>`

declare global {
  interface HTMLElementTagNameMap {
    'tb-day-facts': TbDayFacts
  }
}
