import '../../src/dough/larder/usual-notes.js'
import { html, nothing, type TemplateResult } from 'lit'
import { guessCurrency, moneyText } from '../../src/day/trade/currency.js'
import { nameKey, sameName } from '../../src/dough/document/formula.js'
import type { Ingredient } from '../../src/dough/document/larder.js'
import { defineIngredient, forgetIngredient } from '../../src/dough/edits/fetched/larder-edits.js'
import { usualLarder } from '../../src/dough/larder/usual-larder.js'
import { askEdit, wish } from '../base/events.js'
import { showGrams, showPercent } from '../base/numbers.js'
import { TbDialog } from '../controls/tb-dialog.js'
import { countsAsWords } from './counts-as-words.js'
import { type Kind, weightAsTyped } from './ingredient-draft.js'
import './tb-ingredient.js'
import { larderStyles } from './larder-styles.js'
import { factWords, formWords, larderWords } from './words.js'

const usualIds = new Set(usualLarder.map(i => i.id))

/** The larder: every ingredient known, and the form of each. */
export class TbLarder extends TbDialog {
  static override properties = { sought: { state: true }, at: { state: true }, fault: { state: true } }

  declare private sought: string
  declare private at:
    | { readonly known?: Ingredient; readonly called: string; readonly alone: boolean }
    | undefined
  declare private fault: string // why nothing was saved

  constructor() {
    super()
    this.sought = ''
    this.fault = ''
  }

  /** Opens the list, or the form of the ingredient of that name: a new one when the larder does not know it. */
  show(detail: { ingredient?: string } = {}): void {
    this.sought = ''
    this.fault = ''
    const called = detail.ingredient
    this.at = called === undefined ? undefined : { ...this.#named(called), called, alone: true }
    this.open()
  }

  #named(name: string): { known?: Ingredient } {
    const known = this.larder.find(name)
    return known ? { known } : {}
  }

