import { css, html, nothing, type TemplateResult } from 'lit'
import { bakesIn } from '../../src/day/bench/bake-data.js'
import { benchOf } from '../../src/day/bench/bench-day.js'
import { dateText } from '../../src/day/out/day-text.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { BaseElement } from '../base/base-element.js'
import { hashFrom } from '../base/hash.js'
import './tb-bench.js'
import { benchPlaceWords } from './words.js'

/** The bench that the address names; without a name, all that has been baked. */
export class TbBenchPlace extends BaseElement {
  static override properties = {
    workbook: { attribute: false },
    larder: { attribute: false },
    undoLabel: { attribute: false },
  }

  declare workbook: Workbook
  declare larder: Larder
  declare undoLabel: string | undefined

  #address = ''

  override connectedCallback(): void {
    super.connectedCallback()
    window.addEventListener('hashchange', this.#followAddress)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    window.removeEventListener('hashchange', this.#followAddress)
  }

  #followAddress = (): void => {
    if (location.hash.startsWith('#bench')) this.requestUpdate()
  }

  protected override willUpdate(): void {
    const address = hashFrom('#bench/'.length)
    if (address !== this.#address) scrollTo({ top: 0 })
    this.#address = address
  }

  override render() {
    const key = this.#address
    const bench = key ? benchOf(this.workbook, key, Date.now() / 60_000, 'UTC') : undefined
    document.title = benchPlaceWords.title(bench?.name ?? benchPlaceWords.bakes)
    if (!bench) return this.#list(key !== '')
    return html`<tb-bench
      .workbook=${this.workbook}
      .larder=${this.larder}
      .undoLabel=${this.undoLabel}
      .key=${key}
      .numbers=${this.numbers}
      ?readOnly=${this.readOnly}
    ></tb-bench>`
  }

  #list(isGone: boolean): TemplateResult {
    const all = this.workbook.bakes ?? []
    const bakes = bakesIn(this.workbook).reverse()
    const damaged = all.length - bakes.length
    return html`<main>
      <h1>${benchPlaceWords.bakes}</h1>
      ${isGone ? html`<p>${benchPlaceWords.gone}</p>` : nothing}
      ${all.length === 0 ? html`<p>${benchPlaceWords.none}</p><p>${benchPlaceWords.how}</p>` : nothing}
      <ul>
        ${bakes.map(
          ({ id, name, at, finished }) => html`<li>
            <a href="#bench/${id}">${name}<small>${dateText(at.slice(0, 10), this.numbers.language)}${finished ? '' : `, ${benchPlaceWords.underWay.toLowerCase()}`}</small></a>
          </li>`,
        )}
      </ul>
      ${damaged ? html`<p>${benchPlaceWords.damaged(damaged)}</p>` : nothing}
    </main>`
  }

  static override styles = css`
    :host {
      display: block;
      min-height: calc(100vh - var(--head));
      background: var(--board);
    }
    main {
      max-width: 760px;
      padding: 22px var(--edge) 48px;
    }
    h1 {
      margin: 0 0 12px;
      font-size: var(--size-title);
      font-weight: 640;
      letter-spacing: -0.015em;
    }
    p {
      margin: 0 0 12px;
      max-width: 60ch;
    }
    ul {
      list-style: none;
      margin: 0 0 16px;
      padding: 0;
    }
    li {
      border-bottom: 1px solid var(--rule);
    }
    li a {
      display: block;
      min-height: 56px;
      padding: 8px 0;
      color: inherit;
      text-decoration: none;
      font-size: var(--size-lead);
    }
    li a:hover {
      background: var(--accent-wash);
    }
    small {
      display: block;
      color: var(--ink-soft);
      font-size: var(--size-small);
    }
  `
}
customElements.define('tb-bench-place', TbBenchPlace)

declare global {
  interface HTMLElementTagNameMap {
    'tb-bench-place': TbBenchPlace
  }
}
