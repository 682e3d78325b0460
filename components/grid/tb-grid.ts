import { html, LitElement, nothing, type PropertyValues } from 'lit'
import type { Formula } from '../../src/dough/document/formula.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { allTouched, bothTouched, type Touched, untouched } from '../../src/dough/sheet/touched.js'
import { fetchWhenIdle } from '../base/after-paint.js'
import { fetchRareCells, fetchSpoken } from '../base/fetched-for.js'
import type { NumberStyle } from '../base/numbers.js'
import { sharedStyles } from '../styles/shared-styles.js'
import { ClipboardKeys } from './actions/clipboard-keys.js'
import { handlersOf } from './actions/handlers.js'
import { GridContext } from './context.js'
import type { GridPlace } from './editing/dispatcher.js'
import { placeEditor } from './editing/field.js'
import { Filling } from './paint/filling.js'
import { frameTemplate } from './paint/frame.js'
import { bringIntoView } from './paint/lit-lines.js'
import { painter } from './paint/paint.js'
import { figureStyles } from './styles/figure-styles.js'
import { gridStyles } from './styles/grid-styles.js'
import { overlayStyles } from './styles/overlay-styles.js'
import { placeStyles } from './styles/place-styles.js'
import { screenStyles } from './styles/screen-styles.js'
import { variantStyles } from './styles/variant-styles.js'
import { type Column, stageKey, type Width } from './table/table.js'
import type { GridElement } from './table/table-context.js'

export type { GridPlace } from './editing/dispatcher.js'

// px of the grid's own width
const narrowBelow = 600
const crampedBelow = 820

/**
 * The sheet: stages as groups of rows, the final dough last. It is one tab stop. Edits, undo, wishes and
 * announcements leave it as events.
 */
export class TbGrid extends LitElement implements GridElement {
  static override properties = {
    sheet: { attribute: false },
    version: { type: Number },
    touched: { attribute: false, noAccessor: true },
    numbers: { attribute: false },
    readOnly: { type: Boolean },
    names: { attribute: false },
    lit: { attribute: false },
    cramped: { state: true },
    narrow: { type: Boolean, reflect: true },
  }

  declare sheet: FigureSheet // the same object all through; `version` says that it has changed
  declare version: number
  declare numbers: NumberStyle
  declare readOnly: boolean
  declare names: readonly string[] // for completion
  declare formulas: readonly Formula[] | undefined // of the workbook
  declare lit: ReadonlySet<string> // ids of the lines that an open working speaks of
  declare narrow: boolean // set by the grid, from its own width
  declare cramped: boolean // likewise

  #touched = allTouched
  #untold = allTouched // of what was touched since the rows were last read
  #focusWanted = false
  #context = new GridContext(this)
  #handlers = handlersOf(this.#context)
  #clipboardKeys = new ClipboardKeys(this.#context)
  #filling = new Filling(this.#context)
  #watch = new ResizeObserver(([entry]) => {
    if (!entry) return
    this.narrow = entry.contentRect.width < narrowBelow
    this.cramped = entry.contentRect.width < crampedBelow
  })

  constructor() {
    super()
    this.version = 0
    this.numbers = { language: 'en', decimal: '.' }
    this.readOnly = false
    this.names = []
    this.lit = new Set()
    this.narrow = false
    this.cramped = false
  }

  override connectedCallback(): void {
    super.connectedCallback()
    if (this.hasUpdated) this.#measure()
    this.#context.further?.touchKeys.connect()
    this.#clipboardKeys.connect()
    this.#filling.connect()
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.#watch.disconnect()
    this.#context.further?.touchKeys.disconnect()
    this.#clipboardKeys.disconnect()
    this.#filling.disconnect()
  }

  protected override firstUpdated(): void {
    this.#measure()
    void fetchWhenIdle(() =>
      Promise.all([
        fetchSpoken(),
        fetchRareCells(),
        this.#context.fetchFurther(),
        this.#context.session.fetchNames(),
      ]),
    )
  }

  // Not the grid itself: its height follows from what is measured here, and the observer would see that.
  #measure(): void {
    const { ruler } = this.#context.elements
    if (ruler) this.#watch.observe(ruler)
  }

  /** What is touched of the sheet since the `version` before. What is given before a rendering adds up. */
  get touched(): Touched {
    return this.#touched
  }

  set touched(touched: Touched) {
    this.#touched = touched
    this.#untold = bothTouched(this.#untold, touched)
  }

  /** Goes to a place an edit carried, or stays by where it was. */
  goTo(place: Partial<GridPlace>): void {
    const row = place.line || stageKey(place.stage ?? '')
    const { table, selection } = this.#context
    if (table.index.has(row)) selection.moveTo({ row, column: place.column ?? 'ingredient' })
    this.focus()
  }

  /** Puts the focus on the cell where the baker was last. */
  override focus(): void {
    this.#focusWanted = true
    this.requestUpdate()
  }

  /** Opens the editor of a cell, by its column and the key of its row. */
  openField(column: string, row: string): void {
    this.#context.session.start({ row, column: column as Column }, 'end')
  }

  /** Renders at once: within a tap, or a phone does not bring up its keyboard. */
  renderNow(): void {
    this.requestUpdate()
    this.performUpdate()
  }

  get width(): Width {
    return this.narrow ? 'narrow' : this.cramped ? 'cramped' : 'wide'
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (this.sheet && changed.has('version')) {
      this.#context.follow(bothTouched(this.#untold, this.#touched))
      this.#untold = untouched
    }
    const { table, session, selection, elements } = this.#context
    const isOther = changed.has('sheet') && changed.get('sheet') !== undefined
    if (isOther || (session.state && !table.index.has(session.state.row))) session.close()
    selection.settle(isOther)
    if (this.hasUpdated && elements.focused?.closest('[data-column]')) this.#focusWanted = true // a row that moves would lose it
  }

  override render() {
    const ruler = html`<div id="ruler"></div>`
    if (!this.sheet) return ruler
    const { table, columns, session, further } = this.#context
    const paint = painter(this.#context, this.lit, this.#filling)
    const { isGoingOn } = this.#filling
    return html`
      ${ruler}${frameTemplate(this.sheet.formula.name, table, columns, this.readOnly, paint, isGoingOn, this.#handlers)}
      ${further?.menu.template() ?? nothing}${further?.touchKeys.template(session.state) ?? nothing}
    `
  }

  protected override updated(changed: PropertyValues<this>): void {
    const { elements, further, selection, session } = this.#context
    if (changed.has('lit') && this.lit.size) bringIntoView(this.shadowRoot!)
    if (further?.menu.rendered()) {
      this.#focusWanted = false
      return
    }
    const editing = session.state !== undefined
    if (editing) {
      further?.touchKeys.rendered()
      if (session.rendered()) this.#focusWanted = false
      placeEditor(elements.field)
    }
    if (!this.#focusWanted) return
    this.#focusWanted = false
    const target = editing ? elements.field : elements.cell(selection.cell)
    if (target && elements.focused !== target) target.focus()
  }

  static override styles = [
    sharedStyles,
    gridStyles,
    figureStyles,
    placeStyles,
    overlayStyles,
    variantStyles,
    screenStyles,
  ]
}
customElements.define('tb-grid', TbGrid)

declare global {
  interface HTMLElementTagNameMap {
    'tb-grid': TbGrid
  }
}
