import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit'
import { setOrders } from '../../../src/day/trade/order-edits.js'
import type { Day } from '../../../src/dough/document/day.js'
import type { Workbook } from '../../../src/dough/document/workbook.js'
import { BaseElement } from '../../base/base-element.js'
import { askEdit, say } from '../../base/events.js'
import { showNumber } from '../../base/numbers.js'
import { readWeight } from '../../typed/typed-numbers.js'
import { draftOrders, leaveOut, type OrderedBread, type OrdersDraft, wantedOf } from './orders-draft.js'
import { ordersStyles } from './orders-styles.js'
import { ordersWords } from './words.js'

/** What is ordered on a day, typed or pasted: what is understood of it stands beneath while it is typed, and is baked when the baker says so. */
export class TbOrders extends BaseElement {
  static override properties: PropertyDeclarations = {
    day: { attribute: false },
    workbook: { attribute: false },
    text: { state: true },
    chosen: { state: true },
    weights: { state: true },
    fault: { state: true },
  }

  declare day: Day
  declare workbook: Workbook
  declare private text: string
  declare private chosen: ReadonlyMap<string, string> // by name that is asked
  declare private weights: ReadonlyMap<string, string> // as typed, by formula
  declare private fault: string

  #shown = ''

  constructor() {
    super()
    this.#forget()
  }

