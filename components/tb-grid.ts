import { html, LitElement, nothing, type PropertyValues } from 'lit'
import { guard } from 'lit/directives/guard.js'
import { repeat } from 'lit/directives/repeat.js'
import { addLine, moveLine, moveStage, newLine } from '../src/dough/edits.js'
import type { FormulaSheet } from '../src/dough/figures.js'
import { askEdit, type Edit, say, wish } from './events.js'
import { type Action, type Actor, actionsFor, addStageAt } from './grid/actions.js'
import { Blocks } from './grid/blocks.js'
import { columnNames, padTemplate, rowName } from './grid/editor.js'
import { type Command, commandOf } from './grid/keys.js'
import { menuTemplate, moveInMenu, openMenu } from './grid/menu.js'
import {
  type Block,
  cellColumn,
  type Extent,
  extentOf,
  nextToType,
  step,
  takesTyping,
} from './grid/moving.js'
import { type RowState, rowTemplate, selectedColumns, type View } from './grid/rows.js'
import { EditSession, type Field, type Leave } from './grid/session.js'
import { gridStyles } from './grid/styles.js'
import {
  type Column,
  columnsFor,
  emptyTable,
  type LineRow,
  type Row,
  rowAt,
  type Spot,
  stageKey,
  stageOf,
  type Table,
  tableOf,
} from './grid/table.js'
import { type NumberStyle, numberStyleOf } from './numbers.js'
import { sharedStyles } from './shared-styles.js'

export { gridKeys } from './grid/keys.js'

/** Where the baker is in a formula: what an edit carries, and undo gives back. Ids; '' for no line. */
export interface GridPlace {
  readonly formula: string
  readonly stage: string
  readonly line: string
  readonly column: Column
}

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

