import { nameKey } from '../../dough/document/formula.js'
import { plainMake } from '../values/batch-text.js'
import { type DecimalMark, type PlainNumbers, plainNumbers } from '../values/decimals.js'
import { heldBy } from '../values/hold-text.js'
import { type Column, isFormulaSetting, isStageSetting } from './columns.js'

/** A row of a formula file by its columns; those the file has not are empty. */
export type Row = { readonly number: number } & Readonly<Record<Column, string>>

export const isBlank = (text: string): boolean => text.trim() === ''

/** A text within a sentence, cut when it is long. */
export const quoted = (text: string): string => `“${text.length > 60 ? `${text.slice(0, 59)}…` : text}”`

/** Is the value of this setting an amount, so that its numbers are read as such? */
export function holdsNumbers(stage: string, setting: string): boolean {
  const key = nameKey(setting)
  if (key === 'note' || key === 'group' || key === 'base' || key === 'ferments' || key === 'step')
    return false
  return isBlank(stage) ? isFormulaSetting(key) : isStageSetting(key)
}

/** The value of such a setting with plain numbers. */
export const settingNumbers = (setting: string, amount: string, mark: DecimalMark): PlainNumbers =>
  nameKey(setting) === 'make' ? plainMake(amount, mark) : plainNumbers(amount, mark)

/** Settings with the same key say the same thing of the same thing: a file has one of them. */
export const settingKey = (stage: string, setting: string, ingredient = ''): string =>
  JSON.stringify([stage, setting, heldBy(setting) === 'wholeDough' ? ingredient : ''].map(nameKey))

/** A cell of a figure column as an amount: its own unit wins, a number alone takes the column's. */
const withUnit = (cell: string, unit: string): string =>
  /^[\d.,\s'’\u00a0\u202f]+$/.test(cell) ? `${cell.trim()}${unit}` : cell

/** The text a line's amount is read from: the amount, or else what was written for readers. */
export const amountOf = (row: Row): string =>
  [row.amount, withUnit(row.grams, ' g'), withUnit(row.percent, '%')].find(text => !isBlank(text)) ?? ''
