import { css, html, LitElement, nothing } from 'lit'
import { finalDoughOf } from '../../src/dough/document/formula.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import type { NumberStyle } from '../base/numbers.js'
import { sharedStyles } from '../base/shared-styles.js'
import { earlierStages, isAsWritten, leftOver, totalToWeigh } from '../batch/batch-words.js'

/** What there is to weigh in all, and where each earlier stage goes: into the dough, lost, or kept back. */
export class TbLeftOver extends LitElement {
  static override properties = {
    sheet: { attribute: false },
    version: { type: Number },
    numbers: { attribute: false },
  }

  declare sheet: FigureSheet | undefined
  declare version: number // goes up when the sheet's figures changed
  declare numbers: NumberStyle

  constructor() {
    super()
    this.version = 0
    this.numbers = { language: 'en', decimal: '.' }
  }

  override render() {
    const { sheet, numbers } = this
    if (!sheet) return nothing
    const total = totalToWeigh(sheet, numbers)
    const lines = earlierStages(sheet.formula).flatMap(stage => {
      const words = leftOver(sheet, stage, numbers)
      return words ? [html`<li><b>${stage.name}</b>: ${words}.</li>`] : []
    })
    const problem = isAsWritten(sheet.formula) || total ? undefined : this.#problem(sheet)
    if (!total && !problem && lines.length === 0) return nothing
    return html`<ul>
      ${
        total
          ? html`<li>Total to weigh <b>${total.total}</b>${total.why ? `: ${total.why}` : ''}.</li>`
          : nothing
      }
      ${problem ? html`<li class="problem">${problem}</li>` : nothing} ${lines}
    </ul>`
  }

  #problem(sheet: FigureSheet): string {
    const isOfBatch = sheet.stage(finalDoughOf(sheet.formula).id).weight !== undefined
    const said = sheet.problems.find(p => p.severity === 'error' && p.message.startsWith('The batch'))
    return isOfBatch && said
      ? said.message
      : 'Not every weight is known yet, so the batch cannot be weighed. See the remarks.'
  }

  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }
      ul {
        margin: 0 0 30px;
        padding: 0;
        list-style: none;
        color: var(--ink-soft);
        border-top: 1px solid var(--rule-strong);
      }
      li {
        padding: 7px 0;
      }
      li + li {
        border-top: 1px solid var(--rule);
      }
      b {
        color: var(--ink);
        font-weight: 640;
      }
      .problem {
        color: var(--warn);
      }
    `,
  ]
}
customElements.define('tb-left-over', TbLeftOver)

declare global {
  interface HTMLElementTagNameMap {
    'tb-left-over': TbLeftOver
  }
}
