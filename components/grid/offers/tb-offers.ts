import { html, LitElement, nothing } from 'lit'
import { type Offer, offersFor } from '../../../src/dough/offers/offers.js'
import { remarksOnLine } from '../../../src/dough/remarks/remarks.js'
import { afterPaint } from '../../base/after-paint.js'
import { askEdit, say } from '../../base/events.js'
import type { LineRow } from '../table/table.js'
import type { GridElement } from '../table/table-context.js'

/** What can be done at once about a line, with what was noticed where the row does not say it. */
export const offersOf = ({ sheet, formulas }: Pick<GridElement, 'sheet' | 'formulas'>, line: string) =>
  remarksOnLine(sheet.workedOut, line).flatMap(problem => {
    const offers = offersFor(sheet, problem, formulas)
    return offers.length ? [{ problem, offers }] : []
  })

const saidByItsRow: readonly string[] = ['ingredientUnknown', 'lineWithoutAmount', 'lineNotConfirmed']

/** Beneath a line: what it means and what may be meant instead, each to be taken with one press. In the grid's own tree. */
export class TbOffers extends LitElement {
  static override properties = { row: { attribute: false } }

  declare row: LineRow

  protected override createRenderRoot(): HTMLElement {
    return this
  }

  get #grid(): GridElement {
    return (this.getRootNode() as ShadowRoot).host as GridElement
  }

  /** What is noticed in a formula is gathered when its rows have been painted. */
  protected override async scheduleUpdate(): Promise<void> {
    if (this.isConnected && !this.#grid.sheet.workedOut.noticed.all) await afterPaint()
    if (this.isConnected) super.scheduleUpdate()
  }

  override render() {
    const grid = this.#grid
    return offersOf(grid, this.row.key).map(
      ({ problem, offers }) => html`<p>
        ${saidByItsRow.includes(problem.code) ? nothing : html`<span>${problem.message}</span>`}
        ${offers.map(
          offer => html`<button tabindex="-1" @click=${() => this.#take(offer)}>${offer.label}</button>`,
        )}
      </p>`,
    )
  }

  #take({ edit }: Offer): void {
    const grid = this.#grid
    const { key, stage } = this.row
    const place = { formula: grid.sheet.formula.id, stage, line: key, column: 'ingredient' } as const
    const refusal = askEdit(grid, edit, place)
    if (refusal) say(grid, refusal)
    grid.goTo(place) // the button may be gone
  }
}
customElements.define('tb-offers', TbOffers)

declare global {
  interface HTMLElementTagNameMap {
    'tb-offers': TbOffers
  }
}
