import { html, nothing, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import type { Day, Oven } from '../../../src/dough/document/day.js'
import { changeDay, type Fields, newOven, tidied } from '../../../src/dough/edits/fetched/day-edits.js'
import { BaseElement } from '../../base/base-element.js'
import { askEdit, say } from '../../base/events.js'
import { showNumber } from '../../base/numbers.js'
import { TypedFields } from '../../controls/typed-fields.js'
import { sentenceStyles } from '../../styles/sentence-styles.js'
import { readNumber } from '../../typed/typed-numbers.js'
import { factStyles } from './facts-styles.js'
import { readMinutes } from './typed-facts.js'
import { factWords, notTakenFacts } from './words.js'

/** The ovens of a day: what each holds at once, and the minutes it takes between loads, temperatures and to heat up. */
export class TbDayOvens extends BaseElement {
  static override properties = { day: { attribute: false } }

  declare day: Day
  readonly #fields = new TypedFields(this, () => `day ${this.day.id}`)
  #shown = ''

  protected override willUpdate(): void {
    if (this.day.id === this.#shown) return
    this.#shown = this.day.id
    this.#fields.forget()
  }

  override render() {
    const { ovens } = this.day
    return html`${repeat(
      ovens,
      ({ id }) => id,
      (oven, at) => this.#oven(oven, ovens.length > 1, at === ovens.length - 1),
    )}`
  }

  #oven(oven: Oven, isOneOfSeveral: boolean, isLast: boolean): TemplateResult {
    const { id } = oven
    const name = oven.name || factWords.oven
    const faults = ['atOnce', 'between', 'change', 'heating'].map(field => `${field}-${id}`)
    return html`<p class="line">
        <span class="pair name">${this.#fields.field({
          name: `name-${id}`,
          label: factWords.ovenName,
          kept: name,
          keys: 'text',
          isReadOnly: this.readOnly,
          take: typed => this.#change(oven, { name: typed.trim() }),
        })} ${factWords.holds} ${this.#atOnce(oven, name)} ${factWords.atOnce}</span>
        <span class="pair">${this.#minutes(oven, 'between', factWords.between(name))} ${factWords.betweenLoads}</span>
        <span class="pair">${this.#minutes(oven, 'change', factWords.change(name))} ${factWords.toChange}</span>
        <span class="pair">${this.#minutes(oven, 'heating', factWords.heating(name))} ${factWords.toHeat}</span>
        ${
          isOneOfSeveral && !this.readOnly
            ? html`<button aria-label=${factWords.leaveOutOven(name)} @click=${() => this.#leaveOut(oven)}>${factWords.leaveOut}</button>`
            : nothing
        }
        ${
          isLast && !this.readOnly
            ? html`<button class="add" @click=${this.#add}>${factWords.addOven}</button>`
            : nothing
        }
      </p>
      ${this.#fields.faults(...faults)}`
  }

  #atOnce(oven: Oven, name: string): TemplateResult {
    return this.#fields.field({
      name: `atOnce-${oven.id}`,
      label: factWords.atOnceCount(name),
      kept: oven.atOnce === undefined ? '' : showNumber(oven.atOnce, this.numbers),
      short: true,
      isReadOnly: this.readOnly,
      take: typed => {
        if (typed.trim() === '') return this.#change(oven, { atOnce: undefined })
        const count = readNumber(typed, this.numbers) ?? 0
        return Number.isInteger(count) && count > 0
          ? this.#change(oven, { atOnce: count })
          : notTakenFacts.atOnce
      },
    })
  }

  #minutes(oven: Oven, field: 'between' | 'change' | 'heating', label: string): TemplateResult {
    return this.#fields.field({
      name: `${field}-${oven.id}`,
      label,
      kept: showNumber(oven[field], this.numbers),
      short: true,
      isReadOnly: this.readOnly,
      take: typed => {
        const minutes = readMinutes(typed, this.numbers)
        return minutes === undefined ? notTakenFacts.minutes : this.#change(oven, { [field]: minutes })
      },
    })
  }

  /** Says fields of an oven otherwise; undefined takes away one that it can do without. */
  #change({ id }: Oven, fields: Fields<Oven>): string | undefined {
    const ovens = this.day.ovens.map(oven => (oven.id === id ? tidied<Oven>({ ...oven, ...fields }) : oven))
    return this.#ovens(ovens)
  }

  #ovens(ovens: readonly Oven[]): string | undefined {
    return askEdit(this, workbook => changeDay(workbook, this.day.id, { ovens }), { day: this.day.id })
  }

  #add = (): void => {
    const { ovens } = this.day
    const refusal = this.#ovens([...ovens, newOven(factWords.newOven(ovens.length + 1))])
    if (refusal) say(this, refusal)
  }

  #leaveOut({ id }: Oven): void {
    const refusal = this.#ovens(this.day.ovens.filter(oven => oven.id !== id))
    if (refusal) say(this, refusal)
  }

  static override styles = [sentenceStyles, factStyles]
}
customElements.define('tb-day-ovens', TbDayOvens)

declare global {
  interface HTMLElementTagNameMap {
    'tb-day-ovens': TbDayOvens
  }
}
