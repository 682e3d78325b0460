import type { HouseholdOptions } from '../../src/dough/about/household.js'
import type { Formula } from '../../src/dough/document/formula.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import type { ListName } from '../../src/dough/larder/allergen-lists.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { sheetFigures, writeFormulas } from '../../src/exchange/index.js'

export type FormName = 'csv' | 'text' | 'markdown' | 'table' | 'link' | 'recipe' | 'workbook'

/** What is sent out, and how a reader wants it. */
export interface Sent {
  readonly formulas: readonly Formula[]
  readonly workbook: Workbook
  readonly larder: Larder
  readonly measures: HouseholdOptions | undefined // cups and spoons beneath the plain text
  readonly list: ListName // of allergens, in what people read
  readonly jsonAlone: boolean // recipe markup without its script element
}

/** What it came to; `html` where it is copied as what it looks like, with `text` for places that take no more. */
export interface Written {
  readonly text: string
  readonly html?: string
  readonly problem?: string // why there is nothing to send, in a sentence
}

/** One of the ways a formula leaves. */
export interface Form {
  readonly label: string
  readonly says: string // what it is, for whom, in a sentence
  readonly takes: 'a formula' | 'formulas' | 'the workbook'
  readonly file?: { readonly extension: string; readonly type: string } // where it makes sense as one
  /** At once, or when the writer is fetched. */
  readonly write: (sent: Sent) => Written | Promise<Written>
}

/** The writer of one sheet, for `map`. */
const listing =
  <S>(write: (sheet: S, list: ListName) => string, { list }: Sent) =>
  (sheet: S): string =>
    write(sheet, list)

const sheetsOf = ({ formulas, larder, workbook }: Sent) =>
  formulas.map(formula => openSheet(formula, larder, workbook.scale))

export const forms: Readonly<Record<FormName, Form>> = {
  csv: {
    label: 'CSV',
    says: 'A table as plain text: every amount as you typed it, for another Tarebook and for office programs.',
    takes: 'formulas',
    file: { extension: 'csv', type: 'text/csv' },
    write: ({ formulas, larder }) => ({
      text: writeFormulas(formulas, { larder, figures: sheetFigures(larder) }),
    }),
  },
  text: {
    label: 'Plain text',
    says: 'For a message or a print-out: columns that line up, readings, the batch. Tarebook reads it back.',
    takes: 'formulas',
    file: { extension: 'txt', type: 'text/plain' },
    write: async sent => {
      const [{ writePlainText }, { writeHousehold }] = await Promise.all([
        import('../../src/exchange/text/plain-text.js'),
        import('../../src/exchange/text/household-text.js'),
      ])
      const { measures } = sent
      const texts = sheetsOf(sent).map(
        sheet => writePlainText(sheet, sent.list) + (measures ? `\n${writeHousehold(sheet, measures)}` : ''),
      )
      return { text: texts.join('\n\n') }
    },
  },
  markdown: {
    label: 'Markdown',
    says: 'For notes and forums that turn it into headings and tables.',
    takes: 'formulas',
    file: { extension: 'md', type: 'text/markdown' },
    write: async sent => {
      const { writeMarkdown } = await import('../../src/exchange/text/markdown.js')
      return { text: sheetsOf(sent).map(listing(writeMarkdown, sent)).join('\n\n') }
    },
  },
  table: {
    label: 'Table to paste',
    says: 'Copied as it looks here: real tables in a letter, a document or a mail. Where only text is taken, it is the plain text.',
    takes: 'formulas',
    file: { extension: 'html', type: 'text/html' },
    write: async sent => {
      const [{ writeHtml }, { writePlainText }] = await Promise.all([
        import('../../src/exchange/text/html-table.js'),
        import('../../src/exchange/text/plain-text.js'),
      ])
      const sheets = sheetsOf(sent)
      return {
        text: sheets.map(listing(writePlainText, sent)).join('\n\n'),
        html: sheets.map(listing(writeHtml, sent)).join('\n<hr>\n'),
      }
    },
  },
  link: {
    label: 'Link',
    says: 'The whole formula is in the address itself, behind the #. No browser sends that part, so no server sees the formula.',
    takes: 'a formula',
    write: async ({ formulas, larder }) => {
      const { linkOf } = await import('../../src/exchange/data/link.js')
      const link = await linkOf(formulas[0]!, `${location.origin}${location.pathname}`, larder)
      return typeof link === 'string' ? { text: link } : { text: '', problem: link.problem.message }
    },
  },
  recipe: {
    label: 'Recipe markup',
    says: 'For your own web page: paste it anywhere in the page, and search engines read the recipe (schema.org, JSON-LD). Readers do not see it.',
    takes: 'a formula',
    file: { extension: 'html', type: 'text/html' },
    write: async sent => {
      const { recipeMarkup, recipeScript } = await import('../../src/exchange/text/recipe-markup.js')
      const sheet = sheetsOf(sent)[0]!
      return {
        text: sent.jsonAlone ? `${JSON.stringify(recipeMarkup(sheet), null, 2)}\n` : recipeScript(sheet),
      }
    },
  },
  workbook: {
    label: 'Workbook file',
    says: 'Everything in one file: all formulas with their kept states, your larder, how your scale weighs. The copy to keep.',
    takes: 'the workbook',
    file: { extension: 'json', type: 'application/json' },
    write: async ({ workbook }) => {
      const { writeWorkbookFile } = await import('../../src/exchange/data/workbook-file.js')
      return { text: writeWorkbookFile(workbook) }
    },
  },
}

/** The ways there are for so many formulas, or for the whole workbook. */
export function formsFor(what: 'a formula' | 'formulas' | 'the workbook'): readonly FormName[] {
  const names = Object.keys(forms) as FormName[]
  return names.filter(name => {
    const { takes } = forms[name]
    return takes === what || (what === 'a formula' && takes === 'formulas')
  })
}

/** A file name any system takes. */
export function fileName(name: string, form: Form, jsonAlone: boolean): string {
  const plain = name
    .replace(/[\p{Cc}\\/:*?"<>|]/gu, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[. ]+|[. ]+$/g, '')
    .slice(0, 80)
  const extension = jsonAlone ? 'json' : form.file?.extension
  return `${plain || 'Formulas'}.${extension}`
}
