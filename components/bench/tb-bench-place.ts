import { css, html, nothing, type TemplateResult } from 'lit'
import type { Bake } from '../../src/day/bench/bake.js'
import { bakesIn } from '../../src/day/bench/bake-data.js'
import { benchOf } from '../../src/day/bench/bench-day.js'
import { writeDown } from '../../src/day/bench/bench-edits.js'
import { bakesOfFormula } from '../../src/day/learning/series.js'
import { dateText } from '../../src/day/out/day-text.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import '../bakes/photographs/tb-photographs-left.js'
import '../bakes/tb-bake.js'
import '../bakes/tb-bakes-of.js'
import { bakesOfWords, bakeWords } from '../bakes/words.js'
import { BaseElement } from '../base/base-element.js'
import { askEdit, say } from '../base/events.js'
import { goTo, hashFrom } from '../base/hash.js'
import '../controls/tb-menu.js'
import './tb-bench.js'
import { benchPlaceWords } from './words.js'

const bakeAddress = 'bake/'
const formulaAddress = 'of/'

/** The bench or the bake that the address names; without a name, all that has been baked. */
export class TbBenchPlace extends BaseElement {
  static override properties = {
    workbook: { attribute: false },
    larder: { attribute: false },
    undoLabel: { attribute: false },
  }

  declare workbook: Workbook
  declare larder: Larder
  declare undoLabel: string | undefined

  #address: string | undefined

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
    const key = this.#address ?? ''
    const bake = key.startsWith(bakeAddress)
      ? bakesIn(this.workbook).find(({ id }) => id === key.slice(bakeAddress.length))
      : undefined
    const of = key.startsWith(formulaAddress) ? key.slice(formulaAddress.length) : ''
    const [ofFormula] = of ? bakesOfFormula(this.workbook, of).toReversed() : []
    const bench = key && !bake && !of ? benchOf(this.workbook, key, Date.now() / 60_000, 'UTC') : undefined
    document.title = benchPlaceWords.title(
      ofFormula ? bakesOfWords.title(ofFormula.name) : (bake?.name ?? bench?.name ?? benchPlaceWords.bakes),
    )
    if (ofFormula)
      return html`<tb-bakes-of
        .workbook=${this.workbook}
        .larder=${this.larder}
        .formula=${of}
        .numbers=${this.numbers}
        ?readOnly=${this.readOnly}
      ></tb-bakes-of>`
    if (bake)
      return html`<tb-bake
        .workbook=${this.workbook}
        .larder=${this.larder}
        .bake=${bake}
        .numbers=${this.numbers}
        ?readOnly=${this.readOnly}
      ></tb-bake>`
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
      <nav><a href="#days">${bakeWords.days}</a></nav>
      <h1>${benchPlaceWords.bakes}</h1>
      ${isGone ? html`<p>${benchPlaceWords.gone}</p>` : nothing}
      ${all.length === 0 ? html`<p>${benchPlaceWords.none}</p><p>${benchPlaceWords.how}</p>` : nothing}
      <ul>
        ${bakes.map(
          ({ id, name, at, finished }) => html`<li>
            <a href="#bench/${finished ? bakeAddress : ''}${id}">${name}<small>${dateText(at.slice(0, 10), this.numbers.language)}${finished ? '' : `, ${benchPlaceWords.underWay.toLowerCase()}`}</small></a>
          </li>`,
        )}
      </ul>
      ${
        this.readOnly || this.workbook.formulas.length === 0
          ? nothing
          : html`<tb-menu
              look="lined"
              face=${benchPlaceWords.write}
              label=${benchPlaceWords.write}
              .items=${this.workbook.formulas.map(({ id, name }) => ({ label: name, run: () => this.#write(id) }))}
            ></tb-menu>`
      }
      ${this.#byBread(bakes)}
      ${
        bakes.length
          ? html`<h2>${bakesOfWords.out}</h2><tb-bakes-out .workbook=${this.workbook} .larder=${this.larder} .bakes=${bakes.toReversed()}></tb-bakes-out>`
          : nothing
      }
      <tb-photographs-left .bakes=${all} ?readOnly=${this.readOnly}></tb-photographs-left>
      ${damaged ? html`<p>${benchPlaceWords.damaged(damaged)}</p>` : nothing}
    </main>`
  }

  /** The way to all bakes of each bread that was baked more than once. */
  #byBread(bakes: readonly Bake[]): TemplateResult | typeof nothing {
    const names = new Map(bakes.toReversed().map(({ formula, name }) => [formula.id, name]))
    const several = [...names].filter(([id]) => bakes.filter(({ formula }) => formula.id === id).length > 1)
    if (several.length === 0) return nothing
    return html`<h2>${benchPlaceWords.byBread}</h2>
      <ul>
        ${several.map(([id, name]) => html`<li><a href="#bench/${formulaAddress}${id}">${bakesOfWords.ofBread(name)}</a></li>`)}
      </ul>`
  }

  #write(formula: string): void {
    let added = ''
    const zone = Intl.DateTimeFormat().resolvedOptions().timeZone || 'UTC'
    const refusal = askEdit(this, workbook => {
      const transaction = writeDown(workbook, formula, Date.now() / 60_000, zone)
      const [change] = transaction?.changes ?? []
      if (change?.of === 'bake') added = change.id
      return transaction
    })
    if (refusal) say(this, refusal)
    else if (added) goTo(`bench/${bakeAddress}${added}`)
  }

  static override styles = css`
    :host {
      display: block;
      min-height: calc(100vh - var(--head));
      background: var(--board);
    }
    main {
      max-width: 760px;
      padding: 14px var(--edge) 150px; /* with room for a phone's foot */
    }
    nav a {
      display: inline-flex;
      align-items: center;
      min-height: 44px;
      color: var(--accent);
      text-decoration: none;
    }
    nav a::before {
      content: '‹';
      padding-right: 7px;
    }
    h1 {
      margin: 0 0 12px;
      font-size: var(--size-title);
      font-weight: 640;
      letter-spacing: -0.015em;
    }
    h2 {
      margin: 22px 0 4px;
      font-size: var(--size-lead);
      font-weight: 640;
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
