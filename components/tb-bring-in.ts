import { html, nothing, type TemplateResult } from 'lit'
import type { Formula, Problem } from '../src/dough/formula.js'
import { textOf } from '../src/exchange/file-text.js'
import { readFormulas } from '../src/exchange/index.js'
import { type Choice, counted, namesake, planOf } from './bring-in-plan.js'
import { bringInStyles } from './bring-in-styles.js'
import { copyText } from './copy-text.js'
import { askEdit, wish } from './events.js'
import { fieldStyles } from './field-styles.js'
import { linesAsRead, linesAsReadStyles } from './lines-as-read.js'
import { problemList } from './problem-list.js'
import { TbDialog } from './tb-dialog.js'

const formulasShown = 60 // with a choice each; the rest of a long file is added without
const largest = 5 * 1024 * 1024 // bytes; some 50,000 lines, read within a second or two

interface Read {
  readonly from: string // the file's name, or 'the pasted text'
  readonly formulas: readonly Formula[]
  readonly problems: readonly Problem[]
  readonly remark: string | undefined
}

/** Formulas from a CSV file or a pasted table: shown as understood before anything is added. */
export class TbBringIn extends TbDialog {
  static override properties = {
    read: { state: true },
    choices: { state: true },
    refusal: { state: true },
    pasted: { state: true },
    over: { state: true },
  }

  declare private read: Read | undefined
  declare private choices: ReadonlyMap<string, Choice>
  declare private refusal: string // why nothing was read or added
  declare private pasted: string
  declare private over: boolean // a file is held above the dialog

  constructor() {
    super()
    this.choices = new Map()
    this.refusal = ''
    this.pasted = ''
    this.over = false
  }

  /** Opens at the choice of a file, or with what a file or a text holds. */
  show(detail: { file?: File; text?: string } = {}): void {
    this.#start()
    this.open()
    if (detail.file) void this.#readFile(detail.file)
    else if (detail.text !== undefined) this.#readText(detail.text, 'the pasted text')
  }

