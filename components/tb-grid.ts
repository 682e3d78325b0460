import { html, LitElement, nothing, type PropertyValues } from 'lit'
import { guard } from 'lit/directives/guard.js'
import { repeat } from 'lit/directives/repeat.js'
import type { FormulaSheet } from '../src/dough/figures.js'
import { say, wish } from './events.js'
import { actionsFor, addStageAt } from './grid/actions.js'
import { Blocks } from './grid/blocks.js'
import { Deeds, type GridPlace } from './grid/deeds.js'
import { columnNames, padTemplate, placeEditor, rowName } from './grid/editor.js'
import { type Command, commandOf } from './grid/keys.js'
import { RowMenu } from './grid/menu.js'
import { cellColumn, takesTyping } from './grid/moving.js'
import { overlayStyles } from './grid/overlay-styles.js'
import { type RowState, rowTemplate, selectedColumns, type View } from './grid/rows.js'
import { EditSession, type Field, type Leave } from './grid/session.js'
import { gridStyles } from './grid/styles.js'
import {
  type Column,
  columnsFor,
  emptyTable,
  type Row,
  rowAt,
  type Spot,
  stageKey,
  type Table,
  tableOf,
} from './grid/table.js'
import { Walk } from './grid/walk.js'
import { type NumberStyle, numberStyleOf } from './numbers.js'
import { sharedStyles } from './shared-styles.js'

export type { GridPlace } from './grid/deeds.js'
export { gridKeys } from './grid/keys.js'

const narrowBelow = 600 // px of the grid's own width

const headings: Readonly<Record<Column, unknown>> = {
  ingredient: 'Ingredient',
  percent: '% of flour',
  weight: 'Grams',
  wholeDough: '% whole dough',
  note: 'Note',
  actions: html`<span class="unseen">Actions</span>`,
}

