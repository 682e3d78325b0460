import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import type { FormulaSheet, ReadingName } from '../src/dough/figures.js'
import { usualRanges } from '../src/dough/ranges.js'
import type { NumberStyle } from './numbers.js'
import { rangeScale, rangeScaleStyles } from './range-scale.js'
import { readingWords, showRange, showReading } from './readings.js'
import { sharedStyles } from './shared-styles.js'
import './tb-remarks.js'

const always = ['moistureHydration', 'levainOnFlour', 'totalFlour', 'totalWater', 'doughWeight'] as const
const wherePresent = ['fat', 'sugar', 'egg', 'milk'] as const

/** The readings of the open formula and what the sheet noticed; `compact`: the three main ones in a strip. */
export class TbTally extends LitElement {
  static override properties = {
    sheet: { attribute: false },
    version: { type: Number },
    numbers: { attribute: false },
    compact: { type: Boolean, reflect: true },
  }

  declare sheet: FormulaSheet | undefined
  declare version: number // goes up when the sheet's figures changed
  declare numbers: NumberStyle
  declare compact: boolean

  constructor() {
    super()
    this.version = 0
    this.numbers = { language: 'en', decimal: '.' }
    this.compact = false
  }

  override render() {
    const sheet = this.sheet
    if (!sheet) return nothing
    if (this.compact) {
      return html`<dl class="strip" aria-label="Main readings">
        ${this.#strip(sheet, 'trueHydration', 'True hydration')}${this.#strip(sheet, 'salt', 'Salt')}
        ${this.#strip(sheet, 'prefermentedFlour', 'Prefermented')}
      </dl>`
    }
    const present = wherePresent.filter(name => (sheet.reading(name) ?? 0) > 0)
    return html`
      <h2>Tally</h2>
      <dl class="main">
        ${this.#lead(sheet)}
        ${this.#main(sheet, 'salt')}${this.#main(sheet, 'prefermentedFlour')}
      </dl>
      <dl class="ledger">${[...always, ...present].map(name => this.#row(sheet, name))}</dl>
      <tb-remarks .sheet=${sheet} .version=${this.version}></tb-remarks>
    `
  }

