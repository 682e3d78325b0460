import { html, type TemplateResult } from 'lit'
import { type Formula, nameKey } from '../../src/dough/document/formula.js'
import { remembered } from '../../src/storage/disk/remembered.js'
import { goTo } from '../base/hash.js'
import { keepOwnChoice, ownChoice } from '../base/own-choices.js'
import type { MenuItem } from '../controls/tb-menu.js'
import { lastChanged, lastOpened } from '../desk/shelf-times.js'
import { arranged, type Order, ordered, orders, type Section, type Times } from './arranged.js'
import { shelfMoreStyles } from './shelf-more-styles.js'
import { arrangeWords, moreActions, orderWords } from './shelf-more-words.js'
import { soughtIn } from './sought.js'
import './tb-chooser.js'

/** The shelf, as far as this has to know it. */
export interface ShelfHost extends HTMLElement {
  readonly formulas: readonly Formula[]
  readonly current: string // id of the open formula
  readonly sought: string
  readonly readOnly: boolean
  readonly numbers: { readonly language: string }
  readonly renderRoot: HTMLElement | DocumentFragment
  requestUpdate(): void
  readonly updateComplete: Promise<boolean>
}

/** Where an order is kept; nothing is while it is the usual one. */
export const orderKey = 'shelf order'

const closedGroups = remembered('groups closed')
const times: Readonly<Record<Order, () => Times>> = {
  added: () => ({}),
  name: () => ({}),
  opened: lastOpened.all,
  changed: lastChanged.all,
}

/** What the shelf can do besides showing its formulas: groups, orders, looking within formulas, choosing several. */
export class ShelfMore {
  /** Those chosen, by their ids, while several are. */
  chosen: ReadonlySet<string> | undefined
  readonly #shelf: ShelfHost
  #grouping = false // the name of a group is asked for at once
  #order: Order = ownChoice(orderKey, orders, 'added')
  #times: Times
  #where = new Map<string, string>() // of what is looked for, by id
  #sections: readonly Section[] = []
  #madeOf: readonly unknown[] = []

  constructor(shelf: ShelfHost) {
    this.#shelf = shelf
    this.#times = times[this.#order]()
    const { renderRoot } = shelf
    if (renderRoot instanceof ShadowRoot && shelfMoreStyles.styleSheet)
      renderRoot.adoptedStyleSheets.push(shelfMoreStyles.styleSheet)
  }

  /** The formulas that are shown, as they stand beneath each other; `isLong`: the shelf is one that can be ordered. */
  found(isLong: boolean): readonly Formula[] {
    const { formulas, sought, numbers } = this.#shelf
    const order = isLong ? this.#order : 'added'
    // What is last done to a formula moves it when the baker looks elsewhere.
    if (order !== 'added' && !this.#shelf.matches(':hover, :focus-within')) this.#times = times[order]()
    const madeOf = [formulas, sought, order, JSON.stringify(this.#times), numbers.language]
    if (madeOf.some((part, i) => part !== this.#madeOf[i])) {
      this.#madeOf = madeOf
      const { language } = numbers
      const found = sought.trim()
        ? soughtIn(ordered(formulas, order, this.#times, language), sought)
        : undefined
      this.#where = new Map(found?.map(({ formula, where }) => [formula.id, where]))
      this.#sections = found
        ? [{ group: '', formulas: found.map(({ formula }) => formula) }]
        : arranged(formulas, order, this.#times, language)
    }
    return this.#sections.flatMap(section => section.formulas)
  }

  /** Where a formula holds what is looked for; '' where that is its name. */
  where({ id }: Formula): string {
    return this.#where.get(id) ?? ''
  }

  /** The list, with a heading for each group; of the formulas, `shown` is there so far. */
  list(shown: readonly Formula[], rows: (formulas: readonly Formula[]) => TemplateResult): TemplateResult[] {
    const here = new Set(shown)
    const closed = closedGroups.all()
    return this.#sections.flatMap(({ group, formulas }) => {
      const there = formulas.filter(formula => here.has(formula))
      if (there.length === 0) return []
      if (!group) return [rows(there)]
      const key = nameKey(group)
      const keep = (event: Event): void => {
        if ((event.target as HTMLDetailsElement).open) closedGroups.forget(key)
        else closedGroups.put(key, true)
      }
      return [
        html`<details ?open=${!Object.hasOwn(closed, key)} @toggle=${keep}>
          <summary><h3>${group}</h3> <span>${formulas.length}</span></summary>
          ${rows(there)}
        </details>`,
      ]
    })
  }

  /** What stands beneath the field to look for one: the order, the way to choose several. */
  controls(): TemplateResult {
    return html`<select aria-label=${arrangeWords.order} @change=${this.#reorder}>
        ${orders.map(
          order =>
            html`<option value=${order} ?selected=${order === this.#order}>${orderWords[order]}</option>`,
        )}
      </select>
      <button @click=${() => this.#choose([])}>${arrangeWords.choose}</button>`
  }

  #reorder = (event: Event): void => {
    this.#order = (event.target as HTMLSelectElement).value as Order
    this.#times = times[this.#order]()
    keepOwnChoice(orderKey, this.#order)
    this.#shelf.requestUpdate()
  }

  /** What is added to the menu of a formula. */
  actions({ id }: Formula): readonly MenuItem[] {
    return [
      { label: moreActions.order, run: () => goTo(`order/${id}`) },
      { label: moreActions.group, run: () => this.#choose([id], true) },
      { label: moreActions.choose, run: () => this.#choose([id]) },
    ]
  }

  #choose(ids: readonly string[], grouping = false): void {
    this.chosen = new Set(ids)
    this.#grouping = grouping
    this.#shelf.requestUpdate()
  }

  /** Shown in place of the list while several are chosen. */
  chooser(found: readonly Formula[], inWords: (formula: Formula) => string | undefined): TemplateResult {
    const { chosen } = this
    const { formulas, readOnly, sought } = this.#shelf
    const there = new Set(formulas.map(({ id }) => id))
    return html`<tb-chooser
      .formulas=${formulas}
      .found=${found}
      .grouped=${!sought.trim()}
      .inWords=${inWords}
      .chosen=${new Set([...chosen!].filter(id => there.has(id)))}
      .grouping=${this.#grouping}
      ?readOnly=${readOnly}
      @tb-chosen=${this.#chose}
      @tb-done=${this.#done}
    ></tb-chooser>`
  }

  #chose = ({ detail }: CustomEvent<ReadonlySet<string>>): void => {
    this.chosen = detail
    this.#shelf.requestUpdate()
  }

  #done = async (): Promise<void> => {
    const [first = this.#shelf.current] = this.chosen ?? []
    this.chosen = undefined
    this.#grouping = false
    this.#shelf.requestUpdate()
    await this.#shelf.updateComplete
    const { renderRoot } = this.#shelf
    const link = renderRoot.querySelector<HTMLElement>(`a[href="#${CSS.escape(first)}"]`)
    ;(link ?? renderRoot.querySelector<HTMLElement>('a'))?.focus()
  }
}
