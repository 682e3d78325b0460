import { css, html, nothing } from 'lit'
import { finalDoughOf, hasBatch } from '../../src/dough/document/formula.js'
import { remarksOn } from '../../src/dough/remarks/remarks.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { SheetElement } from '../base/base-element.js'
import { earlierStages } from '../batch/batch-prose.js'
import { leftOver, totalToWeigh } from '../batch/left-over.js'
import { leftOverWords } from './left-over-words.js'

/** What there is to weigh in all, and where each earlier stage goes: into the dough, lost, or kept back. */
export class TbLeftOver extends SheetElement {
  override render() {
    const { sheet, numbers } = this
    if (!sheet) return nothing
    const total = totalToWeigh(sheet, numbers)
    const lines = earlierStages(sheet.formula).flatMap(stage => {
      const words = leftOver(sheet, stage, numbers)
      return words ? [html`<li>${leftOverWords.ofStage(stage.name, words)}</li>`] : []
    })
    const problem = !hasBatch(sheet.formula) || total ? undefined : this.#problem(sheet)
    if (!total && !problem && lines.length === 0) return nothing
    return html`<ul>
      ${total ? html`<li>${leftOverWords.total(total.total, total.why)}</li>` : nothing}
      ${problem ? html`<li class="problem">${problem}</li>` : nothing} ${lines}
    </ul>`
  }

  #problem(sheet: FigureSheet): string {
    const isOfBatch = sheet.stage(finalDoughOf(sheet.formula).id).weight !== undefined
    const said = remarksOn(sheet.workedOut).find(p => p.code === 'batchNotWorkedOut')
    return isOfBatch && said ? said.message : leftOverWords.notEveryWeight
  }

  static override styles = css`
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
    @media print {
      ul {
        margin: 0 0 10px;
      }
      li {
        padding: 2px 0;
      }
    }
  `
}
customElements.define('tb-left-over', TbLeftOver)

declare global {
  interface HTMLElementTagNameMap {
    'tb-left-over': TbLeftOver
  }
}
