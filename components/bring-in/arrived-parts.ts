import { html, nothing, type TemplateResult } from 'lit'
import type { ArrivalKind } from '../../src/exchange/arriving/arriving.js'
import type { RestOfRecipe } from '../../src/exchange/index.js'
import type { TotalCheck } from '../../src/exchange/tables/index.js'
import type { Progress } from './reading.js'
import { fateWords, kindWords, partWords, readAsWords, readingWords } from './words.js'

const shown = 100

/** Totals that the file prints beside what its lines add to: those that differ first, the others on request. */
export function totalsFound(totals: readonly TotalCheck[]): TemplateResult | typeof nothing {
  if (totals.length === 0) return nothing
  const differ = totals.filter(total => total.verdict === 'differs')
  const others = totals.filter(({ verdict }) => verdict === 'agrees' || verdict === 'rounding')
  const open = totals.filter(({ verdict }) => verdict === 'not compared')
  const list = (checks: readonly TotalCheck[]) =>
    html`<ul>
      ${checks.slice(0, shown).map(({ row, sentence }) => html`<li>${sentence} <small>${partWords.row(row)}</small></li>`)}
    </ul>`
  return html`${
    differ.length > 0
      ? html`<section class="problems totals" aria-label=${partWords.totalsDiffer}>
          <h3>${partWords.totalsDiffer} <span class="count">${differ.length}</span></h3>
          ${list(differ)}
        </section>`
      : nothing
  }
  ${
    others.length > 0
      ? html`<details class="totals">
          <summary>${partWords.totalsCompared(others.length, differ.length > 0)}</summary>
          ${list(others)}
        </details>`
      : nothing
  }
  ${
    open.length > 0
      ? html`<details class="totals">
          <summary>${partWords.totalsNotCompared(open.length)}</summary>
          ${list(open)}
        </details>`
      : nothing
  }`
}

const fates = ['step', 'note', 'amount', 'heading'] as const

/** What becomes of the rows of a recipe of which no line was made; those not understood are among the problems. */
export function restOfRecipe(rest: readonly RestOfRecipe[]): TemplateResult | typeof nothing {
  const parts = fates.flatMap(as => {
    const rows = rest.filter(row => row.as === as && !row.inMethod)
    return rows.length > 0 ? [{ words: fateWords[as], rows }] : []
  })
  if (parts.length === 0) return nothing
  return html`<section class="rest" aria-label=${partWords.rest}>
    <h3>${partWords.rest}</h3>
    ${parts.map(
      ({ words, rows }) => html`<details>
        <summary>${words} <span class="count">${rows.length}</span></summary>
        <ul>
          ${rows.slice(0, shown).map(({ row, text, why }) => html`<li>${text.trim()} <small>${why ? partWords.rowBecause(row, why.message) : partWords.row(row)}</small></li>`)}
        </ul>
        ${rows.length > shown ? html`<p class="hint">${partWords.more(rows.length - shown)}</p>` : nothing}
      </details>`,
    )}
  </section>`
}

const kinds: readonly ArrivalKind[] = ['formulas', 'table', 'recipe', 'workbook']

/** A choice of what the text is, should it have been taken for something else. */
export const readAs = (
  now: ArrivalKind | undefined,
  choose: (as: ArrivalKind) => void,
): TemplateResult => html`<div class="read-as">
  <label for="read-as">${readAsWords.readAs}</label>
  <select id="read-as" .value=${now ?? ''} @change=${(e: Event) => choose((e.target as HTMLSelectElement).value as ArrivalKind)}>
    ${now === undefined ? html`<option value="" selected disabled>${readAsWords.choose}</option>` : nothing}
    ${kinds.map(as => html`<option value=${as} ?selected=${as === now}>${kindWords[as]}</option>`)}
  </select>
</div>`

/** How far the reading is; it can be stopped meanwhile. */
export const readingOn = (from: string, progress: Progress | 'begun'): TemplateResult => html`<p id="reading">
    ${readingWords(from)}
  </p>
  ${
    progress === 'begun'
      ? html`<progress aria-labelledby="reading"></progress>`
      : html`<progress aria-labelledby="reading" max=${progress.of} value=${progress.done}></progress>`
  }`
