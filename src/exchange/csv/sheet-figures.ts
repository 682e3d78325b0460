import '../../dough/cells/rare-cells-at-once.js'
import type { Formula } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { isUnsaid } from '../../dough/sheet/figures.js'
import { openSheet } from '../../dough/sheet/sheet.js'
import type { WriteOptions } from './write-formulas.js'

/** The figures of a formula's sheet, for `writeFormulas`: as written, not as scaled for a batch. */
export const sheetFigures =
  (larder?: Larder): NonNullable<WriteOptions['figures']> =>
  (formula: Formula) => {
    const sheet = openSheet(formula, larder)
    const lines = new Map(formula.stages.flatMap(s => s.lines).map(line => [line.id, line]))
    return id => {
      const figures = sheet.line(id)
      const { weight, percent, wholeDough } = figures
      return isUnsaid(lines.get(id)!, figures) ? {} : { grams: weight, percent, wholeDough }
    }
  }
