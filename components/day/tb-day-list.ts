import { html, nothing } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import { dateAfter } from '../../src/day/course/clock.js'
import { dateText } from '../../src/day/out/day-text.js'
import { latestFirst, today } from '../../src/day/out/next-day.js'
import type { Day } from '../../src/dough/document/day.js'
import type { Transaction, Workbook } from '../../src/dough/document/workbook.js'
import { addDay, copyDay, newDay, removeDay } from '../../src/dough/edits/fetched/day-edits.js'
import { BaseElement } from '../base/base-element.js'
import { askEdit, say, wish } from '../base/events.js'
import { goTo } from '../base/hash.js'
import type { MenuItem } from '../controls/tb-menu.js'
import '../controls/tb-menu.js'
import { dayListStyles } from './day-list-styles.js'
import { usualName } from './facts/usual-name.js'
import { daysWords } from './words.js'

const mostLike = 8 // earlier days offered to begin a new one from
const usualReady = '9:00'

const here = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone || 'UTC'

/** Enough ahead for a levain fed tomorrow. */
const usualDate = (): string => dateAfter(today(), 2)

/** The days of the workbook, to go to, to plan another. */
export class TbDayList extends BaseElement {
  static override properties = {
    days: { attribute: false },
    current: {},
    cleared: { type: Number },
    removed: { state: true },
  }

  declare days: readonly Day[]
  declare current: string // id of the open day
  declare cleared: number // things that were deleted and can be brought back
  declare removed: string // name of the day just deleted

  constructor() {
    super()
    this.days = []
    this.current = ''
    this.cleared = 0
    this.removed = ''
  }

  override render() {
    const { days } = this
    return html`<nav aria-label=${daysWords.days}>
      <h2>${daysWords.days}</h2>
      ${
        this.removed
          ? html`<p class="removed">
            ${daysWords.removed(this.removed)} <button @click=${this.#undo}>${daysWords.undo}</button>
          </p>`
          : nothing
      }
      <ul>
        ${repeat(
          latestFirst(days),
          day => day.id,
          day => this.#row(day),
        )}
      </ul>
      ${
        this.readOnly
          ? nothing
          : days.length === 0
            ? html`<button id="new" class="main" @click=${() => this.#addEmpty(usualDate())}>${daysWords.newDay}</button>`
            : html`<tb-menu
            id="new"
            look="lined"
            face=${daysWords.newDay}
            label=${daysWords.newDay}
            .items=${this.#newItems()}
          ></tb-menu>`
      }
      <p><button class="quiet" @click=${() => goTo('bench')}>${daysWords.bakes}</button></p>
      ${this.cleared ? html`<button class="quiet" @click=${() => wish(this, { want: 'cleared' })}>${daysWords.cleared(this.cleared)}</button>` : nothing}
    </nav>`
  }

  #row(day: Day) {
    return html`<li class="row">
      <a href="#days/${day.id}" aria-current=${day.id === this.current ? 'page' : nothing}>
        ${day.name}<small>${dateText(day.date, this.numbers.language)}</small>
      </a>
      ${this.readOnly ? nothing : html`<tb-menu label=${daysWords.actions(day.name)} .items=${this.#actions(day)}></tb-menu>`}
    </li>`
  }

  #newItems(): readonly MenuItem[] {
    const { language } = this.numbers
    const date = usualDate()
    return [
      { label: daysWords.empty, note: daysWords.emptyNote, run: () => this.#addEmpty(date) },
      ...latestFirst(this.days)
        .slice(0, mostLike)
        .map(day => ({
          label: daysWords.like(day.name),
          note: dateText(day.date, language),
          run: () => this.#add(workbook => copyDay(workbook, day.id, date)),
        })),
    ]
  }

  #actions(day: Day): readonly MenuItem[] {
    return [
      { label: daysWords.rename, run: () => this.#rename(day) },
      {
        label: daysWords.again,
        run: () => this.#add(workbook => copyDay(workbook, day.id, dateAfter(day.date, 7))),
      },
      ...(day.breads.length
        ? [{ label: daysWords.handout, run: () => wish(this, { want: 'handout', day: day.id }) }]
        : []),
      { label: daysWords.remove, run: () => this.#remove(day) },
    ]
  }

  #addEmpty(date: string): void {
    const name = usualName(date, this.numbers.language)
    this.#add(() => addDay(newDay({ name, date, zone: here(), ready: usualReady })))
  }

  /** Adds a day and goes to it. */
  #add(edit: (workbook: Workbook) => Transaction): void {
    let added = ''
    const refusal = askEdit(this, workbook => {
      const transaction = edit(workbook)
      const [change] = transaction.changes
      if (change?.of === 'day') added = change.id
      return transaction
    })
    this.removed = ''
    if (refusal) say(this, refusal)
    else goTo(`days/${added}`)
  }

  #rename({ id }: Day): void {
    goTo(`days/${id}`)
    this.dispatchEvent(new CustomEvent('tb-name', { detail: id }))
  }

  #remove({ id, name }: Day): void {
    const refusal = askEdit(this, workbook => removeDay(workbook, id), { day: id })
    if (refusal) return say(this, refusal)
    this.removed = name
    say(this, daysWords.removed(name))
    if (id === this.current) goTo('days')
  }

  #undo = (): void => {
    this.removed = ''
    wish(this, { want: 'undo' })
  }

  /** Puts the focus on the way to a new day. */
  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('#new')?.focus()
  }

  static override styles = dayListStyles
}
customElements.define('tb-day-list', TbDayList)

declare global {
  interface HTMLElementTagNameMap {
    'tb-day-list': TbDayList
  }
}