  #start(): void {
    this.read = undefined
    this.refusal = ''
    this.pasted = ''
    this.over = false
    this.choices = new Map()
  }

  protected override unsaved(): boolean {
    return !this.read && this.pasted.trim() !== ''
  }

  async #readFile(file: File): Promise<void> {
    this.read = undefined
    this.refusal = ''
    if (file.size > largest) {
      const size = (file.size / 1024 / 1024).toLocaleString(this.numbers.language, {
        maximumFractionDigits: 1,
      })
      this.refusal = `${file.name} is ${size} MB. Tarebook reads files of up to 5 MB, some 50,000 lines. Nothing was read.`
      return
    }
    try {
      const decoded = textOf(new Uint8Array(await file.arrayBuffer()))
      if ('refusal' in decoded) this.refusal = `${file.name}: ${decoded.refusal}`
      else this.#readText(decoded.text, file.name, decoded.remark)
    } catch {
      this.refusal = `${file.name} could not be opened. It may have been moved; choose it again.`
    }
  }

  #readText(text: string, from: string, remark?: string): void {
    if (text.length > largest) {
      this.refusal = 'That is more than 5 MB of text. Bring it in as several smaller ones. Nothing was read.'
      return
    }
    this.refusal = ''
    this.choices = new Map()
    this.read = { from, ...readFormulas(text, this.larder), remark }
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('#understood')?.focus())
  }

  #choice = (formula: Formula): Choice => this.choices.get(formula.id) ?? 'add'

  #choose(formula: Formula, choice: Choice): void {
    this.choices = new Map(this.choices).set(formula.id, choice)
  }

  #add = (): void => {
    const formulas = this.read?.formulas ?? []
    let first: string | undefined
    const refusal = askEdit(this, workbook => {
      const plan = planOf(workbook, formulas, this.#choice)
      first = plan.ids[0]
      return plan.transaction
    })
    if (refusal) {
      this.refusal = refusal
      return
    }
    this.close()
    if (first) wish(this, { want: 'open', formula: first })
  }

  protected override heading(): string {
    return 'Bring in formulas'
  }

  protected override body(): TemplateResult {
    return html`<div
      class="body ${this.over ? 'over' : ''}"
      @dragover=${this.#dragOver}
      @dragleave=${() => {
        this.over = false
      }}
      @drop=${this.#drop}
    >
      ${this.refusal ? html`<p class="error refusal" role="alert">${this.refusal}</p>` : nothing}
      ${this.read ? this.#understood(this.read) : this.#ask()}
    </div>`
  }

  #dragOver = (event: DragEvent): void => {
    if (!event.dataTransfer?.types.includes('Files')) return
    event.preventDefault()
    this.over = true
  }

  #drop = (event: DragEvent): void => {
    const file = event.dataTransfer?.files[0]
    this.over = false
    if (!file) return
    event.preventDefault() // or the browser would leave the page for the file
    void this.#readFile(file)
  }

  #ask(): TemplateResult {
    return html`<p>
        A CSV file with a row for each line of a formula. It needs the headings <code>ingredient</code> and
        <code>amount</code>; <code>formula</code>, <code>stage</code>, <code>note</code> and
        <code>counts as</code> are read where they are there. Nothing is added before you have seen it.
      </p>
      <div class="field">
        <label for="file">Choose a file, or drop one here</label>
        <input
          id="file"
          type="file"
          accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain"
          data-first
          @change=${(e: Event) => {
            const file = (e.target as HTMLInputElement).files?.[0]
            if (file) void this.#readFile(file)
          }}
        />
      </div>
      <div class="field">
        <label for="pasted">Or paste a table, with its heading row</label>
        <textarea
          id="pasted"
          rows="7"
          spellcheck="false"
          autocapitalize="off"
          .value=${this.pasted}
          @input=${(e: InputEvent) => {
            this.pasted = (e.target as HTMLTextAreaElement).value
          }}
        ></textarea>
      </div>`
  }

  #understood(read: Read): TemplateResult {
    const { formulas, problems } = read
    const lines = formulas.flatMap(f => f.stages).reduce((sum, stage) => sum + stage.lines.length, 0)
    const shown = formulas.slice(0, formulasShown)
    const plan = planOf(this.workbook, shown, this.#choice)
    return html`
      <h3 class="sum" id="understood" tabindex="-1">
        ${
          formulas.length
            ? `${counted(formulas.length, 'formula')} and ${counted(lines, 'line')} understood`
            : 'No formula understood'
        }
        <small>from ${read.from}</small>
      </h3>
      ${read.remark ? html`<p class="remark">${read.remark}</p>` : nothing}
      ${problemList(problems, 'error', this.#copy)} ${problemList(problems, 'warning', this.#copy)}
      ${shown.map(formula => this.#formula(formula, plan.names.get(formula.id), formulas.length))}
      ${
        formulas.length > shown.length
          ? html`<p class="formula">
              And ${counted(formulas.length - shown.length, 'more formula')}, added under names that are free.
            </p>`
          : nothing
      }
      ${problemList(problems, 'remark', this.#copy)}
    `
  }

  #copy = async (text: string): Promise<void> => {
    this.told = ''
    const copied = await copyText(text)
    this.told = copied ? 'Copied.' : 'The browser did not allow copying. Select the text and copy it.'
  }

  #formula(formula: Formula, name: string | undefined, of: number): TemplateResult {
    const there = namesake(this.workbook, formula)
    const choice = this.#choice(formula)
    const stages = formula.stages.map(s => `${s.name} ${counted(s.lines.length, 'line')}`)
    return html`<section class="formula" aria-labelledby="name-${formula.id}">
      <h3 id="name-${formula.id}">${formula.name}</h3>
      <p class="quiet">${stages.join(', ')}</p>
      ${there || of > 1 ? this.#choices(formula, choice, there, name) : nothing}
      <details ?open=${of === 1}>
        <summary>The lines as read</summary>
        ${linesAsRead(formula)}
      </details>
    </section>`
  }

  #choices(
    formula: Formula,
    choice: Choice,
    there: Formula | undefined,
    name: string | undefined,
  ): TemplateResult {
    const radio = (value: Choice, words: TemplateResult) => html`<label class="choice">
      <input
        type="radio"
        name="choice-${formula.id}"
        value=${value}
        .checked=${choice === value}
        @change=${() => this.#choose(formula, value)}
      />
      <span>${words}</span>
    </label>`
    const added = planOf(this.workbook, [formula], () => 'add').names.get(formula.id)
    return html`<div class="choices" role="radiogroup" aria-label="What to do with ${formula.name}">
      ${
        there
          ? html`${radio('add', html`Keep both: this one is added as <b>${choice === 'add' ? name : added}</b>`)}
            ${radio('replace', html`Replace the <b>${there.name}</b> on the shelf`)}`
          : radio('add', html`Add it`)
      }
      ${radio('leave', html`Leave it out`)}
    </div>`
  }

  protected override actions(): TemplateResult {
    if (!this.read) {
      return html`<button
        class="main"
        ?disabled=${!this.pasted.trim()}
        @click=${() => this.#readText(this.pasted, 'the pasted text')}
      >
        Read the table
      </button>`
    }
    const count = this.read.formulas.filter(f => this.#choice(f) !== 'leave').length
    return html`${
      this.readOnly
        ? html`<p class="question">This workbook is open in another tab and can only be read here.</p>`
        : nothing
    }
      <button class="main" ?disabled=${count === 0 || this.readOnly} @click=${this.#add}>
        ${count === 0 ? 'Nothing to add' : `Add ${counted(count, 'formula')}`}
      </button>
      <button class="lined" @click=${this.#again}>Choose another file</button>`
  }

  #again = (): void => {
    const { pasted } = this
    this.#start()
    this.pasted = pasted
    void this.updateComplete.then(() => this.focusFirst())
  }

  static override styles = [TbDialog.styles, fieldStyles, linesAsReadStyles, bringInStyles]
}

customElements.define('tb-bring-in', TbBringIn)

declare global {
  interface HTMLElementTagNameMap {
    'tb-bring-in': TbBringIn
  }
}
