import { cellsOf, isBlankCell, tidied } from '../csv/any-cells.js'
import { signsOf } from '../values/amount-cells.js'
import { unitSaid } from '../values/written-weights.js'
import type { ColumnUse, ForeignRow, Guess, Limits } from './types.js'
import type { Reason } from './words.js'

/** A text as rows of cells, or why it is refused. Never throws. */
export function split(given: string, limits: Limits) {
  const tooLarge = (what: 'characters' | 'rows' | 'columns', count: number) => {
    const most = limits[what]
    return count > most ? { refused: { code: 'tooLarge', what, count, most } as const } : undefined
  }
  const tooLong = tooLarge('characters', given.length)
  if (tooLong) return tooLong
  if (given.includes('\0')) return { refused: { code: 'tableNotText' } as const }
  const { data, broken, ...guessed } = cellsOf(given)
  const width = data.reduce((most, cells) => Math.max(most, cells.length), 0)
  const refused = tooLarge('rows', data.length) ?? tooLarge('columns', width)
  if (refused) return refused
  const rows = data.map((cells, at): ForeignRow => {
    const row = at + 1
    const isOpen = broken.get(at)
    const count = cells.find(cell => cell.length > limits.cell)?.length
    const why: Reason | undefined =
      isOpen !== undefined
        ? { code: 'quotes', isOpen, row }
        : count === undefined
          ? undefined
          : { code: 'longCell', row, count, most: limits.cell }
    if (why) return { row, cells: cells.map(cell => cell.slice(0, 60)), broken: why }
    return { row, cells: cells.map(tidied) }
  })
  return { rows: withoutFrame(rows), ...guessed, width }
}

const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'
/** The rows of a sheet that was copied with the letters over its columns and the numbers of its rows, without both. */
function withoutFrame(rows: readonly ForeignRow[]): ForeignRow[] {
  const isOfLetters = ({ cells: [corner, ...others] }: ForeignRow) =>
    corner === '' && others.length > 1 && letters.startsWith(others.join(''))
  const top = rows.slice(0, mostAbove).findIndex(isOfLetters)
  const isNumbered = rows.slice(top + 1).every(({ cells }, at) => cells[0] === String(at + 1))
  if (top < 0 || !isNumbered) return [...rows]
  return rows.map((row, at) =>
    at > top
      ? { ...row, cells: row.cells.slice(1) }
      : { ...row, cells: at === top || isSheet.test(row.cells[0] ?? '') ? [''] : row.cells },
  )
}

const mostAbove = 5 // rows over the letters
const isSheet = /^(?:sheet|tabelle|feuil|feuille)\s?\d{1,2}$/i

/** Nothing, or only a drawn line. */
export const isBlankRow = ({ cells, broken }: ForeignRow): boolean =>
  broken === undefined && cells.every(isBlankCell)

export const unitOfUse = {
  amount: 'g',
  percent: '%',
  grams: 'g',
  kilograms: 'kg',
  ounces: 'oz',
  pounds: 'lb',
} as const

/** The columns that hold amounts. */
export type AmountUse = keyof typeof unitOfUse
export const amountUses = Object.keys(unitOfUse) as AmountUse[]

export const isAmountUse = (use: string | undefined): use is AmountUse =>
  use !== undefined && Object.hasOwn(unitOfUse, use satisfies string as ColumnUse)

/**
 * The decimal mark of a table. What its numbers show decides; where all of them can be read in two ways, a
 * mark before three digits stands between thousands, but for columns of kilograms and pounds.
 */
export function decimalOf(body: readonly ForeignRow[], uses: readonly ColumnUse[]) {
  const cells: Record<'small' | 'others', string[]> = { small: [], others: [] }
  for (const row of body)
    for (const [at, use] of row.broken ? [] : uses.entries()) {
      const cell = row.cells[at]
      if (cell === undefined || (!isAmountUse(use) && use !== 'of a stage')) continue
      const isSmall = use === 'kilograms' || use === 'pounds' || /\d\s*(?:kg|lbs?)\.?\s*$/i.test(cell)
      cells[isSmall ? 'small' : 'others'].push(cell)
    }
  const [small, others] = [signsOf(cells.small), signsOf(cells.others)]
  const [points, commas] = [small['.'] + others['.'], small[','] + others[',']]
  const answer = (decimal: '.' | ',', ask: boolean, reason: Reason) => ({
    decimal,
    guess: { about: 'decimal', ask, reason } as const,
  })
  const [shown, few] = [Math.max(points, commas), Math.min(points, commas)]
  if (points !== commas) {
    const sign = commas > points ? ',' : '.'
    return answer(sign, few > 0, { code: 'decimalSign', sign, shown, of: shown + few })
  }
  if (few > 0) return answer('.', true, { code: 'noSureSign' })
  const number = others.doubtful[0] ?? small.doubtful[0]
  if (number === undefined) return answer('.', false, { code: 'noDecimalSign' })
  const isSmall = others.doubtful.length === 0
  const sign = number.includes(',') === isSmall ? ',' : '.'
  return answer(sign, true, { code: 'doubtfulDecimals', number, isSmall })
}

const usesOfUnits = { g: 'grams', kg: 'kilograms', oz: 'ounces', lb: 'pounds' } as const
/** Plain numbers are taken for grams, unless a row with one cell says what they are: `Mill white (kg)`, `all in oz`. */
export function inSaidUnit(
  uses: readonly ColumnUse[],
  guesses: readonly Guess[],
  rows: readonly ForeignRow[],
) {
  const plain = guesses.find(({ reason }) => reason.code === 'plainNumbers')
  const said = plain && rows.slice(0, mostTold).find(row => unitIn(row) !== undefined)
  const unit = said && unitIn(said)
  const at = plain?.about === 'column' ? plain.column : undefined
  return unit && at !== undefined && uses[at] === 'grams' ? uses.with(at, usesOfUnits[unit]) : uses
}
const mostTold = 200 // rows that are asked
const unitIn = ({ cells }: ForeignRow) => {
  const [only = '', ...others] = cells.filter(Boolean)
  return others.length === 0 && only.length < 80 ? unitSaid(only) : undefined
}
