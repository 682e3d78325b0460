import { html, type TemplateResult } from 'lit'
import type { ArrivalKind } from '../../src/exchange/arriving/arriving.js'
import type { RestOfRecipe } from '../../src/exchange/index.js'
import { counted } from './plan/words.js'

export const dialogWords = {
  linkHeading: 'A formula came with the link',
  workbookHeading: 'Bring in a workbook',
  formulasHeading: 'Bring in formulas',
  nothingAdded: 'Nothing was added.',
  restored: (formulas: number): string =>
    `The workbook of the file is here, with ${counted(formulas, 'formula')}. Undo takes it back.`,
  stopped: 'Reading was stopped. Nothing was added.',
  copied: 'Copied.',
  notCopied: 'The browser did not allow copying. Select the text and copy it.',
  stop: 'Stop reading',
  close: 'Close',
  read: 'Read it',
} as const

/** Where a text came from that was not in a file. */
export const originWords = {
  text: 'the pasted text',
  'pasted link': 'the pasted link',
  link: 'the link',
} as const

export const askWords = {
  about:
    'A formula file, a table from anywhere, a recipe in words, or a whole workbook: Tarebook works out what it is. Nothing is added before you have seen how it was read.',
  file: 'Choose a file, or drop one here',
  paste: 'Or paste a recipe, a table or a link',
} as const

/** Why nothing is read. */
export const refusalWords = {
  tooLarge: (file: string, size: string): string =>
    `${file} is ${size}. Tarebook reads files of up to 5 MB, some 50,000 lines. Nothing was read.`,
  workbookTooLarge: (file: string, size: string): string =>
    `${file} is ${size}. A workbook file has at most 64 MB. Nothing was read.`,
  notOpened: (file: string): string =>
    `${file} could not be opened. It may have been moved; choose it again.`,
  textTooLarge: 'That is more than 5 MB of text. Bring it in as several smaller ones. Nothing was read.',
  ofFile: (file: string, why: string): string => `${file}: ${why}`,
} as const
export const megabytes = (number: string): string => `${number} MB`

/** What was understood, over it all. */
export const sumWords = {
  formulas: (formulas: number, lines: number): string =>
    `${counted(formulas, 'formula')} and ${counted(lines, 'line')} understood`,
  noFormula: 'No formula understood',
  noWorkbook: 'No workbook understood',
  workbook: (name: string, formulas: number, ingredients: number, days: number, bakes: number): string => {
    const holds = [
      counted(formulas, 'formula'),
      ...(ingredients > 0 ? [`${counted(ingredients, 'ingredient')} of the larder`] : []),
      ...(days > 0 ? [counted(days, 'day')] : []),
      ...(bakes > 0 ? [counted(bakes, 'bake')] : []),
    ]
    return `${name || 'A workbook'}: ${[...holds.slice(0, -2), holds.slice(-2).join(' and ')].join(', ')}`
  },
  saved: (workbook: string, when: string): string => `${workbook}, saved ${when}`,
  from: (origin: string): string => `from ${origin}`,
} as const

export const readAsWords = { readAs: 'Read as', choose: 'Choose' } as const
export const kindWords: Readonly<Record<ArrivalKind, string>> = {
  formulas: 'A formula file of Tarebook',
  table: 'A table from elsewhere',
  recipe: 'A recipe in words',
  workbook: 'A workbook file',
}
export const readingWords = (from: string): string => `Reading ${from} …`

export const partWords = {
  totalsDiffer: 'Totals that differ',
  /** `others`: besides those that differ. */
  totalsCompared: (count: number, others: boolean): string =>
    `${counted(count, others ? 'other total' : 'total')} compared`,
  totalsNotCompared: (count: number): string => `${counted(count, 'total')} not compared`,
  row: (row: number): string => `row ${row}`,
  rowBecause: (row: number, why: string): string => `row ${row}. ${why}`,
  rest: 'The rest of the text',
  more: (count: number): string => `And ${count} more.`,
} as const

/** What becomes of rows of a recipe of which no line was made. */
export const fateWords: Readonly<Record<Exclude<RestOfRecipe['as'], 'blank' | 'not understood'>, string>> = {
  step: 'Sentences of which no step was made, kept in the formula’s note',
  note: 'Remarks, kept in the formula’s note',
  amount: 'Amounts, of the names on the rows beside them',
  heading: 'Headings: names of the bread and its stages',
}

export const formulaWords = {
  moreAdded: (count: number): string =>
    `And ${counted(count, 'more formula')}, added under names that are free.`,
  moreHere: (count: number): string =>
    `And ${count} more that ${count === 1 ? 'is' : 'are'} on the shelf already, the same.`,
  stage: (name: string, lines: number): string => `${name} ${counted(lines, 'line')}`,
  here: 'On the shelf already, the same in everything.',
  buildApart: (build: string): string =>
    `Its build “${build}” is not as the one of that name here: it stays this formula’s own.`,
  linesAsRead: 'The lines as read',
  whatToDo: (name: string): string => `What to do with ${name}`,
  add: 'Add it',
  keepBoth: (name: string): TemplateResult => html`Keep both: this one is added as <b>${name}</b>`,
  replace: (name: string): TemplateResult => html`Replace the <b>${name}</b> on the shelf`,
  leaveOut: 'Leave it out',
} as const

/** Of the buttons beneath what was read. */
export const actionWords = {
  readOnly: 'This workbook is open in another tab and can only be read here.',
  nothingToAdd: 'Nothing to add',
  addLink: 'Add to my workbook',
  add: (count: number): string => `Add ${counted(count, 'formula')}`,
  leave: 'Leave it',
  another: 'Choose another file',
  keep: 'Keep what is here',
  yesReplace: 'Yes, replace it',
  replaceNow: 'Replace everything now',
  replace: 'Replace everything …',
  merge: 'Add to this workbook',
} as const
