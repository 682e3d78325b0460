import type { BaseElement } from '../base/base-element.js'
import { goTo, hashFrom } from '../base/hash.js'
import type { Desk, DeskPlace } from '../desk/desk.js'
import { focusedIn } from '../typed/focused-in.js'
import type { Layout } from './layout.js'
import type { PlaceName } from './tb-places.js'

/** Whether a place has the page to itself, with a title and an address of its own. */
export const isApart = (place: PlaceName): place is 'days' | 'bench' | 'order' =>
  /^(?:days|bench|order)$/.test(place)

/** The page, as far as getting about on it goes. */
interface Page extends BaseElement {
  readonly desk: Desk | undefined
  readonly layout: Layout
  place: PlaceName
  version: number
}

/** Where on the page the baker is, and how to get elsewhere; the address says it too, and is followed when it changes. */
export class Whereabouts {
  readonly #page: Page

  constructor(page: Page) {
    this.#page = page
  }

  /** The place that the address names. */
  static get place(): PlaceName {
    const [, named] = /^#(days|bench|order)\b/.exec(location.hash) ?? []
    return (named as 'days' | undefined) ?? 'sheet'
  }

  /** The id of the formula that the address names. */
  static get formula(): string {
    return hashFrom(1)
  }

  /** A formula that came with the address. */
  static get link(): string | undefined {
    return location.hash.startsWith('#formula=') ? location.hash : undefined
  }

  /** Opens a formula. */
  open(id: string): void {
    const { desk, renderRoot } = this.#page
    if (!desk) return
    desk.open(id)
    this.#page.version += 1
    this.#turnTo('sheet')
    scrollTo({ top: 0 }) // its name first, and its first reading
    renderRoot.querySelector('.aside')?.scrollTo({ top: 0 })
  }

  /** Opens a formula or a day. */
  goTo(id: string): void {
    const isDay = this.#page.desk?.workbook.days?.some(day => day.id === id)
    if (isDay) goTo(`days/${id}`)
    else this.open(id)
  }

  /** Shows a place, with its address. */
  #turnTo(place: PlaceName): void {
    this.#page.place = place
    goTo(isApart(place) ? place : (this.#page.desk?.formula?.id ?? ''))
  }

  /** Goes to a place. */
  async go(to: PlaceName): Promise<void> {
    const { layout, place: from, renderRoot } = this.#page
    this.#turnTo(to)
    if (layout !== 'middle') return
    await this.#page.updateComplete
    if (to === 'shelf') renderRoot.querySelector('tb-shelf')?.focus()
    else if (from === 'shelf') renderRoot.querySelector('tb-head')?.focus()
  }

  /** Goes to a place of the open formula's grid, by way of the sheet where there is one place at a time; or to a day. */
  async find(place: DeskPlace['at'] & {}): Promise<void> {
    if (place.day) {
      goTo(`days/${place.day}`)
      return
    }
    this.#turnTo('sheet')
    await this.#page.updateComplete
    await this.#page.renderRoot.querySelector('tb-sheet')?.goTo(place)
  }

  /** Puts the focus on the name of the open formula. */
  async nameIt(): Promise<void> {
    await this.#page.updateComplete
    await this.#page.renderRoot.querySelector('tb-sheet')?.nameIt()
  }

  /** Goes where the address says. */
  follow(): void {
    const { desk, place } = this.#page
    const { formula, place: named } = Whereabouts
    const isOther = formula !== desk?.formula?.id && desk?.workbook.formulas.some(f => f.id === formula)
    const isHere = named === place || !(isApart(named) || isApart(place))
    if (!isOther && isHere) return
    // What is being typed is of the place or the formula that goes.
    const at = focusedIn(this.#page)
    if (at?.matches('input, textarea')) at.blur()
    if (!isHere) this.#page.place = named
    if (isOther) this.open(formula)
  }
}
