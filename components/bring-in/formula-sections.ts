import { html, nothing, type TemplateResult } from 'lit'
import type { Formula } from '../../src/dough/document/formula.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import type { NumberStyle } from '../base/numbers.js'
import { type Choice, namesake, planOf } from './plan/bring-in-plan.js'
import { linesAsRead } from './plan/lines-as-read.js'
import { whatToWeigh } from './plan/what-to-weigh.js'
import { formulaWords } from './words.js'

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
  readonly toWeigh: Larder | undefined // what is to be weighed comes before all else, by this larder; undefined: it is not told
}

/** A section for each formula: its name and stages, the choice, its lines as read. */
export function formulaSections(arriving: Arriving): TemplateResult {
  const { workbook, formulas, choice } = arriving
  const shown = formulas.slice(0, formulasShown)
  const plan = planOf(workbook, shown, choice)
  return html`${shown.map(formula => section(arriving, formula, plan.names.get(formula.id), plan.apart.get(formula.id)))}
  ${formulas.length > shown.length ? rest(arriving, formulas.slice(shown.length)) : nothing}`
}

/** Those that are not shown one by one. */
function rest({ here }: Arriving, formulas: readonly Formula[]): TemplateResult {
  const same = formulas.filter(({ id }) => here.has(id)).length
  const added = formulas.length - same
  return html`<p class="formula">
    ${added > 0 ? formulaWords.moreAdded(added) : nothing}
    ${same > 0 ? formulaWords.moreHere(same) : nothing}
  </p>`
}

function section(
  arriving: Arriving,
  formula: Formula,
  name: string | undefined,
  apart: readonly string[] = [],
): TemplateResult {
  const { workbook, formulas, numbers, choice, lines, toWeigh } = arriving
  const there = namesake(workbook.formulas, formula)
  const stages = formula.stages.map(s => formulaWords.stage(s.name, s.lines.length))
  return html`<section class="formula" aria-labelledby="name-${formula.id}">
    <h3 id="name-${formula.id}">${formula.name}</h3>
    <p class="quiet">${stages.join(', ')}</p>
    ${arriving.here.has(formula.id) ? html`<p class="here">${formulaWords.here}</p>` : nothing}
    ${apart.map(build => html`<p class="apart">${formulaWords.buildApart(build)}</p>`)}
    ${there || formulas.length > 1 ? choices(arriving, formula, choice(formula), there, name) : nothing}
    ${toWeigh ? whatToWeigh(formula, toWeigh, numbers) : nothing}
    ${
      lines
        ? html`<details ?open=${formulas.length === 1 && !toWeigh}>
            <summary>${formulaWords.linesAsRead}</summary>
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
  const radio = (value: Choice, words: TemplateResult | string) => html`<label class="choice">
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
  return html`<div class="choices" role="radiogroup" aria-label=${formulaWords.whatToDo(formula.name)}>
    ${
      !there
        ? radio('add', formulaWords.add)
        : html`${radio('add', formulaWords.keepBoth((choice === 'add' ? name : added) ?? ''))}
          ${here.has(formula.id) ? nothing : radio('replace', formulaWords.replace(there.name))}`
    }
    ${radio('leave', formulaWords.leaveOut)}
  </div>`
}