  #value(sheet: FormulaSheet, name: ReadingName): TemplateResult {
    const value = sheet.reading(name)
    if (value === undefined) return html`<span class="figure none" aria-hidden="true">–</span>`
    return html`<span class="figure">${showReading(name, value, this.numbers)}</span
      ><span class="unit">&nbsp;${readingWords[name].unit}</span>`
  }

  #strip(sheet: FormulaSheet, name: ReadingName, called: string): TemplateResult {
    const why = sheet.reading(name) === undefined ? sheet.readingProblem(name) : undefined
    return html`<div class=${name}>
      <dt>${called}</dt>
      <dd>${this.#value(sheet, name)}${why ? html`<span class="unseen">${why}</span>` : nothing}</dd>
    </div>`
  }

  /** True hydration, with the listed one beside it: the two that bakers mix up. */
  #lead(sheet: FormulaSheet): TemplateResult {
    return html`<div class="reading lead">
        <dt title=${readingWords.trueHydration.means}>True hydration</dt>
        <dd>${this.#value(sheet, 'trueHydration')}</dd>
        ${this.#range(sheet, 'trueHydration')}
      </div>
      <div class="listed">
        <dt title=${readingWords.listedHydration.means}>Listed</dt>
        <dd>${this.#value(sheet, 'listedHydration')}${this.#why(sheet, 'listedHydration')}</dd>
      </div>`
  }

  #main(sheet: FormulaSheet, name: ReadingName): TemplateResult {
    return html`<div class="reading">
      <dt title=${readingWords[name].means}>${readingWords[name].name}</dt>
      <dd>${this.#value(sheet, name)}</dd>
      ${this.#range(sheet, name)}
    </div>`
  }

  #row(sheet: FormulaSheet, name: ReadingName): TemplateResult {
    return html`<div>
      <dt title=${readingWords[name].means}>${readingWords[name].name}</dt>
      <dd>${this.#value(sheet, name)}${this.#why(sheet, name)}</dd>
    </div>`
  }

  #why(sheet: FormulaSheet, name: ReadingName) {
    const why = sheet.reading(name) === undefined ? sheet.readingProblem(name) : undefined
    return why ? html`<small class="why">${why}</small>` : nothing
  }

  #range(sheet: FormulaSheet, name: ReadingName) {
    const value = sheet.reading(name)
    const usual = usualRanges[name]
    if (value === undefined) {
      return html`<dd class="words">${sheet.readingProblem(name) ?? 'Not known yet.'}</dd>`
    }
    if (!usual) return nothing
    const words = showRange(usual, this.numbers)
    const side = value < usual[0] ? '▼ below the usual' : value > usual[1] ? '▲ above the usual' : 'usual'
    return html`<dd class="words ${side === 'usual' ? '' : 'outside'}">
      ${rangeScale(name, value, usual)}<span>${side} ${words}</span>
    </dd>`
  }

  static override styles = [
    sharedStyles,
    rangeScaleStyles,
    css`
      :host {
        display: block;
      }
      h2 {
        font-size: 0.8rem;
        font-weight: 600;
        letter-spacing: 0.02em;
        color: var(--ink-soft);
        margin: 0 0 10px;
      }
      dl,
      dt,
      dd {
        margin: 0;
      }
      dt {
        color: var(--ink-soft);
        font-size: 0.88rem;
      }
      .main {
        display: grid;
        grid-template-columns: minmax(0, 6fr) minmax(0, 7fr);
        column-gap: 20px;
      }
      .reading {
        padding: 12px 0 10px;
        border-top: 1px solid var(--rule);
        min-width: 0;
        display: grid;
        grid-row: span 3;
        grid-template-rows: subgrid;
      }
      .reading dt {
        align-self: end;
      }
      .lead {
        grid-column: 1 / -1;
        padding-top: 0;
        border-top: 0;
      }
      .main {
        position: relative;
      }
      .listed {
        position: absolute;
        top: 0;
        right: 0;
        text-align: right;
      }
      .listed .figure {
        font-size: 1.25rem;
        font-weight: 400;
      }
      .figure {
        font-size: 2rem;
        font-weight: 300;
        letter-spacing: -0.02em;
        line-height: 1.15;
      }
      .lead .figure {
        font-size: 3.6rem;
        letter-spacing: -0.035em;
        line-height: 1.05;
      }
      .unit {
        color: var(--ink-soft);
      }
      .none {
        color: var(--ink-soft);
      }
      .words {
        font-size: 0.82rem;
        color: var(--ink-soft);
      }
      .outside span {
        color: var(--warn);
        font-weight: 600;
      }
      .ledger {
        border-top: 1px solid var(--rule-strong);
        margin-top: 8px;
      }
      .ledger > div {
        display: flex;
        justify-content: space-between;
        align-items: baseline;
        gap: 16px;
        padding: 7px 0;
        border-bottom: 1px solid var(--rule);
      }
      .ledger dd {
        text-align: right;
      }
      .ledger .figure {
        font-size: 1rem;
        font-weight: 400;
        letter-spacing: 0;
      }
      .ledger .unit {
        display: inline-block;
        width: 1.4em;
        text-align: left;
      }
      .why {
        display: block;
        color: var(--ink-soft);
        line-height: 1.3;
        text-align: left;
      }
      .strip {
        display: grid;
        grid-template-columns: repeat(3, auto);
        justify-content: space-between;
        gap: 12px;
      }
      .strip dt {
        font-size: 0.78rem;
        line-height: 1.2;
      }
      .strip .figure {
        font-size: 1.5rem;
        font-weight: 350;
      }
      .strip .unit {
        font-size: 0.85rem;
      }
      @media print {
        .scale {
          display: none;
        }
      }
    `,
  ]
}
customElements.define('tb-tally', TbTally)

declare global {
  interface HTMLElementTagNameMap {
    'tb-tally': TbTally
  }
}
