import { html, nothing, type PropertyDeclarations, type PropertyValues } from 'lit'
import type { HouseholdOptions } from '../../src/dough/about/household.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { type Larder, larderOf } from '../../src/dough/document/larder.js'
import { emptyWorkbook, type Workbook } from '../../src/dough/document/workbook.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { listSelect, ownList } from '../sheet/allergen-list.js'
import { cardNarrowStyles } from './card-narrow-styles.js'
import { cardPage } from './card-page.js'
import { cardStyles } from './card-styles.js'
import { keepOwnPaper, ownPaper, type PaperName, paperMargin, papers, printOn } from './paper.js'
import '../controls/tb-measures.js'
import { BaseElement } from '../base/base-element.js'
import { ownMeasures } from '../controls/tb-measures.js'
import { barWords, paperWords } from './words.js'

const smallest = 3 // the last step of the type: smaller is not read at arm's length
const footSizes = [11, 10, 9.2, 8.5] as const // points of what stands at the foot
const almost = 0.995 // of the page's height: fonts come out a little different on paper

/**
 * One formula as a printed page. While it is open the page of the app is the card and nothing else, so that what is
 * seen is what is printed; `tb-alone` tells the app of it, with true as detail, and of the end with false.
 */
export class TbCard extends BaseElement {
  static override properties: PropertyDeclarations = {
    workbook: { attribute: false },
    larder: { attribute: false },
    formula: { state: true },
    paper: { state: true },
    measures: { state: true },
    notes: { state: true },
    pages: { state: true },
  }

  declare workbook: Workbook
  declare larder: Larder
  declare private formula: string // id; '' while it is closed
  declare private paper: PaperName
  declare private measures: HouseholdOptions | undefined
  declare private notes: boolean
  declare private pages: number

  #before:
    | { readonly focus: HTMLElement | undefined; readonly scroll: number; readonly title: string }
    | undefined
  #sheet: { readonly of: Formula; readonly larder: Larder; readonly sheet: FigureSheet } | undefined

  constructor() {
    super()
    this.workbook = emptyWorkbook
    this.larder = larderOf([])
    this.formula = ''
    this.paper = 'a4'
    this.measures = undefined
    this.notes = true
    this.pages = 1
  }

  /** Shows the card of the formula with that id. */
  async show(detail: { formula?: string } = {}): Promise<void> {
    const formula = this.workbook.formulas.find(f => f.id === detail.formula)
    if (!formula || this.formula) return
    this.#before = { focus: focused(), scroll: scrollY, title: document.title }
    this.paper = ownPaper(this.numbers.language)
    this.formula = formula.id
    this.#tell(true)
    document.title = formula.name // the name of the file, where it is printed to one
    await this.updateComplete
    scrollTo(0, 0)
    this.renderRoot.querySelector<HTMLElement>('.main')?.focus()
  }

  close = (): void => {
    if (!this.formula) return
    this.formula = ''
    printOn(undefined)
    this.#tell(false)
    const { focus, scroll = 0, title = '' } = this.#before ?? {}
    document.title = title
    scrollTo(0, scroll)
    focus?.focus({ preventScroll: true })
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.close()
  }

