import { html, nothing, type TemplateResult } from 'lit'
import type { Formula } from '../../src/dough/document/formula.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import type { NumberStyle } from '../base/numbers.js'
import { type Choice, counted, namesake, planOf } from './plan/bring-in-plan.js'
import { linesAsRead } from './plan/lines-as-read.js'

const formulasShown = 60 // with a choice each; the rest of a long file is added without

/** The formulas that were read, and what is to be done with each. */
export interface Arriving {
  readonly workbook: Workbook
  readonly formulas: readonly Formula[]
  readonly numbers: NumberStyle
  readonly here: ReadonlySet<string> // ids of those that are on the shelf already, the same
  readonly choice: (formula: Formula) => Choice
  readonly choose: (formula: Formula, choice: Choice) => void
  readonly lines: boolean // whether their lines are shown
}

/** A section for each formula: its name and stages, the choice, its lines as read. */
export function formulaSections(arriving: Arriving): TemplateResult {
  const { workbook, formulas, choice } = arriving
  const shown = formulas.slice(0, formulasShown)
  const plan = planOf(workbook, shown, choice)
  return html`${shown.map(formula => section(arriving, formula, plan.names.get(formula.id)))}
  ${formulas.length > shown.length ? rest(arriving, formulas.slice(shown.length)) : nothing}`
}

/** Those that are not shown one by one. */
function rest({ here }: Arriving, formulas: readonly Formula[]): TemplateResult {
  const same = formulas.filter(({ id }) => here.has(id)).length
  const added = formulas.length - same
  return html`<p class="formula">
    ${added > 0 ? `And ${counted(added, 'more formula')}, added under names that are free.` : nothing}
    ${same > 0 ? `And ${counted(same, 'more', 'more')} that ${same === 1 ? 'is' : 'are'} on the shelf already, the same.` : nothing}
  </p>`
}

function section(arriving: Arriving, formula: Formula, name: string | undefined): TemplateResult {
  const { workbook, formulas, numbers, choice, lines } = arriving
  const there = namesake(workbook.formulas, formula)
  const stages = formula.stages.map(s => `${s.name} ${counted(s.lines.length, 'line')}`)
  return html`<section class="formula" aria-labelledby="name-${formula.id}">
    <h3 id="name-${formula.id}">${formula.name}</h3>
    <p class="quiet">${stages.join(', ')}</p>
    ${arriving.here.has(formula.id) ? html`<p class="here">On the shelf already, the same in everything.</p>` : nothing}
    ${there || formulas.length > 1 ? choices(arriving, formula, choice(formula), there, name) : nothing}
    ${
      lines
        ? html`<details ?open=${formulas.length === 1}>
            <summary>The lines as read</summary>
            ${linesAsRead(formula, numbers)}
          </details>`
        : nothing
    }
  </section>`
}

function choices(
  { workbook, here, choose }: Arriving,
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
      @change=${() => choose(formula, value)}
    />
    <span>${words}</span>
  </label>`
  const added = planOf(workbook, [formula], () => 'add').names.get(formula.id)
  return html`<div class="choices" role="radiogroup" aria-label="What to do with ${formula.name}">
    ${
      !there
        ? radio('add', html`Add it`)
        : html`${radio('add', html`Keep both: this one is added as <b>${choice === 'add' ? name : added}</b>`)}
          ${here.has(formula.id) ? nothing : radio('replace', html`Replace the <b>${there.name}</b> on the shelf`)}`
    }
    ${radio('leave', html`Leave it out`)}
  </div>`
}
