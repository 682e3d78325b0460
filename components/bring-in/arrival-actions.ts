import { html, nothing, type TemplateResult } from 'lit'
import type { RestorePlan } from '../../src/exchange/index.js'
import { actionWords } from './words.js'
import { lostBy, mergedCount, type RestoreWish } from './workbooks/restore-wish.js'
import { restoreQuestion } from './workbooks/words.js'

const cannot = (readOnly: boolean) =>
  readOnly ? html`<p class="question">${actionWords.readOnly}</p>` : nothing

/** Adds so many formulas, or begins again. */
export const addActions = (
  count: number,
  isLink: boolean,
  readOnly: boolean,
  add: () => void,
  again: () => void,
): TemplateResult => html`${cannot(readOnly)}
  <button class="main" ?disabled=${count === 0 || readOnly} @click=${add}>
    ${count === 0 ? actionWords.nothingToAdd : isLink ? actionWords.addLink : actionWords.add(count)}
  </button>
  <button class="lined" @click=${again}>${isLink ? actionWords.leave : actionWords.another}</button>`

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
    return html`<p class="question" id="sure" role="alert">${restoreQuestion(lostBy(plan), sure === 1 ? 1 : 2)}</p>
      <button class="lined" @click=${keep}>${actionWords.keep}</button>
      <button class="main" aria-describedby="sure" @click=${restore}>
        ${sure === 1 ? actionWords.yesReplace : actionWords.replaceNow}
      </button>`
  const count = plan ? mergedCount(plan, wanted) : 0
  const words =
    wanted.way === 'replace'
      ? actionWords.replace
      : count === 0
        ? actionWords.nothingToAdd
        : actionWords.merge
  return html`${cannot(readOnly)}
    <button
      class="main"
      ?disabled=${!plan || readOnly || (wanted.way === 'merge' && count === 0)}
      @click=${restore}
    >
      ${words}
    </button>
    <button class="lined" @click=${again}>${actionWords.another}</button>`
}
