import { html, nothing, type TemplateResult } from 'lit'
import type { LabelRun } from '../../src/dough/label/allergens-named.js'
import type { LabelBlocks } from '../../src/exchange/label/label-blocks.js'
import { labelWords } from '../../src/exchange/label/words.js'
import { checkNames, labelBarWords } from './words.js'

const run = ({ text, isAllergen }: LabelRun) => (isAllergen ? html`<b>${text}</b>` : text)

function table({ rows, calculated }: LabelBlocks): TemplateResult | typeof nothing {
  if (rows.length === 0) return nothing
  return html`<table>
      <caption>${labelWords.nutrition}</caption>
      <tbody>
        ${rows.map(
          ({ of, says, isPart }) => html`<tr class=${isPart ? 'part' : ''}>
            <th scope="row">${of}</th>
            <td>${says}</td>
          </tr>`,
        )}
      </tbody>
    </table>
    <p class="calculated">${calculated}</p>`
}

function paragraph(heading: string, words: unknown): TemplateResult {
  return html`<p><b>${heading}</b> ${words}</p>`
}

/** A label as it is printed, in its border; beside it what is to be settled before it is used. */
export function labelPage(label: LabelBlocks, level: number, withChecks: boolean): TemplateResult {
  const { name, ingredients, contains, netWeight, toCheck } = label
  return html`<section class="one">
    <div class="label">
      <h1 aria-level=${level}>${name}</h1>
      ${ingredients.length ? paragraph(labelWords.ingredients, ingredients.map(run)) : html`<p>${labelBarWords.noList}</p>`}
      ${contains ? paragraph(labelWords.contains, contains) : nothing}
      ${netWeight ? paragraph(labelWords.netWeight, netWeight) : nothing}
      ${table(label)}
    </div>
    ${withChecks && toCheck.length ? sentences(checkNames.own, toCheck, level + 1) : nothing}
  </section>`
}

export function sentences(heading: string, all: readonly string[], level: number): TemplateResult {
  return html`<div class="sentences">
    <h2 aria-level=${level}>${heading}</h2>
    <ul>
      ${all.map(said => html`<li>${said}</li>`)}
    </ul>
  </div>`
}
