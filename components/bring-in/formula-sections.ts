import { html, nothing, type TemplateResult } from 'lit'
import type { Formula } from '../../src/dough/formula.js'
import type { Workbook } from '../../src/dough/workbook.js'
import { type Choice, counted, namesake, planOf } from '../bring-in-plan.js'
import { linesAsRead } from '../lines-as-read.js'
import type { NumberStyle } from '../numbers.js'

const formulasShown = 60 // with a choice each; the rest of a long file is added without

/** The formulas that were read, and what is to be done with each. */
export interface Arriving {
  readonly workbook: Workbook
  readonly formulas: readonly Formula[]
  readonly numbers: NumberStyle
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
  ${
    formulas.length > shown.length
      ? html`<p class="formula">
          And ${counted(formulas.length - shown.length, 'more formula')}, added under names that are free.
        </p>`
      : nothing
  }`
}

function section(arriving: Arriving, formula: Formula, name: string | undefined): TemplateResult {
  const { workbook, formulas, numbers, choice, lines } = arriving
  const there = namesake(workbook, formula)
  const stages = formula.stages.map(s => `${s.name} ${counted(s.lines.length, 'line')}`)
  return html`<section class="formula" aria-labelledby="name-${formula.id}">
    <h3 id="name-${formula.id}">${formula.name}</h3>
    <p class="quiet">${stages.join(', ')}</p>
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
  { workbook, choose }: Arriving,
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
      there
        ? html`${radio('add', html`Keep both: this one is added as <b>${choice === 'add' ? name : added}</b>`)}
          ${radio('replace', html`Replace the <b>${there.name}</b> on the shelf`)}`
        : radio('add', html`Add it`)
    }
    ${radio('leave', html`Leave it out`)}
  </div>`
}
