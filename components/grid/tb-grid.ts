import { html, LitElement, type PropertyValues } from 'lit'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { say } from '../base/events.js'
import type { NumberStyle } from '../base/numbers.js'
import { sharedStyles } from '../base/shared-styles.js'
import { Orders } from './actions/commands.js'
import { Focus } from './actions/focus.js'
import { RowMenu } from './actions/menu.js'
import { Pointers } from './actions/pointers.js'
import { actionsFor } from './actions/row-actions.js'
import { Deeds, type GridPlace } from './actions/row-commands.js'
import { addStageAt } from './actions/stage-actions.js'
import { Blocks } from './blocks/blocks.js'
import { placeEditor, rowName } from './editing/editor.js'
import { EditSession } from './editing/session.js'
import { TouchKeys } from './editing/touch-keys.js'
import { commandOf, type Leave } from './moving/key-map.js'
import { Walk } from './moving/selection.js'
import { takesTyping } from './moving/steps.js'
import { frameTemplate, type Hands } from './paint/frame.js'
import { bringIntoView } from './paint/lit-lines.js'
import { painter } from './paint/paint.js'
import { figureStyles } from './styles/figure-styles.js'
import { gridStyles } from './styles/grid-styles.js'
import { overlayStyles } from './styles/overlay-styles.js'
import { placeStyles } from './styles/place-styles.js'
import { screenStyles } from './styles/screen-styles.js'
import { variantStyles } from './styles/variant-styles.js'
import { Contents } from './table/contents.js'
import { Elements } from './table/elements.js'
import { homeOf, type Room, type Row, rowAt, type Spot, stageKey } from './table/table.js'

export type { GridPlace } from './actions/row-commands.js'

