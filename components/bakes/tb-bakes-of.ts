import { css, html, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { type Bake, minutesOf } from '../../src/day/bench/bake.js'
import { clockText, lengthText, localOf } from '../../src/day/course/clock.js'
import { learntFrom } from '../../src/day/learning/inner-range.js'
import { Learning } from '../../src/day/learning/learning.js'
import { bakesOfFormula, type Measure, type Series, seriesOf } from '../../src/day/learning/series.js'
import { dateText } from '../../src/day/out/day-text.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { BaseElement } from '../base/base-element.js'
import { showDecimals, showNumber, showPercent } from '../base/numbers.js'
import { sayCelsius } from '../typed/typed-degrees.js'
import { bakeChart, chartStyles } from './bake-chart.js'
import { bakeStyles } from './bake-styles.js'
import './tb-bakes-out.js'
import { bakesOfWords, bakeWords, figureWords, measureWords } from './words.js'

const inOrder: readonly Measure['of'][] = ['rise', 'bakeLoss', 'loss', 'speed', 'took', 'figure', 'taste']
const fewest = 3 // bakes from which the range of a measurement is drawn

/** All bakes of a formula: one measurement over them, drawn and as a table, and the bakes themselves. */
export class TbBakesOf extends BaseElement {
  static override properties = {
    workbook: { attribute: false },
    larder: { attribute: false },
    formula: {},
    chosen: { state: true },
  }

  declare workbook: Workbook
  declare larder: Larder
  declare formula: string // id
  declare private chosen: string // key of the measurement that is drawn

  #series: readonly Series[] = []

  constructor() {
    super()
    this.chosen = ''
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('workbook') || changed.has('formula') || changed.has('larder')) {
      const { workbook, larder, formula } = this
      const all = seriesOf(workbook, formula, larder, new Learning(workbook, larder))
      const place = ({ measure }: Series) => inOrder.indexOf(measure.of)
      this.#series = all.toSorted((a, b) => place(a) - place(b))
    }
  }

  readonly #wider = new ResizeObserver(() => this.requestUpdate())

  override connectedCallback(): void {
    super.connectedCallback()
    this.#wider.observe(this)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.#wider.disconnect()
  }

  override render() {
    const bakes = bakesOfFormula(this.workbook, this.formula).toReversed()
    const { name = '' } = bakes[0] ?? {}
    return html`<main>
      <nav>
        <a class="all" href="#days">${bakeWords.days}</a>
        <a href="#bench">${bakeWords.all}</a>
      </nav>
      <h1>${bakesOfWords.title(name)}</h1>
      ${this.#series.length ? this.#measured() : html`<p class="soft">${bakesOfWords.nothing}</p>`}
      <h2>${bakesOfWords.bakes}</h2>
      <ul>
        ${bakes.map(
          bake => html`<li>
            <a href="#bench/${bake.finished ? 'bake/' : ''}${bake.id}"
              >${this.#date(bake, this.clientWidth < 480 ? 'medium' : 'long')}<small>${bake.verdict.split('\n', 1)[0]}</small></a
            >
          </li>`,
        )}
      </ul>
      <h2>${bakesOfWords.out}</h2>
      <tb-bakes-out .workbook=${this.workbook} .larder=${this.larder} .bakes=${bakes.toReversed()}></tb-bakes-out>
    </main>`
  }

  #measured(): TemplateResult {
    const several = this.#series.find(({ points }) => points.length > 1)
    const shown = this.#series.find(({ key }) => key === this.chosen) ?? several ?? this.#series[0]!
    const { measure, points } = shown
    const name = this.#name(measure)
    const show = (value: number) => this.#show(measure, value)
    const values = points.map(({ value }) => value)
    const learnt = points.length >= fewest ? learntFrom(values) : undefined
    const [low, high] = [show(Math.min(...values)), show(Math.max(...values))]
    const drawn = {
      name: bakesOfWords.drawn(name, points.length, low, high),
      points: points.map(({ bake, value }) => ({ value, when: this.#date(bake, 'short') })),
      learnt,
      show,
      width: Math.max(280, Math.min(760, this.clientWidth - 32)),
    }
    return html`<label class="pick"
        >${bakesOfWords.measured}
        <select @change=${this.#choose}>
          ${this.#series.map(
            one =>
              html`<option value=${one.key} ?selected=${one === shown}>${this.#name(one.measure)} (${one.points.length})</option>`,
          )}
        </select>
      </label>
      ${bakeChart(drawn)}
      ${
        learnt
          ? html`<p class="soft">
              ${bakesOfWords.range(show(learnt.low), show(learnt.high), show(learnt.middle))}
            </p>`
          : nothing
      }
      <table aria-label=${bakesOfWords.table(name)}>
        <thead>
          <tr>
            <th scope="col">${bakesOfWords.date}</th>
            <th scope="col">${name}</th>
          </tr>
        </thead>
        <tbody>
          ${points.toReversed().map(
            ({ bake, value }) => html`<tr>
              <th scope="row"><a href="#bench/bake/${bake.id}">${this.#date(bake, this.clientWidth < 480 ? 'medium' : 'long')}</a></th>
              <td>${show(value)}</td>
            </tr>`,
          )}
        </tbody>
      </table>`
  }

  /** `Sat, Nov 7`, with its time on the clock unless short. */
  #date({ at, zone }: Bake, length: 'long' | 'medium' | 'short'): string {
    const { date, minutes } = localOf(minutesOf(at), zone)
    const day = dateText(date, this.numbers.language, length === 'long' ? 'long' : 'short')
    return length === 'short' ? day : `${day}, ${clockText(minutes)}`
  }

  #name(measure: Measure): string {
    switch (measure.of) {
      case 'figure':
        return measureWords.figure(measure.figure)
      case 'taste':
        return measureWords.taste(measure.taste)
      case 'rise':
      case 'speed':
        return measureWords[measure.of](measure.stage)
      case 'took':
        return measureWords.took(measure.stage, measure.step)
      default:
        return measureWords[measure.of]
    }
  }

  #show(measure: Measure, value: number): string {
    const { numbers } = this
    switch (measure.of) {
      case 'figure':
        return `${showNumber(value, numbers)} ${figureWords[measure.figure].unit}`.trim()
      case 'taste':
        return measureWords.tasteOf(showDecimals(value, numbers, 1, 0))
      case 'rise':
        return sayCelsius(Number(value.toFixed(1)), numbers)
      case 'speed':
        return showDecimals(value, numbers, value > 0 ? Math.max(2, 1 + Math.ceil(-Math.log10(value))) : 2)
      case 'took':
        return lengthText(Math.max(0, Math.round(value)))
      default:
        return `${showPercent(value, numbers)}\u00a0%`
    }
  }

  #choose = (event: Event): void => {
    this.chosen = (event.target as HTMLSelectElement).value
  }

  static override styles = [
    bakeStyles,
    chartStyles,
    css`
      ul {
        list-style: none;
        margin: 0;
        padding: 0;
      }
      li {
        border-bottom: 1px solid var(--rule);
      }
      li a {
        display: block;
        min-height: 48px;
        padding: 12px 0;
        color: inherit;
        text-decoration: none;
      }
      li a:hover {
        background: var(--accent-wash);
      }
      th a {
        display: block;
        min-height: 30px;
        color: inherit;
        text-decoration-color: var(--rule-strong);
      }
    `,
  ]
}
customElements.define('tb-bakes-of', TbBakesOf)

declare global {
  interface HTMLElementTagNameMap {
    'tb-bakes-of': TbBakesOf
  }
}
