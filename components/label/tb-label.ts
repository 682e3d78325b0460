import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit'
import type { Formula } from '../../src/dough/document/formula.js'
import { setBatch } from '../../src/dough/edits/fetched/batch-edits.js'
import { labelOf } from '../../src/dough/label/label.js'
import { type LabelBlocks, labelBlocks, labelRules } from '../../src/exchange/label/label-blocks.js'
import { labelHtml } from '../../src/exchange/label/label-html.js'
import { labelText } from '../../src/exchange/label/label-text.js'
import { copyRich, copyText } from '../base/copy-text.js'
import { askEdit } from '../base/events.js'
import { showNumber } from '../base/numbers.js'
import { paperStyles } from '../card/paper-styles.js'
import { PrintedFormulas } from '../card/printed-formulas.js'
import { TypedFields } from '../controls/typed-fields.js'
import { listSelect, ownList } from '../sheet/allergen-list.js'
import { readPart } from '../typed/typed-numbers.js'
import { labelPage, sentences } from './label-page.js'
import { labelStyles } from './label-styles.js'
import { checkNames, labelBarWords } from './words.js'

/** The labels of formulas: to read, copy and print, with what is to be settled before they are used. */
export class TbLabel extends PrintedFormulas {
  static override properties: PropertyDeclarations = {
    checks: { state: true },
    told: { state: true },
  }

  declare private checks: boolean // what is to be settled stands beside each
  declare private told: string // what became of copying

  readonly #fields = new TypedFields(this, () => 'label')

  constructor() {
    super()
    this.checks = true
    this.told = ''
  }

  protected override begin(): void {
    this.told = ''
    this.#fields.forget()
  }

  protected override get printed(): { readonly name: string } | undefined {
    const [first, ...others] = this.formulas
    return others.length ? { name: labelBarWords.labels(others.length + 1) } : first
  }

  get #labels(): readonly LabelBlocks[] {
    const way = ownList(this.numbers.language)
    return this.formulas.map(formula => labelBlocks(labelOf(this.sheetOf(formula), way)))
  }

  protected override fit(paper: HTMLElement): number {
    paper.classList.add('fitted')
    const pages = this.pagesOf(paper)
    paper.classList.remove('fitted')
    return pages
  }

  protected override papers(): readonly TemplateResult[] {
    const labels = this.#labels
    const level = labels.length > 1 ? 2 : 1
    return [
      html`${labels.length > 1 ? html`<h1 class="unseen">${this.printed?.name}</h1>` : nothing}
        ${labels.map(label => labelPage(label, level, this.checks))}
        <div class="rules">${sentences(checkNames.rules, labelRules(labels), 2)}</div>`,
    ]
  }

  protected override choices(): TemplateResult {
    return html`<label class="choice" @change=${this.#again}>
        <span>${labelBarWords.way}</span>
        ${listSelect(ownList(this.numbers.language))}
      </label>
      ${this.box(labelBarWords.toCheck, this.checks, on => {
        this.checks = on
      })}
      <button class="lined" @click=${this.#copyText}>${labelBarWords.copyText}</button>
      <button class="lined" @click=${this.#copyHtml}>${labelBarWords.copyHtml}</button>
      <p class="told" role="status">${this.told}</p>`
  }

  protected override more(): TemplateResult {
    const formulas = this.formulas
    return html`<div class="losses">
      ${formulas.map(formula => this.#loss(formula))}
      ${this.#fields.faults(...formulas.map(({ id }) => `loss-${id}`))}
    </div>`
  }

  /** What a bread loses in baking, where it can be typed at once. */
  #loss({ id, name, batch }: Formula): TemplateResult {
    const { bakeLoss } = batch ?? {}
    return html`<label>
      <span>${labelBarWords.losesInBaking(name)}</span>
      ${this.#fields.field({
        name: `loss-${id}`,
        label: labelBarWords.bakeLoss(name),
        kept: bakeLoss ? showNumber(bakeLoss * 100, this.numbers) : '',
        unit: '%',
        short: true,
        isReadOnly: this.readOnly,
        take: typed => this.#takeLoss(id, typed),
      })}
    </label>`
  }

  #takeLoss(id: string, typed: string): string | undefined {
    const bakeLoss = readPart(typed, this.numbers)
    if (bakeLoss === undefined || !(bakeLoss >= 0 && bakeLoss < 1))
      return labelBarWords.notAPart(typed.trim())
    return askEdit(this, workbook => {
      const formula = workbook.formulas.find(f => f.id === id)
      if (!formula) return undefined
      const { bakeLoss: _before, ...batch } = formula.batch ?? { make: 'as written' as const }
      return setBatch(workbook, id, bakeLoss ? { ...batch, bakeLoss } : batch)
    })
  }

  #again = (): void => {
    this.told = ''
    this.requestUpdate()
  }

  #copyText = async (): Promise<void> => {
    const copied = await copyText(labelText(this.#labels))
    this.told = copied ? labelBarWords.copiedText : labelBarWords.notCopied
  }

  // Where only text is taken it is the page’s own text: whoever asks for HTML there wants to see it.
  #copyHtml = async (): Promise<void> => {
    const page = labelHtml(this.#labels)
    this.told = (await copyRich(page, page)) ? labelBarWords.copiedHtml : labelBarWords.notCopied
  }

  static override styles = [paperStyles, labelStyles]
}
customElements.define('tb-label', TbLabel)

declare global {
  interface HTMLElementTagNameMap {
    'tb-label': TbLabel
  }
}
