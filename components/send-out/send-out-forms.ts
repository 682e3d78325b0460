import type { HouseholdOptions } from '../../src/dough/about/household.js'
import type { Formula } from '../../src/dough/document/formula.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import type { ListName } from '../../src/dough/larder/allergen-lists.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { sheetFigures, writeFormulas } from '../../src/exchange/index.js'
import { type formWords, sendOutWords } from './words.js'

export type FormName = keyof typeof formWords

/** What is sent out, and how a reader wants it. */
export interface Sent {
  readonly formulas: readonly Formula[]
  readonly isWhole: boolean // the workbook, not only formulas of it
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
  readonly problem?: string // why there is nothing to send, or not all of it, in a sentence
}

/** One of the ways a formula leaves. */
export interface Form {
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
    file: { extension: 'csv', type: 'text/csv' },
    write: ({ formulas, larder, workbook }) => ({
      text: writeFormulas(formulas, { larder, figures: sheetFigures(larder, workbook.scale) }),
    }),
  },
  text: {
    file: { extension: 'txt', type: 'text/plain' },
    write: async sent => {
      const [{ writeSeveral }, { writeHousehold }] = await Promise.all([
        import('../../src/exchange/several/several.js'),
        import('../../src/exchange/text/household-text.js'),
      ])
      const { measures } = sent
      const beneath = (sheet: FigureSheet) => (measures ? `\n${writeHousehold(sheet, measures)}` : '')
      return { text: writeSeveral(sheetsOf(sent), sent.list, beneath) }
    },
  },
  markdown: {
    file: { extension: 'md', type: 'text/markdown' },
    write: async sent => {
      const { writeSeveralMarkdown } = await import('../../src/exchange/several/several.js')
      return { text: writeSeveralMarkdown(sheetsOf(sent), sent.list) }
    },
  },
  table: {
    file: { extension: 'html', type: 'text/html' },
    write: async sent => {
      const [{ writeHtml }, { writeSeveral }] = await Promise.all([
        import('../../src/exchange/text/html-table.js'),
        import('../../src/exchange/several/several.js'),
      ])
      const sheets = sheetsOf(sent)
      return {
        text: writeSeveral(sheets, sent.list),
        html: sheets.map(listing(writeHtml, sent)).join('\n<hr>\n'),
      }
    },
  },
  link: {
    write: async ({ formulas, larder }) => {
      const { linkOf } = await import('../../src/exchange/data/link.js')
      const here = `${location.origin}${location.pathname}`
      const links: string[] = []
      const problems: string[] = []
      for (const formula of formulas) {
        const link = await linkOf(formula, here, larder)
        if (typeof link !== 'string') problems.push(link.problem.message)
        else links.push(formulas.length > 1 ? `${formula.name}\n${link}\n` : link)
      }
      return { text: links.join('\n'), ...(problems.length > 0 && { problem: problems.join(' ') }) }
    },
  },
  recipe: {
    file: { extension: 'html', type: 'text/html' },
    write: async sent => {
      const { recipeMarkup, recipeScript } = await import('../../src/exchange/markup/recipe-markup.js')
      const sheets = sheetsOf(sent)
      if (!sent.jsonAlone) return { text: sheets.map(recipeScript).join('\n') }
      const recipes = sheets.map(recipeMarkup)
      return { text: `${JSON.stringify(recipes.length > 1 ? recipes : recipes[0], null, 2)}\n` }
    },
  },
  workbook: {
    file: { extension: 'json', type: 'application/json' },
    write: async ({ isWhole, workbook, formulas }) => {
      const [{ writeWorkbookFile }, { partOfWorkbook }] = await Promise.all([
        import('../../src/exchange/data/workbook-file.js'),
        import('../../src/exchange/data/part-of-workbook.js'),
      ])
      return { text: writeWorkbookFile(isWhole ? workbook : partOfWorkbook(workbook, formulas)) }
    },
  },
}

/** The ways there are for formulas, or for the whole workbook. */
export const formsFor = (isWhole: boolean): readonly FormName[] =>
  isWhole ? ['workbook'] : (Object.keys(forms) as FormName[])

/** A file name any system takes. */
export function fileName(name: string, form: Form, jsonAlone: boolean): string {
  const plain = name
    .replace(/[\p{Cc}\p{Cs}\\/:*?"<>|\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu, ' ') // nor what turns its end about
    .replace(/\s+/g, ' ')
    .replace(/^[. ]+|[. ]+$/g, '')
    .slice(0, 80)
  const extension = jsonAlone ? 'json' : form.file?.extension
  const isDevice = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i.test(plain) // to Windows
  return `${!plain || isDevice ? sendOutWords.fileName : plain}.${extension}`
}