  #forget(): void {
    this.text = ''
    this.chosen = new Map()
    this.weights = new Map()
    this.fault = ''
  }

  protected override willUpdate(): void {
    if (this.day.id === this.#shown) return
    this.#shown = this.day.id
    this.#forget()
  }

  #draft(): OrdersDraft {
    return draftOrders(this.text, this.day, this.workbook, this.numbers, this.chosen)
  }

  override render() {
    return html`<label for="orders">${ordersWords.label}</label>
      <textarea
        id="orders"
        rows="2"
        data-typed="order ${this.day.id} orders"
        placeholder=${ordersWords.example}
        aria-describedby="hint"
        autocomplete="off"
        spellcheck="false"
        .defaultValue=${''}
        .value=${this.text}
        ?readonly=${this.readOnly}
        @input=${(event: Event) => {
          this.text = (event.target as HTMLTextAreaElement).value
          this.fault = ''
        }}
        @keydown=${this.#key}
      ></textarea>
      <p class="hint" id="hint">${ordersWords.hint}</p>
      ${this.text.trim() ? this.#understood() : nothing}`
  }

  #understood(): TemplateResult {
    const draft = this.#draft()
    const { orders, breads, asked } = draft
    const ordered = new Set(breads.map(({ formula }) => formula))
    const others = this.day.breads.filter(({ formula }) => !ordered.has(formula))
    return html`<div class="understood" role="group" aria-label=${ordersWords.understood}>
      ${breads.length ? html`<ul>${breads.map(bread => this.#bread(bread))}</ul>` : nothing}
      ${asked.map(({ key, row }) =>
        this.#ask(
          key,
          row.name,
          row.near.map(({ id }) => id),
        ),
      )}
      ${orders.unread.length ? html`<p class="warn">${ordersWords.unread(orders.unread)}</p>` : nothing}
      ${orders.aside.length ? html`<p>${ordersWords.aside(orders.aside)}</p>` : nothing}
      ${
        breads.length && others.length
          ? html`<p>${ordersWords.others(others.map(({ formula }) => this.#name(formula)))}</p>`
          : nothing
      }
      ${this.fault ? html`<p class="warn" role="alert">${this.fault}</p>` : nothing}
      ${breads.length || asked.length ? html`<button class="main" ?disabled=${this.readOnly} @click=${this.#set}>${ordersWords.set}</button>` : nothing}
    </div>`
  }

  #name(formula: string): string {
    return this.workbook.formulas.find(({ id }) => id === formula)?.name ?? ''
  }

  #bread(bread: OrderedBread): TemplateResult {
    const { formula, name, count, counts, by, now, isOnDay } = bread
    const shown = (value: number) => showNumber(value, this.numbers)
    const before = isOnDay ? (now === undefined ? '' : ordersWords.inPlaceOf(shown(now))) : ordersWords.isNew
    return html`<li>
      <b>${count > 0 ? ordersWords.count(name, shown(count)) : ordersWords.nothing(name)}</b>
      ${count > 0 && before ? html`<small>${before}</small>` : nothing}
      ${counts.length > 1 ? html`<small>${ordersWords.adding(counts.map(shown))}</small>` : nothing}
      ${by.map(written => html`<small>${ordersWords.takenFor(written)}</small>`)}
      ${
        bread.wantsWeight
          ? html`<label class="weight"
              >${ordersWords.weightOf(name)}
              <span class="unit"
                ><input
                  id="weight-${formula}"
                  inputmode="decimal"
                  autocomplete="off"
                  data-typed="order ${this.day.id} weight ${formula}"
                  .defaultValue=${''}
                  .value=${this.weights.get(formula) ?? ''}
                  @input=${(event: Event) => {
                    this.weights = new Map(this.weights).set(
                      formula,
                      (event.target as HTMLInputElement).value,
                    )
                  }}
                />
                g</span
              ></label
            >`
          : nothing
      }
    </li>`
  }

  /** A name that is none: near ones first, then all there are. */
  #ask(key: string, written: string, near: readonly string[]): TemplateResult {
    const { formulas } = this.workbook
    const all = [
      ...near.flatMap(id => formulas.filter(formula => formula.id === id)),
      ...formulas.filter(({ id }) => !near.includes(id)),
    ]
    const chosen = this.chosen.get(key) ?? ''
    const choose = (formula: string) => {
      this.chosen = new Map(this.chosen).set(key, formula)
      this.fault = ''
    }
    return html`<p class="ask">
      <label>${ordersWords.which(written)}
        <select
          data-key=${key}
          @change=${(event: Event) => choose((event.target as HTMLSelectElement).value)}
        >
          <option value="" .selected=${chosen === ''}>${ordersWords.choose}</option>
          ${all.map(({ id, name }) => html`<option value=${id} .selected=${chosen === id}>${name}</option>`)}
          <option value=${leaveOut} .selected=${chosen === leaveOut}>${ordersWords.leaveOut}</option>
        </select>
      </label>
      ${chosen ? nothing : all.slice(0, near.length).map(({ id, name }) => html`<button class="lined" @click=${() => choose(id)}>${ordersWords.mean(name)}</button>`)}
    </p>`
  }

  #key = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' || !(event.ctrlKey || event.metaKey) || event.isComposing) return
    event.preventDefault()
    this.#set()
  }

  /** Asks for what is still open, or bakes so many. What was left out or not understood stays in the field. */
  #set = (): void => {
    const draft = this.#draft()
    const open = draft.asked.find(({ key }) => !this.chosen.get(key))
    if (open) {
      this.fault = ordersWords.chooseFirst(open.row.name)
      this.renderRoot.querySelector<HTMLElement>(`[data-key="${CSS.escape(open.key)}"]`)?.focus()
      return
    }
    const unweighed = draft.breads.find(
      ({ wantsWeight, formula, count }) =>
        wantsWeight && count > 0 && !((readWeight(this.weights.get(formula) ?? '', this.numbers) ?? 0) > 0),
    )
    if (unweighed) {
      this.fault = ordersWords.weighFirst(unweighed.name)
      this.renderRoot.querySelector<HTMLElement>(`#weight-${CSS.escape(unweighed.formula)}`)?.focus()
      return
    }
    const wanted = wantedOf(draft, this.weights, this.numbers)
    const { day } = this
    let isSame = false
    const refusal = askEdit(this, workbook => {
      const transaction = setOrders(workbook, day.id, wanted)
      isSame = transaction === undefined
      return transaction
    })
    if (refusal) {
      this.fault = refusal
      return
    }
    const breads = draft.breads.filter(({ count }) => count > 0)
    const baked = breads.map(({ name, count }) => `${showNumber(count, this.numbers)} ${name}`)
    say(this, isSame ? ordersWords.same : ordersWords.done(baked, day.name))
    this.text = [...draft.orders.unread, ...draft.leftOut.map(({ text }) => text)].join('\n')
    this.chosen = new Map()
    this.renderRoot.querySelector<HTMLElement>('textarea')?.focus()
  }

  static override styles = ordersStyles
}
customElements.define('tb-orders', TbOrders)

declare global {
  interface HTMLElementTagNameMap {
    'tb-orders': TbOrders
  }
}
