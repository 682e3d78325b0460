import { html, nothing, type TemplateResult } from 'lit'
import { changeFormulas, commonCount, type HowMany } from '../../src/day/trade/order-edits.js'
import { type Formula, nameKey } from '../../src/dough/document/formula.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { groupFormulas, groupsOf, removeFormulas } from '../../src/dough/edits/fetched/shelf-edits.js'
import '../batch/tb-how-many.js'
import { BaseElement } from '../base/base-element.js'
import { askEdit, type Edit, say, wish } from '../base/events.js'
import { chooserStyles } from './chooser-styles.js'
import { chooserWords } from './shelf-more-words.js'

/**
 * Formulas of the shelf with a box before each, and what can be done with those that are ticked. Tells of another choice by
 * `tb-chosen`, ids as detail, and that the baker is done by `tb-done`.
 */
export class TbChooser extends BaseElement {
  static override properties = {
    formulas: { attribute: false },
    found: { attribute: false },
    grouped: { attribute: false },
    inWords: { attribute: false },
    chosen: { attribute: false },
    grouping: { attribute: false },
    counting: { state: true },
  }

  declare formulas: readonly Formula[] // all there are
  declare found: readonly Formula[] // those shown, as they stand beneath each other
  declare grouped: boolean // those of a group stand together
  declare inWords: (formula: Formula) => string | undefined // beneath a name
  declare chosen: ReadonlySet<string> // ids
  declare grouping: boolean // the name of a group is asked for
  declare private counting: boolean // it is asked for how many they are made

  constructor() {
    super()
    this.formulas = []
    this.found = []
    this.grouped = true
    this.inWords = () => undefined
    this.chosen = new Set()
    this.grouping = false
    this.counting = false
  }

  protected override firstUpdated(): void {
    if (!this.grouping) this.#focusOn(this.chosen.size ? ':checked' : 'input')
  }

  protected override updated(changed: Map<PropertyKey, unknown>): void {
    const field = this.renderRoot.querySelector<HTMLInputElement>('#group')
    if (!changed.has('grouping') || !field) return
    field.value = this.#commonGroup
    field.focus()
    field.select()
  }