// px of the grid's own width
const narrowBelow = 600
const crampedBelow = 820

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

  declare sheet: FigureSheet // the same object all through; `version` says that it has changed
  declare version: number
  declare numbers: NumberStyle
  declare readOnly: boolean
  declare names: readonly string[] // of the larder, for completion
  declare lit: ReadonlySet<string> // ids of the lines that an open working speaks of
  declare narrow: boolean // set by the grid, from its own width
  declare cramped: boolean // likewise

  #focusWanted = false
  #contents = new Contents(this)
  #elements = new Elements(() => this.shadowRoot!)
  #walk = new Walk({
    table: () => this.#contents.table,
    columns: () => this.#contents.columns,
    changed: () => this.requestUpdate(),
  })
  #deeds = new Deeds({
    given: this,
    walk: this.#walk,
    blocks: () => this.#blocks,
    columns: () => this.#contents.columns,
    table: () => this.#contents.table,
    startEditing: (spot, how) => this.#startEditing(spot, how),
    wantFocus: () => this.focus(),
    offer: (label, actions) => this.#menu.open(label, actions, this.#active ?? this),
  })
  #session = new EditSession({
    given: this,
    rtl: () => this.#rtl,
    table: () => this.#contents.table,
    field: () => this.#elements.field,
    changed: () => this.requestUpdate(),
    edit: (edit, at) => this.#deeds.edit(edit, at),
    leave: (from, to) => this.#leave(from, to),
  })
  #blocks = new Blocks({
    given: this,
    columns: () => this.#contents.columns,
    table: () => this.#contents.table,
    extent: () => this.#walk.extent,
    act: edit => this.#deeds.act(edit),
    say: sentence => say(this, sentence),
  })
  #menu = new RowMenu({
    element: () => this.#elements.menu,
    changed: () => this.requestUpdate(),
    goBack: () => this.focus(),
  })
  #orders = new Orders({
    given: this,
    walk: this.#walk,
    deeds: this.#deeds,
    blocks: () => this.#blocks,
    table: () => this.#contents.table,
    page: () => this.#page(),
    startEditing: (spot, how) => this.#startEditing(spot, how),
    openMenu: (row, by) => this.#openMenu(row, by),
    focusCell: () => this.#active?.focus(),
  })
  #pointers = new Pointers({
    given: this,
    walk: this.#walk,
    session: this.#session,
    orders: this.#orders,
    table: () => this.#contents.table,
    focused: () => this.shadowRoot?.activeElement ?? null,
    startEditing: (spot, how) => this.#startEditing(spot, how),
    openMenu: (row, by) => this.#openMenu(row, by),
    wantFocus: () => this.focus(),
    renderNow: () => this.performUpdate(),
  })
  #focus = new Focus({
    walk: this.#walk,
    session: this.#session,
    elements: this.#elements,
    root: () => this.shadowRoot!,
    wantFocus: () => this.focus(),
  })
  #touchKeys = new TouchKeys({ grid: this, elements: this.#elements, session: this.#session })
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
    this.#touchKeys.connect()
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.#watch.disconnect()
    this.#touchKeys.disconnect()
  }

  protected override firstUpdated(): void {
    this.#measure()
  }

  // Not the grid itself: its height follows from what is measured here, and the observer would see that.
  #measure(): void {
    const { ruler } = this.#elements
    if (ruler) this.#watch.observe(ruler)
  }

  /** Goes to a place an edit carried, or stays by where it was. */
  goTo(place: Partial<GridPlace>): void {
    const row = place.line || stageKey(place.stage ?? '')
    if (this.#contents.table.index.has(row)) this.#walk.stand({ row, column: place.column ?? 'ingredient' })
    this.focus()
  }

  /** Puts the focus on the cell where the baker was last. */
  override focus(): void {
    this.#focusWanted = true
    this.requestUpdate()
  }

  get room(): Room {
    return this.narrow ? 'narrow' : this.cramped ? 'cramped' : 'wide'
  }

  get #rtl(): boolean {
    return getComputedStyle(this).direction === 'rtl'
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const { table } = this.#contents
    const isOther = changed.has('sheet') && changed.get('sheet') !== undefined
    if (isOther || (this.#session.state && !table.index.has(this.#session.state.row))) this.#session.close()
    this.#walk.settle(isOther)
    const focused = this.shadowRoot?.activeElement
    if (focused?.closest('[data-column]')) this.#focusWanted = true // a row that moves would lose it
  }

  override render() {
    const ruler = html`<div id="ruler"></div>`
    if (!this.sheet) return ruler
    const { sheet, readOnly, lit, numbers: style } = this
    const { table, columns } = this.#contents
    const editing = this.#session.state
    const paint = painter({ sheet, walk: this.#walk, editing, lit, view: { columns, readOnly, style } })
    return html`
      ${ruler}${frameTemplate(sheet.formula.name, table, columns, readOnly, paint, this.#hands)}
      ${this.#menu.template()}${this.#touchKeys.template(editing)}
    `
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('lit') && this.lit.size) bringIntoView(this.shadowRoot!)
    if (this.#menu.rendered()) {
      this.#focusWanted = false
      return
    }
    const editing = this.#session.state !== undefined
    if (editing) {
      this.#touchKeys.rendered()
      if (this.#session.rendered()) this.#focusWanted = false
      placeEditor(this.#elements.field)
    }
    if (!this.#focusWanted) return
    this.#focusWanted = false
    const target = editing ? this.#elements.field : this.#active
    if (target && this.shadowRoot?.activeElement !== target) target.focus()
  }

  /** The element of the cell where the baker is. */
  get #active(): HTMLElement | null {
    return this.#elements.cell(this.#walk.cellOf(this.#walk.active))
  }

  #page(): number {
    const height = this.#active?.getBoundingClientRect().height ?? 44
    return Math.max(3, Math.floor((innerHeight - 160) / height))
  }

  /** Goes on from an edited cell. False: past the last cell, the key is the browser's. */
  #leave(from: Spot, to: Leave): boolean {
    const next = this.#walk.onward(from, to)
    this.#walk.stand(next ?? from)
    // At once: so that Tab goes on from here, and since a field that goes while it has the focus costs a layout.
    this.#active?.focus()
    if (next) this.focus() // where its row is still to come
    return next !== undefined
  }

  #startEditing(spot: Spot, how: 'typing' | 'end' | 'all'): boolean {
    const row = rowAt(this.#contents.table, spot.row)
    if (this.readOnly || !row || !takesTyping(row, spot.column)) return false
    const column = row.kind === 'stage' ? 'ingredient' : spot.column
    this.#walk.stand({ row: spot.row, column: homeOf(column, this.#contents.columns) })
    this.#session.open({ row: spot.row, column }, how)
    return true
  }

  #keydown = (event: KeyboardEvent): void => {
    if (this.#session.state && event.target === this.#elements.field) return this.#session.key(event)
    if (event.target instanceof Element && event.target.matches('.define')) return
    const command = commandOf(event, this.#rtl)
    if (command && this.#orders.obey(command, event)) event.preventDefault()
  }

  #openMenu(row: Row, by: HTMLElement): void {
    const { column } = this.#walk.cellOf(this.#walk.active)
    this.#menu.open(`Actions for ${rowName(row, this.sheet)}`, actionsFor(row, column, this.#deeds), by)
  }

  #hands: Hands = {
    keydown: this.#keydown,
    input: () => this.#session.input(),
    beforeInput: event => this.#session.state || this.#orders.beforeInput(event),
    pointerDown: this.#pointers.pointerDown,
    mouseDown: this.#pointers.mouseDown,
    click: this.#pointers.click,
    doubleClick: this.#pointers.doubleClick,
    focusIn: this.#focus.comes,
    focusOut: this.#focus.goes,
    copy: event => this.#session.state || this.#blocks.copy(event),
    cut: event => this.#session.state || this.#blocks.cut(event),
    paste: event => this.#session.state || this.#blocks.paste(event),
    addStage: () => addStageAt(this.#deeds),
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
