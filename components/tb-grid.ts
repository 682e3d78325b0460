import { html, LitElement, nothing, type PropertyValues } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import type { FormulaSheet } from '../src/dough/figures.js'
import { say, wish } from './events.js'
import { actionsFor } from './grid/actions.js'
import { Blocks } from './grid/blocks.js'
import { Deeds, type GridPlace } from './grid/deeds.js'
import { padTemplate, placeEditor, rowName } from './grid/editor.js'
import { figureStyles } from './grid/figure-styles.js'
import { commandOf } from './grid/keys.js'
import { bringIntoView } from './grid/lit-lines.js'
import { RowMenu } from './grid/menu.js'
import { cellColumn, takesTyping } from './grid/moving.js'
import { Orders } from './grid/orders.js'
import { overlayStyles } from './grid/overlay-styles.js'
import { painter } from './grid/paint.js'
import { keepFocus, Pointers, spotOf } from './grid/pointers.js'
import { EditSession, type Field, type Leave } from './grid/session.js'
import { addStageAt } from './grid/stage-actions.js'
import { gridStyles } from './grid/styles.js'
import {
  type Column,
  columnsFor,
  emptyTable,
  homeOf,
  isAmount,
  type Room,
  type Row,
  rowAt,
  type Spot,
  stageKey,
  type Table,
} from './grid/table.js'
import { tableOf } from './grid/table-of.js'
import { variantStyles } from './grid/variant-styles.js'
import { Walk } from './grid/walk.js'
import { type NumberStyle, numberStyleOf } from './numbers.js'
import { sharedStyles } from './shared-styles.js'

export type { GridPlace } from './grid/deeds.js'
export { gridKeys } from './grid/keys.js'

// px of the grid's own width
const narrowBelow = 600
const crampedBelow = 820

const headings: Readonly<Record<Column, unknown>> = {
  ingredient: 'Ingredient',
  percent: '% of flour',
  weight: 'Grams',
  wholeDough: '% whole dough',
  batch: html`Batch<small class="above">grams</small><small class="beneath">written below</small>`,
  note: 'Note',
  actions: html`<span class="unseen">Actions</span>`,
}

const isTouch = (): boolean => matchMedia('(pointer: coarse)').matches

/**
 * The sheet: stages as groups of rows, the final dough last. It is one tab stop. Edits, undo, wishes and
 * announcements leave it as events.
 */
export class TbGrid extends LitElement {
  static override properties = {
    sheet: { attribute: false },
    version: { type: Number },
    numbers: { attribute: false },
    readOnly: { type: Boolean },
    names: { attribute: false },
    lit: { attribute: false },
    cramped: { state: true },
    narrow: { type: Boolean, reflect: true },
  }

  declare sheet: FormulaSheet // the same object all through; `version` says that it has changed
  declare version: number
  declare numbers: NumberStyle
  declare readOnly: boolean
  declare names: readonly string[] // of the larder, for completion
  declare lit: ReadonlySet<string> // ids of the lines that an open working speaks of
  declare narrow: boolean // set by the grid, from its own width
  declare cramped: boolean // likewise

