import { html, type TemplateResult } from 'lit'

export const sheetWords = {
  formulaName: 'Name of the formula',
  formulaNote: 'Note on the formula',
  addNote: 'Add a note',
  keptStates: 'Kept states',
  gramsOrPercentages: 'Grams or %',
  jottings: 'Jottings', // of the place for them, until they are fetched
  method: 'Method', // likewise
} as const

/** What 100 % weighs; weights come with their digits, without the unit. */
export const flourWeightWords = {
  withoutFlour: (stage: string, weight: string): TemplateResult =>
    html`Without flour in ${stage}, 100 % is its base: <b>${weight} g</b>.`,
  asLinesSay: (weight: string): TemplateResult =>
    html`100 % flour weighs <b>${weight} g</b> in the final dough <span class="quiet">as its lines and holds say.</span>`,
  flourWeighs: '100 % flour weighs',
  inFinalDough: 'in the final dough',
} as const
