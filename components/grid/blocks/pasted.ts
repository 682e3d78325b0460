import { plainCell } from '../../../src/exchange/values/safe-cell.js'
import type { NumberStyle } from '../../base/numbers.js'
import { allColumns } from '../table/table.js'
import { type Held, type OwnBlock, ownAttribute, type Pasted, type PastedCell } from './forms.js'
import { anyHeading, ingredientHeading } from './words.js'

/** What the clipboard holds as a block, the richest form first; undefined when it holds no text. */
export const pastedFrom = async (
  { own, html, plain }: Held,
  style: NumberStyle,
): Promise<Pasted | undefined> => readOwn(own || ownIn(html)) ?? readForeign(html, plain, style)

function readOwn(text: string): Pasted | undefined {
  if (!text) return undefined
  try {
    const block = JSON.parse(text) as Partial<OwnBlock>
    if (block.tarebook !== 'lines' || !Array.isArray(block.rows) || block.rows.length === 0) return undefined
    const cell = (c: Partial<PastedCell>) => ({ text: String(c.text ?? ''), computed: c.computed === true })
    const columns = allColumns.filter(c => block.columns?.includes(c))
    return { rows: block.rows.map(row => row.map(cell)), decimal: '.', columns }
  } catch {
    return undefined // another page may have put anything under our name
  }
}

/** A table from another program: HTML where it holds one, tab-separated text otherwise. */
async function readForeign(html: string, plain: string, style: NumberStyle): Promise<Pasted | undefined> {
  const rows = (html && tableRows(html)) || (await textRows(plain))
  const [head, ...rest] = rows
  const body = head && isHeading(head) ? rest : rows
  if (body.length === 0) return undefined
  return {
    rows: body.map(r => r.map(text => ({ text: plainCell(text), computed: false }))),
    decimal: style.decimal,
  }
}

/** Tab-separated text as rows. Its reader is fetched when there is more than one cell. */
async function textRows(plain: string): Promise<string[][]> {
  const text = plain.replace(/\r\n?/g, '\n').replace(/\n$/, '')
  if (!/["\t\n]/.test(text)) return text === '' ? [] : [[text]]
  return (await import('../table/text-table.js')).textRows(text)
}

/** Inert: nothing in it runs or loads. */
const parsed = (html: string): Document => new DOMParser().parseFromString(html, 'text/html')

const ownIn = (html: string): string =>
  html.includes(ownAttribute)
    ? (parsed(html).querySelector(`table [${ownAttribute}]`)?.getAttribute(ownAttribute) ?? '')
    : ''

function tableRows(html: string): string[][] | undefined {
  const table = parsed(html).querySelector('table')
  if (!table) return undefined
  return [...table.rows].map(row =>
    [...row.cells].flatMap(cell => [
      cellText(cell),
      ...Array<string>(Math.min(cell.colSpan, 50) - 1).fill(''),
    ]),
  )
}

function cellText(cell: HTMLElement): string {
  for (const br of cell.querySelectorAll('br')) br.replaceWith('\u2028')
  const text = cell.textContent ?? ''
  return text
    .replace(/[^\S\u2028\u00a0]+/g, ' ')
    .replace(/ ?\u2028 ?/g, '\n')
    .trim()
}

const isHeading = (row: readonly string[]): boolean =>
  ingredientHeading.test(row[0]?.trim() ?? '') && row.every(text => anyHeading.test(text.trim()))
