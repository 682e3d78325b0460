import { html, type TemplateResult } from 'lit'

export const leftOverWords = {
  total: (weight: string, why: string | undefined): TemplateResult =>
    html`Total to weigh <b>${weight}</b>${why ? `: ${why}` : ''}.`,
  ofStage: (stage: string, words: string): TemplateResult => html`<b>${stage}</b>: ${words}.`,
  notEveryWeight: 'Not every weight is known yet, so the batch cannot be weighed. See the remarks.',
} as const
