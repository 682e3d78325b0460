import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import type { ClearedThing } from '../../src/dough/data/cleared-data.js'
import { type Cleared, clearedFor } from '../../src/dough/document/workbook.js'
import {
  bringBackCleared,
  forgetAllCleared,
  forgetCleared,
  readCleared,
} from '../../src/dough/edits/cleared/cleared-edits.js'
import { askEdit, type Edit } from '../base/events.js'
import { TbDialog } from '../controls/tb-dialog.js'
import { clearedStyles } from './cleared-styles.js'
import { broughtBackSentence, clearedWords } from './words.js'

/** What was deleted, the latest first: to bring back, or to delete for good. */
export class TbCleared extends TbDialog {
  static override properties: PropertyDeclarations = { sure: { state: true } }

  declare private sure: boolean // whether all of it is to go for good is being asked

  readonly #read = new WeakMap<Cleared, ClearedThing | undefined>()

  constructor() {
    super()
    this.sure = false
  }

  show(): void {
    this.sure = false
    this.open()
  }

  get #cleared(): readonly Cleared[] {
    return [...(this.workbook.cleared ?? [])].sort((a, b) => (a.at > b.at ? -1 : 1))
  }

  protected override heading(): string {
    return clearedWords.heading
  }

  protected override body(): TemplateResult {
    const cleared = this.#cleared
    return html`<div class="body">
      <p>${cleared.length === 0 ? `${clearedWords.none} ` : nothing}${clearedWords.about}</p>
      ${
        cleared.length === 0
          ? nothing
          : html`<ul>
            ${repeat(
              cleared,
              ({ id }) => id,
              one => this.#row(one),
            )}
          </ul>`
      }
    </div>`
  }

  #row(cleared: Cleared): TemplateResult {
    if (!this.#read.has(cleared)) this.#read.set(cleared, readCleared(cleared))
    const read = this.#read.get(cleared)
    const name = read?.thing.name || clearedWords.unreadable
    const until = Date.parse(cleared.at) + clearedFor
    return html`<li>
      <div class="thing">
        <b>${name}</b>
        <small>${read ? html`${this.#kind(read)}, ` : nothing}${clearedWords.dates(this.#date(Date.parse(cleared.at)), this.#date(until))}</small>
      </div>
      ${
        this.readOnly
          ? nothing
          : html`<div class="do">
            ${read ? html`<button class="lined" aria-label=${clearedWords.bringBackThis(name)} @click=${() => this.#bringBack(cleared)}>${clearedWords.bringBack}</button>` : nothing}
            <button aria-label=${clearedWords.forgetThis(name)} @click=${() => this.#forget(cleared, name)}>${clearedWords.forget}</button>
          </div>`
      }
    </li>`
  }

  #kind(read: ClearedThing): string {
    if (read.of === 'state') return clearedWords.state(read.called)
    return read.of === 'day'
      ? clearedWords.day(this.#date(Date.parse(`${read.thing.date}T12:00`)))
      : clearedWords[read.of]
  }

  #date(at: number): string {
    return Number.isNaN(at)
      ? '?'
      : new Intl.DateTimeFormat(this.numbers.language, { dateStyle: 'medium' }).format(at)
  }

  protected override actions(): TemplateResult | typeof nothing {
    const count = this.#cleared.length
    if (this.readOnly || count === 0) return nothing
    if (!this.sure) return html`<button class="apart" @click=${this.#ask}>${clearedWords.forgetAll}</button>`
    return html`<p class="question" id="sure" role="alert">${clearedWords.sure(count)}</p>
      <button class="lined" @click=${this.#keep}>${clearedWords.keep(count)}</button>
      <button class="main" aria-describedby="sure" @click=${this.#forgetAll}>${clearedWords.forget}</button>`
  }

  #ask = async (): Promise<void> => {
    this.told = ''
    this.sure = true
    await this.updateComplete
    this.renderRoot.querySelector<HTMLElement>('footer .lined')?.focus()
  }

  #keep = async (): Promise<void> => {
    this.sure = false
    await this.updateComplete
    this.renderRoot.querySelector<HTMLElement>('footer .apart')?.focus()
  }

  /** Makes the edit and tells of it; the focus goes on at the row that takes the place of the one that is gone. */
  async #make(edit: Edit, told: () => string, row: number): Promise<void> {
    this.sure = false
    this.told = askEdit(this, edit) ?? told()
    await this.updateComplete
    const rows = this.renderRoot.querySelectorAll('li')
    const next = rows[Math.min(row, rows.length - 1)]?.querySelector<HTMLElement>('button')
    ;(next ?? this.renderRoot.querySelector<HTMLElement>('h2'))?.focus()
  }

  #rowOf = ({ id }: Cleared): number => this.#cleared.findIndex(one => one.id === id)

  #bringBack(cleared: Cleared): void {
    let sentence = ''
    const edit: Edit = workbook => {
      const { transaction, done } = bringBackCleared(workbook, cleared.id)
      sentence = broughtBackSentence(done)
      return transaction
    }
    void this.#make(edit, () => sentence, this.#rowOf(cleared))
  }

  #forget(cleared: Cleared, name: string): void {
    const edit: Edit = workbook => forgetCleared(workbook, cleared.id)
    void this.#make(edit, () => clearedWords.forgotten(name), this.#rowOf(cleared))
  }

  #forgetAll = (): void => {
    const count = this.#cleared.length
    void this.#make(forgetAllCleared, () => clearedWords.allForgotten(count), 0)
  }

  static override styles = [TbDialog.styles, clearedStyles]
}
customElements.define('tb-cleared', TbCleared)

declare global {
  interface HTMLElementTagNameMap {
    'tb-cleared': TbCleared
  }
}
