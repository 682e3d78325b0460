import { html, type TemplateResult } from 'lit'

/** Of one jotting: `of` is its name, '' on the line on which the next is written. */
export const jottingWords = {
  jottings: 'Jottings',
  nameOf: (of: string): string => (of ? `Name of ${of}` : 'Name of a new jotting'),
  calculationOf: (of: string): string => (of ? `Calculation of ${of}` : 'Calculation of the new jotting'),
  namesToUse: 'Names to use',
  remove: 'Remove',
  removeThis: (of: string): string => `Remove ${of}`,
  number: 'number', // behind a value that is neither a weight nor per cent
  showWorking: (of: string, value: string): string => `${of}: ${value}, show the working`,
  showWorkingOfNumber: (of: string, value: string): string => `${of}: ${value} number, show the working`,
} as const

/** What an empty line shows: the first time an example. */
export const emptyLineWords = {
  first: ['per_loaf', 'dough_weight/6'],
  next: ['name', 'calculation'],
} as const

/** What a jotting is, before there is one. */
export const whatAJottingIs = (): TemplateResult =>
  html`Jot down a calculation: <code>per_loaf = dough_weight/6</code>. Its name can stand in any amount.`

/** Whose weights a jotting speaks of. */
export const weightsAsWritten = (): TemplateResult =>
  html`Weights such as <code>total_flour</code> are those of the formula as written, not of the batch.`
