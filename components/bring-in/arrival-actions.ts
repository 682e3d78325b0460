import { html, nothing, type TemplateResult } from 'lit'
import type { RestorePlan } from '../../src/exchange/index.js'
import { counted } from './plan/bring-in-plan.js'
import type { RestoreWish } from './workbooks/restore-wish.js'
import { mergedCount, restoreQuestion } from './workbooks/restore-words.js'

const cannot = (readOnly: boolean) =>
  readOnly
    ? html`<p class="question">This workbook is open in another tab and can only be read here.</p>`
    : nothing

/** Adds so many formulas, or begins again. */
export const addActions = (
  count: number,
  isLink: boolean,
  readOnly: boolean,
  add: () => void,
  again: () => void,
): TemplateResult => html`${cannot(readOnly)}
  <button class="main" ?disabled=${count === 0 || readOnly} @click=${add}>
    ${count === 0 ? 'Nothing to add' : isLink ? 'Add to my workbook' : `Add ${counted(count, 'formula')}`}
  </button>
  <button class="lined" @click=${again}>${isLink ? 'Leave it' : 'Choose another file'}</button>`

/** Merges a workbook file, or replaces everything by it, which is asked twice. */
export function restoreActions(
  plan: RestorePlan | undefined,
  wanted: RestoreWish,
  sure: 0 | 1 | 2,
  readOnly: boolean,
  restore: () => void,
  again: () => void,
  keep: () => void,
): TemplateResult {
  if (plan && sure > 0)
    return html`<p class="question" id="sure" role="alert">${restoreQuestion(plan, sure === 1 ? 1 : 2)}</p>
      <button class="lined" @click=${keep}>Keep what is here</button>
      <button class="main" aria-describedby="sure" @click=${restore}>
        ${sure === 1 ? 'Yes, replace it' : 'Replace everything now'}
      </button>`
  const count = plan ? mergedCount(plan, wanted) : 0
  const words =
    wanted.way === 'replace'
      ? 'Replace everything …'
      : count === 0
        ? 'Nothing to add'
        : 'Add to this workbook'
  return html`${cannot(readOnly)}
    <button
      class="main"
      ?disabled=${!plan || readOnly || (wanted.way === 'merge' && count === 0)}
      @click=${restore}
    >
      ${words}
    </button>
    <button class="lined" @click=${again}>Choose another file</button>`
}