  #rows: Table = emptyTable
  #rowsOf: readonly unknown[] = [] // what the rows were made of
  #focusWanted = false
  #shownColumns: { readonly key: string; readonly columns: readonly Column[] } | undefined
  #walk = new Walk({
    table: () => this.#table(),
    columns: () => this.#columns,
    changed: () => this.requestUpdate(),
  })
  #deeds = new Deeds({
    given: this,
    walk: this.#walk,
    blocks: () => this.#blocks,
    columns: () => this.#columns,
    table: () => this.#table(),
    startEditing: (spot, how) => this.#startEditing(spot, how),
    wantFocus: () => this.focus(),
    offer: (label, actions) => this.#menu.open(label, actions, this.#cellElement(this.#walk.active) ?? this),
  })
  #session = new EditSession({
    given: this,
    rtl: () => this.#rtl,
    table: () => this.#table(),
    field: () => this.#field,
    changed: () => this.requestUpdate(),
    edit: (edit, at) => this.#deeds.edit(edit, at),
    leave: (from, to) => this.#leave(from, to),
  })
  #blocks = new Blocks({
    given: this,
    columns: () => this.#columns,
    table: () => this.#table(),
    extent: () => this.#walk.extent,
    act: edit => this.#deeds.act(edit),
    say: sentence => say(this, sentence),
  })
  #menu = new RowMenu({
    element: () => this.renderRoot.querySelector<HTMLElement>('#menu'),
    changed: () => this.requestUpdate(),
    goBack: () => this.focus(),
  })
  #orders = new Orders({
    given: this,
    walk: this.#walk,
    deeds: this.#deeds,
    blocks: () => this.#blocks,
    table: () => this.#table(),
    page: () => this.#page(),
    startEditing: (spot, how) => this.#startEditing(spot, how),
    openMenu: (row, by) => this.#openMenu(row, by),
    focusCell: () => this.#cellElement(this.#walk.active)?.focus(),
  })
  #pointers = new Pointers({
    given: this,
    walk: this.#walk,
    session: this.#session,
    orders: this.#orders,
    table: () => this.#table(),
    focused: () => this.shadowRoot?.activeElement ?? null,
    startEditing: (spot, how) => this.#startEditing(spot, how),
    openMenu: (row, by) => this.#openMenu(row, by),
    wantFocus: () => this.focus(),
    renderNow: () => this.performUpdate(),
  })
  #watch = new ResizeObserver(([entry]) => {
    if (!entry) return
    this.narrow = entry.contentRect.width < narrowBelow
    this.cramped = entry.contentRect.width < crampedBelow
  })

  constructor() {
    super()
    this.version = 0
    this.numbers = numberStyleOf(navigator.language)
    this.readOnly = false
    this.names = []
    this.lit = new Set()
    this.narrow = false
    this.cramped = false
  }

  override connectedCallback(): void {
    super.connectedCallback()
    if (this.hasUpdated) this.#measure()
    for (const name of ['resize', 'scroll']) visualViewport?.addEventListener(name, this.#keepInView)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.#watch.disconnect()
    for (const name of ['resize', 'scroll']) visualViewport?.removeEventListener(name, this.#keepInView)
  }

  protected override firstUpdated(): void {
    this.#measure()
  }

  // Not the grid itself: its height follows from what is measured here, and the observer would see that.
  #measure(): void {
    const ruler = this.renderRoot.querySelector('.ruler')
    if (ruler) this.#watch.observe(ruler)
  }

  /** A touch keyboard came, went or grew: the editor stays above it, and so does the strip of signs. */
  #keepInView = (event: Event): void => {
    if (!this.#session.state || !visualViewport) return
    const below = innerHeight - visualViewport.height - visualViewport.offsetTop
    this.style.setProperty('--pad-bottom', `${Math.max(0, Math.round(below))}px`)
    if (event.type === 'resize') this.#field?.scrollIntoView({ block: 'nearest' })
  }

  /** Goes to a place an edit carried, or stays by where it was. */
  goTo(place: Partial<GridPlace>): void {
    const row = place.line || stageKey(place.stage ?? '')
    if (this.#table().index.has(row)) this.#walk.stand({ row, column: place.column ?? 'ingredient' })
    this.focus()
  }

  /** Puts the focus on the cell where the baker was last. */
  override focus(): void {
    this.#focusWanted = true
    this.requestUpdate()
  }

  // ---- what is shown

  /** The same array for as long as the columns are the same. */
  get #columns(): readonly Column[] {
    const room: Room = this.narrow ? 'narrow' : this.cramped ? 'cramped' : 'wide'
    const { batch } = this.#table()
    const key = `${room} ${this.readOnly} ${batch}`
    if (this.#shownColumns?.key !== key)
      this.#shownColumns = { key, columns: columnsFor(room, this.readOnly, batch) }
    return this.#shownColumns.columns
  }

  get #rtl(): boolean {
    return getComputedStyle(this).direction === 'rtl'
  }

  get #field(): Field | null {
    return this.renderRoot.querySelector<Field>('.field')
  }

  /** The rows as the formula stands, also between an edit and its painting. */
  #table(): Table {
    const of = [this.sheet, this.sheet?.formula, this.version, this.numbers, this.readOnly]
    if (this.sheet && of.some((v, i) => v !== this.#rowsOf[i])) {
      const afresh = of[0] !== this.#rowsOf[0] || of[3] !== this.#rowsOf[3]
      this.#rows = tableOf(this.sheet, this.numbers, this.readOnly, afresh ? emptyTable : this.#rows)
      this.#rowsOf = of
    }
    return this.#rows
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const table = this.#table()
    const isOther = changed.has('sheet') && changed.get('sheet') !== undefined
    if (isOther || (this.#session.state && !table.index.has(this.#session.state.row))) this.#session.close()
    this.#walk.settle(isOther)
    const focused = this.shadowRoot?.activeElement
    if (focused?.closest('[data-column]')) this.#focusWanted = true // a row that moves would lose it
  }

  override render() {
    const ruler = html`<div class="ruler"></div>`
    if (!this.sheet) return ruler
    const table = this.#table()
    const columns = this.#columns
    const editing = this.#session.state
    const paint = painter({
      sheet: this.sheet,
      walk: this.#walk,
      editing,
      lit: this.lit,
      view: { columns, readOnly: this.readOnly, style: this.numbers },
    })
    return html`
      ${ruler}
      <table
        role="grid"
        class=${table.batch ? 'with-batch' : ''}
        aria-label=${`${this.sheet.formula.name}, stages and lines`}
        aria-describedby="help"
        aria-multiselectable="true"
        aria-readonly=${this.readOnly ? 'true' : nothing}
        @keydown=${this.#keydown}
        @input=${() => this.#session.input()}
        @beforeinput=${this.#beforeInput}
        @pointerdown=${this.#pointers.pointerDown}
        @mousedown=${this.#pointers.mouseDown}
        @click=${this.#pointers.click}
        @dblclick=${this.#pointers.doubleClick}
        @focusin=${this.#focusIn}
        @focusout=${this.#focusOut}
        @copy=${(e: ClipboardEvent) => this.#session.state || this.#blocks.copy(e)}
        @cut=${(e: ClipboardEvent) => this.#session.state || this.#blocks.cut(e)}
        @paste=${(e: ClipboardEvent) => this.#session.state || this.#blocks.paste(e)}
      >
        <colgroup>${columns.map(c => html`<col class=${c} />`)}</colgroup>
        <thead>
          <tr>${columns.map(c => html`<th scope="col" class=${c}>${headings[c]}</th>`)}</tr>
        </thead>
        ${repeat(
          table.groups,
          group => group.stage.id,
          group => html`<tbody>${repeat(group.rows, row => row.key, paint)}</tbody>`,
        )}
      </table>
      ${
        this.readOnly
          ? nothing
          : html`<div class="after">
            <button class="lined" @click=${() => addStageAt(this.#deeds)}>Add a stage</button>
            <p id="help">Type to replace, Enter to edit. Escape, then Tab leaves the sheet.</p>
          </div>`
      }
      ${this.#menu.template()}
      ${
        editing && isAmount(editing.column) && isTouch()
          ? html`<div @mousedown=${keepFocus} @click=${this.#padClick}>${padTemplate(editing)}</div>`
          : nothing
      }
    `
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('lit') && this.lit.size) bringIntoView(this.renderRoot)
    if (this.#menu.rendered()) {
      this.#focusWanted = false
      return
    }
    // In the top layer: the page may keep bars of its own down there.
    const pad = this.renderRoot.querySelector<HTMLElement>('.pad')
    if (pad && !pad.matches(':popover-open')) pad.showPopover()
    if (this.#session.rendered()) {
      this.#focusWanted = false
      placeEditor(this.#field)
      return
    }
    if (this.#session.state) placeEditor(this.#field)
    if (!this.#focusWanted) return
    this.#focusWanted = false
    const target = this.#session.state ? this.#field : this.#cellElement(this.#walk.active)
    if (target && this.shadowRoot?.activeElement !== target) target.focus()
  }

  /** What takes the focus of a cell: the cell, or the one button in it. */
  #cellElement(spot: Spot): HTMLElement | null {
    const row = rowAt(this.#table(), spot.row)
    const column = cellColumn(row, spot.column, this.#columns)
    const cell = this.renderRoot.querySelector<HTMLElement>(
      `tr[data-row="${CSS.escape(spot.row)}"] > [data-column="${column}"]`,
    )
    return cell?.querySelector<HTMLElement>('button.dots') ?? cell
  }

  // ---- going about

  #page(): number {
    const height = this.#cellElement(this.#walk.active)?.getBoundingClientRect().height ?? 44
    return Math.max(3, Math.floor((innerHeight - 160) / height))
  }

  /** Goes on from an edited cell. False: past the last cell, the key is the browser's. */
  #leave(from: Spot, to: Leave): boolean {
    const next = this.#walk.onward(from, to)
    this.#walk.stand(next ?? from)
    if (next) this.focus()
    else this.#cellElement(from)?.focus() // so that Tab goes on from here
    return next !== undefined
  }

  #startEditing(spot: Spot, how: 'typing' | 'end' | 'all'): boolean {
    const row = rowAt(this.#table(), spot.row)
    if (this.readOnly || !row || !takesTyping(row, spot.column)) return false
    const column = row.kind === 'stage' ? 'ingredient' : spot.column
    this.#walk.stand({ row: spot.row, column: homeOf(column, this.#columns) })
    this.#session.open({ row: spot.row, column }, how)
    return true
  }

  // ---- keys, pointers, focus

  #keydown = (event: KeyboardEvent): void => {
    if (this.#session.state && event.target === this.#field) return this.#session.key(event)
    if (event.target instanceof Element && event.target.matches('.define')) return
    const command = commandOf(event, this.#rtl)
    if (command && this.#orders.obey(command, event)) event.preventDefault()
  }

  /** Undo from a menu or a gesture, where no field of ours has an undo of its own. */
  #beforeInput = (event: InputEvent): void => {
    if (this.#session.state) return
    if (event.inputType !== 'historyUndo' && event.inputType !== 'historyRedo') return
    event.preventDefault()
    wish(this, { want: event.inputType === 'historyUndo' ? 'undo' : 'redo' })
  }

  #focusIn = (event: FocusEvent): void => {
    const spot = spotOf(event.target)
    if (!spot || this.#session.state) return
    const { row, column } = this.#walk.cellOf(this.#walk.active)
    if (spot.row === row && spot.column === column) return
    const inBlock =
      this.#walk.block && spot.column === 'actions' && this.#walk.extent.rows.some(r => r.key === spot.row)
    this.#walk.stand(spot, inBlock ? this.#walk.block : undefined)
  }

  #focusOut = (event: FocusEvent): void => {
    if (!this.#session.state || event.target !== this.#field) return
    // The window lost the focus and the field did not: it goes on where it was.
    if (this.shadowRoot?.activeElement === this.#field) return
    const kept = this.#session.keep()
    const stays = event.relatedTarget instanceof Node && this.renderRoot.contains(event.relatedTarget)
    if (!kept && stays) this.focus()
  }

  // ---- menu and touch keys

  #openMenu(row: Row, by: HTMLElement): void {
    const { column } = this.#walk.cellOf(this.#walk.active)
    this.#menu.open(`Actions for ${rowName(row, this.sheet)}`, actionsFor(row, column, this.#deeds), by)
  }

  #padClick = (event: MouseEvent): void => {
    const button = (event.target as Element).closest('button')
    if (button) this.#session.pad(button.dataset.types, button.dataset.pad)
  }

  static override styles = [sharedStyles, gridStyles, figureStyles, overlayStyles, variantStyles]
}
customElements.define('tb-grid', TbGrid)

declare global {
  interface HTMLElementTagNameMap {
    'tb-grid': TbGrid
  }
}
