import { html, nothing, type PropertyDeclarations } from 'lit'
import type { HouseholdOptions } from '../../src/dough/about/household.js'
import { listSelect, ownList } from '../sheet/allergen-list.js'
import { cardNarrowStyles } from './card-narrow-styles.js'
import { cardPage } from './card-page.js'
import { cardStyles } from './card-styles.js'
import '../controls/tb-measures.js'
import { ownMeasures } from '../controls/tb-measures.js'
import { paperStyles } from './paper-styles.js'
import { PrintedFormulas } from './printed-formulas.js'
import { barWords } from './words.js'

const smallest = 3 // the last step of the type: smaller is not read at arm's length
const footSizes = [11, 10, 9.2, 8.5] as const // points of what stands at the foot

/** Formulas as printed pages, one each. */
export class TbCard extends PrintedFormulas {
  static override properties: PropertyDeclarations = {
    measures: { state: true },
    notes: { state: true },
  }

  declare private measures: HouseholdOptions | undefined
  declare private notes: boolean

  constructor() {
    super()
    this.measures = undefined
    this.notes = true
  }

  protected override get printed(): { readonly name: string } | undefined {
    const [first, ...others] = this.formulas
    return others.length ? { name: barWords.cards(others.length + 1) } : first
  }

  /**
   * Sets the type as large as one page takes, then what stands at its foot, and counts the pages where even the
   * smallest is too large.
   */
  protected override fit(paper: HTMLElement): number {
    const pagesWith = (type: number, foot: number): number => {
      paper.dataset.type = `${type}`
      paper.style.setProperty('--foot', `${foot}`)
      return this.pagesOf(paper)
    }
    const least = footSizes.at(-1)!
    paper.classList.add('fitted')
    let type = 0
    paper.classList.remove('tight')
    while (type < smallest && pagesWith(type, least) > 1) type++
    paper.classList.toggle('tight', pagesWith(type, least) > 1)
    let pages = pagesWith(type, least)
    if (pages > 1) {
      paper.classList.remove('tight')
      pages = pagesWith(1, 10)
    } else footSizes.some(foot => pagesWith(type, foot) === 1)
    paper.classList.remove('fitted')
    return pages
  }

  protected override papers() {
    const { numbers, measures, notes } = this
    const formulas = this.formulas
    const shown = { numbers, measures, notes, list: ownList(numbers.language), among: formulas.length > 1 }
    return formulas.map(formula => cardPage({ ...shown, sheet: this.sheetOf(formula) }))
  }

  protected override choices() {
    return html`${this.box(barWords.notes, this.notes, on => {
      this.notes = on
    })}
    ${this.box(barWords.cupsAndSpoons, this.measures !== undefined, on => {
      this.measures = on ? ownMeasures(this.numbers.language) : undefined
    })}
    <label class="choice" @change=${() => this.requestUpdate()}>
      <span>${barWords.allergensIn}</span>
      ${listSelect(ownList(this.numbers.language))}
    </label>`
  }

  protected override more() {
    return this.measures
      ? html`<tb-measures .measures=${this.measures} @tb-measures=${this.#measure}></tb-measures>`
      : nothing
  }

  #measure = ({ detail }: CustomEvent<HouseholdOptions>): void => {
    this.measures = detail
  }

  static override styles = [paperStyles, cardStyles, cardNarrowStyles]
}
customElements.define('tb-card', TbCard)

declare global {
  interface HTMLElementTagNameMap {
    'tb-card': TbCard
  }
}
