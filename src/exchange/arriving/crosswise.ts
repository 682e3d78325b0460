import type { Larder } from '../../dough/document/larder.js'
import { guessCountsAs } from '../../dough/larder/counts-as-guess.js'
import { larderName } from '../../dough/larder/spelled-names.js'
import { cellsOf, isBlankCell, tidied } from '../csv/any-cells.js'
import { isFinalDough, isStageName } from '../values/labels.js'

const longest = 60_000 // characters; what lies across is never so long
const mostAbove = 8 // rows over the heads of the columns
const longestName = 40 // characters of an ingredient's

/** `10 g starter; 2 g salt` in one cell. */
const partsOf = (cell: string): string[] => cell.split(/\s*;\s*/).filter(Boolean)
const beginsWithNumber = (cell: string): boolean => /^[\d.,¼-¾⅐-⅞]/.test(cell)

/**
 * A table that lies across, with an ingredient over each column and a stage or a bread in each row, as a text that lies along:
 * stages as headings over their lines, breads as a table of three columns. Undefined of all others.
 */
export function laidAlong(text: string, larder: Larder): string | undefined {
  if (text.length > longest) return undefined
  const { data, delimiter } = cellsOf(text)
  if (delimiter === '' || delimiter === '  ') return undefined
  const rows = data
    .map(cells => cells.map(tidied).map(cell => (isBlankCell(cell) ? '' : cell)))
    .filter(cells => cells.some(Boolean))
  const isKnown = (name: string) =>
    name.length <= longestName &&
    !/\d{3}/.test(name) &&
    !isStageName(name) &&
    (larderName(larder, name) !== undefined || (guessCountsAs(name) ?? 'other') !== 'other')
  const at = rows
    .slice(0, mostAbove)
    .findIndex(([first = '', ...cells]) => !isKnown(first) && cells.filter(isKnown).length > 1)
  const [, ...heads] = rows[at] ?? []
  const known = [...heads.keys()].filter(column => isKnown(heads[column]!))
  const body = rows.slice(at + 1)
  const isRow = ([first = '', ...cells]: readonly string[]) =>
    /^\P{N}*\p{L}/u.test(first) && known.filter(column => beginsWithNumber(cells[column] ?? '')).length > 1
  const isIngredient = ([first = '']: readonly string[]) => isKnown(first)
  const most = known.length > 2 ? body.length / 2 : 0
  const isAcross = at >= 0 && body.length > 1 && body.every(isRow) && body.filter(isIngredient).length <= most
  if (!isAcross) return undefined
  const above = rows.slice(0, at).map(cells => cells.filter(Boolean).join(' '))
  const labels = body.map(([first = '']) => first)
  if (!labels.some(label => isStageName(label) || isFinalDough(label)))
    return [
      'Formula\tIngredient\tAmount',
      ...body.flatMap(([label, ...cells]) =>
        cells.flatMap((cell, column) =>
          cell && heads[column] ? [`${label}\t${heads[column]}\t${cell}`] : [],
        ),
      ),
    ].join('\n')
  const lineOf = (cell: string, column: number): string[] =>
    known.includes(column) ? [`${heads[column]}: ${cell}`] : partsOf(cell)
  return [
    ...above,
    ...body.flatMap(([label, ...cells]) => [
      '',
      `## ${label}`,
      ...cells.flatMap((cell, column) => (cell ? lineOf(cell, column) : [])),
    ]),
  ].join('\n')
}
