import { css, html, nothing, type TemplateResult } from 'lit'
import { type CountsAs, type Formula, nameKey } from '../../../src/dough/document/formula.js'
import type { NumberStyle } from '../../base/numbers.js'
import { asTheyWrite } from '../../base/numbers.js'
import { slim } from '../../styles/breakpoints.js'
import { formulaFacts } from './formula-facts.js'
import { linesWords } from './words.js'

const linesShown = 200 // of one formula; more would be slow to lay out, and nobody reads them here

const countsAsText = (is: CountsAs): string =>
  is.kind === 'starter' ? linesWords.starter(`${Math.round(is.hydration * 1e4) / 100}`) : is.kind

/** A table of a formula's lines as a file gave them, and what it says beside them. */
export function linesAsRead(formula: Formula, numbers: NumberStyle): TemplateResult {
  const meanings = new Map(formula.meanings.map(m => [nameKey(m.ingredient), countsAsText(m.countsAs)]))
  const lines = formula.stages.flatMap(stage =>
    stage.lines.map((line, at) => ({ line, stage, first: at === 0 })),
  )
  return html`<table>
      <thead>
        <tr>
          <th scope="col">${linesWords.ingredient}</th>
          <th scope="col" class="amount">${linesWords.amount}</th>
          <th scope="col">${linesWords.note}</th>
        </tr>
      </thead>
      ${lines.slice(0, linesShown).map(({ line, stage, first }) => {
        const meaning = meanings.get(nameKey(line.ingredient))
        return html`${
          first
            ? html`<tr class="stage">
                  <th colspan="3" scope="rowgroup">${stage.name}</th>
                </tr>`
            : nothing
        }
          <tr>
            <td>${line.ingredient}${meaning ? html` <small>${linesWords.countsAs(meaning)}</small>` : nothing}</td>
            <td class="amount">${line.amount ? asTheyWrite(line.amount, numbers) : html`<span class="quiet">${linesWords.none}</span>`}</td>
            <td class="note">${line.note}</td>
          </tr>`
      })}
    </table>
    ${lines.length > linesShown ? html`<p class="hint">${linesWords.more(lines.length - linesShown)}</p>` : nothing}
    ${facts(formula, numbers)}`
}

function facts(formula: Formula, numbers: NumberStyle): TemplateResult | typeof nothing {
  const all = formulaFacts(formula, numbers)
  if (all.length === 0) return nothing
  return html`<dl class="facts">
    ${all.slice(0, linesShown).map(([called, says]) => html`<div><dt>${called}</dt><dd>${says}</dd></div>`)}
  </dl>`
}

export const linesAsReadStyles = css`
  summary {
    display: flex;
    align-items: center;
    gap: 8px;
    width: fit-content;
    min-height: var(--target);
    color: var(--accent);
    cursor: pointer;
  }
  summary::before {
    content: '▸';
    width: 1em;
  }
  [open] > summary::before {
    content: '▾';
  }
  summary::-webkit-details-marker {
    display: none;
  }
  table {
    border-collapse: collapse;
    table-layout: fixed;
    width: 100%;
    font-size: var(--size-text);
  }
  th,
  td {
    padding: 6px 10px 6px 0;
    text-align: left;
    vertical-align: baseline;
    border-bottom: 1px solid var(--rule);
    overflow-wrap: anywhere;
  }
  thead th {
    font-size: var(--size-fine);
    font-weight: 600;
    color: var(--ink-soft);
    border-bottom: 1.5px solid var(--rule-strong);
  }
  .amount {
    width: 28%;
    text-align: right;
    padding-right: 20px;
  }
  .stage th {
    font-weight: 640;
    padding-top: 14px;
  }
  td small,
  .note {
    color: var(--ink-soft);
  }
  .facts {
    margin: 12px 0 0;
    font-size: var(--size-text);
  }
  .facts div {
    display: flex;
    gap: 4px 16px;
    padding: 3px 0;
  }
  .facts dt {
    flex: 0 0 9rem;
    color: var(--ink-soft);
    overflow-wrap: anywhere;
  }
  .facts dd {
    flex: 1;
    margin: 0;
    min-width: 0;
    overflow-wrap: anywhere;
    white-space: pre-line;
  }
  @media ${slim} {
    .facts dt {
      flex-basis: 6.5rem;
    }
    .amount {
      padding-right: 10px;
    }
  }
`
