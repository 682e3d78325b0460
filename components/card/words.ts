import { html, nothing, type TemplateResult } from 'lit'
import type { PaperName } from './paper.js'

/** Of the bar above the page. */
export const barWords = {
  bar: 'How it is printed',
  back: 'Back',
  paper: 'Paper',
  notes: 'Notes',
  cupsAndSpoons: 'Cups and spoons',
  allergensIn: 'Allergens as listed in',
  pages: (count: number): string => (count === 1 ? 'One page' : `${count} pages`),
  print: 'Print',
  cards: (count: number): string => `${count} cards`,
} as const

export const paperWords: Readonly<Record<PaperName, string>> = { a4: 'A4', letter: 'Letter' }

/** Of the page itself. */
export const pageWords = {
  asWritten: 'As written',
  ofDough: (weight: string): TemplateResult => html` <b>${weight}</b> of dough.`,
  ferments: 'ferments',
  hydration: (percent: string): string => `${percent.replace(/[.,]0+$/, '')} % hydration`,
  starter: (name: string, hydration: string): string => `${name} (${hydration})`,
  /** Before the name of what is counted: `3 × Egg`. */
  count: (count: string, isAbout: boolean): string => `${isAbout ? 'about ' : ''}${count} ×`,
  toWeigh: 'To weigh',
  ingredient: 'Ingredient',
  about: 'About',
  percent: 'Percent',
  weighIt: 'weigh it',
  notesOf: (weight: string): string => `Notes are as written for the formula’s own batch of ${weight}.`,
  method: 'Method',
  readings: 'Readings',
  fine: (step: string, below: string): string => ` (${step} below ${below})`,
  asWeighed: (steps: string): string => `All as weighed, in steps of ${steps}`,
  allergens: 'Allergens',
  cautions: 'Cautions',
} as const

/** What a public list names: each entry with the ingredients it is in. */
export function listedWords(
  list: string,
  entries: readonly { readonly entry: string; readonly ingredients: readonly string[] }[],
): TemplateResult {
  const listed = entries.map(
    ({ entry, ingredients }, at) => html`${at ? '; ' : nothing}<b>${entry}</b> in ${ingredients.join(', ')}`,
  )
  return html`Listed, of ${list}: ${entries.length ? listed : 'nothing the larder knows of'}.`
}
