import type { Formula } from '../dough/formula.js'
import type { Larder } from '../dough/larder.js'
import { openSheet } from '../dough/sheet.js'
import type { WriteOptions } from './write-formulas.js'

/** The figures of a formula's sheet, for `writeFormulas`: as written, not as scaled for a batch. */
export const sheetFigures =
  (larder?: Larder): NonNullable<WriteOptions['figures']> =>
  (formula: Formula) => {
    const sheet = openSheet(formula, larder)
    return id => {
      const { weight, percent, wholeDough } = sheet.line(id)
      return { grams: weight, percent, wholeDough }
    }
  }
