import { html, nothing, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import type { KeptState } from '../../src/dough/document/formula.js'
import { bringBack, forgetState, keepState } from '../../src/dough/edits/fetched/state-edits.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { SheetElement } from '../base/base-element.js'
import { askEdit, type Edit, say, wish } from '../base/events.js'
import { showReading } from '../base/reading-shown.js'
import { alsoDone, type SettingPair, settingsBeside } from '../beside/beside-settings.js'
import { listedFew } from '../beside/settings-words.js'
import { insideStyles } from '../styles/inside-styles.js'
import { stateStyles } from './state-styles.js'
import { stateReadingWords, stateWords } from './states-words.js'

const main = ['trueHydration', 'salt', 'prefermentedFlour', 'doughWeight'] as const

/** The states of a formula that the baker kept: to keep this one, to read one, to bring one back. */
export class TbStates extends SheetElement {
  static override properties = {
    today: { attribute: false },
    refusal: { state: true },
  }

  declare today: () => Date // another clock for tests
  declare refusal: string // why this state was not kept
  readonly #sheets = new WeakMap<
    KeptState,
    { readonly of: FigureSheet['larder']; readonly then: FigureSheet; readonly words: string }
  >()
  #proposed = '' // the name as it was proposed last

  constructor() {
    super()
    this.today = () => new Date()
    this.refusal = ''
  }

  get #states(): readonly KeptState[] {
    return this.sheet?.formula.states ?? []
  }

  get #formula(): string {
    return this.sheet?.formula.id ?? ''
  }

  protected override willUpdate(): void {
    this.#propose()
  }

  /** `24 November, 70.5 % true`, as long as the baker has not written another name. */
  #propose(): void {
    const field = this.renderRoot?.querySelector('input')
    const isOwn = field && field.value !== this.#proposed
    if (isOwn && field.value.trim()) return
    const day = new Intl.DateTimeFormat(this.numbers.language, { day: 'numeric', month: 'long' })
    const hydration = this.sheet?.reading('trueHydration')
    this.#proposed = stateWords.proposed(
      day.format(this.today()),
      hydration === undefined ? undefined : showReading('trueHydration', hydration, this.numbers),
    )
    if (field) field.value = this.#proposed
  }

  override render() {
    if (!this.sheet) return nothing
    return html`${this.readOnly ? nothing : this.#keeping()}${this.#list(this.#states)}`
  }

  #keeping(): TemplateResult {
    return html`<form @submit=${this.#keep}>
        <label for="name">${stateWords.name}</label>
        <input
          id="name"
          data-typed="state"
          .defaultValue=${this.#proposed}
          .value=${this.#proposed}
          aria-describedby="refusal"
          aria-invalid=${this.refusal !== ''}
          autocomplete="off"
          @focus=${(event: Event) => (event.target as HTMLInputElement).select()}
          @keydown=${this.#key}
        /><button class="lined">${stateWords.keep}</button>
      </form>
      <p class="refusal" id="refusal" role="status">${this.refusal}</p>
      ${this.#states.length ? nothing : html`<p>${stateWords.whatItIs}</p>`}`
  }

  #list(states: readonly KeptState[]): TemplateResult | typeof nothing {
    if (!states.length) return nothing
    const at = new Intl.DateTimeFormat(this.numbers.language, { dateStyle: 'medium', timeStyle: 'short' })
    return html`<ul>
      ${repeat(
        [...states].reverse(),
        state => state.id,
        state => this.#state(state, at),
      )}
    </ul>`
  }

  #state(state: KeptState, at: Intl.DateTimeFormat): TemplateResult {
    const { id, name, keptAt } = state
    const also = this.readOnly ? '' : alsoDone(this.#besides(state))
    return html`<li>
      <div class="state">
        <b>${name}</b>
        <span class="quiet"><time datetime=${keptAt}>${dateIn(keptAt, at)}</time>${this.#worked(state).words}</span>
        ${also ? html`<span class="quiet" id="also-${id}">${stateWords.bringsAlso(also)}</span>` : nothing}
      </div>
      <div class="do">
        <button
          aria-label=${stateWords.readThis(name)}
          @click=${() => wish(this, { want: 'beside', left: this.#formula, state: id })}
        >${stateWords.read}</button>
        ${
          this.readOnly
            ? nothing
            : html`<button
                  aria-label=${stateWords.bringBackThis(name)}
                  aria-describedby=${also ? `also-${id}` : nothing}
                  @click=${() => this.#bringBack(state)}
                >${stateWords.bringBack}</button>
                <button aria-label=${stateWords.letGoOf(name)} @click=${() => this.#letGo(state)}>${stateWords.letGo}</button>`
        }
      </div>
    </li>`
  }

  /** The state worked out: `, 70.5 % true, 1.88 % salt, 10.3 % prefermented, 1,921 g of dough` */
  #worked(state: KeptState) {
    const { larder } = this.sheet!
    let known = this.#sheets.get(state)
    if (known?.of !== larder) {
      const then = this.sheet!.other(state.formula)
      const parts = main.map(reading => {
        const value = then.reading(reading)
        return value
          ? `, ${showReading(reading, value, this.numbers)}\u00a0${stateReadingWords[reading]}`
          : ''
      })
      known = { of: larder, then, words: parts.join('') }
      this.#sheets.set(state, known)
    }
    return known
  }

  /** What else was different then. */
  #besides = (state: KeptState): readonly SettingPair[] =>
    settingsBeside(this.#worked(state).then, this.sheet!, this.numbers)

  #key = (event: KeyboardEvent): void => {
    const field = event.target as HTMLInputElement
    if (event.key !== 'Escape' || event.isComposing || field.value === this.#proposed) return
    event.stopPropagation()
    field.value = this.#proposed
    field.select()
  }

  #keep = (event: Event): void => {
    event.preventDefault()
    const field = this.renderRoot.querySelector('input')!
    const now = this.today().toISOString()
    const formula = this.#formula
    const name = field.value
    this.refusal = askEdit(this, workbook => keepState(workbook, formula, name, now)) ?? ''
    if (this.refusal) return
    field.value = this.#proposed // another one is proposed with the next change
    say(this, stateWords.kept(name.trim()))
  }

  async #bringBack(state: KeptState): Promise<void> {
    const formula = this.#formula
    const besides = listedFew(this.#besides(state).map(pair => pair.what))
    if (this.#ask(workbook => bringBack(workbook, formula, state.id)))
      say(this, stateWords.isBack(state.name, besides))
  }

  async #letGo(state: KeptState): Promise<void> {
    const formula = this.#formula
    const at = [...this.#states].reverse().indexOf(state)
    if (!this.#ask(workbook => forgetState(workbook, formula, state.id))) return
    say(this, stateWords.gone(state.name))
    await this.updateComplete
    const rows = this.renderRoot.querySelectorAll('li')
    const next = rows[Math.min(at, rows.length - 1)]?.querySelector<HTMLElement>('button')
    ;(next ?? this.renderRoot.querySelector<HTMLElement>('form button'))?.focus()
  }

  #ask(edit: Edit): boolean {
    const refusal = askEdit(this, edit)
    if (refusal) say(this, refusal)
    return !refusal
  }

  static override styles = [insideStyles, stateStyles]
}
customElements.define('tb-states', TbStates)

/** The moment in the baker's own words, or as it is stored where it is no moment. */
function dateIn(iso: string, format: Intl.DateTimeFormat): string {
  const date = new Date(iso)
  return Number.isNaN(date.getTime()) ? iso : format.format(date)
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-states': TbStates
  }
}
