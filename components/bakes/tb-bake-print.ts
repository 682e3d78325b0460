import { css, html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit'
import { type Bake, minutesOf, tasteNames } from '../../src/day/bench/bake.js'
import type { BakeRecord } from '../../src/day/bench/bake-record.js'
import { clockText, lengthText, localOf } from '../../src/day/course/clock.js'
import { dateText } from '../../src/day/out/day-text.js'
import { boundsText } from '../../src/day/plan/words.js'
import { showGrams, showNumber } from '../base/numbers.js'
import { paperStyles } from '../card/paper-styles.js'
import { PrintedPage } from '../card/printed-page.js'
import { bakeWords, figureWords, tasteWords } from './words.js'

const types = [0, 1, 2, 3] as const // steps of the type, the largest first

/** A bake as a page: when each thing was done, what went in, what was measured, how it was. */
export class TbBakePrint extends PrintedPage {
  static override properties: PropertyDeclarations = {
    bake: { attribute: false },
    record: { attribute: false },
    plans: { state: true },
  }

  declare bake: Bake | undefined
  declare record: BakeRecord | undefined
  declare private plans: boolean // with what was written and wanted

  constructor() {
    super()
    this.plans = true
  }

  async show(): Promise<void> {
    if (!this.shown && this.printed) await this.open()
  }

  protected override get printed(): { readonly name: string } | undefined {
    const { bake } = this
    return bake && { name: `${bake.name} ${localOf(minutesOf(bake.at), bake.zone).date}` }
  }

  protected override choices(): TemplateResult {
    return this.box(bakeWords.withPlans, this.plans, on => {
      this.plans = on
    })
  }

  protected override fit(paper: HTMLElement): number {
    paper.classList.add('fitted')
    const pagesWith = (type: number): number => {
      paper.dataset.type = `${type}`
      return this.pagesOf(paper)
    }
    const pages = types.some(type => pagesWith(type) === 1) ? 1 : pagesWith(2)
    paper.classList.remove('fitted')
    return pages
  }

  protected override papers(): readonly TemplateResult[] {
    const { bake, record, numbers } = this
    if (!bake || !record) return []
    const { date, minutes } = localOf(minutesOf(bake.at), bake.zone)
    return [
      html`<header>
          <h1>${bake.name}</h1>
          <p>${dateText(date, numbers.language)}, ${clockText(minutes)}</p>
        </header>
        ${this.#steps(bake, record)} ${this.#weights(record)} ${this.#figures(record)} ${this.#said(bake)}`,
    ]
  }

  #steps({ zone }: Bake, { steps }: BakeRecord): TemplateResult | typeof nothing {
    const done = steps.filter(({ at }) => at !== undefined)
    if (done.length === 0) return nothing
    return html`<table>
      <thead>
        <tr>
          <th scope="col">${bakeWords.step}</th>
          <th scope="col">${bakeWords.began}</th>
          <th scope="col">${bakeWords.took}</th>
          ${this.plans ? html`<th scope="col">${bakeWords.written}</th>` : nothing}
        </tr>
      </thead>
      <tbody>
        ${done.map(
          ({ name, stage, at, took, written }) => html`<tr>
            <th scope="row">${name} <small>${stage}</small></th>
            <td>${clockText(localOf(at!, zone).minutes)}</td>
            <td>${took === undefined ? '–' : lengthText(Math.round(took))}</td>
            ${this.plans ? html`<td>${written ? boundsText(written) : '–'}</td>` : nothing}
          </tr>`,
        )}
      </tbody>
    </table>`
  }

  #weights({ weights }: BakeRecord): TemplateResult {
    const grams = (value: number | undefined) => (value === undefined ? '–' : showGrams(value, this.numbers))
    return html`<table>
      <thead>
        <tr>
          <th scope="col">${bakeWords.weights}</th>
          <th scope="col">${bakeWords.wentIn}</th>
          ${this.plans ? html`<th scope="col">${bakeWords.wanted}</th>` : nothing}
        </tr>
      </thead>
      <tbody>
        ${weights.map(
          ({ ingredient, stage, grams: went, wanted }) => html`<tr>
            <th scope="row">${ingredient} <small>${stage}</small></th>
            <td>${grams(went)}</td>
            ${this.plans ? html`<td>${grams(wanted)}</td>` : nothing}
          </tr>`,
        )}
      </tbody>
    </table>`
  }

  #figures({ figures }: BakeRecord): TemplateResult | typeof nothing {
    if (figures.length === 0) return nothing
    return html`<h2>${bakeWords.figures}</h2>
      <ul>
        ${figures.map(
          ({ what, value, at, stage }) => html`<li>
            ${figureWords[what].name} <b>${showNumber(value, this.numbers)} ${figureWords[what].unit}</b>
            <small>${bakeWords.atStep(at, stage)}</small>
          </li>`,
        )}
      </ul>`
  }

  #said({ verdict, note, tastes }: Bake): TemplateResult | typeof nothing {
    const tasted = tasteNames.filter(name => tastes?.[name] !== undefined)
    if (!verdict.trim() && !note.trim() && tasted.length === 0) return nothing
    return html`<h2>${bakeWords.howItWas}</h2>
      ${verdict.trim() ? html`<p class="own">${verdict}</p>` : nothing}
      ${
        tasted.length
          ? html`<p>${tasted.map(name => bakeWords.taste(tasteWords[name].name, tastes![name]!)).join(' · ')}</p>`
          : nothing
      }
      ${note.trim() ? html`<p class="own">${note}</p>` : nothing}`
  }

  static override styles = [
    paperStyles,
    css`
      .paper[data-type='1'] {
        font-size: 12.4pt;
      }
      .paper[data-type='2'] {
        font-size: 11pt;
      }
      .paper[data-type='3'] {
        font-size: 9.4pt;
      }
      h1 {
        font-size: 2em;
      }
      h2 {
        margin: var(--apart) 0 0.2em;
        font-size: 1.15em;
        border-bottom: 1.5px solid #000;
      }
      table {
        width: 100%;
        margin-top: var(--apart);
        border-collapse: collapse;
      }
      th,
      td {
        padding: 0.12em 0 0.12em 0.8em;
        border-bottom: 0.75px solid #aaa;
        font-weight: 400;
        text-align: right;
        vertical-align: baseline;
        white-space: nowrap;
      }
      th:first-child {
        padding-left: 0;
        text-align: left;
        white-space: normal;
      }
      thead th {
        border-bottom: 1.5px solid #000;
        font-weight: 700;
      }
      small {
        white-space: nowrap;
      }
      tr {
        break-inside: avoid;
      }
      ul {
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: 0 2em;
        margin: 0;
        padding: 0;
        list-style: none;
      }
      .own {
        white-space: pre-wrap;
      }
    `,
  ]
}
customElements.define('tb-bake-print', TbBakePrint)

declare global {
  interface HTMLElementTagNameMap {
    'tb-bake-print': TbBakePrint
  }
}
