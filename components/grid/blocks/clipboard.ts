import { safeCell } from '../../../src/exchange/values/safe-cell.js'
import type { NumberStyle } from '../../base/numbers.js'
import { asTheyWrite } from '../../base/numbers.js'
import type { Extent } from '../moving/extent.js'
import { type Column, isNumber, type LineRow, type Row } from '../table/table.js'
import { type OwnBlock, ownAttribute, ownType, type PastedCell } from './forms.js'
import { sumName } from './words.js'

/** A number with every digit that is more than noise: 15 of them. Decimal point, no grouping. */
const exact = (value: number | undefined): string =>
  value === undefined || !Number.isFinite(value) ? '' : String(Number(value.toPrecision(15)))

function lineCell(row: LineRow, column: Column): PastedCell {
  const { line, figures } = row
  const said = (text: string, computed = false) => ({ text, computed })
  switch (column) {
    case 'ingredient':
      return said(line.ingredient)
    case 'note':
      return said(line.note)
    case 'percent':
    case 'wholeDough': {
      if (figures.typedIn === column) return said(figures.typed)
      const value = figures[column]
      return said(exact(value === undefined ? undefined : value * 100), true)
    }
    case 'weight':
      return figures.typedIn === column ? said(figures.typed) : said(exact(figures.weight), true)
    case 'batch':
      return said(exact(row.batch?.grams), true)
    case 'actions':
      return said('')
  }
}

/** The texts of a row as other programs get them; undefined for the row that only adds. */
function texts(row: Row, columns: readonly Column[], style: NumberStyle): string[] | undefined {
  switch (row.kind) {
    case 'add':
      return undefined
    case 'stage':
      return columns.map((_, i) => (i === 0 ? safe(row.stage.name) : ''))
    case 'line':
      return columns.map(c => {
        const { text } = lineCell(row, c)
        return safe(isNumber(c) ? asTheyWrite(text, style) : text)
      })
    case 'sum':
      return columns.map(c => {
        if (c === 'ingredient') return sumName(row.figures.isFinal)
        const { percent, weight } = row.figures
        if (c === 'percent')
          return asTheyWrite(exact(percent === undefined ? undefined : percent * 100), style)
        if (c === 'batch') return asTheyWrite(exact(row.batch?.grams), style)
        return c === 'weight' ? asTheyWrite(exact(weight), style) : ''
      })
  }
}

/** An office program must not take a text for something to work out. */
const safe = (text: string): string => (/^-?[\d.,]+$/.test(text) ? text : safeCell(text))

const escaped = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/\n/g, '<br>')

/** A block in the three forms it is copied in. */
export function copied(extent: Extent, style: NumberStyle): { plain: string; html: string; own: string } {
  const columns = extent.columns.filter(c => c !== 'actions')
  const rows = extent.rows.flatMap(row => {
    const cells = texts(row, columns, style)
    return cells ? [cells] : []
  })
  const lines = extent.rows.filter(row => row.kind === 'line')
  const kept = columns.filter(c => c !== 'batch') // which follows from the formula it is pasted in
  const own: OwnBlock = {
    tarebook: 'lines',
    columns: kept,
    rows: lines.map(row => kept.map(c => lineCell(row, c))),
  }
  const json = JSON.stringify(own)
  const html = rows.map(cells => `<tr>${cells.map(c => `<td>${escaped(c)}</td>`).join('')}</tr>`).join('')
  return {
    plain: rows.map(cells => cells.map(quoted).join('\t')).join('\n'),
    html: `<table><tbody ${ownAttribute}="${escaped(json).replaceAll('"', '&quot;')}">${html}</tbody></table>`,
    own: json,
  }
}

export function putOn(data: DataTransfer, extent: Extent, style: NumberStyle): void {
  const { plain, html, own } = copied(extent, style)
  data.setData('text/plain', plain)
  data.setData('text/html', html)
  data.setData(ownType, own)
}

/** A cell of tab-separated text, quoted by the rule of CSV where it needs to be. */
const quoted = (cell: string): string => (/["\t\n\r]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)
