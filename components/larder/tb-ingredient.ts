import { html, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { gramsPerMeasure } from '../../src/dough/amounts/measures.js'
import type { Ingredient, Larder } from '../../src/dough/document/larder.js'
import { larderOf } from '../../src/dough/document/larder.js'
import { BaseElement } from '../base/base-element.js'
import { showNumber } from '../base/numbers.js'
import { fieldStyles } from '../styles/field-styles.js'
import { readNumber } from '../typed/typed-numbers.js'
import { allergenFields } from './allergen-fields.js'
import { boughtFieldsOf, isBoughtSaid } from './bought-fields.js'
import { countsAsWords } from './counts-as-words.js'
import {
  type Draft,
  type DraftErrors,
  type DraftField,
  draftOf,
  errorsIn,
  fieldsFor,
  gramFields,
  ingredientOf,
  type Kind,
  type NumberField,
  percentFields,
  sameDraft,
} from './ingredient-draft.js'
import { ingredientStyles } from './ingredient-styles.js'
import { labelFields } from './label-fields.js'
import { fieldWords, formWords, ingredientWords, kindWords, unitWords } from './words.js'

const unitOf = (field: NumberField): '%' | 'g' => (gramFields.some(name => name === field) ? 'g' : '%')
const measureOf = { tsp: 'tsp', tbsp: 'tbsp', cup: 'cup', density: 'ml' } as const

/** The form of one ingredient. Knows what was typed; the larder around it saves. */
export class TbIngredient extends BaseElement {
  static override properties = {
    known: { attribute: false },
    called: { attribute: false },
    larder: { attribute: false },
    currency: {},
    draft: { state: true },
    errors: { state: true },
    guessed: { state: true },
    paidIn: { state: true },
  }

  declare known: Ingredient | undefined // undefined: a new one
  declare called: string // the name a new one begins with
  declare larder: Larder
  declare currency: string // of the workbook's prices, or the one that is guessed
  declare private draft: Draft
  declare private errors: DraftErrors
  declare private guessed: boolean // what it counts as was preselected, not chosen

  declare private paidIn: string | undefined // another currency that was chosen here

  #start: Draft | undefined
  #isBoughtOpen = false

  constructor() {
    super()
    this.called = ''
    this.larder = larderOf([])
    this.draft = draftOf(undefined, '', this.numbers)
    this.errors = {}
    this.guessed = false
    this.currency = ''
  }

  /** Whether something typed or chosen here is not in the larder. */
  get changed(): boolean {
    return this.#start !== undefined && (!sameDraft(this.draft, this.#start) || this.paidIn !== undefined)
  }

  /** The currency of its price. */
  get chosenCurrency(): string {
    return this.paidIn ?? this.currency
  }

  /** The ingredient as the form has it; undefined, with the focus on the first fault, when something is wrong. */
  take(): Ingredient | undefined {
    this.errors = errorsIn(this.draft, this.known, this.larder, this.numbers)
    if (Object.keys(this.errors).length === 0) return ingredientOf(this.draft, this.known, this.numbers)
    void this.updateComplete.then(() => {
      this.renderRoot.querySelector<HTMLElement>('[aria-invalid="true"], .invalid input')?.focus()
    })
    return undefined
  }

  override focus(): void {
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('#name')?.focus())
  }

  override willUpdate(changed: PropertyValues<this>): void {
    this.#begin(changed)
    this.#isBoughtOpen ||= isBoughtSaid(this.draft, this.errors) // and stays so while it is emptied
  }

  #begin(changed: PropertyValues<this>): void {
    if (this.#start && !changed.has('known') && !changed.has('called')) return
    this.errors = {}
    this.draft = draftOf(this.known, this.called, this.numbers)
    this.guessed = this.known === undefined && this.draft.countsAs !== ''
    this.#start = this.draft
    this.paidIn = undefined
    this.#isBoughtOpen = false
  }

  /** What a text is kept under while it is not saved. */
  #typedAs = (field: string): string => `ingredient ${field} ${this.known?.name ?? this.called}`

  #set(part: Partial<Draft>): void {
    this.draft = { ...this.draft, ...part }
    const shown = Object.keys(this.errors)
    if (shown.length === 0) return
    // A fault goes as soon as it is mended; a new one waits until the field is left.
    const now = errorsIn(this.draft, this.known, this.larder, this.numbers)
    this.errors = Object.fromEntries(Object.entries(now).filter(([field]) => shown.includes(field)))
  }

  #check(field: DraftField): void {
    const { [field]: _before, ...others } = this.errors
    const error = errorsIn(this.draft, this.known, this.larder, this.numbers)[field]
    this.errors = error ? { ...others, [field]: error } : others
  }

  override render() {
    const kind = this.draft.countsAs
    const shares = percentFields.filter(field => fieldsFor(kind).includes(field))
    return html`<form novalidate @submit=${this.#submit}>
      <div class="field">
        <label for="name">${ingredientWords.name}</label>
        <input
          id="name"
          data-typed=${this.#typedAs('name')}
          autocomplete="off"
          .defaultValue=${this.#start?.name ?? ''}
          .value=${this.draft.name}
          ?readonly=${this.readOnly}
          aria-invalid=${this.errors.name ? 'true' : 'false'}
          aria-describedby="name-error"
          @input=${(e: InputEvent) => this.#set({ name: (e.target as HTMLInputElement).value })}
          @change=${() => this.#check('name')}
        />
        ${this.#error('name')}
      </div>
      ${this.#countsAs()}
      ${kind === 'starter' ? this.#starter() : nothing} ${kind === 'other' ? this.#kind() : nothing}
      ${
        shares.length
          ? html`<fieldset>
              <legend>${ingredientWords.whatIsInIt}</legend>
              <div class="numbers">${shares.map(field => this.#number(field))}</div>
              ${kind === 'other' ? html`<p class="hint">${ingredientWords.whatIsInItHint}</p>` : nothing}
            </fieldset>`
          : nothing
      }
      <fieldset>
        <legend>${ingredientWords.measures}</legend>
        <p class="hint">${ingredientWords.measuresHint}</p>
        <div class="numbers">${gramFields.map(field => this.#number(field))}</div>
      </fieldset>
      ${allergenFields({
        said: this.draft,
        before: this.known?.allergens,
        carriesFlour: kind === 'starter',
        readOnly: this.readOnly,
        change: said => this.#set(said),
      })}
      ${
        kind === 'water' || kind === 'starter'
          ? nothing
          : labelFields({
              typed: this.draft.onLabel,
              start: this.#start?.onLabel,
              errors: this.errors,
              typedAs: this.#typedAs,
              readOnly: this.readOnly,
              change: part => this.#set({ onLabel: { ...this.draft.onLabel, ...part } }),
              check: field => this.#check(field),
            })
      }
      ${boughtFieldsOf({
        draft: this.draft,
        before: this.#start,
        errors: this.errors,
        numbers: this.numbers,
        currency: this.chosenCurrency,
        readOnly: this.readOnly,
        open: this.#isBoughtOpen,
        typedAs: this.#typedAs,
        set: part => this.#set(part),
        check: field => this.#check(field),
        payIn: currency => {
          this.paidIn = currency === this.currency ? undefined : currency
        },
      })}
      <div class="field">
        <label for="note">${ingredientWords.note}</label>
        <textarea
          id="note"
          data-typed=${this.#typedAs('note')}
          rows="2"
          .defaultValue=${this.#start?.note ?? ''}
          .value=${this.draft.note}
          ?readonly=${this.readOnly}
          @input=${(e: InputEvent) => this.#set({ note: (e.target as HTMLTextAreaElement).value })}
        ></textarea>
      </div>
      <button class="unseen" tabindex="-1" aria-hidden="true" ?disabled=${this.readOnly}>${formWords.save}</button>
    </form>`
  }

  /** Enter in a field: asks the larder to save. */
  #submit = (event: Event): void => {
    event.preventDefault()
    this.dispatchEvent(new CustomEvent('tb-save'))
  }

  #error(field: DraftField) {
    return html`<p class="error" id="${field}-error">${this.errors[field]}</p>`
  }

  #countsAs(): TemplateResult {
    const pick = (kind: Kind) => {
      this.guessed = false
      this.#set({ countsAs: kind })
      this.#check('countsAs')
    }
    const { countsAs } = this.draft
    const guess = this.guessed && countsAs ? ingredientWords.isAGuess(countsAsWords[countsAs].name) : ''
    return html`<fieldset
      role="radiogroup"
      class=${this.errors.countsAs ? 'invalid' : ''}
      aria-describedby="countsAs-error countsAs-guess"
    >
      <legend>${ingredientWords.countsAs}</legend>
      ${this.#error('countsAs')}
      <p class="hint guess" id="countsAs-guess">${guess}</p>
      <div class="kinds">
        ${Object.entries(countsAsWords).map(
          ([kind, words]) => html`<label class="choice">
            <input
              type="radio"
              name="countsAs"
              value=${kind}
              .checked=${this.draft.countsAs === kind}
              ?disabled=${this.readOnly}
              @change=${() => pick(kind as Kind)}
            />
            <span>${words.name} <small>${words.brings}</small></span>
          </label>`,
        )}
      </div>
    </fieldset>`
  }

  #starter(): TemplateResult {
    const hydration = readNumber(this.draft.hydration, this.numbers)
    const flour = hydration !== undefined && hydration > 0 ? 100 / (1 + hydration / 100) : undefined
    const grams = (value: number) => showNumber(Math.round(value * 10) / 10, this.numbers)
    return html`<div class="numbers">
      ${this.#number('hydration')}
      <p class="hint brings">
        ${flour === undefined ? nothing : ingredientWords.brings(grams(flour), grams(100 - flour))}
      </p>
    </div>`
  }

  #kind(): TemplateResult {
    const own = this.draft.kind
    const known = Object.keys(kindWords)
    const kinds = !own || known.includes(own) ? known : [...known, own]
    return html`<div class="field">
      <label for="kind">${ingredientWords.kind}</label>
      <select
        id="kind"
        ?disabled=${this.readOnly}
        aria-describedby="kind-hint"
        @change=${(e: Event) => this.#set({ kind: (e.target as HTMLSelectElement).value })}
      >
        ${kinds.map(
          kind => html`<option value=${kind} ?selected=${kind === (own || 'other')}>
            ${kindWords[kind] ?? kind}
          </option>`,
        )}
      </select>
      <p class="hint" id="kind-hint">${ingredientWords.kindHint}</p>
    </div>`
  }

  #number(field: NumberField): TemplateResult {
    const unit = unitOf(field)
    const id = field
    return html`<div class="field number">
      <label for=${id}>${fieldWords[field]}<span class="unseen">${unitWords[unit]}</span></label>
      <span class="with-unit">
        <input
          id=${id}
          data-typed=${this.#typedAs(field)}
          inputmode="decimal"
          autocomplete="off"
          .defaultValue=${this.#start?.[field] ?? ''}
          .value=${this.draft[field]}
          placeholder=${this.#reckoned(field)}
          ?readonly=${this.readOnly}
          aria-invalid=${this.errors[field] ? 'true' : 'false'}
          aria-describedby="${id}-error"
          @input=${(e: InputEvent) => this.#set({ [field]: (e.target as HTMLInputElement).value })}
          @change=${() => this.#check(field)}
        />
        <span aria-hidden="true">${unit}</span>
      </span>
      ${this.#error(field)}
    </div>`
  }

  /** What an empty spoon or cup comes to by the others, such as `about 8.6`. */
  #reckoned(field: NumberField): string {
    const measure = field in measureOf ? measureOf[field as keyof typeof measureOf] : undefined
    if (!measure || this.draft[field]) return ''
    const grams = gramsPerMeasure(ingredientOf(this.draft, this.known, this.numbers), measure)
    return grams ? `≈ ${showNumber(Number(grams.toPrecision(2)), this.numbers)}` : ''
  }

  static override styles = [fieldStyles, ingredientStyles]
}

customElements.define('tb-ingredient', TbIngredient)

declare global {
  interface HTMLElementTagNameMap {
    'tb-ingredient': TbIngredient
  }
}
