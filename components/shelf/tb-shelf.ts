import { html, nothing } from 'lit'
import { guard } from 'lit/directives/guard.js'
import { repeat } from 'lit/directives/repeat.js'
import { copyOf, type Formula, nameKey } from '../../src/dough/document/formula.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { renameFormula } from '../../src/dough/edits/edits.js'
import { leadingHydration } from '../../src/dough/sheet/ranges.js'
import { afterPaint, fetchWhenIdle } from '../base/after-paint.js'
import { askEdit, say, wish } from '../base/events.js'
import { showDecimals } from '../base/numbers.js'
import type { ShelfReading } from '../desk/shelf-readings.js'
import '../controls/tb-menu.js'
import { BaseElement } from '../base/base-element.js'
import type { MenuItem } from '../controls/tb-menu.js'
import type { ShelfMore } from './shelf-more.js'
import { shelfStyles } from './shelf-styles.js'
import { formulaActions, noHydration, shelfReadingWords, shelfWords } from './words.js'

const searchFrom = 7 // formulas; fewer are seen at a glance
const rowsAtFirst = 24 // as many as are in sight
const rowsAtATime = 24 // of those that follow, after a paint each time

/** Holds the room of readings that are still being worked out, so that the shelf does not move when they come. */
const toCome = shelfReadingWords('00', undefined, '00')

/** What its menus do to it, fetched when the page is idle. */
const shelfEdits = () => import('../../src/dough/edits/fetched/shelf-edits.js')
type ShelfEdits = Awaited<ReturnType<typeof shelfEdits>>

/** Whether another order was chosen than that in which formulas were added. */
function isOrdered(): boolean {
  try {
    return localStorage.getItem('tarebook shelf order') !== null
  } catch {
    return false
  }
}

/** The formulas of the workbook, to open, to look for, to add to. */
export class TbShelf extends BaseElement {
  static override properties = {
    formulas: { attribute: false },
    current: {},
    readings: { attribute: false },
    examples: { attribute: false },
    unread: { type: Boolean },
    version: { type: Number },
    cleared: { type: Number },
    sought: { state: true },
    renaming: { state: true },
    rows: { state: true },
    more: { state: true },
  }

  declare formulas: readonly Formula[]
  declare current: string // id of the open formula
  declare readings: (formula: Formula) => ShelfReading | undefined // undefined while being worked out
  declare examples: readonly Formula[] // to begin a new formula from
  declare unread: boolean // what is stored could not be read
  declare version: number // goes up when readings changed
  declare cleared: number // things that were deleted and can be brought back
  declare sought: string
  declare renaming: string // id of the formula whose name is being typed
  declare more: ShelfMore | null | undefined // what is fetched; null where that could not be
  declare rows: number // that there may be so far: a long shelf does not hold up the sheet beside it

  constructor() {
    super()
    this.formulas = []
    this.current = ''
    this.readings = () => undefined
    this.examples = []
    this.unread = false
    this.version = 0
    this.sought = ''
    this.renaming = ''
    this.rows = rowsAtFirst
  }

  /** The formulas that are looked for; all of them while none is. */
  get #found(): readonly Formula[] {
    const sought = nameKey(this.sought)
    return (
      this.more?.found(this.#isLong) ??
      this.formulas.filter(f => nameKey(`${f.name} ${f.note}`).includes(sought))
    )
  }

