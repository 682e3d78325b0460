import { html, type TemplateResult } from 'lit'
import { asTheyWrite, type NumberStyle, showNumber, showPercent } from '../base/numbers.js'
import { TbDialog } from '../controls/tb-dialog.js'
import { gridKeys } from '../grid/moving/words.js'
import { helpStyles } from './help-styles.js'
import {
  aboutDays,
  aboutKeys,
  amountWords,
  cautions,
  type ExampleFigures,
  helpWords,
  howAmountsAreRead,
  howToWrite,
  sectionWords,
  wayWords,
  whatTrueHydrationIs,
  whereItIsKept,
} from './words.js'

const sections = Object.keys(sectionWords) as HelpSection[]

export type HelpSection = keyof typeof sectionWords

/** How Tarebook is used, what its numbers mean, where data is kept, and what to take care of. */
export class TbHelp extends TbDialog {
  /** Opens at the top, or at one section. */
  show(detail: { section?: HelpSection } = {}): void {
    this.open()
    const { section } = detail
    if (section) void this.updateComplete.then(() => this.#go(section))
  }

  #go(section: HelpSection): void {
    const heading = this.renderRoot.querySelector<HTMLElement>(`#${section}`)
    heading?.scrollIntoView({ block: 'start' })
    heading?.focus({ preventScroll: true })
  }

  protected override heading(): string {
    return helpWords.help
  }

  protected override body(): TemplateResult {
    return html`<div class="body" role="region" aria-labelledby="heading" tabindex="0">
      <nav aria-label=${helpWords.sections}>
        <ul>
          ${sections.map(
            id => html`<li><button @click=${() => this.#go(id)}>${sectionWords[id]}</button></li>`,
          )}
        </ul>
      </nav>
      <div class="text">
        ${this.#write()} ${this.#amounts()} ${this.#true()} ${this.#keys()} ${this.#days()} ${this.#ways()} ${this.#kept()} ${this.#cautions()}
        <p><a class="apart" href="licences.txt" target="_blank" rel="noopener">${helpWords.licences}</a></p>
      </div>
    </div>`
  }

  #title(section: HelpSection): TemplateResult {
    return html`<h3 id=${section} tabindex="-1">${sectionWords[section]}</h3>`
  }

  #write() {
    return html`${this.#title('write')}
      ${howToWrite()}`
  }

  #amounts() {
    return html`${this.#title('amounts')}
      ${howAmountsAreRead(this.numbers.decimal)}
      <table>
        <thead>
          <tr>
            <th scope="col">${helpWords.written}</th>
            <th scope="col">${helpWords.is}</th>
          </tr>
        </thead>
        <tbody>
          ${amountWords.map(
            ([written, is]) => html`<tr>
              <th scope="row"><code>${asTheyWrite(written, this.numbers)}</code></th>
              <td>${is}</td>
            </tr>`,
          )}
        </tbody>
      </table>`
  }

  #true() {
    return html`${this.#title('true')}
      ${whatTrueHydrationIs(exampleFigures(this.numbers))}`
  }

  #keys() {
    return html`${this.#title('keys')}
      ${aboutKeys()}
      <table>
        <thead>
          <tr>
            <th scope="col">${helpWords.press}</th>
            <th scope="col">${helpWords.to}</th>
          </tr>
        </thead>
        <tbody>
          ${gridKeys.map(
            ({ keys, does }) => html`<tr>
              <th scope="row">${keys}</th>
              <td>${does}</td>
            </tr>`,
          )}
        </tbody>
      </table>`
  }

  #days() {
    return html`${this.#title('days')}
      ${aboutDays()}`
  }

  #ways() {
    return html`${this.#title('ways')} ${termsAndWords(wayWords)}`
  }

  #kept() {
    return html`${this.#title('kept')}
      ${whereItIsKept()}`
  }

  #cautions() {
    return html`${this.#title('cautions')} ${termsAndWords(cautions.map(({ about, says }) => [about, says]))}`
  }

  static override styles = [TbDialog.styles, helpStyles]
}

/** A levain of 220 g, with 120 g flour and 100 g water, of which a dough of 1000 g flour, 690 g water and 21 g salt takes 210 g. */
function exampleFigures(style: NumberStyle): ExampleFigures {
  const tenths = (value: number) => showNumber(Math.round(value * 10) / 10, style)
  const taken = 210 / 220
  const [flour, water] = [120 * taken, 100 * taken]
  return {
    flour: tenths(flour),
    water: tenths(water),
    listed: showPercent(0.69, style),
    hydration: showPercent((690 + water) / (1000 + flour), style),
    salt: showPercent(21 / (1000 + flour), style),
  }
}

const termsAndWords = (rows: readonly (readonly [term: string, says: string])[]): TemplateResult =>
  html`<dl class="terms">
    ${rows.map(
      ([term, says]) => html`<div>
        <dt>${term}</dt>
        <dd>${says}</dd>
      </div>`,
    )}
  </dl>`

customElements.define('tb-help', TbHelp)

declare global {
  interface HTMLElementTagNameMap {
    'tb-help': TbHelp
  }
}
