import { html, type TemplateResult } from 'lit'
import { showPercent } from '../base/numbers.js'
import { showNumber } from '../base/typed-numbers.js'
import { TbDialog } from '../controls/tb-dialog.js'
import { gridKeys } from '../grid/moving/words.js'
import { helpStyles } from './help-styles.js'
import { amountWords, cautions, wayWords } from './help-words.js'

const sections = [
  ['write', 'Writing a formula'],
  ['amounts', 'Amounts'],
  ['true', 'True hydration'],
  ['keys', 'Keys of the sheet'],
  ['ways', 'Making, sending, keeping'],
  ['kept', 'Where it is kept'],
  ['cautions', 'Cautions'],
] as const

export type HelpSection = (typeof sections)[number][0]

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
    return 'Help'
  }

  protected override body(): TemplateResult {
    return html`<div class="body" role="region" aria-labelledby="heading" tabindex="0">
      <nav aria-label="Sections of the help">
        <ul>
          ${sections.map(
            ([id, words]) => html`<li><button @click=${() => this.#go(id)}>${words}</button></li>`,
          )}
        </ul>
      </nav>
      <div class="text">
        ${this.#write()} ${this.#amounts()} ${this.#true()} ${this.#keys()} ${this.#ways()} ${this.#kept()} ${this.#cautions()}
      </div>
    </div>`
  }

  #title(section: HelpSection): TemplateResult {
    return html`<h3 id=${section} tabindex="-1">${sections.find(([id]) => id === section)?.[1]}</h3>`
  }

  #write() {
    return html`${this.#title('write')}
      <p>
        In baker's percentages the flour is 100&nbsp;% and everything else is its weight over the flour's. A plain loaf is
        bread flour 100&nbsp;%, water 70&nbsp;%, salt 2&nbsp;%, levain 20&nbsp;%.
      </p>
      <ol>
        <li>Make a new formula and give it a name. Its last stage is the final dough.</li>
        <li>Write the levain as a stage of its own, before the final dough: starter, flour, water.</li>
        <li>
          In the final dough write <b>Levain</b> as an ingredient. A line with the name of an earlier stage is that
          stage, with all the flour and water in it.
        </li>
        <li>
          Type each amount in the column you think in: per cent, or grams. What you typed stays as you typed it; the
          other column follows.
        </li>
        <li>
          Flours in per cent should add to 100. While all of them are in per cent, set the flour weight to say how
          much dough it is.
        </li>
      </ol>
      <p>
        An ingredient Tarebook does not know is kept, and brings its weight only until you say in the larder what it
        counts as.
      </p>`
  }

  #amounts() {
    const { decimal } = this.numbers
    return html`${this.#title('amounts')}
      <p>
        A number alone is per cent in the per cent column and grams in the weight column. A unit or a&nbsp;% sign wins over
        the column. Write <code>2${decimal}5</code> or <code>2 1/2</code> or <code>2½</code>.
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">Written</th>
            <th scope="col">Is</th>
          </tr>
        </thead>
        <tbody>
          ${amountWords.map(([written, is]) => {
            const here = decimal === ',' ? written.replace('(5%, 40 g)', '(5%; 40 g)') : written
            return html`<tr>
              <th scope="row"><code>${here}</code></th>
              <td>${is}</td>
            </tr>`
          })}
        </tbody>
      </table>`
  }

  #true() {
    const tenths = (value: number) => showNumber(Math.round(value * 10) / 10, this.numbers)
    const grams = (value: number) => `${tenths(value)}\u00a0g`
    const percent = (value: number) => `${showPercent(value, this.numbers)}\u00a0%`
    const taken = 210 / 220
    const flour = 120 * taken
    const water = 100 * taken
    return html`${this.#title('true')}
      <p>
        The water you see in the final dough is not all of it: the levain brings water too, and flour.
        <b>Listed hydration</b> is the water line over the flour lines of the final dough. <b>True hydration</b> is all
        the water over all the flour, through every stage and starter.
      </p>
      <p>An example. The levain is 40 g ripe starter, 100 g flour and 80 g water:</p>
      <ul>
        <li>The starter is half flour, half water, so the levain's 220 g hold 120 g flour and 100 g water.</li>
        <li>
          The dough takes 210 g of it: ${grams(flour)} flour and ${grams(water)} water. Beside it come 1000 g flour,
          690 g water and 21 g salt.
        </li>
      </ul>
      <dl class="sums">
        <div>
          <dt>Listed hydration</dt>
          <dd>690 ÷ 1000 <b>${percent(0.69)}</b></dd>
        </div>
        <div>
          <dt>True hydration</dt>
          <dd>
            (690 + ${tenths(water)}) ÷ (1000 +
            ${tenths(flour)}) <b>${percent((690 + water) / (1000 + flour))}</b>
          </dd>
        </div>
        <div>
          <dt>Salt</dt>
          <dd>
            21 ÷ (1000 + ${tenths(flour)})
            <b>${percent(21 / (1000 + flour))}</b>
          </dd>
        </div>
      </dl>
      <p>
        Water means water, as the trade counts it. What milk, eggs, butter and honey hold is their moisture; moisture
        hydration counts it, and is shown apart.
      </p>`
  }

  #keys() {
    return html`${this.#title('keys')}
      <p><b>Escape, then Tab, leaves the grid.</b> On a Mac use ⌘ where Ctrl is written.</p>
      <table>
        <thead>
          <tr>
            <th scope="col">Press</th>
            <th scope="col">To</th>
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

  #ways() {
    return html`${this.#title('ways')} ${termsAndWords(wayWords)}`
  }

  #kept() {
    return html`${this.#title('kept')}
      <p>
        Everything is kept in this browser, on this device, and goes nowhere else. Every edit is saved by itself.
      </p>
      <p>
        A browser may clear what it keeps: when the disk is full, or when somebody deletes site data. Safari removes it
        after 7 days of use in which you did not come back here; putting Tarebook on the home screen avoids that. A
        private window forgets everything when it closes.
      </p>
      <p>
        <b>Keep a copy.</b> Send out the workbook file now and then, and put it where your other papers are. Bring it in
        again on any device. It holds everything. A CSV file holds the formulas and what each ingredient in them counts as;
        what you set in the larder beyond that, and the kept states, stay here.
      </p>`
  }

  #cautions() {
    return html`${this.#title('cautions')} ${termsAndWords(cautions.map(({ about, says }) => [about, says]))}`
  }

  static override styles = [TbDialog.styles, helpStyles]
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