const isTouch = (): boolean => matchMedia('(pointer: coarse)').matches
const keepFocus = (event: Event): void => event.preventDefault()

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
    narrow: { type: Boolean, reflect: true },
  }

  declare sheet: FormulaSheet // the same object all through; `version` says that it has changed
  declare version: number
  declare numbers: NumberStyle
  declare readOnly: boolean
  declare names: readonly string[] // of the larder, for completion
  declare narrow: boolean // set by the grid, from its own width

  #rows: Table = emptyTable
  #rowsOf: readonly unknown[] = [] // what the rows were made of
  #focusWanted = false
  #tapped: Spot | undefined // the active cell, when a finger comes down on it
  #walk = new Walk({
    table: () => this.#table(),
    columns: () => this.#columns,
    changed: () => this.requestUpdate(),
  })
  #deeds = new Deeds({
    given: this,
    walk: this.#walk,
    blocks: () => this.#blocks,
    table: () => this.#table(),
    startEditing: (spot, how) => this.#startEditing(spot, how),
    wantFocus: () => this.focus(),
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
  #watch = new ResizeObserver(([entry]) => {
    if (entry) this.narrow = entry.contentRect.width < narrowBelow
  })

  constructor() {
    super()
    this.version = 0
    this.numbers = numberStyleOf(navigator.language)
    this.readOnly = false
    this.names = []
    this.narrow = false
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

  get #columns(): readonly Column[] {
    return columnsFor(this.narrow, this.readOnly)
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
    const view: View = {
      columns,
      narrow: this.narrow,
      readOnly: this.readOnly,
      style: this.numbers,
      label: (row, column) => `${rowName(row, this.sheet)}, ${columnNames[column]}`,
    }
    const selection = this.#walk.block && this.#walk.extent
    const selectedRows = new Set(selection?.rows)
    const span = selection ? selectedColumns(selection.columns, columns) : ([-1, -1] as const)
    const editing = this.#session.state
    const paint = (row: Row) => {
      const isActive = row.key === this.#walk.active.row
      const [from, to] = selectedRows.has(row) ? span : [-1, -1]
      const at: RowState = {
        active: isActive ? cellColumn(row, this.#walk.active.column, columns) : undefined,
        from,
        to,
        editing: editing?.row === row.key ? editing : undefined,
      }
      return guard([row, at.active, from, to, at.editing, this.narrow, this.readOnly], () =>
        rowTemplate(row, at, view),
      )
    }
    return html`
      ${ruler}
      <table
        role="grid"
        aria-label=${`${this.sheet.formula.name}, stages and lines`}
        aria-describedby="help"
        aria-multiselectable="true"
        aria-readonly=${this.readOnly ? 'true' : nothing}
        @keydown=${this.#keydown}
        @input=${() => this.#session.input()}
        @beforeinput=${this.#beforeInput}
        @pointerdown=${this.#pointerDown}
        @mousedown=${this.#mouseDown}
        @click=${this.#click}
        @dblclick=${this.#doubleClick}
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
        editing && (editing.column === 'percent' || editing.column === 'weight') && isTouch()
          ? html`<div @mousedown=${keepFocus} @click=${this.#padClick}>${padTemplate(editing)}</div>`
          : nothing
      }
    `
  }

  protected override updated(): void {
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

  #spotOf(target: EventTarget | null): Spot | undefined {
    if (!(target instanceof Element)) return undefined
    const row = target.closest<HTMLElement>('[data-row]')?.dataset.row
    const column = target.closest<HTMLElement>('[data-column]')?.dataset.column
    return row && column ? { row, column: column as Column } : undefined
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
    this.#walk.stand({ row: spot.row, column: this.narrow && column === 'note' ? 'ingredient' : column })
    this.#session.open({ row: spot.row, column }, how)
    return true
  }

  #editHere(row: Row, how: 'typing' | 'end'): void {
    const spot = this.#walk.cellOf(this.#walk.active)
    if (this.#startEditing(spot, how) || this.readOnly) return
    if (row.kind === 'sum' || spot.column === 'wholeDough') say(this, 'This number follows from the others.')
  }

  // ---- keys, pointers, focus

  #keydown = (event: KeyboardEvent): void => {
    if (this.#session.state && event.target === this.#field) return this.#session.key(event)
    if (event.target instanceof Element && event.target.matches('.define')) return
    const command = commandOf(event, this.#rtl)
    if (command && this.#obey(command, event)) event.preventDefault()
  }

  /** Does what a key asks; false: the key is left to the browser. */
  #obey(command: Command, event: KeyboardEvent): boolean {
    const row = rowAt(this.#table(), this.#walk.active.row)
    if (!row) return false
    const onButton = event.target instanceof HTMLButtonElement
    switch (command.do) {
      case 'move':
        this.#walk.move(command.to, command.extend, this.#page())
        this.focus()
        return true
      case 'select':
        this.#walk.select(command.what)
        return true
      case 'type':
        if (!onButton) this.#editHere(row, 'typing')
        return false // the browser delivers the key to the field
      case 'edit':
        if (!onButton) this.#editHere(row, 'end')
        return !onButton
      case 'stay':
        return !onButton
      case 'clear':
        this.#blocks.clear()
        return true
      case 'undo':
      case 'redo':
        wish(this, { want: command.do })
        return true
      case 'actions':
        if (this.readOnly) return false
        this.#openMenu(row, event.target as HTMLElement)
        return true
      case 'addBelow':
        if (this.readOnly) return false
        this.#deeds.addBelow(row)
        return true
      case 'shift':
        if (!this.readOnly) this.#deeds.shift(row, command.by)
        return true
    }
  }

  /** Undo from a menu or a gesture, where no field of ours has an undo of its own. */
  #beforeInput = (event: InputEvent): void => {
    if (this.#session.state) return
    if (event.inputType !== 'historyUndo' && event.inputType !== 'historyRedo') return
    event.preventDefault()
    wish(this, { want: event.inputType === 'historyUndo' ? 'undo' : 'redo' })
  }

  #pointerDown = (event: PointerEvent): void => {
    const spot = event.pointerType === 'mouse' ? undefined : this.#spotOf(event.target)
    const focused = this.#spotOf(this.shadowRoot?.activeElement ?? null)
    const again = spot && focused && spot.row === focused.row && spot.column === focused.column
    this.#tapped = again && !this.#session.state ? spot : undefined
  }

  #mouseDown = (event: MouseEvent): void => {
    const target = event.target as Element
    if (target.closest('[data-choice]')) return keepFocus(event)
    const spot = this.#spotOf(target)
    if (!event.shiftKey || !spot || this.#session.state) return
    event.preventDefault() // or the browser selects text
    this.#walk.extendTo(spot)
    this.focus()
  }

  #click = (event: MouseEvent): void => {
    const target = event.target as Element
    const choice = target.closest<HTMLElement>('[data-choice]')?.dataset.choice
    if (choice !== undefined) return this.#session.pick(Number(choice))
    const define = target.closest<HTMLElement>('[data-define]')?.dataset.define
    if (define !== undefined) return wish(this, { want: 'define', ingredient: define })
    const dots = target.closest<HTMLElement>('[data-row-actions]')
    const spot = this.#spotOf(target)
    const row = spot && rowAt(this.#table(), spot.row)
    if (!row || !spot) return
    if (dots) return this.#openMenu(row, dots)
    const { row: key, column } = this.#tapped ?? {}
    if (key !== spot.row || column !== spot.column) return
    this.#tapped = undefined
    // Within the tap, or a phone does not bring up its keyboard.
    const isAmount = spot.column === 'percent' || spot.column === 'weight'
    if (this.#startEditing(spot, isAmount ? 'all' : 'end')) this.performUpdate()
  }

  #doubleClick = (event: MouseEvent): void => {
    const spot = this.#spotOf(event.target)
    if (!spot || this.#session.state || (event.target as Element).closest('button')) return
    if (this.#startEditing(spot, 'end')) event.preventDefault()
  }

  #focusIn = (event: FocusEvent): void => {
    const spot = this.#spotOf(event.target)
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
    this.#menu.open(`Actions for ${rowName(row, this.sheet)}`, actionsFor(row, this.#deeds), by)
  }

  #padClick = (event: MouseEvent): void => {
    const button = (event.target as Element).closest('button')
    if (button) this.#session.pad(button.dataset.types, button.dataset.pad)
  }

  static override styles = [sharedStyles, gridStyles, overlayStyles]
}
customElements.define('tb-grid', TbGrid)

declare global {
  interface HTMLElementTagNameMap {
    'tb-grid': TbGrid
  }
}
