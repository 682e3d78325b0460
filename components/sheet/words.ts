import { html, type TemplateResult } from 'lit'

export const sheetWords = {
  formulaName: 'Name of the formula',
  formulaNote: 'Note on the formula',
  addNote: 'Add a note',
  keptStates: 'Kept states',
  gramsOrPercentages: 'Grams or percentages',
  jottings: 'Jottings', // of the place for them, until they are fetched
  method: 'Method', // likewise
} as const

/** What 100 % weighs; weights come with their digits, without the unit. */
export const flourWeightWords = {
  withoutFlour: (stage: string, weight: string): TemplateResult =>
    html`Without flour in ${stage}, 100 % is its base: <b>${weight} g</b>.`,
  asLinesSay: (weight: string): TemplateResult =>
    html`100 % flour weighs <b>${weight} g</b> in the final dough <span class="quiet">as its lines say.</span>`,
  flourWeighs: '100 % flour weighs',
  inFinalDough: 'in the final dough',
} as const

export const doughBarWords = {
  notYet: 'The dough is drawn here once its weights can be worked out.',
  flour: 'Flour',
  water: 'Water',
  salt: 'Salt',
  other: 'The rest',
  cameWith: (carriers: string): string => `Came with ${carriers}`,
} as const

/** `Levain`, `Levain and Soaker`: what brought flour and water of its own. */
export function carrierWords(names: readonly string[]): string {
  const last = names.at(-1) ?? 'earlier stages'
  return names.length > 1 ? `${names.slice(0, -1).join(', ')} and ${last}` : last
}

const percentWords = (percent: number): string =>
  percent > 0 && Math.round(percent) === 0 ? 'under 1 per cent' : `${Math.round(percent)} per cent`

/** The dough as it is drawn, for those who listen. Parts are per cent of the whole; `carried` is of flour and water together. */
export function doughInWords(
  parts: Readonly<Record<'flour' | 'water' | 'salt' | 'other' | 'carried', number>>,
  carriers: string,
): string {
  const { flour, water, salt, other, carried } = parts
  const said = [
    `Dough by weight: flour ${percentWords(flour)}`,
    `water ${percentWords(water)}`,
    ...(salt > 0 ? [`salt ${percentWords(salt)}`] : []),
    ...(other > 0 ? [`the rest ${percentWords(other)}`] : []),
  ].join(', ')
  const came = carried > 0 ? ` ${percentWords(carried)} is flour and water that came with ${carriers}.` : ''
  return `${said}.${came}`
}
