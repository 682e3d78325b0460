import { html, type TemplateResult } from 'lit'

export const sendOutWords = {
  sendOut: 'Send out',
  nothingToSend: 'There is no formula on the shelf yet, so there is nothing to send.',
  what: 'What to send',
  ofDay: (day: string): string => `The breads of ${day}`,
  several: (count: number): string => `The ${count} formulas chosen`,
  all: (count: number): string => `All ${count} formulas on the shelf`,
  group: (name: string, count: number): string =>
    `${name}: ${count === 1 ? 'one formula' : `${count} formulas`}`,
  whole: 'The whole workbook: formulas, larder, scale',
  form: 'In which form',
  household: 'With cups and spoons, for readers without a scale',
  jsonAlone: 'The JSON alone, without its script element',
  notFetched: 'This form could not be fetched. Connect to the network and choose it again.',
  download: 'Download',
  copy: 'Copy',
  partOfWorkbook:
    'For another Tarebook: these formulas with their kept states, and those of your own ingredients that they name.',
  printCards: (count: number): string => (count === 1 ? 'Print a card' : `Print ${count} cards`),
  handout: 'Handout',
  labels: (count: number): string => (count === 1 ? 'Label' : `${count} labels`),
  downloaded: (file: string): string => `${file} is among your downloads.`,
  copied: 'Copied.',
  notCopied: 'The browser did not allow copying. All of it is selected: copy it from there.',
  fileName: 'Formulas', // of a file, where nothing else names it
} as const

/** What each form is called, and what it is, for whom. */
export const formWords = {
  csv: {
    label: 'CSV',
    says: 'A table as plain text: every amount as you typed it, for another Tarebook and for office programs.',
  },
  text: {
    label: 'Plain text',
    says: 'For a message or a print-out: columns that line up, readings, the batch. Tarebook reads it back.',
  },
  markdown: {
    label: 'Markdown',
    says: 'For notes and forums that turn it into headings and tables.',
  },
  table: {
    label: 'Table to paste',
    says: 'Copied as it looks here: real tables in a letter, a document or a mail. Where only text can be pasted, you get the plain text.',
  },
  link: {
    label: 'Link',
    says: 'The whole formula is in the address itself, behind the #. No browser sends that part, so no server sees the formula.',
  },
  recipe: {
    label: 'Recipe markup',
    says: 'For your own web page: paste it anywhere in the page, and search engines read the recipe (schema.org, JSON-LD). Readers do not see it.',
  },
  workbook: {
    label: 'Workbook file',
    says: 'Everything in one file: all formulas with their kept states, your larder, how your scale weighs. The copy to keep.',
  },
} as const

export const writtenWords = {
  asItLooks: 'As it looks where it is pasted',
  link: 'The link',
  file: (name: string): TemplateResult => html`The file, <span class="file-name">${name}</span>`,
  characters: (count: string): string =>
    `${count} characters. Chat programs cut long links; a file goes through everywhere.`,
  statesStay: 'Kept states stay here. The workbook file takes them along.',
} as const

/** The columns of the CSV file, for those who open it elsewhere. */
export const columnWords: readonly (readonly [column: string, holds: string])[] = [
  [
    'formula, stage, ingredient',
    'Where the line is, and what it is of. The name of an earlier stage is that stage.',
  ],
  ['amount', 'As you typed it: 70%, 20 g, 2 tsp. This is what Tarebook reads back.'],
  ['note', 'Your note on the line.'],
  [
    'counts as',
    'Flour, water, salt, starter with its hydration, or other, so that it means the same in a reader’s workbook.',
  ],
  [
    'setting',
    'Only on rows that are not lines: the flour weight, a note on the formula, whether a stage ferments.',
  ],
  [
    'grams, percent, whole dough percent',
    'Worked out, for people who read it. Not read back while there is an amount.',
  ],
]

export const csvWords = {
  columns: 'What the columns hold',
  opening: 'Opening it in an office program',
  decimalCommas:
    'A program set to decimal commas may put a whole row into one cell. There, import the file as text, and choose the comma as separator, the point as decimal sign and UTF-8 as encoding.',
  apostrophes:
    'Text that such a program could take for a calculation leaves with an apostrophe in front. Bringing the file in takes it away again.',
} as const

/** Of the workbook file with the photographs of its bakes. */
export const photographsOutWords = {
  download: (count: number): string =>
    count === 1 ? 'Download with its photograph' : `Download with its ${count} photographs`,
  hint: 'The file below is without them. With them it is larger, and opens here just the same.',
  working: 'Putting it together…',
  downloaded: (file: string, count: number): string =>
    count === 1
      ? `Downloaded ${file} with its photograph.`
      : `Downloaded ${file} with its ${count} photographs.`,
} as const
