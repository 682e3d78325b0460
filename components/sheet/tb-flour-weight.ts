import { css, html, nothing } from 'lit'
import { finalDoughOf } from '../../src/dough/document/formula.js'
import { setFlourWeight } from '../../src/dough/edits/edits.js'
import { fetchWhenIdle } from '../base/after-paint.js'
import { SheetElement } from '../base/base-element.js'
import { askEdit } from '../base/events.js'
import { showGrams, showNumber } from '../base/numbers.js'
import { flourWeightWords } from './words.js'

/** What reads a typed weight; fetched when the page is idle. */
const typedNumbers = () => import('../typed/typed-numbers.js')

/** What 100 % weighs in the final dough: to be set where its flours are all percentages, said where they are not. */
export class TbFlourWeight extends SheetElement {
  static override properties = {
    refusal: { state: true },
  }

  declare refusal: string // why what was typed was not taken

  constructor() {
    super()
    this.refusal = ''
  }

  override render() {
    const sheet = this.sheet
    if (!sheet) return nothing
    const final = finalDoughOf(sheet.formula)
    const figures = final.lines.map(line => sheet.line(line.id))
    const flours = figures.filter(figure => figure.is === 'flour')
    const base = sheet.stage(final.id).base
    const shown = base === undefined ? '–' : showGrams(base, this.numbers)
    if (flours.length === 0) {
      return html`<p class="quiet">${flourWeightWords.withoutFlour(final.name, shown)}</p>`
    }
    const { plan, outline } = sheet.workedOut
    if (!plan.isFree(outline.final) || outline.doughWeight !== undefined) {
      return html`<p>${flourWeightWords.asLinesSay(shown)}</p>`
    }
    return html`<p>
        <label for="weight">${flourWeightWords.flourWeighs}</label>
        <span class="typed"><input
          id="weight"
          data-typed="flour"
          inputmode="decimal"
          enterkeyhint="done"
          autocomplete="off"
          aria-invalid=${this.refusal ? 'true' : nothing}
          aria-describedby=${this.refusal ? 'refusal' : nothing}
          size="6"
          .defaultValue=${this.#kept}
          .value=${this.#kept}
          ?readonly=${this.readOnly}
          @focus=${this.#focus}
          @change=${this.#enter}
          @keydown=${this.#key}
        /> g</span>
        <span class="unseen">${flourWeightWords.inFinalDough}</span>
      </p>
      ${this.refusal ? html`<p id="refusal">${this.refusal}</p>` : nothing}`
  }

  protected override firstUpdated(): void {
    void fetchWhenIdle(typedNumbers)
  }

  get #kept(): string {
    return showNumber(this.sheet!.formula.flourWeight, this.numbers)
  }

  get #field(): HTMLInputElement {
    return this.renderRoot.querySelector('input')!
  }

  #focus = (): void => this.#field.select()

  /** Enter and the change of the field that it brings are one entry. */
  #entry: { readonly formula: string; readonly typed: string } | undefined

  #enter = async (): Promise<void> => {
    this.#entry = { formula: this.sheet!.formula.id, typed: this.#field.value }
    const { readWeight } = await typedNumbers()
    const entry = this.#entry
    this.#entry = undefined
    if (!entry || entry.formula !== this.sheet?.formula.id) return
    const { formula, typed } = entry
    this.refusal = ''
    if (typed === this.#kept) return
    const grams = readWeight(typed, this.numbers) ?? Number.NaN
    this.refusal = askEdit(this, workbook => setFlourWeight(workbook, formula, grams)) ?? ''
    if (!this.refusal) this.#field.value = this.#kept
  }

  #key = (event: KeyboardEvent): void => {
    if (event.isComposing || event.keyCode === 229) return // Safari: Enter that ends a composition
    if (event.key === 'Enter') this.#enter()
    else if (event.key === 'Escape') {
      this.refusal = ''
      this.#field.value = this.#kept
      this.#field.select()
    }
  }

  static override styles = css`
    :host {
      display: block;
    }
    p {
      margin: 0;
      display: flex;
      flex-wrap: wrap;
      align-items: baseline;
      gap: 2px 7px;
      color: var(--ink-soft);
    }
    .typed {
      white-space: nowrap;
    }
    label {
      font-size: inherit;
    }
    input {
      width: 4.2em;
      margin-right: 2px;
      padding: 1px 6px;
      text-align: right;
      font-weight: 640;
      color: var(--ink);
      background: none;
      border: 0;
      border-bottom: 2px solid var(--ink);
      border-radius: 0;
    }
    input[readonly] {
      border-bottom-color: transparent;
    }
    input[aria-invalid] {
      border-bottom: 3px double var(--warn);
    }
    b {
      font-weight: 640;
      color: var(--ink);
    }
    #refusal {
      color: var(--warn);
    }
  `
}
customElements.define('tb-flour-weight', TbFlourWeight)

declare global {
  interface HTMLElementTagNameMap {
    'tb-flour-weight': TbFlourWeight
  }
}