  get #form() {
    return this.renderRoot.querySelector('tb-ingredient')
  }

  protected override unsaved(): boolean {
    return !this.readOnly && (this.#form?.changed ?? false)
  }

  protected override back(): void {
    if (!this.at || this.at.alone) this.close()
    else this.#toList()
  }

  /** Back to the list, with the focus on the row it came from. */
  #toList(): void {
    const id = this.at?.known?.id
    this.at = undefined
    this.fault = ''
    void this.updateComplete.then(() => {
      const row = id && this.renderRoot.querySelector<HTMLElement>(`[data-id="${CSS.escape(id)}"]`)
      if (row) row.focus()
      else this.focusFirst()
    })
  }

  #toForm(called: string, known?: Ingredient): void {
    this.at = { ...(known ? { known } : {}), called, alone: false }
    this.told = ''
    this.fault = ''
    void this.updateComplete.then(() => {
      this.renderRoot.querySelector('.body')?.scrollTo(0, 0)
      this.focusFirst()
    })
  }

  #done(told: string): void {
    if (this.at?.alone) {
      this.close()
      return
    }
    this.#toList()
    this.told = told
  }

  #save = (): void => {
    const ingredient = this.#form?.take()
    if (!ingredient) {
      this.fault = formWords.notSaved
      return
    }
    const currency = this.#form!.chosenCurrency
    const isSaid = this.workbook.currency ?? (ingredient.price === undefined ? currency : '')
    const refusal = askEdit(this, () =>
      defineIngredient(ingredient, isSaid === currency ? undefined : currency),
    )
    if (refusal) this.fault = refusal
    else
      this.#done(
        ingredient.allergens
          ? formWords.saved(ingredient.name)
          : formWords.savedWithoutAllergens(ingredient.name),
      )
  }

  #forget = (ingredient: Ingredient): void => {
    const refusal = askEdit(this, workbook => forgetIngredient(workbook, ingredient.id))
    if (refusal) this.fault = refusal
    else if (usualIds.has(ingredient.id)) this.#done(formWords.isUsualAgain(ingredient.name))
    else this.#done(formWords.removed(ingredient.name))
  }

  #toCleared = (): void => {
    this.close()
    wish(this, { want: 'cleared' })
  }

  #own(ingredient: Ingredient): boolean {
    return this.workbook.larder.some(i => i.id === ingredient.id)
  }

  protected override heading(): string {
    if (!this.at) return larderWords.larder
    return this.at.known?.name ?? larderWords.newIngredient
  }

  protected override body(): TemplateResult {
    const at = this.at
    if (!at) return this.#list()
    const formulas = at.known ? this.#formulasWith(at.known) : []
    return html`<div class="body">
      ${formulas.length ? html`<p class="quiet">${formWords.usedIn(formulas)}</p>` : nothing}
      <tb-ingredient
        data-first
        .known=${at.known}
        .called=${at.called}
        .larder=${this.larder}
        .currency=${this.#currency}
        .numbers=${this.numbers}
        .readOnly=${this.readOnly}
        @tb-save=${this.#save}
      ></tb-ingredient>
    </div>`
  }

  /** Of the workbook's prices; until one is chosen, that of where its baker seems to be. */
  get #currency(): string {
    return this.workbook.currency ?? guessCurrency(this.numbers.language)
  }

  #formulasWith(ingredient: Ingredient): string[] {
    const names = new Set([ingredient.name, ...ingredient.otherNames].map(nameKey))
    return this.workbook.formulas
      .filter(f => f.stages.some(s => s.lines.some(l => names.has(nameKey(l.ingredient)))))
      .map(f => f.name)
  }

  protected override actions(): TemplateResult {
    const at = this.at
    const cleared = this.workbook.cleared?.length
    if (!at) {
      return html`<button class="lined" ?disabled=${this.readOnly} @click=${() => this.#toForm('')}>
        ${larderWords.newIngredient}
      </button>
      ${cleared ? html`<button class="apart" @click=${this.#toCleared}>${larderWords.cleared(cleared)}</button>` : nothing}`
    }
    const { known } = at
    return html`
      ${this.fault ? html`<p class="error" role="alert">${this.fault}</p>` : nothing}
      <button class="main" ?disabled=${this.readOnly} @click=${this.#save}>${formWords.save}</button>
      <button class="lined" @click=${this.leave}>${at.alone ? formWords.cancel : formWords.backToLarder}</button>
      ${
        known && this.#own(known)
          ? html`<button class="apart" ?disabled=${this.readOnly} @click=${() => this.#forget(known)}>
              ${usualIds.has(known.id) ? formWords.backToUsual : formWords.remove}
            </button>`
          : nothing
      }
    `
  }

  #list(): TemplateResult {
    const sought = nameKey(this.sought)
    const found = this.larder.ingredients
      .filter(i => [i.name, ...i.otherNames].some(name => nameKey(name).includes(sought)))
      .sort((a, b) => a.name.localeCompare(b.name, this.numbers.language))
    return html`<div class="body">
      <div class="search">
        <label for="sought">${larderWords.find}</label>
        <input
          id="sought"
          type="search"
          autocomplete="off"
          data-first
          .value=${this.sought}
          @input=${(e: InputEvent) => {
            this.sought = (e.target as HTMLInputElement).value
          }}
        />
        <p class="unseen" role="status">${sought ? larderWords.found(found.length) : ''}</p>
      </div>
      ${sought ? nothing : this.#unknown()}
      ${Object.entries(countsAsWords).map(([kind, words]) =>
        this.#group(
          kind as Kind,
          words.group,
          found.filter(i => i.countsAs.kind === kind),
        ),
      )}
      ${
        found.length
          ? nothing
          : html`<p>${larderWords.noneCalled(this.sought.trim())}</p>
              <button
                class="lined"
                ?disabled=${this.readOnly}
                @click=${() => this.#toForm(this.sought.trim())}
              >
                ${larderWords.add(this.sought.trim())}
              </button>`
      }
    </div>`
  }

  /** Names in the formulas that neither the larder nor a stage explains. */
  #unknown() {
    const names = new Map<string, string>()
    for (const { stages } of this.workbook.formulas) {
      for (const { ingredient } of stages.flatMap(s => s.lines)) {
        const known = this.larder.find(ingredient) || stages.some(s => sameName(s.name, ingredient))
        if (ingredient.trim() && !known) names.set(nameKey(ingredient), ingredient)
      }
    }
    if (names.size === 0) return nothing
    return html`<h3>${larderWords.notKnown}</h3>
      <p class="hint">${larderWords.notKnownHint}</p>
      <ul>
        ${[...names.values()].map(
          name => html`<li>
            <button class="row" ?disabled=${this.readOnly} @click=${() => this.#toForm(name)}>
              <span class="name">${name}</span><span class="facts">${larderWords.sayWhatItIs}</span>
            </button>
          </li>`,
        )}
      </ul>`
  }

  #group(kind: Kind, heading: string, ingredients: readonly Ingredient[]) {
    if (ingredients.length === 0) return nothing
    return html`<h3 id="group-${kind}">${heading} <span class="count">${ingredients.length}</span></h3>
      <ul aria-labelledby="group-${kind}">
        ${ingredients.map(
          i => html`<li>
            <button class="row" data-id=${i.id} @click=${() => this.#toForm(i.name, i)}>
              <span class="name">${i.name}${this.#mark(i)}</span>
              <span class="facts">${this.#facts(i)}</span>
            </button>
          </li>`,
        )}
      </ul>`
  }

  #mark(ingredient: Ingredient) {
    if (!this.#own(ingredient)) return nothing
    return html` <small class="mark">${usualIds.has(ingredient.id) ? larderWords.changed : larderWords.yours}</small>`
  }

  #facts(i: Ingredient): string {
    const percent = (part: number) => `${showPercent(part, this.numbers)} %`
    const facts: string[] = []
    if (i.countsAs.kind === 'starter') facts.push(factWords.hydration(percent(i.countsAs.hydration)))
    if (i.countsAs.kind === 'other' && i.moisture >= 0.1) facts.push(factWords.moisture(percent(i.moisture)))
    if (i.fat >= 0.1) facts.push(factWords.fat(percent(i.fat)))
    if (i.sugar >= 0.1) facts.push(factWords.sugar(percent(i.sugar)))
    const grams = (g: number) => `${showGrams(g, this.numbers)} g`
    if (i.each !== undefined) facts.push(factWords.one(grams(i.each)))
    else if (i.tsp !== undefined && (i.tsp < 10 || !i.cup) && i.countsAs.kind !== 'flour')
      facts.push(factWords.teaspoon(grams(i.tsp)))
    else if (i.cup !== undefined) facts.push(factWords.cup(grams(i.cup)))
    if (i.pack !== undefined) {
      const price = i.price === undefined ? '' : moneyText(i.price, this.#currency, this.numbers.language)
      facts.push(factWords.pack(price, weightAsTyped(i.pack, this.numbers)))
    }
    if (!i.allergens) facts.push(factWords.noAllergens)
    return facts.join(', ')
  }

  static override styles = [TbDialog.styles, larderStyles]
}

customElements.define('tb-larder', TbLarder)

declare global {
  interface HTMLElementTagNameMap {
    'tb-larder': TbLarder
  }
}
