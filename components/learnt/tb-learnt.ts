import { css, html, nothing } from 'lit'
import type { Learnt } from '../../src/day/learning/inner-range.js'
import { BaseElement } from '../base/base-element.js'
import { learntWords } from './words.js'

const unit = /\s*(?:°C|%)$/ // is said once of a range

/** What bakes have told of one number, where it is used: it is taken over only when that is pressed. */
export class TbLearnt extends BaseElement {
  static override properties = {
    learnt: { attribute: false },
    what: {},
    show: { attribute: false },
    taken: { attribute: false },
    at: {},
    take: { attribute: false },
    isSo: { type: Boolean },
  }

  declare learnt: Learnt | undefined // undefined: nothing is shown
  declare what: string // it is of, for those who hear the button apart from its line
  declare show: (value: number) => string
  declare taken: string | undefined // what pressing takes, where that is not the middle
  declare at: string | undefined // the temperature at which that is, in words
  declare take: () => void
  declare isSo: boolean // it says that already

  override render() {
    const { learnt, what, show, isSo } = this
    if (!learnt) return nothing
    const { count, low, middle, high, isFew } = learnt
    const value = this.taken ?? show(middle)
    const [from, until] = [show(low), show(high)]
    const said =
      from === until && count > 1
        ? learntWords.same(count, from, this.at)
        : learntWords.said(count, learntWords.range(from.replace(unit, ''), until), show(middle), this.at)
    return html`<p>
      ${said} ${count === 1 || from === until ? nothing : isFew ? learntWords.few : learntWords.between}
      ${isSo ? learntWords.isSo : nothing}
      ${
        isSo || this.readOnly
          ? nothing
          : html`<button class="lined" aria-label=${learntWords.takeFor(value, what)} @click=${() => this.take()}>
              ${learntWords.take(value)}
            </button>`
      }
    </p>`
  }

  static override styles = css`
    :host {
      display: block;
    }
    p {
      margin: 2px 0 8px;
      max-width: 62ch;
      color: var(--ink-soft);
      font-size: var(--size-small);
    }
    button {
      display: block;
      margin-top: 4px;
      font-size: var(--size-small);
    }
  `
}
customElements.define('tb-learnt', TbLearnt)

declare global {
  interface HTMLElementTagNameMap {
    'tb-learnt': TbLearnt
  }
}
