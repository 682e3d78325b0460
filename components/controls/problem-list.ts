import { html, nothing } from 'lit'
import type { Problem } from '../../src/dough/document/formula.js'
import { problemListWords, severityWords } from './words.js'

const shown = 40 // more are only copied

/** The problems of one severity as a list of sentences, with a button that copies them all. */
export function problemList(
  problems: readonly Problem[],
  severity: Problem['severity'],
  copy: (text: string) => void,
) {
  const found = problems.filter(p => p.severity === severity)
  if (found.length === 0) return nothing
  const heading = severityWords[severity]
  return html`<section class="problems of-${severity}" aria-label=${heading}>
    <h3>${heading} <span class="count">${found.length}</span></h3>
    <ul>
      ${found.slice(0, shown).map(p => html`<li>${p.message}</li>`)}
    </ul>
    ${
      found.length > shown
        ? html`<p class="hint">${problemListWords.more(found.length - shown)}</p>`
        : nothing
    }
    <button class="lined" @click=${() => copy(found.map(p => p.message).join('\n'))}>${problemListWords.copy}</button>
  </section>`
}