  #tell(alone: boolean): void {
    this.dispatchEvent(new CustomEvent('tb-alone', { detail: alone, bubbles: true, composed: true }))
  }

  #sheetOf(of: Formula): FigureSheet {
    const { larder, workbook } = this
    if (this.#sheet?.of !== of || this.#sheet.larder !== larder)
      this.#sheet = { of, larder, sheet: openSheet(of, larder, workbook.scale) }
    return this.#sheet.sheet
  }

  get #formula(): Formula | undefined {
    return this.workbook.formulas.find(f => f.id === this.formula)
  }

  protected override willUpdate(_changed: PropertyValues<this>): void {
    if (!this.formula) return
    if (this.#formula) printOn(this.paper)
    else this.close() // deleted meanwhile, perhaps in another tab
  }

  protected override updated(): void {
    if (this.formula) this.#fit()
  }

  /**
   * Sets the type as large as one page takes, then what stands at its foot, and counts the pages where even the
   * smallest is too large.
   */
  #fit(): void {
    const paper = this.renderRoot.querySelector<HTMLElement>('.paper')
    if (!paper) return
    const { width, height } = papers[this.paper]
    const pagesWith = (type: number, foot: number): number => {
      paper.dataset.type = `${type}`
      paper.style.setProperty('--foot', `${foot}`)
      const box = paper.getBoundingClientRect()
      const millimetres = (box.height / box.width) * (width - 2 * paperMargin)
      return Math.ceil(millimetres / ((height - 2 * paperMargin) * almost))
    }
    const least = footSizes.at(-1)!
    paper.classList.add('fitted')
    let type = 0
    paper.classList.remove('tight')
    while (type < smallest && pagesWith(type, least) > 1) type++
    paper.classList.toggle('tight', pagesWith(type, least) > 1)
    this.pages = pagesWith(type, least)
    if (this.pages > 1) {
      paper.classList.remove('tight')
      this.pages = pagesWith(1, 10)
    } else footSizes.some(foot => pagesWith(type, foot) === 1)
    paper.classList.remove('fitted')
  }

  override render() {
    const formula = this.#formula
    if (!formula) return nothing
    const { numbers, measures, notes } = this
    const { width, height } = papers[this.paper]
    const sheet = this.#sheetOf(formula)
    return html`<div class="around" @keydown=${this.#key}>
      ${this.#bar()}
      <main
        class="paper"
        aria-labelledby="title"
        style=${`--width: ${width}; --height: ${height}; --margin: ${paperMargin}`}
      >
        ${cardPage({ sheet, numbers, measures, notes, list: ownList(numbers.language) })}
      </main>
    </div>`
  }

  #bar() {
    const box = (words: string, on: boolean, change: (on: boolean) => void) =>
      html`<label class="choice">
        <input
          type="checkbox"
          .checked=${on}
          @change=${(e: Event) => change((e.target as HTMLInputElement).checked)}
        />${words}
      </label>`
    return html`<section class="bar" aria-label=${barWords.bar} @tb-measures=${this.#measure}>
      <button class="lined" @click=${this.close}>${barWords.back}</button>
      <label class="choice">
        <span class="unseen">${barWords.paper}</span>
        <select @change=${this.#choosePaper}>
          ${(['a4', 'letter'] as const).map(
            name => html`<option value=${name} ?selected=${name === this.paper}>${paperWords[name]}</option>`,
          )}
        </select>
      </label>
      ${box(barWords.notes, this.notes, on => {
        this.notes = on
      })}
      ${box(barWords.cupsAndSpoons, this.measures !== undefined, on => {
        this.measures = on ? ownMeasures(this.numbers.language) : undefined
      })}
      <label class="choice" @change=${() => this.requestUpdate()}>
        <span>${barWords.allergensIn}</span>
        ${listSelect(ownList(this.numbers.language))}
      </label>
      <p class="pages" role="status">${barWords.pages(this.pages)}</p>
      <button class="main" @click=${() => print()}>${barWords.print}</button>
      ${this.measures ? html`<tb-measures .measures=${this.measures}></tb-measures>` : nothing}
    </section>`
  }

  #measure = ({ detail }: CustomEvent<HouseholdOptions>): void => {
    this.measures = detail
  }

  #choosePaper = (event: Event): void => {
    this.paper = (event.target as HTMLSelectElement).value as PaperName
    keepOwnPaper(this.paper)
  }

  // Undo and redo would change what is not in sight.
  #key = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && !event.isComposing) this.close()
    else if (!((event.ctrlKey || event.metaKey) && /^[zy]$/i.test(event.key))) return
    event.preventDefault()
    event.stopPropagation()
  }

  static override styles = [cardStyles, cardNarrowStyles]
}
customElements.define('tb-card', TbCard)

/** The element that has the focus, through all shadow roots. */
function focused(): HTMLElement | undefined {
  let at = document.activeElement
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
  return at instanceof HTMLElement ? at : undefined
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-card': TbCard
  }
}
