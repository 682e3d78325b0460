import { css, html, nothing } from 'lit'
import type { HowMany } from '../../src/day/trade/order-edits.js'
import { BaseElement } from '../base/base-element.js'
import { askEdit, type Edit, say } from '../base/events.js'
import { showNumber } from '../base/numbers.js'
import { sentenceStyles } from '../styles/sentence-styles.js'
import { readNumber } from '../typed/typed-numbers.js'
import { howManyWords } from './fields-words.js'

/** `Make for 11 in place of 8`: how much of several breads at once, as one edit. Tells of it by `tb-done`. */
export class TbHowMany extends BaseElement {
  static override properties = {
    edit: { attribute: false },
    count: { attribute: false },
    kind: {},
    fault: { state: true },
  }

  declare edit: ((howMany: HowMany) => Edit) | undefined
  declare count: number | undefined // of each, where that is the same
  declare kind: string // begins the names of its fields; '' where they are not kept while they are typed in
  declare private fault: string

  constructor() {
    super()
    this.kind = ''
    this.fault = ''
  }

  override focus(): void {
    this.renderRoot.querySelector<HTMLInputElement>('#to')?.focus()
  }

  override render() {
    const { count, numbers, fault, kind, readOnly } = this
    const field = (id: 'to' | 'from', label: string, kept: string) => html`<span class="typed"
      ><input
        id=${id}
        class="short"
        data-typed=${kind ? `${kind} ${id}` : nothing}
        inputmode="decimal"
        enterkeyhint="done"
        autocomplete="off"
        aria-label=${label}
        aria-describedby=${fault ? 'fault' : nothing}
        .defaultValue=${kept}
        .value=${kept}
        ?readonly=${readOnly}
    /></span>`
    return html`<form class="line" @submit=${this.#submit}>
        ${howManyWords.makeFor} ${field('to', howManyWords.to, '')} ${howManyWords.inPlaceOf}
        ${field('from', howManyWords.from, count === undefined ? '' : showNumber(count, numbers))}
        <button class="lined" ?disabled=${readOnly}>${howManyWords.change}</button>
      </form>
      ${fault ? html`<p class="fault" id="fault" role="alert">${fault}</p>` : nothing}`
  }

  #submit = (event: Event): void => {
    event.preventDefault()
    const field = (id: string) => this.renderRoot.querySelector<HTMLInputElement>(`#${id}`)!
    const read = (id: string) => readNumber(field(id).value, this.numbers) ?? 0
    const howMany = { from: read('from'), to: read('to') }
    const wrong = (['to', 'from'] as const).find(id => !(howMany[id] > 0))
    this.fault = wrong ? howManyWords.notTaken : ''
    if (wrong) return field(wrong).focus()
    const refusal = askEdit(this, this.edit!(howMany))
    this.fault = refusal ?? ''
    if (refusal) return
    say(this, howManyWords.done(showNumber(howMany.to, this.numbers)))
    field('to').value = ''
    field('from').value = showNumber(howMany.to, this.numbers)
    this.dispatchEvent(new CustomEvent('tb-done'))
  }

  static override styles = [
    sentenceStyles,
    css`
      .line button {
        color: var(--ink);
      }
      .typed input {
        text-align: center;
      }
    `,
  ]
}
customElements.define('tb-how-many', TbHowMany)

declare global {
  interface HTMLElementTagNameMap {
    'tb-how-many': TbHowMany
  }
}
