import { html } from 'lit'
import type { Column } from '../table/table.js'

export const headings: Readonly<Record<Column, unknown>> = {
  ingredient: 'Ingredient',
  percent: '% of flour',
  weight: 'Grams',
  wholeDough: '% whole dough',
  batch: html`Batch<small class="above">grams</small><small class="beneath">written below</small>`,
  note: 'Note',
  actions: html`<span class="unseen">Actions</span>`,
}

export const gridName = (formula: string): string => `${formula}, stages and lines`
export const addStageLabel = 'Add a stage'
export const helpByKeys =
  'Type to replace, Enter to edit, Alt+Enter to see how a number is worked out. Escape, then Tab leaves the sheet.'
/** How what was typed looks beside the rest. */
export const helpOnTyped = 'Bold and underlined: typed. The rest is worked out.'
export const helpByTouch = 'Tap a cell, then tap it again to change it.'

/** Of rows. What begins with a space or a comma goes on from what is seen, for those who listen. */
export const rowWords = {
  check: 'Check',
  thisLine: 'this line', // where it has no ingredient
  noIngredient: 'no ingredient yet',
  base: 'base',
  notInLarder: 'not in the larder',
  define: 'Define',
  addIngredient: 'Add an ingredient',
  addTo: (stage: string): string => ` to ${stage}`,
  sum: 'Sum',
  sumOf: (stage: string): string => ` of ${stage}`,
  dough: 'Dough',
  methodOf: (stage: string): string => `Method of ${stage}: `,
  partOfWorking: ', part of the working shown',
  actionsFor: (row: string): string => `Actions for ${row}`,
  waitsFor: (cause: string): string => `waits for ${cause}`,
  hydration: (percent: string): string => `${percent} % hydration`,
  givesFor: (hold: string): string => `gives for ${hold}`,
  readFrom: (source: string): string => `Read from “${source}”`,
} as const

/** Of figures, likewise. */
export const figureWords = {
  how: 'how',
  howWorkedOut: (figure: string): string => `how ${figure} is worked out`,
  typed: ' typed',
  gives: 'gives',
  lastGood: 'last good',
  lineGivesFor: (ingredient: string, hold: string): string => `${ingredient} gives for ${hold}`,
  forHold: (hold: string): string => ` for ${hold}`,
  staleForHold: (hold: string): string => `, gives for ${hold}`,
  written: ' g as written',
  writtenTyped: ' as written, typed',
  writtenStale: ' g as written, last good',
} as const
