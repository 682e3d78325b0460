import type { FormulasRead } from '../csv/row-reader.js'
import { plainCell } from '../values/safe-cell.js'
import { isOwnPage, type PageBlock, readBlocks } from './page-blocks.js'

const entities: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  nbsp: '\u00a0',
}

const decoded = (written: string): string =>
  written.replace(
    /&(?:([a-z]{2,5})|#(\d{1,6})|#x([\da-f]{1,5}));/gi,
    (whole, name?: string, code?: string, hex?: string) => {
      if (name !== undefined) return entities[name.toLowerCase()] ?? whole
      const point = code === undefined ? Number.parseInt(hex!, 16) : Number(code)
      return point > 0x10ffff ? whole : String.fromCodePoint(point)
    },
  )

/** What a text of HTML says, without the signs that keep it from being markup or a formula. */
export const htmlText = (written: string): string => plainCell(decoded(written)).replace(/^• /, '- ')

const tags = /<(\/?)(h2|h3|p|tr|th|td|table|li|ol|ul)\b[^>]*>/gi

/** The parts of a page: headings, paragraphs, tables and lists. What is within other elements is passed over. */
export function htmlBlocks(html: string): PageBlock[] {
  const blocks: PageBlock[] = []
  let rows: string[][] | undefined
  let items: string[] | undefined
  let isNumbered = false
  let from = 0 // where the text of the open element begins
  let row = 1
  let seen = 0
  for (const { index, 0: tag, 1: slash, 2: name } of html.matchAll(tags)) {
    for (; seen < index; seen++) if (html[seen] === '\n') row++
    const element = name!.toLowerCase()
    const text = () =>
      htmlText(
        html
          .slice(from, index)
          .replace(/<[^>]*>/g, '')
          .replace(/[ \t\r\n]+/g, ' ')
          .trim(),
      )
    if (slash === '') {
      if (element === 'table') rows = []
      else if (element === 'tr') rows?.push([])
      else if (element === 'ol' || element === 'ul') {
        items = []
        isNumbered = element === 'ol'
      }
      from = index + tag.length
    } else if (element === 'table' && rows) {
      blocks.push({ is: 'table', row, rows, at: rows.map(() => row) })
      rows = undefined
    } else if (element === 'th' || element === 'td') rows?.at(-1)?.push(text())
    else if (element === 'li') items?.push(text())
    else if ((element === 'ol' || element === 'ul') && items) {
      blocks.push({ is: 'items', row, isNumbered, items })
      items = undefined
    } else if (element === 'h2' || element === 'h3')
      blocks.push({ is: element === 'h2' ? 'title' : 'heading', row, text: text() })
    else if (element === 'p' && !rows && !items) blocks.push({ is: 'paragraph', row, text: text() })
  }
  return blocks
}

/** Whether a text is HTML that `writeHtml` wrote. */
export const isOwnHtml = (text: string): boolean =>
  /<h2\b/i.test(text) && /<th\b[^>]*>\s*Ingredient\s*<\/th>/i.test(text) && isOwnPage(htmlBlocks(text))

/** The formulas of a text that `writeHtml` wrote, with all but ids and kept states. Never throws. */
export const readHtml = (text: string): FormulasRead => readBlocks(htmlBlocks(text))
