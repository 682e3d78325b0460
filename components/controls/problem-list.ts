import { html, nothing } from 'lit'
import type { Problem } from '../../src/dough/document/formula.js'

const shown = 40 // more are only copied

const headings: Readonly<Record<Problem['severity'], string>> = {
  error: 'Not understood',
  warning: 'Understood with a doubt',
  remark: 'Noticed',
}

/** The problems of one severity as a list of sentences, with a button that copies them all. */
export function problemList(
  problems: readonly Problem[],
  severity: Problem['severity'],
  copy: (text: string) => void,
) {
  const found = problems.filter(p => p.severity === severity)
  if (found.length === 0) return nothing
  const heading = headings[severity]
  return html`<section class="problems of-${severity}" aria-label=${heading}>
    <h3>${heading} <span class="count">${found.length}</span></h3>
    <ul>
      ${found.slice(0, shown).map(p => html`<li>${p.message}</li>`)}
    </ul>
    ${
      found.length > shown
        ? html`<p class="hint">And ${found.length - shown} more; copying takes them all.</p>`
        : nothing
    }
    <button class="lined" @click=${() => copy(found.map(p => p.message).join('\n'))}>Copy as text</button>
  </section>`
}