  #focusOn(selector: string): void {
    this.renderRoot.querySelector<HTMLElement>(selector)?.focus()
  }

  get #ids(): readonly string[] {
    return this.formulas.filter(f => this.chosen.has(f.id)).map(f => f.id)
  }

  /** The group in which all that are chosen are; '' where there is none. */
  get #commonGroup(): string {
    const groups = new Set(this.formulas.filter(f => this.chosen.has(f.id)).map(f => f.group ?? ''))
    const [group = ''] = groups
    return groups.size === 1 ? group : ''
  }

  override render() {
    const { chosen, found } = this
    const none = chosen.size === 0
    const all = found.every(f => chosen.has(f.id))
    return html`<div class="around" @keydown=${this.#key}>
      <section class="bar" aria-label=${chooserWords.name}>
        <div class="row">
          <p role="status">${chooserWords.chosen(chosen.size)}</p>
          <button @click=${() => this.#choose(all ? [] : found.map(f => f.id))}>${all ? chooserWords.none : chooserWords.all}</button>
          <button class="main" @click=${this.#done}>${chooserWords.done}</button>
        </div>
        <div class="row">
          <button ?disabled=${none} @click=${() => wish(this, { want: 'send-out', formulas: this.#ids })}>${chooserWords.sendOut}</button>
          <button ?disabled=${none} @click=${() => wish(this, { want: 'card', formulas: this.#ids })}>${chooserWords.print}</button>
          <button ?disabled=${none} @click=${() => wish(this, { want: 'label', formulas: this.#ids })}>${chooserWords.labels}</button>
          <button ?disabled=${none} @click=${() => wish(this, { want: 'handout', formulas: this.#ids })}>${chooserWords.handout}</button>
          ${
            this.readOnly
              ? nothing
              : html`<button ?disabled=${none} aria-expanded=${this.grouping} @click=${this.#toggleGroup}>${chooserWords.group}</button>
                <button ?disabled=${none} aria-expanded=${this.counting} @click=${this.#toggleCount}>${chooserWords.howMany}</button>
                <button ?disabled=${none} @click=${this.#delete}>${chooserWords.delete}</button>`
          }
        </div>
        ${this.grouping && !none ? this.#groupForm() : nothing}
        ${this.counting && !none ? this.#countForm() : nothing}
      </section>
      <ul>
        ${found.map((formula, at) => [this.#heading(formula, found[at - 1]), this.#row(formula)])}
      </ul>
    </div>`
  }

  #groupForm(): TemplateResult {
    return html`<form @submit=${this.#group}>
      <label for="group">${chooserWords.groupName}</label>
      <div class="row">
        <input id="group" list="groups" autocomplete="off" aria-describedby="hint" maxlength="200" enterkeyhint="done" />
        <datalist id="groups">${groupsOf(this).map(group => html`<option value=${group}></option>`)}</datalist>
        <button class="lined">${chooserWords.putIn}</button>
      </div>
      <p class="hint" id="hint">${chooserWords.groupHint}</p>
    </form>`
  }

  #countForm(): TemplateResult {
    const ids = this.#ids
    const batches = this.formulas.filter(({ id }) => ids.includes(id)).map(({ batch }) => batch)
    return html`<tb-how-many
      .numbers=${this.numbers}
      .count=${commonCount(batches)}
      .edit=${(howMany: HowMany) => (workbook: Workbook) => changeFormulas(workbook, ids, howMany)}
      @tb-done=${this.#done}
    ></tb-how-many>`
  }

  /** Before the first of a group: a box for all that are shown of it. */
  #heading({ group = '' }: Formula, before: Formula | undefined): TemplateResult | typeof nothing {
    if (!this.grouped || !group || nameKey(group) === nameKey(before?.group ?? '')) return nothing
    const ids = this.found.filter(f => nameKey(f.group ?? '') === nameKey(group)).map(f => f.id)
    const count = ids.filter(id => this.chosen.has(id)).length
    return html`<li class="group">
      <label>
        <input
          type="checkbox"
          aria-label=${chooserWords.allOf(group)}
          .checked=${count === ids.length}
          .indeterminate=${count > 0 && count < ids.length}
          @change=${(event: Event) => this.#tick(ids, event)}
        />
        <b>${group}</b>
      </label>
    </li>`
  }

  #row(formula: Formula): TemplateResult {
    return html`<li>
      <label>
        <input
          type="checkbox"
          .checked=${this.chosen.has(formula.id)}
          @change=${(event: Event) => this.#tick([formula.id], event)}
        />
        <span>${formula.name}<small>${this.inWords(formula)}</small></span>
      </label>
    </li>`
  }

  #tick(ids: readonly string[], event: Event): void {
    const isOn = (event.target as HTMLInputElement).checked
    const others = [...this.chosen].filter(id => !ids.includes(id))
    this.#choose(isOn ? [...others, ...ids] : others)
  }

  #choose(ids: readonly string[]): void {
    this.chosen = new Set(ids)
    this.dispatchEvent(new CustomEvent('tb-chosen', { detail: this.chosen }))
  }

  #toggleGroup = (): void => {
    this.counting = false
    this.grouping = !this.grouping
  }

  #toggleCount = async (): Promise<void> => {
    this.grouping = false
    this.counting = !this.counting
    await this.updateComplete
    this.renderRoot.querySelector('tb-how-many')?.focus()
  }

  #group = (event: Event): void => {
    event.preventDefault()
    const { value } = this.renderRoot.querySelector<HTMLInputElement>('#group')!
    if (this.#ask(workbook => groupFormulas(workbook, this.#ids, value))) this.#done()
  }

  #delete = (): void => {
    const ids = this.#ids
    if (!this.#ask(workbook => removeFormulas(workbook, ids))) return
    if (ids.length > 1) say(this, chooserWords.deleted(ids.length))
    this.#done()
  }

  #ask(edit: Edit): boolean {
    const refusal = askEdit(this, edit)
    if (refusal) say(this, refusal)
    return !refusal
  }

  #key = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || event.isComposing) return
    event.preventDefault()
    event.stopPropagation()
    if (!this.grouping && !this.counting) return this.#done()
    const at = this.grouping ? chooserWords.group : chooserWords.howMany
    this.grouping = false
    this.counting = false
    void this.updateComplete.then(() => {
      const opened = [...this.renderRoot.querySelectorAll<HTMLElement>('[aria-expanded]')]
      opened.find(({ textContent }) => textContent === at)?.focus()
    })
  }

  #done = (): void => {
    this.dispatchEvent(new CustomEvent('tb-done'))
  }

  static override styles = chooserStyles
}
customElements.define('tb-chooser', TbChooser)

declare global {
  interface HTMLElementTagNameMap {
    'tb-chooser': TbChooser
  }
}