/** Opens the editor's list and its refusal upwards where the window ends below. */
function placeEditor(field: Field | null): void {
  const editor = field?.closest<HTMLElement>('.editor')
  if (!field || !editor) return
  editor.classList.toggle(
    'up',
    field.getBoundingClientRect().bottom + 240 > (visualViewport?.height ?? innerHeight),
  )
}

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
  #active: Spot = { row: '', column: 'ingredient' }
  #activeIndex = 0 // where the active row was, for when it goes
  #block: Block | undefined
  #focusWanted = false
  #menu: { readonly label: string; readonly actions: readonly Action[] } | undefined
  #menuOpener: HTMLElement | undefined // where the menu is still to be opened
  #tapped: Spot | undefined // the active cell, when a finger comes down on it
  #session = new EditSession({
    given: this,
    rtl: () => this.#rtl,
    table: () => this.#table(),
    field: () => this.#field,
    changed: () => this.requestUpdate(),
    edit: (edit, at) => this.#edit(edit, at),
    leave: (from, to) => this.#leave(from, to),
  })
  #blocks = new Blocks({
    given: this,
    columns: () => this.#columns,
    table: () => this.#table(),
    extent: () => this.#extent(),
    act: edit => this.#act(edit),
    say: sentence => say(this, sentence),
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
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.#watch.disconnect()
  }

  protected override firstUpdated(): void {
    this.#measure()
  }

  // Not the grid itself: its height follows from what is measured here, and the observer would see that.
  #measure(): void {
    const ruler = this.renderRoot.querySelector('.ruler')
    if (ruler) this.#watch.observe(ruler)
  }

  /** Goes to a place an edit carried, or the nearest that is left of it. */
  goTo(place: Partial<GridPlace>): void {
    const table = this.#table()
    const line = place.line && table.index.has(place.line) ? place.line : ''
    const row = line || (place.line ? this.#active.row : stageKey(place.stage ?? ''))
    if (table.index.has(row)) this.#setActive({ row, column: place.column ?? 'ingredient' })
    this.#wantFocus()
  }

  override focus(): void {
    this.#wantFocus()
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

  #extent(): Extent {
    return extentOf(this.#table(), this.#columns, this.#active, this.#block)
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const table = this.#table()
    if (changed.has('sheet') && changed.get('sheet')) {
      this.#session.close()
      this.#active = { row: '', column: 'ingredient' }
      this.#activeIndex = 0
    }
    if (this.#session.state && !table.index.has(this.#session.state.row)) this.#session.close()
    if (!table.index.has(this.#active.row)) {
      const row = table.rows[Math.min(this.#activeIndex, table.rows.length - 1)]
      this.#active = { row: row?.key ?? '', column: this.#active.column }
    }
    const block = this.#block
    if (block && !(table.index.has(block.anchor.row) && table.index.has(block.head.row)))
      this.#block = undefined
    this.#activeIndex = table.index.get(this.#active.row) ?? 0
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
    const selection = this.#block && this.#extent()
    const selectedRows = new Set(selection?.rows)
    const span = selection ? selectedColumns(selection.columns, columns) : ([-1, -1] as const)
    const editing = this.#session.state
    const paint = (row: Row) => {
      const isActive = row.key === this.#active.row
      const [from, to] = selectedRows.has(row) ? span : [-1, -1]
      const at: RowState = {
        active: isActive ? cellColumn(row, this.#active.column, columns) : undefined,
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
            <button class="lined" @click=${() => addStageAt(this.#actor)}>Add a stage</button>
            <p id="help">Type to replace, Enter to edit. Escape, then Tab leaves the sheet.</p>
          </div>`
      }
      <div
        @keydown=${this.#menuKey}
        @click=${this.#menuClick}
        @toggle=${{ handleEvent: this.#menuToggled, capture: true }}
      >${menuTemplate(this.#menu?.actions ?? [], this.#menu?.label ?? '')}</div>
      ${
        editing && (editing.column === 'percent' || editing.column === 'weight') && isTouch()
          ? html`<div @mousedown=${keepFocus} @click=${this.#padClick}>${padTemplate(editing)}</div>`
          : nothing
      }
    `
  }

  protected override updated(): void {
    if (this.#menuOpener) {
      openMenu(this.renderRoot.querySelector<HTMLElement>('#menu')!, this.#menuOpener)
      this.#menuOpener = undefined
      this.#focusWanted = false
      return
    }
    if (this.#session.rendered()) {
      this.#focusWanted = false
      placeEditor(this.#field)
      return
    }
    if (this.#session.state) placeEditor(this.#field)
    if (!this.#focusWanted) return
    this.#focusWanted = false
    const target = this.#session.state ? this.#field : this.#cellElement(this.#active)
    if (target && this.shadowRoot?.activeElement !== target) target.focus()
  }

  #wantFocus(): void {
    this.#focusWanted = true
    this.requestUpdate()
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

  #setActive(spot: Spot, block?: Block): void {
    this.#active = spot
    this.#block = block
    this.requestUpdate()
  }

  #move(to: Spot, extend: boolean): void {
    const columns = this.#columns
    const from = this.#block ?? { anchor: this.#cellOf(this.#active), head: this.#cellOf(this.#active) }
    let block: Block | undefined
    if (extend) {
      // A selected row or column grows by whole rows or columns.
      const wasRow = from.anchor.column === columns[0] && from.head.column === columns[columns.length - 1]
      const head = wasRow && this.#block ? { row: to.row, column: from.head.column } : this.#cellOf(to)
      block = { anchor: from.anchor, head }
    }
    this.#setActive(to, block)
    this.#wantFocus()
  }

  #cellOf(spot: Spot): Spot {
    return { row: spot.row, column: cellColumn(rowAt(this.#table(), spot.row), spot.column, this.#columns) }
  }

  #page(): number {
    const height = this.#cellElement(this.#active)?.getBoundingClientRect().height ?? 44
    return Math.max(3, Math.floor((innerHeight - 160) / height))
  }

  /** Where an edit leads: on from its cell. False: past the last cell, the key is the browser's. */
  #leave(from: Spot, to: Leave): boolean {
    const table = this.#table()
    const next =
      to === 'stay'
        ? from
        : to === 'next' || to === 'previous'
          ? nextToType(table, this.#columns, from, to === 'next' ? 1 : -1)
          : step(table, this.#columns, from, to, 1)
    this.#setActive(next ?? from)
    if (!next) {
      this.#cellElement(from)?.focus() // so that Tab goes on from here
      return false
    }
    this.#wantFocus()
    return true
  }

  #select(what: 'all' | 'row' | 'column'): void {
    const { rows } = this.#table()
    const columns = this.#columns
    const [first, last] = [rows[0], rows[rows.length - 1]]
    if (!first || !last) return
    const { row } = this.#active
    const { column } = this.#cellOf(this.#active)
    const [left, right] = what === 'column' ? [column, column] : [columns[0]!, columns[columns.length - 1]!]
    const [top, bottom] = what === 'row' ? [row, row] : [first.key, last.key]
    this.#setActive(this.#active, {
      anchor: { row: top, column: left },
      head: { row: bottom, column: right },
    })
  }

  #startEditing(spot: Spot, how: 'typing' | 'end' | 'all'): boolean {
    const row = rowAt(this.#table(), spot.row)
    if (this.readOnly || !row || !takesTyping(row, spot.column)) return false
    const column = row.kind === 'stage' ? 'ingredient' : spot.column
    this.#setActive({ row: spot.row, column: this.narrow && column === 'note' ? 'ingredient' : column })
    this.#session.open({ row: spot.row, column }, how)
    return true
  }

  // ---- editing

  #placeOf(spot: Spot): GridPlace {
    const { formula } = this.sheet
    const row = rowAt(this.#table(), spot.row)
    const line = !row || row.kind === 'line' ? spot.row : ''
    const stage = stageOf(row ?? rowAt(this.#table(), this.#active.row)!)
    return { formula: formula.id, stage, line, column: spot.column }
  }

  #edit(edit: Edit, at: Spot): string | undefined {
    const refusal = askEdit(this, edit, this.#placeOf(at))
    if (refusal) say(this, refusal)
    return refusal
  }

  #act(edit: Edit, goTo?: string): boolean {
    if (this.#edit(edit, this.#active)) return false
    if (goTo) this.#setActive({ row: goTo, column: this.#active.column })
    this.#wantFocus()
    return true
  }

  #addLine(stage: string, index: number): void {
    const line = newLine()
    const at = { formula: this.sheet.formula.id, stage }
    if (this.#edit(() => addLine(at, line, index), { row: line.id, column: 'ingredient' })) return
    this.#startEditing({ row: line.id, column: 'ingredient' }, 'all')
  }

  get #actor(): Actor {
    return {
      formula: this.sheet.formula,
      hasClipboard: 'clipboard' in navigator,
      act: (edit, goTo) => this.#act(edit, goTo),
      addLine: (row, by) => this.#addLineAt(row, by),
      startEditing: (row, column) => this.#startEditing({ row, column }, 'all'),
      define: ingredient => wish(this, { want: 'define', ingredient }),
      copy: () => this.#blocks.write(this.#block ? this.#extent() : this.#wholeRow()),
      paste: () => this.#pasteHere(),
    }
  }

  #addLineAt(row: LineRow, by: 0 | 1): void {
    const stage = this.sheet.formula.stages.find(s => s.id === row.stage)
    const index = stage?.lines.findIndex(l => l.id === row.key) ?? -1
    if (index >= 0) this.#addLine(row.stage, index + by)
  }

  #wholeRow(): Extent {
    const row = rowAt(this.#table(), this.#active.row)
    return { rows: row ? [row] : [], columns: this.#columns }
  }

  #pasteHere(): void {
    if (!this.#block) this.#setActive({ row: this.#active.row, column: 'ingredient' })
    void this.#blocks.read()
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
    const row = rowAt(this.#table(), this.#active.row)
    if (!row) return false
    const onButton = event.target instanceof HTMLButtonElement
    switch (command.do) {
      case 'move':
        this.#move(step(this.#table(), this.#columns, this.#active, command.to, this.#page()), command.extend)
        return true
      case 'select':
        this.#select(command.what)
        return true
      case 'type':
        this.#startEditing(this.#cellOf(this.#active), 'typing') // the browser delivers the key to the field
        return false
      case 'edit':
        if (onButton) return false
        this.#startEditing(this.#cellOf(this.#active), 'end')
        return true
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
        if (row.kind === 'line') this.#addLineAt(row, 1)
        else if (row.kind === 'stage') this.#addLine(row.stage.id, 0)
        else this.#startEditing({ row: row.key, column: 'ingredient' }, 'end')
        return true
      case 'shift':
        if (!this.readOnly) this.#shift(row, command.by)
        return true
    }
  }

  #shift(row: Row, by: -1 | 1): void {
    const formula = this.sheet.formula.id
    if (row.kind === 'stage') this.#act(wb => moveStage(wb, { formula, stage: row.stage.id }, by), row.key)
    if (row.kind === 'line')
      this.#act(wb => moveLine(wb, { formula, stage: row.stage, line: row.key }, by), row.key)
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
    this.#move(spot, true)
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
    const { row, column } = this.#cellOf(this.#active)
    if (spot.row === row && spot.column === column) return
    const inBlock =
      this.#block && spot.column === 'actions' && this.#extent().rows.some(r => r.key === spot.row)
    this.#setActive(spot, inBlock ? this.#block : undefined)
  }

  #focusOut = (event: FocusEvent): void => {
    if (!this.#session.state || event.target !== this.#field) return
    // The window lost the focus and the field did not: it goes on where it was.
    if (this.shadowRoot?.activeElement === this.#field) return
    const kept = this.#session.keep()
    const stays = event.relatedTarget instanceof Node && this.renderRoot.contains(event.relatedTarget)
    if (!kept && stays) this.#wantFocus()
  }

  // ---- menu and touch keys

  #openMenu(row: Row, by: HTMLElement): void {
    const actions = actionsFor(row, this.#actor)
    if (actions.length === 0) return
    this.#menu = { label: `Actions for ${rowName(row, this.sheet)}`, actions }
    this.#menuOpener = by
    this.requestUpdate()
  }

  #menuKey = (event: KeyboardEvent): void => {
    const menu =
      event.currentTarget instanceof Element && event.currentTarget.querySelector<HTMLElement>('#menu')
    if (!menu) return
    if (event.key === 'Escape' || event.key === 'Tab') {
      event.preventDefault()
      menu.hidePopover()
      this.#wantFocus()
    } else if (moveInMenu(menu, event)) event.preventDefault()
  }

  #menuClick = (event: MouseEvent): void => {
    const index = (event.target as Element).closest<HTMLElement>('[data-action]')?.dataset.action
    const action = index === undefined ? undefined : this.#menu?.actions[Number(index)]
    if (!action) return
    this.renderRoot.querySelector<HTMLElement>('#menu')!.hidePopover()
    this.#wantFocus()
    action.run()
  }

  #menuToggled = (event: ToggleEvent): void => {
    if (event.newState === 'closed') this.#menu = undefined
  }

  #padClick = (event: MouseEvent): void => {
    const button = (event.target as Element).closest('button')
    if (button) this.#session.pad(button.dataset.types, button.dataset.pad)
  }

  static override styles = [sharedStyles, gridStyles]
}
customElements.define('tb-grid', TbGrid)

declare global {
  interface HTMLElementTagNameMap {
    'tb-grid': TbGrid
  }
}
