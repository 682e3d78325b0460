import { html, nothing, type TemplateResult } from 'lit'
import type { Formula } from '../src/dough/formula.js'
import { sheetFigures, writeFormulas } from '../src/exchange/index.js'
import { copyText } from './copy-text.js'
import { fieldStyles } from './field-styles.js'
import { sendOutStyles } from './send-out-styles.js'
import { TbDialog } from './tb-dialog.js'

const all = '' // in place of a formula's id

/** The columns of the file, for those who open it elsewhere. */
const columnWords: readonly (readonly [column: string, holds: string])[] = [
  [
    'formula, stage, ingredient',
    'Where the line is, and what it is of. The name of an earlier stage is that stage.',
  ],
  ['amount', 'As you typed it: 70%, 20 g, 2 tsp. This is what Tarebook reads back.'],
  ['note', 'Your note on the line.'],
  [
    'counts as',
    'Flour, water, salt, starter with its hydration, or other, so that it means the same in a reader’s workbook.',
  ],
  [
    'setting',
    'Only on rows that are not lines: the flour weight, a note on the formula, whether a stage ferments.',
  ],
  [
    'grams, percent, whole dough percent',
    'Worked out, for people who read it. Not read back while there is an amount.',
  ],
]

/** One formula, or all, as CSV: to look at, download or copy. */
export class TbSendOut extends TbDialog {
  static override properties = { chosen: { state: true } }

  declare private chosen: string // id of a formula, or `all`

  #csv = ''
  #link = ''
  #writtenFor: readonly unknown[] = []

  constructor() {
    super()
    this.chosen = all
  }

  /** Opens with the formula of that id, or with all of them. */
  show(detail: { formula?: string } = {}): void {
    this.chosen = detail.formula ?? all
    this.open()
  }

  get #formulas(): readonly Formula[] {
    const one = this.workbook.formulas.find(f => f.id === this.chosen)
    return one ? [one] : this.workbook.formulas
  }

  override willUpdate(): void {
    const { larder } = this
    const now = this.opened ? [...this.#formulas, larder] : []
    if (now.length === this.#writtenFor.length && now.every((part, at) => part === this.#writtenFor[at]))
      return
    this.#writtenFor = now
    if (this.#link) URL.revokeObjectURL(this.#link)
    this.#csv = this.opened ? writeFormulas(this.#formulas, { larder, figures: sheetFigures(larder) }) : ''
    this.#link = this.opened
      ? URL.createObjectURL(new Blob([this.#csv], { type: 'text/csv;charset=utf-8' }))
      : ''
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    if (this.#link) URL.revokeObjectURL(this.#link)
    this.#link = ''
    this.#writtenFor = []
  }

  /** A file name any system takes, from the formula's or the workbook's own name. */
  get #fileName(): string {
    const one = this.#formulas.length === 1 ? this.#formulas[0]?.name : undefined
    const name = (one ?? (this.workbook.name || 'Formulas'))
      .replace(/[\p{Cc}\\/:*?"<>|]/gu, ' ')
      .replace(/\s+/g, ' ')
      .replace(/^[. ]+|[. ]+$/g, '')
      .slice(0, 80)
    return `${name || 'Formulas'}.csv`
  }

  protected override heading(): string {
    return 'Send out formulas'
  }

  protected override body(): TemplateResult {
    const { formulas } = this.workbook
    if (formulas.length === 0)
      return html`<div class="body"><p>There is no formula on the shelf yet, so there is nothing to send.</p></div>`
    return html`<div class="body">
      <div class="field">
        <label for="what">What to send</label>
        <select
          id="what"
          data-first
          @change=${(e: Event) => {
            this.told = ''
            this.chosen = (e.target as HTMLSelectElement).value
          }}
        >
          ${
            formulas.length > 1
              ? html`<option value=${all} ?selected=${this.chosen === all}>
                  All ${formulas.length} formulas on the shelf
                </option>`
              : nothing
          }
          ${formulas.map(f => html`<option value=${f.id} ?selected=${f.id === this.chosen}>${f.name}</option>`)}
        </select>
      </div>
      <div class="field">
        <label for="csv">The file, <span class="file-name">${this.#fileName}</span></label>
        <textarea
          id="csv"
          rows="9"
          readonly
          wrap="off"
          spellcheck="false"
          .value=${this.#csv}
          aria-describedby="csv-hint"
        ></textarea>
        <p class="hint" id="csv-hint">A table as plain text (CSV): commas between cells, decimal points, UTF-8.</p>
      </div>
      <details>
        <summary>What the columns hold</summary>
        <dl>
          ${columnWords.map(
            ([column, holds]) => html`<div>
              <dt>${column}</dt>
              <dd>${holds}</dd>
            </div>`,
          )}
        </dl>
      </details>
      <details>
        <summary>Opening it in an office program</summary>
        <p>
          A program set to decimal commas may put a whole row into one cell. There, import the file as text, and choose
          the comma as separator, the point as decimal sign and UTF-8 as encoding.
        </p>
        <p>
          Text that such a program could take for a calculation leaves with an apostrophe in front. Bringing the file
          in takes it away again.
        </p>
      </details>
    </div>`
  }

  protected override actions(): TemplateResult | typeof nothing {
    if (this.workbook.formulas.length === 0) return nothing
    return html`<a class="main" href=${this.#link} download=${this.#fileName} @click=${this.#downloaded}>Download</a>
      <button class="lined" @click=${this.#copy}>Copy</button>`
  }

  #downloaded = (): void => {
    this.told = `${this.#fileName} goes to where your browser puts downloads.`
  }

  #copy = async (): Promise<void> => {
    this.told = ''
    if (await copyText(this.#csv)) {
      this.told = 'Copied.'
      return
    }
    const field = this.renderRoot.querySelector('textarea')
    field?.focus()
    field?.select()
    this.told = 'The browser did not allow copying. The text is selected: copy it from there.'
  }

  static override styles = [TbDialog.styles, fieldStyles, sendOutStyles]
}

customElements.define('tb-send-out', TbSendOut)

declare global {
  interface HTMLElementTagNameMap {
    'tb-send-out': TbSendOut
  }
}
