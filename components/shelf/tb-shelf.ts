import { css, html, nothing } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import { type Formula, nameKey } from '../../src/dough/document/formula.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import {
  addFormulas,
  blankFormula,
  copyOf,
  duplicateFormula,
  removeFormula,
  renameFormula,
} from '../../src/dough/edits/edits.js'
import { askEdit, say, wish } from '../base/events.js'
import { showDecimals } from '../base/numbers.js'
import type { ShelfReading } from '../desk/shelf-readings.js'
import '../controls/tb-menu.js'
import { BaseElement } from '../base/base-element.js'
import type { MenuItem } from '../controls/tb-menu.js'
import { formulaActions, noHydration, shelfReadingWords, shelfWords } from './words.js'

const searchFrom = 7 // formulas; fewer are seen at a glance

/** Holds the room of readings that are still being worked out, so that the shelf does not move when they come. */
const toCome = shelfReadingWords('00', '00')

/** The formulas of the workbook, to open, to look for, to add to. */
export class TbShelf extends BaseElement {
  static override properties = {
    formulas: { attribute: false },
    current: {},
    readings: { attribute: false },
    examples: { attribute: false },
    version: { type: Number },
    sought: { state: true },
    renaming: { state: true },
  }

  declare formulas: readonly Formula[]
  declare current: string // id of the open formula
  declare readings: (formula: Formula) => ShelfReading | undefined // undefined while being worked out
  declare examples: readonly Formula[] // to begin a new formula from
  declare version: number // goes up when readings changed
  declare sought: string
  declare renaming: string // id of the formula whose name is being typed

  constructor() {
    super()
    this.formulas = []
    this.current = ''
    this.readings = () => undefined
    this.examples = []
    this.version = 0
    this.sought = ''
    this.renaming = ''
  }

  override render() {
    const sought = nameKey(this.sought)
    const found = this.formulas.filter(f => nameKey(`${f.name} ${f.note}`).includes(sought))
    return html`<nav aria-label=${shelfWords.shelf}>
      <h2>${shelfWords.shelf}</h2>
      ${
        this.formulas.length >= searchFrom || this.sought
          ? html`<input
            type="search"
            aria-label=${shelfWords.lookFor}
            placeholder=${shelfWords.lookFor}
            .value=${this.sought}
            @input=${this.#seek}
          />`
          : nothing
      }
      <ul>
        ${repeat(
          found,
          f => f.id,
          f => this.#row(f),
        )}
      </ul>
      ${
        this.formulas.length === 0
          ? html`<p class="quiet">${shelfWords.empty}</p>`
          : found.length === 0
            ? html`<p class="quiet">${shelfWords.noneCalled(this.sought)}</p>`
            : nothing
      }
      ${
        this.readOnly
          ? nothing
          : html`<tb-menu id="new" look="lined" face=${shelfWords.newFormula} label=${shelfWords.newFormula} .items=${this.#newItems()}></tb-menu>`
      }
    </nav>`
  }

  #row(formula: Formula) {
    if (this.renaming === formula.id) {
      return html`<li class="row">
        <input
          class="rename"
          aria-label=${shelfWords.newNameFor(formula.name)}
          .value=${formula.name}
          @keydown=${this.#renameKey}
          @blur=${this.#renameDone}
        />
      </li>`
    }
    const words = this.#inWords(formula)
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
  #inWords(formula: Formula): string | undefined {
    const reading = this.readings(formula)
    if (!reading) return undefined
    const { trueHydration, prefermentedFlour } = reading
    if (trueHydration === undefined) return noHydration
    const percent = (x: number) => showDecimals(x * 100, this.numbers, 0)
    return shelfReadingWords(
      percent(trueHydration),
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
    if (this.readOnly) return [sendOut, beside, card]
    return [
      { label: formulaActions.rename, run: () => this.#rename(formula) },
      { label: formulaActions.duplicate, run: () => this.#duplicate(formula) },
      sendOut,
      beside,
      card,
      { label: formulaActions.delete, run: () => this.#ask(workbook => removeFormula(workbook, formula.id)) },
    ]
  }

  #newItems(): readonly MenuItem[] {
    return [
      { label: shelfWords.blank, note: shelfWords.blankNote, run: () => this.#add(blankFormula()) },
      ...this.examples.map(example => ({
        label: example.name,
        note: shelfWords.exampleNote,
        run: () => this.#add(copyOf(example, example.name)),
      })),
    ]
  }

  #ask(edit: Parameters<typeof askEdit>[1]): boolean {
    const refusal = askEdit(this, edit)
    if (refusal) say(this, refusal)
    return !refusal
  }

  #add(formula: Formula): void {
    this.sought = ''
    const added = this.#ask(workbook => addFormulas(workbook, [formula]))
    if (added) wish(this, { want: 'open', formula: formula.id, toName: true })
  }

  #duplicate(formula: Formula): void {
    let copy = ''
    const edit = (workbook: Workbook) => {
      const transaction = duplicateFormula(workbook, formula.id)
      const [change] = transaction.changes
      if (change?.of === 'formula') copy = change.id
      return transaction
    }
    if (this.#ask(edit)) wish(this, { want: 'open', formula: copy })
  }

  async #rename(formula: Formula): Promise<void> {
    this.renaming = formula.id
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
    const current = this.renderRoot.querySelector<HTMLElement>('a[aria-current], a, tb-menu')
    current?.focus()
  }

  static override styles = css`
    :host {
      display: block;
    }
    h2 {
      font-size: var(--size-fine);
      font-weight: 600;
      letter-spacing: 0.02em;
      color: var(--ink-soft);
      margin: 0 0 10px;
    }
    input {
      width: 100%;
    }
    input[type='search'] {
      margin-bottom: 8px;
    }
    ul {
      list-style: none;
      margin: 0 0 14px;
      padding: 0;
    }
    .row {
      display: flex;
      align-items: center;
      gap: 2px;
      border-bottom: 1px solid var(--rule);
      position: relative;
    }
    .row:first-child {
      border-top: 1px solid var(--rule);
    }
    a {
      flex: 1;
      min-width: 0;
      padding: 9px 0 9px 14px;
      color: inherit;
      text-decoration: none;
      line-height: 1.3;
      overflow-wrap: anywhere;
      border-left: 3px solid transparent;
    }
    a:hover {
      background: var(--accent-wash);
    }
    a[aria-current] {
      border-left-color: var(--accent);
      font-weight: 620;
    }
    small {
      display: block;
      margin-top: 1px;
      font-size: var(--size-fine);
      font-weight: 400;
      color: var(--ink-soft);
    }
    small[data-waits] {
      visibility: hidden;
    }
    .rename {
      margin: 6px 0;
    }
    p {
      margin: 0 0 12px;
    }
    @media (forced-colors: active) {
      a[aria-current] {
        border-left-color: Highlight;
      }
    }
  `
}
customElements.define('tb-shelf', TbShelf)

declare global {
  interface HTMLElementTagNameMap {
    'tb-shelf': TbShelf
  }
}
