import { css, html, nothing } from 'lit'
import { remarksOn } from '../../src/dough/remarks/remarks.js'
import { wish } from '../base/events.js'
import '../tally/tb-tally.js'
import { SheetElement } from '../base/base-element.js'
import { placesName, placeWords, remarksCounted } from './words.js'

export type PlaceName = 'shelf' | 'sheet' | 'tally' | 'days' | 'bench' | 'order'

const places = ['shelf', 'sheet', 'tally', 'days'] as const

/** The foot of a phone's page: the three main readings, always in sight, and the way from place to place. */
export class TbPlaces extends SheetElement {
  static override properties = {
    place: {},
  }

  declare place: PlaceName

  constructor() {
    super()
    this.place = 'sheet'
  }

  override render() {
    const { sheet, version, numbers } = this
    const remarks = sheet ? remarksOn(sheet.workedOut).length : 0
    return html`
      ${sheet && /sheet|shelf/.test(this.place) ? html`<tb-tally compact .sheet=${sheet} .version=${version} .numbers=${numbers}></tb-tally>` : nothing}
      <nav aria-label=${placesName}>
        ${places.map(
          name => html`<button
            aria-current=${name === this.place ? 'page' : name === 'days' && this.place === 'bench' ? 'true' : nothing}
            ?disabled=${name === 'tally' && !sheet}
            @click=${() => wish(this, { want: 'go', to: name })}
          >
            ${placeWords[name]}${
              name === 'tally' && remarks
                ? html`<span class="count"
                  ><span class="unseen">, </span>${remarks}<span class="unseen">${remarksCounted(remarks)}</span></span
                >`
                : nothing
            }
          </button>`,
        )}
      </nav>
    `
  }

  static override styles = css`
    :host {
      display: block;
      background: var(--ground);
      border-top: 1px solid var(--rule-strong);
      padding-bottom: env(safe-area-inset-bottom);
    }
    tb-tally {
      padding: 7px var(--edge) 5px;
    }
    nav {
      display: grid;
      grid-template-columns: repeat(4, 1fr);
      border-top: 1px solid var(--rule);
    }
    button {
      min-height: 46px;
      border-radius: 0;
      border: 0;
      border-top: 3px solid transparent;
      border-bottom: 3px solid transparent;
    }
    [aria-current] {
      border-top-color: var(--accent);
      font-weight: 650;
    }
    :focus-visible {
      outline-offset: -3px;
    }
    @media (forced-colors: active) {
      button {
        border-color: Canvas;
      }
      [aria-current] {
        border-top-color: Highlight;
      }
    }
    .count {
      display: inline-block;
      min-width: 1.5em;
      margin-left: 6px;
      padding: 0 5px;
      border: 1px solid currentColor;
      border-radius: 1em;
      font-size: var(--size-fine);
      font-weight: 500;
      line-height: 1.5;
      text-align: center;
    }
    @media print {
      :host {
        display: none;
      }
    }
  `
}
customElements.define('tb-places', TbPlaces)

declare global {
  interface HTMLElementTagNameMap {
    'tb-places': TbPlaces
  }
}
