import { css, html, nothing, type PropertyDeclarations } from 'lit'
import { breadNames } from '../../src/day/out/bread-names.js'
import { eventsOfHands, writeCalendar } from '../../src/day/out/calendar.js'
import { writeDayText } from '../../src/day/out/day-text.js'
import type { DaySheet } from '../../src/day/plan/open-day.js'
import { emptyWorkbook, type Workbook } from '../../src/dough/document/workbook.js'
import { BaseElement } from '../base/base-element.js'
import { copyText } from '../base/copy-text.js'
import { downloadFile } from '../base/download.js'
import { say } from '../base/events.js'
import { keepOwnChoice, ownChoice } from '../base/own-choices.js'
import { partNotFetched } from '../base/words.js'
import { showBeside } from '../card/beside-app.js'
import { dayOutWords } from './words.js'

const alarms = ['none', '0', '5', '10', '15', '30'] as const // minutes before
type Alarm = (typeof alarms)[number]
const minutesOf = (alarm: Alarm): number | undefined => (alarm === 'none' ? undefined : Number(alarm))

/** A day for a calendar, for a message, for the wall. */
export class TbDayOut extends BaseElement {
  static override properties: PropertyDeclarations = {
    opened: { attribute: false },
    workbook: { attribute: false },
    alarm: { state: true },
    text: { state: true },
  }

  declare opened: DaySheet | undefined
  declare workbook: Workbook
  declare private alarm: Alarm
  declare private text: string // to be copied by hand, where the browser does not do it

  constructor() {
    super()
    this.workbook = emptyWorkbook
    this.alarm = ownChoice('alarm', alarms, '5')
    this.text = ''
  }

  override render() {
    const plan = this.opened?.plan
    if (!plan || eventsOfHands(plan).length === 0) return html`<p class="quiet">${dayOutWords.none}</p>`
    return html`<div class="row">
        <button class="lined" @click=${this.#calendar}>${dayOutWords.calendar}</button>
        <label>
          ${dayOutWords.alarm}
          <select @change=${this.#choose}>
            ${alarms.map(
              alarm =>
                html`<option value=${alarm} ?selected=${alarm === this.alarm}>${dayOutWords.alarms(minutesOf(alarm))}</option>`,
            )}
          </select>
        </label>
      </div>
      <p class="quiet">${dayOutWords.calendarSays}</p>
      <div class="row">
        <button class="lined" @click=${this.#copy}>${dayOutWords.copy}</button>
        <button class="lined" @click=${this.#print}>${dayOutWords.print}</button>
      </div>
      ${this.text ? html`<textarea readonly rows="8" aria-label=${dayOutWords.text} .value=${this.text}></textarea>` : nothing}`
  }

  #choose = (event: Event): void => {
    this.alarm = (event.target as HTMLSelectElement).value as Alarm
    keepOwnChoice('alarm', this.alarm)
  }

  get #nameOf() {
    return breadNames(this.opened!.day, this.workbook.formulas)
  }

  #calendar = (): void => {
    const { day, plan } = this.opened!
    const alarm = minutesOf(this.alarm)
    const text = writeCalendar(plan!, this.#nameOf, {
      now: new Date(),
      ...(alarm !== undefined && { alarm }),
    })
    const file = `${day.date}.ics`
    downloadFile(text, 'text/calendar', file)
    say(this, dayOutWords.downloaded(file))
  }

  #copy = async (): Promise<void> => {
    const text = writeDayText(this.opened!.plan!, this.#nameOf, this.numbers.language)
    const isCopied = await copyText(text)
    this.text = isCopied ? '' : text
    say(this, isCopied ? dayOutWords.copied : dayOutWords.notCopied)
    if (isCopied) return
    await this.updateComplete
    this.renderRoot.querySelector('textarea')?.select()
  }

  #print = async (): Promise<void> => {
    try {
      await import('./tb-day-print.js')
    } catch {
      return say(this, partNotFetched)
    }
    const { opened, workbook, numbers } = this
    const page = document.createElement('tb-day-print')
    Object.assign(page, { opened, workbook, numbers })
    await showBeside(this, page)
  }

  static override styles = css`
    :host {
      display: block;
    }
    .row {
      display: flex;
      flex-wrap: wrap;
      gap: 8px 12px;
      align-items: center;
    }
    p {
      margin: 4px 0 12px;
      max-width: 60ch;
      font-size: var(--size-small);
    }
    textarea {
      width: 100%;
      margin-top: 12px;
    }
    @media print {
      :host {
        display: none;
      }
    }
  `
}
customElements.define('tb-day-out', TbDayOut)

declare global {
  interface HTMLElementTagNameMap {
    'tb-day-out': TbDayOut
  }
}