  get #isLong(): boolean {
    return this.formulas.length >= searchFrom || this.sought !== ''
  }

  /** Formulas that stand otherwise than in their own order are shown when what arranges them is there. */
  get #waits(): boolean {
    return this.more === undefined && (isOrdered() || this.formulas.some(f => f.group))
  }

  protected override firstUpdated(): void {
    if (this.#waits) this.#fetchMore().catch(() => {})
    void fetchWhenIdle(() => Promise.all([shelfEdits(), this.#fetchMore()]))
  }

  async #fetchMore(): Promise<void> {
    try {
      const { ShelfMore } = await import('./shelf-more.js')
      this.more ??= new ShelfMore(this)
    } catch (error) {
      this.more = null
      throw error
    }
  }

  protected override async updated(): Promise<void> {
    const { rows } = this
    if (rows >= this.#found.length) return
    await afterPaint()
    if (rows === this.rows) this.rows += rowsAtATime
  }

  override render() {
    const found = this.#found
    const shown = found.slice(0, this.rows)
    const { more } = this
    return html`<nav aria-label=${shelfWords.shelf}>
      <div class="head">
        <h2>${shelfWords.shelf}</h2>
        ${
          this.readOnly
            ? nothing
            : html`<tb-menu id="new" look="lined" face=${shelfWords.newFormula} label=${shelfWords.newFormula} .items=${this.#newItems()}></tb-menu>`
        }
      </div>
      ${
        this.#isLong
          ? html`<input
              type="search"
              aria-label=${shelfWords.lookFor}
              placeholder=${shelfWords.lookFor}
              .value=${this.sought}
              @input=${this.#seek}
            />
            ${more?.chosen ? nothing : html`<div class="tools">${more?.controls()}</div>`}`
          : nothing
      }
      ${
        more?.chosen
          ? more.chooser(found, this.#inWords)
          : (more?.list(shown, this.#rows) ?? [this.#rows(shown)])
      }
      ${
        this.formulas.length === 0
          ? html`<p class="quiet">${this.unread ? shelfWords.unread : shelfWords.empty}</p>`
          : found.length === 0
            ? html`<p class="quiet">${shelfWords.noneCalled(this.sought)}</p>`
            : nothing
      }
      ${this.cleared ? html`<button class="quiet" @click=${() => wish(this, { want: 'cleared' })}>${shelfWords.cleared(this.cleared)}</button>` : nothing}
    </nav>`
  }

  #rows = (formulas: readonly Formula[]) => html`<ul ?data-waits=${this.#waits}>
    ${repeat(
      formulas,
      f => f.id,
      f => this.#kept(f),
    )}
  </ul>`

  /** The row of a formula, made anew only where something in it is other than before. */
  #kept(formula: Formula) {
    const words = this.#inWords(formula)
    const isCurrent = formula.id === this.current
    const isRenamed = formula.id === this.renaming
    return guard([formula, words, isCurrent, isRenamed, this.readOnly, this.more], () =>
      this.#row(formula, words),
    )
  }

  #row(formula: Formula, words: string | undefined) {
    if (this.renaming === formula.id) {
      return html`<li class="row">
        <input
          class="rename"
          data-typed="shelf ${formula.id}"
          .defaultValue=${formula.name}
          aria-label=${shelfWords.newNameFor(formula.name)}
          .value=${formula.name}
          @keydown=${this.#renameKey}
          @blur=${this.#renameDone}
        />
      </li>`
    }
    return html`<li class="row">
      <a
        href=${`#${formula.id}`}
        aria-current=${formula.id === this.current ? 'page' : nothing}
        @click=${(event: Event) => {
          event.preventDefault()
          wish(this, { want: 'open', formula: formula.id })
        }}
        >${formula.name}<small ?data-waits=${words === undefined}>${words ?? toCome}</small></a
      >
      <tb-menu label=${formulaActions.name(formula.name)} .items=${this.#actions(formula)}></tb-menu>
    </li>`
  }

  /** `75 % true, 10 % prefermented` */
  #inWords = (formula: Formula): string | undefined => {
    const where = this.more?.where(formula)
    if (where) return where
    const reading = this.readings(formula)
    if (!reading) return undefined
    const { trueHydration, prefermentedFlour } = reading
    if (trueHydration === undefined) return noHydration
    const isByMoisture = leadingHydration(name => reading[name]) === 'moistureHydration'
    const percent = (x: number) => showDecimals(x * 100, this.numbers, 0)
    return shelfReadingWords(
      percent(trueHydration),
      isByMoisture ? percent(reading.moistureHydration!) : undefined,
      prefermentedFlour ? percent(prefermentedFlour) : undefined,
    )
  }

  #actions(formula: Formula): readonly MenuItem[] {
    const sendOut: MenuItem = {
      label: formulaActions.sendOut,
      run: () => wish(this, { want: 'send-out', formula: formula.id }),
    }
    const beside: MenuItem = {
      label: formulaActions.setBeside,
      run: () => wish(this, { want: 'beside', left: formula.id }),
    }
    const card: MenuItem = {
      label: formulaActions.printCard,
      run: () => wish(this, { want: 'card', formula: formula.id }),
    }
    const label: MenuItem = {
      label: formulaActions.label,
      run: () => wish(this, { want: 'label', formula: formula.id }),
    }
    if (this.readOnly) return [sendOut, beside, card, label]
    return [
      { label: formulaActions.rename, run: () => this.openField(formula.id) },
      { label: formulaActions.duplicate, run: () => this.#duplicate(formula) },
      sendOut,
      beside,
      card,
      label,
      ...(this.more?.actions(formula) ?? []),
      { label: formulaActions.delete, run: () => this.#remove(formula) },
    ]
  }

  #newItems(): readonly MenuItem[] {
    return [
      {
        label: shelfWords.blank,
        note: shelfWords.blankNote,
        run: () => this.#add(({ blankFormula }) => blankFormula()),
      },
      ...this.examples.map(example => ({
        label: example.name,
        note: shelfWords.exampleNote,
        run: () => this.#add(() => copyOf(example, example.name)),
      })),
    ]
  }

  #ask(edit: Parameters<typeof askEdit>[1]): boolean {
    const refusal = askEdit(this, edit)
    if (refusal) say(this, refusal)
    return !refusal
  }

  async #remove({ id }: Formula): Promise<void> {
    const { removeFormula } = await shelfEdits()
    if (!this.#ask(workbook => removeFormula(workbook, id))) return
    if (id === this.current) scrollTo({ top: 0 }) // another opens in its place
    await this.updateComplete
    this.focus()
  }

  async #add(make: (edits: ShelfEdits) => Formula): Promise<void> {
    const edits = await shelfEdits()
    const formula = make(edits)
    this.sought = ''
    const added = this.#ask(workbook => edits.addFormulas(workbook, [formula]))
    if (added) wish(this, { want: 'open', formula: formula.id, toName: true })
  }

  async #duplicate(formula: Formula): Promise<void> {
    const { duplicateFormula } = await shelfEdits()
    let copy = ''
    const edit = (workbook: Workbook) => {
      const transaction = duplicateFormula(workbook, formula.id)
      const [change] = transaction.changes
      if (change?.of === 'formula') copy = change.id
      return transaction
    }
    if (this.#ask(edit)) wish(this, { want: 'open', formula: copy })
  }

  /** Has the name of a formula typed anew. */
  async openField(id: string): Promise<void> {
    this.renaming = id
    await this.updateComplete
    this.renderRoot.querySelector<HTMLInputElement>('.rename')?.select()
  }

  #renameKey = (event: KeyboardEvent): void => {
    if (event.isComposing || event.keyCode === 229) return // Safari: Enter that ends a composition
    if (event.key === 'Escape') this.#endRename()
    else if (event.key === 'Enter') this.#renameDone(event)
    else return
    event.preventDefault()
    event.stopPropagation()
  }

  #renameDone = (event: Event): void => {
    const id = this.renaming
    const name = (event.target as HTMLInputElement).value.trim()
    if (!id) return // Enter or Escape came first
    const unchanged = name === '' || name === this.formulas.find(f => f.id === id)?.name
    if (unchanged || this.#ask(workbook => renameFormula(workbook, id, name))) {
      this.#endRename(event.type === 'keydown')
    }
  }

  async #endRename(backToLink = true): Promise<void> {
    const id = this.renaming
    this.renaming = ''
    await this.updateComplete
    if (backToLink) this.renderRoot.querySelector<HTMLElement>(`a[href="#${id}"]`)?.focus()
  }

  #seek = (event: Event): void => {
    this.sought = (event.target as HTMLInputElement).value
  }

  /** Puts the focus on the open formula, or on the way to a new one. */
  override focus(): void {
    const there = ['a[aria-current]', 'a', 'tb-menu'].map(at =>
      this.renderRoot.querySelector<HTMLElement>(at),
    )
    there.find(Boolean)?.focus()
  }

  static override styles = shelfStyles
}
customElements.define('tb-shelf', TbShelf)

declare global {
  interface HTMLElementTagNameMap {
    'tb-shelf': TbShelf
  }
}
